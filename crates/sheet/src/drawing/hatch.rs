//! Hatching: parallel lines clipped to an area, closer where there is more hair.
//!
//! What it is: fullness and kinds made readable without colour. What it is not: a measure; the number stands beside it.

use measure::{
    order,
    quantity::{ArealNumberDensity, units},
};

use super::{Place, line::sides};

/// Distance of lines in mm times strands per cm²; and the least and greatest distance. Our own scale.
const SPACING_TIMES_FULLNESS: f64 = 300.0;
const LEAST: f64 = 1.2;
const GREATEST: f64 = 15.0;

/// Fullness of the legend's samples, strands per cm².
pub const SAMPLES: [f64; 4] = [50.0, 100.0, 150.0, 200.0];

/// How far apart lines lie for a fullness, mm; none where there is no hair.
pub fn spacing(fullness: ArealNumberDensity) -> Option<f64> {
    let strands = fullness.get::<units::per_square_centimeter>();
    (strands > 0.0).then(|| (SPACING_TIMES_FULLNESS / strands).clamp(LEAST, GREATEST))
}

/// Direction of lines, in degrees from level, rising to the right.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slant(pub f64);

/// The slant that stands for fullness.
pub const FULLNESS: Slant = Slant(45.0);
/// The slant that stands for what is left over.
pub const LEFT_OVER: Slant = Slant(-45.0);

/// Lines `spacing` mm apart across closed lines, by the even-odd rule. They run through the drawing's origin, so that
/// neighbouring areas of one spacing join.
pub fn hatch(area: &[Vec<Place>], slant: Slant, spacing: f64) -> Vec<Vec<Place>> {
    let angle = slant.0.to_radians();
    let (sin, cos) = (libm::sin(angle), libm::cos(angle));
    // y points down: a line that rises to the right runs along (cos, −sin); across it lies (sin, cos).
    let along = |p: Place| p[0] * cos - p[1] * sin;
    let across = |p: Place| p[0] * sin + p[1] * cos;
    let back = |u: f64, v: f64| [u * cos + v * sin, v * cos - u * sin];
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    for place in area.iter().flatten() {
        low = low.min(across(*place));
        high = high.max(across(*place));
    }
    let mut lines = Vec::new();
    let usable = spacing > 0.0 && low < high;
    if !usable || (high - low) / spacing > 10_000.0 {
        return lines;
    }
    let mut step = libm::ceil(low / spacing);
    while step * spacing < high {
        let v = step * spacing;
        let mut crossings: Vec<f64> = Vec::new();
        for (a, b) in sides(area) {
            if (across(a) > v) != (across(b) > v) {
                let part = (v - across(a)) / (across(b) - across(a));
                crossings.push(along(a) + (along(b) - along(a)) * part);
            }
        }
        order::sort_numbers(&mut crossings);
        for pair in crossings.chunks_exact(2) {
            if pair[1] - pair[0] > 0.2 {
                lines.push(vec![back(pair[0], v), back(pair[1], v)]);
            }
        }
        step += 1.0;
    }
    lines
}
