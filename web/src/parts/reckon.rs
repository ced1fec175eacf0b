//! The weft answer, reckoned in small steps while the page stays alive.
//!
//! What it is: a hook over the planner's job. What it is not: the sum.

use std::rc::Rc;

use measure::civil::{Date, Minute};
use plan::{
    cutting::STEP_UNITS,
    pace::Paces,
    shopping::{Answer, Job, Step, Stop},
};
use record::{history::fold::State, workshop::lots::Lot};
use yew::prelude::*;

use super::cell::use_cell;
use crate::shell::js;

/// An answer, or why there is none.
pub type Reckoned = Result<Answer, Stop>;

/// Today on this device.
pub fn today() -> Option<Date> {
    Minute::read(&js::now_local_minute()).map(Minute::date)
}

/// The answer for these records, as soon as it is there; `true` while a newer one is being reckoned.
#[hook]
pub fn use_answer(state: Rc<State>, lots: Rc<Vec<Lot>>, paces: Paces) -> (Option<Rc<Reckoned>>, bool) {
    let answer = use_cell(|| None::<Rc<Reckoned>>);
    let turn = use_mut_ref(|| 0_u32);
    let busy = use_cell(|| true);
    {
        let (answer, busy) = (answer.clone(), busy.clone());
        use_effect_with((state, lots, paces), move |(state, lots, paces)| {
            let mine = {
                let mut turn = turn.borrow_mut();
                *turn += 1;
                *turn
            };
            busy.set(true);
            let turn = turn.clone();
            if let Some(today) = today() {
                let mut job = Job::new((**state).clone(), (**lots).clone(), today).at_pace(paces.clone());
                wasm_bindgen_futures::spawn_local(async move {
                    loop {
                        if *turn.borrow() != mine {
                            return;
                        }
                        if let Step::Done(done) = job.step(STEP_UNITS) {
                            answer.set(Some(Rc::new(*done)));
                            busy.set(false);
                            return;
                        }
                        gloo_timers::future::TimeoutFuture::new(0).await;
                    }
                });
            }
        });
    }
    (answer.get(), busy.get())
}
