//! The cap constructions, a row each: what each zone is made of.
//!
//! What it is: what to assume of a ready-made base. What it is not: the base in hand, which may be measured.

use measure::unit::Unit::{Gram, Millimetre, PerSquareCentimetre};

use super::{
    fact::{Fact, Sure, fact},
    sources::PRACTICE,
};
use crate::wig::zone::Zone;

/// What carries the hair in a zone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Ground {
    /// Rows of weft, this far apart.
    Wefted {
        /// From row to row.
        spacing: Fact,
    },
    /// Hair knotted into lace or net, this dense.
    Knotted {
        /// Strands.
        fullness: Fact,
    },
    /// Hair set in a skin or closed top, this dense: no weft can be sewn through it.
    Closed {
        /// Strands.
        fullness: Fact,
    },
}

/// A cap construction.
#[derive(Debug, PartialEq)]
pub struct Cap {
    /// Its name in files; its label is the sentence `cap.<name>`.
    pub name: &'static str,
    /// The cap alone, without hair.
    pub weight: Fact,
    /// What each zone is, in the order of [`Zone::ALL`].
    pub grounds: [Ground; 8],
}

impl Cap {
    /// What a zone is made of.
    pub fn ground(&self, zone: Zone) -> Ground {
        self.grounds[zone as usize]
    }

    /// Whether any zone takes weft.
    pub fn takes_weft(&self) -> bool {
        self.grounds.iter().any(|ground| matches!(ground, Ground::Wefted { .. }))
    }
}

const fn wefted(low: f64, likely: f64, high: f64) -> Ground {
    Ground::Wefted { spacing: fact(low, likely, high, Millimetre, &PRACTICE, Sure::Low) }
}

const fn knotted(low: f64, likely: f64, high: f64) -> Ground {
    Ground::Knotted { fullness: fact(low, likely, high, PerSquareCentimetre, &PRACTICE, Sure::Low) }
}

const fn closed(low: f64, likely: f64, high: f64) -> Ground {
    Ground::Closed { fullness: fact(low, likely, high, PerSquareCentimetre, &PRACTICE, Sure::Low) }
}

const FRONT: Ground = wefted(6.0, 8.0, 12.0);
const PART: Ground = wefted(4.0, 6.0, 8.0);
const TOP: Ground = wefted(6.0, 9.0, 12.0);
const CROWN: Ground = wefted(5.0, 8.0, 10.0);
const SIDE: Ground = wefted(9.0, 12.0, 15.0);
const BACK: Ground = wefted(9.0, 12.0, 15.0);
const LACE: Ground = knotted(40.0, 55.0, 80.0);
const SKIN: Ground = closed(80.0, 110.0, 160.0);
const NET: Ground = knotted(60.0, 90.0, 130.0);

/// All constructions.
pub const CAPS: &[Cap] = &[
    Cap {
        name: "open_wefted",
        weight: fact(25.0, 35.0, 50.0, Gram, &PRACTICE, Sure::Low),
        grounds: [FRONT, PART, TOP, CROWN, SIDE, SIDE, BACK, BACK],
    },
    Cap {
        name: "wefted_lace_front",
        weight: fact(25.0, 35.0, 50.0, Gram, &PRACTICE, Sure::Low),
        grounds: [LACE, PART, TOP, CROWN, SIDE, SIDE, BACK, BACK],
    },
    Cap {
        name: "wefted_closed_top",
        weight: fact(30.0, 45.0, 65.0, Gram, &PRACTICE, Sure::Low),
        grounds: [FRONT, SKIN, SKIN, CROWN, SIDE, SIDE, BACK, BACK],
    },
    Cap {
        name: "fully_knotted",
        weight: fact(15.0, 25.0, 40.0, Gram, &PRACTICE, Sure::Low),
        grounds: [LACE, NET, NET, NET, NET, NET, NET, NET],
    },
];

/// The names, in table order, for choices.
pub const NAMES: &[&str] = &["open_wefted", "wefted_lace_front", "wefted_closed_top", "fully_knotted"];

/// The row of a name; an unheard-of one is taken as open wefted.
pub fn cap(name: &str) -> &'static Cap {
    CAPS.iter().find(|cap| cap.name == name).unwrap_or(&CAPS[0])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_the_table() {
        let names: Vec<&str> = CAPS.iter().map(|cap| cap.name).collect();
        assert_eq!(names, NAMES);
        assert!(!cap("fully_knotted").takes_weft() && cap("open_wefted").takes_weft());
    }
}
