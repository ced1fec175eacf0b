//! One rod: its body to scale, filled as far as it sits on its base, and an arrow the way it is rolled.
//!
//! What it is: plane shapes round a projected line. What it is not: the choice of rods.

use measure::quantity::units::millimeter;
use plan::{
    dome::View,
    layout::Layout,
    lengths::pattern::{Base, Placed},
};

use crate::drawing::{Place, Shape, thin};

/// How wide a rod is drawn, of its diameter: so that the next row's stays apart.
const SLIM: f64 = 0.58;
/// How far a rod must look at the viewer, as the cosine of its slant: others are shown by another view.
const FACES: f64 = 0.42;
/// A piece of which less is seen is left out, mm.
const SEEN: f64 = 4.0;

/// Rods that a view sees from the front; the arrows lie above all of them.
pub(super) fn draw(layout: &Layout, view: View, rods: &[Placed], shapes: &mut Vec<Shape>) {
    let mut arrows = Vec::new();
    for placed in rods {
        let middle = view.project(placed.middle);
        if layout.dome.facing(view, placed.middle) < FACES {
            continue;
        }
        let half = SLIM * placed.rod.get::<millimeter>() / 2.0;
        let towards = view.project(placed.towards);
        for piece in layout.dome.project_line(view, &placed.line) {
            let line = thin(&piece, 0.3);
            let long: f64 = line.windows(2).map(|pair| apart(pair[0], pair[1])).sum();
            if line.len() < 2 || long < SEEN {
                continue;
            }
            let (first, last) = (line[0], line[line.len() - 1]);
            let side = if cross(first, last, towards) < cross(first, last, middle) { -1.0 } else { 1.0 };
            body(&line, half, side, placed.base, shapes);
        }
        let away = apart(middle, towards);
        if away > 1.0 {
            arrow(middle, [(towards[0] - middle[0]) / away, (towards[1] - middle[1]) / away], half, &mut arrows);
        }
    }
    shapes.append(&mut arrows);
}

/// A sample for the legend, from a place to the right.
pub(super) fn sample(at: Place, base: Base, shapes: &mut Vec<Shape>) {
    body(&[at, [at[0] + 24.0, at[1]]], 4.6, 1.0, base, shapes);
    arrow([at[0] + 12.0, at[1]], [0.0, 1.0], 4.6, shapes);
}

fn apart(a: Place, b: Place) -> f64 {
    libm::hypot(a[0] - b[0], a[1] - b[1])
}

/// Above zero where a place lies to the right of the way from one to another, y pointing down.
fn cross(from: Place, to: Place, place: Place) -> f64 {
    (to[0] - from[0]) * (place[1] - from[1]) - (to[1] - from[1]) * (place[0] - from[0])
}

fn body(line: &[Place], half: f64, side: f64, base: Base, shapes: &mut Vec<Shape>) {
    let shifted = |by: f64| offset(line, by);
    let ring = |from: f64, to: f64| {
        let mut ring = shifted(from);
        ring.extend(shifted(to).into_iter().rev());
        ring
    };
    shapes.push(Shape::area("d-rod", vec![ring(-half, half)]));
    match base {
        // Filled to the side its hair comes from: the other one than it is rolled to.
        Base::On => shapes.push(Shape::area("d-have", vec![ring(0.2 - 0.8 * half, 0.8 * half - 0.2)])),
        Base::Half => shapes.push(Shape::area("d-have", vec![ring(0.0, -side * half)])),
        Base::Off => {}
    }
}

/// The line moved sideways.
fn offset(line: &[Place], by: f64) -> Vec<Place> {
    let mut out = Vec::with_capacity(line.len());
    for (at, place) in line.iter().enumerate() {
        let before = line[at.saturating_sub(1)];
        let after = line[(at + 1).min(line.len() - 1)];
        let long = apart(before, after).max(1e-9);
        out.push([place[0] - by * (after[1] - before[1]) / long, place[1] + by * (after[0] - before[0]) / long]);
    }
    out
}

/// A small arrow head beside the rod.
fn arrow(middle: Place, along: Place, half: f64, shapes: &mut Vec<Shape>) {
    let at = |out: f64, aside: f64| {
        [middle[0] + out * along[0] - aside * along[1], middle[1] + out * along[1] + aside * along[0]]
    };
    shapes.push(Shape::area("d-arrow", vec![vec![at(half - 0.4, -3.2), at(half - 0.4, 3.2), at(half + 4.2, 0.0)]]));
}
