//! Views: what is drawn where.

use super::{cm, ordinary};
use measure::quantity::{Length, units::millimeter};
use plan::dome::{Dome, Parting, Section, View, ViewShape, Zone};

fn inside(shape: &ViewShape, zone: Zone, p: [f64; 2]) -> bool {
    let mut odd = false;
    for polygon in shape.zones.iter().filter(|z| z.zone == zone).flat_map(|z| &z.polygons) {
        for (i, a) in polygon.iter().enumerate() {
            let b = polygon[(i + 1) % polygon.len()];
            if (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0] + (p[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0]) {
                odd = !odd;
            }
        }
    }
    odd
}

#[test]
fn rows_are_drawn_over_the_zones_they_cross() {
    let parting = Parting { offset: cm(3.0), length: cm(9.0), width: cm(2.0) };
    let dome = Dome::fit(&ordinary()).unwrap().with_parting(parting).unwrap();
    let mut seen = 0;
    for view in View::ALL {
        let shape = dome.view(view);
        for section in [Section::BackAndSides, Section::Top] {
            for row in dome.rows_evenly(section, Length::new::<millimeter>(13.0)) {
                for span in row.spans.iter().filter(|s| s.length > cm(0.8)) {
                    let middle = row.points[(span.points.start + span.points.end - 1) / 2];
                    let normal = dome.solid().normal(middle);
                    let facing = match view {
                        View::Front => normal[1],
                        View::Back => -normal[1],
                        View::Left => -normal[0],
                        View::Right => normal[0],
                        View::Top => normal[2],
                    };
                    if facing > 0.1 {
                        seen += 1;
                        assert!(inside(&shape, span.zone, view.project(middle)), "{view:?} {:?} {middle:?}", span.zone);
                    } else if facing < -0.1 {
                        assert!(dome.project_line(view, &[middle, middle]).is_empty());
                    }
                }
            }
        }
    }
    assert!(seen > 100, "{seen}");
}

#[test]
fn each_side_shows_its_own_zones() {
    let dome = Dome::fit(&ordinary()).unwrap();
    let zones = |view| dome.view(view).zones.iter().map(|z| z.zone).collect::<Vec<_>>();
    use Zone::*;
    assert_eq!(zones(View::Left), [FrontHairline, Top, Crown, LeftSide, Back, Nape]);
    assert_eq!(zones(View::Right), [FrontHairline, Top, Crown, RightSide, Back, Nape]);
    assert!(zones(View::Back).contains(&Back) && !zones(View::Back).contains(&Top));
    assert!(zones(View::Front).contains(&FrontHairline) && !zones(View::Front).contains(&Nape));
    assert!(zones(View::Top).contains(&Top) && zones(View::Top).contains(&Crown));
}

#[test]
fn every_curve_is_finite_and_within_bounds() {
    let dome = Dome::fit(&ordinary()).unwrap();
    for view in View::ALL {
        let shape = dome.view(view);
        let [left, top, right, bottom] = shape.bounds;
        assert!(right - left > 140.0 && bottom - top > 140.0 && right - left < 260.0 && bottom - top < 280.0);
        let curves = shape.edge.iter().chain(&shape.ears).chain(&shape.features).chain([&shape.outline]);
        for p in curves.chain(shape.zones.iter().flat_map(|z| &z.polygons)).flatten() {
            assert!(
                p[0] >= left - 0.01 && p[0] <= right + 0.01 && p[1] >= top - 0.01 && p[1] <= bottom + 0.01,
                "{p:?}"
            );
        }
        assert!(!shape.edge.is_empty() && !shape.ears.is_empty());
    }
}
