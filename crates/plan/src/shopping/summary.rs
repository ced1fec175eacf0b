//! The answer in plain figures, for a terminal, a test or another program.
//!
//! What it is: strings and numbers, the same from the browser and the terminal. What it is not: a file format or a screen.

use measure::quantity::{Length, units};
use record::{wig::zone::Zone, workshop::lots::Lot};

use super::answer::{Answer, Outcome};
use crate::{dome::Section, wefts::Mount};

/// The answer in plain figures.
#[derive(Clone, Debug, PartialEq)]
pub struct Summary {
    /// `nothing_wanted`, `enough_owned`, `buy` or `lacking`.
    pub outcome: &'static str,
    /// Packs with every figure at its kindest; nothing where no number of packs will do.
    pub packs_low: Option<u32>,
    /// Packs, likely.
    pub packs_likely: Option<u32>,
    /// Packs with every figure at its worst.
    pub packs_high: Option<u32>,
    /// What to buy of each lot.
    pub buy: Vec<Bought>,
    /// Cost in hundredths of the money unit; nothing where a price is missing.
    pub cost_hundredths: Option<u64>,
    /// Whether no cheaper way to cut it exists.
    pub proved: bool,
    /// Weft needed, mm: at the least, likely, at the most.
    pub needed_mm: [u64; 3],
    /// Weft by purpose, mm: rows, folds, front edge, parting, kept back.
    pub by_purpose_mm: [u64; 5],
    /// Rows to sew, in sewing order.
    pub rows: Vec<SummaryRow>,
    /// Fullness of each zone of some size, in the order of the zones.
    pub zones: Vec<ZoneReached>,
    /// Weft left over of what is owned and bought, mm.
    pub left_over_mm: u64,
    /// Weight that goes on, g.
    pub weight_added_g: u64,
    /// Last day to order, `YYYY-MM-DD`; nothing where no day is set.
    pub order_by: Option<String>,
}

/// Packs to buy of a lot.
#[derive(Clone, Debug, PartialEq)]
pub struct Bought {
    /// The lot by its name.
    pub lot: String,
    /// How many.
    pub packs: u32,
}

/// A row.
#[derive(Clone, Debug, PartialEq)]
pub struct SummaryRow {
    /// `back_and_sides` or `top`.
    pub section: &'static str,
    /// The gap it lies in.
    pub gap: u32,
    /// How far along the middle line of its section, mm.
    pub place_mm: u64,
    /// Whether it is stacked on the base row.
    pub on_row: bool,
    /// How long, mm.
    pub length_mm: u64,
    /// Whether it is less than its gap would take.
    pub part: bool,
    /// The zones it crosses, in order, by name.
    pub zones: Vec<&'static str>,
}

/// How full a zone becomes.
#[derive(Clone, Debug, PartialEq)]
pub struct ZoneReached {
    /// The zone by name.
    pub zone: &'static str,
    /// Now, wanted and reached at the root: strands on a cm², to one decimal.
    pub now: f64,
    /// Wanted.
    pub target: f64,
    /// Reached.
    pub reached: f64,
}

fn mm(length: Length) -> u64 {
    libm::round(length.get::<units::millimeter>()).max(0.0) as u64
}

fn tenths(number: f64) -> f64 {
    libm::round(number * 10.0) / 10.0
}

impl Answer {
    /// The answer in plain figures; `lots` are those it was asked with.
    pub fn summary(&self, lots: &[Lot]) -> Summary {
        let prepared = &self.likely.prepared;
        let amounts = &prepared.amounts;
        let per_cm2 =
            |fullness: measure::quantity::ArealNumberDensity| tenths(fullness.get::<units::per_square_centimeter>());
        Summary {
            outcome: match self.outcome {
                Outcome::NothingWanted => "nothing_wanted",
                Outcome::EnoughOwned => "enough_owned",
                Outcome::Buy => "buy",
                Outcome::Lacking => "lacking",
            },
            packs_low: self.packs.low,
            packs_likely: self.packs.likely,
            packs_high: self.packs.high,
            buy: self
                .buy
                .iter()
                .map(|(id, packs)| Bought {
                    lot: lots.iter().find(|lot| lot.id == *id).map_or_else(String::new, |lot| lot.name.clone()),
                    packs: *packs,
                })
                .collect(),
            cost_hundredths: self.cost.map(|cost| cost.hundredths()),
            proved: self.likely.plan.as_ref().is_some_and(|plan| plan.proved),
            needed_mm: [self.spread.low, self.spread.likely, self.spread.high].map(mm),
            by_purpose_mm: [amounts.rows, amounts.folds, amounts.hairline, amounts.parting, amounts.hold_back].map(mm),
            rows: prepared
                .placement
                .rows
                .iter()
                .map(|row| SummaryRow {
                    section: match row.section {
                        Section::BackAndSides => "back_and_sides",
                        Section::Top => "top",
                    },
                    gap: row.gap as u32,
                    place_mm: mm(row.at),
                    on_row: row.mount == Mount::OnRow,
                    length_mm: mm(row.length),
                    part: row.part,
                    zones: row.zones.iter().map(|(zone, _)| zone.name()).collect(),
                })
                .collect(),
            zones: Zone::ALL
                .into_iter()
                .filter_map(|zone| {
                    let full = prepared.fullness.zones.get(zone as usize)?;
                    (full.area.get::<units::square_centimeter>() > 0.0).then(|| ZoneReached {
                        zone: zone.name(),
                        now: per_cm2(full.now()),
                        target: per_cm2(full.target),
                        reached: per_cm2(self.reached[zone as usize]),
                    })
                })
                .collect(),
            left_over_mm: self.laid.iter().fold(0, |sum, weft| sum + u64::from(weft.offcut_mm)),
            weight_added_g: libm::round(self.weight_added.get::<units::gram>()).max(0.0) as u64,
            order_by: self.order_by.map(|(date, _)| date.to_string()),
        }
    }
}
