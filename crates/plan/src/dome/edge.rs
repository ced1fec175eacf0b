//! The edge of the cap: front hairline, temples, sideburn tabs, ear notches, nape.
//!
//! What it is: the height of the edge at every azimuth of the right half, mirrored to the left, and the polyline of it.
//! What it is not: a bought cap's edge; a traced edge overrides it.

use super::proportions::{EAR_EDGE, NAPE_RISE};
use super::solid::Solid;
use super::vector::{Point, square_to_segment};
use core::f64::consts::FRAC_PI_2;

/// A stretch of the cap edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Edge {
    /// Front hairline from sideburn tab to sideburn tab: the edge others see.
    Front,
    /// Both stretches round the ears, from the front of the sideburn tab to the nape corner.
    Ears,
    /// Nape, corner to corner.
    Nape,
    /// The whole perimeter.
    Whole,
}

/// What the tapes settle of the edge; heights over the girth plane in mm, azimuths in radians (front is π/2).
#[derive(Debug, Clone, Copy)]
pub(super) struct Marks {
    pub(super) scale: f64,
    pub(super) tragus: f64,
    pub(super) hairline: f64,
    pub(super) temple: f64,
    pub(super) temple_height: f64,
    pub(super) nape: f64,
    pub(super) nape_corner: f64,
}

const NAPE_STEPS: usize = 10;

/// Right half of the nape edge for a corner at azimuth `corner`, from the corner to the middle.
pub(super) fn nape_line(solid: &Solid, nape: f64, corner: f64, scale: f64) -> Vec<Point> {
    let flat = |azimuth, height| Knot { azimuth, height, slope: 0.0, steps: 0 };
    let (from, to) = (flat(corner, nape + NAPE_RISE * scale), flat(-FRAC_PI_2, nape));
    (0..=NAPE_STEPS)
        .map(|i| {
            let azimuth = corner + (-FRAC_PI_2 - corner) * i as f64 / NAPE_STEPS as f64;
            solid.at(azimuth, between(&from, &to, azimuth))
        })
        .collect()
}

/// The edge as a curve and as points.
#[derive(Debug, Clone)]
pub(super) struct CapEdge {
    knots: Vec<Knot>,
    /// Right half, from front middle to nape middle: azimuth and point.
    right: Vec<(f64, Point)>,
    sideburn: usize,
    corner: usize,
}

#[derive(Debug, Clone, Copy)]
struct Knot {
    azimuth: f64,
    height: f64,
    slope: f64,
    steps: usize,
}

/// Azimuth of the surface point `forward` mm in front of the ears at height `z`.
pub(super) fn azimuth_of(solid: &Solid, forward: f64, z: f64) -> f64 {
    libm::atan2(forward, solid.half_breadth_at(forward, z))
}

impl CapEdge {
    pub(super) fn new(solid: &Solid, marks: &Marks) -> Self {
        let knot = |azimuth, height, steps| Knot { azimuth, height, slope: 0.0, steps };
        let mut knots = vec![knot(FRAC_PI_2, marks.hairline, 0), knot(marks.temple, marks.temple_height, 8)];
        for mark in &EAR_EDGE {
            let height = marks.tragus + mark.above * marks.scale;
            let azimuth = azimuth_of(solid, mark.forward * marks.scale, height);
            knots.push(knot(azimuth, height, mark.steps));
        }
        knots.push(knot(marks.nape_corner, marks.nape + NAPE_RISE * marks.scale, 5));
        knots.push(knot(-FRAC_PI_2, marks.nape, NAPE_STEPS));
        set_slopes(&mut knots);

        let mut right = vec![(FRAC_PI_2, solid.at(FRAC_PI_2, marks.hairline))];
        let (mut sideburn, mut corner) = (0, 0);
        for (i, pair) in knots.windows(2).enumerate() {
            for step in 1..=pair[1].steps {
                let part = step as f64 / pair[1].steps as f64;
                let azimuth = pair[0].azimuth + (pair[1].azimuth - pair[0].azimuth) * part;
                right.push((azimuth, solid.at(azimuth, between(&pair[0], &pair[1], azimuth))));
            }
            if i == 2 {
                sideburn = right.len() - 1;
            }
            if i + 3 == knots.len() {
                corner = right.len() - 1;
            }
        }
        // The middle of front and back lie on the mid plane to the bit, so that both halves meet.
        if let Some(first) = right.first_mut() {
            first.1[0] = 0.0;
        }
        if let Some(last) = right.last_mut() {
            last.1[0] = 0.0;
        }
        Self { knots, right, sideburn, corner }
    }

    /// Height of the edge at an azimuth of the right half.
    pub(super) fn height(&self, azimuth: f64) -> f64 {
        let after = self.knots.partition_point(|k| k.azimuth > azimuth);
        let after = after.clamp(1, self.knots.len() - 1);
        between(&self.knots[after - 1], &self.knots[after], azimuth)
    }

    /// Whether a surface point lies on the cap.
    pub(super) fn covers(&self, p: Point) -> bool {
        p[2] >= self.height(libm::atan2(p[1], libm::fabs(p[0])))
    }

    /// Azimuth of the front foot of the sideburn tab.
    pub(super) fn sideburn_azimuth(&self) -> f64 {
        self.right[self.sideburn].0
    }

    /// Edge columns of the right half for the mesh: azimuth and edge point, front to back.
    pub(super) fn right(&self) -> &[(f64, Point)] {
        &self.right
    }

    /// Right half of the front edge, from the middle.
    pub(super) fn right_front(&self) -> Vec<Point> {
        self.right[0..=self.sideburn].iter().map(|p| p.1).collect()
    }

    /// Polylines of a stretch; closed for the whole.
    pub(super) fn lines(&self, edge: Edge) -> Vec<Vec<Point>> {
        let right = |range: core::ops::RangeInclusive<usize>| -> Vec<Point> {
            let mut line = Vec::new();
            for (_, point) in &self.right[range] {
                line.push(*point);
            }
            line
        };
        let mirrored = |line: &[Point]| -> Vec<Point> {
            let mut other = line.to_vec();
            other.reverse();
            for point in &mut other {
                point[0] = -point[0];
            }
            other
        };
        let last = self.right.len() - 1;
        match edge {
            Edge::Front => {
                let half = right(0..=self.sideburn);
                let mut line = mirrored(&half);
                line.extend_from_slice(&half[1..]);
                vec![line]
            }
            Edge::Ears => {
                let half = right(self.sideburn..=self.corner);
                vec![mirrored(&half), half]
            }
            Edge::Nape => {
                let mut line = right(self.corner..=last);
                let left = mirrored(&line);
                line.extend_from_slice(&left[1..]);
                vec![line]
            }
            Edge::Whole => {
                let mut line = right(0..=last);
                let left = mirrored(&line);
                line.extend_from_slice(&left[1..]);
                vec![line]
            }
        }
    }
}

/// Shortest distance in mm from a point to polylines.
pub(super) fn distance_to_lines(p: Point, lines: &[Vec<Point>]) -> f64 {
    libm::sqrt(lines.iter().map(|line| square_to_line(p, line)).fold(f64::INFINITY, f64::min))
}

/// The same to a line that lies alike on the other side: its right half, seen from the point's mirror image, is enough.
pub(super) fn distance_to_halves(p: Point, right: &[Point]) -> f64 {
    libm::sqrt(square_to_line([libm::fabs(p[0]), p[1], p[2]], right))
}

fn square_to_line(p: Point, line: &[Point]) -> f64 {
    let mut least = f64::INFINITY;
    for pair in line.windows(2) {
        let square = square_to_segment(p, pair[0], pair[1]);
        if square < least {
            least = square;
        }
    }
    least
}

/// Slopes of a cubic that never overshoots its knots: the harmonic mean of Fritsch and Butland (SIAM J. Sci. Stat. Comput.
/// 5, 1984; from memory), flat where the height turns, flat at the mid plane for a smooth front and nape.
fn set_slopes(knots: &mut [Knot]) {
    // Round at the nape corner: the last inner knot stays flat, which `nape_line` relies on.
    for i in 1..knots.len() - 2 {
        let before = knots[i].azimuth - knots[i - 1].azimuth;
        let after = knots[i + 1].azimuth - knots[i].azimuth;
        let rise_before = (knots[i].height - knots[i - 1].height) / before;
        let rise_after = (knots[i + 1].height - knots[i].height) / after;
        if rise_before * rise_after > 0.0 {
            let (w1, w2) = (2.0 * after + before, after + 2.0 * before);
            knots[i].slope = (w1 + w2) / (w1 / rise_before + w2 / rise_after);
        }
    }
}

fn between(a: &Knot, b: &Knot, azimuth: f64) -> f64 {
    let width = b.azimuth - a.azimuth;
    let t = ((azimuth - a.azimuth) / width).clamp(0.0, 1.0);
    let (t2, t3) = (t * t, t * t * t);
    (2.0 * t3 - 3.0 * t2 + 1.0) * a.height
        + (t3 - 2.0 * t2 + t) * width * a.slope
        + (3.0 * t2 - 2.0 * t3) * b.height
        + (t3 - t2) * width * b.slope
}
