//! Wearing: what passes from one wearer to the next.
//!
//! What it is: checks of shared wear. What it is not: rules of hygiene, which a house has of its own.

use measure::say::Say;
use record::trade::sources::PRACTICE;

use crate::{
    care::bench::{Case, Check, Told, check},
    working::Weight::Consider,
};

/// The family.
pub static CHECKS: &[Check] = &[check("shared_unwashed", "rule.shared_unwashed", Consider, &PRACTICE, shared)];

fn shared(case: &Case<'_>) -> Option<Told> {
    (case.kind == "hand_over" && case.condition.worn)
        .then(|| (Say::key("care.shared_unwashed"), Say::key("care.shared_unwashed_do")))
}
