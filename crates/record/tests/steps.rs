//! The plan of work: whatever was merged has its steps, and a step moved stands where it was asked to.

#![allow(clippy::expect_used, reason = "a test")]

mod common;

use common::{entry, id, wild_history, work};
use measure::prefs::Prefs;
use proptest::{collection::vec, prelude::*};
use record::{
    field::Value,
    history::{
        desk,
        entry::Body,
        fold::{State, fold},
        log::Log,
    },
    id::StepId,
    wig::{
        steps::{self, GAP, Planned, Progress},
        work::{Work, kind_named},
    },
};

fn step(number: u8) -> StepId {
    StepId(id(number))
}

fn note(words: &str) -> Work {
    Work::read(kind_named("note").expect("a kind"), [("words", words)], &Prefs::default()).expect("a note")
}

/// A log that only grows.
struct Bench {
    log: Log,
    next: u8,
}

impl Bench {
    fn of(places: &[u32]) -> Bench {
        let mut bench = Bench { log: Log::default(), next: 100 };
        for (place, number) in places.iter().zip(1..) {
            let planned = Planned { place: *place, work: note("planned"), skipped: None };
            bench.add(desk::plan_step(&bench.state(), step(number), planned));
        }
        bench
    }

    fn add(&mut self, body: Body) {
        self.next += 1;
        self.log.add(entry(self.next, u64::from(self.next), body));
    }

    fn state(&self) -> State {
        fold(&self.log)
    }

    fn order(&self) -> Vec<StepId> {
        steps::steps(&self.state()).iter().map(|step| step.id).collect()
    }
}

/// Places close together, far apart, at the ends, all alike.
fn place() -> impl Strategy<Value = u32> {
    prop_oneof![0u32..4, (1u32..6).prop_map(|at| at * GAP), any::<u32>(), Just(u32::MAX), Just(u32::MAX - 1)]
}

proptest! {
    /// The asked order, move after move, however the places lie.
    #[test]
    fn a_moved_step_stands_where_it_was_asked_to(
        places in vec(place(), 1..7),
        moves in vec((any::<prop::sample::Index>(), any::<prop::sample::Index>()), 1..5),
    ) {
        let mut bench = Bench::of(&places);
        for (which, to) in moves {
            let mut expected = bench.order();
            let moved = expected.remove(which.index(expected.len()));
            let at = to.index(expected.len() + 1);
            let before = expected.get(at).copied();
            expected.insert(at, moved);
            let before_it = bench.state();
            for body in desk::move_step(&before_it, moved, before) {
                bench.add(body);
            }
            prop_assert_eq!(bench.order(), expected);
            // Only places changed, and nobody sees two answers.
            for step in steps::steps(&bench.state()) {
                prop_assert_eq!(&step.planned.work, &note("planned"));
                prop_assert!(!step.two_answers);
            }
        }
    }

    /// A fresh plan has room: one entry is enough to move a step.
    #[test]
    fn a_fresh_plan_moves_by_one_entry(
        many in 2u32..12,
        which in any::<prop::sample::Index>(),
        to in any::<prop::sample::Index>(),
    ) {
        let bench = Bench::of(&(1..=many).map(|at| at * GAP).collect::<Vec<_>>());
        let order = bench.order();
        let (which, to) = (order[which.index(order.len())], order[to.index(order.len())]);
        prop_assume!(which != to);
        prop_assert_eq!(desk::move_step(&bench.state(), which, Some(to)).len(), 1);
    }

    /// Steps of any merged history: each once, by place, with what was done for it.
    #[test]
    fn any_history_has_its_steps(history in wild_history()) {
        let state = fold(&Log::of(history));
        let all = steps::steps(&state);
        prop_assert!(all.windows(2).all(|pair| (pair[0].planned.place, pair[0].id) < (pair[1].planned.place, pair[1].id)));
        let planned = state.values().filter(|(_, held)| matches!(held.value, Some(Value::Planned(_)))).count();
        prop_assert_eq!(all.len(), planned);
        for step in &all {
            prop_assert!(step.done.iter().all(|done| steps::step_of(&done.work) == Some(step.id)));
            prop_assert!(step.recorded_done() <= step.done.len());
            match step.progress() {
                Progress::Open => prop_assert!(step.done.is_empty() && step.planned.skipped.is_none()),
                Progress::Skipped => prop_assert!(step.done.is_empty() && step.planned.skipped.is_some()),
                Progress::Done => prop_assert!(step.recorded_done() > 0),
                Progress::Begun => prop_assert!(step.recorded_done() < step.done.len()),
            }
        }
    }

    /// A place between two is between them, and none is given where there is none.
    #[test]
    fn between_is_between(before in prop::option::of(place()), after in prop::option::of(place())) {
        match steps::between(before, after) {
            Some(place) => {
                prop_assert!(before.is_none_or(|before| before < place));
                prop_assert!(after.is_none_or(|after| place < after));
            }
            None => {
                let no_room = match (before, after) {
                    (None, None) => false,
                    (Some(before), None) => before.checked_add(GAP).is_none(),
                    (before, Some(after)) => before.map_or(0, |before| before.saturating_add(1)) >= after,
                };
                prop_assert!(no_room);
            }
        }
    }

    /// Done for a step, then more to come: begun; a last sitting: done.
    #[test]
    fn work_for_a_step_moves_it_on(planned in work()) {
        let mut bench = Bench::of(&[]);
        bench.add(desk::plan_step(&bench.state(), step(1), Planned { place: 1, work: planned, skipped: None }));
        let sitting = |more: &str| {
            let step = step(1).to_string();
            let texts = [("words", "a sitting"), ("step", step.as_str()), ("more_to_come", more)];
            desk::work(kind_named("note").expect("a kind"), texts, &Prefs::default()).expect("a note")
        };
        let progress = |bench: &Bench| steps::steps(&bench.state()).first().map(|step| step.progress());
        prop_assert_eq!(progress(&bench), Some(Progress::Open));
        bench.add(sitting("yes"));
        prop_assert_eq!(progress(&bench), Some(Progress::Begun));
        bench.add(sitting("no"));
        prop_assert_eq!(progress(&bench), Some(Progress::Done));
        bench.add(desk::drop_step(&bench.state(), step(1)));
        prop_assert_eq!(progress(&bench), None);
    }
}
