//! Where a water line falls on each row: a level, not a length from the root.
//!
//! What it is: hair lies over the head down to its widest part and hangs from there, so that rows higher up meet the water
//! nearer their ends. What it is not: a look: hair is taken to fall to the nearest side, wet and combed.

use libm::{atan2, sqrt};
use measure::quantity::{Length, units::millimeter};
use record::wig::zone::Zone;

use crate::{
    dome::{Point, Section, Solid},
    layout::Layout,
};

/// How far a row in a zone lies from the widest part of the head.
#[derive(Clone, Debug, PartialEq)]
pub struct RowLevel {
    /// The section.
    pub section: Section,
    /// Its number in the section, from 1.
    pub number: usize,
    /// The zone.
    pub zone: Zone,
    /// Along the head down to its widest part; below that, how far below as a negative length.
    pub above: Length,
    /// How much of the row lies in the zone.
    pub length: Length,
    /// The way of its hair from a root in its middle down to the widest part, mm in the head's frame.
    pub path: Vec<Point>,
}

impl RowLevel {
    /// Where a water line, so far below the widest part, falls on its hair: from the root.
    pub fn falls_at(&self, water: Length) -> Length {
        water + self.above
    }

    /// How far below the widest part the water must stand to fall so far from the root.
    pub fn water_for(&self, from_root: Length) -> Length {
        from_root - self.above
    }
}

/// Steps of the way down over the head.
const STEPS: u32 = 24;

/// Every row of the base in every zone it crosses, nape upwards, then forwards over the top.
pub fn rows(layout: &Layout) -> Vec<RowLevel> {
    let solid = layout.dome.solid();
    let mut all: Vec<RowLevel> = Vec::new();
    for row in &layout.rows {
        for span in &row.curve.spans {
            let points = row.curve.points.get(span.points.clone()).unwrap_or_default();
            if points.is_empty() || span.length.get::<millimeter>() < 1.0 {
                continue;
            }
            let sum: f64 = points.iter().map(|point| over(solid, row.curve.section, *point)).sum();
            let root = points.get(points.len() / 2).copied().unwrap_or_default();
            let above = Length::new::<millimeter>(sum / points.len() as f64);
            // Both halves of a row are one to those who dip it.
            match all
                .iter_mut()
                .find(|one| one.section == row.curve.section && one.number == row.number && one.zone == span.zone)
            {
                Some(one) => {
                    one.above = (one.above + above) / 2.0;
                    one.length += span.length;
                }
                None => all.push(RowLevel {
                    section: row.curve.section,
                    number: row.number,
                    zone: span.zone,
                    above,
                    length: span.length,
                    path: path(solid, row.curve.section, root),
                }),
            }
        }
    }
    all
}

/// From a point down over the head to its widest part, mm: straight down behind and at the sides, sideways off the top.
fn over(solid: &Solid, section: Section, point: Point) -> f64 {
    // Below the widest part hair hangs at once.
    if point[2] <= 0.0 {
        return point[2];
    }
    path(solid, section, point).windows(2).map(|pair| distance(pair[0], pair[1])).sum()
}

fn path(solid: &Solid, section: Section, point: Point) -> Vec<Point> {
    let [x, y, z] = point;
    if z <= 0.0 {
        return vec![point];
    }
    let azimuth = atan2(y, x);
    let side = if x < 0.0 { -1.0 } else { 1.0 };
    let mut path = vec![point];
    for step in 1..=STEPS {
        let height = z * (1.0 - f64::from(step) / f64::from(STEPS));
        path.push(match section {
            Section::BackAndSides => solid.at(azimuth, height),
            Section::Top => [side * solid.half_breadth_at(y, height), y, height],
        });
    }
    path
}

fn distance(a: Point, b: Point) -> f64 {
    let [dx, dy, dz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
    sqrt(dx * dx + dy * dy + dz * dz)
}
