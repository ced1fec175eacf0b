//! The water line of a dip: one level for all, what that means on each row, and the level each zone would want alone.
//!
//! What it is: lines from the look put on the rows of this head. What it is not: the rows (see `level`).

use measure::quantity::{Length, units::millimeter};
use record::{trade::bath::WICKING, wig::zone::Zone};

use super::level::RowLevel;
use crate::layout::none;

/// A row in a dip.
#[derive(Clone, Debug, PartialEq)]
pub struct DippedRow {
    /// The row.
    pub row: RowLevel,
    /// Where the line is wanted, from the root.
    pub wanted: Length,
    /// Where the one level falls on it, from the root; nothing where its hair does not reach the water or hangs in whole.
    pub falls: Option<Length>,
}

/// A dip of the ends.
#[derive(Clone, Debug, PartialEq)]
pub struct Dipping {
    /// Where the colour is to begin, below the widest part of the head: one level for all that is dipped.
    pub line: Length,
    /// Where the water is to stand: lower, since it climbs.
    pub water: Length,
    /// How far it may climb: low, likely, high.
    pub climbs: [Length; 3],
    /// The level that each zone would want alone.
    pub zones: Vec<(Zone, Length)>,
    /// Row by row.
    pub rows: Vec<DippedRow>,
}

impl Dipping {
    /// How far the highest and the lowest wanted level lie apart.
    pub fn spread(&self) -> Length {
        let levels = |pick: fn(Length, Length) -> bool| {
            self.rows
                .iter()
                .map(|row| row.row.water_for(row.wanted))
                .reduce(|best, one| if pick(one, best) { one } else { best })
                .unwrap_or_else(none)
        };
        levels(|a, b| a > b) - levels(|a, b| a < b)
    }
}

/// The dip of some zones, each with where its line is wanted from the root and how long its hair is; nothing without rows.
pub fn dipping(rows: &[RowLevel], wanted: &[(Zone, Length, Length)]) -> Option<Dipping> {
    let of = |zone: Zone| wanted.iter().find(|(one, _, _)| *one == zone);
    let mean = |only: Option<Zone>| {
        let (mut sum, mut weight) = (0.0, 0.0);
        for row in rows.iter().filter(|row| only.is_none_or(|zone| row.zone == zone)) {
            if let Some((_, from, _)) = of(row.zone) {
                let each = row.length.get::<millimeter>();
                sum += row.water_for(*from).get::<millimeter>() * each;
                weight += each;
            }
        }
        (weight > 0.0).then(|| Length::new::<millimeter>(sum / weight))
    };
    let line = mean(None)?;
    let climbs = [WICKING.low, WICKING.likely, WICKING.high].map(Length::new::<millimeter>);
    Some(Dipping {
        line,
        water: line + climbs[1],
        climbs,
        zones: wanted.iter().filter_map(|(zone, _, _)| mean(Some(*zone)).map(|level| (*zone, level))).collect(),
        rows: rows
            .iter()
            .filter_map(|row| {
                let (_, from, long) = of(row.zone)?;
                let falls = row.falls_at(line);
                let reaches = falls > none() && falls < *long;
                Some(DippedRow { row: row.clone(), wanted: *from, falls: reaches.then_some(falls) })
            })
            .collect(),
    })
}
