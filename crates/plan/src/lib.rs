//! The arithmetic of the bench, a file (or a folder) a question.
//!
//! What it is: pure planners that return a value with its working. What it is not: anything that changes a record.

pub mod cutting;
pub mod dome;
