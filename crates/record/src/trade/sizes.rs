//! Head measures by size.
//!
//! What it is: what to assume until the tape says otherwise. What it is not: a fitting.

use measure::unit::Unit::Centimetre;

use super::{
    fact::{Fact, Source, Sure, fact},
    sources::{CHARTS, MESH},
};

/// The sizes, smallest first.
pub const NAMES: &[&str] = &["child", "small", "medium", "large", "extra_large"];

/// Girth of each size in cm, in the order of [`NAMES`]: head girth as EN 13402-1 takes it, above the ears.
pub const GIRTHS: &[f64] = &[51.0, 54.0, 56.0, 58.0, 60.0];

/// A measure as a straight line of the girth: `at_56 + slope × (girth − 56)`, cm.
#[derive(Debug, PartialEq)]
pub struct ByGirth {
    /// The slot it fills.
    pub slot: &'static str,
    /// At a girth of 56 cm.
    pub at_56: f64,
    /// For each cm of girth.
    pub slope: f64,
    /// How far a head may usually be off, either way, cm.
    pub spread: f64,
    /// Where from.
    pub source: &'static Source,
    /// How sure.
    pub sure: Sure,
}

/// Each measure; girth alone predicts the one over the top badly, so the tape is worth taking.
pub const MEASURES: &[ByGirth] = &[
    ByGirth { slot: "front_to_nape", at_56: 36.0, slope: 0.65, spread: 1.5, source: &MESH, sure: Sure::Medium },
    ByGirth { slot: "ear_to_ear_front", at_56: 31.5, slope: 0.56, spread: 1.2, source: &MESH, sure: Sure::Medium },
    // Above the ear; from the tragus it is TRAGUS_MORE longer.
    ByGirth { slot: "ear_to_ear_top", at_56: 28.5, slope: 0.61, spread: 1.5, source: &MESH, sure: Sure::Medium },
    ByGirth { slot: "temple_to_temple_back", at_56: 37.6, slope: 0.67, spread: 1.6, source: &CHARTS, sure: Sure::Low },
    ByGirth { slot: "nape_width", at_56: 13.8, slope: 0.25, spread: 1.2, source: &CHARTS, sure: Sure::Low },
];

/// How much longer ear to ear over the top is when the tape starts at the tragus, both sides together.
pub const TRAGUS_MORE: Fact = fact(5.5, 6.1, 6.6, Centimetre, &MESH, Sure::Medium);

/// What the girth of a size may usually be off, either way, cm.
pub const GIRTH_SPREAD: f64 = 1.0;

/// The girth of a size, cm; of the middle one where the size is not known.
pub fn girth(size: &str) -> f64 {
    NAMES.iter().zip(GIRTHS).find(|(name, _)| **name == size).map_or(56.0, |(_, girth)| *girth)
}
