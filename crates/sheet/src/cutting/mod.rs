//! The weft laid out: each length a bar, each piece on it named, what is left hatched.
//!
//! What it is: a drawing of any width, readable on a phone and in black and white. What it is not: the cutting.

mod bar;
mod names;
mod ruler;

use measure::{
    quantity::{Length, units::millimeter},
    say::{Arg, Say},
};
use plan::{shopping::LaidWeft, wefts::PlannedRow};
use record::workshop::lots::Lot;

use crate::drawing::{Anchor, Drawing, Shape, Voice};

/// What a drawing is made from.
#[derive(Clone, Copy, Debug)]
pub struct Bench<'a> {
    /// The weft laid out.
    pub laid: &'a [LaidWeft],
    /// The rows of the plan, which pieces name by index.
    pub rows: &'a [PlannedRow],
    /// The lots, for their names.
    pub lots: &'a [Lot],
}

/// Size of words, mm as drawn: 12 px on a screen, 9 pt on paper.
pub(crate) const WORDS: f64 = 3.2;
/// From line to line.
pub(crate) const LINE: f64 = 4.1;
/// Least width a drawing is laid out for, mm: a phone of 320 px.
const NARROWEST: f64 = 70.0;
/// Free edge at both sides.
const EDGE: f64 = 1.0;

/// Draws weft for a width in mm (a CSS pixel is 25.4/96 mm: 360 px are 95 mm; A4 within its edges is 180 mm).
pub fn drawing(bench: &Bench<'_>, voice: &Voice<'_>, width_mm: f64) -> Drawing {
    let frame = frame(bench, width_mm);
    let mut sheet = begun(bench, &frame, voice);
    for index in 0..bench.laid.len() {
        sheet.y = bar::bar(bench, index, &frame, sheet.y, voice, &mut sheet.shapes);
    }
    sheet.done(bench)
}

/// The same on as many drawings as it takes where none may be higher than so many mm, but for a single bar; each has its
/// ruler, all have one scale and go on counting.
pub fn drawings(bench: &Bench<'_>, voice: &Voice<'_>, width_mm: f64, high_mm: f64) -> Vec<Drawing> {
    let frame = frame(bench, width_mm);
    let mut all = Vec::new();
    let mut sheet = begun(bench, &frame, voice);
    let mut bars = 0;
    for index in 0..bench.laid.len() {
        let before = (sheet.shapes.len(), sheet.y);
        sheet.y = bar::bar(bench, index, &frame, sheet.y, voice, &mut sheet.shapes);
        if sheet.y + 1.0 > high_mm && bars > 0 {
            sheet.shapes.truncate(before.0);
            sheet.y = before.1;
            all.push(core::mem::replace(&mut sheet, begun(bench, &frame, voice)).done(bench));
            sheet.y = bar::bar(bench, index, &frame, sheet.y, voice, &mut sheet.shapes);
            bars = 0;
        }
        bars += 1;
    }
    all.push(sheet.done(bench));
    all
}

fn frame(bench: &Bench<'_>, width_mm: f64) -> Frame {
    let width = if width_mm.is_finite() { width_mm.max(NARROWEST) } else { NARROWEST };
    let scale = (width - 2.0 * EDGE) / f64::from(longest(bench));
    Frame { left: EDGE, width: width - 2.0 * EDGE, scale }
}

fn longest(bench: &Bench<'_>) -> u32 {
    bench.laid.iter().map(|weft| weft.length_mm).max().unwrap_or(0).max(1)
}

/// A drawing being made, and where its next bar begins.
struct Begun {
    shapes: Vec<Shape>,
    width: f64,
    y: f64,
}

/// The scale and its ruler.
fn begun(bench: &Bench<'_>, frame: &Frame, voice: &Voice<'_>) -> Begun {
    let mut shapes = Vec::new();
    let said = Say::new("sheet.laid_scale", [Arg::Text(ruler::unit(voice).to_owned())]);
    shapes.push(Shape::text("d-note", [frame.left, LINE - 0.2 * WORDS], said, Anchor::Start, WORDS));
    let y = ruler::ruler(frame, longest(bench), LINE + 1.0, voice, &mut shapes);
    Begun { shapes, width: frame.width + 2.0 * EDGE, y }
}

impl Begun {
    fn done(self, bench: &Bench<'_>) -> Drawing {
        let count = Arg::Count(i64::try_from(bench.laid.len()).unwrap_or(i64::MAX));
        Drawing {
            view_box: [0.0, 0.0, self.width, self.y + 1.0],
            shapes: self.shapes,
            title: Say::key("sheet.laid"),
            description: Say::new("sheet.laid_description", [count]),
        }
    }
}

/// Where bars lie and to which scale.
pub(crate) struct Frame {
    pub left: f64,
    pub width: f64,
    /// mm drawn for a mm of weft.
    pub scale: f64,
}

impl Frame {
    pub(crate) fn at(&self, weft_mm: f64) -> f64 {
        self.left + weft_mm * self.scale
    }
}

pub(crate) fn length(mm: u32) -> Length {
    Length::new::<millimeter>(f64::from(mm))
}
