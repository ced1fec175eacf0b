//! The log: entries, their order, their fold into a state, their merge.
//!
//! What it is: what cannot be changed later. What it is not: trade knowledge, or how entries look on disk.

pub mod another;
pub mod desk;
pub mod entry;
pub mod fold;
pub mod log;
pub mod people;
