//! The fibres, a row each, by their generic names (ISO 2076).
//!
//! What it is: a row per fibre, with its fineness and where its heat and dye stand.
//! What it is not: the figures of heat (see [`super::heat`]) and dye (see [`super::dye`]).

use measure::unit::Unit::Decitex;

use super::{
    dye::Uptake,
    fact::{Fact, Sure, fact},
    heat::Heat,
    sources::{HAIR_DIAMETER, JP202416312, JUDGED, PRACTICE, US5083967},
    uptake, windows,
};

/// A fibre.
#[derive(Debug, PartialEq)]
pub struct Fibre {
    /// Its name in files; its label is the sentence `choice.<name>`.
    pub name: &'static str,
    /// ISO 2076 code, where it has one.
    pub code: &'static str,
    /// Linear density of one strand as wigs use it.
    pub fineness: Fact,
    /// What heat does to it.
    pub heat: &'static Heat,
    /// How it takes each class of colour, in the order of [`super::dye::Class::ALL`].
    pub dyes: &'static [Uptake; 8],
}

/// All fibres; the one nobody knows stands first.
#[rustfmt::skip]
pub const FIBRES: &[Fibre] = &[
    Fibre { name: "unknown", code: "", fineness: fact(35.0, 50.0, 80.0, Decitex, &JUDGED, Sure::Low), heat: &windows::UNKNOWN, dyes: &uptake::UNKNOWN },
    Fibre { name: "modacrylic", code: "MAC", fineness: fact(40.0, 50.0, 70.0, Decitex, &US5083967, Sure::Low), heat: &windows::MODACRYLIC, dyes: &uptake::MODACRYLIC },
    Fibre { name: "polyester", code: "PES", fineness: fact(40.0, 50.0, 75.0, Decitex, &JP202416312, Sure::Low), heat: &windows::POLYESTER, dyes: &uptake::POLYESTER },
    Fibre { name: "human_hair", code: "", fineness: fact(34.0, 51.0, 77.0, Decitex, &HAIR_DIAMETER, Sure::Medium), heat: &windows::HUMAN_HAIR, dyes: &uptake::HUMAN_HAIR },
    Fibre { name: "chlorofibre", code: "CLF", fineness: fact(50.0, 60.0, 80.0, Decitex, &PRACTICE, Sure::Low), heat: &windows::CHLOROFIBRE, dyes: &uptake::CHLOROFIBRE },
    Fibre { name: "polyamide", code: "PA", fineness: fact(50.0, 60.0, 70.0, Decitex, &PRACTICE, Sure::Low), heat: &windows::POLYAMIDE, dyes: &uptake::POLYAMIDE },
    Fibre { name: "polypropylene", code: "PP", fineness: fact(40.0, 60.0, 80.0, Decitex, &JUDGED, Sure::Low), heat: &windows::POLYPROPYLENE, dyes: &uptake::POLYPROPYLENE },
    Fibre { name: "vinylidene", code: "", fineness: fact(50.0, 70.0, 90.0, Decitex, &JUDGED, Sure::Low), heat: &windows::VINYLIDENE, dyes: &uptake::VINYLIDENE },
];

/// The names, in table order, for choices.
pub const NAMES: &[&str] =
    &["unknown", "modacrylic", "polyester", "human_hair", "chlorofibre", "polyamide", "polypropylene", "vinylidene"];

/// The row of a name; an unheard-of name is an unknown fibre.
pub fn fibre(name: &str) -> &'static Fibre {
    FIBRES.iter().find(|fibre| fibre.name == name).unwrap_or(&FIBRES[0])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_the_table() {
        let names: Vec<&str> = FIBRES.iter().map(|fibre| fibre.name).collect();
        assert_eq!(names, NAMES);
        assert!(
            FIBRES
                .iter()
                .all(|row| row.fineness.low <= row.fineness.likely && row.fineness.likely <= row.fineness.high)
        );
    }
}
