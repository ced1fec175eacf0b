//! Hair hanging from the head in its colours, and the water it is dipped into.
//!
//! What it is: a strand for each row, from its root over the head and down, seen from the side. What it is not: a likeness.

use measure::{
    quantity::{Length, units::millimeter},
    say::{Arg, Say},
};
use plan::{
    dome::{Dome, View},
    dye::{Column, Dipping, level::RowLevel},
};
use record::wig::zone::Zone;

use super::at;
use crate::drawing::{Anchor, Drawing, Place, Shape, Voice, thin};

/// What hangs.
#[derive(Clone, Debug)]
pub struct Fall<'a> {
    /// The head.
    pub dome: &'a Dome,
    /// Its rows.
    pub rows: &'a [RowLevel],
    /// Colours, zone by zone.
    pub columns: &'a [Column],
    /// Length of hair in each zone, longest strand.
    pub long: [Length; 8],
    /// Zones whose bands melt into each other.
    pub smooth: [bool; 8],
    /// The water it is dipped into, where it is.
    pub dipping: Option<&'a Dipping>,
}

/// Size of words, mm of the head.
const WORDS: f64 = 9.0;
/// Length of a piece of strand, mm.
const PIECE: f64 = 8.0;

/// Draws it from the wearer's left.
pub fn drawing(fall: &Fall<'_>, voice: &Voice<'_>) -> Drawing {
    let view = View::Left;
    let seen = fall.dome.view(view);
    let mut shapes = vec![Shape::area("d-figure", vec![thin(&seen.outline, 0.05)])];
    if !seen.features.is_empty() {
        shapes.push(Shape::lines("d-feature", seen.features.clone()));
    }
    let mut lowest = seen.bounds[3];
    for row in fall.rows {
        let long = fall.long[row.zone as usize].get::<millimeter>();
        let path = path(row, view, long);
        if path.len() < 2 {
            continue;
        }
        lowest = path.iter().map(|place| place[1]).fold(lowest, f64::max);
        shapes.push(Shape::lines("d-strand-rim", vec![path.clone()]));
        let Some(column) = fall.columns.iter().find(|column| column.zone == row.zone) else { continue };
        // Pieces of one colour are one line.
        let many = path.len() - 1;
        let mut piece: Vec<Place> = vec![path[0]];
        for index in 0..many {
            let shade = |index: usize| at(column, fall.smooth[row.zone as usize], (index as f64 + 0.5) / many as f64);
            piece.push(path[index + 1]);
            if index + 1 == many || shade(index) != shade(index + 1) {
                let line = core::mem::replace(&mut piece, vec![path[index + 1]]);
                shapes.push(Shape::lines("d-strand", vec![line]).tinted(shade(index)));
            }
        }
    }
    shapes.push(Shape::lines("d-edge", seen.edge.clone()));
    let (left, right) = (seen.bounds[0] - 20.0, seen.bounds[2] + 40.0);
    let mut said = Say::key("sheet.fall_said");
    if let Some(dipping) = fall.dipping {
        let down = |length: Length| length.get::<millimeter>();
        let (line, water) = (down(dipping.line), down(dipping.water));
        shapes.push(Shape::lines("d-wanted", vec![vec![[left, line], [right, line]]]));
        shapes.push(Shape::rect("d-water", [left, water], [right - left, (lowest - water).max(10.0) + 8.0]));
        let text = |key, length, y: f64| {
            Shape::text("d-name", [right, y], Say::new(key, [Arg::Length(length)]), Anchor::End, WORDS)
        };
        shapes.push(text("sheet.water_line", dipping.line, line - 2.5));
        shapes.push(text("sheet.water_stands", dipping.water, water + WORDS + 1.0));
        // The widest part, from which both are measured.
        shapes.push(Shape::lines("d-tick", vec![vec![[left, 0.0], [right, 0.0]]]));
        shapes.push(Shape::text("d-note", [right, -2.0], Say::key("sheet.widest"), Anchor::End, WORDS));
        said = Say::new("sheet.dip_said", [Arg::Length(dipping.water), Arg::Length(dipping.line)]);
    }
    let title = Say::key(if fall.dipping.is_some() { "sheet.dip" } else { "sheet.fall" });
    Drawing::framed(shapes, title, said, 4.0, voice)
}

/// A strand in pieces of even length: over the head, then straight down.
fn path(row: &RowLevel, view: View, long: f64) -> Vec<Place> {
    let many = libm::ceil(long / PIECE).max(1.0) as usize;
    let mut all: Vec<Place> = Vec::with_capacity(many + 1);
    let above = row.above.get::<millimeter>().max(0.0);
    let steps = row.path.len().saturating_sub(1);
    let Some(end) = row.path.last().copied() else { return all };
    for index in 0..=many {
        let gone = long * index as f64 / many as f64;
        all.push(if gone < above && steps > 0 {
            // Steps of the way are even enough in length for a drawing.
            let place = gone / above * steps as f64;
            let first = (place as usize).min(steps - 1);
            let (a, b) = (view.project(row.path[first]), view.project(row.path[first + 1]));
            let part = place - first as f64;
            [a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part]
        } else {
            let root = view.project(end);
            [root[0], root[1] + gone - above]
        });
    }
    all
}

/// Lengths of each zone, for the drawing.
pub fn lengths(of: impl Fn(Zone) -> Length) -> [Length; 8] {
    Zone::ALL.map(of)
}
