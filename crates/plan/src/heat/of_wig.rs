//! A wig's own limit, window and test locks, and a plan as work to be done.
//!
//! What it is: the bridge from the bench to the planner and back to the record. What it is not: the planner.

use measure::{
    order,
    typed::Typed,
    unit::Unit::{Celsius, Millimetre, Minute},
};
use record::{
    history::entry::Of,
    trade::{fibres, heat::Medium},
    wig::{
        condition::Condition,
        figures::Wig,
        zone::{Zone, Zones},
    },
    workshop::locks::{self, OwnWindow, TestLock},
};

use super::plan::{Ceiling, HeatPlan};
use crate::{
    care::{self, Bench, Limits},
    heat::tool::celsius,
    lengths::{ZoneNeed, rods::Winding},
};

/// The lowest of everything that the heat reaches in some zones: fibre, label, own locks; and cap, glue and block unless
/// somebody said that they are kept out of it.
pub fn ceiling(bench: &Bench<'_>, condition: &Condition, zones: &[Zone], medium: Medium) -> Option<Ceiling> {
    let limit = care::limit(bench, condition, zones, medium);
    let lowest = if cap_heated(bench.wig) { limit.lowest() } else { limit.lowest_of(FIBRES) };
    lowest.map(|part| Ceiling {
        most: part.most,
        name: part.name.clone(),
        ground: part.ground,
        kept_out: !FIBRES.contains(&part.limits),
    })
}

const FIBRES: &[Limits] = &[Limits::Fibre, Limits::Label, Limits::Locks];

/// Whether the heat reaches the cap and what is on it; where nobody said, it does.
pub fn cap_heated(wig: &Wig<'_>) -> bool {
    wig.held("cap_heated", Of::Wig).and_then(|held| held.value.as_ref()?.yes()) != Some(false)
}

/// What test locks of this wig, else of its fibre, found out.
pub fn own(bench: &Bench<'_>, medium: Medium) -> Option<OwnWindow> {
    locks::window_of_wig(bench.locks, bench.wig, medium)
}

/// The test locks that speak of a wig's own fibre: cut from it, else of any of that fibre where it is known.
pub fn locks_of<'a>(bench: &Bench<'a>) -> Vec<&'a TestLock> {
    let fibre = bench.wig.fibre();
    let of_fibre = |lock: &&TestLock| lock.lot.is_none() && lock.fibre.name == fibre.name;
    let here = |lock: &&TestLock| bench.wig.state().works().iter().any(|done| done.entry == lock.entry);
    let own: Vec<&TestLock> = bench.locks.iter().filter(of_fibre).filter(here).collect();
    if !own.is_empty() || fibre.name == fibres::NAMES[0] {
        return own;
    }
    bench.locks.iter().filter(|lock| lock.fibre.name == fibre.name).collect()
}

/// Zones wound alike: the same rod as one of them, or all that stay straight.
pub fn alike(needs: &[ZoneNeed], zone: Zone) -> Vec<Zone> {
    let rod = |need: &ZoneNeed| need.rod.as_ref().map(|rod| rod.rod.value);
    let Some(one) = needs.iter().find(|need| need.look.zone == zone) else { return vec![zone] };
    let same = |need: &&ZoneNeed| match (rod(need), rod(one)) {
        (Some(rod), Some(other)) => rod > other - 1e-6 && rod < other + 1e-6,
        (None, None) => true,
        _ => false,
    };
    needs.iter().filter(same).map(|need| need.look.zone).collect()
}

/// A plan as work: the kind's name and what stands in its fields.
pub fn work(
    plan: &HeatPlan,
    wig: &Wig<'_>,
    need: Option<&ZoneNeed>,
    zones: &[Zone],
) -> (&'static str, Vec<(&'static str, String)>) {
    let plain = |amount, unit| Typed::plain(amount, unit).text().to_owned();
    let medium = plan.tool.medium;
    // Of an iron its dial is recorded, of all else what meets the fibre.
    let heat = if medium == Medium::Iron { plan.tool.shows } else { plan.tool.meets };
    let mut fields = vec![
        ("medium", medium.name().to_owned()),
        ("temperature", plain(libm::round(celsius(heat) * 10.0) / 10.0, Celsius)),
    ];
    if let Some([_, likely, _]) = plan.heating {
        // To a twentieth of a minute, which is as short as a field holds.
        fields.push(("hold", plain(order::within(libm::ceil(likely / 3.0) / 20.0, 0.05, 1440.0), Minute)));
    }
    let all = Zone::ALL.into_iter().all(|zone| zones.contains(&zone));
    let named = zones
        .iter()
        .fold(None, |named: Option<Zones>, zone| Some(named.map_or(Zones::one(*zone), |named| named.and(*zone))));
    if let Some(named) = named.filter(|_| !all) {
        fields.push(("zones", named.to_string()));
    }
    let Some(rod) = need.and_then(|need| need.rod.as_ref()) else { return ("straighten", fields) };
    fields.push(("diameter", plain(rod.rod.get::<measure::quantity::units::millimeter>(), Millimetre)));
    fields.push(("winding", Winding::of(wig, medium).name().to_owned()));
    if plan.tool.poured {
        fields.push(("poured", "yes".to_owned()));
    }
    ("heat_set", fields)
}
