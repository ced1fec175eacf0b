//! The helper's side: the lines of a sheet to tick, to note, to send back.
//!
//! What it is: answers kept as drafts, so that a phone that goes to sleep loses none. What it is not: a record: nothing here is
//! among the own wigs.

use measure::say::Arg;
use record::{
    handover::handed::{Handed, Line},
    wig::work::Work,
    workshop::lots::Lot,
};
use yew::prelude::*;

use super::{draft, send::Send};
use crate::{
    pages::bench::{
        checks,
        form::work_field,
        names::{BARE, Names},
    },
    parts::{
        cell::{Cell, use_cell},
        plain::{button, p},
        typed::text_of,
    },
    shell::{
        js,
        talk::{field, t, ta},
    },
    store::{desk::use_desk, drafts, model::Whose},
};

/// The sheet's lines.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// What was handed over.
    pub handed: Handed,
}

/// How a line was answered.
pub const PLANNED: &str = "planned";
/// Otherwise than planned.
pub const OTHER: &str = "other";

/// The address of a line's draft.
pub fn of(handed: &Handed, number: u32, name: &str) -> String {
    format!("{}{number}.{name}", draft(handed))
}

/// The work as planned, where it can be recorded as it is.
pub fn as_planned(line: &Line) -> Option<Work> {
    let texts = line.texts();
    let texts = texts.iter().map(|(name, text)| (*name, text.as_str()));
    Work::read(line.kind, texts, &measure::prefs::Prefs::default()).ok()
}

/// What stands in the fields of a line: what was typed, or what was planned.
pub fn texts(handed: &Handed, line: &Line) -> Vec<(&'static str, String)> {
    let planned = line.texts();
    line.kind
        .every_field()
        .map(|field| {
            let plan = planned.iter().find(|(name, _)| *name == field.name).map(|(_, text)| text.clone());
            (field.name, drafts::read(&of(handed, line.number, field.name)).or(plan).unwrap_or_default())
        })
        .collect()
}

/// The lines.
#[component]
pub fn Helper(props: &Props) -> Html {
    let handed = &props.handed;
    let desk = use_desk();
    let again = use_cell(|| 0_u32);
    let lots: Vec<Lot> = Vec::new();
    let name = if handed.name.is_empty() { t("web.no_name") } else { handed.name.clone() };
    let mut answered = 0;
    for line in &handed.lines {
        answered += i64::from(drafts::read(&of(handed, line.number, "answer")).is_some());
    }
    html! {
        <div class="helper">
            <h2 id="helper-title" tabindex="-1">{ ta("web.helper_title", [Arg::Text(name), Arg::Date(handed.day)]) }</h2>
            if !handed.ask.is_empty() { { p("", format!("{}: {}", field("ask"), handed.ask)) } }
            { p("hint", t("web.helper_hint")) }
            <p role="status">{ ta("web.helper_count", [Arg::Count(answered), Arg::Count(handed.lines.len() as i64)]) }</p>
            { for handed.lines.iter().map(|line| one(handed, line, &again, &lots, &desk.model().prefs)) }
            <Send handed={handed.clone()} answered={again.get()} />
        </div>
    }
}

fn one(handed: &Handed, line: &Line, again: &Cell<u32>, lots: &[Lot], prefs: &measure::prefs::Prefs) -> Html {
    let number = line.number;
    let address = |name: &str| of(handed, number, name);
    let answer = drafts::read(&address("answer")).unwrap_or_default();
    let planned = as_planned(line);
    let set = |to: &'static str| {
        let (again, address, now) = (again.clone(), address("answer"), answer.clone());
        Callback::from(move |_: MouseEvent| {
            if now == to {
                drafts::drop(&address)
            } else {
                keep(&address, to)
            }
            again.set(again.get() + 1);
        })
    };
    let typed = {
        let (again, handed) = (again.clone(), handed.clone());
        Callback::from(move |(name, text): (&'static str, String)| {
            keep(&of(&handed, number, name), &text);
            again.set(again.get() + 1);
        })
    };
    let figures: Vec<String> = line
        .values
        .iter()
        .map(|(of, value)| {
            let shown = match value {
                record::field::Value::Lot(lot) => {
                    handed.lots.iter().find(|(id, _)| id == lot).map(|(_, name)| name.clone()).unwrap_or_default()
                }
                other => Names { lots }.value(other),
            };
            if BARE.contains(&of.name) { shown } else { format!("{}: {shown}", field(of.name)) }
        })
        .collect();
    let guide = plan::steps::guide(line.kind.name);
    let pressed = |to: &str| if answer == to { "true" } else { "false" };
    let now = texts(handed, line);
    let pairs = now.iter().map(|(name, text)| (*name, text.as_str()));
    let refusals = match Work::read(line.kind, pairs, prefs) {
        Ok(_) => Vec::new(),
        Err(refusals) => refusals,
    };
    html! {
        <div class="card line" key={number.to_string()} id={format!("line-{number}")}>
            <h3>{ format!("{number} · {}", t(&format!("todo.{}", line.kind.name))) }</h3>
            if line.begun { { p("hint", t("sheet.begun")) } }
            { p("", figures.join("; ")) }
            if let Some(most) = &line.most { <p class="reason">{ most }</p> }
            { for line.mind.iter().map(|name| {
                let known = plan::care::rules().find(|rule| rule.name == name);
                p("reason", known.map_or_else(|| t("web.mind_unknown"), |rule| t(rule.label)))
            }) }
            if let Some(work) = &planned { { checks::hazard_of(work) } }
            { p("hint", t(guide.right_when)) }
            { p("hint", t(guide.stop_if)) }
            <p class="actions">
                if planned.is_some() {
                    <button type="button" class="answer" aria-pressed={pressed(PLANNED)} onclick={set(PLANNED)}>{ format!("{number}: {}", t("web.line_planned")) }</button>
                }
                <button type="button" class="answer" aria-pressed={pressed(OTHER)} onclick={set(OTHER)}>{ format!("{number}: {}", t("web.line_other")) }</button>
            </p>
            if answer == OTHER {
                <div class="fields">
                    { for line.kind.every_field().filter(|of| asked(of.name) && (of.name != "lot" || !handed.lots.is_empty())).map(|of| {
                        let value = now.iter().find(|(name, _)| *name == of.name).map(|(_, text)| text.clone()).unwrap_or_default();
                        let refused = refusals.iter().find(|refusal| refusal.field == of.name)
                            .map(|refusal| crate::shell::talk::say(&refusal.say, prefs));
                        work_field(of, &format!("line-{number}-{}", of.name), value, refused, &handed.lots, &typed, Whose::Demo)
                    }) }
                </div>
            }
            if answer == PLANNED { { minutes(handed, line, again) } }
            if !answer.is_empty() { { photo(handed, number, again) } }
        </div>
    }
}

/// What a helper fills in: not what tells of the record.
fn asked(name: &str) -> bool {
    !["step", "overruled", "judgement", "photo"].contains(&name)
}

/// Minutes and a remark beside a line done as planned.
fn minutes(handed: &Handed, line: &Line, again: &Cell<u32>) -> Html {
    let input = |name: &'static str| {
        if line.kind.field(name).is_none() {
            return html! {};
        }
        let (again, address) = (again.clone(), of(handed, line.number, &format!("planned.{name}")));
        let id = format!("line-{}-planned-{name}", line.number);
        let value = drafts::read(&address).unwrap_or_default();
        let oninput = Callback::from(move |event: InputEvent| {
            keep(&address, &text_of(&event));
            again.set(again.get() + 1);
        });
        html! { <div class="figure"><label for={id.clone()}>{ field(name) }</label><input {id} type="text" autocomplete="off" {value} {oninput} /></div> }
    };
    html! { <div class="fields">{ input("minutes") }{ input("remark") }</div> }
}

/// A photo for a line, kept while the page is open.
fn photo(handed: &Handed, number: u32, again: &Cell<u32>) -> Html {
    let address = of(handed, number, "photo");
    let has = drafts::read(&address);
    let take = {
        let again = again.clone();
        Callback::from(move |_: MouseEvent| {
            let (again, address) = (again.clone(), address.clone());
            wasm_bindgen_futures::spawn_local(async move {
                if let Ok(Some(hash)) = js::take_photo(false).await {
                    keep(&address, &hash);
                    again.set(again.get() + 1);
                }
            });
        })
    };
    html! { <>
        <p class="actions">{ button("plain", format!("{number}: {}", t("web.photo_take")), take) }</p>
        if let Some(id) = has { <crate::pages::bench::photo::Photo {id} whose={Whose::Demo} /> }
    </> }
}

/// Keeps a draft; a browser that keeps none still sends what is on the screen only while the page is open.
fn keep(address: &str, text: &str) {
    drafts::keep(address, text);
}
