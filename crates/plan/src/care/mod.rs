//! Checks before a step: what cannot be together is refused before it is written.
//!
//! What it is: one function a check, from a state and what is about to happen. What it is not: limits of single fields.

mod before;
mod bench;
mod hazard;
mod head;
mod limit;
mod order;
mod rules;
mod sewn;

use measure::{
    civil::Date,
    say::{Arg, Say},
};
use record::{
    field::Value,
    history::{
        entry::{Body, Entry, LogId, Written},
        fold::{State, fold},
        log::Log,
    },
    id::{EntryId, Id},
    wig::{
        figures::Wig,
        work::{Refusal, Work},
    },
};

pub use before::{before, overruled, rules};
pub(crate) use bench::fibre_name;
pub use bench::{Bench, Finding, Rule};
pub use hazard::{Hazard, hazard};
pub use limit::{Limit, Limits, Part, limit};
pub use order::{Order, order};

/// No day of this work lies before it.
const EARLIEST: &str = "1900-01-01";

/// Whether a value may be set in a wig's log.
///
/// # Errors
/// Why it cannot stand beside the others, with the remedy.
pub fn may_set(log: &Log, body: &Body) -> Result<(), Say> {
    let Body::Set(setting) = body else { return Ok(()) };
    // Taking a value back never makes a head that was not possible before it was said.
    if setting.value.is_none() {
        return Ok(());
    }
    // A year half typed is a slip of the keys.
    if let Some(Value::Date(date)) = setting.value
        && Date::read(EARLIEST).is_some_and(|earliest| date < earliest)
    {
        return Err(Say::new("plan.long_ago", [Arg::Date(date)]));
    }
    let state = after(log, body);
    let wig = Wig::new(&state);
    head::check(&wig, setting.key.slot)?;
    crate::heat::refuse::check(&wig, setting.key)?;
    sewn::lengths(&wig, setting.key)
}

/// Whether work may be recorded.
///
/// # Errors
/// The field that cannot be, with the remedy.
pub fn may_do(state: &State, work: &Work) -> Result<(), Refusal> {
    sewn::check(&Wig::new(state), work)
}

/// The state as it would be with one more entry.
fn after(log: &Log, body: &Body) -> State {
    let mut log = log.clone();
    let last = log.all().max_by_key(|entry| entry.lamport);
    let (lamport, log_id, done, written) = match last {
        Some(last) => (last.lamport + 1, last.log, last.done, last.written.clone()),
        None => match (measure::civil::Minute::read("0001-01-01T00:00"), Written::read("0001-01-01T00:00:00Z")) {
            (Some(done), Some(written)) => (1, LogId::Workshop, done, written),
            // Both texts read; see their tests.
            _ => return fold(&log),
        },
    };
    log.add(Entry {
        lamport,
        id: EntryId(Id::from_bytes([0xff; 16])),
        log: log_id,
        done,
        written,
        by: None,
        body: body.clone(),
    });
    fold(&log)
}
