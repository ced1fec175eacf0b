//! Wearing: what passes from one wearer to the next.
//!
//! What it is: checks of shared wear. What it is not: rules of hygiene, which a house has of its own.

use measure::say::Say;
use record::trade::sources::PRACTICE;

use crate::{
    care::bench::{Case, Check, Told, check},
    working::Weight::{Care, Consider},
};

/// The family.
pub static CHECKS: &[Check] = &[
    check("not_ready_to_go", "rule.not_ready_to_go", Care, &PRACTICE, not_ready),
    check("shared_unwashed", "rule.shared_unwashed", Consider, &PRACTICE, shared),
];

/// Wet, or still on rollers or pins, when it goes on or away; on its block it may dry and cool.
fn not_ready(case: &Case<'_>) -> Option<Told> {
    let away = case.kind == "store" && !matches!(case.work.choice("stored"), None | Some("on_block"));
    if !away && !matches!(case.kind, "worn" | "hand_over") {
        return None;
    }
    if let Some(wet) = case.zones_where(&|zone| zone.wet) {
        return Some((Say::new("care.goes_wet", [wet]), Say::key("care.goes_wet_do")));
    }
    let wound = case.zones_where(&|zone| matches!(zone.bound, Some("rollers" | "pinned"))).filter(|_| !away)?;
    Some((Say::new("care.goes_bound", [wound]), Say::key("care.goes_bound_do")))
}

fn shared(case: &Case<'_>) -> Option<Told> {
    (case.kind == "hand_over" && case.condition.worn)
        .then(|| (Say::key("care.shared_unwashed"), Say::key("care.shared_unwashed_do")))
}
