//! Heat: too hot, untested, on wet fibre, near what burns, on a head.
//!
//! What it is: checks of hot steps. What it is not: what heat does to a set (see `set`).

use measure::say::{Arg, Say};
use record::trade::{
    fibres,
    heat::{Medium, NO_IRON_ON_WET_HAIR, Suits, limit as fibre_limit, window},
    sources::PRACTICE,
};

use crate::{
    care::{
        bench::{Case, Check, Heating, Met, Told, check, fibre_name, of_fact, over},
        limit::{self, Limit, Limits, medium_said, own_window},
    },
    heat::of_wig::cap_heated,
    working::Weight::{Care, Stop},
};

/// The family.
pub static CHECKS: &[Check] = &[
    check("too_hot", "rule.too_hot", Stop, &PRACTICE, too_hot),
    check("cap_too_hot", "rule.cap_too_hot", Care, &PRACTICE, cap_too_hot),
    check("never_this_heat", "rule.never_this_heat", Stop, &PRACTICE, never),
    check("untested_heat", "rule.untested_heat", Care, &PRACTICE, untested),
    check("unknown_untested", "rule.unknown_untested", Stop, &PRACTICE, unknown_untested),
    check("iron_on_wet_hair", "rule.iron_on_wet_hair", Stop, &NO_IRON_ON_WET_HAIR, iron_on_wet_hair),
    check("iron_on_wet", "rule.iron_on_wet", Care, &PRACTICE, iron_on_wet),
    check("flammable_then_heat", "rule.flammable_then_heat", Stop, &PRACTICE, flammable_then_heat),
    check("heat_while_worn", "rule.heat_while_worn", Stop, &PRACTICE, heat_while_worn),
];

/// The limit of a hot step, whatever it is done to.
pub(super) fn limit_of(case: &Case<'_>, medium: Medium) -> Limit {
    limit::of(case.bench, case.condition, &case.zones, case.loose(), medium)
}

fn above(case: &Case<'_>, sorts: &[Limits]) -> Option<Told> {
    let Heating { medium, heat } = case.heating?;
    let heat = heat?;
    let limit = limit_of(case, medium);
    let lowest = limit.lowest_of(sorts).filter(|part| over(heat, part.most))?;
    Some((
        Say::new("care.too_hot", [Arg::Temperature(lowest.most), lowest.name.clone().into(), Arg::Temperature(heat)]),
        Say::new("care.too_hot_do", [Arg::Temperature(lowest.most)]),
    ))
}

fn too_hot(case: &Case<'_>) -> Option<Told> {
    // Where it may never be, by how much is nobody's question.
    if never(case).is_some() {
        return None;
    }
    above(case, &[Limits::Fibre, Limits::Label, Limits::Locks])
}

fn cap_too_hot(case: &Case<'_>) -> Option<Told> {
    // Somebody said that the heat of sets leaves the cap out.
    if case.kind == "heat_set" && !cap_heated(case.bench.wig) {
        return None;
    }
    let sorts = [Limits::Cap, Limits::Block];
    let told = above(case, &sorts)?;
    let Heating { medium, heat } = case.heating?;
    // A set that the fibre needs as hot is not made cooler: then the cap is kept out of it.
    let fibre = case.bench.wig.fibre();
    let Suits::Sets(sets) = &window(fibre, medium).suits else { return Some(told) };
    let limit = limit_of(case, medium);
    let (part, needs) = (limit.lowest_of(&sorts)?, of_fact(sets, sets.likely));
    if case.kind != "heat_set" || !over(needs, part.most) {
        return Some(told);
    }
    let [most, needs, heat] = [part.most, needs, heat?].map(Arg::Temperature);
    Some((
        Say::new("care.cap_below_set", [fibre_name(fibre), needs, part.name.clone().into(), most.clone(), heat]),
        Say::new("care.cap_below_set_do", [part.name.clone().into(), most]),
    ))
}

fn never(case: &Case<'_>) -> Option<Told> {
    let medium = case.heating?.medium;
    let met = case.met().into_iter().find(|met| window(met.fibre, medium).suits == Suits::Never)?;
    let water = fibre_limit(met.fibre, Medium::Water);
    Some((
        Say::new("care.never_this_heat", [met.name(), medium_said(medium)]),
        Say::new("care.never_this_heat_do", [Arg::Temperature(of_fact(water, water.likely))]),
    ))
}

/// Fibre that needs a test lock first and has none that held as hot.
fn needs_test<'a>(case: &Case<'a>, known: bool) -> Option<(Met<'a>, Heating)> {
    let heating = case.heating?;
    // A lock planned before this step is taken to hold.
    if case.planned && case.condition.test_locks > 0 {
        return None;
    }
    let asks = |met: &Met<'_>| {
        let Suits::AfterTest(range) = &window(met.fibre, heating.medium).suits else { return false };
        if (met.fibre.name != fibres::NAMES[0]) != known {
            return false;
        }
        let held = own_window(case.bench, met, heating.medium);
        match heating.heat {
            // Below the first step of a test nothing happens to any fibre.
            Some(heat) => heat >= of_fact(range, range.low) && !held.is_some_and(|held| held.held_at(heat)),
            None => heating.medium != Medium::Water && held.is_none_or(|held| held.held_to.is_none()),
        }
    };
    case.met().into_iter().find(asks).map(|met| (met, heating))
}

fn ask_for_test(met: &Met<'_>, heating: Heating, key: &'static str) -> Told {
    let steps = window(met.fibre, heating.medium).range();
    let steps = steps.map_or_else(Vec::new, |range| {
        [range.low, range.high].map(|step| Arg::Temperature(of_fact(range, step))).to_vec()
    });
    (Say::new(key, [met.name(), medium_said(heating.medium)]), Say::new("care.test_first", steps))
}

fn untested(case: &Case<'_>) -> Option<Told> {
    needs_test(case, true).map(|(met, heating)| ask_for_test(&met, heating, "care.untested_heat"))
}

fn unknown_untested(case: &Case<'_>) -> Option<Told> {
    needs_test(case, false).map(|(met, heating)| ask_for_test(&met, heating, "care.unknown_untested"))
}

fn wet_under_iron(case: &Case<'_>, hair: bool) -> Option<Told> {
    if case.heating?.medium != Medium::Iron || case.met().iter().any(|met| met.fibre.name == "human_hair") != hair {
        return None;
    }
    let zones = case.zones_where(&|zone| zone.wet)?;
    let key = if hair { "care.iron_on_wet_hair" } else { "care.iron_on_wet" };
    Some((Say::new(key, [zones]), Say::key("care.iron_on_wet_do")))
}

fn iron_on_wet_hair(case: &Case<'_>) -> Option<Told> {
    wet_under_iron(case, true)
}

fn iron_on_wet(case: &Case<'_>) -> Option<Told> {
    wet_under_iron(case, false)
}

fn flammable_then_heat(case: &Case<'_>) -> Option<Told> {
    let medium = case.heating?.medium;
    if !matches!(medium, Medium::Iron | Medium::Dryer) {
        return None;
    }
    let zones = case.zones_where(&|zone| zone.flammable)?;
    Some((Say::new("care.flammable_then_heat", [zones, medium_said(medium)]), Say::key("care.flammable_then_heat_do")))
}

fn heat_while_worn(case: &Case<'_>) -> Option<Told> {
    let medium = case.heating?.medium;
    if case.work.yes("on_head") != Some(true) {
        return None;
    }
    Some((Say::new("care.heat_while_worn", [medium_said(medium)]), Say::key("care.heat_while_worn_do")))
}
