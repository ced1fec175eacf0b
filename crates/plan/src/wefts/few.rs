//! Few rows: gaps, lengths and places by what each zone wants.
//!
//! What it is: the gaps turned into lanes, and the rows found back in them. What it is not: the search (see `stagger`).

use measure::quantity::{Length, units};

use super::{
    place::{Cluster, Mount, PlannedRow},
    slot::{Seen, Slot, room},
    stagger::{self, Asked, Lane},
    wish::Rules,
};
use crate::layout::{Layout, none};

/// Few rows in gaps of their own, laid so that each zone gets its share; none where there are more of them.
pub(super) fn few(
    slots: &[Slot<'_>],
    counts: &[usize],
    layout: &Layout,
    seen: &Seen<'_>,
    rules: &Rules,
    cluster: &Cluster,
) -> Option<Vec<PlannedRow>> {
    let rows: usize = counts.iter().sum();
    if rows == 0 || rows > stagger::MOST || counts.iter().any(|count| *count > 1) {
        return None;
    }
    let mut places = Vec::new();
    for slot in slots.iter().filter(|slot| slot.capacity() > 0) {
        for (mount, at) in slot.places(1) {
            let curve = match mount {
                Mount::Gap if at == slot.gap.middle() => Some(slot.middle.clone()),
                _ => layout.dome.row(slot.gap.section, at),
            };
            if let Some(curve) = curve {
                for strip in room(&curve, seen, rules.shortest, &cluster.zones) {
                    places.push((slot, mount, at, strip, curve.clone()));
                }
            }
        }
    }
    let mm = |length: Length| length.get::<units::millimeter>();
    let whole = places.iter().fold(none(), |sum, (_, _, _, strip, _)| sum + strip.length());
    let mut lanes = Vec::with_capacity(places.len());
    let mut below = none();
    for (_, _, _, strip, curve) in &places {
        let mark = ((below + strip.length() / 2.0) / whole).get::<units::ratio>();
        lanes.push(Lane { length: mm(strip.length()), mark, zones: strip.spans(curve) });
        below += strip.length();
    }
    let asked =
        Asked { lanes: &lanes, wanted: cluster.each.map(mm), shortest: mm(rules.shortest), tolerance: rules.tolerance };
    let laid = asked.lay(rows)?;
    let mut drawn = Vec::with_capacity(laid.len());
    for row in laid {
        let (slot, mount, at, strip, curve) = places.get(row.lane)?;
        let strip = strip.part(row.from, row.to);
        drawn.push(PlannedRow {
            section: slot.gap.section,
            gap: slot.gap.number,
            at: *at,
            mount: *mount,
            length: strip.length(),
            zones: strip.by_zone(curve),
            part: row.to - row.from < lanes.get(row.lane)?.length - 0.5,
            points: strip.points(curve),
        });
    }
    Some(drawn)
}
