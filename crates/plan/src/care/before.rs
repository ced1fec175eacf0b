//! The checks before a step.
//!
//! What it is: all rules run over one piece of work, less those that were overruled for it.
//! What it is not: the rules (see `rules`), or what is refused outright (see `may_do`).

use measure::say::{Arg, Say};
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
    limit::{self, Limits},
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
        .filter_map(|check| (check.finds)(case).map(|(what, remedy)| Finding { rule: &check.rule, what, remedy }))
        .collect();
    measure::order::sort_by(&mut found, &|a, b| b.rule.weight.cmp(&a.rule.weight));
    fold_limits(case, &mut found);
    // Whoever overruled what was told together has heard all of it.
    found.retain(|finding| !judged(finding.rule));
    found
}

/// What each rule of heat limits looks at.
const LIMITS: [(&str, &[Limits]); 3] = [
    ("too_hot", &[Limits::Fibre, Limits::Label, Limits::Locks]),
    ("cap_too_hot", &[Limits::Cap, Limits::Block]),
    ("glue_meets_heat", &[Limits::Glue]),
];

/// One heat that several things do not bear is told once: by the heaviest rule, with the lowest limit as its remedy.
fn fold_limits(case: &Case<'_>, found: &mut Vec<Finding>) {
    let sorts = |finding: &Finding| LIMITS.iter().find(|(name, _)| *name == finding.rule.name).map(|(_, sorts)| *sorts);
    let Some(heating) = case.heating else { return };
    let together: Vec<Finding> = found.iter().filter(|finding| sorts(finding).is_some()).cloned().collect();
    let Some((first, others)) = together.split_first().filter(|(_, others)| !others.is_empty()) else { return };
    let all: Vec<Limits> = together.iter().filter_map(sorts).flatten().copied().collect();
    let limit = limit::of(case.bench, case.condition, &case.zones, case.loose(), heating.medium);
    let Some(lowest) = limit.lowest_of(&all) else { return };
    let what = others
        .iter()
        .fold(first.what.clone(), |said, one| Say::new("care.besides", [said.into(), one.what.clone().into()]));
    let remedy = Say::new("care.too_hot_do", [Arg::Temperature(lowest.most)]);
    found.retain(|finding| sorts(finding).is_none() || finding.rule == first.rule);
    for finding in found.iter_mut().filter(|finding| finding.rule == first.rule) {
        finding.what = what.clone();
        finding.remedy = remedy.clone();
    }
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
