//! Rows: lengths against the averaged scalp, sections, the parting.

use super::{cases, cm, mm, near, number, ordinary};
use measure::quantity::{Length, units::millimeter, units::square_centimeter};
use plan::dome::{Dome, Edge, Field, Parting, RowEnd, Section, Zone};

#[test]
fn level_rows_behind_the_ears_follow_the_averaged_scalp() {
    let dome = Dome::fit(&ordinary()).unwrap();
    for case in cases(include_str!("../cases/dome/back_rows.txt")) {
        let z = mm(dome.tragus_height()) + number(case[0]);
        let line: Vec<[f64; 3]> = (0..=1000)
            .map(|i| dome.solid().at(std::f64::consts::PI * (1.0 + f64::from(i) / 1000.0), z))
            .filter(|p| p[1] <= -27.0)
            .collect();
        let length: f64 = line.windows(2).map(|w| libm::hypot(w[0][0] - w[1][0], w[0][1] - w[1][1])).sum();
        near(&case.join(";"), length / 10.0 / number(case[1]), 1.0, 0.08);
    }
}

#[test]
fn rows_times_spacing_make_the_area() {
    // Rows 5 mm apart cover the cap but for the sideburn tabs; level rows lie closer or wider at the sides than at the back.
    let dome = Dome::fit(&ordinary()).unwrap();
    let mut covered = 0.0;
    for section in [Section::BackAndSides, Section::Top] {
        let rows = dome.rows_evenly(section, Length::new::<millimeter>(5.0));
        let step = mm(dome.section_length(section)) / rows.len() as f64;
        covered += rows.iter().map(|r| mm(r.length())).sum::<f64>() * step / 100.0;
    }
    near("covered", covered / dome.area().get::<square_centimeter>(), 1.0, 0.08);
}

#[test]
fn side_rows_end_at_the_front_edge() {
    let dome = Dome::fit(&ordinary()).unwrap();
    let rows = dome.rows_evenly(Section::BackAndSides, Length::new::<millimeter>(10.0));
    let front: Vec<_> = rows.iter().filter(|r| r.ends == RowEnd::FrontEdge).collect();
    assert!(front.len() >= 4, "{}", front.len());
    for row in front {
        let ends = [row.points[0], row.points[row.points.len() - 1]];
        for end in ends {
            assert!(mm(dome.distance_to(Edge::Front, end)) < 0.5);
        }
        let zones: Vec<Zone> = row.spans.iter().map(|s| s.zone).collect();
        assert_eq!(zones[0], Zone::FrontHairline);
        assert!(zones.contains(&Zone::LeftSide) && zones.contains(&Zone::RightSide) && zones.contains(&Zone::Back));
        assert!(
            zones.iter().position(|z| *z == Zone::LeftSide) < zones.iter().position(|z| *z == Zone::RightSide),
            "rows run from the wearer's left"
        );
    }
}

#[test]
fn no_row_outside_its_section() {
    let dome = Dome::fit(&ordinary()).unwrap();
    for section in [Section::BackAndSides, Section::Top] {
        let whole = dome.section_length(section);
        for at in [cm(-1.0), whole + cm(0.1), Length::new::<millimeter>(f64::NAN)] {
            assert!(dome.row(section, at).is_none());
        }
        for spacing in [0.0, -5.0, f64::NAN, 1e-9] {
            assert!(dome.rows_evenly(section, Length::new::<millimeter>(spacing)).is_empty(), "{spacing}");
        }
    }
}

#[test]
fn a_parting_takes_its_strip_from_the_top() {
    let plain = Dome::fit(&ordinary()).unwrap();
    for offset in [-4.0, 0.0, 3.5] {
        let dome = plain.with_parting(Parting { offset: cm(offset), length: cm(9.0), width: cm(2.0) }).unwrap();
        let part = dome.zone_area(Zone::Part).get::<square_centimeter>();
        // Behind the 2 cm of hairline 7 cm are left, a little more across a sloping head or an oblique edge.
        assert!(part > 10.0 && part < 19.0, "{offset}: {part}");
        for zone in [Zone::FrontHairline, Zone::Crown, Zone::LeftSide, Zone::Back] {
            near("other zones", (dome.zone_area(zone) / plain.zone_area(zone)).value, 1.0, 1e-12);
        }
        let taken = plain.zone_area(Zone::Top) - dome.zone_area(Zone::Top);
        near("taken", taken.get::<square_centimeter>(), part, 0.01);
        let row = dome.row(Section::Top, cm(4.0)).unwrap();
        assert!(mm(row.length_in(Zone::Part)) > 19.0);
        let at = row.spans.iter().find(|s| s.zone == Zone::Part).unwrap().points.start;
        assert!(offset == 0.0 || (row.points[at + 1][0] > 0.0) == (offset > 0.0), "left and right are the wearer's");
    }
}

#[test]
fn a_parting_the_head_has_no_room_for_is_refused() {
    let dome = Dome::fit(&ordinary()).unwrap();
    let good = Parting { offset: cm(0.0), length: cm(8.0), width: cm(2.0) };
    for (bad, field) in [
        (Parting { offset: cm(9.0), ..good }, Field::PartingOffset),
        (Parting { length: cm(25.0), ..good }, Field::PartingLength),
        (Parting { length: cm(f64::NAN), ..good }, Field::PartingLength),
        (Parting { width: cm(0.0), ..good }, Field::PartingWidth),
    ] {
        let problems = dome.with_parting(bad).unwrap_err();
        assert_eq!(problems.len(), 1);
        assert_eq!(problems[0].field, field);
    }
}
