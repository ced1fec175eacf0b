//! Placing rows in gaps.
//!
//! What it is: rows spread evenly over the room of a section, whole ones first, one shortened to come out right; few are laid
//! by what each zone wants (see `few`). What it is not: the limits (see `wish`) or the room (see `slot`).

use measure::{
    order,
    quantity::{Length, LinearNumberDensity, units},
};
use record::wig::zone::Zone;

use super::{
    few::few,
    share::counts,
    shorten::shorten,
    slot::{Seen, Slot, length_of, room, slots},
    wish::Rules,
};
use crate::{
    cutting::each::each,
    dome::{Point, Section},
    layout::{Layout, none},
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

/// Why zones get less than they want.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// Rows would lie too close or stack too high.
    NoRoom,
    /// What is wanted is less than the shortest row worth sewing.
    LessThanARow,
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
    /// Why.
    pub why: Why,
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

/// Zones that are filled alike.
pub(super) struct Cluster {
    pub(super) zones: Vec<Zone>,
    pub(super) wanted: Length,
    /// Of each zone, in the order of the zones.
    pub(super) each: [Length; 8],
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
    let wanted = Zone::ALL.map(|zone| {
        let takes = rules.takes_weft[zone as usize] && strands.get::<units::per_meter>() > 0.0;
        let length = if takes { wanting[zone as usize] / strands.get::<units::per_meter>() } else { 0.0 };
        Length::new::<units::meter>(length)
    });
    let mut left = wanted;
    for section in [Section::BackAndSides, Section::Top] {
        let seen = Seen::new(layout, rules);
        let slots = slots(layout, rules, section, sewn);
        let mut rows = Vec::new();
        for cluster in clusters(&slots, &seen, rules.shortest, &wanted) {
            for zone in &cluster.zones {
                left[*zone as usize] = none();
            }
            fill(&slots, layout, &seen, rules, &cluster, &mut rows, &mut placement.shortfalls);
        }
        order::sort_by(&mut rows, &|a, b| total_cmp(a.at, b.at).then(a.mount.cmp(&b.mount)));
        placement.rows.extend(rows);
    }
    // Zones that want rows and have no gap for one.
    for zone in Zone::ALL {
        let wanted = left[zone as usize];
        if wanted > none() {
            placement.shortfalls.push(Shortfall { zones: vec![zone], wanted, placed: none(), why: Why::NoRoom });
        }
    }
    placement
}

pub(super) fn total_cmp(a: Length, b: Length) -> core::cmp::Ordering {
    a.get::<units::meter>().total_cmp(&b.get::<units::meter>())
}

/// Groups the section's zones by how many rows a gap they want.
fn clusters(slots: &[Slot<'_>], seen: &Seen<'_>, shortest: Length, wanted: &[Length; 8]) -> Vec<Cluster> {
    let mut fractions: Vec<(f64, Zone, Length)> = Vec::new();
    for zone in Zone::ALL {
        let wanted = wanted[zone as usize];
        if wanted <= none() {
            continue;
        }
        // Short stretches of a zone count here: its neighbours may make a row of them.
        let mut one_each = none();
        for slot in slots {
            one_each += length_of(&room(&slot.middle, seen, none(), &[zone]));
        }
        if one_each > none() {
            fractions.push(((wanted / one_each).get::<units::ratio>(), zone, wanted));
        }
    }
    order::sort_by(&mut fractions, &|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let mut clusters: Vec<(f64, Cluster)> = Vec::new();
    for (fraction, zone, wanted) in fractions {
        match clusters.last_mut() {
            Some((first, cluster)) if fraction <= *first * (1.0 + 2.0 * ALIKE) => {
                cluster.zones.push(zone);
                cluster.wanted += wanted;
                cluster.each[zone as usize] = wanted;
            }
            _ => {
                let mut each = [none(); 8];
                each[zone as usize] = wanted;
                clusters.push((fraction, Cluster { zones: vec![zone], wanted, each }));
            }
        }
    }
    // What is less than a row goes in with the nearest likes.
    while clusters.len() > 1
        && let Some(small) = clusters.iter().position(|(_, cluster)| cluster.wanted < shortest)
    {
        let (_, cluster) = clusters.remove(small);
        if let Some((_, other)) = clusters.get_mut(small.saturating_sub(1)) {
            for zone in &cluster.zones {
                other.each[*zone as usize] = cluster.each[*zone as usize];
            }
            other.zones.extend(cluster.zones);
            other.wanted += cluster.wanted;
        }
    }
    for (_, cluster) in &mut clusters {
        order::sort(&mut cluster.zones);
    }
    // Rows that cover most zones are placed first, so that they keep the even places.
    order::sort_by(&mut clusters, &|a, b| b.1.zones.len().cmp(&a.1.zones.len()));
    clusters.into_iter().map(|(_, cluster)| cluster).collect()
}

/// Places a cluster's rows. Clusters share no zone, so each finds every gap's room anew.
fn fill(
    slots: &[Slot<'_>],
    layout: &Layout,
    seen: &Seen<'_>,
    rules: &Rules,
    cluster: &Cluster,
    rows: &mut Vec<PlannedRow>,
    shortfalls: &mut Vec<Shortfall>,
) {
    let wanted = cluster.wanted;
    let lengths = each(slots.len(), &|at| match slots[at].capacity() {
        0 => none(),
        _ => length_of(&room(&slots[at].middle, seen, rules.shortest, &cluster.zones)),
    });
    let mut short = |placed, why| {
        shortfalls.push(Shortfall { zones: cluster.zones.clone(), wanted, placed, why });
    };
    if wanted < rules.shortest {
        return short(none(), Why::LessThanARow);
    }
    let counts = counts(slots, &lengths, cluster, rules);
    if let Some(few) = few(slots, &counts, layout, seen, rules, cluster) {
        return rows.extend(few);
    }
    let mut places: Vec<(&Slot<'_>, Mount, Length)> = Vec::new();
    for (slot, count) in slots.iter().zip(counts) {
        for (mount, at) in slot.places(count) {
            places.push((slot, mount, at));
        }
    }
    let mut drawn: Vec<PlannedRow> = Vec::new();
    for (slot, mount, at) in places {
        let curve = match mount {
            Mount::Gap if at == slot.gap.middle() => slot.middle.clone(),
            _ => match layout.dome.row(slot.gap.section, at) {
                Some(curve) => curve,
                None => continue,
            },
        };
        for strip in room(&curve, seen, rules.shortest, &cluster.zones) {
            drawn.push(PlannedRow {
                section: slot.gap.section,
                gap: slot.gap.number,
                at,
                mount,
                length: strip.length(),
                zones: strip.by_zone(&curve),
                part: false,
                points: strip.points(&curve),
            });
        }
    }
    let whole = drawn.iter().fold(none(), |sum, row| sum + row.length);
    shorten(&mut drawn, whole - wanted, rules, slots, layout, seen, cluster);
    let placed = drawn.iter().fold(none(), |sum, row| sum + row.length);
    if placed < wanted * (1.0 - rules.tolerance) {
        short(placed, Why::NoRoom);
    }
    rows.extend(drawn);
}
