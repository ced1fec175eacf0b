//! The bath: how deep, how much water, how warm how fast, what goes in besides dye.
//!
//! What it is: textile practice as figures, each with its source. What it is not: a fibre's own bath (see `uptake`), or a recipe
//! for carriers, pressure, strong acids and reducing baths, which have no place in a kitchen.

use measure::unit::Unit::{Celsius, Litre, Millimetre, Minute, Percent, Times};

use super::{
    dye::Class,
    fact::{Fact, Sure, fact},
    sources::{
        ACETIC_POLYAMIDE, BROADBENT_WETTING, CRACK_MARKS, DEPTH_ACID, DEPTH_DISPERSE, JUDGED, PRACTICE, RAMPS,
        STRENGTHS,
    },
};

/// A depth of shade with its name.
#[derive(Debug, PartialEq)]
pub struct Depth {
    /// Its name in files.
    pub name: &'static str,
    /// Key of its label.
    pub label: &'static str,
    /// Dye on the weight of fibre.
    pub share: Fact,
}

const fn acid(name: &'static str, label: &'static str, low: f64, likely: f64, high: f64) -> Depth {
    Depth { name, label, share: fact(low, likely, high, Percent, &DEPTH_ACID, Sure::Medium) }
}

const fn other(name: &'static str, label: &'static str, low: f64, likely: f64, high: f64, sure: Sure) -> Depth {
    Depth { name, label, share: fact(low, likely, high, Percent, &DEPTH_DISPERSE, sure) }
}

/// Of acid dye on hair and polyamide, palest first: commercial powder.
pub const ACID: &[Depth] = &[
    acid("pale", "depth.pale", 0.1, 0.1, 0.3),
    acid("light", "depth.light", 0.3, 0.5, 0.7),
    acid("medium", "depth.medium", 0.7, 1.0, 2.0),
    acid("deep", "depth.deep", 2.0, 3.0, 4.0),
    acid("black", "depth.black", 4.0, 4.5, 5.0),
];

/// Of disperse and cationic dye, palest first: commercial powder.
pub const DISPERSE: &[Depth] = &[
    other("pale", "depth.pale", 0.1, 0.2, 0.3, Sure::Medium),
    other("light", "depth.light", 0.3, 0.5, 0.7, Sure::Medium),
    other("medium", "depth.medium", 0.7, 1.5, 2.0, Sure::Medium),
    other("deep", "depth.deep", 2.0, 2.5, 3.0, Sure::Medium),
    other("black", "depth.black", 4.0, 6.0, 8.0, Sure::Low),
];

/// The depths of a class.
pub fn depths(class: Class) -> &'static [Depth] {
    if class == Class::Acid { ACID } else { DISPERSE }
}

/// The name of a depth: the first whose highest is not below it.
pub fn depth_named(class: Class, share: f64) -> &'static Depth {
    let all = depths(class);
    all.iter().find(|depth| share <= depth.share.unit.to_base(depth.share.high)).unwrap_or(&all[all.len() - 1])
}

/// K/S that 1 % of a dye nobody has tried yet adds where it absorbs most: dyes differ by two to four times.
pub const STRENGTH: Fact = fact(1.5, 4.0, 9.0, Times, &STRENGTHS, Sure::Low);

/// How far a pot may be filled: locks must float freely and water must not go over.
pub const FILLED: Fact = fact(60.0, 70.0, 75.0, Percent, &PRACTICE, Sure::Medium);
/// Litres of bath for a kilogram of fibre in a pot at home; below the low one locks press together and dye unevenly.
pub const LIQUOR: Fact = fact(30.0, 40.0, 60.0, Times, &PRACTICE, Sure::Medium);
/// Wetting agent in a litre of the bath, mL or g.
pub const WETTING: Fact = fact(1.0, 1.0, 1.0, Litre, &BROADBENT_WETTING, Sure::High);
/// Wetting out before dye goes in.
pub const WET_OUT: Fact = fact(10.0, 12.0, 15.0, Minute, &BROADBENT_WETTING, Sure::Medium);
/// Where the bath starts.
pub const START: Fact = fact(30.0, 40.0, 50.0, Celsius, &ACETIC_POLYAMIDE, Sure::Medium);
/// K a minute upwards.
pub const RAMP: Fact = fact(1.0, 1.0, 1.5, Times, &RAMPS, Sure::Medium);
/// K a minute downwards, left alone in the pot with its lid off.
pub const COOL: Fact = fact(0.5, 1.0, 1.5, Times, &JUDGED, Sure::Low);
/// Fibre is lifted from the bath only when it has cooled to this, or set creases and crack marks stay.
pub const LIFT: Fact = fact(45.0, 50.0, 50.0, Celsius, &CRACK_MARKS, Sure::Medium);
/// Between these the fibre starts to take dye quickly: the ramp is slowest there.
pub const QUICK_FROM: Fact = fact(70.0, 70.0, 70.0, Celsius, &JUDGED, Sure::Low);

/// Acetic acid on the weight of fibre, by the note on the bath's acidity; none where the label rules.
pub fn acetic(ph: &str) -> Option<&'static Fact> {
    match ph {
        "ph.acid" => Some(&ACETIC),
        "ph.weak_acid" | "ph.vinegar" => Some(&ACETIC_WEAK),
        _ => None,
    }
}

const ACETIC: Fact = fact(1.0, 2.0, 3.0, Percent, &ACETIC_POLYAMIDE, Sure::Medium);
const ACETIC_WEAK: Fact = fact(0.5, 1.0, 2.0, Percent, &JUDGED, Sure::Low);
/// Acetic acid in kitchen vinegar.
pub const VINEGAR: Fact = fact(5.0, 5.0, 6.0, Percent, &PRACTICE, Sure::High);

/// How far dye liquor climbs above the water in a hanging lock.
pub const WICKING: Fact = fact(10.0, 20.0, 30.0, Millimetre, &PRACTICE, Sure::Low);

/// How much of a cap's weight is polyamide lace and net where zones are knotted, which takes acid dye as hair does.
pub const LACE_SHARE: Fact = fact(20.0, 40.0, 70.0, Percent, &JUDGED, Sure::Low);
/// A cap of a bottle, where nobody measured it.
pub const BOTTLE_CAP: Fact = fact(3.0, 5.0, 10.0, Litre, &JUDGED, Sure::Low);
/// What a phone photo with something white beside the lock is good for, CIEDE2000: no colour claim is finer.
pub const PHOTO_WITHIN: Fact = fact(3.0, 5.0, 8.0, Times, &JUDGED, Sure::Low);
