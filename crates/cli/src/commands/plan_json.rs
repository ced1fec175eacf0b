//! The plan as JSON, for another program or a test.
//!
//! What it is: names of members, which stay. What it is not: figures: they are the planner's own summary.
//!
//! | member | holds |
//! |---|---|
//! | `wig` | its name |
//! | `today` | the day the plan was asked for |
//! | `headline` | the answer in one or two sentences |
//! | `outcome` | `nothing_wanted`, `enough_owned`, `buy`, `lacking`; without a plan `no_wefts`, `no_lot`, `head`, `pieces` |
//! | `reasons` | sentences, where there is no plan |
//! | `unread` | entries of the file that this program could not read or left out |
//! | `packs` | `low`, `likely`, `high`; null where no number of packs will do |
//! | `buy` | `lot` (by name) and `packs` |
//! | `cost_hundredths` | of the money unit; null where a price is missing |
//! | `proved` | whether it is proved that it cannot be cut cheaper |
//! | `needed_mm` | weft `low`, `likely`, `high` |
//! | `by_purpose_mm` | `rows`, `folds`, `hairline`, `parting`, `hold_back` |
//! | `rows` | `section`, `gap`, `place_mm`, `on_row`, `length_mm`, `part`, `zones` |
//! | `zones` | `zone`, then strands on a cm² at the root: `now`, `target`, `reached` |
//! | `left_over_mm`, `weight_added_g` | |
//! | `order_by` | the last day to order; null where no day is set |
//!
//! Without a plan all members from `packs` on are missing.

use plan::shopping::{Bought, Summary, SummaryRow, ZoneReached};
use serde::Serialize;

/// Everything said.
#[derive(Serialize)]
pub struct Answered<'a> {
    pub wig: &'a str,
    pub today: String,
    pub headline: String,
    pub outcome: &'static str,
    pub reasons: Vec<String>,
    pub unread: usize,
    #[serde(flatten)]
    pub plan: Option<Figures>,
}

/// The planner's figures.
#[derive(Serialize)]
pub struct Figures {
    packs: Packs,
    buy: Vec<Buy>,
    cost_hundredths: Option<u64>,
    proved: bool,
    needed_mm: Needed,
    by_purpose_mm: Purposes,
    rows: Vec<Row>,
    zones: Vec<Zone>,
    left_over_mm: u64,
    weight_added_g: u64,
    order_by: Option<String>,
}

#[derive(Serialize)]
struct Packs {
    low: Option<u32>,
    likely: Option<u32>,
    high: Option<u32>,
}

#[derive(Serialize)]
struct Buy {
    lot: String,
    packs: u32,
}

#[derive(Serialize)]
struct Needed {
    low: u64,
    likely: u64,
    high: u64,
}

#[derive(Serialize)]
struct Purposes {
    rows: u64,
    folds: u64,
    hairline: u64,
    parting: u64,
    hold_back: u64,
}

#[derive(Serialize)]
struct Row {
    section: &'static str,
    gap: u32,
    place_mm: u64,
    on_row: bool,
    length_mm: u64,
    part: bool,
    zones: Vec<&'static str>,
}

#[derive(Serialize)]
struct Zone {
    zone: &'static str,
    now: f64,
    target: f64,
    reached: f64,
}

impl Figures {
    /// From the planner's summary; every field is named, so that a new one is not forgotten here.
    pub fn of(summary: Summary) -> Figures {
        let Summary {
            outcome: _,
            packs_low,
            packs_likely,
            packs_high,
            buy,
            cost_hundredths,
            proved,
            needed_mm: [low, likely, high],
            by_purpose_mm: [rows_mm, folds, hairline, parting, hold_back],
            rows,
            zones,
            left_over_mm,
            weight_added_g,
            order_by,
        } = summary;
        Figures {
            packs: Packs { low: packs_low, likely: packs_likely, high: packs_high },
            buy: buy.into_iter().map(|Bought { lot, packs }| Buy { lot, packs }).collect(),
            cost_hundredths,
            proved,
            needed_mm: Needed { low, likely, high },
            by_purpose_mm: Purposes { rows: rows_mm, folds, hairline, parting, hold_back },
            rows: rows.into_iter().map(row).collect(),
            zones: zones
                .into_iter()
                .map(|ZoneReached { zone, now, target, reached }| Zone { zone, now, target, reached })
                .collect(),
            left_over_mm,
            weight_added_g,
            order_by,
        }
    }
}

fn row(row: SummaryRow) -> Row {
    let SummaryRow { section, gap, place_mm, on_row, length_mm, part, zones } = row;
    Row { section, gap, place_mm, on_row, length_mm, part, zones }
}
