//! How many rows each gap takes.
//!
//! What it is: even spreading over the room there is. What it is not: where in the gap, or how long (see `slot`, `shorten`).

use measure::quantity::{Length, units};
use record::wig::zone::Zone;

use super::{place::Cluster, shorten::FEW, slot::Slot, wish::Rules};
use crate::layout::none;

/// Where few rows are wanted they are shortened, to no less than this share of their gap, so that more zones get one.
const LEAST_PART: f64 = 1.0 / 3.0;

/// How many rows each gap takes, so that together they are no shorter than wanted where there is room.
pub(super) fn counts(slots: &[Slot<'_>], lengths: &[Length], cluster: &Cluster, rules: &Rules) -> Vec<usize> {
    let usable: Vec<usize> = (0..slots.len()).filter(|index| lengths[*index] > none()).collect();
    let whole = lengths.iter().fold(none(), |sum, length| sum + *length);
    let most: usize = usable.iter().map(|index| slots[*index].capacity()).sum();
    if usable.is_empty() || most == 0 {
        return vec![0; slots.len()];
    }
    let mean = whole / usable.len() as f64;
    let rows = libm::round((cluster.wanted / mean).get::<units::ratio>()).max(1.0) as usize;
    let bands = cluster.zones.iter().filter(|zone| **zone != Zone::RightSide).count().min(FEW);
    let part = (mean * LEAST_PART).max(rules.shortest);
    let parts = libm::floor((cluster.wanted / part).get::<units::ratio>()).max(1.0) as usize;
    let mut rows = rows.max(bands.min(parts)).min(most);
    loop {
        let counts = spread(slots, lengths, &usable, whole, rows);
        let sum = lengths.iter().zip(&counts).fold(none(), |sum, (length, count)| sum + *length * *count as f64);
        if rows >= most || sum >= cluster.wanted * (1.0 - rules.tolerance / 2.0) {
            return counts;
        }
        rows += 1;
    }
}

/// Spreads rows evenly over the room: each takes the gap in the middle of its share, or the nearest with room left.
fn spread(slots: &[Slot<'_>], lengths: &[Length], usable: &[usize], whole: Length, rows: usize) -> Vec<usize> {
    let mut counts = vec![0; slots.len()];
    let mut ends = Vec::with_capacity(usable.len());
    let mut run = none();
    for index in usable {
        run += lengths[*index];
        ends.push(run);
    }
    for row in 0..rows {
        let mark = whole * ((row as f64 + 0.5) / rows as f64);
        let due = ends.iter().position(|end| *end > mark).unwrap_or(usable.len() - 1);
        let free = (0..usable.len()).filter(|one| counts[usable[*one]] < slots[usable[*one]].capacity());
        // Nearest first; among equals the emptier.
        if let Some(one) = free.min_by_key(|one| (one.abs_diff(due), counts[usable[*one]], *one)) {
            counts[usable[one]] += 1;
        }
    }
    counts
}
