//! A lock wound over itself on a roller, from the points.
//!
//! What it is: L = π n (D + n t), n turns of a lock that builds up t a turn on a rod D. What it is not: a helix.

use core::f64::consts::PI;

use measure::quantity::{Length, units::meter};

/// A wound lock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wound {
    rod: f64,
    build_up: f64,
    turns: f64,
}

impl Wound {
    /// A length wound on a rod, building up so much a turn; nothing where a figure is not above zero (the build-up: below it).
    pub fn new(rod: Length, build_up: Length, length: Length) -> Option<Wound> {
        let (rod, build_up, length) = (rod.get::<meter>(), build_up.get::<meter>(), length.get::<meter>());
        let above = |figure: f64| figure.is_finite() && figure > 0.0;
        if !(above(rod) && above(length) && build_up.is_finite() && build_up >= 0.0) {
            return None;
        }
        // The stable root of t n² + D n = L / π.
        let turns = 2.0 * length / PI / (rod + libm::sqrt(rod * rod + 4.0 * build_up * length / PI));
        Some(Wound { rod, build_up, turns })
    }

    /// Turns.
    pub fn turns(&self) -> f64 {
        self.turns
    }

    /// From rod to outside.
    pub fn thickness(&self) -> Length {
        Length::new::<meter>(self.turns * self.build_up)
    }

    /// Outer diameter.
    pub fn outer(&self) -> Length {
        Length::new::<meter>(self.rod + 2.0 * self.turns * self.build_up)
    }

    /// Mean diameter of the turns.
    pub fn mean(&self) -> Length {
        Length::new::<meter>(self.rod + self.turns * self.build_up)
    }

    /// The rod on which a length winds at this mean diameter; nothing where the lock alone is thicker.
    pub fn rod_for(mean: Length, build_up: Length, length: Length) -> Option<Length> {
        let turns = length.get::<meter>() / (PI * mean.get::<meter>());
        let rod = mean - build_up * turns;
        (rod.get::<meter>() > 0.0).then_some(rod)
    }
}
