//! From what a person typed to the body of an entry.
//!
//! What it is: the one way pages, imports and the terminal make entries, so that none is made that does not read.
//! What it is not: storage: identity, time and lamport are the caller's and the store's.

use measure::{civil::Minute, prefs::Prefs, say::Say};

use super::{
    entry::{Amendment, Body, Corrected, Key, LogId, Of, Says, Setting},
    fold::{State, amendments_over},
    log::Log,
};
use crate::{
    field::Field,
    id::EntryId,
    wig::{
        slots,
        work::{Kind, Refusal, Work},
    },
    workshop,
};

/// The field behind an address of a log.
pub fn field_of(log: LogId, slot: &str) -> Option<&'static Field> {
    match log {
        LogId::Workshop => workshop::slots::slot_named(slot),
        LogId::Wig(_) => slots::slot_named(slot).map(|slot| &slot.field),
    }
}

/// Sets a value; an empty text takes it back to its assumption.
///
/// # Errors
/// The slot that was refused, with reason and remedy.
pub fn set(state: &State, log: LogId, slot: &str, of: Of, text: &str, prefs: &Prefs) -> Result<Body, Refusal> {
    let refused = |say| Refusal { field: slot.to_owned(), say };
    let (field, key) =
        field_of(log, slot).zip(Key::new(log, slot, of)).ok_or_else(|| refused(Say::key("record.no_such_field")))?;
    let value = if text.trim().is_empty() { None } else { Some(field.holds.read(text, prefs).map_err(refused)?) };
    Ok(Body::Set(Setting { key, value, over: state.over(key) }))
}

/// Records work.
///
/// # Errors
/// Every field that was refused.
pub fn work<'a>(
    kind: &'static Kind,
    texts: impl IntoIterator<Item = (&'a str, &'a str)>,
    prefs: &Prefs,
) -> Result<Body, Vec<Refusal>> {
    Work::read(kind, texts, prefs).map(Body::Work)
}

/// Undoes an entry.
pub fn undo(log: &Log, target: EntryId) -> Body {
    Body::Amend(Amendment { target, over: amendments_over(log, target), to: None })
}

/// Puts an entry right.
pub fn correct(log: &Log, target: EntryId, done: Minute, says: Says) -> Body {
    Body::Amend(Amendment { target, over: amendments_over(log, target), to: Some(Corrected { done, says }) })
}

/// When something was done unless the person says otherwise: now, but not before the last thing done.
pub fn usual_done(state: &State, now: Minute) -> Minute {
    state.last_done().map_or(now, |last| last.max(now))
}
