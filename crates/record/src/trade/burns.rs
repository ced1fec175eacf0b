//! How long skin bears heat: water, and surfaces by their material.
//!
//! What it is: the shortest times of the sources, to be careful by. What it is not: a limit of pain, a promise, or a
//! figure for children and frail skin, which burn sooner.

use super::{
    fact::Source,
    sources::{CONTACT_BURNS, SCALDS},
};

/// A temperature in °C, and the seconds skin bears it at most.
pub type Time = (f64, f64);

/// Water: second-degree burns, the shorter of published table and regression; from 65 °C at once.
pub const SCALD: &[Time] = &[
    (44.0, 21600.0),
    (45.0, 7200.0),
    (47.0, 1200.0),
    (48.0, 900.0),
    (49.0, 300.0),
    (51.0, 90.0),
    (55.0, 17.0),
    (57.0, 7.0),
    (60.0, 1.7),
    (63.0, 0.4),
    (65.0, 0.0),
];
/// Where [`SCALD`] is from.
pub const SCALD_SOURCE: &Source = &SCALDS;

/// What a hot surface is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Surface {
    /// Bare metal.
    Metal,
    /// Ceramic, glass, stone.
    Ceramic,
    /// Plastics, wood.
    Plastic,
}

/// Bare metal: one second, a minute, ten minutes, eight hours; the lower end of each range.
const METAL: &[Time] = &[(43.0, 28800.0), (48.0, 600.0), (51.0, 60.0), (65.0, 1.0), (70.0, 0.0)];
const CERAMIC: &[Time] = &[(43.0, 28800.0), (48.0, 600.0), (56.0, 60.0), (80.0, 1.0), (86.0, 0.0)];
const PLASTIC: &[Time] = &[(43.0, 28800.0), (48.0, 600.0), (60.0, 60.0), (85.0, 1.0), (93.0, 0.0)];
/// Where the contact times are from.
pub const CONTACT_SOURCE: &Source = &CONTACT_BURNS;

impl Surface {
    fn times(self) -> &'static [Time] {
        match self {
            Surface::Metal => METAL,
            Surface::Ceramic => CERAMIC,
            Surface::Plastic => PLASTIC,
        }
    }
}

/// Seconds that a touch of a surface may last; nothing below the lowest figure, where no time is published.
///
/// Between two figures the shorter time holds: nothing is interpolated.
pub fn contact(surface: Surface, celsius: f64) -> Option<f64> {
    bears(surface.times(), celsius)
}

/// Seconds that water of a temperature may touch skin.
pub fn scald(celsius: f64) -> Option<f64> {
    bears(SCALD, celsius)
}

fn bears(times: &[Time], celsius: f64) -> Option<f64> {
    let (first, _) = times.first()?;
    if celsius < *first {
        return None;
    }
    times.iter().find(|(heat, _)| celsius <= *heat).or(times.last()).map(|(_, seconds)| *seconds)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// PLoS ONE 0254790 (2021), read: ln t = 116.4 − 28.3 ln T, t in s and T in °C; the table stays at or below it, or at
    /// or below the published first figure, whichever is shorter, within the rounding of the table.
    #[allow(clippy::disallowed_methods, reason = "a test on this machine alone")]
    #[test]
    fn scald_times_are_never_above_the_regression() {
        for (celsius, seconds) in SCALD.iter().filter(|(celsius, _)| *celsius >= 49.0) {
            let regression = f64::exp(116.4 - 28.3 * f64::ln(*celsius));
            assert!(*seconds <= regression * 1.01, "{celsius}: {seconds} against {regression}");
        }
    }

    #[test]
    fn hotter_is_never_longer_and_nothing_is_made_up_below() {
        for times in [SCALD, METAL, CERAMIC, PLASTIC] {
            assert!(times.windows(2).all(|pair| pair[0].0 < pair[1].0 && pair[0].1 >= pair[1].1));
        }
        assert_eq!(scald(43.0), None);
        assert_eq!(scald(58.0), Some(1.7));
        assert_eq!(scald(99.0), Some(0.0));
        assert_eq!(contact(Surface::Metal, 150.0), Some(0.0));
        assert_eq!(contact(Surface::Plastic, 55.0), Some(60.0));
    }
}
