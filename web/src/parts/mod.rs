//! Parts of pages.
//!
//! What it is: small components that several pages use. What it is not: pages, or rules.

pub mod cautions;
pub mod cell;
pub mod confirm;
pub mod drawing;
pub mod field;
pub mod lines;
pub mod pictures;
pub mod plain;
pub mod reckon;
pub mod typed;
