//! The ruler over the bars, in cm or in.
//!
//! What it is: marks at round lengths. What it is not: a ruler to lay on the weft: the drawing is to its own scale.

use measure::{
    quantity::{Length, units::millimeter},
    unit::Kind,
};

use super::{Frame, LINE, WORDS};
use crate::drawing::{Anchor, Shape, Voice, plain};

/// Round steps in the unit of the ruler: for numbers, and how many ticks each step has.
const STEPS: [(u32, u32); 11] =
    [(1, 2), (2, 2), (5, 5), (10, 2), (20, 2), (50, 5), (100, 2), (200, 2), (500, 5), (1000, 2), (2000, 2)];
/// Least distance of numbers, mm drawn.
const APART: f64 = 11.0;

/// The unit's sign.
pub(super) fn unit(voice: &Voice<'_>) -> &'static str {
    voice.prefs.usual(Kind::Length).symbol()
}

/// Distance of numbers in units, of ticks in mm of weft, and a unit in mm.
fn step(frame: &Frame, voice: &Voice<'_>) -> (u32, f64, f64) {
    let unit_mm = Length::new::<measure::quantity::units::meter>(voice.prefs.usual(Kind::Length).to_base(1.0));
    let unit_mm = unit_mm.get::<millimeter>();
    let fits = |step: &&(u32, u32)| f64::from(step.0) * unit_mm * frame.scale >= APART;
    let (step, parts) = STEPS.iter().find(fits).or(STEPS.last()).copied().unwrap_or((1, 1));
    (step, f64::from(step) * unit_mm / f64::from(parts), unit_mm)
}

/// Marks at ticks along a length, mm of weft.
pub(super) fn ticks(frame: &Frame, length_mm: u32, voice: &Voice<'_>) -> Vec<f64> {
    let (_, tick, _) = step(frame, voice);
    let count = libm::floor(f64::from(length_mm) / tick + 1e-9).min(1000.0) as u32;
    (0..=count).map(|index| f64::from(index) * tick).collect()
}

/// Draws the ruler; answers where the next thing begins.
pub(super) fn ruler(frame: &Frame, longest_mm: u32, top: f64, voice: &Voice<'_>, shapes: &mut Vec<Shape>) -> f64 {
    let (step, _, unit_mm) = step(frame, voice);
    let bottom = top + LINE + 2.4;
    let mut lines = vec![vec![[frame.left, bottom], [frame.at(f64::from(longest_mm)), bottom]]];
    for mark in ticks(frame, longest_mm, voice) {
        let x = frame.at(mark);
        let steps = mark / (f64::from(step) * unit_mm);
        let numbered = libm::fabs(steps - libm::round(steps)) < 1e-6;
        lines.push(vec![[x, bottom], [x, bottom - if numbered { 2.2 } else { 1.1 }]]);
        if numbered {
            let number = voice.prefs.number(mark / unit_mm, 0);
            let width = voice.width(&plain(number.clone()), WORDS);
            // The outer numbers stay within the frame.
            let anchor = if x - width / 2.0 < frame.left {
                Anchor::Start
            } else if x + width / 2.0 > frame.left + frame.width {
                Anchor::End
            } else {
                Anchor::Middle
            };
            shapes.push(Shape::text("d-text", [x, bottom - 2.9], plain(number), anchor, WORDS));
        }
    }
    shapes.push(Shape::lines("d-fine", lines));
    bottom + 1.5
}
