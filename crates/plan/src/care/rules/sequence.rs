//! Order: sewing before dyeing, straightening before sewing, curling before the last cut.
//!
//! What it is: checks of what should have come first. What it is not: a plan in another order (see `order`).

use measure::say::{Arg, Say};
use record::{
    field::Value,
    trade::sources::PRACTICE,
    wig::{work::Work, zone::Zone},
    workshop::locks::lot_of,
};

use crate::{
    care::bench::{Case, Check, Told, check, choice, zones_said},
    working::Weight::Care,
};

/// The family.
pub static CHECKS: &[Check] = &[
    check("weft_after_dye", "rule.weft_after_dye", Care, &PRACTICE, weft_after_dye),
    check("weft_on_crimped", "rule.weft_on_crimped", Care, &PRACTICE, weft_on_crimped),
    check("curl_after_cut", "rule.curl_after_cut", Care, &PRACTICE, curl_after_cut),
    check("cut_before_curl", "rule.cut_before_curl", Care, &PRACTICE, cut_before_curl),
];

fn weft_after_dye(case: &Case<'_>) -> Option<Told> {
    if case.kind != "sew_weft" {
        return None;
    }
    let lot = lot_of(case.work)?;
    if case.condition.dyed_lots.iter().any(|(dyed, _)| *dyed == lot) {
        return None;
    }
    let zones = case.zones_where(&|zone| !zone.dyed.is_empty())?;
    let name = case
        .bench
        .lots
        .iter()
        .find(|one| one.id == lot)
        .map_or(Arg::Key("care.something"), |lot| Arg::Text(lot.name.clone()));
    Some((Say::new("care.weft_after_dye", [zones, name]), Say::key("care.weft_after_dye_do")))
}

/// Crimped fibre is straightened before weft lies on it; wavy fibre only where the plan says it will be.
fn weft_on_crimped(case: &Case<'_>) -> Option<Told> {
    if case.kind != "sew_weft" {
        return None;
    }
    let planned = |zone: Zone| case.later.iter().any(|work| work.kind().name == "straighten" && work.zones().has(zone));
    let falls = |zone: Zone| {
        let falls = case.condition.zone(zone).texture?;
        (falls == "crimped" || (falls == "wavy" && planned(zone))).then_some(falls)
    };
    let zones: Vec<Zone> = case.zones.iter().copied().filter(|zone| falls(*zone).is_some()).collect();
    let falls = zones.first().and_then(|zone| falls(*zone))?;
    Some((
        Say::new("care.weft_on_crimped", [zones_said(&zones)?, Arg::Key(choice(falls))]),
        Say::key("care.weft_on_crimped_do"),
    ))
}

/// Whether work winds fibre so that it hangs shorter.
fn curls(work: &Work) -> bool {
    match work.kind().name {
        "heat_set" => work.choice("winding") != Some("flat_wrap"),
        "gather" => work.choice("gathered") == Some("rollers"),
        _ => false,
    }
}

fn rod(work: &Work) -> Option<Arg> {
    let width = work.get("diameter").and_then(Value::typed).and_then(|typed| typed.length())?;
    Some(Say::new("care.on_rod", [Arg::Gap(width)]).into())
}

fn curl_after_cut(case: &Case<'_>) -> Option<Told> {
    if !curls(case.work) {
        return None;
    }
    // Wound on rollers, it was told when they went in.
    let wound = case.kind == "heat_set";
    let zones = case.zones_where(&|zone| zone.final_cut && !(wound && zone.bound == Some("rollers")))?;
    let rod = rod(case.work).unwrap_or(Arg::Key("care.a_curl"));
    Some((Say::new("care.curl_after_cut", [zones, rod]), Say::key("care.curl_after_cut_do")))
}

fn cut_before_curl(case: &Case<'_>) -> Option<Told> {
    // In a plan the curl itself tells it.
    if case.planned || !matches!(case.kind, "cut" | "fitting") || case.work.yes("final_cut") != Some(true) {
        return None;
    }
    let curl =
        case.later.iter().find(|later| curls(later) && case.zones.iter().any(|zone| later.zones().has(*zone)))?;
    let zones: Vec<Zone> = case.zones.iter().copied().filter(|zone| curl.zones().has(*zone)).collect();
    let rod = rod(curl).unwrap_or(Arg::Key("care.a_curl"));
    Some((Say::new("care.cut_before_curl", [zones_said(&zones)?, rod]), Say::key("care.cut_before_curl_do")))
}
