//! Hatching: closer where there is more hair, and never outside its area.

use measure::quantity::{ArealNumberDensity, units::per_square_centimeter};
use proptest::prelude::*;
use sheet::drawing::hatch::{Slant, hatch, spacing};

fn full(strands: f64) -> ArealNumberDensity {
    ArealNumberDensity::new::<per_square_centimeter>(strands)
}

#[test]
fn no_hair_no_lines() {
    assert_eq!(spacing(full(0.0)), None);
    assert!(hatch(&[vec![[0.0, 0.0], [10.0, 0.0], [10.0, 10.0]]], Slant(45.0), 0.0).is_empty());
    assert!(hatch(&[vec![[0.0, 0.0], [10.0, 0.0], [10.0, f64::NAN]]], Slant(45.0), f64::NAN).is_empty());
    assert!(hatch(&[], Slant(45.0), 1.0).is_empty());
}

proptest! {
    #[test]
    fn more_hair_never_lies_wider(a in 0.1..800.0_f64, b in 0.1..800.0_f64) {
        let (low, high) = (a.min(b), a.max(b));
        prop_assert!(spacing(full(low)) >= spacing(full(high)));
        if high < 240.0 && low > 25.0 && high - low > 1.0 {
            prop_assert!(spacing(full(low)) > spacing(full(high)));
        }
    }

    /// Lines `d` apart over an area have a length of area over `d`, whatever their slant (Cavalieri); the ring's area is known.
    #[test]
    fn lines_fill_the_area_and_not_its_hole(slant in -90.0..90.0_f64, spacing in 0.8..3.0_f64) {
        let circle = |radius: f64| -> Vec<[f64; 2]> {
            (0..120).map(|i| f64::from(i) * core::f64::consts::TAU / 120.0)
                .map(|turn| [60.0 + radius * libm::cos(turn), -20.0 + radius * libm::sin(turn)]).collect()
        };
        let lines = hatch(&[circle(50.0), circle(20.0)], Slant(slant), spacing);
        let length: f64 = lines.iter().map(|l| libm::hypot(l[1][0] - l[0][0], l[1][1] - l[0][1])).sum();
        let area = core::f64::consts::PI * (50.0 * 50.0 - 20.0 * 20.0);
        prop_assert!((length * spacing / area - 1.0).abs() < 0.03, "{}", length * spacing / area);
        for line in &lines {
            for end in line {
                let out = libm::hypot(end[0] - 60.0, end[1] + 20.0);
                prop_assert!((19.9..50.01).contains(&out), "{out}");
            }
        }
    }
}
