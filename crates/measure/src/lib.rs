//! Quantities with units, what a person typed kept as typed, and limits named once with their words.
//!
//! What it is: the arithmetic alphabet of the house. What it is not: trade knowledge, storage or layout of screens.

#[macro_use]
extern crate uom;

pub mod civil;
pub mod decimal;
pub mod limit;
pub mod money;
pub mod order;
pub mod prefs;
pub mod quantity;
pub mod say;
pub mod typed;
pub mod unit;
pub mod words;
