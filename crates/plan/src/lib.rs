//! The arithmetic of the bench, a file (or a folder) a question.
//!
//! What it is: pure planners that return a value with its working. What it is not: anything that changes a record.

pub mod care;
pub mod colour;
pub mod cutting;
pub mod dome;
pub mod dye;
pub mod fullness;
pub mod hairline;
pub mod heat;
pub mod inputs;
pub mod layout;
pub mod lengths;
pub mod pace;
pub mod shopping;
pub mod steps;
pub mod wefts;
pub mod words;
pub mod working;
