//! A fact: three figures, where they come from, how sure they are.
//!
//! What it is: the type of a table's cell. What it is not: the cells.

use measure::unit::Unit;

/// How a figure is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Known {
    /// Read in the named source.
    Read,
    /// Recalled from the named source, not read again.
    Recalled,
    /// Common practice, no source.
    Practice,
    /// Computed from the named source.
    Computed,
    /// Our own judgement.
    Judged,
}

impl Known {
    /// Key of the words for it.
    pub fn label(self) -> &'static str {
        match self {
            Known::Read => "known.read",
            Known::Recalled => "known.recalled",
            Known::Practice => "known.practice",
            Known::Computed => "known.computed",
            Known::Judged => "known.judged",
        }
    }
}

/// How much weight a figure bears.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sure {
    /// Seldom wrong.
    High,
    /// Right in the main.
    Medium,
    /// Measure before you rely on it.
    Low,
}

impl Sure {
    /// Key of the words for it.
    pub fn label(self) -> &'static str {
        match self {
            Sure::High => "sure.high",
            Sure::Medium => "sure.medium",
            Sure::Low => "sure.low",
        }
    }
}

/// Where a figure was published.
#[derive(Debug, PartialEq, Eq)]
pub struct Source {
    /// Author, title, year, place.
    pub text: &'static str,
    /// How we know it.
    pub known: Known,
}

/// Lowest usual, likely and highest usual figure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fact {
    /// Lowest usual.
    pub low: f64,
    /// Likely.
    pub likely: f64,
    /// Highest usual.
    pub high: f64,
    /// The unit of the three.
    pub unit: Unit,
    /// Where from.
    pub source: &'static Source,
    /// How sure.
    pub sure: Sure,
}

/// A fact; for tables.
pub const fn fact(low: f64, likely: f64, high: f64, unit: Unit, source: &'static Source, sure: Sure) -> Fact {
    Fact { low, likely, high, unit, source, sure }
}
