//! The heat-up and cool-down of a wound lock, with the fibre's window behind it.
//!
//! What it is: a chart that prints in black and white. What it is not: the reckoning.

mod axes;

use measure::{
    quantity::{ThermodynamicTemperature, units::degree_celsius},
    say::{Arg, Say},
    unit::Kind as Measured,
};
use plan::heat::{Curve, Sample, lasts};

use crate::{
    cutting::{LINE, WORDS},
    drawing::{
        Anchor, Drawing, Kind, Place, Shape, Voice,
        hatch::{Slant, hatch},
        plain, rect, thin,
    },
};
use axes::Axes;

/// Height of the plot, mm.
const HIGH: f64 = 52.0;
/// Least width of the whole, mm.
const NARROWEST: f64 = 70.0;
/// Points closer to the line than this are left out, mm.
const FLAT: f64 = 0.05;

/// A temperature in °C, to be said in the person's scale.
fn heat(celsius: f64) -> Arg {
    Arg::Temperature(ThermodynamicTemperature::new::<degree_celsius>(celsius))
}

/// The chart, for a width in mm as it is read; nothing where nothing was heated.
pub fn chart(curve: &Curve, voice: &Voice<'_>, width_mm: f64) -> Option<Drawing> {
    let last = curve.samples.last().filter(|_| curve.samples.len() > 1)?;
    let width = if width_mm.is_finite() { width_mm.max(NARROWEST) } else { NARROWEST };
    let degrees = voice.prefs.usual(Measured::Temperature);
    let most = curve.limit.unwrap_or(0.0).max(curve.samples.iter().fold(0.0, |most, sample| sample.high.max(most)));
    let least = curve.samples.iter().fold(curve.release, |least, sample| sample.low.min(least));
    let axes = Axes::new([0.0, last.time * 1.02], [least - 8.0, most + 8.0], width, HIGH, degrees, voice);
    let mut shapes = Vec::new();
    let (left, right) = (axes.left, width - 1.0);
    let level = |celsius: f64| axes.at(0.0, celsius)[1];

    // The window behind, hatched.
    if let Some((from, to)) = curve.window {
        let (top, bottom) = (level(to), level(from));
        let size = [right - left, (bottom - top).max(0.6)];
        let body = rect([left, top], size);
        shapes.push(
            Shape::rect("d-bar", [left, top], size).labelled(Say::new("sheet.curve_window", [heat(from), heat(to)])),
        );
        shapes.push(Shape::lines("d-fine", hatch(&[body], Slant(45.0), 1.6)));
    }
    axes.draw(voice, &mut shapes);
    let across = |celsius: f64| vec![vec![[left, level(celsius)], [right, level(celsius)]]];
    if let Some(limit) = curve.limit {
        shapes.push(Shape::lines("d-limit", across(limit)));
    }
    shapes.push(Shape::lines("d-tick", across(curve.release)));

    let line = |of: &dyn Fn(&Sample) -> f64| {
        let places: Vec<Place> = curve.samples.iter().map(|sample| axes.at(sample.time, of(sample))).collect();
        vec![thin(&places, FLAT)]
    };
    shapes.push(Shape::lines("d-outside", line(&|sample| sample.high)).labelled(Say::key("sheet.curve_hottest")));
    shapes.push(Shape::lines("d-middle", line(&|sample| sample.low)).labelled(Say::key("sheet.curve_middle")));

    let label = |x: f64, y: f64, say: Say, anchor| Shape::text("d-label", [x, y], say, anchor, WORDS);
    if let Some(limit) = curve.limit {
        shapes.push(label(right, level(limit) - 1.0, Say::new("sheet.curve_limit", [heat(limit)]), Anchor::End));
    }
    if let Some((from, to)) = curve.window {
        let y = level(from) + 1.05 * WORDS;
        shapes.push(label(right, y, Say::new("sheet.curve_window", [heat(from), heat(to)]), Anchor::End));
    }
    let under = Say::new("sheet.curve_release", [heat(curve.release)]);
    shapes.push(label(right, level(curve.release) + 1.05 * WORDS, under, Anchor::End));

    // What happens when: numbers on the plot, their words below it.
    let moments =
        [(curve.reached, "sheet.curve_reached"), (curve.off, "sheet.curve_off"), (curve.cool, "sheet.curve_cool")];
    let mut said = Vec::new();
    let mut y = axes.bottom + 2.6 * LINE;
    let mut taken = f64::NEG_INFINITY;
    for (number, (time, key)) in moments.into_iter().filter_map(|(time, key)| time.map(|time| (time, key))).enumerate()
    {
        let x = axes.at(time, 0.0)[0];
        shapes.push(Shape::lines("d-fine", vec![vec![[x, axes.top], [x, axes.bottom]]]));
        let beside = x.max(taken + 1.1 * WORDS);
        taken = beside;
        let name = (number + 1).to_string();
        shapes.push(Shape::text("d-number", [beside, axes.top - 0.8], plain(name.clone()), Anchor::Middle, WORDS));
        let say = Say::new(key, [Arg::Text(name), lasts(time)]);
        for words in voice.wrap(&say, width - 2.0, WORDS) {
            shapes.push(Shape::text("d-text", [1.0, y], plain(words), Anchor::Start, WORDS));
            y += LINE;
        }
        said.push(say);
    }
    for (class, key) in [("d-middle", "sheet.curve_middle"), ("d-outside", "sheet.curve_hottest")] {
        shapes
            .push(Shape::new(class, Kind::Path { lines: vec![vec![[1.0, y - 1.2], [11.0, y - 1.2]]], closed: false }));
        for words in voice.wrap(&Say::key(key), width - 15.0, WORDS) {
            shapes.push(Shape::text("d-text", [13.0, y], plain(words), Anchor::Start, WORDS));
            y += LINE;
        }
    }
    Some(Drawing {
        view_box: [0.0, 0.0, width, y - 0.5 * LINE],
        shapes,
        title: Say::key("sheet.curve"),
        description: Say::new("sheet.curve_description", [Arg::List(said)]),
    })
}
