//! Limits, named once, with the words for their message.
//!
//! What it is: the range a figure may have and why. What it is not: a default (see the trade tables).

use crate::{
    say::{Arg, Say},
    typed::Typed,
    unit::{Kind, Unit},
};

/// The range of one kind of figure; both ends are allowed.
#[derive(Debug, PartialEq)]
pub struct Limit {
    /// Lowest, in `unit`.
    pub low: f64,
    /// Highest, in `unit`.
    pub high: f64,
    /// The unit both ends are in.
    pub unit: Unit,
    /// Key of the sentence that says why.
    pub why: &'static str,
}

impl Limit {
    /// A limit; meant for tables.
    pub const fn new(low: f64, high: f64, unit: Unit, why: &'static str) -> Limit {
        Limit { low, high, unit, why }
    }

    /// What the figure measures.
    pub fn kind(&self) -> Kind {
        self.unit.kind()
    }

    /// Lets a figure through, or says which end it passes and what to type instead.
    ///
    /// # Errors
    /// The sentence names the value, the end, and the reason.
    pub fn admit(&self, typed: &Typed) -> Result<(), Say> {
        // A typed 12 in and a limit in cm must not part over a rounding bit.
        let slack = 1e-9;
        let amount = self.unit.from_base(typed.base());
        let (key, end) = if amount < self.low - slack {
            ("measure.too_low", self.low)
        } else if amount > self.high + slack {
            ("measure.too_high", self.high)
        } else {
            return Ok(());
        };
        let end = Typed::plain(typed.unit().from_base(self.unit.to_base(end)), typed.unit());
        Err(Say::new(key, [Arg::from(typed.text()), Arg::from(end.text()), Arg::Key(self.why)]))
    }
}
