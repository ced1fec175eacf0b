//! Placing rows in gaps.
//!
//! What it is: even spreading by a running fraction, whole rows first, one part row to come out right.
//! What it is not: the limits (see `wish`).

use measure::quantity::{Length, LinearNumberDensity, units};
use record::wig::zone::Zone;

use super::{
    strip::{Strip, stretches},
    wish::Rules,
};
use crate::{
    dome::{Edge, Point, RowCurve, RowEnd, Section},
    layout::{Gap, Layout, none},
};

/// How a row is put on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mount {
    /// In the open gap between two rows.
    Gap,
    /// On or under the row below the gap.
    OnRow,
}

/// A row to sew.
#[derive(Clone, Debug, PartialEq)]
pub struct PlannedRow {
    /// Its section.
    pub section: Section,
    /// The number of the gap it lies in.
    pub gap: usize,
    /// Its place along the section's middle line.
    pub at: Length,
    /// How it is put on.
    pub mount: Mount,
    /// Its length on the cap.
    pub length: Length,
    /// Its length in each zone.
    pub zones: Vec<(Zone, Length)>,
    /// Whether it is less than its gap would take.
    pub part: bool,
    /// Its points on the head.
    pub points: Vec<Point>,
}

/// What could not be reached in a section's zones, and why.
#[derive(Clone, Debug, PartialEq)]
pub struct Shortfall {
    /// The zones.
    pub zones: Vec<Zone>,
    /// Weft wanted there.
    pub wanted: Length,
    /// Weft that found a place.
    pub placed: Length,
}

/// The rows of a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Placement {
    /// In the order of sewing: from the nape upwards, then forwards.
    pub rows: Vec<PlannedRow>,
    /// Where the target cannot be reached.
    pub shortfalls: Vec<Shortfall>,
    /// Zones that want hair and take no weft.
    pub closed: Vec<Zone>,
}

/// A gap with what it may still take.
struct Slot<'a> {
    gap: &'a Gap,
    /// A row in the middle of the gap.
    middle: RowCurve,
    capacity: usize,
    open: usize,
    taken: usize,
}

/// Zones that are filled alike.
struct Cluster {
    zones: Vec<Zone>,
    wanted: Length,
}

/// Zones whose rows per gap differ by less than this are sewn as one, so that rows run ear to ear.
const ALIKE: f64 = 0.15;

/// Places rows for the strands wanted in each zone. `sewn` counts rows already added, by section and place.
pub fn place(
    layout: &Layout,
    rules: &Rules,
    wanting: &[f64; 8],
    strands: LinearNumberDensity,
    sewn: &[(Section, Length)],
) -> Placement {
    let mut placement = Placement::default();
    for zone in Zone::ALL {
        let own_pieces = matches!(zone, Zone::FrontHairline | Zone::Part);
        if !rules.takes_weft[zone as usize] && !own_pieces && wanting[zone as usize] > 1.0 {
            placement.closed.push(zone);
        }
    }
    for section in [Section::BackAndSides, Section::Top] {
        let mut slots = slots(layout, rules, section, sewn);
        let clusters = clusters(&slots, layout, rules, wanting, strands);
        let mut rows = Vec::new();
        for cluster in &clusters {
            // Clusters share no zone, so each finds every gap's room anew.
            slots.iter_mut().for_each(|slot| slot.taken = 0);
            fill(&mut slots, layout, rules, cluster, &mut rows, &mut placement.shortfalls);
        }
        rows.sort_by(|a: &PlannedRow, b| a.at.total_cmp(b.at).then(a.mount.cmp(&b.mount)));
        placement.rows.extend(rows);
    }
    placement
}

trait TotalCmp {
    fn total_cmp(&self, other: Self) -> core::cmp::Ordering;
}

impl TotalCmp for Length {
    fn total_cmp(&self, other: Length) -> core::cmp::Ordering {
        self.get::<units::meter>().total_cmp(&other.get::<units::meter>())
    }
}

fn slots<'a>(layout: &'a Layout, rules: &Rules, section: Section, sewn: &[(Section, Length)]) -> Vec<Slot<'a>> {
    layout
        .gaps
        .iter()
        .filter(|gap| gap.section == section && far_from_edges(layout, rules, gap))
        .filter_map(|gap| layout.dome.row(section, gap.middle()).map(|middle| (gap, middle)))
        .map(|(gap, middle)| {
            let closest = if rules.parting && section == Section::Top { rules.closest_parting } else { rules.closest };
            let parts = (gap.width() / closest.max(Length::new::<units::millimeter>(1.0))).get::<units::ratio>();
            let open = (libm::floor(parts + 1e-9) as usize).saturating_sub(1);
            let on_row = rules.most_stacked.saturating_sub(1) as usize;
            let there = sewn.iter().filter(|(sewn, at)| *sewn == section && *at >= gap.from && *at < gap.to).count();
            Slot { gap, middle, capacity: (open + on_row).saturating_sub(there), open: open.saturating_sub(there), taken: 0 }
        })
        .collect()
}

/// Whole slices too near an edge that others see are left out; ends of rows are drawn in instead.
fn far_from_edges(layout: &Layout, rules: &Rules, gap: &Gap) -> bool {
    let near = |edge| {
        let middle = layout.dome.middle(gap.section, gap.middle());
        middle.is_some_and(|point| layout.dome.distance_to(edge, point) < rules.edge_distance)
    };
    match gap.section {
        Section::Top => !near(Edge::Front),
        Section::BackAndSides => !(rules.worn_up && near(Edge::Nape)),
    }
}

/// The stretches a row in a gap may cover, ends drawn in where they would show.
fn room(curve: &RowCurve, rules: &Rules, zones: &[Zone]) -> Vec<Strip> {
    let whole = curve.length();
    let seen = match curve.ends {
        RowEnd::FrontEdge => true,
        RowEnd::EarEdge => rules.worn_up,
        RowEnd::EarLine | RowEnd::SideTop => false,
    };
    let draw = if seen { rules.edge_distance } else { none() };
    stretches(curve, |zone| zones.contains(&zone))
        .into_iter()
        .filter_map(|strip| {
            let left = (draw - strip.from).max(none());
            let right = (draw - (whole - strip.to)).max(none());
            strip.drawn_in(left, right)
        })
        .filter(|strip| strip.length() >= rules.shortest)
        .collect()
}

fn room_length(curve: &RowCurve, rules: &Rules, zones: &[Zone]) -> Length {
    room(curve, rules, zones).iter().fold(none(), |sum, strip| sum + strip.length())
}

/// Groups the section's zones by how many rows a gap they want.
fn clusters(
    slots: &[Slot<'_>],
    layout: &Layout,
    rules: &Rules,
    wanting: &[f64; 8],
    strands: LinearNumberDensity,
) -> Vec<Cluster> {
    let mut fractions: Vec<(f64, Zone, Length, Length)> = Zone::ALL
        .into_iter()
        .filter(|zone| rules.takes_weft[*zone as usize] && layout.row_length[*zone as usize] > none())
        .filter_map(|zone| {
            let one_each = slots.iter().fold(none(), |sum, slot| sum + room_length(&slot.middle, rules, &[zone]));
            let wanted = Length::new::<units::meter>(wanting[zone as usize] / strands.get::<units::per_meter>());
            (one_each > none() && wanted > none())
                .then(|| ((wanted / one_each).get::<units::ratio>(), zone, wanted, one_each))
        })
        .collect();
    fractions.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let mut clusters: Vec<(f64, Cluster)> = Vec::new();
    for (fraction, zone, wanted, _) in fractions {
        match clusters.last_mut() {
            Some((first, cluster)) if fraction <= *first * (1.0 + 2.0 * ALIKE) => {
                cluster.zones.push(zone);
                cluster.wanted += wanted;
            }
            _ => clusters.push((fraction, Cluster { zones: vec![zone], wanted })),
        }
    }
    // Rows that cover most zones are placed first, so that they keep the even places.
    clusters.sort_by_key(|(_, cluster)| core::cmp::Reverse(cluster.zones.len()));
    clusters.into_iter().map(|(_, cluster)| cluster).collect()
}

fn fill(
    slots: &mut [Slot<'_>],
    layout: &Layout,
    rules: &Rules,
    cluster: &Cluster,
    rows: &mut Vec<PlannedRow>,
    shortfalls: &mut Vec<Shortfall>,
) {
    let lengths: Vec<Length> = slots.iter().map(|slot| room_length(&slot.middle, rules, &cluster.zones)).collect();
    let counts = spread(slots, &lengths, cluster.wanted);
    let whole = lengths.iter().zip(&counts).fold(none(), |sum, (length, count)| sum + *length * *count as f64);
    let tolerance = cluster.wanted * rules.tolerance;
    let mut counts = counts;
    let mut part: Option<(usize, Length)> = None;
    if whole > cluster.wanted + tolerance {
        // One row too long: it becomes a part row, or goes.
        let over = whole - cluster.wanted;
        if let Some(index) = last_filled(&counts, &lengths, over) {
            counts[index] -= 1;
            let rest = lengths[index] - over;
            if rest >= rules.shortest {
                part = Some((index, rest));
            }
        }
    } else if whole < cluster.wanted - tolerance {
        let missing = cluster.wanted - whole;
        let free = (0..slots.len()).filter(|index| slots[*index].taken + counts[*index] < slots[*index].capacity);
        // The emptiest gap that can hold the rest in one piece.
        let best = free.filter(|index| lengths[*index] >= missing.min(rules.shortest)).max_by(|a, b| {
            let fits = |index: &usize| lengths[*index] >= missing;
            (fits(a), core::cmp::Reverse(counts[*a]))
                .cmp(&(fits(b), core::cmp::Reverse(counts[*b])))
                .then(lengths[*a].total_cmp(lengths[*b]))
        });
        if let Some(index) = best
            && missing >= rules.shortest
        {
            part = Some((index, missing.min(lengths[index])));
        }
    }
    let mut placed = none();
    for (index, slot) in slots.iter_mut().enumerate() {
        for _ in 0..counts[index] {
            placed += put(slot, layout, rules, cluster, None, rows);
        }
        if let Some((at, length)) = part
            && at == index
        {
            placed += put(slot, layout, rules, cluster, Some(length), rows);
        }
    }
    if placed < cluster.wanted - tolerance && cluster.wanted - placed > rules.shortest {
        shortfalls.push(Shortfall { zones: cluster.zones.clone(), wanted: cluster.wanted, placed });
    }
}

/// The fullest row whose loss brings the sum nearest.
fn last_filled(counts: &[usize], lengths: &[Length], over: Length) -> Option<usize> {
    (0..counts.len())
        .filter(|index| counts[*index] > 0 && lengths[*index] >= over)
        .max_by(|a, b| lengths[*a].total_cmp(lengths[*b]))
        .or_else(|| {
            (0..counts.len()).filter(|index| counts[*index] > 0).min_by(|a, b| lengths[*a].total_cmp(lengths[*b]))
        })
}

/// How many whole rows each gap takes: a running fraction, so that they lie evenly; overflow moves to the nearest free gap.
fn spread(slots: &[Slot<'_>], lengths: &[Length], wanted: Length) -> Vec<usize> {
    let usable = |index: usize| lengths[index] > none();
    let one_each = lengths.iter().fold(none(), |sum, length| sum + *length);
    let mut counts = vec![0; slots.len()];
    if one_each <= none() {
        return counts;
    }
    let fraction = (wanted / one_each).get::<units::ratio>();
    let mut run = 0.5;
    let mut overflow = 0;
    for index in 0..slots.len() {
        if !usable(index) {
            continue;
        }
        run += fraction;
        let due = libm::floor(run + 1e-9);
        run -= due;
        let free = slots[index].capacity.saturating_sub(slots[index].taken);
        let due = due as usize;
        counts[index] = due.min(free);
        overflow += due - counts[index];
    }
    while overflow > 0 {
        let free = (0..slots.len())
            .filter(|index| usable(*index) && slots[*index].taken + counts[*index] < slots[*index].capacity)
            .min_by_key(|index| counts[*index]);
        let Some(index) = free else { break };
        counts[index] += 1;
        overflow -= 1;
    }
    counts
}

/// Puts one row into a gap, whole or in part; answers its length.
fn put(
    slot: &mut Slot<'_>,
    layout: &Layout,
    rules: &Rules,
    cluster: &Cluster,
    length: Option<Length>,
    rows: &mut Vec<PlannedRow>,
) -> Length {
    let (mount, at) = if slot.taken < slot.open {
        let share = (slot.taken + 1) as f64 / (slot.open + 1) as f64;
        // A lone row lies in the middle of its gap.
        let share = if slot.taken == 0 && slot.open == 1 { 0.5 } else { share };
        (Mount::Gap, slot.gap.from + slot.gap.width() * share)
    } else {
        (Mount::OnRow, slot.gap.from)
    };
    slot.taken += 1;
    let curve = layout.dome.row(slot.gap.section, at).unwrap_or_else(|| slot.middle.clone());
    let mut left = length;
    let mut placed = none();
    for strip in room(&curve, rules, &cluster.zones) {
        let strip = match left {
            None => strip,
            Some(left) if left <= none() => continue,
            Some(left) if left < strip.length() => strip.about_middle(left),
            Some(_) => strip,
        };
        left = left.map(|left| left - strip.length());
        placed += strip.length();
        rows.push(PlannedRow {
            section: slot.gap.section,
            gap: slot.gap.number,
            at,
            mount,
            length: strip.length(),
            zones: strip.by_zone(&curve),
            part: length.is_some(),
            points: strip.points(&curve),
        });
    }
    placed
}
