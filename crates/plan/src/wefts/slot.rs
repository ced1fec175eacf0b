//! A gap with what it may still take, and where.
//!
//! What it is: room for rows in one gap under the rules, rows already sewn there counted. What it is not: a choice of rows.

use measure::{
    order,
    quantity::{Length, units},
};
use record::wig::zone::Zone;

use super::{
    place::Mount,
    strip::{Strip, stretches},
    wish::Rules,
};
use crate::{
    dome::{Edge, Point, RowCurve, Section},
    layout::{Gap, Layout, none},
};

/// A narrow zone is sewn across its whole stretch even where that is shorter than a part row would be worth; no shorter than
/// this, mm. Common practice, no source.
const LEAST_STRETCH_MM: f64 = 20.0;
/// A row already sewn counts as lying on the base row when it is this near to it.
const ON_ROW_MM: f64 = 1.5;

/// A gap with what it may still take.
pub(super) struct Slot<'a> {
    pub(super) gap: &'a Gap,
    /// A row in the middle of the gap.
    pub(super) middle: RowCurve,
    /// Stretches of the gap free of sewn rows, with how many rows each has room for.
    free: Vec<(Length, Length, usize)>,
    /// Rows that may still be stacked on the row below.
    on_row: usize,
}

impl Slot<'_> {
    /// How many rows it takes.
    pub(super) fn capacity(&self) -> usize {
        self.open() + self.on_row
    }

    fn open(&self) -> usize {
        self.free.iter().map(|(_, _, rows)| rows).sum()
    }

    /// Where so many rows lie: in the open first, evenly; then on the row below.
    pub(super) fn places(&self, rows: usize) -> Vec<(Mount, Length)> {
        let open = rows.min(self.open());
        let mut shares = vec![0_usize; self.free.len()];
        for _ in 0..open {
            let next = (0..self.free.len()).filter(|one| shares[*one] < self.free[*one].2).max_by(|a, b| {
                let step = |one: &usize| {
                    let (from, to, _) = self.free[*one];
                    ((to - from) / (shares[*one] + 2) as f64).get::<units::meter>()
                };
                step(a).total_cmp(&step(b)).then(b.cmp(a))
            });
            if let Some(next) = next {
                shares[next] += 1;
            }
        }
        let mut places = Vec::new();
        for ((from, to, _), share) in self.free.iter().zip(shares) {
            for row in 0..share {
                places.push((Mount::Gap, *from + (*to - *from) * ((row + 1) as f64 / (share + 1) as f64)));
            }
        }
        for _ in open..rows {
            places.push((Mount::OnRow, self.gap.from));
        }
        places
    }
}

/// The gaps of a section that take rows. `sewn` counts rows already added, by section and place.
pub(super) fn slots<'a>(
    layout: &'a Layout,
    rules: &Rules,
    section: Section,
    sewn: &[(Section, Length)],
) -> Vec<Slot<'a>> {
    let seen = Seen::new(layout, rules);
    let mut slots = Vec::new();
    for gap in layout.gaps.iter().filter(|gap| gap.section == section) {
        if layout.dome.middle(section, gap.middle()).is_none_or(|point| seen.near(point)) {
            continue;
        }
        if let Some(middle) = layout.dome.row(section, gap.middle()) {
            let (free, on_row) = room_in(gap, rules, sewn);
            slots.push(Slot { gap, middle, free, on_row });
        }
    }
    slots
}

/// Free stretches of a gap with the rows each takes, and the rows that may be stacked below it.
pub(super) fn room_in(gap: &Gap, rules: &Rules, sewn: &[(Section, Length)]) -> (Vec<(Length, Length, usize)>, usize) {
    let closest = if rules.parting && gap.section == Section::Top { rules.closest_parting } else { rules.closest };
    let closest = closest.max(Length::new::<units::millimeter>(1.0));
    let near = Length::new::<units::millimeter>(ON_ROW_MM);
    let here =
        || sewn.iter().filter(|(section, at)| *section == gap.section && *at >= gap.from - near && *at < gap.to - near);
    let stacked = here().filter(|(_, at)| (*at - gap.from).abs() < near).count();
    let mut marks: Vec<Length> = here().map(|(_, at)| *at).filter(|at| (*at - gap.from).abs() >= near).collect();
    order::sort_by(&mut marks, &|a, b| a.get::<units::meter>().total_cmp(&b.get::<units::meter>()));
    marks.push(gap.to);
    let mut from = gap.from;
    let mut free = Vec::new();
    for to in marks {
        let parts = ((to - from) / closest).get::<units::ratio>();
        let rows = (libm::floor(parts + 1e-9).max(0.0) as usize).saturating_sub(1);
        if rows > 0 {
            free.push((from, to, rows));
        }
        from = to;
    }
    (free, (rules.most_stacked.saturating_sub(1) as usize).saturating_sub(stacked))
}

/// The edges that others see, and how far rows keep from them.
pub(super) struct Seen<'a> {
    layout: &'a Layout,
    /// Each edge with the box it lies in, mm.
    edges: Vec<(Edge, Point, Point)>,
    distance: Length,
}

impl<'a> Seen<'a> {
    pub(super) fn new(layout: &'a Layout, rules: &Rules) -> Seen<'a> {
        let up: &[Edge] = if rules.worn_up { &[Edge::Front, Edge::Ears, Edge::Nape] } else { &[Edge::Front] };
        let mut edges = Vec::new();
        for edge in up {
            let (mut low, mut high) = ([f64::INFINITY; 3], [f64::NEG_INFINITY; 3]);
            for line in layout.dome.edge(*edge).iter() {
                for point in line {
                    for axis in 0..3 {
                        low[axis] = low[axis].min(point[axis]);
                        high[axis] = high[axis].max(point[axis]);
                    }
                }
            }
            edges.push((*edge, low, high));
        }
        Seen { layout, edges, distance: rules.edge_distance }
    }

    /// Whether a point lies too near to an edge that others see.
    pub(super) fn near(&self, point: Point) -> bool {
        let distance = self.distance.get::<units::millimeter>();
        self.edges.iter().any(|(edge, low, high)| {
            // Most points are far from the whole edge, which a box tells at once.
            let boxed = (0..3).all(|axis| point[axis] >= low[axis] - distance && point[axis] <= high[axis] + distance);
            boxed && self.layout.dome.distance_to(*edge, point) < self.distance
        })
    }
}

/// The stretches a row may cover: in zones that take it, away from edges that others see, not too short.
pub(super) fn room(curve: &RowCurve, seen: &Seen<'_>, shortest: Length, zones: &[Zone]) -> Vec<Strip> {
    let least = Length::new::<units::millimeter>(LEAST_STRETCH_MM);
    let shortest = if shortest < least { shortest } else { least };
    let mut room = Vec::new();
    for stretch in stretches(curve, &|zone| zones.contains(&zone)) {
        if let Some(strip) = stretch.longest_where(curve, &|point| !seen.near(point))
            && strip.length() >= shortest
        {
            room.push(strip);
        }
    }
    room
}

pub(super) fn length_of(strips: &[Strip]) -> Length {
    strips.iter().fold(none(), |sum, strip| sum + strip.length())
}
