//! From a slip to the entries it adds.
//!
//! What it is: a function of the slip alone: identity, clock and bytes of each entry are the same on every device and every time,
//! so that a slip taken twice, or by two people, adds nothing twice. What it is not: the person's choice (see the record's
//! `handover::take`).

use measure::say::Say;
use record::{
    handover::slip::{Answer, Slip},
    history::entry::{Body, Entry, LogId},
    id::{EntryId, Id, PersonId},
    wig::work::Work,
};
use sha2::{Digest, Sha256};

use crate::row::encode_row;

/// Who did it, where the slip says: a person of its own, whose name lives outside the entries.
pub fn person(slip: &Slip) -> Option<PersonId> {
    if slip.who.trim().is_empty() { None } else { Some(PersonId(slip.id)) }
}

/// The entries, in the slip's order.
///
/// # Errors
/// Where one would be longer than any reader takes.
pub fn entries(slip: &Slip) -> Result<Vec<Entry>, Say> {
    let mut all: Vec<Entry> = Vec::with_capacity(slip.lines.len());
    for (at, answer) in slip.lines.iter().enumerate() {
        let mut entry = Entry {
            lamport: slip.lamport + 1 + at as u64,
            id: EntryId(slip.id),
            log: LogId::Wig(slip.wig),
            done: answer.done,
            written: slip.written.clone(),
            by: person(slip),
            body: Body::Work(work_of(answer)?),
        };
        entry.id = derived(&format!("{} {}", answer.number, encode_row(&entry)?));
        if all.iter().all(|one| one.id != entry.id) {
            all.push(entry);
        }
    }
    Ok(all)
}

/// The work with the step that it was done for.
fn work_of(answer: &Answer) -> Result<Work, Say> {
    let Some(step) = answer.step else { return Ok(answer.work.clone()) };
    let step = step.to_string();
    let texts: Vec<(&str, String)> = answer.work.values().map(|(name, value)| (name, value.text())).collect();
    let texts = texts.iter().map(|(name, text)| (*name, text.as_str())).filter(|(name, _)| *name != "step");
    let texts = texts.chain([("step", step.as_str())]);
    Work::read(answer.work.kind(), texts, &measure::prefs::Prefs::default()).map_err(|_| Say::key("handover.damaged"))
}

/// An identity drawn from what it names: the first sixteen bytes of its SHA-256.
pub(crate) fn derived(text: &str) -> EntryId {
    let mut bytes = [0; 16];
    for (byte, from) in bytes.iter_mut().zip(Sha256::digest(text.as_bytes())) {
        *byte = from;
    }
    EntryId(Id::from_bytes(bytes))
}
