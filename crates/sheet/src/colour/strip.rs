//! The colours along the length, zone by zone: a bar as long as the hair, thinning out where layers end.
//!
//! What it is: one strip for zones that are alike. What it is not: the head (see `fall`).

use measure::{
    quantity::{Length, units::centimeter},
    say::{Arg, Say},
};
use plan::dye::Column;
use record::wig::zone::Zone;

use super::at;
use crate::{
    cutting::{LINE, WORDS},
    drawing::{Anchor, Drawing, Shape, Voice, plain},
};

/// A strip: zones that are coloured and as long alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Strip {
    /// The zones.
    pub zones: Vec<Zone>,
    /// Its colours.
    pub column: Column,
    /// Whether bands melt into each other.
    pub smooth: bool,
    /// Shortest strand.
    pub shortest: Length,
    /// Longest strand.
    pub longest: Length,
}

/// Height of a bar and free room below it, mm.
const BAR: f64 = 9.0;
const NARROWEST: f64 = 70.0;
/// Pieces a bar is drawn from: as fine as the eye asks of a soft edge.
const PIECES: u32 = 60;

/// Draws strips for a width in mm.
pub fn drawing(strips: &[Strip], voice: &Voice<'_>, width_mm: f64) -> Drawing {
    let width = if width_mm.is_finite() { width_mm.max(NARROWEST) } else { NARROWEST };
    let most = strips.iter().map(|strip| strip.longest.get::<centimeter>()).fold(1.0, f64::max);
    let scale = (width - 2.0) / most;
    let mut shapes = Vec::new();
    let mut said = Vec::new();
    let mut y = 1.0;
    for strip in strips {
        let names = names(&strip.zones);
        for line in voice.wrap(&names, width - 2.0, WORDS) {
            shapes.push(Shape::text("d-heading", [1.0, y + WORDS], plain(line), Anchor::Start, WORDS));
            y += LINE;
        }
        y += 1.0;
        let (short, long) = (strip.shortest.get::<centimeter>(), strip.longest.get::<centimeter>().max(0.1));
        let height = |share: f64| {
            let at = share * long;
            if at <= short { BAR } else { BAR * (long - at) / (long - short).max(0.1) }
        };
        let edges = edges(strip);
        for pair in edges.windows(2) {
            let (from, to) = (pair[0], pair[1]);
            let (left, right) = (1.0 + from * long * scale, 1.0 + to * long * scale);
            // Neighbours overlap a little, or the ground shows between them.
            let right = if to < 1.0 { right + 0.1 } else { right };
            let body = vec![[left, y], [right, y], [right, y + height(to)], [left, y + height(from)]];
            let shade = at(&strip.column, strip.smooth, (from + to) / 2.0);
            shapes.push(Shape::area("d-strip", vec![body]).tinted(shade));
        }
        let mut outline: Vec<[f64; 2]> = vec![[1.0, y], [1.0 + long * scale, y]];
        outline.extend((0..=20).rev().map(|step| {
            let share = f64::from(step) / 20.0;
            [1.0 + share * long * scale, y + height(share)]
        }));
        shapes.push(Shape::lines("d-fine", vec![outline]));
        y += BAR;
        // Where each band ends and its colour's number, so that nothing is said by colour alone.
        let mut from = 0.0;
        let mut row = Vec::new();
        for (to, light) in &strip.column.bands {
            let at = 1.0 + to * long * scale;
            shapes.push(Shape::lines("d-fine", vec![vec![[at, y - BAR], [at, y + 1.0]]]));
            let shade = light.shade().to_string();
            let length = |share: f64| Arg::Length(Length::new::<centimeter>(share * long));
            row.push(Say::new("sheet.band", [Arg::Text(shade), length(from), length(*to)]));
            from = *to;
        }
        said.push(Say::new("sheet.strip_said", [Arg::from(names), Arg::List(row.clone())]));
        for band in row {
            y += LINE;
            shapes.push(Shape::text("d-text", [1.0, y], band, Anchor::Start, WORDS));
        }
        y += 4.0;
    }
    Drawing {
        view_box: [0.0, 0.0, width, y.max(4.0)],
        shapes,
        title: Say::key("sheet.strip"),
        description: Say::new("sheet.strip_description", [Arg::List(said)]),
    }
}

/// Shares where a bar's pieces meet: evenly, and at every band's end.
fn edges(strip: &Strip) -> Vec<f64> {
    let pieces = if strip.smooth { PIECES } else { 1 };
    let mut edges: Vec<f64> = (0..=pieces).map(|step| f64::from(step) / f64::from(pieces)).collect();
    edges.extend(strip.column.bands.iter().map(|(to, _)| *to));
    let long = strip.longest.get::<centimeter>().max(0.1);
    edges.push((strip.shortest.get::<centimeter>() / long).min(1.0));
    measure::order::sort_by(&mut edges, &|a, b| a.total_cmp(b));
    edges.dedup();
    edges
}

/// Zones in one breath.
fn names(zones: &[Zone]) -> Say {
    if zones.len() == Zone::ALL.len() {
        return Say::key("sheet.all_zones");
    }
    zones
        .iter()
        .map(|zone| Say::key(zone.label()))
        .reduce(|one, next| Say::new("sheet.and", [Arg::from(one), next.into()]))
        .unwrap_or_else(|| Say::key("sheet.all_zones"))
}
