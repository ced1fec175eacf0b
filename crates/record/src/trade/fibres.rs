//! The fibres, a row each, by their generic names (ISO 2076).
//!
//! What it is: fineness and density of wig fibre. What it is not: heat and dye, which come with their planners.

use measure::unit::Unit::Decitex;

use super::{
    fact::{Fact, Sure, fact},
    sources::{HAIR_DIAMETER, JP202416312, JUDGED, PRACTICE, US5083967},
};

/// A fibre.
#[derive(Debug, PartialEq)]
pub struct Fibre {
    /// Its name in files; its label is the sentence `fibre.<name>`.
    pub name: &'static str,
    /// ISO 2076 code, where it has one.
    pub code: &'static str,
    /// Linear density of one strand as wigs use it.
    pub fineness: Fact,
}

/// All fibres; the one nobody knows stands first.
#[rustfmt::skip]
pub const FIBRES: &[Fibre] = &[
    Fibre { name: "unknown", code: "", fineness: fact(35.0, 50.0, 80.0, Decitex, &JUDGED, Sure::Low) },
    Fibre { name: "modacrylic", code: "MAC", fineness: fact(40.0, 50.0, 70.0, Decitex, &US5083967, Sure::Low) },
    Fibre { name: "polyester", code: "PES", fineness: fact(40.0, 50.0, 75.0, Decitex, &JP202416312, Sure::Low) },
    Fibre { name: "human_hair", code: "", fineness: fact(34.0, 51.0, 77.0, Decitex, &HAIR_DIAMETER, Sure::Medium) },
    Fibre { name: "chlorofibre", code: "CLF", fineness: fact(50.0, 60.0, 80.0, Decitex, &PRACTICE, Sure::Low) },
    Fibre { name: "polyamide", code: "PA", fineness: fact(50.0, 60.0, 70.0, Decitex, &PRACTICE, Sure::Low) },
    Fibre { name: "polypropylene", code: "PP", fineness: fact(40.0, 60.0, 80.0, Decitex, &JUDGED, Sure::Low) },
    Fibre { name: "vinylidene", code: "", fineness: fact(50.0, 70.0, 90.0, Decitex, &JUDGED, Sure::Low) },
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
