//! The steps a wig needs, in an order that works.
//!
//! What it is: suggestions from the plans and the wig's condition, each ready to be planned, and when a step is right.
//! What it is not: the plan itself, which a person keeps in the record and may order otherwise, or the checks (see `care`).

mod guide;
mod into;
mod missing;
mod order;
mod suggest;
pub(crate) mod words;

pub use guide::{Guide, guide};
pub use into::plan;
pub use missing::{missing, open_step};
pub use order::rank;
pub use suggest::{sewing, suggest};
