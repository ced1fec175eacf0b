//! The dome drawn from one side: what faces the viewer, zone by zone.
//!
//! What it is: outlines in mm with y down, centred on the head. What it is not: SVG, colours or labels.
//!
//! The dome is convex, so the part that faces the viewer is the part that is seen; no other hidden-line rule is needed.

use super::Dome;
use super::edge::Edge;
use super::figure;
use super::rows::RowCurve;
use super::vector::{Point, dot, mix};
use super::zones::{Zone, zone_of};

/// The side the viewer looks from. Left and right are the wearer's.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum View {
    /// Face to face: the wearer's right is on the viewer's left.
    Front,
    /// The wearer's left side; the face looks to the viewer's left.
    Left,
    /// The wearer's right side; the face looks to the viewer's right.
    Right,
    /// From behind.
    Back,
    /// From above, face up.
    Top,
}

impl View {
    /// All views.
    pub const ALL: [View; 5] = [View::Front, View::Left, View::Right, View::Back, View::Top];

    /// Unit vector from the head to the viewer, in the head's frame.
    fn towards(self) -> Point {
        match self {
            View::Front => [0.0, 1.0, 0.0],
            View::Left => [-1.0, 0.0, 0.0],
            View::Right => [1.0, 0.0, 0.0],
            View::Back => [0.0, -1.0, 0.0],
            View::Top => [0.0, 0.0, 1.0],
        }
    }

    /// The point on paper: mm, y down, the head's frame origin at zero.
    pub fn project(self, p: Point) -> [f64; 2] {
        match self {
            View::Front => [-p[0], -p[2]],
            View::Left => [-p[1], -p[2]],
            View::Right => [p[1], -p[2]],
            View::Back => [p[0], -p[2]],
            View::Top => [p[0], -p[1]],
        }
    }
}

/// The visible part of a zone: closed polygons (inner ones are holes by the even-odd rule).
#[derive(Debug, Clone, PartialEq)]
pub struct ZoneShape {
    /// The zone.
    pub zone: Zone,
    /// Closed polygons, last point not repeated.
    pub polygons: Vec<Vec<[f64; 2]>>,
}

/// A drawing of the head: mm, y down, origin at the middle of the head at girth level.
#[derive(Debug, Clone, PartialEq)]
pub struct ViewShape {
    /// Closed outline of head, face and neck; a plain figure of ours, not a likeness.
    pub outline: Vec<[f64; 2]>,
    /// Closed outlines of the ears that are seen.
    pub ears: Vec<Vec<[f64; 2]>>,
    /// Nose and chin where they help to see the way the head looks: open lines.
    pub features: Vec<Vec<[f64; 2]>>,
    /// Visible part of each zone that has one.
    pub zones: Vec<ZoneShape>,
    /// Visible pieces of the cap edge, open polylines.
    pub edge: Vec<Vec<[f64; 2]>>,
    /// Smallest x, y and largest x, y of all of it.
    pub bounds: [f64; 4],
}

/// How far a point may leave a straight line before the line keeps it, mm.
const FLAT: f64 = 0.05;

impl Dome {
    /// The head as seen from one side.
    pub fn view(&self, view: View) -> ViewShape {
        const FACING: u16 = 1 << 8;
        let towards = view.towards();
        let mut mesh = self.mesh.clone();
        mesh.cut(&self.solid, FACING, &|_| true, &|p| dot(self.solid.normal(p), towards));
        let mut zones = Vec::new();
        for zone in Zone::ALL {
            let mut polygons = Vec::new();
            for line in mesh.outlines(&|t| t.mark & FACING != 0 && zone_of(t.mark & !FACING) == zone) {
                let mut flat = Vec::with_capacity(line.len());
                for point in line {
                    flat.push(view.project(point));
                }
                let flat = thin(&flat);
                if area(&flat) > 1.0 {
                    polygons.push(flat);
                }
            }
            if !polygons.is_empty() {
                zones.push(ZoneShape { zone, polygons });
            }
        }
        let mut edge = Vec::new();
        for line in self.edge(Edge::Whole).iter() {
            edge.append(&mut self.project_line(view, line));
        }
        let figure = figure::figure(&self.solid, &self.marks, view);
        let mut shape = ViewShape {
            outline: figure.outline,
            ears: figure.ears,
            features: figure.features,
            zones,
            edge,
            bounds: [0.0; 4],
        };
        shape.bounds = bounds(&shape);
        shape
    }

    /// The visible pieces of a row.
    pub fn project_row(&self, view: View, row: &RowCurve) -> Vec<Vec<[f64; 2]>> {
        self.project_line(view, &row.points)
    }

    /// How far the dome looks at the viewer at a place: the cosine of its slant, below zero where it is hidden.
    pub fn facing(&self, view: View, place: Point) -> f64 {
        dot(self.solid.normal(place), view.towards())
    }

    /// The visible pieces of a line on the dome.
    pub fn project_line(&self, view: View, line: &[Point]) -> Vec<Vec<[f64; 2]>> {
        let towards = view.towards();
        // A row that runs along the rim of what is seen belongs to it.
        let facing: Vec<f64> = line.iter().map(|p| dot(self.solid.normal(*p), towards) + 1e-9).collect();
        let mut pieces = Vec::new();
        let mut piece: Vec<[f64; 2]> = Vec::new();
        for i in 0..line.len() {
            if i > 0 && (facing[i - 1] >= 0.0) != (facing[i] >= 0.0) {
                let part = facing[i - 1] / (facing[i - 1] - facing[i]);
                piece.push(view.project(mix(line[i - 1], line[i], part)));
            }
            if facing[i] >= 0.0 {
                piece.push(view.project(line[i]));
            } else if piece.len() > 1 {
                pieces.push(core::mem::take(&mut piece));
            } else {
                piece.clear();
            }
        }
        if piece.len() > 1 {
            pieces.push(piece);
        }
        pieces
    }
}

fn area(polygon: &[[f64; 2]]) -> f64 {
    let mut twice = 0.0;
    for (i, a) in polygon.iter().enumerate() {
        let b = polygon[(i + 1) % polygon.len()];
        twice += a[0] * b[1] - a[1] * b[0];
    }
    0.5 * libm::fabs(twice)
}

/// Drops points of a closed polygon that lie on the line from the last kept point to the next.
fn thin(polygon: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let mut kept: Vec<[f64; 2]> = Vec::with_capacity(polygon.len());
    let mut skipped: Vec<[f64; 2]> = Vec::new();
    for (i, p) in polygon.iter().enumerate() {
        let next = polygon[(i + 1) % polygon.len()];
        skipped.push(*p);
        let flat = kept.last().is_some_and(|last| skipped.iter().all(|s| off_line(*s, *last, next) < FLAT));
        if !flat {
            kept.push(*p);
            skipped.clear();
        }
    }
    kept
}

fn off_line(p: [f64; 2], a: [f64; 2], b: [f64; 2]) -> f64 {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let length = libm::hypot(dx, dy);
    if length < 1e-9 {
        return libm::hypot(p[0] - a[0], p[1] - a[1]);
    }
    libm::fabs((p[0] - a[0]) * dy - (p[1] - a[1]) * dx) / length
}

fn bounds(shape: &ViewShape) -> [f64; 4] {
    let mut b = [f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY];
    let mut widen = |lines: &[Vec<[f64; 2]>]| {
        for line in lines {
            for p in line {
                b = [b[0].min(p[0]), b[1].min(p[1]), b[2].max(p[0]), b[3].max(p[1])];
            }
        }
    };
    widen(&shape.ears);
    widen(&shape.features);
    widen(core::slice::from_ref(&shape.outline));
    for zone in &shape.zones {
        widen(&zone.polygons);
    }
    b
}
