//! The wig: its cap and zones, what may be said of it, what may be done to it, and what it thereby is.
//!
//! What it is: the model. What it is not: sums (see the `plan` room).

pub mod condition;
pub mod figure;
pub mod figures;
pub mod sewn;
pub mod shade;
pub mod slots;
pub mod steps;
pub mod work;
pub mod zone;
