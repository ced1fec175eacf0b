//! The next step, on top: what it is, what to mind, and "Done".
//!
//! What it is: one step with its ways to record it. What it is not: the plan's order (see `plan`).

use record::{
    history::{
        desk,
        entry::{Body, LogId},
    },
    id::StepId,
    wig::{
        steps::{Planned, Progress, Step},
        work::Work,
    },
};
use yew::prelude::*;

use super::{
    checks,
    form::{Given, Named, WorkForm, given},
    names::Names,
    photo::PhotoNow,
    timer::{self, Timer},
};
use crate::{
    parts::{
        cell::use_cell,
        plain::{button, p},
        typed::text_of,
    },
    shell::{
        focus,
        talk::{t, ta},
    },
    store::{desk::use_desk, judge, model::Whose},
};

/// Which step.
#[derive(Properties, PartialEq)]
pub struct NextProps {
    /// Whose records.
    pub whose: Whose,
    /// Which log.
    pub log: LogId,
    /// Which step.
    pub step: StepId,
}

/// How the card is opened.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Open {
    No,
    But,
    Skip,
}

/// What a step's recording is filled with: its planned figures, the minutes the timer counted.
fn recorded(work: &Work, step: StepId, overruled: &str, more: bool) -> Given {
    let mut texts: Given = given(work).into_iter().filter(|(name, _)| *name != "minutes").collect();
    let counted = timer::minutes(&timer::address(&step.to_string())).map(|minutes| format!("{minutes} min"));
    let asked = work.kind().field("minutes").is_some();
    if let Some(minutes) = counted.filter(|_| asked) {
        texts.push(("minutes", minutes));
    }
    if !overruled.is_empty() {
        texts.push(("overruled", overruled.to_owned()));
    }
    if more {
        texts.push(("more_to_come", "yes".to_owned()));
    }
    texts
}

/// The step that comes next: begun ones first.
pub fn next_of<'a>(steps: &'a [Step<'a>]) -> Option<&'a Step<'a>> {
    let with = |progress| steps.iter().find(|step| step.progress() == progress);
    with(Progress::Begun).or_else(|| with(Progress::Open))
}

/// The card.
#[component]
pub fn Next(props: &NextProps) -> Html {
    let desk = use_desk();
    let open = use_cell(|| Open::No);
    let why = use_cell(String::new);
    let state = desk.state(props.whose, props.log);
    let steps = record::wig::steps::steps(&state);
    let Some(step) = steps.iter().find(|step| step.id == props.step) else { return html! {} };
    let planned = step.planned.clone();
    let work = planned.work.clone();
    let found = judge::findings(desk.model(), props.whose, props.log, &work);
    let overruled = checks::names(&found);
    let lots = desk.model().bench(props.whose).lots();
    let names = Names { lots: &lots };
    let (whose, log, id) = (props.whose, props.log, props.step);
    let address = timer::address(&id.to_string());
    let record = |more: bool| {
        let (desk, work, overruled, address) = (desk.clone(), work.clone(), overruled.clone(), address.clone());
        let open = open.clone();
        Callback::from(move |_: MouseEvent| {
            let mut pairs: Vec<(String, String)> =
                recorded(&work, id, &overruled, more).into_iter().map(|(name, text)| (name.to_owned(), text)).collect();
            pairs.push(("step".to_owned(), id.to_string()));
            // What the planned figures cannot be recorded with is asked for.
            let Ok(body) = judge::work(desk.model(), whose, log, work.kind(), &pairs) else { return };
            let (address, open) = (address.clone(), open.clone());
            let then = Callback::from(move |safe: bool| {
                if safe {
                    timer::clear(&address);
                    // What stood in the form is recorded now.
                    open.set(Open::No);
                    focus::later(vec!["bench-next".to_owned()]);
                }
            });
            desk.write(whose, vec![(log, body)], None, then);
        })
    };
    let toggle = |to: Open| {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| open.set(if open.get() == to { Open::No } else { to }))
    };
    let closed = {
        let (open, address) = (open.clone(), address.clone());
        Callback::from(move |()| {
            timer::clear(&address);
            open.set(Open::No);
            focus::later(vec!["bench-next".to_owned()]);
        })
    };
    let skip = {
        let (desk, why, planned, open) = (desk.clone(), why.clone(), planned.clone(), open.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let body = plan_again(&desk, whose, log, id, Planned { skipped: Some(why.get()), ..planned.clone() });
            open.set(Open::No);
            desk.write(whose, vec![(log, body)], None, Callback::noop());
        })
    };
    let on_why = {
        let why = why.clone();
        Callback::from(move |event: InputEvent| why.set(text_of(&event)))
    };
    let may = judge::planned(desk.model(), whose, log, &work);
    let done = t(if overruled.is_empty() { "web.done" } else { "web.done_judgement" });
    html! {
        <div class="card next-step">
            <p class="what"><strong>{ names.to_do(&work) }</strong></p>
            { p("", names.plan(&work)) }
            if step.progress() == Progress::Begun { { p("hint", ta("web.step_begun", [measure::say::Arg::Count(step.done.len() as i64)])) } }
            { checks::hazard_of(&work) }
            { checks::findings(&found, &desk.model().prefs) }
            if let Some(reason) = may.clone() { <p class="reason" role="alert">{ reason }</p> }
            <p class="actions">
                if may.is_none() { { button("primary", done, record(false)) } }
                { button("", t("web.done_but"), toggle(Open::But)) }
                if may.is_none() { { button("", t("web.more_to_come"), record(true)) } }
                { button("plain", t("web.skip_step"), toggle(Open::Skip)) }
                <PhotoNow {whose} {log} of={names.to_do(&work)} />
                // Each sitting counts anew.
                <Timer key={step.done.len()} {address} />
            </p>
            if open.get() == Open::But {
                <WorkForm {whose} {log} kind={Named(work.kind().name)} step={Some(id)} given={recorded(&work, id, "", false)} then={closed} />
            }
            if open.get() == Open::Skip {
                <form class="form" onsubmit={skip}>
                    <div class="figure">
                        <label for="skip-why">{ t("web.skip_why") }</label>
                        <input id="skip-why" type="text" maxlength="400" oninput={on_why} value={why.get()} />
                    </div>
                    <p class="actions"><button type="submit">{ t("web.skip_now") }</button></p>
                </form>
            }
        </div>
    }
}

/// Plans a step otherwise.
pub fn plan_again(desk: &crate::store::desk::Desk, whose: Whose, log: LogId, step: StepId, planned: Planned) -> Body {
    desk::plan_step(&desk.state(whose, log), step, planned)
}
