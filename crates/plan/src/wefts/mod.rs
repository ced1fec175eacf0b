//! Which rows to add: where, how long, over which zones.
//!
//! What it is: rows spread evenly over the gaps, ear to ear across zones, within bulk and edge limits.
//! What it is not: which lengths of which pack they come from (see `cutting` and `shopping`).

mod few;
mod place;
mod room;
mod share;
mod shorten;
mod slot;
mod stagger;
mod strip;
mod wish;

pub use place::{Mount, Placement, PlannedRow, Shortfall, Why, place};
pub use room::{Room, room_for_rows};
pub use wish::{Rules, rules};
