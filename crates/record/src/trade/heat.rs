//! Heat windows: for each fibre and each way of heating, what sets it and what must not be passed.
//!
//! What it is: the types and the look-up; the figures stand in `windows`, what others published in [`super::damage`].
//! What it is not: a person's own window, learnt from test locks, or the time a lock needs.

use measure::unit::Unit::Celsius;

use super::{
    fact::{Fact, Source, Sure, fact},
    fibres::Fibre,
    sources::{PRACTICE, RUETSCH},
};

/// How a lock is heated.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Medium {
    /// Hot water, dipped or poured; its temperature where it meets the fibre.
    Water,
    /// Open steam, mixed with air; its temperature at the lock.
    Steam,
    /// Hood dryer or wig dryer; its air.
    Dryer,
    /// Curling or flat iron; its dial. See [`IRON_OVERSHOOT`].
    Iron,
}

impl Medium {
    /// All of them, gentlest first.
    pub const ALL: [Medium; 4] = [Medium::Water, Medium::Steam, Medium::Dryer, Medium::Iron];

    /// Its name in files.
    pub fn name(self) -> &'static str {
        match self {
            Medium::Water => "water",
            Medium::Steam => "steam",
            Medium::Dryer => "dryer",
            Medium::Iron => "iron",
        }
    }

    /// Reads a name.
    pub fn read(text: &str) -> Option<Medium> {
        Medium::ALL.into_iter().find(|medium| medium.name() == text)
    }

    /// Key of its label.
    pub fn label(self) -> &'static str {
        match self {
            Medium::Water => "choice.water",
            Medium::Steam => "choice.steam",
            Medium::Dryer => "choice.dryer",
            Medium::Iron => "choice.iron",
        }
    }

    /// Whether it wets the fibre.
    pub fn wet(self) -> bool {
        matches!(self, Medium::Water | Medium::Steam)
    }

    /// Key of the caution that stands beside a step with it.
    pub fn caution(self) -> &'static str {
        match self {
            Medium::Water => "heat.caution_water",
            Medium::Steam => "heat.caution_steam",
            Medium::Dryer => "heat.caution_dryer",
            Medium::Iron => "heat.caution_iron",
        }
    }
}

/// What a way of heating is good for on a fibre; the figures are low, likely and high, and the high one is for after
/// a test lock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Suits {
    /// A set is made with it.
    Sets(Fact),
    /// Too cool to set this fibre: it dries a wet set.
    Dries(Fact),
    /// Not by default: only where a test lock of this lot held.
    AfterTest(Fact),
    /// Never on this fibre.
    Never,
}

impl Suits {
    /// Key of the words for it.
    pub fn label(&self) -> &'static str {
        match self {
            Suits::Sets(_) => "suits.sets",
            Suits::Dries(_) => "suits.dries",
            Suits::AfterTest(_) => "suits.after_test",
            Suits::Never => "suits.never",
        }
    }
}

/// A fibre's window in one medium.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// What it is good for, at which temperatures.
    pub suits: Suits,
    /// What must not be passed, whatever a test lock says; its three figures are one.
    pub limit: Fact,
}

impl Window {
    /// The temperatures worth trying, unless it is never used.
    pub fn range(&self) -> Option<&Fact> {
        match &self.suits {
            Suits::Sets(range) | Suits::Dries(range) | Suits::AfterTest(range) => Some(range),
            Suits::Never => None,
        }
    }

    /// Whether it may be used without a test lock of this lot.
    pub fn by_default(&self) -> bool {
        matches!(self.suits, Suits::Sets(_) | Suits::Dries(_))
    }

    /// Temperatures for test locks in °C, coolest first.
    pub fn test_steps(&self) -> Vec<f64> {
        let mut steps: Vec<f64> =
            self.range().map(|range| vec![range.low, range.likely, range.high]).unwrap_or_default();
        steps.dedup();
        steps
    }
}

/// What heat does to a fibre.
#[derive(Debug, PartialEq)]
pub struct Heat {
    /// A window for each medium, in the order of [`Medium::ALL`].
    pub windows: [Window; 4],
    /// A set must be cooler than this before it is let go; the high figure is the last one that may do.
    pub release: Fact,
    /// Whether a wet set must also be dry before it is let go.
    pub must_dry: bool,
    /// Whether drying itself makes the set: let go damp, it is gone.
    pub holds_by_drying: bool,
}

/// The window of a fibre in a medium.
pub fn window(fibre: &Fibre, medium: Medium) -> &'static Window {
    &fibre.heat.windows[medium as usize]
}

/// What a fibre must not pass in a medium: the lower of published damage and the safer practice.
pub fn limit(fibre: &Fibre, medium: Medium) -> &'static Fact {
    &window(fibre, medium).limit
}

/// How far an iron may run above its dial, in kelvin though written °C: one hobby test, a dial of 120 reached 150 and
/// one of 210 reached 229.
pub const IRON_OVERSHOOT: Fact = fact(20.0, 30.0, 30.0, Celsius, &PRACTICE, Sure::Low);

/// Why no iron touches wet human hair: it bubbles and its scales buckle.
pub const NO_IRON_ON_WET_HAIR: Source = RUETSCH;
