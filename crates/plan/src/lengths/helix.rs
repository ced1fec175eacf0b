//! A lock wound as a helix.
//!
//! What it is: identities of the helix, its diameter taken to the middle of the lock. What it is not: how a set opens.

use core::f64::consts::PI;

use measure::quantity::{Length, units::meter};

/// A helix.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Helix {
    diameter: f64,
    pitch: f64,
}

impl Helix {
    /// Of a diameter and from turn to turn; nothing unless both are above zero.
    pub fn new(diameter: Length, pitch: Length) -> Option<Helix> {
        let (diameter, pitch) = (diameter.get::<meter>(), pitch.get::<meter>());
        let above = |figure: f64| figure.is_finite() && figure > 0.0;
        (above(diameter) && above(pitch)).then_some(Helix { diameter, pitch })
    }

    /// Lock in one turn.
    pub fn turn(&self) -> Length {
        Length::new::<meter>(libm::hypot(PI * self.diameter, self.pitch))
    }

    /// Turns of a straight length.
    pub fn turns(&self, straight: Length) -> f64 {
        straight.get::<meter>() / self.turn().get::<meter>()
    }

    /// How long a straight length hangs.
    pub fn hangs(&self, straight: Length) -> Length {
        straight * self.share()
    }

    /// The straight length that hangs so long.
    pub fn straight(&self, hangs: Length) -> Length {
        hangs / self.share()
    }

    /// Hanging over straight length: the sine of the pitch angle.
    pub fn share(&self) -> f64 {
        self.pitch / self.turn().get::<meter>()
    }

    /// Curvature, 1/m.
    pub fn curvature(&self) -> f64 {
        let (r, c) = (self.diameter / 2.0, self.pitch / (2.0 * PI));
        r / (r * r + c * c)
    }

    /// Torsion, 1/m.
    pub fn torsion(&self) -> f64 {
        let (r, c) = (self.diameter / 2.0, self.pitch / (2.0 * PI));
        c / (r * r + c * c)
    }
}

/// Curl retention, as a share: (straight − hanging now) / (straight − hanging at first). The standard definition of
/// cosmetic testing, recalled. Nothing where the curl hung as long as it is straight.
pub fn retention(straight: Length, at_first: Length, now: Length) -> Option<f64> {
    let gained = straight - at_first;
    (gained.get::<meter>() > 0.0).then(|| (straight - now).get::<meter>() / gained.get::<meter>())
}

/// The share of a bend that a set kept: curvature of the curl over that of the rod (Wickett's definition).
pub fn bending_set(curl: &Helix, rod: &Helix) -> f64 {
    curl.curvature() / rod.curvature()
}
