//! Checks of the head dome, cases in `tests/cases/dome`.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a check fails by panicking")]

mod drawing;
mod heads;
mod integrator;
mod properties;
mod rows;

use measure::quantity::{Length, units::centimeter, units::millimeter};
use plan::dome::{HeadMeasures, TapeFrom};

/// Rows of a case file: fields between semicolons, `#` starts a comment line.
pub(crate) fn cases(text: &str) -> Vec<Vec<&str>> {
    let rows: Vec<Vec<&str>> = text
        .lines()
        .filter(|l| !l.starts_with('#') && !l.trim().is_empty())
        .map(|l| l.split(';').map(str::trim).collect())
        .collect();
    assert!(!rows.is_empty());
    rows
}

pub(crate) fn number(field: &str) -> f64 {
    field.parse().unwrap()
}

pub(crate) fn cm(value: f64) -> Length {
    Length::new::<centimeter>(value)
}

pub(crate) fn mm(value: Length) -> f64 {
    value.get::<millimeter>()
}

/// An ordinary head of 56 cm (middle of printed charts and of the averaged scalp in `scalp.txt`).
pub(crate) fn ordinary() -> HeadMeasures {
    HeadMeasures {
        circumference: cm(56.0),
        front_to_nape: cm(36.0),
        ear_to_ear_front: cm(31.5),
        ear_to_ear_top: cm(28.5),
        top_from: TapeFrom::AboveEar,
        temple_to_temple_back: cm(37.6),
        nape_width: cm(13.8),
    }
}

pub(crate) fn near(what: &str, got: f64, expected: f64, tolerance: f64) {
    assert!((got - expected).abs() <= tolerance, "{what}: got {got}, expected {expected} within {tolerance}");
}
