//! The English of this crate.
//!
//! What it is: one table. What it is not: code.

use measure::say::Table;

/// Keys and sentences.
pub const ENGLISH: Table = &[];
