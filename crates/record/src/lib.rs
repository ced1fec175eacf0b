//! The record: what is known of each wig and of the workshop, and how it came to be known.
//!
//! What it is: facts of the trade, the model of a wig, the log of entries with their fold and merge.
//! What it is not: a clock, a source of randomness, storage, or the look of anything.

pub mod field;
pub mod handover;
pub mod history;
pub mod id;
pub mod limits;
pub mod search;
pub mod trade;
pub mod wig;
pub mod words;
pub mod workshop;
