//! The commands, a file each.
//!
//! What it is: what each prints. What it is not: how anything is reckoned.

pub mod case;
pub mod check;
pub mod cut;
pub mod merge;
pub mod plan;
pub mod plan_json;
pub mod sheet;
