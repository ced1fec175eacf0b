//! Solvents of the bench: what each does to a fibre, and at what it catches fire.
//!
//! What it is: a table of harm. What it is not: a safety data sheet: read the one of the bottle in hand.

use measure::unit::Unit::Celsius;

use super::{
    fact::{Fact, Source, Sure, fact},
    fibres::Fibre,
    sources::{FLASH, HANDBOOKS, JUDGED, MUSEUM_MODACRYLIC},
};

/// A solvent.
#[derive(Debug, PartialEq)]
pub struct Solvent {
    /// Its name in files.
    pub name: &'static str,
    /// Key of its label.
    pub label: &'static str,
    /// Flash point: its vapour catches fire from here.
    pub flash: Fact,
    /// Fibres it harms.
    pub harms: &'static [Harm],
}

/// What a solvent does to a fibre.
#[derive(Debug, PartialEq)]
pub struct Harm {
    /// The fibre, by name.
    pub fibre: &'static str,
    /// Key of what happens.
    pub does: &'static str,
    /// Where from.
    pub source: &'static Source,
    /// How sure.
    pub sure: Sure,
}

const fn flash(at: f64) -> Fact {
    fact(at, at, at, Celsius, &FLASH, Sure::High)
}

const fn harm(fibre: &'static str, does: &'static str, source: &'static Source, sure: Sure) -> Harm {
    Harm { fibre, does, source, sure }
}

const DISSOLVES: &str = "solvent.dissolves";
const SWELLS: &str = "solvent.swells";
const DRIES_OUT: &str = "solvent.dries_out";
/// What nobody knows may be modacrylic.
const MAY: &str = "solvent.may_dissolve";

/// All of them.
pub const SOLVENTS: &[Solvent] = &[
    Solvent {
        name: "acetone",
        label: "solvent.acetone",
        flash: flash(-20.0),
        harms: &[
            harm("modacrylic", DISSOLVES, &MUSEUM_MODACRYLIC, Sure::High),
            harm("unknown", MAY, &JUDGED, Sure::Medium),
            harm("chlorofibre", SWELLS, &HANDBOOKS, Sure::Medium),
            harm("vinylidene", SWELLS, &JUDGED, Sure::Low),
            harm("human_hair", DRIES_OUT, &JUDGED, Sure::Low),
        ],
    },
    Solvent {
        name: "ethyl_acetate",
        label: "solvent.ethyl_acetate",
        flash: flash(-4.0),
        harms: &[
            harm("modacrylic", SWELLS, &JUDGED, Sure::Low),
            harm("unknown", MAY, &JUDGED, Sure::Low),
            harm("chlorofibre", SWELLS, &JUDGED, Sure::Low),
            harm("vinylidene", SWELLS, &JUDGED, Sure::Low),
        ],
    },
    Solvent {
        name: "isopropanol",
        label: "solvent.isopropanol",
        flash: flash(12.0),
        harms: &[harm("human_hair", DRIES_OUT, &JUDGED, Sure::Low)],
    },
    Solvent {
        name: "ethanol",
        label: "solvent.ethanol",
        flash: flash(13.0),
        harms: &[harm("human_hair", DRIES_OUT, &JUDGED, Sure::Low)],
    },
];

/// The solvent of a name.
pub fn solvent(name: &str) -> Option<&'static Solvent> {
    SOLVENTS.iter().find(|solvent| solvent.name == name)
}

/// What a solvent does to a fibre, where harm is known; silence is no promise.
pub fn harm_to(fibre: &Fibre, solvent: &'static Solvent) -> Option<&'static Harm> {
    solvent.harms.iter().find(|harm| harm.fibre == fibre.name)
}

/// Every solvent that harms a fibre, most flammable first.
pub fn harmful_to(fibre: &Fibre) -> impl Iterator<Item = (&'static Solvent, &'static Harm)> {
    SOLVENTS.iter().filter_map(move |solvent| harm_to(fibre, solvent).map(|harm| (solvent, harm)))
}
