//! The cutting solver against published and hand-worked cases, brute force, its own certificate and its own slicing.
//!
//! What it is: one check per promise; the cases are files in `cases/cutting`. What it is not: a measurement of time.

#![allow(clippy::expect_used, clippy::panic, reason = "a test says what failed by stopping")]

mod brute;
mod certificate;
mod files;
mod sets;

use certificate::{can_be_cut, nothing_cheaper};
use plan::cutting::{Case, Demand, Pack, Plan, Progress, Solver, solve};
use proptest::prelude::*;
use sets::{Draw, Sample};

fn solved(name: &str, case: &Case) -> Plan {
    let plan = solve(case.clone()).unwrap_or_else(|short| panic!("{name}: {short}"));
    can_be_cut(case, &plan).unwrap_or_else(|fault| panic!("{name}: {fault}"));
    plan
}

/// Solves a set; every plan must be cuttable and every bound must pass the certificate check.
fn certified(samples: Vec<Sample>) -> (usize, usize) {
    let cases = samples.len();
    let mut proved = 0;
    for Sample { name, case } in samples {
        let plan = solved(&name, &case);
        nothing_cheaper(&case, &plan, plan.lower_bound).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        proved += usize::from(plan.proved);
    }
    (proved, cases)
}

#[test]
fn wig_like_cases_are_all_proved_and_certified() {
    assert_eq!(certified(sets::wig_like()), (140, 140));
}

#[test]
fn hard_cases_are_all_proved_and_certified() {
    assert_eq!(certified(sets::hard(&[5, 10, 20, 40, 80])), (100, 100));
}

#[test]
fn packs_of_several_and_owned_lengths_are_certified() {
    let (proved, cases) = certified(sets::wig_mixed(&[5, 10, 20, 40, 80]));
    assert_eq!((proved, cases), (100, 100));
    let (proved, cases) = certified(sets::hard_mixed(&[5, 10, 20, 40]));
    assert_eq!((proved, cases), (80, 80));
}

/// The checker must be able to say no: each damage to a good answer is noticed.
#[test]
fn the_certificate_check_can_fail() {
    let mut first_only_fails = 0;
    for Sample { name, case } in sets::hard(&[10, 20, 40]) {
        let plan = solved(&name, &case);
        let dearer = nothing_cheaper(&case, &plan, plan.total_price + 1);
        assert!(dearer.is_err(), "{name}: the optimum claimed one higher passes");

        let mut lost = plan.clone();
        lost.bars.pop();
        assert!(can_be_cut(&case, &lost).is_err(), "{name}: a bar removed passes");

        let mut first = plan.clone();
        first.certificate.inequalities.truncate(1);
        first_only_fails += usize::from(nothing_cheaper(&case, &first, plan.total_price).is_err());

        let mut light = plan.clone();
        for inequality in &mut light.certificate.inequalities {
            for most in &mut inequality.maxima {
                *most -= 1;
            }
        }
        assert!(nothing_cheaper(&case, &light, plan.total_price).is_err(), "{name}: false maxima pass");
    }
    assert!(first_only_fails > 0, "no case needed more than the inequality of length");
}

#[test]
fn files() {
    files::check_all();
}

#[test]
fn tiny_cases_equal_brute_force_in_all_three_aims() {
    let mut draw = Draw::new(7);
    let mut with_owned = 0;
    for round in 0..600 {
        let case = brute::tiny(&mut draw);
        let name = format!("tiny {round}");
        match (solve(case.clone()), brute::best(&case)) {
            (Ok(plan), Some(best)) => {
                can_be_cut(&case, &plan).unwrap_or_else(|fault| panic!("{name}: {fault}"));
                nothing_cheaper(&case, &plan, plan.lower_bound).unwrap_or_else(|fault| panic!("{name}: {fault}"));
                let owned: u32 = plan.owned_used.iter().sum();
                let got = (plan.total_price, owned, plan.longest_offcut_mm());
                assert_eq!(got, best, "{name}: {case:?}");
                assert!(plan.proved && plan.owned_proved, "{name}: {case:?}");
                with_owned += usize::from(owned > 0);
            }
            (Err(short), None) => assert!(short.proved, "{name}: {case:?}"),
            (got, best) => panic!("{name}: {got:?} against {best:?} for {case:?}"),
        }
    }
    assert!(with_owned > 50, "{with_owned} cases use owned lengths");
}

/// Real limits: many kinds and many owned lengths must come to an end, with a plan that can be cut.
#[test]
fn fifty_kinds_and_three_hundred_pieces_come_to_an_end() {
    let mut draw = Draw::new(5);
    let packs = (0..50).map(|i| {
        let (length_mm, pieces) = (draw.pick(500, 3500), draw.pick(1, 4));
        let price = u64::from(length_mm * pieces) * 7 / 10 + u64::from(draw.pick(0, 400));
        Pack { name: format!("k{i}"), length_mm, pieces, price, owned: draw.pick(0, 3) }
    });
    let packs = packs.collect();
    let pieces = (0..300).map(|_| Demand { length_mm: draw.pick(70, 370), count: 1 }).collect();
    let case = Case::new(packs, pieces, 2).expect("within the limits");
    let plan = solved("fifty kinds", &case);
    assert!(plan.proved, "{} with the bound {}", plan.total_price, plan.lower_bound);
}

fn any_case() -> impl Strategy<Value = Case> {
    let pack = (100u32..1500, 0u32..4, 0u64..2000, 0u32..4);
    let piece = (20u32..700, 1u32..9);
    let parts = (proptest::collection::vec(pack, 1..4), proptest::collection::vec(piece, 1..9), 0u32..6);
    parts.prop_filter_map("refused", |(packs, pieces, cut_loss_mm)| {
        let pack =
            |(i, (length_mm, pieces, price, owned))| Pack { name: format!("k{i}"), length_mm, pieces, price, owned };
        let packs = packs.into_iter().enumerate().map(pack).collect();
        let pieces = pieces.into_iter().map(|(length_mm, count)| Demand { length_mm, count }).collect();
        Case::new(packs, pieces, cut_loss_mm).ok()
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_answer_does_not_depend_on_the_slicing(case in any_case(), slices in proptest::collection::vec(1u64..50_000, 1..6)) {
        let whole = solve(case.clone());
        let mut solver = Solver::new(case.clone());
        let mut bound = 0;
        for units in slices.into_iter().cycle() {
            match solver.step(units) {
                Progress::Running(standing) => {
                    prop_assert!(standing.lower_bound >= bound || standing.best_price.is_none());
                    bound = standing.lower_bound;
                    if let Some(plan) = solver.best() {
                        prop_assert_eq!(can_be_cut(&case, &plan), Ok(()));
                        prop_assert_eq!(Some(plan.total_price), standing.best_price);
                    }
                }
                Progress::Done(plan) => {
                    prop_assert_eq!(can_be_cut(&case, &plan), Ok(()));
                    prop_assert_eq!(Ok(*plan), whole);
                    break;
                }
                Progress::Short(short) => {
                    prop_assert_eq!(Err(short), whole);
                    break;
                }
            }
        }
    }

    #[test]
    fn a_bound_never_claims_too_much(case in any_case()) {
        if let Ok(plan) = solve(case.clone()) {
            let checked = nothing_cheaper(&case, &plan, plan.lower_bound);
            // The checker may be too slow for what was searched to the end, but it must never find a cheaper plan.
            let found = checked.err().filter(|fault| fault.starts_with("a cheaper mix holds"));
            prop_assert_eq!(found, None);
        }
    }

    #[test]
    fn one_more_owned_length_never_costs_more(case in any_case()) {
        let mut packs = case.packs().to_vec();
        packs[0].owned += 1;
        let more = Case::new(packs, case.pieces().to_vec(), case.cut_loss_mm()).expect("still valid");
        if let (Ok(before), Ok(after)) = (solve(case), solve(more)) && after.proved {
            prop_assert!(after.total_price <= before.total_price);
        }
    }
}
