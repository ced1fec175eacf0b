//! The plan of work: steps in an order, each with the work planned for it.
//!
//! What it is: what stands of the plan, read from a state. What it is not: which steps a wig needs (see the `plan` room).

use crate::{
    field::Value,
    history::{
        entry::{Key, Of},
        fold::{Done, State},
    },
    id::StepId,
    wig::work::Work,
};

/// The slot that holds a step.
pub const SLOT: &str = "step";

/// Between two places of a fresh plan, so that a step can be moved in between without touching the rest.
pub const GAP: u32 = 1024;

/// What is planned for a step.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Planned {
    /// Where it stands: smaller is earlier; equal places stand by identity.
    pub place: u32,
    /// The work, with planned figures.
    pub work: Work,
    /// Why it is left out, where it is.
    pub skipped: Option<String>,
}

/// How far a step is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Progress {
    /// Still to do.
    Open,
    /// Begun: a sitting was recorded and more are to come.
    Begun,
    /// Done.
    Done,
    /// Left out.
    Skipped,
}

/// A step as it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Step<'a> {
    /// Its identity.
    pub id: StepId,
    /// What is planned.
    pub planned: &'a Planned,
    /// Whether two people planned it otherwise without having seen each other.
    pub two_answers: bool,
    /// What was recorded for it, in bench order.
    pub done: Vec<&'a Done>,
}

impl Step<'_> {
    /// How far it is.
    pub fn progress(&self) -> Progress {
        let more = |done: &&&Done| done.work.get("more_to_come").and_then(Value::yes) == Some(true);
        match self.done.last() {
            Some(last) if more(&last) => Progress::Begun,
            Some(_) => Progress::Done,
            None if self.planned.skipped.is_some() => Progress::Skipped,
            None => Progress::Open,
        }
    }

    /// Recordings that each say the step is done: more than one is to be asked about, not counted twice.
    pub fn recorded_done(&self) -> usize {
        self.done.iter().filter(|done| done.work.get("more_to_come").and_then(Value::yes) != Some(true)).count()
    }
}

/// The steps of a plan, in its order.
pub fn steps(state: &State) -> Vec<Step<'_>> {
    let mut steps = Vec::new();
    for (key, held) in state.values() {
        if let (Key { slot: SLOT, of: Of::Step(id) }, Some(Value::Planned(planned))) = (key, &held.value) {
            let done = state.works().iter().filter(|done| step_of(&done.work) == Some(id)).collect();
            steps.push(Step { id, planned, two_answers: held.two_answers, done });
        }
    }
    let place = |step: &Step<'_>| (step.planned.place, step.id);
    measure::order::sort_by(&mut steps, &|a, b| place(a).cmp(&place(b)));
    steps
}

/// The step that work was done for.
pub fn step_of(work: &Work) -> Option<StepId> {
    match work.get("step") {
        Some(Value::Step(step)) => Some(*step),
        _ => None,
    }
}

/// A place between two others, or none where they lie next to each other.
pub fn between(before: Option<u32>, after: Option<u32>) -> Option<u32> {
    match (before, after) {
        (None, None) => Some(GAP),
        (Some(before), None) => before.checked_add(GAP),
        (before, Some(after)) => {
            let low = before.map_or(0, |before| before.saturating_add(1));
            (low < after).then(|| low + (after - low) / 2)
        }
    }
}
