//! The surface integral and the girth on true ellipsoids.

use super::{cases, near, number};
use plan::dome::{Mesh, Solid};

#[test]
fn ellipsoid_areas_equal_the_closed_form() {
    for case in cases(include_str!("../cases/dome/ellipsoids.txt")) {
        let [x, y, z, reach, area] = [0, 1, 2, 3, 4].map(|i| number(case[i]));
        let solid = Solid::ellipsoid(x, y, z);
        // An open rim is a polygon: it needs short sides, the surface itself does not.
        let columns = if reach < 180.0 { 720 } else { 96 };
        let got = Mesh::round_the_top(&solid, reach.to_radians(), columns, 64).area(&solid);
        near(&case.join(";"), got / area, 1.0, 2e-5);
    }
}

#[test]
fn thomsen_agrees_at_head_proportions() {
    // K. Thomsen's formula with p = 1.6075 (2004, from memory): within 1e-4 for such axes.
    let p = 1.6075;
    for (x, y, z) in [(73.0, 97.0, 88.0), (75.0, 95.0, 70.0), (78.0, 100.0, 85.0)] {
        let solid = Solid::ellipsoid(x, y, z);
        let mean = (libm::pow(x * y, p) + libm::pow(x * z, p) + libm::pow(y * z, p)) / 3.0;
        let thomsen = 4.0 * std::f64::consts::PI * libm::pow(mean, 1.0 / p);
        let got = Mesh::round_the_top(&solid, std::f64::consts::PI, 96, 64).area(&solid);
        near("Thomsen", got / thomsen, 1.0, 1e-4);
    }
}

#[test]
fn girths_equal_the_elliptic_integral() {
    // Perimeter of an ellipse by Gauss's arithmetic-geometric mean (standard mathematics, DLMF section 19.8 from memory).
    for (x, y) in [(100.0, 100.0), (75.0, 97.0), (95.0, 75.0), (60.0, 110.0)] {
        let (mut a, mut b, mut weight) = (f64::max(x, y), f64::min(x, y), 0.5);
        let mut sum = a * a;
        for _ in 0..8 {
            sum -= weight * (a * a - b * b);
            weight *= 2.0;
            let mean = 0.5 * (a + b);
            (b, a) = (libm::sqrt(a * b), mean);
        }
        let exact = 2.0 * std::f64::consts::PI * sum / a;
        let got = Solid::ellipsoid(x, y, 80.0).girth();
        near(&format!("{x} {y}"), got / exact, 1.0, 1e-8);
    }
}
