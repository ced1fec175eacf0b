//! Lots: two dye lots or two batches of dye side by side.
//!
//! What it is: checks of weft that shall look alike. What it is not: colours that are meant to differ.

use measure::say::{Arg, Say};
use record::{
    trade::sources::PRACTICE,
    wig::{condition::ZoneCondition, zone::Zone},
    workshop::{locks::lot_of, lots::Lot},
};

use crate::{
    care::bench::{Case, Check, Told, check},
    working::Weight::Care,
};

/// The family.
pub static CHECKS: &[Check] = &[
    check("dye_lots_mixed", "rule.dye_lots_mixed", Care, &PRACTICE, dye_lots),
    check("dye_batches_mixed", "rule.dye_batches_mixed", Care, &PRACTICE, dye_batches),
];

/// Zones that show; hair that hangs down covers the nape.
fn shown<'c>(case: &'c Case<'_>) -> impl Iterator<Item = (Zone, &'c ZoneCondition)> {
    let down = case.bench.wig.worn() == "down";
    case.zones
        .iter()
        .filter(move |zone| !(down && **zone == Zone::Nape))
        .map(|zone| (*zone, case.condition.zone(*zone)))
}

/// Lots bought as one colour, of two dye lots.
fn differ(one: &Lot, other: &Lot) -> bool {
    let said = |text: &str| text.trim().to_lowercase();
    one.id != other.id
        && !said(&one.dye_lot).is_empty()
        && !said(&other.dye_lot).is_empty()
        && said(&one.dye_lot) != said(&other.dye_lot)
        && said(&one.colour) == said(&other.colour)
}

fn dye_lots(case: &Case<'_>) -> Option<Told> {
    let lot = |id| case.bench.lots.iter().find(|lot| lot.id == id);
    if case.kind != "sew_weft" {
        return None;
    }
    let new = lot_of(case.work).and_then(lot)?;
    let (zone, old) = shown(case).find_map(|(zone, condition)| {
        let old = condition.sewn.iter().filter_map(|sewn| sewn.lot.and_then(lot)).find(|old| differ(old, new))?;
        Some((zone, old))
    })?;
    let says = [Arg::Key(zone.label()), Arg::Text(old.dye_lot.clone()), Arg::Text(new.dye_lot.clone())];
    Some((Say::new("care.dye_lots_mixed", says), Say::key("care.dye_lots_mixed_do")))
}

/// Weft dyed in one batch beside fibre dyed in another.
fn dye_batches(case: &Case<'_>) -> Option<Told> {
    if case.kind != "sew_weft" {
        return None;
    }
    let lot = lot_of(case.work)?;
    let new = case.condition.dyed_lots.iter().rev().find(|(dyed, _)| *dyed == lot)?.1.as_ref()?;
    let (zone, old) = shown(case).find_map(|(zone, condition)| {
        let old = condition.dyed.last()?.batch.as_ref()?;
        (old.trim() != new.trim()).then_some((zone, old))
    })?;
    let says = [Arg::Key(zone.label()), Arg::Text(old.clone()), Arg::Text(new.clone())];
    Some((Say::new("care.dye_batches_mixed", says), Say::key("care.dye_batches_mixed_do")))
}
