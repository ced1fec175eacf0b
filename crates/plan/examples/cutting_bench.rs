//! Measures the cutting solver: `cargo run --release -p weftbook-plan --example cutting_bench`.
//!
//! What it is: median and longest time, proofs and the longest single step, for generated sets of fixed seed. What it is
//! not: a test (a time is never one).
#![allow(clippy::print_stdout, clippy::expect_used, clippy::disallowed_methods, missing_docs)]

#[path = "../tests/cutting/sets.rs"]
mod sets;

use std::time::Instant;

use plan::cutting::{Phase, Progress, STEP_UNITS, Solver};

fn main() {
    let sets = [
        ("wig-like, 5-200 pieces", sets::wig_like()),
        ("hard, 5-80 pieces", sets::hard(&[5, 10, 20, 40, 80])),
        ("hard, 120 pieces", sets::hard(&[120])),
        ("hard, 200 pieces", sets::hard(&[200])),
        ("wig-like, packs of 1-4, some owned, 5-200", sets::wig_mixed(&[5, 10, 20, 40, 80, 120, 200])),
        ("hard, packs of 1-4, some owned, 5-80", sets::hard_mixed(&[5, 10, 20, 40, 80])),
        ("hard, packs of 1-4, some owned, 120", sets::hard_mixed(&[120])),
        ("hard, packs of 1-4, some owned, 200", sets::hard_mixed(&[200])),
    ];
    println!("set | cases | proved | owned proved | price ms median/max | all ms median/max | step ms max");
    let verbose = std::env::args().any(|a| a == "--each");
    for (name, samples) in sets {
        let (mut price, mut all, mut proved, mut owned_proved, mut longest) = (Vec::new(), Vec::new(), 0, 0, 0.0f64);
        let cases = samples.len();
        for sample in samples {
            let begun = Instant::now();
            let mut solver = Solver::new(sample.case);
            let (mut to_price, mut units) = (None, 0u64);
            let plan = loop {
                let step = Instant::now();
                let progress = solver.step(STEP_UNITS);
                units += 1;
                longest = longest.max(step.elapsed().as_secs_f64() * 1e3);
                match progress {
                    Progress::Running(standing) => {
                        if !matches!(standing.phase, Phase::Held | Phase::Price) && to_price.is_none() {
                            to_price = Some(begun.elapsed().as_secs_f64() * 1e3);
                        }
                    }
                    Progress::Done(plan) => break plan,
                    Progress::Short(shortage) => panic!("{}: {shortage}", sample.name),
                }
            };
            let took = begun.elapsed().as_secs_f64() * 1e3;
            price.push(to_price.unwrap_or(took));
            all.push(took);
            proved += u32::from(plan.proved);
            owned_proved += u32::from(plan.owned_proved);
            if verbose || !plan.proved {
                let (cost, bound) = (plan.total_price, plan.lower_bound);
                println!("  {}: {cost} bound {bound} {:?}, {took:.2} ms, {units} steps, price {:.2}", sample.name, plan.closed, to_price.unwrap_or(took));
            }
        }
        println!(
            "{name} | {cases} | {proved} | {owned_proved} | {} | {} | {longest:.2}",
            middle_and_most(price),
            middle_and_most(all)
        );
    }
}

fn middle_and_most(mut times: Vec<f64>) -> String {
    times.sort_by(f64::total_cmp);
    format!("{:.3} / {:.2}", times[times.len() / 2], times.last().copied().unwrap_or(0.0))
}
