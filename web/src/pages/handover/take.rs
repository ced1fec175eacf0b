//! Taking a slip back: what it adds, what is here already, what was recorded twice; then the person's word.
//!
//! What it is: a preview and one button. What it is not: the comparison (see the record's `handover::take`).

use format::{handover::entries, people::encode_person, row::encode_row};
use measure::say::Arg;
use record::{
    handover::{
        slip::Slip,
        take::{self, Choice, Found},
    },
    history::{
        entry::{Body, Entry, LogId},
        people::Person,
    },
    id::EntryId,
};
use yew::prelude::*;

use crate::{
    pages::bench::names::Names,
    parts::{
        cell::{Cell, use_cell},
        plain::p,
    },
    shell::{
        js,
        talk::{say, t, ta},
    },
    store::{
        desk::{Desk, use_desk},
        model::{Change, Whose},
    },
};

/// Which slip.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The slip.
    pub slip: Slip,
}

/// The preview.
#[component]
pub fn Take(props: &Props) -> Html {
    let desk = use_desk();
    let choices = use_cell(Vec::<(EntryId, Choice)>::new);
    let told = use_cell(|| None::<Result<String, String>>);
    let slip = &props.slip;
    let log_id = LogId::Wig(slip.wig);
    let Some(whose) = desk.model().whose(slip.wig) else { return html! {} };
    let prefs = desk.model().prefs.clone();
    let all = match entries::entries(slip) {
        Ok(all) => all,
        Err(reason) => return html! { <p class="reason" role="alert">{ say(&reason, &prefs) }</p> },
    };
    let (log, state) = (desk.model().bench(whose).log(log_id), desk.state(whose, log_id));
    let found = take::look(&log, &state, &all);
    let count = |is: fn(&Found) -> bool| Arg::Count(found.iter().filter(|one| is(one)).count() as i64);
    let new = count(|one| matches!(one, Found::New { .. }));
    let here = count(|one| matches!(one, Found::Here));
    let twice = count(|one| matches!(one, Found::RecordedToo(_)));
    let lots = desk.model().bench(whose).lots();
    let names = Names { lots: &lots };
    let (add, undo) = take::chosen(&log, &all, &found, &choices.get());
    let nothing = add.is_empty();
    let take_in = {
        let (desk, slip, told) = (desk.clone(), slip.clone(), told.clone());
        Callback::from(move |_: MouseEvent| {
            let (desk, slip, told, add, undo) = (desk.clone(), slip.clone(), told.clone(), add.clone(), undo.clone());
            wasm_bindgen_futures::spawn_local(async move {
                told.set(Some(match taken(&desk, whose, &slip, add, undo).await {
                    Ok(()) => Ok(t("web.slip_taken")),
                    Err(error) => Err(error.message),
                }));
            });
        })
    };
    let who = if slip.who.trim().is_empty() { t("web.slip_nobody") } else { slip.who.clone() };
    let at = slip.written.text().replace('T', " ").replace('Z', " UTC");
    html! {
        <div class="card" id="slip">
            <p>{ ta("web.slip_head", [Arg::Text(who), Arg::Text(at)]) }</p>
            <p role="status" id="slip-counts">{ ta("web.slip_counts", [new, here, twice]) }</p>
            <ul class="slip-lines">
                { for all.iter().zip(&found).zip(&slip.lines).map(|((entry, found), answer)| {
                    line(entry, found, answer.number, &names, &log, &choices)
                }) }
            </ul>
            { p("hint", t("web.slip_hint")) }
            <p class="actions"><button type="button" class="primary" disabled={nothing} onclick={take_in}>{ t("web.take_in") }</button></p>
            { match told.get() {
                None => html! {},
                Some(Ok(words)) => html! { <p role="status" id="slip-taken">{ words }</p> },
                Some(Err(reason)) => html! { <p class="reason" role="alert">{ reason }</p> },
            } }
        </div>
    }
}

fn line(
    entry: &Entry,
    found: &Found,
    number: u32,
    names: &Names<'_>,
    log: &record::history::log::Log,
    choices: &Cell<Vec<(EntryId, Choice)>>,
) -> Html {
    let said = names.body(&entry.body);
    let what = if number == 0 { said } else { format!("{number} · {said}") };
    let state = match found {
        Found::Here => t("web.slip_here"),
        Found::New { no_step: true, .. } => t("web.slip_no_step"),
        Found::New { planned_otherwise: true, .. } => t("web.slip_otherwise"),
        Found::New { .. } => t("web.slip_new"),
        Found::RecordedToo(_) => t("web.slip_twice"),
    };
    let chosen = choices.get().iter().find(|(id, _)| *id == entry.id).map(|(_, choice)| *choice);
    let pick = |choice: Choice, words: String| {
        let (choices, id) = (choices.clone(), entry.id);
        let name = format!("choice-{id}");
        let input = format!("{name}-{}", choice as u8);
        let onchange = Callback::from(move |_: Event| {
            let mut all = choices.get();
            all.retain(|(one, _)| *one != id);
            all.push((id, choice));
            choices.set(all);
        });
        html! {
            <p class="radio"><input type="radio" {name} id={input.clone()} checked={chosen == Some(choice)} {onchange} /><label for={input}>{ words }</label></p>
        }
    };
    html! {
        <li key={entry.id.to_string()}>
            <p>{ what }{ " " }<span class="tag">{ state }</span></p>
            if let Found::RecordedToo(here) = found {
                <fieldset>
                    <legend>{ ta("web.slip_ask", [Arg::Count(i64::from(number))]) }</legend>
                    { for here.iter().filter_map(|id| log.get(*id)).map(|mine| {
                        p("hint", ta("web.slip_mine", [Arg::Text(mine.done.to_string().replace('T', " ")), Arg::Text(names.body(&mine.body))]))
                    }) }
                    { pick(Choice::Here, t("web.slip_keep")) }
                    { pick(Choice::Slips, t("web.slip_theirs")) }
                    { pick(Choice::Both, t("web.slip_both")) }
                </fieldset>
            }
        </li>
    }
}

async fn taken(desk: &Desk, whose: Whose, slip: &Slip, add: Vec<Entry>, undo: Vec<Body>) -> Result<(), js::JsError> {
    for photo in &slip.photos {
        let data = format::handover::base64::to_plain(&photo.bytes);
        js::put_photo(&photo.id.to_string(), &data, whose == Whose::Own).await?;
    }
    let log = LogId::Wig(slip.wig);
    if whose == Whose::Demo {
        desk.change(Change::Added(whose, add, String::new()));
    } else {
        // As they are: the same slip has the same rows on every device.
        let rows: Vec<String> = add.iter().filter_map(|entry| encode_row(entry).ok()).collect();
        js::take_in(&format!("[{}]", rows.join(","))).await?;
        if let Some(id) = entries::person(slip)
            && let Ok(person) = encode_person(id, &Person::Named { lamport: slip.lamport, name: slip.who.clone() })
        {
            js::take_in_people(&format!("[{person}]")).await?;
        }
        desk.read_again();
    }
    if !undo.is_empty() {
        desk.write(whose, undo.into_iter().map(|body| (log, body)).collect(), None, Callback::noop());
    }
    Ok(())
}
