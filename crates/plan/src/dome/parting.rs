//! The parting: a line on the top from the front edge backwards, and the strip of cap it takes.
//!
//! What it is: place and limits of the part zone. What it is not: how the parting is made.

use super::curve::{Tape, last_yes, stepped};
use super::edge::CapEdge;
use super::measures::{Field, Problem, range};
use super::solid::Solid;
use super::zones::{Division, PartBand};
use core::f64::consts::FRAC_PI_2;
use measure::quantity::{Length, units::millimeter};

/// A parting as the look wants it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parting {
    /// Along the ear-to-ear line from the middle: above zero to the wearer's right, below zero to the left.
    pub offset: Length,
    /// From the front edge backwards, along the head.
    pub length: Length,
    /// Width of the strip.
    pub width: Length,
}

/// Greatest distance from the middle and range of width, mm. Common practice, no source.
const OFFSET_MOST: f64 = 65.0;
const WIDTH: (f64, f64) = (2.0, 60.0);
/// Range of length before the head is asked, mm.
const LENGTH: (f64, f64) = (10.0, 400.0);

/// Places a parting on the top.
pub(super) fn place(
    solid: &Solid,
    edge: &CapEdge,
    division: &Division,
    parting: &Parting,
) -> Result<PartBand, Vec<Problem>> {
    let (offset, length, width) =
        (parting.offset.get::<millimeter>(), parting.length.get::<millimeter>(), parting.width.get::<millimeter>());
    let mut problems = Vec::new();
    let mut ask = |field, value: Length, least: f64, most: f64| {
        let mm = value.get::<millimeter>();
        if !(mm >= least && mm <= most) {
            problems.push(Problem { field, value, fault: range(least, most) });
        }
    };
    ask(Field::PartingOffset, parting.offset, -OFFSET_MOST, OFFSET_MOST);
    ask(Field::PartingWidth, parting.width, WIDTH.0, WIDTH.1);
    ask(Field::PartingLength, parting.length, LENGTH.0, LENGTH.1);
    if !problems.is_empty() {
        return Err(problems);
    }
    let ear_line = Tape::along(solid.section([0.0; 3], [0.0, 0.0, 1.0], [1.0, 0.0, 0.0], 0.0, FRAC_PI_2, 180));
    let aside = ear_line.at(libm::fabs(offset))[0];
    let line = part_line(solid, edge, division, aside);
    let most = line.length();
    // A hair of slack, so that the greatest length shown (in whole 0.1 mm) is accepted.
    if length > most + 0.1 {
        return Err(vec![Problem { field: Field::PartingLength, value: parting.length, fault: range(LENGTH.0, most) }]);
    }
    let x = if offset < 0.0 { -aside } else { aside };
    Ok(PartBand { from: x - width / 2.0, to: x + width / 2.0, end: line.at(length)[1].max(0.0) })
}

/// The line at `aside` mm from the mid plane, from the front edge back to the ear-to-ear line.
fn part_line(solid: &Solid, edge: &CapEdge, division: &Division, aside: f64) -> Tape {
    let at = |angle: f64| solid.hit([aside, 0.0, 0.0], [0.0, libm::sin(angle), libm::cos(angle)]);
    let front = last_yes(0.0, FRAC_PI_2, &|angle| {
        let p = at(angle);
        division.over_upper(p) >= 0.0 && edge.covers(p)
    });
    Tape::along(stepped(160, &|i| at(front * (1.0 - i / 160.0))))
}
