//! Colour against outside figures, and what must always hold of it.
//!
//! Each file under `cases/colour` is a table with its source above.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that fails says so")]

mod chart;
mod model;

fn rows(text: &'static str) -> impl Iterator<Item = Vec<&'static str>> {
    let lines = text.lines().map(str::trim).filter(|line| !line.is_empty() && !line.starts_with('#'));
    lines.map(|line| line.split('|').map(str::trim).collect())
}

fn numbers(cell: &str) -> Vec<f64> {
    cell.split_whitespace().map(|one| one.parse().unwrap_or_else(|_| panic!("{one} is no number"))).collect()
}

/// Sharma, Wu and Dalal 2005: all 34 pairs, both ways round, to the four decimals they are printed with.
#[test]
fn ciede2000_of_the_published_pairs() {
    use palette::{Lab, color_difference::Ciede2000, white_point::D65};
    let mut pairs = 0;
    for row in rows(include_str!("../cases/colour/ciede2000.txt")) {
        let lab = |cell: &str| {
            let [l, a, b] = numbers(cell)[..] else { panic!("{cell}") };
            Lab::<D65, f64>::new(l, a, b)
        };
        let (a, b, wanted) = (lab(row[0]), lab(row[1]), numbers(row[2])[0]);
        for found in [a.difference(b), b.difference(a)] {
            assert!((found - wanted).abs() <= 6e-5, "{row:?}: {found}");
        }
        pairs += 1;
    }
    assert_eq!(pairs, 34);
}

/// Oklab: the four pairs of XYZ and Lab that Ottosson printed with it ("A perceptual color space for image processing",
/// 2020; recalled), to his three decimals.
#[test]
fn oklab_of_the_published_pairs() {
    use palette::{Oklab, Xyz, convert::FromColorUnclamped, white_point::D65};
    for (xyz, lab) in [
        ([0.950, 1.000, 1.089], [1.000, 0.000, 0.000]),
        ([1.0, 0.0, 0.0], [0.450, 1.236, -0.019]),
        ([0.0, 1.0, 0.0], [0.922, -0.671, 0.263]),
        ([0.0, 0.0, 1.0], [0.153, -1.415, -0.449]),
    ] {
        let found = Oklab::<f64>::from_color_unclamped(Xyz::<D65, f64>::new(xyz[0], xyz[1], xyz[2]));
        for (found, wanted) in [found.l, found.a, found.b].into_iter().zip(lab) {
            assert!((found - wanted).abs() < 6e-4, "{xyz:?}: {found} for {wanted}");
        }
    }
}
