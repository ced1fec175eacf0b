//! One view of the head, from back to front.
//!
//! What it is: the order in which things are drawn. What it is not: any one of them.

use core::f64::consts::FRAC_PI_2;

use measure::say::Say;
use plan::dome::{Dome, View};
use record::wig::zone::Zone;

use super::{
    HEADING, Map, Show, WORDS,
    beside::{Side, beside},
    rows, title, zones,
};
use crate::drawing::{Anchor, Place, Shape, Voice, thin, thinned};

/// Points of the parting line.
const PARTING_STEPS: u32 = 60;

pub(super) fn shapes(map: &Map<'_>, view: View, voice: &Voice<'_>) -> Vec<Shape> {
    let dome = &map.layout.dome;
    let seen = dome.view(view);
    let mut shapes = Vec::new();
    let ears = |shapes: &mut Vec<Shape>| {
        for ear in &seen.ears {
            shapes.push(Shape::area("d-figure", vec![ear.clone()]));
        }
    };
    let side_on = matches!(view, View::Left | View::Right);
    if !side_on {
        ears(&mut shapes);
    }
    shapes.push(Shape::area("d-figure", vec![thin(&seen.outline, 0.05)]));
    if !seen.features.is_empty() {
        shapes.push(Shape::lines("d-feature", seen.features.clone()));
    }
    if side_on {
        ears(&mut shapes);
    }
    zones::areas(map, &seen.zones, &mut shapes);
    if map.show == Show::Rows {
        rows::rows(map, view, &mut shapes);
    }
    shapes.push(Shape::lines("d-edge", thinned(&seen.edge, 0.05)));
    let parting = parting(dome, view);
    if !parting.is_empty() {
        shapes.push(Shape::lines("d-parting", parting));
    }
    zones::chosen(map, &seen.zones, &mut shapes);

    let [left, top, right, bottom] = seen.bounds;
    let middle = (left + right) / 2.0;
    // Row numbers stand behind the face; a name beside the head stands on the side it is nearer to.
    let numbers_on = if view == View::Right { Side::Left } else { Side::Right };
    let mut calls = [(Side::Left, Vec::new()), (Side::Right, Vec::new())];
    for call in zones::names(map, &seen, voice, &mut shapes) {
        let on_left =
            if libm::fabs(call.at[0] - middle) < 5.0 { numbers_on == Side::Right } else { call.at[0] < middle };
        calls[usize::from(!on_left)].1.push(call);
    }
    if map.show == Show::Rows {
        calls[usize::from(numbers_on == Side::Right)].1.extend(rows::numbers(map, view, numbers_on));
    }
    let mut outlines: Vec<&[Place]> = vec![&seen.outline];
    for line in seen.ears.iter().chain(&seen.features) {
        outlines.push(line);
    }
    for (side, calls) in calls {
        beside(calls, side, &outlines, [top - 4.0, bottom - 14.0], &mut shapes);
    }

    shapes.push(Shape::text("d-heading", [middle, top - 10.0], title(view), Anchor::Middle, HEADING));
    sides(view, middle, bottom, &mut shapes);
    shapes
}

/// Says the wearer's left and right where both are seen.
fn sides(view: View, middle: f64, bottom: f64, shapes: &mut Vec<Shape>) {
    let (wearers_left, wearers_right) = ("sheet.wearers_left", "sheet.wearers_right");
    let (on_left, on_right, base) = match view {
        View::Front => (wearers_right, wearers_left, bottom - 2.0),
        View::Back => (wearers_left, wearers_right, bottom - 2.0),
        View::Top => (wearers_left, wearers_right, bottom + 3.0),
        View::Left | View::Right => return,
    };
    // Beside the neck, or below the round of the head.
    let apart = 57.0;
    let text = |x: f64, key, anchor| Shape::text("d-text", [x, base], Say::key(key), anchor, WORDS);
    shapes.push(text(middle - apart, on_left, Anchor::End));
    shapes.push(text(middle + apart, on_right, Anchor::Start));
}

/// The visible parting, along the middle of its strip.
fn parting(dome: &Dome, view: View) -> Vec<Vec<Place>> {
    if dome.parting().is_none() {
        return Vec::new();
    }
    let strip = dome.view(View::Top).zones.into_iter().find(|shape| shape.zone == Zone::Part);
    let Some(strip) = strip else { return Vec::new() };
    let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
    for polygon in &strip.polygons {
        for place in polygon {
            (least, most) = (least.min(place[0]), most.max(place[0]));
        }
    }
    let aside = (least + most) / 2.0;
    let mut line = Vec::new();
    for step in 0..=PARTING_STEPS {
        let angle = FRAC_PI_2 * f64::from(step) / f64::from(PARTING_STEPS);
        let point = dome.solid().hit([aside, 0.0, 0.0], [0.0, libm::sin(angle), libm::cos(angle)]);
        if dome.zone_at(point) == Zone::Part {
            line.push(point);
        }
    }
    thinned(&dome.project_line(view, &line), 0.1)
}
