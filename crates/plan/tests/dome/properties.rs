//! What holds for every head that passes its check.

use super::mm;
use measure::quantity::{Length, units::millimeter, units::square_centimeter};
use plan::dome::{Dome, Edge, Field, HeadMeasures, Section, TapeFrom, View, Zone};
use proptest::prelude::*;

fn heads() -> impl Strategy<Value = HeadMeasures> {
    let shares = (0.55..0.72, 0.48..0.66, any::<bool>(), 0.0..1.0, 0.56..0.78, 0.16..0.32);
    (445.0..645.0, shares).prop_map(|(girth, (nape, front, tragus, top, temple, width))| {
        let share = |s: f64| Length::new::<millimeter>(girth * s);
        HeadMeasures {
            circumference: share(1.0),
            front_to_nape: share(nape),
            ear_to_ear_front: share(front),
            ear_to_ear_top: share(if tragus { 0.53 + top * 0.19 } else { 0.42 + top * 0.19 }),
            top_from: if tragus { TapeFrom::Tragus } else { TapeFrom::AboveEar },
            temple_to_temple_back: share(temple),
            nape_width: share(width),
        }
    })
}

fn area(dome: &Dome) -> f64 {
    dome.area().get::<square_centimeter>()
}

fn distance(a: [f64; 3], b: [f64; 3]) -> f64 {
    libm::sqrt((0..3).map(|i| (a[i] - b[i]) * (a[i] - b[i])).sum())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn zones_share_the_whole_and_mirror(measures in heads()) {
        let dome = Dome::fit(&measures).unwrap();
        let sum: f64 = Zone::ALL.iter().map(|z| dome.zone_area(*z).get::<square_centimeter>()).sum();
        prop_assert!((sum / area(&dome) - 1.0).abs() < 1e-4, "{sum} {}", area(&dome));
        let [left, right] = [Zone::LeftSide, Zone::RightSide].map(|z| dome.zone_area(z).get::<square_centimeter>());
        prop_assert!((left - right).abs() < 1e-5 * area(&dome), "{left} {right}");
        prop_assert!(left >= 0.0 && area(&dome) > 150.0 && area(&dome) < 1300.0);
    }

    #[test]
    fn girth_and_over_the_top_are_always_met(measures in heads()) {
        for residual in Dome::fit(&measures).unwrap().residuals() {
            prop_assert!(residual.reproduced.value.is_finite());
            if [Field::Circumference, Field::EarToEarTop].contains(&residual.field) {
                prop_assert!(residual.met(), "{residual:?}");
            }
        }
    }

    #[test]
    fn rows_add_up_mirror_and_stay_on_the_dome(measures in heads(), spacing in 6.0..30.0f64) {
        let dome = Dome::fit(&measures).unwrap();
        for section in [Section::BackAndSides, Section::Top] {
            for row in dome.rows_evenly(section, Length::new::<millimeter>(spacing)) {
                let whole: f64 = row.points.windows(2).map(|w| distance(w[0], w[1])).sum();
                prop_assert!((mm(row.length()) - whole).abs() < 1e-6);
                for pair in row.spans.windows(2) {
                    prop_assert_eq!(pair[0].points.end - 1, pair[1].points.start);
                }
                let by_zone = |z| mm(row.length_in(z));
                prop_assert!((by_zone(Zone::LeftSide) - by_zone(Zone::RightSide)).abs() < 0.01);
                for span in row.spans.iter().filter(|s| s.length.value > 1e-5) {
                    let a = row.points[span.points.start];
                    let b = row.points[span.points.start + 1];
                    let middle = [0, 1, 2].map(|i| 0.5 * (a[i] + b[i]));
                    prop_assert!(distance(a, b) < 1e-3 || dome.zone_at(middle) == span.zone);
                }
                for p in &row.points {
                    prop_assert!(p.iter().all(|c| c.is_finite()));
                    prop_assert!((dome.solid().level(*p).0 - 1.0).abs() < 0.01, "{p:?}");
                }
            }
        }
    }

    #[test]
    fn a_bigger_head_of_the_same_shape_has_a_bigger_cap(measures in heads(), more in 1.001..1.05f64) {
        let grown = HeadMeasures {
            circumference: measures.circumference * more,
            front_to_nape: measures.front_to_nape * more,
            ear_to_ear_front: measures.ear_to_ear_front * more,
            ear_to_ear_top: measures.ear_to_ear_top * more,
            top_from: measures.top_from,
            temple_to_temple_back: measures.temple_to_temple_back * more,
            nape_width: measures.nape_width * more,
        };
        prop_assume!(grown.check().is_empty());
        let [small, big] = [measures, grown].map(|m| Dome::fit(&m).unwrap());
        // Same shape: the area grows with the square, every edge with the length.
        prop_assert!((area(&big) / area(&small) / (more * more) - 1.0).abs() < 1e-6);
        let edges = mm(big.edge_length(Edge::Whole)) / mm(small.edge_length(Edge::Whole));
        prop_assert!((edges / more - 1.0).abs() < 1e-6);
    }

    #[test]
    fn a_small_change_of_a_tape_is_a_small_change_of_the_cap(measures in heads(), which in 0..6usize) {
        let step = Length::new::<millimeter>(0.1);
        let mut moved = measures;
        *[&mut moved.circumference, &mut moved.front_to_nape, &mut moved.ear_to_ear_front, &mut moved.ear_to_ear_top,
            &mut moved.temple_to_temple_back, &mut moved.nape_width][which] += step;
        prop_assume!(moved.check().is_empty());
        let [before, after] = [measures, moved].map(|m| Dome::fit(&m).unwrap());
        prop_assert!((area(&after) - area(&before)).abs() < 1.0, "{} {}", area(&before), area(&after));
        for zone in Zone::ALL {
            let change = (after.zone_area(zone) - before.zone_area(zone)).get::<square_centimeter>();
            prop_assert!(change.abs() < 1.0, "{zone:?} {change}");
        }
    }

    #[test]
    fn the_body_is_convex(measures in heads(), a in (0.0..std::f64::consts::TAU, -0.6..0.99f64), b in (0.0..std::f64::consts::TAU, -0.6..0.99f64)) {
        let dome = Dome::fit(&measures).unwrap();
        let solid = dome.solid();
        let point = |(azimuth, height): (f64, f64)| {
            solid.at(azimuth, if height > 0.0 { height * solid.rise } else { height * solid.drop })
        };
        let (p, q) = (point(a), point(b));
        let middle = [0, 1, 2].map(|i| 0.5 * (p[i] + q[i]));
        prop_assert!(solid.level(middle).0 <= 1.0 + 1e-9);
    }

    #[test]
    fn every_view_is_drawn(measures in heads()) {
        let dome = Dome::fit(&measures).unwrap();
        for view in View::ALL {
            let shape = dome.view(view);
            prop_assert!(shape.bounds.iter().all(|b| b.is_finite()));
            prop_assert!(!shape.zones.is_empty());
        }
    }
}
