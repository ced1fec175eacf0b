//! A polyline that knows its length: lay a tape along it, ask what lies at a mark.
//!
//! What it is: cumulative chord length with interpolation. What it is not: a spline.

use super::vector::{Point, distance, mix};

/// Length of a polyline, mm.
pub(super) fn length(points: &[Point]) -> f64 {
    points.windows(2).map(|w| distance(w[0], w[1])).sum()
}

/// Length of a smooth curve sampled in an even number of equal parameter steps.
///
/// Chords fall short by a term in the square of the step; one Richardson step removes it.
pub(super) fn smooth_length(points: &[Point]) -> f64 {
    let fine = length(points);
    if points.len() < 3 || points.len().is_multiple_of(2) {
        return fine;
    }
    let coarse: f64 =
        points.iter().step_by(2).zip(points.iter().skip(2).step_by(2)).map(|(a, b)| distance(*a, *b)).sum();
    fine + (fine - coarse) / 3.0
}

/// A polyline with its running length.
#[derive(Debug, Clone)]
pub(super) struct Tape {
    points: Vec<Point>,
    marks: Vec<f64>,
}

impl Tape {
    pub(super) fn along(points: Vec<Point>) -> Self {
        let mut run = 0.0;
        let mut marks = Vec::with_capacity(points.len());
        for (i, p) in points.iter().enumerate() {
            if i > 0 {
                run += distance(points[i - 1], *p);
            }
            marks.push(run);
        }
        Self { points, marks }
    }

    pub(super) fn length(&self) -> f64 {
        self.marks.last().copied().unwrap_or(0.0)
    }

    /// The point at a mark, held within the tape.
    pub(super) fn at(&self, mark: f64) -> Point {
        let above = self.marks.partition_point(|m| *m < mark);
        if above == 0 {
            return self.points.first().copied().unwrap_or_default();
        }
        let Some(end) = self.points.get(above) else {
            return self.points.last().copied().unwrap_or_default();
        };
        let (from, to) = (self.marks[above - 1], self.marks[above]);
        mix(self.points[above - 1], *end, (mark - from) / (to - from))
    }
}

/// Where a continuous function is zero between `low` and `high`; the nearer end when it does not change sign there.
///
/// Regula falsi with the Illinois weight: never leaves the bracket, so it cannot fail on an odd head.
pub(super) fn zero_between(low: f64, high: f64, f: &dyn Fn(f64) -> f64) -> f64 {
    let (mut a, mut b) = (low, high);
    let (mut fa, mut fb) = (f(a), f(b));
    if fa * fb > 0.0 {
        return if libm::fabs(fa) < libm::fabs(fb) { a } else { b };
    }
    let mut last_side = 0;
    for _ in 0..80 {
        if libm::fabs(b - a) < 1e-10 || fa == fb {
            break;
        }
        let c = (a * fb - b * fa) / (fb - fa);
        let fc = f(c);
        if libm::fabs(fc) < 1e-10 {
            return c;
        }
        if fc * fb > 0.0 {
            (b, fb) = (c, fc);
            if last_side == 1 {
                fa *= 0.5;
            }
            last_side = 1;
        } else {
            (a, fa) = (c, fc);
            if last_side == -1 {
                fb *= 0.5;
            }
            last_side = -1;
        }
    }
    if libm::fabs(fa) < libm::fabs(fb) { a } else { b }
}

/// Where a yes/no question changes its answer between `yes` (where it holds) and `no`.
pub(super) fn last_yes(yes: f64, no: f64, holds: &dyn Fn(f64) -> bool) -> f64 {
    let (mut yes, mut no) = (yes, no);
    for _ in 0..28 {
        let middle = 0.5 * (yes + no);
        if holds(middle) {
            yes = middle;
        } else {
            no = middle;
        }
    }
    yes
}

/// A line of points: one for each step from 0 to the last.
#[inline(never)]
pub(super) fn stepped(steps: usize, at: &dyn Fn(f64) -> Point) -> Vec<Point> {
    let mut line = Vec::with_capacity(steps + 1);
    for step in 0..=steps {
        line.push(at(step as f64));
    }
    line
}
