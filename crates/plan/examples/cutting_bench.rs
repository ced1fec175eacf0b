//! Measures the cutting solver: `cargo run --release -p weftbook-plan --example cutting_bench`.
//!
//! What it is: median and longest time, proofs and the longest single step, for generated sets of fixed seed
//! (each case three times: the middle time, and for a step the least). What it is
//! not: a test (a time is never one).
#![allow(clippy::print_stdout, clippy::expect_used, clippy::panic, clippy::disallowed_methods, missing_docs)]

#[path = "../tests/cutting/sets.rs"]
mod sets;

use std::time::Instant;

use plan::cutting::{Phase, Plan, Progress, STEP_UNITS, Solver};

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
            let mut runs: Vec<Run> = (0..3).map(|_| run(&sample)).collect();
            runs.sort_by(|a, b| a.took.total_cmp(&b.took));
            // The same steps in each run: the least of the three is the step, the rest is the machine's other work.
            let steps =
                (0..runs[0].steps.len()).map(|at| runs.iter().map(|r| r.steps[at]).fold(f64::INFINITY, f64::min));
            longest = steps.fold(longest, f64::max);
            let Run { plan, took, to_price, steps } = runs.swap_remove(1);
            price.push(to_price);
            all.push(took);
            proved += u32::from(plan.proved);
            owned_proved += u32::from(plan.owned_proved);
            if verbose || !plan.proved {
                let (cost, bound) = (plan.total_price, plan.lower_bound);
                println!(
                    "  {}: {cost} bound {bound} {:?}, {took:.2} ms in {} steps, price {to_price:.2} ms",
                    sample.name,
                    plan.closed,
                    steps.len()
                );
            }
        }
        println!(
            "{name} | {cases} | {proved} | {owned_proved} | {} | {} | {longest:.2}",
            middle_and_most(price),
            middle_and_most(all)
        );
    }
}

struct Run {
    plan: Plan,
    took: f64,
    to_price: f64,
    steps: Vec<f64>,
}

fn run(sample: &sets::Sample) -> Run {
    let begun = Instant::now();
    let since = |from: Instant| from.elapsed().as_secs_f64() * 1e3;
    let mut solver = Solver::new(sample.case.clone());
    let (mut to_price, mut steps) = (None, Vec::new());
    loop {
        let step = Instant::now();
        let progress = solver.step(STEP_UNITS);
        steps.push(since(step));
        match progress {
            Progress::Running(standing) => {
                if !matches!(standing.phase, Phase::Held | Phase::Price) && to_price.is_none() {
                    to_price = Some(since(begun));
                }
            }
            Progress::Done(plan) => {
                let took = since(begun);
                return Run { plan: *plan, took, to_price: to_price.unwrap_or(took), steps };
            }
            Progress::Short(shortage) => panic!("{}: {shortage}", sample.name),
        }
    }
}

fn middle_and_most(mut times: Vec<f64>) -> String {
    times.sort_by(f64::total_cmp);
    format!("{:.3} / {:.2}", times[times.len() / 2], times.last().copied().unwrap_or(0.0))
}
