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
    field::{Field, Value},
    id::{EntryId, StepId},
    wig::{
        slots,
        steps::{self, Planned},
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

/// Plans a step, or plans it otherwise.
pub fn plan_step(state: &State, step: StepId, planned: Planned) -> Body {
    let key = Key { slot: steps::SLOT, of: Of::Step(step) };
    Body::Set(Setting { key, value: Some(Value::Planned(Box::new(planned))), over: state.over(key) })
}

/// Takes a step out of the plan.
pub fn drop_step(state: &State, step: StepId) -> Body {
    let key = Key { slot: steps::SLOT, of: Of::Step(step) };
    Body::Set(Setting { key, value: None, over: state.over(key) })
}

/// Puts a step before another, or last: one entry where there is room between the two, else one for each step that moves.
pub fn move_step(state: &State, step: StepId, before: Option<StepId>) -> Vec<Body> {
    let all = steps::steps(state);
    if before == Some(step) {
        return Vec::new();
    }
    let Some(moved) = all.iter().find(|one| one.id == step) else { return Vec::new() };
    let mut order: Vec<&steps::Step<'_>> = all.iter().filter(|one| one.id != step).collect();
    let at = before.and_then(|before| order.iter().position(|one| one.id == before)).unwrap_or(order.len());
    let place = |one: Option<&&steps::Step<'_>>| one.map(|one| one.planned.place);
    let earlier = at.checked_sub(1).and_then(|at| order.get(at));
    let with = |one: &steps::Step<'_>, place: u32| plan_step(state, one.id, Planned { place, ..one.planned.clone() });
    if let Some(place) = steps::between(place(earlier), place(order.get(at))) {
        return vec![with(moved, place)];
    }
    order.insert(at, moved);
    let mut place = 0;
    let mut bodies = Vec::new();
    for one in order {
        place += steps::GAP;
        if one.planned.place != place {
            bodies.push(with(one, place));
        }
    }
    bodies
}

/// Puts steps into an order; steps not named keep their places behind them.
pub fn order_steps(state: &State, order: &[StepId]) -> Vec<Body> {
    let all = steps::steps(state);
    let mut places: Vec<u32> = Vec::new();
    for step in &all {
        if order.contains(&step.id) {
            let above = places.last().map_or(0, |last: &u32| last.saturating_add(1));
            places.push(step.planned.place.max(above));
        }
    }
    // Each takes the place that one of them had, so that those between them stay where they are.
    let mut bodies = Vec::new();
    for (id, place) in order.iter().filter(|id| all.iter().any(|step| step.id == **id)).zip(places) {
        if let Some(step) = all.iter().find(|step| step.id == *id && step.planned.place != place) {
            bodies.push(plan_step(state, *id, Planned { place, ..step.planned.clone() }));
        }
    }
    bodies
}

/// When something was done unless the person says otherwise: now, but not before the last thing done.
pub fn usual_done(state: &State, now: Minute) -> Minute {
    state.last_done().map_or(now, |last| last.max(now))
}
