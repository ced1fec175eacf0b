//! Making rows come out at what is wanted.
//!
//! What it is: few rows shortened all alike, of many the longest alone, where they cannot be laid zone by zone (see `few`).
//! What it is not: a choice of gaps (see `share`).

use measure::quantity::Length;

use super::{
    place::{Cluster, PlannedRow, total_cmp},
    slot::{Seen, Slot, room},
    wish::Rules,
};
use crate::layout::{Layout, none};

/// More rows than this are not shortened all alike: one part row makes up the difference.
pub(super) const FEW: usize = 3;

/// Shortens rows by what they are too long together: few of them all alike, else the longest alone.
pub(super) fn shorten(
    drawn: &mut Vec<PlannedRow>,
    over: Length,
    rules: &Rules,
    slots: &[Slot<'_>],
    layout: &Layout,
    seen: &Seen<'_>,
    cluster: &Cluster,
) {
    let wanted = cluster.wanted;
    if over <= wanted * (rules.tolerance / 2.0) {
        return;
    }
    // Too many pieces to be that short: the shortest go.
    let least =
        |rows: &[PlannedRow]| rows.iter().fold(none(), |sum, row| sum + shortened(row.length, 0.0, rules.shortest));
    while drawn.len() > 1 && least(drawn) > wanted {
        let shortest = (0..drawn.len()).min_by(|a, b| total_cmp(drawn[*a].length, drawn[*b].length).then(a.cmp(b)));
        if let Some(shortest) = shortest {
            drawn.remove(shortest);
        }
    }
    let over = drawn.iter().fold(none(), |sum, row| sum + row.length) - wanted;
    if over <= wanted * (rules.tolerance / 2.0) {
        return;
    }
    let few = drawn.len() <= FEW;
    let longest = (0..drawn.len()).max_by(|a, b| total_cmp(drawn[*a].length, drawn[*b].length).then(b.cmp(a)));
    let cut_to = |row: &PlannedRow, length: Length| -> Option<PlannedRow> {
        let slot = slots.iter().find(|slot| slot.gap.number == row.gap)?;
        let curve = layout.dome.row(slot.gap.section, row.at)?;
        let middle = row.points.get(row.points.len() / 2)?;
        let strip = room(&curve, seen, rules.shortest, &cluster.zones)
            .into_iter()
            .find(|strip| strip.points(&curve).contains(middle))?
            .about_middle(length);
        Some(PlannedRow {
            length: strip.length(),
            zones: strip.by_zone(&curve),
            part: true,
            points: strip.points(&curve),
            ..row.clone()
        })
    };
    match longest {
        Some(longest) if !few && drawn[longest].length - over >= rules.shortest => {
            if let Some(row) = cut_to(&drawn[longest], drawn[longest].length - over) {
                drawn[longest] = row;
            }
        }
        _ => {
            let share = even_share(drawn, wanted, rules.shortest);
            for row in drawn.iter_mut() {
                if let Some(cut) = cut_to(row, shortened(row.length, share, rules.shortest)) {
                    *row = cut;
                }
            }
        }
    }
}

/// So much of a row, but no less than is worth sewing.
fn shortened(length: Length, share: f64, shortest: Length) -> Length {
    let part = length * share;
    if part > shortest { part } else { shortest.min(length) }
}

/// The share of all rows that leaves as much as wanted.
fn even_share(rows: &[PlannedRow], wanted: Length, shortest: Length) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..40 {
        let share = (low + high) / 2.0;
        let sum = rows.iter().fold(none(), |sum, row| sum + shortened(row.length, share, shortest));
        if sum > wanted { high = share } else { low = share }
    }
    high
}
