//! What a check looks at, and what it tells.
//!
//! What it is: the common ground of all checks. What it is not: a check (see `rules`).

use measure::{
    quantity::ThermodynamicTemperature,
    say::{Arg, Say},
};
use record::{
    id::LotId,
    trade::{
        fact::{Fact, Source},
        fibres::Fibre,
        heat::Medium,
    },
    wig::{
        condition::{Condition, ZoneCondition},
        figures::Wig,
        work::Work,
        zone::Zone,
    },
    workshop::{
        locks::{TestLock, lot_of},
        lots::Lot,
    },
};
use uom::si::thermodynamic_temperature::kelvin;

use crate::working::Weight;

/// What stands beside a step: the wig, and what the workshop knows.
#[derive(Clone, Copy, Debug)]
pub struct Bench<'a> {
    /// The wig.
    pub wig: &'a Wig<'a>,
    /// All lots.
    pub lots: &'a [Lot],
    /// All heat test locks, of the workshop and of all wigs.
    pub locks: &'a [TestLock],
    /// The hottest that lots' labels allow, where said (see [`record::workshop::locks::labels`]).
    pub labels: &'a [(LotId, ThermodynamicTemperature)],
}

/// A check's rule.
#[derive(Debug, PartialEq, Eq)]
pub struct Rule {
    /// Its name, kept in the field `overruled` of work.
    pub name: &'static str,
    /// Key of its label.
    pub label: &'static str,
    /// How much it weighs.
    pub weight: Weight,
    /// Where it is from.
    pub source: &'static Source,
}

/// What a check found.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// By which rule.
    pub rule: &'static Rule,
    /// What is the matter, with this wig's own figures.
    pub what: Say,
    /// What to do.
    pub remedy: Say,
}

impl Finding {
    /// Whether going on all the same is somebody's own judgement, to be recorded; what is only to be considered is not.
    pub fn asks_judgement(&self) -> bool {
        self.rule.weight != Weight::Consider
    }
}

/// What is the matter, and what to do.
pub(super) type Told = (Say, Say);

/// A rule and how it is checked.
pub(super) struct Check {
    pub rule: Rule,
    pub finds: fn(&Case<'_>) -> Option<Told>,
}

pub(super) const fn check(
    name: &'static str,
    label: &'static str,
    weight: Weight,
    source: &'static Source,
    finds: fn(&Case<'_>) -> Option<Told>,
) -> Check {
    Check { rule: Rule { name, label, weight, source }, finds }
}

/// How work heats, and how hot where said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Heating {
    pub medium: Medium,
    pub heat: Option<ThermodynamicTemperature>,
}

/// How work heats the wig; a test lock is off it.
pub(super) fn heating(work: &Work) -> Option<Heating> {
    let medium = match work.kind().name {
        "wash" | "rinse" => Medium::Water,
        "disinfect" if work.choice("disinfected_with") != Some("alcohol_spray") => Medium::Water,
        "dye" if in_bath(work) => Medium::Water,
        "heat_set" | "straighten" => work.choice("medium").and_then(Medium::read)?,
        "dry" if matches!(work.choice("dry_way"), Some("wig_dryer" | "hair_dryer")) => Medium::Dryer,
        "dress" if work.choice("dressed_with") == Some("hot_iron") => Medium::Iron,
        "reset" => match work.choice("reset_with") {
            Some("hot_iron") => Medium::Iron,
            Some("steam_off_head") => Medium::Steam,
            _ => return None,
        },
        _ => return None,
    };
    Some(Heating { medium, heat: work.temperature() })
}

/// Whether colour is put on in a bath; where nobody said, it is.
pub(super) fn in_bath(work: &Work) -> bool {
    work.kind().name == "dye" && matches!(work.choice("dye_way"), None | Some("bath" | "dip"))
}

/// Fibre that a step meets: the wig's own, or weft of a lot.
#[derive(Clone, Copy)]
pub(super) struct Met<'a> {
    pub fibre: &'static Fibre,
    pub lot: Option<&'a Lot>,
}

impl Met<'_> {
    pub fn name(&self) -> Arg {
        let fibre = fibre_name(self.fibre);
        match self.lot {
            Some(lot) => Say::new("care.weft_of", [Arg::Text(lot.name.clone()), fibre]).into(),
            None => fibre,
        }
    }
}

/// The label of a fibre.
pub(crate) fn fibre_name(fibre: &Fibre) -> Arg {
    Arg::Key(choice(fibre.name))
}

/// Everything a check may look at.
pub(super) struct Case<'a> {
    pub bench: &'a Bench<'a>,
    pub condition: &'a Condition,
    pub work: &'a Work,
    /// Work still planned for after it.
    pub later: &'a [&'a Work],
    /// Whether it is only looked at in a plan: what is not said is taken as done well.
    pub planned: bool,
    pub kind: &'static str,
    /// Zones of the wig it is done to; none where only loose weft is.
    pub zones: Vec<Zone>,
    pub heating: Option<Heating>,
}

impl<'a> Case<'a> {
    pub fn new(bench: &'a Bench<'a>, condition: &'a Condition, work: &'a Work, later: &'a [&'a Work]) -> Case<'a> {
        let zones = if work.dyes_weft_alone() { Vec::new() } else { work.zones().each().collect() };
        Case { bench, condition, work, later, planned: false, kind: work.kind().name, zones, heating: heating(work) }
    }

    /// The zones of this work where something holds, to be said; nothing where it holds in none.
    pub fn zones_where(&self, holds: &dyn Fn(&ZoneCondition) -> bool) -> Option<Arg> {
        let zones: Vec<Zone> = self.zones.iter().copied().filter(|zone| holds(self.condition.zone(*zone))).collect();
        zones_said(&zones)
    }

    /// The first zone of this work where something is to be told.
    pub fn first<T>(&self, told: impl Fn(&ZoneCondition) -> Option<T>) -> Option<T> {
        self.zones.iter().find_map(|zone| told(self.condition.zone(*zone)))
    }

    /// All fibre that it meets: the wig's, weft sewn in the zones, loose weft in the same bath.
    pub fn met(&self) -> Vec<Met<'a>> {
        met(self.bench, self.condition, &self.zones, self.loose())
    }

    /// The lot of loose weft that goes into its bath.
    pub fn loose(&self) -> Option<LotId> {
        lot_of(self.work).filter(|_| self.kind == "dye")
    }
}

/// All fibre in some zones, the wig's first, and that of a loose lot.
pub(super) fn met<'a>(bench: &Bench<'a>, condition: &Condition, zones: &[Zone], loose: Option<LotId>) -> Vec<Met<'a>> {
    let of_lot = |id| bench.lots.iter().find(|lot| lot.id == id).map(|lot| Met { fibre: lot.fibre, lot: Some(lot) });
    let mut all = Vec::new();
    if !zones.is_empty() {
        all.push(Met { fibre: bench.wig.fibre(), lot: None });
    }
    let mut lots: Vec<LotId> = loose.into_iter().collect();
    for sewn in zones.iter().flat_map(|zone| &condition.zone(*zone).sewn) {
        lots.extend(sewn.lot.filter(|lot| !lots.contains(lot)));
    }
    all.extend(lots.into_iter().filter_map(of_lot));
    all
}

/// Zones in one breath.
pub(super) fn zones_said(zones: &[Zone]) -> Option<Arg> {
    if zones.len() == Zone::ALL.len() {
        return Some(Arg::Key("care.whole_wig"));
    }
    list(zones.iter().map(|zone| Arg::Key(zone.label())))
}

/// Names with a comma between.
pub(super) fn list(names: impl IntoIterator<Item = Arg>) -> Option<Arg> {
    names.into_iter().reduce(|before, name| Say::new("care.and", [before, name]).into())
}

/// A temperature of a table.
pub(super) fn of_fact(fact: &Fact, amount: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(fact.unit.to_base(amount))
}

/// Whether one temperature is above another by more than reading another scale rounds.
pub(super) fn over(heat: ThermodynamicTemperature, most: ThermodynamicTemperature) -> bool {
    heat.value > most.value + 0.05
}

/// Key of a choice's label, from its name: the names of this room's tables.
pub(super) fn choice(name: &str) -> &'static str {
    LABELS.iter().find(|(of, _)| *of == name).map_or("care.something", |(_, label)| label)
}

/// Labels of the names that checks speak of.
#[rustfmt::skip]
const LABELS: &[(&str, &str)] = &[
    ("unknown", "care.unknown_fibre"),
    ("modacrylic", "choice.modacrylic"),
    ("polyester", "choice.polyester"),
    ("human_hair", "choice.human_hair"),
    ("chlorofibre", "choice.chlorofibre"),
    ("polyamide", "choice.polyamide"),
    ("polypropylene", "choice.polypropylene"),
    ("vinylidene", "choice.vinylidene"),
    ("braided", "choice.braided"),
    ("tied", "choice.tied"),
    ("pinned", "choice.pinned"),
    ("rollers", "choice.rollers"),
    ("hairspray", "choice.hairspray"),
    ("setting_lotion", "choice.setting_lotion"),
    ("silicone", "choice.silicone"),
    ("gel", "choice.gel"),
    ("oil", "choice.oil"),
    ("detangler", "choice.detangler"),
    ("spirit_glue", "choice.spirit_glue"),
    ("water_glue", "choice.water_glue"),
    ("hot_melt", "choice.hot_melt"),
    ("silicone_glue", "choice.silicone_glue"),
    ("tape", "choice.tape"),
    ("cap", "choice.cap"),
    ("lace_edge", "choice.lace_edge"),
    ("accessory", "choice.accessory"),
    ("skin", "choice.skin"),
    ("alcohol_spray", "choice.alcohol_spray"),
    ("ink", "choice.ink"),
    ("crimped", "choice.crimped"),
    ("wavy", "choice.wavy"),
];

#[cfg(test)]
mod tests {
    use record::{
        trade::fibres,
        wig::work::{glue, product},
    };

    use super::*;

    #[test]
    fn whatever_is_spoken_of_has_its_label() {
        let lists =
            [fibres::NAMES, record::wig::work::gather::GATHERED, product::PRODUCTS, glue::GLUES, glue::GLUED_TO];
        for name in lists.into_iter().flatten() {
            assert_ne!(choice(name), "care.something", "{name}");
        }
        assert!(LABELS.iter().all(|(name, label)| label.ends_with(name) || *name == "unknown"));
    }
}
