//! One entry: who did or said what, when.
//!
//! What it is: the envelope and the four kinds of body. What it is not: its effect (see `fold`).

use core::fmt;

use measure::civil::Minute;

use crate::{
    field::Value,
    id::{EntryId, LotId, PersonId, StepId, WigId},
    wig::{
        slots::{self, Per},
        work::Work,
        zone::Zone,
    },
    workshop,
};

/// Whose log an entry belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LogId {
    /// The workshop's.
    Workshop,
    /// A wig's.
    Wig(WigId),
}

impl fmt::Display for LogId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LogId::Workshop => f.write_str("workshop"),
            LogId::Wig(wig) => wig.fmt(f),
        }
    }
}

impl LogId {
    /// Reads what it writes.
    pub fn read(text: &str) -> Option<LogId> {
        if text == "workshop" { Some(LogId::Workshop) } else { WigId::read(text).map(LogId::Wig) }
    }
}

/// A moment in UTC, as written by the device: shown, never an order.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Written(String);

impl Written {
    /// Reads `2026-11-25T09:31:02Z`.
    pub fn read(text: &str) -> Option<Written> {
        let rest = text.strip_suffix('Z')?;
        let (minute, seconds) = (rest.get(..16)?, rest.get(16..)?);
        let two = seconds.strip_prefix(':')?;
        let digits = two.len() == 2 && two.bytes().all(|byte| byte.is_ascii_digit());
        (Minute::read(minute).is_some() && digits && two < "61").then(|| Written(text.to_owned()))
    }

    /// The first second of 1970: a stand-in where it must not matter.
    pub fn epoch() -> Written {
        Written("1970-01-01T00:00:00Z".to_owned())
    }

    /// As it was read.
    pub fn text(&self) -> &str {
        &self.0
    }
}

/// An entry.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Entry {
    /// Highest lamport seen, plus one; set by the store when it writes.
    pub lamport: u64,
    /// Its identity.
    pub id: EntryId,
    /// Whose log.
    pub log: LogId,
    /// When it was done, by the clock on the wall; the person may say otherwise.
    pub done: Minute,
    /// When it was written down.
    pub written: Written,
    /// By whom, where known.
    pub by: Option<PersonId>,
    /// What it says.
    pub body: Body,
}

/// What an entry says.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Body {
    /// Work that was done.
    Work(Work),
    /// A value that was set or taken back.
    Set(Setting),
    /// An earlier entry put right, or undone.
    Amend(Amendment),
}

/// What a value is set for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Of {
    /// The log's own subject: the wig.
    Wig,
    /// One of its zones.
    Zone(Zone),
    /// A lot.
    Lot(LotId),
    /// A step of its plan.
    Step(StepId),
}

/// The address of a value: slot and subject.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Key {
    /// The slot's name, from its table.
    pub slot: &'static str,
    /// For what.
    pub of: Of,
}

impl Key {
    /// An address, if the table of that log has such a slot for such a subject.
    pub fn new(log: LogId, slot: &str, of: Of) -> Option<Key> {
        match (log, of) {
            (LogId::Workshop, Of::Lot(_)) => {
                workshop::slots::slot_named(slot).map(|field| Key { slot: field.name, of })
            }
            (LogId::Workshop, _) => None,
            (LogId::Wig(_), of) => slot_key(slot, of),
        }
    }
}

fn slot_key(slot: &str, of: Of) -> Option<Key> {
    let slot = slots::slot_named(slot)?;
    let fits = matches!(
        (slot.per, of),
        (Per::Wig, Of::Wig) | (Per::Zone, Of::Zone(_)) | (Per::Lot, Of::Lot(_)) | (Per::Step, Of::Step(_))
    );
    fits.then_some(Key { slot: slot.field.name, of })
}

/// A value set.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Setting {
    /// Which value.
    pub key: Key,
    /// To what; nothing returns it to its assumption.
    pub value: Option<Value>,
    /// The settings of this value that stood when this one was made.
    pub over: Vec<EntryId>,
}

/// An earlier entry put right.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Amendment {
    /// The original entry, never an amendment.
    pub target: EntryId,
    /// The amendments of it that stood when this one was made.
    pub over: Vec<EntryId>,
    /// What it should have said; nothing undoes it.
    pub to: Option<Corrected>,
}

/// What an amended entry says now.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Corrected {
    /// When it was done.
    pub done: Minute,
    /// The work or the value.
    pub says: Says,
}

/// What an original entry can say.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Says {
    /// Work.
    Work(Work),
    /// A value, with its address: an amendment cannot change which one, and a file reads it by its slot.
    Value(Key, Option<Value>),
}
