//! Head measures that no head can have together.
//!
//! What it is: the dome's own refusals, told at the field that was typed. What it is not: the dome.

use measure::say::{Arg, Say};
use record::{trade::sizes, wig::figures::Wig};

use crate::{
    dome::Problem,
    inputs::Corner,
    layout::{self, refusal, slot_of},
};

const PARTING: &[&str] = &["parting", "parting_place", "parting_length", "parting_width"];

/// Refuses a measure (or parting) that does not go with the others that were said.
pub(super) fn check(wig: &Wig<'_>, slot: &str) -> Result<(), Say> {
    let of_head = slot == "girth" || slot == "tape_from" || sizes::MEASURES.iter().any(|row| row.slot == slot);
    if !of_head && !PARTING.contains(&slot) {
        return Ok(());
    }
    let Err(problems) = layout::dome(wig, &Corner::likely()) else { return Ok(()) };
    let said = |problem: &&Problem| {
        let name = slot_of(problem);
        name == slot || PARTING.contains(&name) || wig.head(name).origin.is_said()
    };
    let Some(problem) = problems.iter().find(|problem| slot_of(problem) == slot).or_else(|| problems.iter().find(said))
    else {
        return Ok(());
    };
    if slot_of(problem) == slot || PARTING.contains(&slot) {
        return Err(refusal(problem));
    }
    Err(Say::new("plan.head_other", [Arg::Key(label(slot_of(problem))), Arg::from(refusal(problem))]))
}

fn label(slot: &str) -> &'static str {
    match slot {
        "girth" => "field.girth",
        "front_to_nape" => "field.front_to_nape",
        "ear_to_ear_front" => "field.ear_to_ear_front",
        "ear_to_ear_top" => "field.ear_to_ear_top",
        "temple_to_temple_back" => "field.temple_to_temple_back",
        "nape_width" => "field.nape_width",
        _ => "field.parting_length",
    }
}
