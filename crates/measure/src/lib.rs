//! Quantities with units, what a person typed kept as typed, and limits named once with their words.
//!
//! What it is: the arithmetic alphabet of the house. What it is not: trade knowledge, storage or wording of screens.


#[macro_use]
extern crate uom;

pub mod quantity;
