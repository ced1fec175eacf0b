//! Light in three bands, and how much of it a colour absorbs and scatters.
//!
//! What it is: eight-bit sRGB to linear light and back (by `palette`), and the Kubelka-Munk function of each band.
//! What it is not: a spectrum: two lights alike here may part under another lamp.

use libm::sqrt;
use palette::{IntoColor, Lab, LinSrgb, Oklab, Srgb, convert::IntoColorUnclamped, white_point::D65};
use record::wig::shade::Shade;

/// Reflected light, red, green, blue, each 0 to 1: linear sRGB.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Light(pub [f64; 3]);

/// What a colour absorbs against what it scatters, band by band: K/S.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Absorbs(pub [f64; 3]);

/// No band is taken darker or lighter than this: dyed fibre never is, and K/S would run away.
pub const DARKEST: f64 = 0.002;
/// See [`DARKEST`].
pub const LIGHTEST: f64 = 0.998;

impl Light {
    /// The light of a colour.
    pub fn of(shade: Shade) -> Light {
        let [red, green, blue] = shade.0;
        let light: LinSrgb<f64> = Srgb::new(red, green, blue).into_format::<f64>().into_linear();
        Light([light.red, light.green, light.blue])
    }

    /// The nearest eight-bit colour.
    pub fn shade(self) -> Shade {
        let [red, green, blue] = self.0.map(|band| band.clamp(0.0, 1.0));
        let shade: Srgb<f64> = Srgb::from_linear(LinSrgb::new(red, green, blue));
        let shade = shade.into_format::<u8>();
        Shade([shade.red, shade.green, shade.blue])
    }

    /// As CIE L*a*b* under D65.
    pub fn lab(self) -> Lab<D65, f64> {
        let [red, green, blue] = self.0;
        LinSrgb::new(red, green, blue).into_color()
    }

    /// Part of the way to another colour, in even steps to the eye (Oklab).
    #[must_use]
    pub fn towards(self, other: Light, share: f64) -> Light {
        let oklab = |light: Light| -> Oklab<f64> {
            let [red, green, blue] = light.0;
            LinSrgb::new(red, green, blue).into_color_unclamped()
        };
        let (a, b) = (oklab(self), oklab(other));
        let step = |a: f64, b: f64| a + (b - a) * share;
        let between: LinSrgb<f64> = Oklab::new(step(a.l, b.l), step(a.a, b.a), step(a.b, b.b)).into_color_unclamped();
        Light([between.red, between.green, between.blue].map(|band| band.clamp(0.0, 1.0)))
    }

    /// K/S of each band: (1 − R)² / 2R.
    pub fn absorbs(self) -> Absorbs {
        Absorbs(self.0.map(|band| {
            let band = band.clamp(DARKEST, LIGHTEST);
            (1.0 - band) * (1.0 - band) / (2.0 * band)
        }))
    }
}

impl Absorbs {
    /// The light that comes back: the inverse of [`Light::absorbs`].
    pub fn light(self) -> Light {
        Light(self.0.map(|ks| {
            let ks = ks.max(0.0);
            // 1 + K − √(K² + 2K), written so that large K loses no digits.
            1.0 / (1.0 + ks + sqrt(ks * ks + 2.0 * ks))
        }))
    }

    /// What has to be added to become another; nothing where that absorbs less.
    #[must_use]
    pub fn lacking(self, wanted: Absorbs) -> Absorbs {
        let mut lacking = Absorbs([0.0; 3]);
        for band in 0..3 {
            lacking.0[band] = (wanted.0[band] - self.0[band]).max(0.0);
        }
        lacking
    }

    /// The most absorbed in any band.
    pub fn most(self) -> f64 {
        self.0.into_iter().fold(0.0, f64::max)
    }
}
