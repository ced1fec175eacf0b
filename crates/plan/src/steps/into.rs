//! Suggested steps put into the plan that stands, however somebody ordered it.
//!
//! What it is: the entries that plan them. What it is not: a new order for what is planned already.

use record::{
    history::{desk, entry::Body, fold::State},
    id::StepId,
    wig::{
        figures::Wig,
        steps::{self, GAP, Planned},
        work::Work,
    },
};

use super::order::ranks;

/// Plans works, in the order given, each where the fewest steps that stand are out of order with it; `fresh` gives identities.
pub fn plan(state: &State, works: Vec<Work>, fresh: &mut dyn FnMut() -> StepId) -> Vec<Body> {
    let wig = Wig::new(state);
    let stand = steps::steps(state);
    // The order to be: what stands, and between it what is new.
    let mut order: Vec<(Option<&steps::Step<'_>>, Option<Work>, u32)> = stand
        .iter()
        .zip(ranks(&wig, stand.iter().map(|step| &step.planned.work)))
        .map(|(step, rank)| (Some(step), None, rank))
        .collect();
    let mut earliest = 0;
    let new = ranks(&wig, &works);
    for (work, rank) in works.into_iter().zip(new) {
        let at = best(&order.iter().map(|one| one.2).collect::<Vec<u32>>(), rank).max(earliest);
        order.insert(at, (None, Some(work), rank));
        earliest = at + 1;
    }
    let places = places(&order.iter().map(|one| one.0.map(|step| step.planned.place)).collect::<Vec<_>>());
    let mut bodies = Vec::new();
    for ((step, work, _), place) in order.into_iter().zip(places) {
        match (step, work) {
            (Some(step), _) if step.planned.place != place => {
                bodies.push(desk::plan_step(state, step.id, Planned { place, ..step.planned.clone() }));
            }
            (None, Some(work)) => {
                bodies.push(desk::plan_step(state, fresh(), Planned { place, work, skipped: None }));
            }
            _ => {}
        }
    }
    bodies
}

/// The place with the fewest steps out of order with a rank; the last of several.
fn best(ranks: &[u32], rank: u32) -> usize {
    // Before all: every earlier rank is on the wrong side.
    let mut wrong = ranks.iter().filter(|one| **one <= rank).count();
    let (mut best, mut least) = (0, wrong);
    for (at, one) in ranks.iter().enumerate() {
        if *one <= rank {
            wrong -= 1;
        } else {
            wrong += 1;
        }
        if wrong <= least {
            (best, least) = (at + 1, wrong);
        }
    }
    best
}

/// A place for each: those that stand keep theirs, new ones share the room between; where it is too small all are placed anew.
fn places(stand: &[Option<u32>]) -> Vec<u32> {
    kept(stand).unwrap_or_else(|| (1u32..).take(stand.len()).map(|number| number.saturating_mul(GAP)).collect())
}

fn kept(stand: &[Option<u32>]) -> Option<Vec<u32>> {
    let mut places = Vec::with_capacity(stand.len());
    let mut before = 0u32;
    let mut at = 0;
    while let Some(one) = stand.get(at) {
        if let Some(place) = one {
            places.push(*place);
            before = *place;
            at += 1;
            continue;
        }
        let run = stand.iter().skip(at).take_while(|one| one.is_none()).count();
        let parts = u32::try_from(run).ok()?.checked_add(1)?;
        let each = match stand.get(at + run).copied().flatten() {
            Some(after) => after.checked_sub(before)? / parts,
            None => GAP,
        };
        if each == 0 {
            return None;
        }
        for _ in 0..run {
            before = before.checked_add(each)?;
            places.push(before);
        }
        at += run;
    }
    Some(places)
}
