//! Looks and tools that cannot be, told at the field before it is written.
//!
//! What it is: the planners' own refusals, asked of a wig as it would be. What it is not: limits of single fields.

use measure::say::{Arg, Say};
use record::{
    history::entry::{Key, Of},
    wig::{figures::Wig, zone::Zone},
};

use super::tool::{medium, tool};
use crate::lengths::{
    Problem,
    look::ZoneLook,
    rods::{Ask, rod, usual_fullness},
    said::said,
};

const LOOK: &[&str] =
    &["look_length", "look_shortest", "curl", "curl_diameter", "curl_pitch", "curl_turns", "curl_start", "rod"];
const TEST: &[&str] = &["test_straight", "test_hangs"];
/// Another way of heating may always be chosen: what no longer goes with it is told beside the answer.
const TOOL: &[&str] = &["set_temperature", "altitude", "steam_air"];

/// Whether a value that was just put in can stand beside the others.
///
/// # Errors
/// The reason, told at the field that was typed.
pub fn check(wig: &Wig<'_>, key: Key) -> Result<(), Say> {
    let problem = match key.of {
        Of::Zone(zone) if LOOK.contains(&key.slot) => look(wig, zone).err(),
        Of::Wig if TEST.contains(&key.slot) => test(wig, key.slot),
        Of::Wig if TOOL.contains(&key.slot) => tool(wig, medium(wig), None).err(),
        _ => None,
    };
    let Some(problem) = problem else { return Ok(()) };
    if problem.slot == key.slot {
        return Err(problem.say);
    }
    Err(Say::new("plan.head_other", [Arg::Key(label(problem.slot)), Arg::from(problem.say)]))
}

fn look(wig: &Wig<'_>, zone: Zone) -> Result<(), Problem> {
    let look = ZoneLook::of(wig, zone)?;
    let straight = look.straight(look.hangs.likely) - look.start;
    let ask = Ask { wig, medium: medium(wig), results: &[], full: usual_fullness() };
    rod(&ask, &look, straight).map(|_| ())
}

fn test(wig: &Wig<'_>, slot: &'static str) -> Option<Problem> {
    let length = |slot| said::<measure::quantity::Length>(wig, slot, Of::Wig).map(|figure| figure.likely);
    let (straight, hangs) = (length("test_straight")?, length("test_hangs")?);
    (hangs >= straight)
        .then(|| Problem::new(slot, Of::Wig, "lengths.test_longer", [Arg::Length(hangs), Arg::Length(straight)]))
}

fn label(slot: &str) -> &'static str {
    match slot {
        "look_shortest" => "field.look_shortest",
        "curl_pitch" => "field.curl_pitch",
        "curl_start" => "field.curl_start",
        "rod" => "field.rod",
        "altitude" => "field.altitude",
        _ => "field.set_temperature",
    }
}
