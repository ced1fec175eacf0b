//! Own pace: how long work takes this person, learnt from what they timed and shrunk towards stated practice while that is
//! little.
//!
//! What it is: times by kind of work, with how many sittings they rest on. What it is not: a timer, or a calendar.

mod learn;
mod reckon;
mod stated;

pub use learn::{Pace, Paces};
pub use reckon::{Span, Total, row, sewing};
pub use stated::{OWN, Per, STATED_COUNTS_AS};
