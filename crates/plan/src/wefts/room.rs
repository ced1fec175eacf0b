//! How much weft in rows a cap has room for, and how long its rows are, without choosing any.
//!
//! What it is: sums over the gaps, smooth enough for bounds. What it is not: rows (see `place`).

use measure::quantity::{Length, units};
use record::wig::zone::Zone;

use super::{
    slot::{Seen, room, room_in},
    wish::Rules,
};
use crate::{
    dome::Section,
    layout::{Layout, none},
};

/// Room for rows.
#[derive(Clone, Debug, PartialEq)]
pub struct Room {
    /// The most weft that each zone takes in rows, in the order of the zones.
    pub most: [Length; 8],
    /// What one row in every gap is long, over zones that take rows, back and sides first, then the top.
    pub one_each: [Length; 2],
    /// How many gaps that is.
    pub gaps: [usize; 2],
}

/// Sums up the room of a cap; a gap is as long as its two rows are on average.
pub fn room_for_rows(layout: &Layout, rules: &Rules, sewn: &[(Section, Length)]) -> Room {
    let seen = Seen::new(layout, rules);
    let takes: Vec<Zone> = Zone::ALL.into_iter().filter(|zone| rules.takes_weft[*zone as usize]).collect();
    let mut halves: Vec<[Length; 8]> = Vec::new();
    for row in &layout.rows {
        let mut lengths = [none(); 8];
        for strip in room(&row.curve, &seen, rules.shortest, &takes) {
            for (zone, length) in strip.by_zone(&row.curve) {
                lengths[zone as usize] += length / 2.0;
            }
        }
        halves.push(lengths);
    }
    let mut sum = Room { most: [none(); 8], one_each: [none(); 2], gaps: [0; 2] };
    for gap in &layout.gaps {
        if layout.dome.middle(gap.section, gap.middle()).is_none_or(|point| seen.near(point)) {
            continue;
        }
        let (free, on_row) = room_in(gap, rules, sewn);
        let rows = free.iter().map(|(_, _, rows)| rows).sum::<usize>() + on_row;
        let mut whole = none();
        for (row, halves) in layout.rows.iter().zip(&halves) {
            if row.curve.section != gap.section || !(row.curve.at == gap.from || row.curve.at == gap.to) {
                continue;
            }
            for (zone, half) in halves.iter().enumerate() {
                sum.most[zone] += *half * rows as f64;
                whole += *half;
            }
        }
        if whole > none() && rows > 0 {
            sum.one_each[gap.section as usize] += whole;
            sum.gaps[gap.section as usize] += 1;
        }
    }
    sum
}

impl Room {
    /// Weft each zone gets in rows of what it wants.
    pub fn of(&self, wanted: &[Length; 8]) -> [Length; 8] {
        Zone::ALL.map(|zone| {
            let (wanted, most) = (wanted[zone as usize], self.most[zone as usize]);
            if wanted < most { wanted } else { most }
        })
    }

    /// About how many rows so much weft makes: whole ones, or parts where little is wanted.
    pub fn rows(&self, weft: &[Length; 8], shortest: Length) -> f64 {
        let sum = |top: bool| {
            Zone::ALL
                .into_iter()
                .filter(|zone| (*zone == Zone::Top) == top)
                .fold(none(), |sum, zone| sum + weft[zone as usize])
        };
        [(sum(false), 0, 3.0), (sum(true), 1, 1.0)]
            .into_iter()
            .map(|(weft, section, few)| {
                if self.gaps[section] == 0 {
                    return 0.0;
                }
                let mean = self.one_each[section] / self.gaps[section] as f64;
                let parts = (weft / shortest.max(mean / 3.0)).get::<units::ratio>();
                (weft / mean).get::<units::ratio>().max(parts.min(few))
            })
            .sum()
    }
}
