//! Weft laid out: which packs to buy, and which piece comes from which length, at least cost and proved least.
//!
//! What it is: a one-dimensional cutting-stock solver for a few kinds of pack, with packs of several lengths and owned lengths
//! that cost nothing, all in whole millimetres and smallest money units. What it is not: a planner of rows (it is given the
//! pieces), a reader or writer of files, or anything with a clock: its budgets are counts of work.
//!
//! How it goes: [`Case::new`] parses; [`Solver`] lists the *mixes* of packs, cheapest first, in price windows that are
//! complete before they are used. A mix either breaks a valid inequality (then nothing can be cut from it), or the pieces are
//! fitted into it (then it is the cheapest), or it stays undecided and the plan says so.
//!
//! Rules of the sums:
//! - A bought pack brings all its lengths and is paid whole; lengths of it that carry nothing are listed as bars without
//!   pieces, whose offcut is the whole length. A pack none of whose lengths carries a piece is not bought.
//! - An owned length is listed only when it is used.
//! - `k` pieces from one length lose `k - 1` cuts; the offcut is what is left after that.
//! - Least total price first (only this is *proved*), then fewest owned lengths, then the longest single offcut.

mod case;
mod decide;
mod dive;
pub(crate) mod each;
mod exhaust;
mod fit;
mod found;
mod knapsack;
mod lp;
mod mixes;
mod model;
mod plan;
mod price;
mod refine;
mod solver;
mod start;
mod value;

pub use case::{Case, CaseError, Demand, Pack, limit};
pub use plan::{Bar, Certificate, Closed, Inequality, Plan};
pub use solver::{Phase, Progress, STEP_UNITS, Shortage, Solver, Standing};

/// Solves a case to the end in one go.
///
/// # Errors
/// [`Shortage`] when the owned lengths do not hold the pieces that no pack for sale is long enough for.
pub fn solve(case: Case) -> Result<Plan, Shortage> {
    let mut solver = Solver::new(case);
    loop {
        match solver.step(u64::MAX) {
            Progress::Running(_) => {}
            Progress::Done(plan) => return Ok(*plan),
            Progress::Short(shortage) => return Err(shortage),
        }
    }
}
