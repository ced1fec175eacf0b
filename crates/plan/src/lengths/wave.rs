//! A flat wave of circular arcs that bend to and fro.
//!
//! What it is: plane geometry. What it is not: a curl (see `helix`).

use measure::quantity::{Length, units::meter};

/// A wave.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wave {
    diameter: f64,
    crest: f64,
}

impl Wave {
    /// Bends of a diameter, so long from crest to crest; nothing where such bends do not reach so far.
    pub fn new(diameter: Length, crest: Length) -> Option<Wave> {
        let (diameter, crest) = (diameter.get::<meter>(), crest.get::<meter>());
        let sound = diameter.is_finite() && crest.is_finite() && crest > 0.0 && crest <= 2.0 * diameter;
        sound.then_some(Wave { diameter, crest })
    }

    /// Hanging over straight length: chord over arc.
    pub fn share(&self) -> f64 {
        let sine = self.crest / (2.0 * self.diameter);
        sine / libm::asin(sine.min(1.0))
    }

    /// From crest to crest, as it hangs.
    pub fn pitch(&self) -> Length {
        Length::new::<meter>(self.crest)
    }

    /// Lock in one wave, crest to crest.
    pub fn turn(&self) -> Length {
        Length::new::<meter>(self.crest / self.share())
    }
}
