//! What worked on a fibre: for each kind of work, how hot and with what, by how it turned out.
//!
//! What it is: entries with an outcome, grouped. What it is not: a window learnt from them.

use measure::{order, quantity::ThermodynamicTemperature};

use super::{
    index::{Index, Indexed},
    query::Hit,
};
use crate::{
    id::LotId,
    wig::work::{KINDS, Kind, LOCK_RESULTS, RESULTS},
};

/// What was tried with one kind of work.
#[derive(Clone, Debug, PartialEq)]
pub struct Worked {
    /// Name of the kind; its label is the sentence `work.<name>`.
    pub kind: &'static str,
    /// By outcome, the best first.
    pub outcomes: Vec<Outcome>,
}

/// What turned out one way.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// How: one of [`RESULTS`] or [`LOCK_RESULTS`]; its label is the sentence `choice.<name>`.
    pub result: &'static str,
    /// The entries, coolest first, those without a temperature last; of one temperature the newest first.
    pub tried: Vec<Tried>,
}

/// One entry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tried {
    /// The entry and its wig.
    pub hit: Hit,
    /// How hot.
    pub temperature: Option<ThermodynamicTemperature>,
    /// With what: the medium, the class of dye, the wash…; its label is the sentence `choice.<name>`.
    pub with: Option<&'static str>,
    /// Of which lot.
    pub lot: Option<LotId>,
}

impl Index {
    /// What was tried on a fibre and how it turned out, in the bench's order of kinds.
    pub fn worked(&self, fibre: &str) -> Vec<Worked> {
        let known: Vec<&Indexed> = self.each().filter(|one| one.fibre == fibre && one.result.is_some()).collect();
        let mut all = Vec::new();
        for kind in KINDS {
            let mut outcomes = Vec::new();
            for result in RESULTS.iter().chain(best_first()) {
                let tried = tried(&known, kind, result);
                if !tried.is_empty() {
                    outcomes.push(Outcome { result, tried });
                }
            }
            if !outcomes.is_empty() {
                all.push(Worked { kind: kind.name, outcomes });
            }
        }
        all
    }
}

fn tried(known: &[&Indexed], kind: &Kind, result: &str) -> Vec<Tried> {
    let mut tried = Vec::new();
    for one in known {
        if one.kind.name == kind.name && one.result == Some(result) {
            tried.push(Tried { hit: one.hit, temperature: one.heat, with: one.with, lot: one.lot });
        }
    }
    let heat = |one: &Tried| one.temperature.map_or(f64::INFINITY, |heat| heat.value);
    order::sort_by(&mut tried, &|a, b| heat(a).total_cmp(&heat(b)));
    tried
}

/// What test locks show, what holds first.
fn best_first() -> impl Iterator<Item = &'static &'static str> {
    let held = |name: &&&str| **name == "held";
    LOCK_RESULTS.iter().filter(held).chain(LOCK_RESULTS.iter().filter(move |name| !held(name)))
}
