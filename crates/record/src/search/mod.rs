//! Finding again: entries of all wigs and the workshop by words, fibre, kind, heat, dye, lot, zone, outcome and day.
//!
//! What it is: an index prepared once and asked as one types, and a page of what worked on a fibre.
//! What it is not: a search of pages or tables, or an opinion of what was found.

mod index;
mod letters;
mod query;
mod worked;

pub use index::Index;
pub use letters::fold;
pub use query::{Hit, Query};
pub use worked::{Outcome, Tried, Worked};
