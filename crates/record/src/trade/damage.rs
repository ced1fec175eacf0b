//! What heat is said to do to fibres, and where sources disagree.
//!
//! What it is: the type of a published or trade figure, and searches; the rows stand in `findings`.
//! What it is not: our windows (see [`super::heat`]).

use super::{
    fact::{Fact, Known},
    fibres::Fibre,
    findings::FINDINGS,
    heat::Medium,
};

/// What is said to happen at a temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Effect {
    /// Set by this source's practice.
    Set,
    /// Glass transition, dry: chains begin to move.
    Moves,
    /// Glass transition in water.
    MovesWet,
    /// Softens.
    Softens,
    /// Wears a little at each use.
    Wears,
    /// Said to be the most it bears.
    Ceiling,
    /// Shrinks or crinkles.
    Shrinks,
    /// Stiffens or glazes.
    Stiffens,
    /// Scorches or yellows.
    Discolours,
    /// Loses strength.
    Weakens,
    /// Changes for good.
    Changes,
    /// Sticks to the tool or itself.
    Sticks,
    /// Melts.
    Melts,
    /// Decomposes.
    Decomposes,
}

impl Effect {
    /// Key of the words for it.
    pub fn label(self) -> &'static str {
        match self {
            Effect::Set => "effect.set",
            Effect::Moves => "effect.moves",
            Effect::MovesWet => "effect.moves_wet",
            Effect::Softens => "effect.softens",
            Effect::Wears => "effect.wears",
            Effect::Ceiling => "effect.ceiling",
            Effect::Shrinks => "effect.shrinks",
            Effect::Stiffens => "effect.stiffens",
            Effect::Discolours => "effect.discolours",
            Effect::Weakens => "effect.weakens",
            Effect::Changes => "effect.changes",
            Effect::Sticks => "effect.sticks",
            Effect::Melts => "effect.melts",
            Effect::Decomposes => "effect.decomposes",
        }
    }

    /// Whether one use does lasting harm; softening alone is what a set needs.
    pub fn harms(self) -> bool {
        !matches!(self, Effect::Set | Effect::Moves | Effect::MovesWet | Effect::Softens | Effect::Wears)
    }
}

/// Where a finding holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holds {
    /// Wet or dry.
    Always,
    /// In water or steam only.
    Wet,
    /// On dry fibre only.
    Dry,
}

/// A published or trade figure.
#[derive(Debug, PartialEq)]
pub struct Finding {
    /// The fibre, by name.
    pub fibre: &'static str,
    /// What happens.
    pub effect: Effect,
    /// Wet or dry.
    pub holds: Holds,
    /// Key of what it is said of more closely: a type, a tool; empty where of the fibre at large.
    pub of: &'static str,
    /// From which temperature, to which.
    pub figure: Fact,
}

impl Finding {
    /// Whether it was published, whether we read it again or not; practice and judgement were not.
    pub fn published(&self) -> bool {
        matches!(self.figure.source.known, Known::Read | Known::Recalled | Known::Computed)
    }

    fn holds_in(&self, medium: Medium) -> bool {
        match self.holds {
            Holds::Always => true,
            Holds::Wet => medium.wet(),
            Holds::Dry => !medium.wet(),
        }
    }

    /// Whether the two speak of the same thing and their figures do not meet.
    fn against(&self, other: &Finding) -> bool {
        let wet_and_dry = matches!((self.holds, other.holds), (Holds::Wet, Holds::Dry) | (Holds::Dry, Holds::Wet));
        let apart = self.figure.high < other.figure.low || other.figure.high < self.figure.low;
        self.fibre == other.fibre && self.effect == other.effect && !wet_and_dry && apart
    }
}

/// Everything said of a fibre.
pub fn findings(fibre: &Fibre) -> impl Iterator<Item = &'static Finding> {
    let name = fibre.name;
    FINDINGS.iter().filter(move |finding| finding.fibre == name)
}

/// What sources disagree on: figures for one effect on one fibre that do not meet.
pub fn disagreements(fibre: &Fibre) -> impl Iterator<Item = &'static Finding> {
    findings(fibre).filter(|one| FINDINGS.iter().any(|other| one.against(other)))
}

/// The lowest published temperature that harms a fibre in a medium.
pub fn lowest_harm(fibre: &Fibre, medium: Medium) -> Option<&'static Finding> {
    findings(fibre)
        .filter(|finding| finding.effect.harms() && finding.published() && finding.holds_in(medium))
        .min_by(|one, other| one.figure.low.total_cmp(&other.figure.low))
}
