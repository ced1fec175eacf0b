//! Axes of the heat curve: time to the right, temperature up.
//!
//! What it is: scales with round steps in the person's units. What it is not: what is drawn on them.

use measure::{
    say::{Arg, Say},
    unit::Unit,
};

use crate::{
    cutting::{LINE, WORDS},
    drawing::{Anchor, Place, Shape, Voice, plain},
};

/// The scales.
pub(super) struct Axes {
    /// Left edge of the plot, mm.
    pub left: f64,
    /// Its upper edge.
    pub top: f64,
    /// Its lower edge.
    pub bottom: f64,
    right: f64,
    times: [f64; 2],
    heats: [f64; 2],
    heat_marks: Vec<(f64, String)>,
    time_marks: Vec<(f64, Say)>,
}

/// Steps between marks of time, s, and whether they are said in minutes.
const STEPS: [f64; 13] = [1.0, 2.0, 5.0, 10.0, 20.0, 30.0, 60.0, 120.0, 300.0, 600.0, 1200.0, 1800.0, 3600.0];

fn marks(from: f64, to: f64, step: f64) -> Vec<f64> {
    let first = libm::ceil(from / step - 1e-9);
    let count = libm::floor((to / step - first).max(0.0) + 1e-9) as u32;
    (0..=count.min(40)).map(|at| (first + f64::from(at)) * step).collect()
}

impl Axes {
    pub fn new(times: [f64; 2], heats: [f64; 2], width: f64, high: f64, degrees: Unit, voice: &Voice<'_>) -> Axes {
        let shown = |celsius: f64| degrees.from_base(Unit::Celsius.to_base(celsius));
        let back = |amount: f64| Unit::Celsius.from_base(degrees.to_base(amount));
        let step = if shown(heats[1]) - shown(heats[0]) > 150.0 { 50.0 } else { 20.0 };
        let heat_marks: Vec<(f64, String)> = marks(shown(heats[0]), shown(heats[1]), step)
            .into_iter()
            .map(|amount| (back(amount), format!("{} {}", voice.prefs.number(amount, 0), degrees.symbol())))
            .collect();
        let names = heat_marks.iter().map(|(_, name)| voice.width(&plain(name.clone()), WORDS)).fold(0.0, f64::max);
        let left = names + 2.5;
        // As many marks as their words leave room for.
        let most = ((width - left) / (5.0 * WORDS)).max(2.0);
        let span = times[1] - times[0];
        let step = STEPS.into_iter().find(|step| span / step <= most).unwrap_or(span / most);
        let time_marks = marks(times[0], times[1], step)
            .into_iter()
            .map(|time| {
                let say = if step < 60.0 {
                    Say::new("sheet.curve_seconds", [Arg::Number(time, 0)])
                } else {
                    Say::new("sheet.curve_minutes", [Arg::Number(time / 60.0, 0)])
                };
                (time, say)
            })
            .collect();
        let top = 1.6 * LINE;
        Axes { left, top, bottom: top + high, right: width - 1.0, times, heats, heat_marks, time_marks }
    }

    /// A moment and a temperature in °C, on the plot.
    pub fn at(&self, time: f64, celsius: f64) -> Place {
        let part = |value: f64, [low, high]: [f64; 2]| (value - low) / (high - low);
        [
            self.left + (self.right - self.left) * part(time, self.times),
            self.bottom - (self.bottom - self.top) * part(celsius, self.heats),
        ]
    }

    pub fn draw(&self, voice: &Voice<'_>, shapes: &mut Vec<Shape>) {
        let mut ticks = Vec::new();
        for (celsius, name) in &self.heat_marks {
            let y = self.at(0.0, *celsius)[1];
            ticks.push(vec![[self.left - 1.5, y], [self.left, y]]);
            let at = [self.left - 2.0, y + 0.36 * WORDS];
            shapes.push(Shape::text("d-note", at, plain(name.clone()), Anchor::End, WORDS));
        }
        for (at, (time, say)) in self.time_marks.iter().enumerate() {
            let x = self.at(*time, 0.0)[0];
            ticks.push(vec![[x, self.bottom], [x, self.bottom + 1.5]]);
            // A mark too near to the edge for its words has none.
            let anchor = if at == 0 { Anchor::Start } else { Anchor::Middle };
            if at > 0 && x + voice.width(say, WORDS) / 2.0 > self.right {
                continue;
            }
            let place = [x, self.bottom + 1.5 + WORDS];
            shapes.push(Shape::text("d-note", place, say.clone(), anchor, WORDS));
        }
        shapes.push(Shape::lines("d-tick", ticks));
        let corner = vec![[self.left, self.top], [self.left, self.bottom], [self.right, self.bottom]];
        shapes.push(Shape::lines("d-fine", vec![corner]));
    }
}
