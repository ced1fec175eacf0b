//! Defaults of the bench: what is done unless the person says otherwise.
//!
//! What it is: one row per default, named by the slot that replaces it. What it is not: a limit.

use measure::unit::Unit::{
    Centimetre, Gram, Hour, Litre, Millimetre, Minute, PerCentimetre, PerSquareCentimetre, Percent, Times,
};

use super::{
    bath,
    fact::{Fact, Sure, fact},
    sources::{JUDGED, PRACTICE, PUPIL, WEIGHT_TABLE},
};

/// A default and the slot it fills.
#[derive(Debug, PartialEq)]
pub struct Default {
    /// The slot.
    pub slot: &'static str,
    /// The figure.
    pub fact: Fact,
}

const fn default(slot: &'static str, fact: Fact) -> Default {
    Default { slot, fact }
}

/// Defaults that one slot replaces.
#[rustfmt::skip]
pub const DEFAULTS: &[Default] = &[
    default("fibre_return", fact(5.0, 15.0, 25.0, Millimetre, &PUPIL, Sure::Low)),
    default("crimped_share", fact(0.0, 5.0, 20.0, Percent, &PRACTICE, Sure::Low)),
    default("row_strands", fact(70.0, 100.0, 140.0, PerCentimetre, &JUDGED, Sure::Low)),
    default("closest_rows", fact(5.0, 5.0, 5.0, Millimetre, &PRACTICE, Sure::Medium)),
    default("closest_rows_parting", fact(3.0, 3.0, 3.0, Millimetre, &PRACTICE, Sure::Medium)),
    default("edge_distance", fact(10.0, 12.0, 15.0, Millimetre, &PRACTICE, Sure::Medium)),
    default("shelf_ratio", fact(2.0, 2.5, 3.0, Times, &PRACTICE, Sure::Medium)),
    default("end_fold", fact(5.0, 10.0, 10.0, Millimetre, &PRACTICE, Sure::Medium)),
    default("cut_loss", fact(0.0, 5.0, 10.0, Millimetre, &PRACTICE, Sure::Low)),
    default("shortest_piece", fact(30.0, 50.0, 60.0, Millimetre, &PRACTICE, Sure::Low)),
    default("hold_back", fact(5.0, 7.0, 10.0, Percent, &PRACTICE, Sure::Medium)),
    default("hold_back_weight", fact(5.0, 10.0, 10.0, Gram, &PRACTICE, Sure::Medium)),
    default("hairline_spare", fact(5.0, 10.0, 10.0, Percent, &PRACTICE, Sure::Low)),
    default("minutes_per_row", fact(30.0, 35.0, 40.0, Minute, &PRACTICE, Sure::Low)),
    default("hours_a_day", fact(1.0, 2.0, 6.0, Hour, &JUDGED, Sure::Low)),
    default("pack_weight", fact(80.0, 100.0, 113.0, Gram, &PRACTICE, Sure::Medium)),
    default("pack_width", fact(80.0, 100.0, 120.0, Centimetre, &PRACTICE, Sure::Low)),
    default("weft_length", fact(45.0, 50.0, 60.0, Centimetre, &PRACTICE, Sure::Low)),
    default("hand_tied_width", fact(25.0, 28.0, 30.0, Centimetre, &PRACTICE, Sure::Medium)),
    default("parting_gap", fact(2.0, 3.0, 4.0, Millimetre, &PRACTICE, Sure::Low)),
    default("parting_length", fact(6.0, 8.0, 12.0, Centimetre, &PRACTICE, Sure::Low)),
    default("pot", fact(5.0, 8.0, 10.0, Litre, &JUDGED, Sure::Low)),
    default("liquor_ratio", bath::LIQUOR),
    default("bath_spare", fact(5.0, 10.0, 10.0, Gram, &PRACTICE, Sure::Medium)),
];

/// The default of a slot.
pub fn default_for(slot: &str) -> Option<&'static Fact> {
    DEFAULTS.iter().find(|row| row.slot == slot).map(|row| &row.fact)
}

/// The row that the minutes of [`DEFAULTS`] speak of, cm.
pub const PACE_ROW: Fact = fact(20.0, 20.0, 20.0, Centimetre, &PRACTICE, Sure::Medium);

/// Hanging length of a ready-made bob by zone, in the order of the zones; shortest and longest strand, cm.
pub const BOB: [(f64, f64); 8] = [
    (20.0, 32.0), // front hairline
    (28.0, 38.0), // part
    (28.0, 38.0), // top
    (28.0, 40.0), // crown
    (24.0, 34.0), // left side
    (24.0, 34.0), // right side
    (22.0, 34.0), // back
    (14.0, 26.0), // nape
];

/// Whole weight of a wig: the cap and so many grams for each cm of mean hanging length; low 100 %, likely 130 %, high 180 %.
pub const WEIGHT_CAP: Fact = fact(30.0, 30.0, 30.0, Gram, &WEIGHT_TABLE, Sure::Low);
/// Grams for each cm of mean hanging length of the whole wig.
pub const WEIGHT_PER_CM: Fact = fact(2.5, 3.26, 4.5, Gram, &WEIGHT_TABLE, Sure::Low);

/// What 100 % of the trade's density means here: milligrams of hair on a cm² for each cm of hanging length.
///
/// The percent has no standard; this one definition is by mass per length of hair.
pub const HUNDRED_PERCENT_MG: f64 = 4.2;
/// Where [`HUNDRED_PERCENT_MG`] comes from and how far other readings of the percent lie apart: as strands of 51 dtex.
pub const HUNDRED_PERCENT: Fact = fact(60.0, 82.0, 95.0, PerSquareCentimetre, &WEIGHT_TABLE, Sure::Low);

/// A metre of single machine weft weighs at most so much; heavier is taken as double.
pub const SINGLE_WEFT_AT_MOST: Fact = fact(60.0, 65.0, 70.0, Gram, &PRACTICE, Sure::Low);

/// Delivery, days: an order's usual wait.
pub const DELIVERY_DAYS: (u32, u32, u32) = (3, 7, 14);

/// How far the rows may miss the amount to be added, as a share of it.
pub const ROW_TOLERANCE: f64 = 0.05;

/// How well a thing is measured at a bench, either way, by slot: a tape, a scale, a count.
pub const MEASURED_WITHIN: &[(&str, f64, measure::unit::Unit)] = &[
    ("girth", 5.0, Millimetre),
    ("front_to_nape", 5.0, Millimetre),
    ("ear_to_ear_front", 5.0, Millimetre),
    ("ear_to_ear_top", 5.0, Millimetre),
    ("temple_to_temple_back", 5.0, Millimetre),
    ("nape_width", 5.0, Millimetre),
    ("whole_weight", 1.0, Gram),
    ("cap_weight", 1.0, Gram),
];

/// What an ordinary ready-made base costs, hundredths; our own judgement, shown and never reckoned with.
pub const BASE_PRICE_HUNDREDTHS: u64 = 3500;
