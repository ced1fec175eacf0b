//! What the checks across rooms share: demo wigs said in lines, word tables, sources.
//!
//! What it is: helpers for `tests/`, and nothing that ships. What it is not: any room's own tests.

pub mod demo;
pub mod full;
pub mod golden;
pub mod heed;
pub mod lines;
pub mod places;
pub mod sources;
