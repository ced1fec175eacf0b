//! How hot, how long, how long to cool.
//!
//! What it is: conduction into a wound lock, water and steam, the answer with its curve and cautions, the test lock's way.
//! What it is not: the limit itself (see `care`), or a promise: packing and contact are guessed, so a band is shown.

pub mod bundle;
mod cautions;
pub mod guide;
pub mod lock;
pub mod of_wig;
mod plan;
pub mod refuse;
mod run;
pub mod series;
pub mod soak;
pub mod tool;
pub mod water;
pub mod words;

pub use plan::{Ask, Ceiling, Curve, HeatPlan, Verdict, lasts, plan};
pub use run::Sample;
