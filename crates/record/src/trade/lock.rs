//! What a heat test lock can show, and what that says of the window.
//!
//! What it is: a table of results. What it is not: a window learnt from several locks.

/// Where a tried temperature lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// Too cool: try hotter.
    Below,
    /// It works.
    Inside,
    /// Too hot: stay below it.
    Above,
}

impl Side {
    /// Key of the words for it.
    pub fn label(self) -> &'static str {
        match self {
            Side::Below => "lock.below",
            Side::Inside => "lock.inside",
            Side::Above => "lock.above",
        }
    }
}

/// A result and what it says.
#[derive(Debug, PartialEq, Eq)]
pub struct Shown {
    /// Its name in files.
    pub name: &'static str,
    /// Key of its label.
    pub label: &'static str,
    /// Where the temperature lay.
    pub side: Side,
}

const fn shown(name: &'static str, label: &'static str, side: Side) -> Shown {
    Shown { name, label, side }
}

/// All results, coolest first.
pub const RESULTS: &[Shown] = &[
    shown("no_set", "choice.no_set", Side::Below),
    shown("held", "choice.held", Side::Inside),
    // The heat was right and the rod too small.
    shown("too_tight", "choice.too_tight", Side::Inside),
    shown("frizzed", "choice.frizzed", Side::Above),
    shown("shiny", "choice.shiny", Side::Above),
    shown("stuck", "choice.stuck", Side::Above),
    shown("melted", "choice.melted", Side::Above),
];

/// What a result says, by its name.
pub fn side(name: &str) -> Option<Side> {
    RESULTS.iter().find(|shown| shown.name == name).map(|shown| shown.side)
}
