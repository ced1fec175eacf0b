//! The pages, a file each.
//!
//! What it is: what a person sees and does on one address. What it is not: sums, rules or storage.

pub mod about;
pub mod base;
pub mod bench;
pub mod cap;
pub mod colour;
pub mod drawer;
pub mod find;
pub mod handover;
pub mod heat;
pub mod look;
pub mod lots;
pub mod paper;
pub mod safe;
pub mod start;
pub mod units;
pub mod weft;
pub mod wig;
pub mod wigs;
