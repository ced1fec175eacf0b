//! Colour: which class of dye a fibre takes, and what the dye needs.
//!
//! What it is: the types and the look-up; the figures stand in `uptake`.
//! What it is not: depth of shade, or a recipe: carriers, pressure, strong acids and reducing baths have no place here.

use super::{
    fact::{Fact, Source, Sure},
    fibres::Fibre,
    sources::{HAUSEN, HSE, PATCH_TEST, PRACTICE},
};

/// A class of dye or other colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Class {
    /// Acid dye.
    Acid,
    /// Disperse dye.
    Disperse,
    /// Cationic (basic) dye.
    Cationic,
    /// Direct, semi-permanent dye, as for hair.
    Direct,
    /// Reactive dye.
    Reactive,
    /// Spirit-based ink or marker.
    Ink,
    /// Pigment in a spray.
    PigmentSpray,
    /// Oxidation colour, as for hair.
    Oxidation,
}

impl Class {
    /// All of them.
    pub const ALL: [Class; 8] = [
        Class::Acid,
        Class::Disperse,
        Class::Cationic,
        Class::Direct,
        Class::Reactive,
        Class::Ink,
        Class::PigmentSpray,
        Class::Oxidation,
    ];

    /// Its name in files.
    pub fn name(self) -> &'static str {
        match self {
            Class::Acid => "acid",
            Class::Disperse => "disperse",
            Class::Cationic => "cationic",
            Class::Direct => "direct",
            Class::Reactive => "reactive",
            Class::Ink => "ink",
            Class::PigmentSpray => "pigment_spray",
            Class::Oxidation => "oxidation",
        }
    }

    /// Reads a name.
    pub fn read(text: &str) -> Option<Class> {
        Class::ALL.into_iter().find(|class| class.name() == text)
    }

    /// Key of its label.
    pub fn label(self) -> &'static str {
        match self {
            Class::Acid => "choice.acid",
            Class::Disperse => "choice.disperse",
            Class::Cationic => "choice.cationic",
            Class::Direct => "choice.direct",
            Class::Reactive => "choice.reactive",
            Class::Ink => "choice.ink",
            Class::PigmentSpray => "choice.pigment_spray",
            Class::Oxidation => "choice.oxidation",
        }
    }

    /// Key of the caution that stands beside a step with it, and where that comes from.
    pub fn hazard(self) -> (&'static str, &'static Source) {
        match self {
            Class::Acid | Class::Cationic => ("dye.hazard_powder", &HSE),
            Class::Disperse => ("dye.hazard_disperse", &HAUSEN),
            Class::Reactive => ("dye.hazard_reactive", &HSE),
            Class::Direct | Class::Oxidation => ("dye.hazard_hair", &PATCH_TEST),
            Class::Ink => ("dye.hazard_ink", &PRACTICE),
            Class::PigmentSpray => ("dye.hazard_spray", &PRACTICE),
        }
    }
}

/// How well a fibre takes a class.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Takes {
    /// Takes it.
    Takes,
    /// Pale only: test a lock.
    Weak,
    /// Lies on the surface and rubs off.
    Surface,
    /// Works, but is recorded here and not planned.
    RecordedOnly,
    /// Refuses it.
    Refuses,
    /// Nobody knows: test a lock.
    Untested,
}

impl Takes {
    /// Key of the words for it.
    pub fn label(self) -> &'static str {
        match self {
            Takes::Takes => "takes.takes",
            Takes::Weak => "takes.weak",
            Takes::Surface => "takes.surface",
            Takes::RecordedOnly => "takes.recorded_only",
            Takes::Refuses => "takes.refuses",
            Takes::Untested => "takes.untested",
        }
    }
}

/// What a bath must be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bath {
    /// Its temperature: the lowest that works, likely, and the highest usual.
    pub temperature: Fact,
    /// How long it is held there.
    pub time: Fact,
    /// Key of the note on its acidity.
    pub ph: &'static str,
    /// For a full depth, where that needs more than this bath: not for a kitchen.
    pub full_depth: Option<Fact>,
}

/// How a fibre takes a class of colour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Uptake {
    /// How well.
    pub takes: Takes,
    /// The bath, where it is dyed in one.
    pub bath: Option<Bath>,
    /// Where from.
    pub source: &'static Source,
    /// How sure.
    pub sure: Sure,
}

/// How a fibre takes a class.
pub fn uptake(fibre: &Fibre, class: Class) -> &'static Uptake {
    &fibre.dyes[class as usize]
}
