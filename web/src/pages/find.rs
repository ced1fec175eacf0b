//! Finding again: every entry of every wig, by words, fibre, work, heat, dye, zone, outcome and day.
//!
//! What it is: the form and the answers, as typed. What it is not: the search (see `record::search`).

use measure::{
    civil::Date, prefs::Prefs, quantity::ThermodynamicTemperature, say::Arg, typed::Typed, unit::Kind as Unit,
};
use record::{
    history::entry::LogId,
    id::LotId,
    search::{Hit, Query},
    trade::fibres,
    wig::{
        figures::Wig,
        work::{Group, KINDS, LOCK_RESULTS, RESULTS},
        zone::Zone,
    },
};
use yew::prelude::*;

use super::bench::Names;
use crate::{
    parts::{
        cell::use_cell,
        plain::{p, title},
        typed::text_of,
    },
    shell::{
        route::{Route, Tab},
        talk::{choice, field, t, ta},
    },
    store::{
        desk::{Desk, use_desk},
        model::Whose,
    },
};

/// No more are drawn at once; the rest is found by asking closer.
const SHOWN: usize = 100;

/// What is typed into the form, by field.
const FIELDS: usize = 11;
const WORDS: usize = 0;
const FIBRE: usize = 1;
const KIND: usize = 2;
const LOW: usize = 3;
const HIGH: usize = 4;
const DYE: usize = 5;
const ZONE: usize = 6;
const RESULT: usize = 7;
const FROM: usize = 8;
const TO: usize = 9;
const LOT: usize = 10;

/// The query of what is typed; a half-typed figure asks nothing yet.
fn query(typed: &[String], prefs: &Prefs) -> Query {
    let text = |at: usize| typed.get(at).map(String::as_str).unwrap_or_default();
    let heat = |at: usize| -> Option<ThermodynamicTemperature> {
        Typed::read(text(at), Unit::Temperature, prefs.usual(Unit::Temperature)).ok()?.temperature()
    };
    let of = |names: &[&'static str], at: usize| names.iter().find(|name| **name == text(at)).copied();
    Query {
        words: text(WORDS).to_owned(),
        fibre: of(fibres::NAMES, FIBRE),
        kind: KINDS.iter().find(|kind| kind.name == text(KIND)).map(|kind| kind.name),
        low: heat(LOW),
        high: heat(HIGH),
        dye: text(DYE).to_owned(),
        lot: LotId::read(text(LOT)),
        zone: Zone::read(text(ZONE)),
        result: of(RESULTS, RESULT).or(of(LOCK_RESULTS, RESULT)),
        from: Date::read(text(FROM)),
        to: Date::read(text(TO)),
    }
}

fn choices(names: &[&'static str]) -> Vec<(String, String)> {
    names.iter().map(|name| ((*name).to_owned(), choice(name))).collect()
}

/// The page.
#[component]
pub fn Find() -> Html {
    let desk = use_desk();
    let typed = use_cell(|| vec![String::new(); FIELDS]);
    let now = typed.get();
    let set = |at: usize| {
        let typed = typed.clone();
        move |text: String| {
            let mut now = typed.get();
            if let Some(one) = now.get_mut(at) {
                *one = text;
            }
            typed.set(now);
        }
    };
    let input = |at: usize, id: &'static str, label: String, kind: &'static str| {
        let set = set(at);
        let oninput = Callback::from(move |event: InputEvent| set(text_of(&event)));
        html! {
            <div class="figure">
                <label for={id}>{ label }</label>
                <input {id} type={kind} {oninput} value={now.get(at).cloned()} autocomplete="off" />
            </div>
        }
    };
    let pick = |at: usize, id: &'static str, label: String, options: Vec<(String, String)>| {
        let set = set(at);
        let onchange = Callback::from(move |event: Event| set(text_of(&event)));
        html! {
            <div class="figure">
                <label for={id}>{ label }</label>
                <select {id} {onchange}>
                    <option value="" selected={now.get(at).is_none_or(String::is_empty)}>{ t("web.find_any") }</option>
                    { for options.into_iter().map(|(name, label)| {
                        let selected = now.get(at).is_some_and(|now| *now == name);
                        html! { <option value={name} {selected}>{ label }</option> }
                    }) }
                </select>
            </div>
        }
    };
    let kinds = Group::ALL
        .iter()
        .flat_map(|group| KINDS.iter().filter(move |kind| kind.group == *group))
        .map(|kind| (kind.name.to_owned(), t(&format!("work.{}", kind.name))))
        .collect();
    let mut lots = Vec::new();
    for whose in [Whose::Own, Whose::Demo] {
        lots.extend(desk.model().bench(whose).lots().iter().map(|lot| (lot.id.to_string(), lot.name.clone())));
    }
    let asked = query(&now, &desk.model().prefs);
    let found: Vec<(Whose, Vec<Hit>)> = [Whose::Own, Whose::Demo]
        .into_iter()
        .map(|whose| (whose, desk.model().bench(whose).index().search(&asked)))
        .collect();
    let count: usize = found.iter().map(|(_, hits)| hits.len()).sum();
    let said = match count {
        0 => t("web.found_none"),
        count if count > SHOWN => ta("web.found_first", [Arg::Count(count as i64), Arg::Count(SHOWN as i64)]),
        count => ta("web.found", [Arg::Count(count as i64)]),
    };
    let mut room = SHOWN;
    html! {
        <>
            { title("web.nav_find") }
            { p("lead", t("web.find_lead")) }
            <form class="form work" role="search" onsubmit={Callback::from(|event: SubmitEvent| event.prevent_default())}>
                <div class="fields">
                    { input(WORDS, "find-words", t("web.find_words"), "text") }
                    { pick(FIBRE, "find-fibre", field("fibre"), choices(fibres::NAMES)) }
                    { pick(KIND, "find-kind", t("web.find_kind"), kinds) }
                    { pick(RESULT, "find-result", field("result"), choices(&[RESULTS, LOCK_RESULTS].concat())) }
                    { input(LOW, "find-low", t("web.find_low"), "text") }
                    { input(HIGH, "find-high", t("web.find_high"), "text") }
                    { input(DYE, "find-dye", t("web.find_dye"), "text") }
                    { pick(LOT, "find-lot", field("lot"), lots) }
                    { pick(ZONE, "find-zone", field("zone"), Zone::ALL.iter().map(|zone| (zone.name().to_owned(), t(zone.label()))).collect()) }
                    { input(FROM, "find-from", t("web.find_from"), "date") }
                    { input(TO, "find-to", t("web.find_to"), "date") }
                </div>
            </form>
            <p role="status" id="found"><strong>{ said }</strong></p>
            { for found.iter().map(|(whose, all)| {
                let shown = all.get(..all.len().min(room)).unwrap_or_default();
                room -= shown.len();
                let lots = desk.model().bench(*whose).lots();
                html! { if !shown.is_empty() {
                    if *whose == Whose::Demo { { p("tag demo-tag", t("web.demo")) } }
                    { hits(&desk, *whose, &Names { lots: &lots }, shown) }
                } }
            }) }
        </>
    }
}

/// Entries with their wig.
pub fn hits(desk: &Desk, whose: Whose, names: &Names<'_>, found: &[Hit]) -> Html {
    let items = found.iter().filter_map(|hit| {
        let state = desk.state(whose, hit.log);
        let done = state.works().iter().find(|done| done.entry == hit.entry)?;
        let wig = match hit.log {
            LogId::Wig(id) => {
                let name = Wig::new(&state).name().to_owned();
                html! { <a href={Route::Wig(id, Tab::Record).href()}>{ name }</a> }
            }
            LogId::Workshop => html! { { t("web.workshop") } },
        };
        Some(html! {
            <li key={hit.entry.to_string()} class="entry">
                <p class="when">{ done.done.to_string().replace('T', " ") }</p>
                <p class="what">{ names.work(&done.work) }{ " · " }{ wig }</p>
            </li>
        })
    });
    html! { <ol class="log">{ for items }</ol> }
}
