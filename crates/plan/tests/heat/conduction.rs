//! Conduction: tables, worked examples, the stepped solver against the series.

use plan::heat::{
    bundle::bundle,
    series::{Body, coefficient, left, roots},
    soak::{Form, Inside, Layer, Outside, Soak},
};
use proptest::prelude::*;
use record::trade::soaking::stuff_of;

use crate::{near, rows};

#[test]
fn tables_of_the_first_term() {
    for row in rows(include_str!("../cases/heat/cylinder_table.txt")) {
        let root = roots(Body::Cylinder, row[0], 1)[0];
        near(&format!("root at Bi {}", row[0]), root, row[1], 1e-8);
        near(&format!("coefficient at Bi {}", row[0]), coefficient(Body::Cylinder, root), row[2], 1e-8);
    }
    for row in rows(include_str!("../cases/heat/wall_table.txt")) {
        let root = roots(Body::Wall, row[0], 1)[0];
        near(&format!("wall root at Bi {}", row[0]), root, row[1], 6e-5);
        near(&format!("wall coefficient at Bi {}", row[0]), coefficient(Body::Wall, root), row[2], 6e-5);
    }
}

#[test]
fn series_of_the_cylinder() {
    for row in rows(include_str!("../cases/heat/cylinder_series.txt")) {
        let got = left(Body::Cylinder, row[0], row[1]).unwrap();
        for (got, expected) in [(got.middle, row[2]), (got.surface, row[3]), (got.mean, row[4])] {
            near(&format!("Bi {} Fo {}", row[0], row[1]), got, expected, 6e-8);
        }
    }
}

/// Çengel and Ghajar, Heat and Mass Transfer, 5th ed., problem 4-60 (read in a copy of the solutions): a steel cylinder of
/// 0.35 m, k 14.9, alpha 3.95e-6, h 60, from 400 °C in 150 °C, after 20 min: Bi 0.705, root 1.0904, coefficient 1.1548; the
/// book rounds 390.2 to 390 °C. Its Fourier number of 0.155 is below 0.2, so the full series gives 385.7 instead.
#[test]
fn worked_example_steel_shaft() {
    let radius = 0.175;
    let (biot, fourier) = (60.0 * radius / 14.9, 3.95e-6 * 1200.0 / (radius * radius));
    near("Bi", biot, 0.705, 5e-4);
    let root = roots(Body::Cylinder, biot, 1)[0];
    near("root", root, 1.0904, 1e-4);
    let one = coefficient(Body::Cylinder, root) * libm::exp(-root * root * fourier);
    near("one term", 150.0 + 250.0 * one, 390.0, 0.5);
    let full = left(Body::Cylinder, biot, fourier).unwrap();
    near("series", 150.0 + 250.0 * full.middle, 385.73, 0.01);
    // The book's 0.1761 off its rounded table; one term without rounding 0.1751.
    near("heat given up", 1.0 - one * 2.0 * libm::j1(root) / root, 0.1751, 1e-4);
    near("heat given up, series", 1.0 - full.mean, 0.1745, 1e-4);
}

/// Çengel, the shaft of 0.2 m of stainless steel (k 14.9, alpha 3.95e-6), recalled: h 80, from 600 °C in 200 °C, after 45 min:
/// 364 °C in the middle, 0.636 of its heat given up off the chart (0.6358 by the series).
#[test]
fn worked_example_shaft() {
    let radius = 0.1;
    let got = left(Body::Cylinder, 80.0 * radius / 14.9, 3.95e-6 * 2700.0 / (radius * radius)).unwrap();
    near("middle", 200.0 + 400.0 * got.middle, 364.3, 0.05);
    near("heat given up", 1.0 - got.mean, 0.636, 1e-3);
}

fn stepped(body: Body, biot: f64, fourier: f64, cells: usize, steps: usize) -> [f64; 3] {
    let form = if body == Body::Cylinder { Form::Round } else { Form::Flat };
    let mut soak = Soak::new(Layer::new(form, 0.0, 1.0, 1.0, 1.0).unwrap(), Inside::Closed, 1.0, cells);
    let outside = Outside::held(biot, 0.0);
    (0..steps).for_each(|_| soak.step(fourier / steps as f64, &outside));
    [soak.inner(), soak.outer(&outside), soak.mean()]
}

fn error(body: Body, biot: f64, fourier: f64, cells: usize, steps: usize) -> f64 {
    let exact = left(body, biot, fourier).unwrap();
    let got = stepped(body, biot, fourier, cells, steps);
    [exact.middle, exact.surface, exact.mean].iter().zip(got).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max)
}

#[test]
fn the_solver_meets_the_series_and_is_of_second_order() {
    for body in [Body::Cylinder, Body::Wall] {
        for (biot, fourier) in [(0.5, 0.5), (1.0, 1.0), (5.0, 0.2), (50.0, 0.5)] {
            let errors: Vec<f64> = [20, 40, 80].iter().map(|n| error(body, biot, fourier, *n, 4 * n)).collect();
            assert!(errors[1] <= 3e-4, "{body:?} Bi {biot} Fo {fourier}: {errors:?}");
            let order = libm::log2(errors[0] / errors[2]) / 2.0;
            assert!((1.8..2.4).contains(&order), "{body:?} Bi {biot} Fo {fourier}: order {order}, {errors:?}");
        }
    }
}

#[test]
fn a_layer_round_a_hot_barrel() {
    let layer = Layer::new(Form::Round, 1.0, 0.75, 1.0, 1.0).unwrap();
    for row in rows(include_str!("../cases/heat/annulus.txt")) {
        // Contact so good that the face is held.
        let mut soak = Soak::new(layer, Inside::Held { transfer: 1e9, heat: 1.0 }, 0.0, 81);
        let outside = Outside::held(0.6, 0.0);
        (0..800).for_each(|_| soak.step(row[0] / 800.0, &outside));
        near(&format!("half-way at Fo {}", row[0]), soak.cells()[40], row[1], 6e-5);
        near(&format!("surface at Fo {}", row[0]), soak.outer(&outside), row[2], 3e-5);
        near(&format!("inner at Fo {}", row[0]), soak.inner(), 1.0, 1e-6);
    }
    // In the end the profile is the logarithm's: T = 1 - ln r / (ln b + k / (h b)).
    let mut soak = Soak::new(layer, Inside::Held { transfer: 1e9, heat: 1.0 }, 0.0, 40);
    let outside = Outside::held(0.6, 0.0);
    (0..400).for_each(|_| soak.step(0.1, &outside));
    let b = 1.75_f64;
    near("steady surface", soak.outer(&outside), 1.0 - libm::log(b) / (libm::log(b) + 1.0 / (0.6 * b)), 1e-4);
}

/// A rod with much heat and a thin layer: one lump, so that the difference falls as exp(-t / time constant).
#[test]
fn a_rod_keeps_its_heat_as_a_lump_does() {
    let layer = Layer::new(Form::Flat, 0.0, 1e-4, 10.0, 1e3).unwrap();
    let mut soak = Soak::new(layer, Inside::Rod { transfer: 1e6, holds: 2430.0 }, 80.0, 10);
    let outside = Outside::held(8.0, 20.0);
    (0..1000).for_each(|_| soak.step(0.6, &outside));
    let constant = (2430.0 + 1e3 * 1e-4) / 8.0;
    near("after ten minutes", soak.mean(), 20.0 + 60.0 * libm::exp(-600.0 / constant), 0.01);
}

#[test]
fn bundles_as_computed_elsewhere() {
    for row in rows(include_str!("../cases/heat/bundle.txt")) {
        let (dry, wet) = (bundle(stuff_of("modacrylic"), row[0], false), bundle(stuff_of("modacrylic"), row[0], true));
        near("dry", dry.conductivity, row[1], 6e-4);
        near("wet", wet.conductivity, row[2], 6e-3);
        near("dry spreads", 1e6 * dry.conductivity / dry.holds, row[3], 6e-3);
        near("wet spreads", 1e6 * wet.conductivity / wet.holds, row[4], 1.2e-2);
    }
    // Lecture notes after Morton and Hearle: a pad of wool of 0.5 g/cm³ conducts 0.054 W/(m K), by fibre lying all ways.
    let wool = bundle(stuff_of("human_hair"), 0.5 / 1.32, false).conductivity;
    near("a pad of wool", wool, 0.054, 0.007);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Nothing gets hotter than the hottest or cooler than the coolest there is, by more than rounding, and more time is never cooler in
    /// the middle.
    #[test]
    fn heat_stays_between_what_there_is(
        thickness in 1e-4..3e-2f64, inner in 0.0..2e-2f64, conducts in 0.03..0.7f64, holds in 5e5..4e6f64,
        transfer in 5.0..3000.0f64, kind in 0..3,
    ) {
        let layer = Layer::new(Form::Round, inner, thickness, conducts, holds).unwrap();
        let inside = match kind {
            0 => Inside::Closed,
            1 => Inside::Rod { transfer: 300.0, holds: 2400.0 },
            _ => Inside::Held { transfer: 300.0, heat: 90.0 },
        };
        let mut soak = Soak::new(layer, inside, 20.0, 40);
        let outside = Outside::held(transfer, 90.0);
        let mut before = 20.0;
        for _ in 0..400 {
            // As the planner steps.
            soak.step((0.03 * soak.time()).max(0.02), &outside);
            let (low, high) = soak.range(&outside);
            prop_assert!((20.0 - 1.5..=90.0 + 1e-6).contains(&low) && high <= 90.0 + 1.5, "{low} {high}");
            prop_assert!(soak.mean() >= before - 1e-6, "{} after {before}", soak.mean());
            before = soak.mean();
        }
    }
}
