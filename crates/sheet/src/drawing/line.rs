//! Small helpers for lines: fewer points, rectangles as lines.
//!
//! What it is: plane geometry on polylines. What it is not: the dome.

use super::Place;

/// A rectangle as a closed line.
pub(crate) fn rect(at: Place, size: Place) -> Vec<Place> {
    let (right, bottom) = (at[0] + size[0], at[1] + size[1]);
    vec![at, [right, at[1]], [right, bottom], [at[0], bottom]]
}

/// The line without points that lie closer than `flat` to the chord of their neighbours (Douglas and Peucker's method).
pub(crate) fn thin(line: &[Place], flat: f64) -> Vec<Place> {
    let mut keep = vec![false; line.len()];
    let mut spans = Vec::new();
    if let Some(last) = line.len().checked_sub(1) {
        keep[0] = true;
        keep[last] = true;
        spans.push((0, last));
    }
    while let Some((from, to)) = spans.pop() {
        let (mut distance, mut index) = (0.0, from);
        for at in from + 1..to {
            let off = off_chord(line[at], line[from], line[to]);
            if off >= distance {
                (distance, index) = (off, at);
            }
        }
        if index > from && distance > flat {
            keep[index] = true;
            spans.push((from, index));
            spans.push((index, to));
        }
    }
    let mut kept = Vec::new();
    for (place, keep) in line.iter().zip(keep) {
        if keep {
            kept.push(*place);
        }
    }
    kept
}

/// Each line, thinned.
pub(crate) fn thinned(lines: &[Vec<Place>], flat: f64) -> Vec<Vec<Place>> {
    let mut all = Vec::with_capacity(lines.len());
    for line in lines {
        all.push(thin(line, flat));
    }
    all
}

/// Distance from a place to the stretch between two others.
pub(crate) fn off_chord(p: Place, a: Place, b: Place) -> f64 {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let square = dx * dx + dy * dy;
    let part = if square > 0.0 { ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square } else { 0.0 };
    let part = part.clamp(0.0, 1.0);
    libm::hypot(p[0] - a[0] - part * dx, p[1] - a[1] - part * dy)
}

/// Sides of closed lines, each with its next corner.
pub(crate) fn sides(lines: &[Vec<Place>]) -> impl Iterator<Item = (Place, Place)> + '_ {
    lines.iter().flat_map(|line| line.iter().zip(line.iter().cycle().skip(1)).map(|(a, b)| (*a, *b)))
}

/// Whether a place lies inside closed lines, by the even-odd rule.
pub(crate) fn inside(lines: &[Vec<Place>], p: Place) -> bool {
    let crossed = sides(lines)
        .filter(|(a, b)| (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0] + (p[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0]));
    crossed.count() % 2 == 1
}
