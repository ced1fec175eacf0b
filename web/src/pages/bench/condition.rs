//! What the wig is like now, or as it was after any entry.
//!
//! What it is: the replayed condition as a table. What it is not: the replay.

use measure::{prefs::Prefs, quantity::Length, say::Arg};
use record::{
    history::{entry::LogId, fold::State},
    id::LotId,
    wig::{
        condition::{Condition, ZoneCondition},
        figures::Wig,
        zone::Zone,
    },
    workshop::lots::Lot,
};
use yew::prelude::*;

use super::names::Names;
use crate::{
    pages::cap::{head_refused, laid_out},
    parts::{
        cell::use_cell,
        drawing::draw,
        pictures,
        plain::{button, columns, p},
        typed::text_of,
    },
    shell::talk::{WORDS, choice, t, ta},
    store::{desk::use_desk, model::Whose},
};

/// Whose wig.
#[derive(Properties, PartialEq)]
pub struct ConditionProps {
    /// Whose records.
    pub whose: Whose,
    /// Which log.
    pub log: LogId,
}

/// What each column is of.
const COLUMNS: &[&str] = &[
    "web.zone",
    "web.cond_bound",
    "web.cond_wet",
    "web.cond_fall",
    "web.cond_colour",
    "web.cond_length",
    "web.cond_sewn",
];

/// The table, with the way back through the work.
#[component]
pub fn AsItIs(props: &ConditionProps) -> Html {
    let desk = use_desk();
    // How many pieces of work are done at the moment looked at; none is now.
    let upto = use_cell(|| None::<usize>);
    let state = desk.state(props.whose, props.log);
    let works = state.works();
    let wig = Wig::new(&state);
    let at = upto.get().unwrap_or(works.len()).min(works.len());
    let condition = Condition::after(&wig, works.get(..at).unwrap_or_default());
    let lots = desk.model().bench(props.whose).lots();
    let names = Names { lots: &lots };
    let go = |to: Option<usize>| {
        let upto = upto.clone();
        Callback::from(move |_: MouseEvent| upto.set(to))
    };
    let picked = {
        let upto = upto.clone();
        Callback::from(move |event: Event| upto.set(text_of(&event).parse().ok()))
    };
    let prefs = desk.model().prefs.clone();
    let drawn = use_cell(|| false);
    let draw_it = {
        let drawn = drawn.clone();
        Callback::from(move |_: MouseEvent| drawn.set(!drawn.get()))
    };
    let length = |length| Arg::Length(length).words(&WORDS, &prefs);
    html! {
        <>
            if !works.is_empty() {
                <div class="figure">
                    <label for="as-it-was">{ t("web.as_it_was") }</label>
                    <select id="as-it-was" onchange={picked}>
                        <option value="0" selected={at == 0}>{ t("web.as_bought") }</option>
                        { for works.iter().enumerate().map(|(index, done)| html! {
                            <option value={(index + 1).to_string()} selected={at == index + 1}>
                                { format!("{}  {}", done.done.to_string().replace('T', " "), names.work(&done.work)) }
                            </option>
                        }) }
                    </select>
                </div>
                <p class="actions">
                    <button type="button" disabled={at == 0} onclick={go(Some(at.saturating_sub(1)))}>{ t("web.step_back") }</button>
                    <button type="button" disabled={at == works.len()} onclick={go(Some(at + 1))}>{ t("web.step_on") }</button>
                    if at != works.len() { { button("plain", t("web.to_now"), go(None)) } }
                </p>
            }
            { p("", whole(&condition)) }
            { button("", t(if drawn.get() { "web.cond_hide_cap" } else { "web.cond_show_cap" }), draw_it) }
            if drawn.get() { { cap(&state.after(at), &lots, &prefs) } }
            <div class="scroll stack condition" tabindex="0" role="group" aria-label={t("web.table")}>
                <table>
                    { columns(COLUMNS) }
                    <tbody>
                        { for Zone::ALL.iter().map(|zone| {
                            let one = condition.zone(*zone);
                            // On a phone each zone is a card, and its cells say what they are.
                            let cells = cells(one, &lots, &length).into_iter().zip(COLUMNS.iter().skip(1));
                            html! { <tr><th scope="row">{ t(zone.label()) }</th>{ for cells.map(|(cell, key)| html! {
                                <td data-of={t(key)}>{ cell }</td>
                            }) }</tr> }
                        }) }
                    </tbody>
                </table>
            </div>
        </>
    }
}

/// The cap with what was sewn into it by then.
fn cap(then: &State, lots: &[Lot], prefs: &Prefs) -> Html {
    match laid_out(then, lots) {
        Err(problems) => head_refused(&problems, prefs),
        Ok((layout, full)) => html! {
            <div class="cap-map">
                { for pictures::cap(then, &layout, &full, None, prefs).iter().map(|drawing| draw(drawing, "cap-view", None, prefs)) }
            </div>
        },
    }
}

/// What holds for the whole wig, in one line.
fn whole(condition: &Condition) -> String {
    let mut parts = Vec::new();
    if let Some(to) = &condition.handed_to {
        parts.push(ta("web.cond_away", [Arg::Text(to.clone())]));
    }
    if let Some(stored) = condition.stored {
        parts.push(choice(stored));
    } else if let Some(block) = condition.block {
        parts.push(ta("web.cond_block", [Arg::Text(choice(block))]));
    }
    if condition.worn {
        parts.push(t("web.cond_worn"));
    }
    for glued in &condition.glued {
        let to = glued.to.map(choice).unwrap_or_default();
        parts.push(ta("web.cond_glued", [Arg::Text(choice(glued.glue)), Arg::Text(to)]));
    }
    if parts.is_empty() { t("web.cond_plain") } else { parts.join("; ") }
}

fn cells(zone: &ZoneCondition, lots: &[Lot], length: &dyn Fn(Length) -> String) -> Vec<String> {
    let mut wet = vec![if zone.wet { t("web.cond_is_wet") } else { t("web.cond_is_dry") }];
    wet.extend(zone.products.iter().map(|product| choice(product)));
    if zone.flammable {
        wet.push(t("web.cond_flammable"));
    }
    let mut fall: Vec<String> = zone.texture.iter().map(|texture| choice(texture)).collect();
    if let Some(set) = &zone.set {
        fall.push(match set.temperature {
            Some(heat) => ta("web.cond_set_at", [Arg::Temperature(heat)]),
            None => t("web.cond_set"),
        });
    }
    let mut colour: Vec<String> =
        zone.dyed.iter().map(|dyed| dyed.colour.clone().unwrap_or_else(|| choice(dyed.class))).collect();
    if zone.undyed_inside {
        colour.push(t("web.cond_undyed_inside"));
    }
    let mut cut: Vec<String> = zone.longest.map(length).into_iter().collect();
    if zone.final_cut {
        cut.push(t("web.cond_final"));
    }
    vec![
        zone.bound.map(choice).unwrap_or_else(|| t("web.cond_loose")),
        wet.join(", "),
        fall.join(", "),
        colour.join(", "),
        cut.join(", "),
        sewn(zone, lots, length),
    ]
}

/// The weft of a zone: for each lot how many pieces, and how much in all.
fn sewn(zone: &ZoneCondition, lots: &[Lot], length: &dyn Fn(Length) -> String) -> String {
    let mut by_lot: Vec<(Option<LotId>, i64, Length)> = Vec::new();
    for sewn in &zone.sewn {
        match by_lot.iter_mut().find(|(lot, ..)| *lot == sewn.lot) {
            Some((_, count, all)) => {
                *count += 1;
                *all += sewn.length;
            }
            None => by_lot.push((sewn.lot, 1, sewn.length)),
        }
    }
    let one = |(lot, count, all): (Option<LotId>, i64, Length)| {
        let name = lots.iter().find(|one| Some(one.id) == lot).map(|lot| lot.name.clone()).unwrap_or_default();
        let count = if count == 1 { t("web.cond_row") } else { ta("web.cond_rows", [Arg::Count(count)]) };
        format!("{count}, {} {name}", length(all))
    };
    by_lot.into_iter().map(one).collect::<Vec<_>>().join("; ")
}
