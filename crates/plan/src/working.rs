//! The working behind a figure, and the cautions beside it.
//!
//! What it is: the common shape of every planner's answer. What it is not: words of a language.

use measure::say::{Arg, Say};
use record::{
    trade::fact::{Source, Sure},
    wig::figure::{Figure, FromBase, Origin},
};

/// One line of working: a name, this person's numbers, the ground it stands on.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What is reckoned.
    pub name: Say,
    /// The formula with its numbers.
    pub sum: Say,
    /// On what ground.
    pub ground: Ground,
}

/// The ground of a line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Ground {
    /// Somebody measured or said it.
    Said,
    /// Assumed.
    Assumed {
        /// Where from.
        source: &'static Source,
        /// How sure.
        sure: Sure,
    },
    /// Reckoned from other lines.
    Reckoned,
}

impl Ground {
    /// The ground of a figure.
    pub fn of(origin: &Origin) -> Ground {
        match origin {
            Origin::Said { .. } => Ground::Said,
            Origin::Assumed { source, sure } | Origin::Follows { source, sure, .. } => {
                Ground::Assumed { source, sure: *sure }
            }
        }
    }
}

/// A line of a figure as it stands: likely, and its range where it has one.
pub fn figure_line<Q: FromBase>(name: Say, figure: &Figure<Q>, show: impl Fn(Q) -> Arg) -> Line {
    let sum = if figure.low < figure.high {
        Say::new("plan.likely_range", [show(figure.likely), show(figure.low), show(figure.high)])
    } else {
        Say::new("plan.just", [show(figure.likely)])
    };
    Line { name, sum, ground: Ground::of(&figure.origin) }
}

/// A reckoned line.
pub fn line(name: Say, sum: Say) -> Line {
    Line { name, sum, ground: Ground::Reckoned }
}

/// How much a caution weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// Worth a thought.
    Consider,
    /// Take care.
    Care,
    /// Stop.
    Stop,
}

/// A caution: what, and what to do about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Caution {
    /// How much it weighs.
    pub weight: Weight,
    /// What is the matter.
    pub what: Say,
    /// What to do.
    pub remedy: Say,
}
