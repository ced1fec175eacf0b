//! A plan's order: what breaks in it, and an order that breaks less.
//!
//! What it is: open steps run through the wig's condition as if each were done, and moves of steps tried by the same checks.
//! What it is not: a plan: it adds and drops no step.

use measure::civil::Minute;
use record::{
    history::fold::Done,
    id::{EntryId, StepId},
    wig::{
        condition::{Condition, ZoneCondition},
        work::Work,
        zone::Zone,
    },
};

use super::{
    before,
    bench::{Bench, Case, Finding},
};
use crate::working::Weight;

/// What there is to say of an order.
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// What speaks against each step where it stands.
    pub findings: Vec<(StepId, Finding)>,
    /// All steps in an order that breaks less, where moving some gives one.
    pub better: Option<Vec<StepId>>,
}

/// Steps that may be run through in one search; a longer one ends with the best it has found.
const MOST_RUNS: usize = 20_000;

/// How an order fares: stops, cares, considers; fewer is better.
type Score = [usize; 3];

/// What an order leaves behind: zones bound, wet, undyed inside, without the set they would have.
type Left = [[bool; 8]; 4];

/// How the wig stands before a group, and how the order fared until there.
#[derive(Clone)]
struct Stand {
    condition: Condition,
    score: Score,
}

impl Stand {
    fn left(&self) -> Left {
        let zones = |holds: &dyn Fn(&ZoneCondition) -> bool| Zone::ALL.map(|zone| holds(self.condition.zone(zone)));
        [
            zones(&|zone| zone.bound.is_some()),
            zones(&|zone| zone.wet),
            zones(&|zone| zone.undyed_inside),
            zones(&|zone| zone.set.is_none()),
        ]
    }
}

/// Steps by their place in the plan.
type Group = Vec<usize>;

struct Plan<'a> {
    bench: &'a Bench<'a>,
    steps: &'a [(StepId, &'a Work)],
    /// Only the work of it matters to a condition; the rest is any entry's.
    done: Done,
    runs: usize,
}

/// The open steps of a plan, in their order: what breaks, and a better order where there is one.
///
/// Steps that belong together (a bath with its rinse and drying, a set with its release) move together.
pub fn order(bench: &Bench<'_>, now: &Condition, steps: &[(StepId, &Work)]) -> Order {
    let nothing = Order { findings: Vec::new(), better: None };
    let Some(((first, work), done)) = steps.first().zip(Minute::read("2000-01-01T00:00")) else { return nothing };
    let done = Done { entry: EntryId(first.0), done, lamport: 0, work: (*work).clone(), amended: false };
    let mut plan = Plan { bench, steps, done, runs: 0 };
    let groups = groups(steps);
    let mut findings = Vec::new();
    let mut stand = Stand { condition: now.clone(), score: [0; 3] };
    for at in 0..groups.len() {
        plan.through(&groups, at, &mut stand, &mut |step, finding| findings.push((step, finding)));
    }
    let better = if findings.is_empty() { None } else { plan.better(now, groups, &stand) };
    Order { findings, better: better.map(|order| order.into_iter().map(|at| steps[at].0).collect()) }
}

impl Plan<'_> {
    /// Runs through one group of an order.
    fn through(&mut self, groups: &[Group], at: usize, stand: &mut Stand, tell: &mut dyn FnMut(StepId, Finding)) {
        let rest: Vec<&Work> = groups[at..].iter().flatten().map(|step| self.steps[*step].1).collect();
        for (place, step) in groups[at].iter().enumerate() {
            let (id, work) = self.steps[*step];
            let mut case = Case::new(self.bench, &stand.condition, work, rest.get(place + 1..).unwrap_or_default());
            case.planned = true;
            for finding in before::run(&case) {
                stand.score[match finding.rule.weight {
                    Weight::Stop => 0,
                    Weight::Care => 1,
                    Weight::Consider => 2,
                }] += 1;
                tell(id, finding);
            }
            self.done.entry = EntryId(id.0);
            self.done.work = work.clone();
            stand.condition.apply(self.bench.wig, &self.done);
            self.runs += 1;
        }
    }

    /// The order that breaks least of those reached by moving one group at a time, each time the shortest move that
    /// helps most with the first break that can be helped.
    fn better(&mut self, now: &Condition, mut groups: Vec<Group>, planned: &Stand) -> Option<Vec<usize>> {
        let (mut score, left) = (planned.score, planned.left());
        while self.runs < MOST_RUNS {
            // How it stands before each group, and which groups break something.
            let mut stands = vec![Stand { condition: now.clone(), score: [0; 3] }];
            let mut broken = Vec::new();
            for at in 0..groups.len() {
                let Some(mut stand) = stands.last().cloned() else { break };
                let before = stand.score;
                self.through(&groups, at, &mut stand, &mut |_, _| {});
                if stand.score != before {
                    broken.push(at);
                }
                stands.push(stand);
            }
            let moved = broken.into_iter().find_map(|at| self.help(&groups, &stands, at, score, &left));
            let Some((reached, better)) = moved else { break };
            score = reached;
            groups = better;
        }
        (score < planned.score).then(|| groups.concat())
    }

    /// The best move that may help a group: itself elsewhere, or another one to its other side.
    fn help(
        &mut self,
        groups: &[Group],
        stands: &[Stand],
        at: usize,
        score: Score,
        left: &Left,
    ) -> Option<(Score, Vec<Group>)> {
        let itself = (0..groups.len()).map(|to| (at, to));
        let others = (0..groups.len()).map(|from| (from, at));
        let mut moves: Vec<(usize, usize)> = itself.chain(others).filter(|(from, to)| from != to).collect();
        // Shortest moves first, so that of equals the shortest is kept.
        measure::order::sort_by(&mut moves, &|a, b| a.0.abs_diff(a.1).cmp(&b.0.abs_diff(b.1)));
        let mut best: Option<(Score, Vec<Group>)> = None;
        for (from, to) in moves {
            if self.runs >= MOST_RUNS {
                break;
            }
            let least = best.as_ref().map_or(score, |(score, _)| *score);
            let mut moved = groups.to_vec();
            let group = moved.remove(from);
            moved.insert(to, group);
            let first = from.min(to);
            let mut stand = stands[first].clone();
            for at in first..moved.len() {
                // It can only get worse.
                if stand.score >= least {
                    break;
                }
                self.through(&moved, at, &mut stand, &mut |_, _| {});
            }
            let leaves = stand.left();
            let mut pairs = leaves.as_flattened().iter().zip(left.as_flattened());
            if stand.score < least && pairs.all(|(now, was)| !now || *was) {
                best = Some((stand.score, moved));
            }
        }
        best
    }
}

/// Steps that belong together, in order.
fn groups(steps: &[(StepId, &Work)]) -> Vec<Vec<usize>> {
    let mut groups: Vec<(&str, Vec<usize>)> = Vec::new();
    for (at, (_, work)) in steps.iter().enumerate() {
        let kind = work.kind().name;
        match groups.last_mut() {
            Some((head, group)) if follows(head, kind) => group.push(at),
            _ => groups.push((kind, vec![at])),
        }
    }
    groups.into_iter().map(|(_, group)| group).collect()
}

/// Whether work of a kind belongs to what a group began with.
fn follows(head: &str, kind: &str) -> bool {
    match kind {
        "rinse" => matches!(head, "dye" | "wash" | "disinfect"),
        "dry" => matches!(head, "dye" | "wash" | "disinfect" | "rinse" | "straighten" | "heat_set" | "product"),
        "release" => head == "heat_set",
        _ => false,
    }
}
