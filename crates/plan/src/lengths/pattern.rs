//! The setting pattern: where each rod lies on the cap, how it sits on its base, which way it is rolled.
//!
//! What it is: rods along rows of the dome, staggered from row to row. What it is not: a drawing (see the `sheet` room).

use measure::quantity::{Length, units::millimeter};
use record::{
    history::entry::Of,
    wig::{figures::Wig, zone::Zone},
};

use super::{need::ZoneNeed, said::choice};
use crate::dome::{Dome, Point, Section};

/// How a rod sits on its section.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Base {
    /// On it: most lift.
    On,
    /// Half off it.
    Half,
    /// Off it: flattest.
    Off,
}

/// A rod on the cap.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// Its zone.
    pub zone: Zone,
    /// Its size.
    pub rod: Length,
    /// How it sits.
    pub base: Base,
    /// Along it, mm in the head's frame.
    pub line: Vec<Point>,
    /// Half-way along it.
    pub middle: Point,
    /// A place beside its middle, on the side towards which it is rolled.
    pub towards: Point,
}

/// The pattern.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pattern {
    /// Every rod.
    pub rods: Vec<Placed>,
}

impl Pattern {
    /// Rods in a zone.
    pub fn count(&self, zone: Zone) -> usize {
        self.rods.iter().filter(|rod| rod.zone == zone).count()
    }
}

/// How the rods of a zone sit: as said, else half off their base.
pub fn base(wig: &Wig<'_>, zone: Zone) -> Base {
    match choice(wig, "on_base", Of::Zone(zone)) {
        Some("on_base") => Base::On,
        Some("off_base") => Base::Off,
        _ => Base::Half,
    }
}

/// Which way those of a zone are rolled, in the head's frame: as said, else to the back on the top, down elsewhere.
fn rolled(wig: &Wig<'_>, zone: Zone) -> Point {
    let usual = match zone {
        Zone::FrontHairline | Zone::Part | Zone::Top => "back",
        _ => "down",
    };
    match choice(wig, "rolled", Of::Zone(zone)).unwrap_or(usual) {
        "up" => [0.0, 0.0, 1.0],
        "back" => [0.0, -1.0, 0.0],
        "forward" => [0.0, 1.0, 0.0],
        _ => [0.0, 0.0, -1.0],
    }
}

/// Less of a row than this share of a rod takes none.
const LEAST: f64 = 0.4;
/// How much of its section's width a rod is drawn long, so that neighbours stay apart.
const LONG: f64 = 0.86;

/// Lays out the rods of all curled zones.
pub fn pattern(dome: &Dome, wig: &Wig<'_>, needs: &[ZoneNeed]) -> Pattern {
    let mut rods = Vec::new();
    for need in needs {
        let Some(choice) = &need.rod else { continue };
        let zone = need.look.zone;
        let width = choice.section.width.likely.get::<millimeter>();
        let towards = rolled(wig, zone);
        for section in [Section::BackAndSides, Section::Top] {
            let rows = dome.rows_evenly(section, choice.section.depth.likely);
            for (at, row) in rows.iter().enumerate() {
                for span in row.spans.iter().filter(|span| span.zone == zone) {
                    let points = row.points.get(span.points.clone()).unwrap_or_default();
                    let long = span.length.get::<millimeter>();
                    let count = libm::round(long / width).max(if long >= LEAST * width { 1.0 } else { 0.0 });
                    // Every other row is moved by half a rod, so that no parting shows between.
                    let shift = if count < 2.0 {
                        0.0
                    } else if at % 2 == 0 {
                        -0.25
                    } else {
                        0.25
                    };
                    let each = long / count.max(1.0);
                    let half = LONG * each.min(width) / 2.0;
                    for place in 0..count as u32 {
                        let centre = (f64::from(place) + 0.5) * each + shift * (each - 2.0 * half).max(0.3 * each);
                        let (from, to) = ((centre - half).max(0.0), (centre + half).min(long));
                        let line = stretch(points, from, to);
                        if line.len() < 2 {
                            continue;
                        }
                        let middle = middle(&line);
                        let towards = beside(&line, middle, towards, choice.rod.get::<millimeter>());
                        rods.push(Placed { zone, rod: choice.rod, base: base(wig, zone), line, middle, towards });
                    }
                }
            }
        }
    }
    Pattern { rods }
}

fn apart(a: Point, b: Point) -> f64 {
    libm::sqrt((0..3).map(|i| (a[i] - b[i]) * (a[i] - b[i])).sum())
}

/// Half-way along a line.
fn middle(line: &[Point]) -> Point {
    let long: f64 = line.windows(2).map(|pair| apart(pair[0], pair[1])).sum();
    stretch(line, 0.0, long / 2.0).last().copied().unwrap_or(line[0])
}

/// The stretch of a line between two lengths along it.
fn stretch(points: &[Point], from: f64, to: f64) -> Vec<Point> {
    let mut out = Vec::new();
    let mut done = 0.0;
    for pair in points.windows(2) {
        let step = apart(pair[0], pair[1]);
        let at = |along: f64| {
            let part = if step > 0.0 { (along - done) / step } else { 0.0 };
            [0, 1, 2].map(|i| pair[0][i] + part * (pair[1][i] - pair[0][i]))
        };
        if done + step >= from && done <= to {
            if out.is_empty() {
                out.push(at(from.max(done)));
            }
            out.push(at(to.min(done + step)));
        }
        done += step;
    }
    out
}

/// A place beside the middle of a line, across it, on the side that looks most towards a direction.
fn beside(line: &[Point], middle: Point, towards: Point, rod: f64) -> Point {
    let (first, last) = (line[0], line[line.len() - 1]);
    let along = [0, 1, 2].map(|i| last[i] - first[i]);
    let square: f64 = along.iter().map(|one| one * one).sum();
    let dot: f64 = (0..3).map(|i| along[i] * towards[i]).sum();
    let across = [0, 1, 2].map(|i| if square > 0.0 { towards[i] - along[i] * dot / square } else { towards[i] });
    let length = apart(across, [0.0; 3]);
    let far = if length > 1e-9 { (0.5 * rod + 5.0) / length } else { 0.0 };
    [0, 1, 2].map(|i| middle[i] + far * across[i])
}
