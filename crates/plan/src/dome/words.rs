//! English words of the dome's problems, in one place.
//!
//! What it is: keys and the English of each. What it is not: wording of screens, or units the person chose (a screen formats
//! the numbers itself and uses the key).

use super::measures::{Fault, Field, Problem, TapeFrom};
use core::fmt;
use measure::{
    decimal::{fixed, trimmed},
    quantity::{Length, units::centimeter},
};

impl Field {
    /// Key of the field's name in the word tables.
    pub fn key(self) -> &'static str {
        match self {
            Field::Circumference => "head-circumference",
            Field::FrontToNape => "head-front-to-nape",
            Field::EarToEarFront => "head-ear-to-ear-front",
            Field::EarToEarTop => "head-ear-to-ear-top",
            Field::TempleToTempleBack => "head-temple-to-temple-back",
            Field::NapeWidth => "head-nape-width",
            Field::PartingOffset => "parting-offset",
            Field::PartingLength => "parting-length",
            Field::PartingWidth => "parting-width",
        }
    }

    fn english(self) -> &'static str {
        match self {
            Field::Circumference => "circumference",
            Field::FrontToNape => "front hairline to nape",
            Field::EarToEarFront => "ear to ear across the forehead",
            Field::EarToEarTop => "ear to ear over the top",
            Field::TempleToTempleBack => "temple to temple round the back",
            Field::NapeWidth => "nape width",
            Field::PartingOffset => "parting, distance from the middle",
            Field::PartingLength => "parting, length",
            Field::PartingWidth => "parting, width",
        }
    }
}

impl Problem {
    /// Key of the sentence that says what is wrong and how to put it right.
    pub fn remedy_key(&self) -> &'static str {
        match self.fault {
            Fault::NotALength => "dome-not-a-length",
            Fault::OutOfRange { .. } => "dome-out-of-range",
            Fault::LongerThanCircumference { .. } => "dome-longer-than-circumference",
            Fault::OtherTapeStart { try_from: TapeFrom::Tragus } => "dome-try-tragus",
            Fault::OtherTapeStart { try_from: TapeFrom::AboveEar } => "dome-try-above-ear",
        }
    }
}

fn cm(length: Length) -> String {
    fixed(length.get::<centimeter>(), 1)
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (field, value) = (self.field.english(), cm(self.value));
        match self.fault {
            Fault::NotALength => {
                let value = trimmed(self.value.get::<centimeter>(), 1);
                write!(f, "{field}: {value} is not a length above zero; measure again")
            }
            Fault::OutOfRange { least, most } => write!(
                f,
                "{field}: {value} cm; expected {} to {} cm: measure again, or check inches against centimetres",
                cm(least),
                cm(most)
            ),
            Fault::LongerThanCircumference { circumference } => write!(
                f,
                "{field}: {value} cm is longer than the circumference of {} cm; check which tape is which",
                cm(circumference)
            ),
            Fault::OtherTapeStart { try_from: TapeFrom::AboveEar } => write!(
                f,
                "{field}: {value} cm is too short from the tragus; say that the tape starts above the ear, or measure again"
            ),
            Fault::OtherTapeStart { try_from: TapeFrom::Tragus } => write!(
                f,
                "{field}: {value} cm is too long from above the ear; say that the tape starts at the tragus, or measure again"
            ),
        }
    }
}
