//! The English of this crate.
//!
//! What it is: one table. What it is not: code: another language is another such table.

use crate::say::Table;

/// Keys and sentences.
pub const ENGLISH: Table = &[
    ("measure.empty", "Nothing is typed here. Type a number, or leave the assumption."),
    ("measure.not_a_number", "“{0}” is not a number. Type it in figures, such as 12, 12.5 or 12 1/2."),
    ("measure.not_a_unit", "“{0}” has a unit that does not fit here. Use one of {1}, or none."),
    (
        "measure.two_readings",
        "“{0}” can be read in two ways. Type it without a thousands mark, with one mark for decimals.",
    ),
    ("measure.negative", "“{0}” is below zero. Type zero or more."),
    ("measure.too_fine", "“{0}” has more than two decimals. Round it to two."),
    ("measure.too_much", "“{0}” is beyond what can be kept. Type a smaller number."),
    ("measure.too_low", "{0} is too low: at least {1} ({2})."),
    ("measure.too_high", "{0} is too high: at most {1} ({2})."),
];
