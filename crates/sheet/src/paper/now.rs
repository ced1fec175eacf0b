//! How the wig looks now, so that somebody who never saw it knows that it is the right one and in the right state.
//!
//! What it is: the replayed condition in words. What it is not: names of people it is with.

use measure::say::Arg;
use plan::care;
use record::{
    field::Value,
    wig::{
        condition::{Condition, ZoneCondition},
        work::sew_weft::SewWeft,
        zone::Zone,
    },
};

use super::{
    Facts,
    model::{Block, Line, Sort},
    scribe::{Scribe, clean, figure, line},
};

/// The part.
pub(super) fn now(facts: &Facts<'_>, condition: &Condition, scribe: &Scribe<'_>, blocks: &mut Vec<Block>) {
    blocks.push(Block::Heading(scribe.key("sheet.now")));
    let mut lines = whole(condition, scribe);
    lines.extend(sewn(facts, scribe));
    let mut groups: Vec<(String, Vec<Zone>)> = Vec::new();
    for zone in Zone::ALL {
        let words = zone_words(condition.zone(zone), scribe);
        match groups.iter_mut().find(|(one, _)| *one == words) {
            Some((_, zones)) => zones.push(zone),
            None => groups.push((words, vec![zone])),
        }
    }
    for (words, zones) in groups {
        lines.push(figure(scribe.zones(&zones), words));
    }
    blocks.push(Block::Lines(lines));
    let lines = overruled(facts, scribe);
    if !lines.is_empty() {
        blocks.push(Block::Item(scribe.key("sheet.overruled"), lines));
    }
}

fn whole(condition: &Condition, scribe: &Scribe<'_>) -> Vec<Line> {
    let mut lines = Vec::new();
    let mut says = |text: String| lines.push(line(Sort::Plain, text));
    if condition.handed_to.is_some() {
        says(scribe.key("sheet.now_away"));
    }
    match (condition.stored, condition.block) {
        (Some(stored), _) => says(scribe.with("sheet.now_stored", [Arg::Text(scribe.choice(stored))])),
        (None, Some(block)) => says(scribe.with("sheet.now_block", [Arg::Text(scribe.choice(block))])),
        (None, None) => {}
    }
    if condition.worn {
        says(scribe.key("sheet.now_worn"));
    }
    for glued in &condition.glued {
        let to = scribe.choice(glued.to.unwrap_or("cap"));
        says(scribe.with("sheet.now_glued", [Arg::Text(scribe.choice(glued.glue)), Arg::Text(to)]));
    }
    lines
}

/// Weft that is in already; told once, because a row may run through many zones.
fn sewn(facts: &Facts<'_>, scribe: &Scribe<'_>) -> Option<Line> {
    let (mut rows, mut length) = (0, None);
    for done in facts.state().works() {
        if let Some(weft) = SewWeft::of(&done.work) {
            rows += i64::from(weft.sewn_as == "row");
            length = Some(length.map_or(weft.of_lot(), |sum| sum + weft.of_lot()));
        }
    }
    Some(line(Sort::Plain, scribe.with("sheet.now_sewn", [Arg::Length(length?), Arg::Count(rows)])))
}

/// A zone in one breath.
pub(super) fn zone_words(zone: &ZoneCondition, scribe: &Scribe<'_>) -> String {
    let mut parts: Vec<String> = Vec::new();
    parts.push(match zone.bound {
        Some(by) => scribe.with("sheet.zone_bound", [Arg::Text(scribe.choice(by))]),
        None => scribe.key("sheet.zone_loose"),
    });
    parts.push(scribe.key(if zone.wet { "sheet.zone_wet" } else { "sheet.zone_dry" }));
    parts.extend(zone.texture.map(|texture| scribe.choice(texture)));
    if let Some(set) = &zone.set {
        parts.push(match set.temperature {
            Some(heat) => scribe.with("sheet.zone_set_at", [Arg::Temperature(heat)]),
            None => scribe.key("sheet.zone_set"),
        });
    }
    for dyed in &zone.dyed {
        let colour = dyed.colour.as_deref().map_or_else(|| scribe.choice(dyed.class), clean);
        parts.push(scribe.with("sheet.zone_dyed", [Arg::Text(colour)]));
    }
    if zone.undyed_inside {
        parts.push(scribe.key("sheet.zone_undyed"));
    }
    if !zone.products.is_empty() {
        let mut products: Vec<String> = Vec::new();
        for product in &zone.products {
            products.push(scribe.choice(product));
        }
        parts.push(scribe.with("sheet.zone_products", [Arg::Text(products.join(", "))]));
    }
    if zone.flammable {
        parts.push(scribe.key("sheet.zone_flammable"));
    }
    if let Some(longest) = zone.longest {
        let key = if zone.final_cut { "sheet.zone_final" } else { "sheet.zone_cut" };
        parts.push(scribe.with(key, [Arg::Length(longest)]));
    }
    parts.join("; ")
}

/// Checks that somebody overruled so far, with their reasons: who goes on has to know.
fn overruled(facts: &Facts<'_>, scribe: &Scribe<'_>) -> Vec<Line> {
    let mut lines = Vec::new();
    for done in facts.state().works() {
        let name = scribe.with(
            "sheet.noted",
            [Arg::Date(done.done.date()), Arg::Text(scribe.words.get(&format!("work.{}", done.work.kind().name)))],
        );
        for text in overruled_words(&done.work, scribe) {
            lines.push(Line { sort: Sort::Care, name: name.clone(), text });
        }
    }
    lines
}

/// The rules overruled for a piece of work, and why.
pub(super) fn overruled_words(work: &record::wig::work::Work, scribe: &Scribe<'_>) -> Vec<String> {
    let mut rules: Vec<String> = Vec::new();
    for rule in care::overruled(work) {
        rules.push(scribe.key(rule.label));
    }
    if rules.is_empty() {
        return Vec::new();
    }
    let why = work.get("judgement").and_then(Value::words).map_or_else(|| scribe.key("sheet.no_reason"), clean);
    vec![scribe.with("sheet.overruled_because", [Arg::Text(rules.join("; ")), Arg::Text(why)])]
}
