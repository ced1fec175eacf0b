//! What must hold of every plan: generated wigs and lots.
//!
//! What must hold of its bounds stands in `shopping_spread`.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that fails says so")]

mod common;
mod said;

use common::{Bench, today};
use measure::quantity::{Length, units};
use plan::{
    cutting::STEP_UNITS,
    dome::Edge,
    inputs::{Base, Corner},
    layout::{dome, lay_out},
    shopping::{Answer, For, Job, Prepared, Step, Way, parted, prepare},
    wefts::{Mount, PlannedRow, rules},
};
use proptest::prelude::*;
use record::wig::{figures::Wig, zone::Zone};

use said::{answered, cases, cm, wigs};

/// A row sewn as it was planned.
fn sewn(row: &PlannedRow, as_single: &str) -> String {
    let section = match row.section {
        plan::dome::Section::Top => "top",
        plan::dome::Section::BackAndSides => "back_and_sides",
    };
    let (place, length) = (row.at.get::<units::millimeter>(), cm(row.length));
    let zone = match row.zones.as_slice() {
        [(zone, _)] => format!("; zone={}", zone.name()),
        _ => String::new(),
    };
    format!(
        "sew sewn_as=row; section={section}; place={place:.6} mm; length={length:.6} cm; lot=A; as_single={as_single}{zone}"
    )
}

/// Rows and pieces at the likely corner, uncut.
fn prepared(bench: &Bench) -> Option<Prepared> {
    let (state, lots, corner) = (bench.state(), bench.lots(), Corner::likely());
    let wig = Wig::new(&state);
    let layout = lay_out(dome(&wig, &corner).ok()?, &Base::at(&wig, &corner));
    prepare(&wig, &lots, layout, &corner, parted(&wig, &lots), false).ok()
}

/// Rows as a person tells them apart: two alike at one place are one as good as the other.
fn told(rows: &[PlannedRow]) -> Vec<String> {
    let zones = |row: &PlannedRow| row.zones.iter().map(|(zone, _)| zone.name()).collect::<Vec<_>>();
    let mut told: Vec<String> = rows
        .iter()
        .map(|row| format!("{:?} {} {:?} {:.3} cm {:?}", row.section, row.gap, row.mount, cm(row.length), zones(row)))
        .collect();
    told.sort();
    told
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(cases()) })]

    #[test]
    fn a_plan_holds_its_rules(lines in wigs()) {
        let Ok((bench, answer)) = answered(&lines) else { return Ok(()) };
        figures_are_figures(&answer)?;
        rows_keep_the_rules(&bench, &answer)?;
        lengths_are_conserved(&answer)?;
        prop_assert!(answer.packs.low.unwrap_or(0) <= answer.packs.likely.unwrap_or(u32::MAX));
        prop_assert!(answer.packs.likely.unwrap_or(u32::MAX) <= answer.packs.high.unwrap_or(u32::MAX));
        prop_assert!(answer.spread.low <= answer.spread.likely && answer.spread.likely <= answer.spread.high);
    }

    #[test]
    fn steps_do_not_matter_and_more_hair_needs_no_less_weft(lines in wigs(), times in 1.0..2.5, more in 0.0..0.5) {
        let with = |times: f64| {
            let mut lines: Vec<String> = lines.iter().filter(|line| !line.contains("target")).cloned().collect();
            lines.push(format!("target = {times:.4}"));
            lines
        };
        let Ok((bench, less)) = answered(&with(times)) else { return Ok(()) };
        let Ok((_, more)) = answered(&with(times + more)) else { return Ok(()) };
        prop_assert!(more.spread.likely >= less.spread.likely);
        prop_assert!(more.spread.high >= less.spread.high && more.spread.low >= less.spread.low);
        let mut job = Job::new(bench.state(), bench.lots(), today());
        let stepped = loop {
            if let Step::Done(answer) = job.step(STEP_UNITS) {
                break answer.unwrap();
            }
        };
        prop_assert_eq!(stepped.summary(&bench.lots()), less.summary(&bench.lots()));
    }

    #[test]
    fn a_sewn_row_is_done_with(lines in wigs()) {
        let counted: Vec<String> =
            lines.iter().filter(|line| !line.starts_with("count")).cloned().chain(["count A whole_packs=9".into()]).collect();
        let Ok((mut bench, before)) = answered(&counted) else { return Ok(()) };
        let Some(row) = before.likely.prepared.placement.rows.first().cloned() else { return Ok(()) };
        let parted = before.likely.prepared.parted;
        bench.say(&sewn(&row, if parted { "yes" } else { "no" }));
        let after = Job::new(bench.state(), bench.lots(), today()).finish().unwrap();
        let (old, new) = (&before.likely.prepared, &after.likely.prepared);
        prop_assert!(new.wanted < old.wanted);
        let there = |rows: &[plan::wefts::PlannedRow]| {
            rows.iter().filter(|one| one.section == row.section && (one.at - row.at).abs() < Length::new::<units::millimeter>(1.0) && one.mount == Mount::Gap).count()
        };
        prop_assert!(row.mount == Mount::OnRow || there(&new.placement.rows) == 0);
        let now = |answer: &Answer| -> f64 {
            answer.likely.prepared.fullness.zones.iter().map(|zone| (zone.now() * zone.area).get::<units::ratio>()).sum()
        };
        prop_assert!(now(&after) > now(&before));
        let used = bench.lots()[0].left.used_since;
        let off_the_lot = if parted { row.length / 2.0 } else { row.length };
        prop_assert!((used - off_the_lot).abs() < Length::new::<units::micrometer>(10.0), "{used:?}");
    }

    #[test]
    fn rows_stay_where_they_were_planned(lines in wigs(), first in 0.0..1.0, second in 0.0..1.0) {
        let mut bench = Bench::read(&lines.join("\n"));
        let Some(before) = prepared(&bench) else { return Ok(()) };
        let mut left = before.placement.rows;
        for which in [first, second] {
            if left.is_empty() {
                return Ok(());
            }
            let row = left.remove((which * left.len() as f64) as usize);
            bench.say(&sewn(&row, if before.parted { "yes" } else { "no" }));
            let after = prepared(&bench).unwrap();
            prop_assert_eq!(told(&after.placement.rows), told(&left));
        }
    }
}

fn figures_are_figures(answer: &Answer) -> Result<(), TestCaseError> {
    let prepared = &answer.likely.prepared;
    for length in [prepared.amounts.rows, prepared.amounts.folds, prepared.amounts.hairline, prepared.amounts.parting] {
        prop_assert!(cm(length).is_finite() && cm(length) >= 0.0);
    }
    for zone in &answer.reached {
        prop_assert!(zone.get::<units::per_square_centimeter>().is_finite());
    }
    prop_assert!(answer.reach.iter().all(|reach| reach.times.is_finite() && reach.times >= 0.0));
    prop_assert!(answer.weight_added.get::<units::gram>().is_finite());
    Ok(())
}

fn rows_keep_the_rules(bench: &Bench, answer: &Answer) -> Result<(), TestCaseError> {
    let prepared = &answer.likely.prepared;
    let state = bench.state();
    let wig = Wig::new(&state);
    let rules = rules(&wig, prepared.way == Way::Whole);
    let mut placed = Length::new::<units::meter>(0.0);
    for row in &prepared.placement.rows {
        placed += row.length;
        prop_assert!(row.zones.iter().all(|(zone, _)| rules.takes_weft[*zone as usize]), "{:?}", row.zones);
        prop_assert!(row.length >= Length::new::<units::millimeter>(19.9), "{:?}", row.length);
        let edges: &[Edge] = if rules.worn_up { &[Edge::Front, Edge::Ears, Edge::Nape] } else { &[Edge::Front] };
        for edge in edges {
            let least = row.points.iter().map(|point| prepared.layout.dome.distance_to(*edge, *point));
            for distance in least {
                // Ends fall between the points that were looked at.
                prop_assert!(
                    distance > rules.edge_distance - Length::new::<units::millimeter>(0.5),
                    "{distance:?} {edge:?}"
                );
            }
        }
    }
    // Per gap and zone: in the open no closer than allowed, stacked no higher.
    for gap in &prepared.layout.gaps {
        for zone in Zone::ALL {
            let here = || {
                prepared.placement.rows.iter().filter(|row| {
                    row.section == gap.section && row.gap == gap.number && row.zones.iter().any(|(one, _)| *one == zone)
                })
            };
            let mut marks: Vec<f64> = here().filter(|row| row.mount == Mount::Gap).map(|row| cm(row.at)).collect();
            marks.extend([cm(gap.from), cm(gap.to)]);
            marks.sort_by(f64::total_cmp);
            marks.dedup();
            let closest = if rules.parting && gap.section == plan::dome::Section::Top {
                rules.closest_parting
            } else {
                rules.closest
            };
            let open = here().any(|row| row.mount == Mount::Gap);
            prop_assert!(!open || marks.windows(2).all(|pair| pair[1] - pair[0] >= cm(closest) - 1e-6), "{marks:?}");
            let mut stacked: Vec<f64> =
                here().filter(|row| row.mount == Mount::OnRow).map(|row| row.points[0][0]).collect();
            stacked.dedup();
            prop_assert!(stacked.len() < rules.most_stacked.max(1) as usize * 2);
        }
    }
    let short = !prepared.placement.shortfalls.is_empty();
    let off = cm(placed) - cm(prepared.wanted);
    prop_assert!(
        short || off.abs() <= cm(prepared.wanted) * rules.tolerance + 1e-6,
        "{placed:?} {:?}",
        prepared.wanted
    );
    Ok(())
}

fn lengths_are_conserved(answer: &Answer) -> Result<(), TestCaseError> {
    let prepared = &answer.likely.prepared;
    let Some(plan) = &answer.likely.plan else { return Ok(()) };
    let asked: u64 = prepared.pieces.iter().map(|piece| u64::from(piece.length_mm)).sum();
    let laid: u64 = answer.laid.iter().flat_map(|weft| &weft.pieces).map(|piece| u64::from(piece.length_mm)).sum();
    prop_assert_eq!(asked, laid);
    for weft in &answer.laid {
        let used: u32 = weft.pieces.iter().map(|piece| piece.length_mm).sum();
        prop_assert!(used + weft.offcut_mm <= weft.length_mm);
    }
    if prepared.way == Way::Run {
        // Rounded up to whole mm, and a join's overlap at most.
        let wanted = cm(prepared.amounts.total()) * 10.0;
        let joined = prepared.pieces.iter().filter(|piece| piece.part.1 > 1).count() as f64;
        let slack = prepared.pieces.len() as f64 + joined * 41.0 + 1.0;
        prop_assert!(laid as f64 >= wanted - 1.0 && laid as f64 <= wanted + slack, "{laid} {wanted}");
        prop_assert!(
            !answer.laid.iter().flat_map(|weft| &weft.pieces).any(|piece| matches!(piece.purpose, For::Row(_)))
        );
    }
    if prepared.way == Way::Whole {
        let whole = prepared.pieces.iter().map(|piece| piece.length_mm).max();
        prop_assert!(prepared.pieces.iter().all(|piece| Some(piece.length_mm) == whole), "hand-tied is never cut");
    }
    // Owned lengths cost nothing, so what is bought is only what they lack.
    prop_assert!(plan.lower_bound <= plan.total_price);
    Ok(())
}
