//! The bath over time: a curve with its parts named and its temperatures written.
//!
//! What it is: a chart of straight legs. What it is not: a record of what the thermometer showed.

use measure::{
    quantity::units::{degree_celsius, minute},
    say::{Arg, Say},
};
use plan::dye::curve::{Leg, whole};

use crate::{
    cutting::{LINE, WORDS},
    drawing::{Anchor, Drawing, Place, Shape, Voice, plain},
};

/// Height of the curve, mm.
const HEIGHT: f64 = 34.0;
const NARROWEST: f64 = 70.0;

/// Draws it for a width in mm.
pub fn drawing(legs: &[Leg], voice: &Voice<'_>, width_mm: f64) -> Drawing {
    let width = if width_mm.is_finite() { width_mm.max(NARROWEST) } else { NARROWEST };
    let all = whole(legs).get::<minute>().max(1.0);
    let heat = |leg: &Leg| [leg.from.get::<degree_celsius>(), leg.to.get::<degree_celsius>()];
    let most = legs.iter().flat_map(heat).fold(30.0, f64::max);
    let margin = 13.0;
    let x = |minutes: f64| margin + minutes / all * (width - 2.0 * margin);
    let y = |celsius: f64| LINE + 2.0 + HEIGHT * (1.0 - celsius / most);
    let foot = y(0.0);
    let mut shapes = vec![Shape::lines("d-tick", vec![vec![[margin, foot], [width - margin, foot]]])];
    let mut line: Vec<Place> = Vec::new();
    let mut said = Vec::new();
    let mut at = 0.0;
    let mut number = 0;
    for leg in legs {
        let [from, to] = heat(leg);
        if line.is_empty() {
            line.push([x(at), y(from)]);
            shapes.push(Shape::text(
                "d-text",
                [x(at) - 1.0, y(from) + 1.0],
                Say::new("sheet.heat", [Arg::Temperature(leg.from)]),
                Anchor::End,
                WORDS,
            ));
        }
        let begin = at;
        at += leg.time.get::<minute>();
        number += 1;
        line.push([x(at), y(to)]);
        shapes.push(Shape::lines("d-tick", vec![vec![[x(at), y(to)], [x(at), foot]]]));
        let middle = (x(begin) + x(at)) / 2.0;
        shapes.push(Shape::text(
            "d-name-strong",
            [middle, foot - 1.5],
            Say::new("sheet.number", [Arg::Count(number)]),
            Anchor::Middle,
            WORDS,
        ));
        let key = if from == to { "sheet.leg_at" } else { "sheet.leg" };
        said.push(Say::new(
            key,
            [Arg::Count(number), Arg::Key(leg.part.label()), Arg::Time(leg.time), Arg::Temperature(leg.to)],
        ));
    }
    if let (Some(leg), Some(top)) = (
        legs.iter().max_by(|a, b| a.to.value.total_cmp(&b.to.value)),
        line.iter().map(|place| place[1]).reduce(f64::min),
    ) {
        // Where it begins its heat is written already.
        let highest =
            line.iter().filter(|place| place[1] <= top + 0.01).map(|place| place[0]).fold(f64::INFINITY, f64::min);
        if highest > margin + 1.0 {
            let say = Say::new("sheet.heat", [Arg::Temperature(leg.to)]);
            shapes.push(Shape::text("d-label", [highest, top - 1.2], say, Anchor::Middle, WORDS));
        }
    }
    if let (Some(end), Some(leg)) = (line.last(), legs.last()) {
        shapes.push(Shape::text(
            "d-text",
            [end[0] + 1.0, end[1] + 1.0],
            Say::new("sheet.heat", [Arg::Temperature(leg.to)]),
            Anchor::Start,
            WORDS,
        ));
    }
    shapes.push(Shape::lines("d-curve", vec![line]));
    let mut below = foot + 1.0;
    for leg in &said {
        for line in voice.wrap(leg, width - 2.0, WORDS) {
            below += LINE;
            shapes.push(Shape::text("d-text", [1.0, below], plain(line), Anchor::Start, WORDS));
        }
    }
    Drawing {
        view_box: [0.0, 0.0, width, below + 2.0],
        shapes,
        title: Say::key("sheet.bath"),
        description: Say::new("sheet.bath_description", [Arg::List(said)]),
    }
}
