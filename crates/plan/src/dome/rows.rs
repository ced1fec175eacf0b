//! Rows (tracks) over the cap, with the length that falls into each zone.
//!
//! What it is: where a row at a given place runs. What it is not: which rows to sew (a planner's question).
//!
//! Two sections share the cap. **Back and sides**: slices round the back, level at the nape and sinking a little towards the
//! front higher up, counted along the mid line from the nape edge up to the
//! ear-to-ear line; below the top of the sides a row runs from the left front edge round the back to the right one, above
//! it from ear-to-ear line to ear-to-ear line; below the ear notch from behind one ear to behind the other. The sideburn
//! tabs carry no row of their own. **Top**: slices ear to ear, counted from the ear-to-ear line forward to the hairline. A
//! row crosses the part zone; the span is listed so that a planner can leave it out.

use super::Dome;
use super::curve::{last_yes, length, stepped};
use super::proportions::UPPER;
use super::vector::{Point, mix};
use super::zones::Zone;
use core::f64::consts::FRAC_PI_2;
use core::ops::Range;
use measure::quantity::{Length, units::millimeter};

/// The part of the cap a row belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Section {
    /// Everything behind the ear-to-ear line, and the sides.
    BackAndSides,
    /// In front of the ear-to-ear line, above the sides.
    Top,
}

/// What a row ends at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum RowEnd {
    /// The front edge, which others see.
    FrontEdge,
    /// The edge round the ear or beside the nape.
    EarEdge,
    /// The ear-to-ear line, where the rows of the top begin.
    EarLine,
    /// The upper end of a side, where rows run round the back.
    SideTop,
}

/// The stretch of a row in one zone.
#[derive(Debug, Clone, PartialEq)]
pub struct Span {
    /// The zone.
    pub zone: Zone,
    /// Length of the stretch.
    pub length: Length,
    /// Its points among the row's, first and last included; neighbours share a point.
    pub points: Range<usize>,
}

/// A row on the dome, from the wearer's left to the right.
#[derive(Debug, Clone, PartialEq)]
pub struct RowCurve {
    /// The section it belongs to.
    pub section: Section,
    /// Its place: along the mid line from the section's start.
    pub at: Length,
    /// The curve, mm in the head's frame.
    pub points: Vec<Point>,
    /// Stretches by zone, in order; their lengths add to the row's.
    pub spans: Vec<Span>,
    /// What both ends (mirror images) stop at.
    pub ends: RowEnd,
}

impl RowCurve {
    /// Length of the row.
    pub fn length(&self) -> Length {
        self.spans.iter().map(|s| s.length).fold(Length::new::<millimeter>(0.0), |a, b| a + b)
    }

    /// Length of the row in a zone.
    pub fn length_in(&self, zone: Zone) -> Length {
        self.spans
            .iter()
            .filter(|s| s.zone == zone)
            .map(|s| s.length)
            .fold(Length::new::<millimeter>(0.0), |a, b| a + b)
    }
}

/// Points of half a row; both halves mirror.
const HALF_STEPS: usize = 48;
/// Shorter than this there is no row, mm.
const SHORTEST: f64 = 2.0;

impl Dome {
    /// Length of a section along the mid line: the greatest place a row can have.
    pub fn section_length(&self, section: Section) -> Length {
        Length::new::<millimeter>(match section {
            Section::BackAndSides => self.back_length,
            Section::Top => self.front.length(),
        })
    }

    /// The point of a section's mid line at a place along it; none outside the section.
    pub fn middle(&self, section: Section, at: Length) -> Option<Point> {
        let mark = at.get::<millimeter>();
        (mark >= 0.0 && at <= self.section_length(section)).then(|| match section {
            Section::BackAndSides => self.back.at(self.back_length - mark),
            Section::Top => self.front.at(mark),
        })
    }

    /// The row of a section at a place along the mid line; none outside the section or where a row has no length.
    pub fn row(&self, section: Section, at: Length) -> Option<RowCurve> {
        let mark = at.get::<millimeter>();
        if !(mark >= 0.0 && at <= self.section_length(section)) {
            return None;
        }
        let (half, ends) = match section {
            Section::BackAndSides => self.round_half(self.back_length - mark),
            Section::Top => self.cross_half(self.front.at(mark)[1]),
        };
        let mut points: Vec<Point> = half.iter().rev().map(|p| [-p[0], p[1], p[2]]).collect();
        points.extend(&half[1..]);
        if length(&points) < SHORTEST {
            return None;
        }
        let (points, spans) = self.spans(points);
        Some(RowCurve { section, at, points, spans, ends })
    }

    /// Rows at the middle of equal steps as near to `spacing` as the section allows; empty unless `spacing` is above zero.
    pub fn rows_evenly(&self, section: Section, spacing: Length) -> Vec<RowCurve> {
        let whole = self.section_length(section);
        let steps = libm::round(whole.get::<millimeter>() / spacing.get::<millimeter>()).max(1.0);
        if !(spacing.get::<millimeter>() > 0.0 && steps <= 2000.0) {
            return Vec::new();
        }
        (0..steps as u32).filter_map(|i| self.row(section, whole * ((f64::from(i) + 0.5) / steps))).collect()
    }

    /// Right half of the row that leaves the mid line at the back `mark` mm from the top.
    ///
    /// Level at the nape, it sinks more and more towards the front up to the slope of the plane under the crown.
    fn round_half(&self, mark: f64) -> (Vec<Point>, RowEnd) {
        let edge = &self.edge;
        let on_back = self.back.at(mark);
        let rise = (self.back_length - mark) / (self.back_length - self.upper_mark);
        let slope = UPPER.1 * rise.min(1.0);
        let z = on_back[2] + slope * on_back[1];
        let at = |azimuth: f64| self.solid.at_on(azimuth, z, slope);
        let (last, ends) = if mark <= self.upper_mark {
            (0.0, RowEnd::EarLine)
        } else {
            let steps = 180;
            let azimuth = |i: i32| -FRAC_PI_2 + f64::from(i) * FRAC_PI_2 / 90.0;
            // At the very edge of the nape the first point may fall short by rounding.
            let on = |a: f64| at(a)[2] + 1e-6 >= edge.height(a);
            let out = (1..=steps).find(|i| !on(azimuth(*i))).unwrap_or(steps);
            let last = last_yes(azimuth(out - 1), azimuth(out), &on);
            (last, if last > edge.sideburn_azimuth() { RowEnd::FrontEdge } else { RowEnd::EarEdge })
        };
        let mut half = stepped(HALF_STEPS, &|i| at(-FRAC_PI_2 + (last + FRAC_PI_2) * i / HALF_STEPS as f64));
        half[0][0] = 0.0;
        (half, ends)
    }

    /// Right half of the row across the top at `y`, from the mid line.
    fn cross_half(&self, y: f64) -> (Vec<Point>, RowEnd) {
        let at = |angle: f64| self.solid.hit([0.0, y, 0.0], [libm::sin(angle), 0.0, libm::cos(angle)]);
        let low = |p: Point| self.division.over_upper(p) < 0.0;
        let on = |angle: f64| {
            let p = at(angle);
            !low(p) && p[2] + 1e-9 >= self.edge.height(libm::atan2(p[1], libm::fabs(p[0])))
        };
        let steps = 90;
        let angle = |i: i32| f64::from(i) * FRAC_PI_2 / f64::from(steps);
        let out = (1..=steps).find(|i| !on(angle(*i))).unwrap_or(steps);
        let last = last_yes(angle(out - 1), angle(out), &on);
        let half = stepped(HALF_STEPS, &|i| at(last * i / HALF_STEPS as f64));
        let ends = if low(at(last + 1e-6)) { RowEnd::SideTop } else { RowEnd::FrontEdge };
        (half, ends)
    }

    /// Splits a row where it passes from zone to zone, adding the points of passage.
    fn spans(&self, points: Vec<Point>) -> (Vec<Point>, Vec<Span>) {
        // The zone of a piece is asked a little inside it, where no boundary is hit by rounding.
        let piece_zone = |a: Point, b: Point| self.division.zone(mix(a, b, 0.5));
        let mut zones: Vec<Zone> = Vec::with_capacity(points.len());
        for pair in points.windows(2) {
            zones.push(piece_zone(pair[0], pair[1]));
        }
        let mut out = vec![points[0]];
        let mut spans: Vec<Span> = Vec::new();
        let mut start = 0;
        for i in 0..zones.len() {
            let next = zones.get(i + 1);
            if next == Some(&zones[i]) {
                out.push(points[i + 1]);
                continue;
            }
            if next.is_some() {
                // The change lies between the middles of this piece and the next.
                let (a, b, c) = (points[i], points[i + 1], points[i + 2]);
                let along = |t: f64| {
                    if t < 0.5 { mix(a, b, 0.5 + t) } else { mix(b, c, t - 0.5) }
                };
                let t = last_yes(0.0, 1.0, &|t| self.division.zone(along(t)) == zones[i]);
                if t > 0.5 {
                    out.push(b);
                }
                out.push(along(t));
                spans.push(span(zones[i], &out, start));
                start = out.len() - 1;
                if t < 0.5 {
                    out.push(b);
                }
            } else {
                out.push(points[i + 1]);
                spans.push(span(zones[i], &out, start));
            }
        }
        (out, spans)
    }
}

fn span(zone: Zone, points: &[Point], start: usize) -> Span {
    Span { zone, length: Length::new::<millimeter>(length(&points[start..])), points: start..points.len() }
}
