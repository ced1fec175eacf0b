//! The way of a heat test lock: which temperature to try next.
//!
//! What it is: the table's steps, coolest first, with what this bench has found. What it is not: leave to pass a limit.

use measure::{
    quantity::ThermodynamicTemperature,
    say::{Arg, Say},
};
use record::{
    trade::{
        fibres::Fibre,
        heat::{Medium, window},
        lock::Side,
    },
    workshop::locks::{OwnWindow, TestLock},
};

use super::{
    plan::Ceiling,
    tool::{celsius, of_celsius},
};

/// A temperature to try.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Try {
    /// How hot.
    pub heat: ThermodynamicTemperature,
    /// What it showed, where it was tried.
    pub shown: Option<Side>,
}

/// The way.
#[derive(Clone, Debug, PartialEq)]
pub struct Guide {
    /// What to try, coolest first.
    pub steps: Vec<Try>,
    /// The next one; none where it is found, or must end.
    pub next: Option<ThermodynamicTemperature>,
    /// What it comes to so far.
    pub says: Say,
}

/// A step is one of the table's when it is this near, K.
const SAME: f64 = 1.5;

/// The way for a fibre in a medium; `locks` are those that speak of this wig or lot.
pub fn guide(
    fibre: &Fibre,
    medium: Medium,
    ceiling: Option<&Ceiling>,
    locks: &[&TestLock],
    own: Option<&OwnWindow>,
) -> Guide {
    let most = ceiling.map_or(f64::INFINITY, |ceiling| celsius(ceiling.most));
    let mut heats: Vec<f64> =
        window(fibre, medium).test_steps().into_iter().filter(|heat| *heat <= most + 0.05).collect();
    // What was tried besides belongs in the list.
    for lock in locks.iter().filter(|lock| lock.medium == Some(medium)) {
        let heat = celsius(lock.temperature);
        if heats.iter().all(|one| (one - heat).abs() > SAME) {
            heats.push(heat);
        }
    }
    measure::order::sort_numbers(&mut heats);
    let shown = |heat: f64| {
        locks
            .iter()
            .filter(|lock| lock.medium == Some(medium) && (celsius(lock.temperature) - heat).abs() <= SAME)
            .map(|lock| lock.side())
            .max()
    };
    let steps: Vec<Try> = heats.iter().map(|heat| Try { heat: of_celsius(*heat), shown: shown(*heat) }).collect();
    let harmed = own.and_then(|own| own.harmed_from).map_or(f64::INFINITY, celsius);
    let held = own.and_then(|own| own.held_from);
    let open = steps
        .iter()
        .find(|step| step.shown.is_none() && celsius(step.heat) < harmed && celsius(step.heat) <= most + 0.05);
    let (next, says) = match (held, open) {
        _ if steps.is_empty() => (None, Say::key("trial.never")),
        (Some(from), _) => {
            let to = own.and_then(|own| own.held_to).unwrap_or(from);
            let says = if celsius(to) > celsius(from) + 0.05 {
                Say::new("trial.found", [Arg::Temperature(from), Arg::Temperature(to)])
            } else {
                Say::new("trial.found_at", [Arg::Temperature(from)])
            };
            (None, says)
        }
        (None, Some(step)) => (Some(step.heat), Say::new("trial.next", [Arg::Temperature(step.heat)])),
        (None, None) if harmed.is_finite() => (None, Say::new("trial.harmed", [Arg::Temperature(of_celsius(harmed))])),
        (None, None) => (None, Say::key("trial.no_set")),
    };
    Guide { steps, next, says }
}
