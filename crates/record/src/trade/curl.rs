//! Rods, winding and how far a set opens again.
//!
//! What it is: what to assume until this bench has its own results. What it is not: geometry (see the `plan` room).

use measure::unit::Unit::{Centimetre, Millimetre, Percent, Times};

use super::{
    fact::{Fact, Sure, fact},
    fibres::Fibre,
    heat::Medium,
    sources::{JUDGED, PRACTICE, STYLING_TEXT},
};

/// Usual rods and rollers, mm: the smallest five are perm rods of 3/16 to 7/16 in, the rest rollers. Common practice, no source.
pub const RODS: &[f64] =
    &[4.8, 6.4, 7.9, 9.5, 11.1, 13.0, 15.0, 18.0, 21.0, 25.0, 28.0, 32.0, 36.0, 40.0, 44.0, 50.0, 65.0];

/// Length of a roller: how wide a section it takes.
pub const ROLLER: Fact = fact(60.0, 63.0, 65.0, Millimetre, &PRACTICE, Sure::Low);
/// Side of the square section for a spiral, a pinned curl or a lock that is not wound.
pub const STRAND: Fact = fact(15.0, 20.0, 25.0, Millimetre, &JUDGED, Sure::Low);

/// How much wider than it was wound a synthetic's heat set comes out.
const OPENS_SYNTHETIC: Fact = fact(5.0, 10.0, 20.0, Percent, &PRACTICE, Sure::Low);
/// The same of hair that was set wet.
const OPENS_HAIR_WET: Fact = fact(20.0, 30.0, 40.0, Percent, &PRACTICE, Sure::Low);
/// The same of hair under an iron.
const OPENS_HAIR_DRY: Fact = fact(10.0, 20.0, 35.0, Percent, &JUDGED, Sure::Low);

/// How much wider a curl comes out than it was wound.
pub fn opens(fibre: &Fibre, medium: Medium) -> &'static Fact {
    match (fibre.name, medium) {
        ("human_hair", Medium::Iron) => &OPENS_HAIR_DRY,
        ("human_hair", _) => &OPENS_HAIR_WET,
        _ => &OPENS_SYNTHETIC,
    }
}

/// Turns round a rod that a wave takes, and a curl.
pub const TURNS_WAVE: Fact = fact(1.5, 1.5, 1.5, Times, &STYLING_TEXT, Sure::Medium);
/// Turns round a rod that a curl takes.
pub const TURNS_CURL: Fact = fact(2.5, 2.5, 2.5, Times, &STYLING_TEXT, Sure::Medium);

/// Finished curl where nobody said how wide.
pub const CURL: Fact = fact(18.0, 25.0, 40.0, Millimetre, &JUDGED, Sure::Low);
/// From turn to turn of a curl, in its diameters, where nobody said.
///
/// Between a closed ringlet (half a diameter, which hangs a sixth) and a shop's chart of curls that lose 5 to 8 cm.
pub const PITCH: Fact = fact(0.5, 2.0, 4.0, Times, &JUDGED, Sure::Low);
/// From crest to crest of a wave, in the diameters of its bends, where nobody said.
pub const WAVE: Fact = fact(1.2, 1.5, 1.9, Times, &JUDGED, Sure::Low);

/// Left on when cutting before a set, to be trimmed after it.
pub const TRIM: Fact = fact(1.0, 2.0, 5.0, Centimetre, &PRACTICE, Sure::Low);
