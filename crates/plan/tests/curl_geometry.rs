//! Helix, wave and wound lock against values computed elsewhere; cases in `tests/cases/lengths`.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a check fails by panicking")]

use core::f64::consts::PI;

use measure::quantity::{Length, units::millimeter};
use plan::lengths::{
    helix::{Helix, bending_set, retention},
    roller::Wound,
    wave::Wave,
};
use proptest::prelude::*;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn near(what: &str, got: f64, expected: f64, tolerance: f64) {
    assert!((got - expected).abs() <= tolerance, "{what}: got {got}, expected {expected} within {tolerance}");
}

#[test]
fn helices_computed_elsewhere() {
    for line in include_str!("cases/lengths/helix.txt").lines().filter(|line| !line.starts_with('#')) {
        let row: Vec<f64> = line.split(';').map(|field| field.trim().parse().unwrap()).collect();
        let helix = Helix::new(mm(row[1]), mm(row[2])).unwrap();
        near(line, helix.turns(mm(row[0])), row[3], 1e-9 * row[3]);
        near(line, helix.hangs(mm(row[0])).get::<millimeter>(), row[4], 1e-9 * row[4]);
    }
}

/// A chord and its arc: half circles hang 2/π of their length; a wave so flat that it is straight hangs all of it.
#[test]
fn waves_of_arcs() {
    near("half circles", Wave::new(mm(20.0), mm(40.0)).unwrap().share(), 2.0 / PI, 1e-12);
    near("flat", Wave::new(mm(1000.0), mm(10.0)).unwrap().share(), 1.0, 1e-5);
    // A chord of 1 in a circle of diameter 2 is a twelfth of a turn twice: arc π/3.
    near("sixth of a circle", Wave::new(mm(2.0), mm(2.0)).unwrap().share(), 3.0 / PI, 1e-12);
    assert_eq!(Wave::new(mm(10.0), mm(21.0)), None, "bends do not reach");
    assert_eq!(Helix::new(mm(0.0), mm(1.0)), None);
}

/// The standard definition of cosmetic testing, recalled: a curl of 20 cm of hair that hung 5 and now hangs 8 kept 80 %.
#[test]
fn curl_retention() {
    near("kept", retention(mm(200.0), mm(50.0), mm(80.0)).unwrap(), 0.8, 1e-12);
    assert_eq!(retention(mm(50.0), mm(50.0), mm(50.0)), None);
    // A set that opened from 20 to 25 mm without stretching kept 80 % of its bend.
    let (rod, curl) = (Helix::new(mm(20.0), mm(0.001)).unwrap(), Helix::new(mm(25.0), mm(0.001)).unwrap());
    near("bend kept", bending_set(&curl, &rod), 0.8, 1e-6);
}

proptest! {
    #[test]
    fn identities_of_the_helix(d in 1.0..150.0f64, p in 0.1..500.0f64, l in 10.0..2000.0f64) {
        let helix = Helix::new(mm(d), mm(p)).unwrap();
        let (n, h) = (helix.turns(mm(l)), helix.hangs(mm(l)).get::<millimeter>());
        prop_assert!((n * PI * d * n * PI * d + h * h - l * l).abs() < 1e-9 * l * l);
        prop_assert!((helix.straight(mm(h)).get::<millimeter>() - l).abs() < 1e-9 * l);
        let turn = helix.turn().get::<millimeter>() / 1000.0;
        let bend = helix.curvature() * helix.curvature() + helix.torsion() * helix.torsion();
        prop_assert!((bend * turn * turn / (4.0 * PI * PI) - 1.0).abs() < 1e-9);
    }

    #[test]
    fn a_wound_lock_uses_up_its_length(d in 2.0..80.0f64, t in 0.0..3.0f64, l in 20.0..1500.0f64) {
        let wound = Wound::new(mm(d), mm(t), mm(l)).unwrap();
        let n = wound.turns();
        prop_assert!((PI * n * (d + n * t) / l - 1.0).abs() < 1e-9);
        prop_assert!((wound.outer() - wound.mean() - wound.thickness()).get::<millimeter>().abs() < 1e-9);
        let back = Wound::rod_for(wound.mean(), mm(t), mm(l)).unwrap().get::<millimeter>();
        prop_assert!((back - d).abs() < 1e-6 * d);
    }

    #[test]
    fn a_wave_is_never_longer_than_its_lock(d in 1.0..150.0f64, share in 0.01..2.0f64) {
        let wave = Wave::new(mm(d), mm(d * share)).unwrap();
        prop_assert!(wave.share() <= 1.0 + 1e-12 && wave.share() >= 2.0 / PI - 1e-12);
    }
}
