//! Heat: conduction, water and steam held against outside values; cases in `tests/cases/heat`.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a check fails by panicking")]

mod conduction;
mod water;

/// Rows of a case file: numbers between semicolons, `#` starts a comment line.
pub(crate) fn rows(text: &str) -> Vec<Vec<f64>> {
    let rows: Vec<Vec<f64>> = text
        .lines()
        .filter(|line| !line.starts_with('#') && !line.trim().is_empty())
        .map(|line| line.split(';').map(|field| field.trim().parse().unwrap()).collect())
        .collect();
    assert!(!rows.is_empty());
    rows
}

pub(crate) fn near(what: &str, got: f64, expected: f64, tolerance: f64) {
    assert!((got - expected).abs() <= tolerance, "{what}: got {got}, expected {expected} within {tolerance}");
}
