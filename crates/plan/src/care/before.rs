//! The checks before a step.
//!
//! What it is: all rules run over one piece of work, less those that were overruled for it.
//! What it is not: the rules (see `rules`), or what is refused outright (see `may_do`).

use record::{
    wig::{
        condition::Condition,
        steps::{self, Progress},
        work::Work,
    },
    workshop::locks::lot_of,
};

use super::{
    bench::{Bench, Case, Finding, Rule},
    rules::ALL,
};

/// Everything that speaks against a piece of work, the heaviest first, as the wig is now.
pub fn before(bench: &Bench<'_>, condition: &Condition, work: &Work) -> Vec<Finding> {
    let steps = steps::steps(bench.wig.state());
    let own = steps::step_of(work);
    let open =
        |step: &&steps::Step<'_>| Some(step.id) != own && matches!(step.progress(), Progress::Open | Progress::Begun);
    let later: Vec<&Work> = steps.iter().filter(open).map(|step| &step.planned.work).collect();
    run(&Case::new(bench, condition, work, &later))
}

pub(super) fn run(case: &Case<'_>) -> Vec<Finding> {
    let row_before = row_before(case);
    let judged =
        |rule: &Rule| names(case.work).chain(row_before.into_iter().flat_map(names)).any(|name| name == rule.name);
    let mut found: Vec<Finding> = ALL
        .into_iter()
        .flatten()
        .filter(|check| !judged(&check.rule))
        .filter_map(|check| (check.finds)(case).map(|(what, remedy)| Finding { rule: &check.rule, what, remedy }))
        .collect();
    measure::order::sort_by(&mut found, &|a, b| b.rule.weight.cmp(&a.rule.weight));
    found
}

/// The last row sewn of the same lot: what was judged for it is not told again for each row.
fn row_before<'a>(case: &Case<'a>) -> Option<&'a Work> {
    let lot = lot_of(case.work).filter(|_| case.kind == "sew_weft")?;
    let works = case.bench.wig.state().works().iter().rev().map(|done| &done.work);
    works.into_iter().find(|work| work.kind().name == case.kind && lot_of(work) == Some(lot))
}

/// The names in the field `overruled`.
fn names(work: &Work) -> impl Iterator<Item = &str> {
    work.get("overruled").and_then(|value| value.words()).unwrap_or("").split_whitespace()
}

/// The rules that were overruled for a piece of work, in the order of the tables; names nobody knows are passed over.
pub fn overruled(work: &Work) -> Vec<&'static Rule> {
    rules().filter(|rule| names(work).any(|name| name == rule.name)).collect()
}

/// All rules.
pub fn rules() -> impl Iterator<Item = &'static Rule> {
    ALL.into_iter().flatten().map(|check| &check.rule)
}
