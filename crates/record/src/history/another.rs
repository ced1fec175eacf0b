//! Another wig like this one: its plan and look, without its history.
//!
//! What it is: the values that carry over, as entries for a new wig's log.
//! What it is not: work that was done, days, prices, or, unless asked for, the wearer's measures and role.

use measure::{
    prefs::Prefs,
    say::{Arg, Say},
};

use super::{
    entry::{Body, Key, Of, Setting},
    fold::State,
};
use crate::{
    field::Value,
    id::StepId,
    wig::{
        figures::Wig,
        slots::{self, Group, Slot},
        work::Refusal,
    },
};

/// What belongs to this one wig: its day, what was jotted on it, what was paid.
const OWN: &[&str] = &["due", "note", "base_price"];
/// What belongs to its wearer beside the measures of the head.
const WEARERS: &[&str] = &["character"];
/// A base is bought by it, whoever wears the wig.
const SIZE: &str = "size";
const NAME: &str = "name";

/// The name to offer for it.
pub fn name(state: &State) -> Say {
    Say::new("record.another", [Arg::from(Wig::new(state).name())])
}

/// Starts another wig like this one: what its new log is to say, in any order. `wearer` takes over the head's measures and
/// the role too; each step of the plan, skipped ones too, gets an identity from `fresh`.
///
/// # Errors
/// The name, where it is too long.
pub fn like(
    state: &State,
    new_name: &str,
    wearer: bool,
    fresh: &mut dyn FnMut() -> StepId,
) -> Result<Vec<Body>, Refusal> {
    let mut bodies = Vec::new();
    if let Some(slot) = slots::slot_named(NAME).filter(|_| !new_name.trim().is_empty()) {
        let read = slot.field.holds.read(new_name, &Prefs::default());
        let value = read.map_err(|say| Refusal { field: NAME.to_owned(), say })?;
        bodies.push(set(Key { slot: slot.field.name, of: Of::Wig }, value));
    }
    for (key, held) in state.values() {
        let (Some(slot), Some(value)) = (slots::slot_named(key.slot), &held.value) else { continue };
        if !carries(slot, wearer) {
            continue;
        }
        let of = match key.of {
            Of::Step(_) => Of::Step(fresh()),
            of => of,
        };
        bodies.push(set(Key { of, ..key }, value.clone()));
    }
    Ok(bodies)
}

fn carries(slot: &Slot, wearer: bool) -> bool {
    let name = slot.field.name;
    if name == NAME || OWN.contains(&name) {
        return false;
    }
    wearer || name == SIZE || !(slot.group == Group::Head || WEARERS.contains(&name))
}

/// Nothing stands in a new log that a value could replace.
fn set(key: Key, value: Value) -> Body {
    Body::Set(Setting { key, value: Some(value), over: Vec::new() })
}
