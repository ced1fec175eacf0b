//! A question to the record, and what answers it.
//!
//! What it is: what may be asked, all of it at once. What it is not: the search (see `index`).

use measure::{
    civil::{Date, Minute},
    quantity::ThermodynamicTemperature,
};

use crate::{
    history::entry::LogId,
    id::{EntryId, LotId},
    wig::zone::Zone,
};

/// What is looked for: an entry answers if everything asked holds of it; nothing asked is all work.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Query {
    /// Words, each to be found somewhere in the entry's texts or its wig's name, role, fibre or cap; parts of words do.
    pub words: String,
    /// The fibre it was done to (a name of [`crate::trade::fibres::NAMES`]).
    pub fibre: Option<&'static str>,
    /// The kind of work, by its name.
    pub kind: Option<&'static str>,
    /// At least so hot.
    pub low: Option<ThermodynamicTemperature>,
    /// At most so hot.
    pub high: Option<ThermodynamicTemperature>,
    /// Words, each in the dye's class, name, batch or colour.
    pub dye: String,
    /// The lot it was done with or to.
    pub lot: Option<LotId>,
    /// A zone it was done to; work that has no zones answers no such question.
    pub zone: Option<Zone>,
    /// How it turned out: one of [`crate::wig::work::RESULTS`], or what a test lock showed
    /// ([`crate::wig::work::LOCK_RESULTS`]).
    pub result: Option<&'static str>,
    /// On this day or later.
    pub from: Option<Date>,
    /// On this day or earlier.
    pub to: Option<Date>,
}

/// An entry that answers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Hit {
    /// When it was done.
    pub done: Minute,
    /// Its place on the logs' clock.
    pub lamport: u64,
    /// Its wig, or the workshop.
    pub log: LogId,
    /// The entry.
    pub entry: EntryId,
}
