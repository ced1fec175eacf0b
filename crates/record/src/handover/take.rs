//! Taking a slip back: what each of its entries would add, before anything is added.
//!
//! What it is: pure comparison of a slip's entries with the record. What it is not: the person's choice, or writing.
//!
//! Nothing is overwritten: an entry of a slip is only ever added. Where the step was recorded here too, the person is asked;
//! until they answer, the slip's entry is not among those to add.

use measure::say::{Arg, Say};

use super::slip::Slip;
use crate::{
    history::{
        desk,
        entry::{Body, Entry, LogId},
        fold::State,
        log::Log,
    },
    id::{EntryId, WigId},
    wig::{
        steps::{self, step_of},
        work::Work,
    },
};

/// What an entry of a slip is to the record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Found {
    /// It is here already.
    Here,
    /// It adds something.
    New {
        /// Whether the step stands in the plan no more.
        no_step: bool,
        /// Whether its step was planned otherwise since the sheet was made.
        planned_otherwise: bool,
    },
    /// The step is recorded as done here too: to be asked about, never counted twice unasked.
    RecordedToo(Vec<EntryId>),
}

/// What the person says to a step recorded twice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    /// What is here stays; the slip's is left out.
    Here,
    /// The slip's counts; what is here is undone, and stays in the log.
    Slips,
    /// Both were done.
    Both,
}

/// Whether a slip may be taken into a wig.
///
/// # Errors
/// Where it is for another wig, by its name.
pub fn check(slip: &Slip, wig: WigId) -> Result<(), Say> {
    if slip.wig == wig { Ok(()) } else { Err(Say::new("handover.other_wig", [Arg::Text(slip.name.clone())])) }
}

/// What each entry is to the record.
pub fn look(log: &Log, state: &State, entries: &[Entry]) -> Vec<Found> {
    let all = steps::steps(state);
    let found = |entry: &Entry| {
        if log.get(entry.id).is_some() {
            return Found::Here;
        }
        let Body::Work(work) = &entry.body else { return Found::New { no_step: false, planned_otherwise: false } };
        let Some(step) = step_of(work) else { return Found::New { no_step: false, planned_otherwise: false } };
        let Some(step) = all.iter().find(|one| one.id == step) else {
            return Found::New { no_step: true, planned_otherwise: false };
        };
        // Sittings of the same slip belong together; those of others are asked about once the step is done.
        let others: Vec<EntryId> =
            step.done.iter().map(|done| done.entry).filter(|id| entries.iter().all(|entry| entry.id != *id)).collect();
        if step.recorded_done() > 0 && !others.is_empty() {
            return Found::RecordedToo(others);
        }
        Found::New { no_step: false, planned_otherwise: !agrees(&step.planned.work, work) }
    };
    entries.iter().map(found).collect()
}

/// Whether every figure that both have is the same.
fn agrees(planned: &Work, done: &Work) -> bool {
    let differs = |(name, value): (&str, &_)| planned.get(name).is_some_and(|planned| planned != value);
    planned.kind() == done.kind() && !done.values().any(differs)
}

/// What is added and what is undone, by the person's choices: one for each entry that is recorded here too.
/// Entries for which nothing was chosen are left out.
pub fn chosen(log: &Log, entries: &[Entry], found: &[Found], choices: &[(EntryId, Choice)]) -> (Vec<Entry>, Vec<Body>) {
    let (mut add, mut undo) = (Vec::new(), Vec::new());
    for (entry, found) in entries.iter().zip(found) {
        let choice = choices.iter().find(|(id, _)| *id == entry.id).map(|(_, choice)| *choice);
        match (found, choice) {
            (Found::New { .. }, choice) if choice != Some(Choice::Here) => add.push(entry.clone()),
            (Found::RecordedToo(_), Some(Choice::Both)) => add.push(entry.clone()),
            (Found::RecordedToo(here), Some(Choice::Slips)) => {
                add.push(entry.clone());
                for id in here {
                    undo.push(desk::undo(log, *id));
                }
            }
            _ => {}
        }
    }
    (add, undo)
}

/// Whether every entry belongs to a wig.
pub fn all_of(entries: &[Entry], wig: WigId) -> bool {
    entries.iter().all(|entry| entry.log == LogId::Wig(wig))
}
