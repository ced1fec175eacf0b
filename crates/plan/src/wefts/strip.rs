//! A stretch of a row, cut out of its curve.
//!
//! What it is: lengths by zone and points between two marks. What it is not: the curve itself.

use measure::quantity::{Length, units::millimeter};
use record::wig::zone::Zone;

use crate::dome::{Point, RowCurve};

/// A stretch of a row between two marks along it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Strip {
    /// Where it begins, from the row's left end.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

impl Strip {
    pub(super) fn length(&self) -> Length {
        self.to - self.from
    }

    /// The longest part of the strip whose points all satisfy; nothing where none does.
    pub(super) fn longest_where(&self, curve: &RowCurve, holds: &dyn Fn(Point) -> bool) -> Option<Strip> {
        let points = self.points(curve);
        let chords: f64 = points.windows(2).map(|pair| distance(pair[0], pair[1])).sum();
        let scale = if chords > 0.0 { self.length() / chords } else { return None };
        let mut at = 0.0;
        let mut begun: Option<f64> = None;
        let mut best: Option<(f64, f64)> = None;
        for (index, point) in points.iter().enumerate() {
            if let Some(before) = index.checked_sub(1).and_then(|before| points.get(before)) {
                at += distance(*before, *point);
            }
            if !holds(*point) {
                begun = None;
                continue;
            }
            let from = *begun.get_or_insert(at);
            if best.is_none_or(|(first, last)| at - from > last - first) {
                best = Some((from, at));
            }
        }
        let (from, to) = best?;
        (to > from).then(|| Strip { from: self.from + scale * from, to: self.from + scale * to })
    }

    /// So much of it, about its middle.
    pub(super) fn about_middle(&self, length: Length) -> Strip {
        let spare = (self.length() - length) / 2.0;
        Strip { from: self.from + spare, to: self.to - spare }
    }

    /// The part between two marks along it, mm.
    pub(super) fn part(&self, from: f64, to: f64) -> Strip {
        Strip { from: self.from + Length::new::<millimeter>(from), to: self.from + Length::new::<millimeter>(to) }
    }

    /// Its zones, each with where it begins and ends along the strip, mm.
    pub(super) fn spans(&self, curve: &RowCurve) -> Vec<(Zone, f64, f64)> {
        let mut at = Length::new::<millimeter>(0.0);
        let mut spans = Vec::new();
        for span in &curve.spans {
            let (from, to) = (at.max(self.from), (at + span.length).min(self.to));
            at += span.length;
            if to > from {
                let along = |mark: Length| (mark - self.from).get::<millimeter>();
                spans.push((span.zone, along(from), along(to)));
            }
        }
        spans
    }

    /// Its length in each zone of the curve.
    pub(super) fn by_zone(&self, curve: &RowCurve) -> Vec<(Zone, Length)> {
        let mut at = Length::new::<millimeter>(0.0);
        let mut zones: Vec<(Zone, Length)> = Vec::new();
        for span in &curve.spans {
            let (from, to) = (at, at + span.length);
            at = to;
            let part = to.min(self.to) - from.max(self.from);
            // Rounding leaves slivers where a strip ends on a boundary.
            if part > Length::new::<millimeter>(0.01) {
                match zones.iter_mut().find(|(zone, _)| *zone == span.zone) {
                    Some((_, length)) => *length += part,
                    None => zones.push((span.zone, part)),
                }
            }
        }
        zones
    }

    /// Its points on the head.
    pub(super) fn points(&self, curve: &RowCurve) -> Vec<Point> {
        let whole = curve.length().get::<millimeter>();
        let chords: Vec<f64> = curve.points.windows(2).map(|pair| distance(pair[0], pair[1])).collect();
        let sum: f64 = chords.iter().sum();
        if sum <= 0.0 || whole <= 0.0 {
            return Vec::new();
        }
        let (from, to) = (self.from.get::<millimeter>() * sum / whole, self.to.get::<millimeter>() * sum / whole);
        let mut points = Vec::new();
        let mut at = 0.0;
        for (index, chord) in chords.iter().enumerate() {
            let (start, end) = (at, at + chord);
            at = end;
            if end < from || start > to || *chord <= 0.0 {
                continue;
            }
            let mix = |mark: f64| {
                let share = ((mark - start) / chord).clamp(0.0, 1.0);
                let (a, b) = (curve.points[index], curve.points[index + 1]);
                [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share]
            };
            if points.is_empty() {
                points.push(mix(from.max(start)));
            }
            points.push(mix(to.min(end)));
        }
        points
    }
}

fn distance(a: Point, b: Point) -> f64 {
    libm::sqrt((0..3).map(|axis| (a[axis] - b[axis]) * (a[axis] - b[axis])).sum())
}

/// The stretches of a curve that lie in zones a row may cover, in order.
pub(super) fn stretches(curve: &RowCurve, covers: &dyn Fn(Zone) -> bool) -> Vec<Strip> {
    let mut at = Length::new::<millimeter>(0.0);
    let mut strips: Vec<Strip> = Vec::new();
    let mut open = false;
    for span in &curve.spans {
        let (from, to) = (at, at + span.length);
        at = to;
        if !covers(span.zone) {
            open = false;
            continue;
        }
        match strips.last_mut() {
            Some(strip) if open => strip.to = to,
            _ => strips.push(Strip { from, to }),
        }
        open = true;
    }
    strips
}
