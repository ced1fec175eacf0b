//! How each fibre takes each class of colour, a block per fibre.
//!
//! What it is: the figures of [`super::dye`], each row in the order of its classes. What it is not: recipes.

use measure::unit::Unit::{Celsius, Minute};

use super::{
    dye::{
        Bath,
        Takes::{RecordedOnly, Refuses, Surface, Takes, Untested, Weak},
        Uptake,
    },
    fact::{
        Fact, Source,
        Sure::{self, High, Low, Medium},
        fact,
    },
    sources::{BROADBENT, HIGH_TEMPERATURE, JUDGED, MODACRYLIC_DYE, POLYAMIDE_DYE, PRACTICE, SMALL_DYES, UNDYEABLE},
};

const fn row(takes: super::dye::Takes, source: &'static Source, sure: Sure) -> Uptake {
    Uptake { takes, bath: None, source, sure }
}

const fn bath(
    takes: super::dye::Takes,
    source: &'static Source,
    sure: Sure,
    temperature: Fact,
    time: Fact,
    ph: &'static str,
) -> Uptake {
    Uptake { takes, bath: Some(Bath { temperature, time, ph, full_depth: None }), source, sure }
}

const fn celsius(low: f64, likely: f64, high: f64, source: &'static Source, sure: Sure) -> Fact {
    fact(low, likely, high, Celsius, source, sure)
}

const fn minutes(low: f64, likely: f64, high: f64, source: &'static Source, sure: Sure) -> Fact {
    fact(low, likely, high, Minute, source, sure)
}

const NO: Uptake = row(Refuses, &JUDGED, Medium);
const COATS: Uptake = row(Surface, &PRACTICE, Medium);
const UNTRIED: Uptake = row(Untested, &JUDGED, Low);

/// Of a fibre that nobody knows.
pub const UNKNOWN: [Uptake; 8] = [UNTRIED, UNTRIED, UNTRIED, UNTRIED, UNTRIED, COATS, COATS, NO];

/// 80 to 98 °C works; above 90 the fibre shrinks and dulls, so the bath stays at 80 to 85.
const MODACRYLIC_BATH: Fact = celsius(80.0, 82.0, 85.0, &PRACTICE, Medium);
const MODACRYLIC_TIME: Fact = minutes(45.0, 50.0, 60.0, &JUDGED, Low);

/// Of modacrylic.
pub const MODACRYLIC: [Uptake; 8] = [
    NO,
    bath(Takes, &MODACRYLIC_DYE, Medium, MODACRYLIC_BATH, MODACRYLIC_TIME, "ph.weak_acid"),
    bath(Takes, &MODACRYLIC_DYE, Medium, MODACRYLIC_BATH, MODACRYLIC_TIME, "ph.weak_acid"),
    row(Refuses, &PRACTICE, Low),
    NO,
    COATS,
    COATS,
    NO,
];

/// Of polyester.
pub const POLYESTER: [Uptake; 8] = [
    NO,
    Uptake {
        takes: Weak,
        bath: Some(Bath {
            temperature: celsius(95.0, 98.0, 100.0, &SMALL_DYES, Medium),
            time: minutes(60.0, 75.0, 90.0, &JUDGED, Low),
            ph: "ph.weak_acid",
            full_depth: Some(celsius(120.0, 130.0, 130.0, &HIGH_TEMPERATURE, High)),
        }),
        source: &SMALL_DYES,
        sure: Medium,
    },
    NO,
    NO,
    NO,
    COATS,
    COATS,
    NO,
];

/// Of human hair on a cap.
pub const HUMAN_HAIR: [Uptake; 8] = [
    bath(
        Takes,
        &PRACTICE,
        Medium,
        celsius(40.0, 60.0, 60.0, &PRACTICE, Medium),
        minutes(30.0, 45.0, 60.0, &PRACTICE, Low),
        "ph.vinegar",
    ),
    NO,
    row(Weak, &JUDGED, Low),
    bath(
        Takes,
        &PRACTICE,
        Medium,
        celsius(20.0, 40.0, 60.0, &JUDGED, Low),
        minutes(20.0, 30.0, 45.0, &JUDGED, Low),
        "ph.label",
    ),
    row(Weak, &JUDGED, Low),
    COATS,
    COATS,
    row(RecordedOnly, &PRACTICE, High),
];

/// Of polyamide, which lace and nets of caps are made of too.
pub const POLYAMIDE: [Uptake; 8] = [
    bath(
        Takes,
        &POLYAMIDE_DYE,
        Medium,
        celsius(90.0, 95.0, 100.0, &POLYAMIDE_DYE, Medium),
        minutes(45.0, 50.0, 60.0, &POLYAMIDE_DYE, Medium),
        "ph.acid",
    ),
    bath(
        Weak,
        &BROADBENT,
        Medium,
        celsius(90.0, 95.0, 100.0, &JUDGED, Low),
        minutes(45.0, 50.0, 60.0, &JUDGED, Low),
        "ph.weak_acid",
    ),
    row(Weak, &JUDGED, Low),
    row(Weak, &JUDGED, Low),
    row(Weak, &JUDGED, Low),
    COATS,
    COATS,
    NO,
];

/// Of polypropylene: coloured in the mass, refuses every bath.
pub const POLYPROPYLENE: [Uptake; 8] = {
    const NONE: Uptake = row(Refuses, &UNDYEABLE, High);
    [NONE, NONE, NONE, NONE, NONE, COATS, COATS, NONE]
};

/// Of chlorofibre: what little takes needs more heat than it bears.
pub const CHLOROFIBRE: [Uptake; 8] = [NO, NO, NO, NO, NO, COATS, COATS, NO];

/// Of vinylidene fibre.
pub const VINYLIDENE: [Uptake; 8] = CHLOROFIBRE;
