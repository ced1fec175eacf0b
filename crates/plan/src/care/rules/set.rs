//! Sets: undone by heat or water, or let go too early.
//!
//! What it is: checks that keep a set. What it is not: how one is made.

use measure::say::{Arg, Say};
use record::{
    trade::{heat::Medium, sources::PRACTICE},
    wig::condition::{ZoneCondition, undoes},
};

use crate::{
    care::{
        bench::{Case, Check, Told, check, of_fact},
        limit::medium_said,
    },
    working::Weight::{Care, Consider, Stop},
};

/// The family.
pub static CHECKS: &[Check] = &[
    check("set_undone", "rule.set_undone", Stop, &PRACTICE, set_undone),
    check("water_undoes_hair_set", "rule.water_undoes_hair_set", Consider, &PRACTICE, water_undoes_hair_set),
    check("set_let_go_warm", "rule.set_let_go_warm", Care, &PRACTICE, let_go_warm),
    check("set_let_go_wet", "rule.set_let_go_wet", Care, &PRACTICE, let_go_wet),
];

fn of_hair(case: &Case<'_>) -> bool {
    case.bench.wig.fibre().name == "human_hair"
}

/// A bath or steam that is not itself a set; straightening takes out every set.
fn set_undone(case: &Case<'_>) -> Option<Told> {
    let heating = case.heating?;
    let straightens = case.kind == "straighten";
    if case.kind == "heat_set" || !(straightens || heating.medium.wet()) {
        return None;
    }
    let hair = of_hair(case);
    // A wash between wearings is hair's ordinary life; see the next one.
    if hair && matches!(case.kind, "wash" | "rinse" | "disinfect") {
        return None;
    }
    let wetted = hair && heating.medium == Medium::Water;
    let undone = |zone: &ZoneCondition| {
        let Some(set) = &zone.set else { return false };
        zone.bound.is_none() && (straightens || wetted || undoes(heating.heat, set.temperature))
    };
    let zones = case.zones_where(&undone)?;
    let made = case.first(|zone| zone.set.as_ref().filter(|_| undone(zone)).map(|set| set.temperature));
    let what = match (heating.heat, made.flatten()) {
        (Some(heat), Some(made)) if !straightens && !wetted => {
            Say::new("care.set_undone_by", [zones, Arg::Temperature(made), Arg::Temperature(heat)])
        }
        _ => Say::new("care.set_undone", [zones, medium_said(heating.medium)]),
    };
    Some((what, Say::key("care.set_undone_do")))
}

fn water_undoes_hair_set(case: &Case<'_>) -> Option<Told> {
    if !of_hair(case) || !matches!(case.kind, "wash" | "rinse" | "disinfect") || case.heating.is_none() {
        return None;
    }
    let zones = case.zones_where(&|zone| zone.set.is_some() && zone.bound.is_none())?;
    Some((Say::new("care.water_undoes_hair_set", [zones]), Say::key("care.water_undoes_hair_set_do")))
}

fn let_go_warm(case: &Case<'_>) -> Option<Told> {
    let said = case.work.yes("cooled");
    let zones = match case.kind {
        "heat_set" if said == Some(false) => case.zones_where(&|_| true),
        "release" if said == Some(false) || (said.is_none() && !case.planned) => case
            .zones_where(&|zone| zone.bound.is_some() && zone.set.as_ref().is_some_and(|set| set.cooled != Some(true))),
        _ => None,
    }?;
    let release = &case.bench.wig.fibre().heat.release;
    let cool = Arg::Temperature(of_fact(release, release.likely));
    Some((Say::new("care.set_let_go_warm", [zones]), Say::new("care.set_let_go_warm_do", [cool])))
}

fn let_go_wet(case: &Case<'_>) -> Option<Told> {
    let heat = case.bench.wig.fibre().heat;
    if case.kind != "release" || !heat.must_dry || case.work.yes("dried") == Some(true) {
        return None;
    }
    let zones = case.zones_where(&|zone| zone.bound.is_some() && zone.set.is_some() && zone.wet)?;
    let key = if heat.holds_by_drying { "care.set_let_go_wet_gone" } else { "care.set_let_go_wet" };
    Some((Say::new(key, [zones]), Say::key("care.set_let_go_wet_do")))
}
