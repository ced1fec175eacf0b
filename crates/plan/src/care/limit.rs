//! How hot a step may be: the lowest of everything that the heat reaches.
//!
//! What it is: fibre table, maker's label, own test locks, added weft, parts of the cap, glue and block, each with its
//! ground. What it is not: how hot a set should be (see the heat planner).

use measure::{
    order,
    quantity::ThermodynamicTemperature,
    say::{Arg, Say},
};
use record::{
    history::entry::Of,
    id::LotId,
    trade::{
        bears::{self, Bearer, Sort},
        caps,
        heat::{self, Medium},
    },
    wig::{condition::Condition, zone::Zone},
    workshop::locks::{self, OwnWindow},
};

use super::bench::{Bench, Met, choice, met, of_fact};
use crate::working::Ground;

/// What it is that limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Limits {
    /// A fibre, by the table.
    Fibre,
    /// A maker's label.
    Label,
    /// This person's own test locks.
    Locks,
    /// A part of the cap.
    Cap,
    /// Glue in place.
    Glue,
    /// The block it stands on.
    Block,
}

/// One thing that bears heat only so far.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What sort.
    pub limits: Limits,
    /// Its name.
    pub name: Say,
    /// The most it bears.
    pub most: ThermodynamicTemperature,
    /// On what ground.
    pub ground: Ground,
}

/// The limit of a hot step.
#[derive(Clone, Debug, PartialEq)]
pub struct Limit {
    /// All that were looked at, lowest first.
    pub parts: Vec<Part>,
}

impl Limit {
    /// The lowest; nothing only where the heat reaches nothing.
    pub fn lowest(&self) -> Option<&Part> {
        self.parts.first()
    }

    /// The lowest of some sorts.
    pub fn lowest_of(&self, sorts: &[Limits]) -> Option<&Part> {
        self.parts.iter().find(|part| sorts.contains(&part.limits))
    }
}

/// The limit in some zones of the wig, heated in a medium.
pub fn limit(bench: &Bench<'_>, condition: &Condition, zones: &[Zone], medium: Medium) -> Limit {
    of(bench, condition, zones, None, medium)
}

/// The same, with loose weft in the same bath.
pub(super) fn of(
    bench: &Bench<'_>,
    condition: &Condition,
    zones: &[Zone],
    loose: Option<LotId>,
    medium: Medium,
) -> Limit {
    let mut parts = Vec::new();
    for met in met(bench, condition, zones, loose) {
        fibre(bench, &met, medium, &mut parts);
    }
    // An iron takes the lengths, not the cap or what it stands on.
    if medium != Medium::Iron {
        for (limits, bearer) in bearers(bench, condition, zones) {
            parts.push(Part {
                limits,
                name: Say::key(bearer.label),
                most: of_fact(&bearer.most, bearer.most.likely),
                ground: Ground::Assumed { source: bearer.most.source, sure: bearer.most.sure },
            });
        }
    }
    order::sort_by(&mut parts, &|a, b| a.most.value.total_cmp(&b.most.value));
    Limit { parts }
}

fn fibre(bench: &Bench<'_>, met: &Met<'_>, medium: Medium, parts: &mut Vec<Part>) {
    let fact = heat::limit(met.fibre, medium);
    let name = met.name();
    let said = |key| Say::new(key, [name.clone()]);
    parts.push(Part {
        limits: Limits::Fibre,
        name: said("care.limit_fibre"),
        most: of_fact(fact, fact.likely),
        ground: Ground::Assumed { source: fact.source, sure: fact.sure },
    });
    let label = match met.lot {
        Some(lot) => bench.labels.iter().find(|(id, _)| *id == lot.id).map(|(_, most)| *most),
        None => bench
            .wig
            .held("label_heat", Of::Wig)
            .and_then(|held| held.value.as_ref())
            .and_then(|value| value.typed()?.temperature()),
    };
    if let Some(most) = label {
        parts.push(Part { limits: Limits::Label, name: said("care.limit_label"), most, ground: Ground::Said });
    }
    if let Some(most) = own_window(bench, met, medium).and_then(|window| window.most()) {
        parts.push(Part { limits: Limits::Locks, name: said("care.limit_locks"), most, ground: Ground::Said });
    }
}

/// What this person found out about some fibre.
pub(super) fn own_window(bench: &Bench<'_>, met: &Met<'_>, medium: Medium) -> Option<OwnWindow> {
    match met.lot {
        Some(lot) => locks::window(bench.locks, lot.fibre, Some(lot.id), medium),
        None => locks::window_of_wig(bench.locks, bench.wig, medium),
    }
}

/// Parts of the cap in the zones, glue that is there, the block.
fn bearers(bench: &Bench<'_>, condition: &Condition, zones: &[Zone]) -> Vec<(Limits, &'static Bearer)> {
    let mut names: Vec<&str> = Vec::new();
    if zones.is_empty() {
        return Vec::new();
    }
    let ground = |zone: &Zone| bench.wig.cap().ground(*zone);
    if zones.iter().any(|zone| matches!(ground(zone), caps::Ground::Knotted { .. })) {
        names.push("polyamide_lace");
    }
    if zones.iter().any(|zone| matches!(ground(zone), caps::Ground::Closed { .. })) {
        names.push("skin_top");
    }
    // Common practice, no source: the straps and the edge of ready-made caps are elastic round the back.
    if zones.iter().any(|zone| matches!(zone, Zone::Back | Zone::Nape)) {
        names.push("elastic");
    }
    let here = |to: Option<&str>| match to {
        Some("lace_edge") => zones.contains(&Zone::FrontHairline),
        to => to != Some("skin"),
    };
    for glued in condition.glued.iter().filter(|glued| here(glued.to)) {
        if !names.contains(&glued.glue) {
            names.push(glued.glue);
        }
    }
    names.extend(condition.block);
    let sort = |bearer: &Bearer| match bearer.sort {
        Sort::Cap => Limits::Cap,
        Sort::Glue => Limits::Glue,
        Sort::Block => Limits::Block,
    };
    names.into_iter().filter_map(bears::bearer_named).map(|bearer| (sort(bearer), bearer)).collect()
}

/// A medium in words.
pub(super) fn medium_said(medium: Medium) -> Arg {
    Arg::Key(medium.label())
}

/// What was glued, in words.
pub(super) fn glue_said(glue: &str) -> Arg {
    Arg::Key(choice(glue))
}
