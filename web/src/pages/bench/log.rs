//! What was done: every entry, last first, with its corrections.
//!
//! What it is: the log with undo and correct beside each entry. What it is not: a form for new work (see `form`).

use measure::say::Arg;
use record::{
    history::{
        desk,
        entry::{Body, Corrected, Entry, LogId, Says, Setting},
        log::Log,
    },
    id::EntryId,
    wig::steps,
};
use yew::prelude::*;

use super::{
    checks,
    form::{Given, Named, WorkForm, given},
    names::Names,
    photo::{Photo, photo_of},
};
use crate::{
    parts::{
        cell::use_cell,
        confirm::confirm,
        plain::{button, p},
    },
    shell::{
        focus,
        talk::{t, ta},
    },
    store::{
        desk::{Desk, use_desk},
        model::Whose,
    },
};

/// So many entries are drawn at first.
const SHOWN: usize = 10;

/// Whose log.
#[derive(Properties, PartialEq)]
pub struct HistoryProps {
    /// Whose records.
    pub whose: Whose,
    /// Which log.
    pub log: LogId,
}

/// The log, last first: the latest, and all of them when asked for.
#[component]
pub fn History(props: &HistoryProps) -> Html {
    let desk = use_desk();
    let all = use_cell(|| false);
    let show_all = {
        let all = all.clone();
        Callback::from(move |_: MouseEvent| all.set(true))
    };
    let log = desk.model().bench(props.whose).log(props.log);
    let count = log.entries().filter(|entry| !matches!(entry.body, Body::Amend(_))).count();
    let shown = if all.get() { count } else { count.min(SHOWN) };
    html! {
        <>
            { history(&desk, props.whose, props.log, shown) }
            if shown < count { <p class="actions">{ button("", ta("web.log_all", [Arg::Count(count as i64)]), show_all) }</p> }
        </>
    }
}

fn history(desk: &Desk, whose: Whose, id: LogId, shown: usize) -> Html {
    let bench = desk.model().bench(whose);
    let (log, state) = (bench.log(id), bench.state(id));
    let mut entries: Vec<&Entry> = log.entries().filter(|entry| !matches!(entry.body, Body::Amend(_))).collect();
    measure::order::sort_by(&mut entries, &|a, b| (b.done, b.lamport, b.id).cmp(&(a.done, a.lamport, a.id)));
    if entries.is_empty() {
        return p("hint", t("web.log_empty"));
    }
    let names = Names { lots: &bench.lots() };
    let in_force = |entry: &Entry| match &entry.body {
        Body::Work(_) => state.works().iter().any(|done| done.entry == entry.id),
        Body::Set(setting) => state.held(setting.key).is_some_and(|held| held.heads.contains(&entry.id)),
        Body::Amend(_) => false,
    };
    let items: Vec<Html> = entries
        .iter()
        .take(shown)
        .map(|entry| {
            let stands = state.works().iter().find(|done| done.entry == entry.id);
            let taken_back = |other: &Entry| {
                matches!(&other.body, Body::Amend(amendment) if amendment.target == entry.id && amendment.to.is_none())
            };
            let undone = log.entries().any(taken_back) && !in_force(entry);
            let text = match (&entry.body, stands) {
                (_, Some(done)) => names.work(&done.work),
                (body, None) => names.body(body),
            };
            // An entry undone and put back says what it said.
            let was = stands.filter(|done| done.amended).map(|_| names.body(&entry.body)).filter(|was| *was != text);
            let photo = stands.and_then(|done| photo_of(&done.work));
            html! {
                <li key={entry.id.to_string()} id={format!("entry-{}", entry.id)} tabindex="-1" class={classes!("entry", undone.then_some("undone"))}>
                    <p class="when">{ stands.map_or(entry.done, |done| done.done).to_string().replace('T', " ") }</p>
                    <p class="what">{ text }</p>
                    if let Some(photo) = photo { <Photo id={photo} {whose} /> }
                    if let Some(done) = stands { { checks::overruled(&[done]) } }
                    if let Some(was) = was { { p("hint", ta("web.was", [Arg::Text(was)])) } }
                    if undone { { p("hint", t("web.undone")) } }
                    <EntryActions {whose} log={id} entry={entry.id} {undone} />
                </li>
            }
        })
        .collect();
    // What was written last, whenever it was done.
    let last = entries.iter().filter(|entry| in_force(entry)).max_by_key(|entry| (entry.lamport, entry.id));
    // Steps that were put in or moved at one go are taken back at one go.
    let is_step = |entry: &Entry| matches!(&entry.body, Body::Set(setting) if setting.key.slot == steps::SLOT);
    let together = |last: &Entry| -> Vec<EntryId> {
        let same = |entry: &&&Entry| {
            entry.id == last.id || (is_step(last) && is_step(entry) && entry.written == last.written && in_force(entry))
        };
        entries.iter().filter(same).map(|entry| entry.id).collect()
    };
    html! {
        <>
            if let Some(last) = last { <UndoLast key={last.id.to_string()} {whose} log={id} entries={together(last)} words={names.body(&last.body)} /> }
            <ol class="log">{ for items }</ol>
        </>
    }
}

/// What was written last.
#[derive(Properties, PartialEq)]
struct LastProps {
    whose: Whose,
    log: LogId,
    entries: Vec<EntryId>,
    words: String,
}

/// Undoes what was written last.
#[component]
fn UndoLast(props: &LastProps) -> Html {
    let desk = use_desk();
    let asked = use_cell(|| false);
    let undo = {
        let (desk, whose, log, entries) = (desk.clone(), props.whose, props.log, props.entries.clone());
        Callback::from(move |_: MouseEvent| {
            let here = desk.model().bench(whose).log(log);
            let bodies = entries.iter().map(|entry| (log, desk::undo(&here, *entry))).collect();
            let then = Callback::from(move |_: bool| focus::later(vec!["record-log".to_owned()]));
            desk.write(whose, bodies, None, then);
        })
    };
    let ask = match props.entries.len() {
        1 => ta("web.undo_last_ask", [Arg::Text(props.words.clone())]),
        many => ta("web.undo_last_steps", [Arg::Count(many as i64)]),
    };
    html! { <p class="actions">{ confirm(&asked, "undo-last", t("web.undo_last"), ask, undo) }</p> }
}

/// Which entry.
#[derive(Properties, PartialEq)]
struct ActionProps {
    whose: Whose,
    log: LogId,
    entry: EntryId,
    undone: bool,
}

/// What an entry said before it was undone; nothing where something was said over it since.
fn said(log: &Log, id: EntryId) -> Option<Corrected> {
    let entry = log.get(id)?;
    let of = |other: &Entry| match &other.body {
        Body::Amend(amendment) if amendment.target == id => amendment.to.clone(),
        _ => None,
    };
    let corrected = log.entries().filter_map(|other| Some((other.lamport, other.id, of(other)?)));
    let last = corrected.max_by_key(|(lamport, id, _)| (*lamport, *id)).map(|(_, _, to)| to);
    let first = |says: Says| Some(last.clone().unwrap_or(Corrected { done: entry.done, says }));
    let is_later = |other: &Entry, key| {
        other.lamport > entry.lamport && matches!(&other.body, Body::Set(setting) if setting.key == key)
    };
    match &entry.body {
        Body::Work(work) => first(Says::Work(work.clone())),
        Body::Set(Setting { key, .. }) if log.entries().any(|other| is_later(other, *key)) => None,
        Body::Set(Setting { key, value, .. }) => first(Says::Value(*key, value.clone())),
        Body::Amend(_) => None,
    }
}

/// Says an undone entry again.
fn put_back(desk: &Desk, props: &ActionProps, again: Corrected) -> Html {
    let (desk, whose, id, entry) = (desk.clone(), props.whose, props.log, props.entry);
    let put = Callback::from(move |_: MouseEvent| {
        let body = desk::correct(&desk.model().bench(whose).log(id), entry, again.done, again.says.clone());
        let then = Callback::from(move |_: bool| focus::later(vec![format!("entry-{entry}")]));
        desk.write(whose, vec![(id, body)], None, then);
    });
    html! { <div class="entry-actions">{ button("plain", t("web.put_back"), put) }</div> }
}

/// Undo and correct, beside their entry.
#[component]
fn EntryActions(props: &ActionProps) -> Html {
    let desk = use_desk();
    let correcting = use_cell(|| false);
    let asked = use_cell(|| false);
    let state = desk.state(props.whose, props.log);
    let work = state.works().iter().find(|done| done.entry == props.entry).map(|done| done.work.clone());
    let undo = {
        let (desk, whose, id, entry) = (desk.clone(), props.whose, props.log, props.entry);
        let asked = asked.clone();
        Callback::from(move |_: MouseEvent| {
            asked.set(false);
            let body = desk::undo(&desk.model().bench(whose).log(id), entry);
            let then = Callback::from(move |_: bool| focus::later(vec![format!("entry-{entry}")]));
            desk.write(whose, vec![(id, body)], None, then);
        })
    };
    let toggle = {
        let correcting = correcting.clone();
        Callback::from(move |_: MouseEvent| correcting.set(!correcting.get()))
    };
    if props.undone {
        let again = said(&desk.model().bench(props.whose).log(props.log), props.entry);
        return again.map(|again| put_back(&desk, props, again)).unwrap_or_default();
    }
    let given: Option<(Named, Given)> = work.map(|work| (Named(work.kind().name), given(&work)));
    html! {
        <div class="entry-actions">
            { confirm(&asked, &format!("undo-{}", props.entry), t("web.undo"), t("web.undo_ask"), undo) }
            if let Some((kind, given)) = given {
                <button type="button" class="plain" aria-expanded={if correcting.get() { "true" } else { "false" }} onclick={toggle}>{ t("web.correct") }</button>
                if correcting.get() {
                    <WorkForm whose={props.whose} log={props.log} {kind} correct={Some(props.entry)} {given}
                        then={let (correcting, entry) = (correcting.clone(), props.entry); Callback::from(move |()| {
                            correcting.set(false);
                            focus::later(vec![format!("entry-{entry}")]);
                        })} />
                }
            }
        </div>
    }
}
