//! Sets: undone by heat or water, or let go too early.
//!
//! What it is: checks that keep a set. What it is not: how one is made.

use measure::{
    quantity::ThermodynamicTemperature,
    say::{Arg, Say},
};
use record::{
    trade::{
        heat::{Medium, Suits, window},
        sources::PRACTICE,
    },
    wig::condition::{LOOSENS_WITHIN, ZoneCondition, undoes},
};
use uom::si::thermodynamic_temperature::kelvin;

use crate::{
    care::{
        bench::{Case, Check, Met, Told, check, fibre_name, of_fact, over},
        limit::{medium_said, own_window},
    },
    working::Weight::{Care, Consider, Stop},
};

/// The family.
pub static CHECKS: &[Check] = &[
    check("set_undone", "rule.set_undone", Stop, &PRACTICE, set_undone),
    check("water_undoes_hair_set", "rule.water_undoes_hair_set", Consider, &PRACTICE, water_undoes_hair_set),
    check("steam_over_set", "rule.steam_over_set", Care, &PRACTICE, steam_over_set),
    check("iron_over_set", "rule.iron_over_set", Consider, &PRACTICE, iron_over_set),
    check("set_too_cool", "rule.set_too_cool", Care, &PRACTICE, too_cool),
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
    Some(match (heating.heat, lowest_set(case, &undone)) {
        (Some(heat), Some(made)) if !straightens && !wetted => (
            Say::new("care.set_undone_by", [zones, Arg::Temperature(made), Arg::Temperature(heat)]),
            Say::new("care.set_undone_below", [below(made)]),
        ),
        _ => (Say::new("care.set_undone", [zones, medium_said(heating.medium)]), Say::key("care.set_undone_do")),
    })
}

/// The coolest set among the zones where something holds: it goes first.
fn lowest_set(case: &Case<'_>, holds: &dyn Fn(&ZoneCondition) -> bool) -> Option<ThermodynamicTemperature> {
    let zones = case.zones.iter().map(|zone| case.condition.zone(*zone)).filter(|zone| holds(zone));
    zones.filter_map(|zone| zone.set.as_ref()?.temperature).reduce(|low, one| if one < low { one } else { low })
}

/// What heat must stay below so as not to loosen a set.
fn below(made: ThermodynamicTemperature) -> Arg {
    Arg::Temperature(ThermodynamicTemperature::new::<kelvin>(made.value - LOOSENS_WITHIN))
}

/// Steam of which nobody said how hot it is, over a set that boiling water would undo.
fn steam_over_set(case: &Case<'_>) -> Option<Told> {
    let heating = case.heating.filter(|heating| heating.medium == Medium::Steam && heating.heat.is_none())?;
    if matches!(case.kind, "heat_set" | "straighten") {
        return None;
    }
    let heat = case.work.heat_or_steam()?;
    let undone = |zone: &ZoneCondition| {
        zone.bound.is_none() && zone.set.as_ref().is_some_and(|set| undoes(Some(heat), set.temperature))
    };
    let zones = case.zones_where(&undone)?;
    let made = lowest_set(case, &undone)?;
    Some((
        Say::new(
            "care.steam_over_set",
            [zones, medium_said(heating.medium), Arg::Temperature(heat), Arg::Temperature(made)],
        ),
        Say::new("care.steam_over_set_do", [below(made)]),
    ))
}

/// An iron hotter than a set takes it out where it goes; of one without a figure nobody knows, but it is hotter than
/// water, steam and air.
fn iron_over_set(case: &Case<'_>) -> Option<Told> {
    let heating = case.heating.filter(|heating| heating.medium == Medium::Iron)?;
    if !matches!(case.kind, "dress" | "reset" | "heat_set") {
        return None;
    }
    let zones = case.zones_where(&|zone| {
        zone.bound.is_none()
            && zone.set.as_ref().is_some_and(|set| match (heating.heat, set.temperature) {
                (Some(heat), Some(made)) => over(heat, made),
                _ => set.medium != Some(Medium::Iron.name()),
            })
    })?;
    Some((Say::new("care.iron_over_set", [zones]), Say::key("care.iron_over_set_do")))
}

/// Heat below what sets the fibre, or a way of heating that only dries it; an own test lock that held as hot knows better.
fn too_cool(case: &Case<'_>) -> Option<Told> {
    let heating = case.heating.filter(|_| case.kind == "heat_set" && case.work.choice("result") != Some("failed"))?;
    let fibre = case.bench.wig.fibre();
    let (name, medium) = (fibre_name(fibre), medium_said(heating.medium));
    let own = own_window(case.bench, &Met { fibre, lot: None }, heating.medium);
    if heating.heat.zip(own).is_some_and(|(heat, own)| own.held_at(heat)) {
        return None;
    }
    match &window(fibre, heating.medium).suits {
        Suits::Sets(sets) => {
            let (heat, least) = (heating.heat?, of_fact(sets, sets.low));
            over(least, heat).then(|| {
                (
                    Say::new("care.set_too_cool", [name, medium, Arg::Temperature(least), Arg::Temperature(heat)]),
                    Say::new("care.set_too_cool_do", [Arg::Temperature(of_fact(sets, sets.likely))]),
                )
            })
        }
        // Hair and the like hold what they dry in.
        Suits::Dries(_) if !fibre.heat.holds_by_drying => {
            let water = window(fibre, Medium::Water).range()?;
            Some((
                Say::new("care.only_dries", [name, medium]),
                Say::new("care.only_dries_do", [Arg::Temperature(of_fact(water, water.likely))]),
            ))
        }
        _ => None,
    }
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
