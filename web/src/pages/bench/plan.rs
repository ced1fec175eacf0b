//! The plan of work: its steps in order, to move, leave out or add to.
//!
//! What it is: the list and what speaks against its order. What it is not: the next step (see `next`).

use std::rc::Rc;

use measure::{quantity::units, say::Arg};
use plan::{care, pace::Span};
use record::{
    history::{
        desk,
        entry::{Body, LogId},
    },
    id::StepId,
    wig::{
        figures::Wig,
        steps::{Planned, Progress, Step, steps},
        work::Work,
    },
};
use yew::prelude::*;

use super::{checks, names::Names, next::plan_again};
use crate::{
    parts::{
        cell::use_cell,
        plain::{button, folded, p},
        reckon::use_answer,
    },
    shell::talk::{say, t, ta},
    store::{
        desk::{Desk, use_desk},
        judge,
        model::Whose,
    },
};

/// Whose plan.
#[derive(Properties, PartialEq)]
pub struct PlanProps {
    /// Whose records.
    pub whose: Whose,
    /// Which log.
    pub log: LogId,
}

/// The list.
#[component]
pub fn PlanOfWork(props: &PlanProps) -> Html {
    let desk = use_desk();
    let asking = use_cell(|| false);
    let (whose, log) = (props.whose, props.log);
    let state = desk.state(whose, log);
    let all = steps(&state);
    let lots = desk.model().bench(whose).lots();
    let names = Names { lots: &lots };
    let is_past = |step: &Step<'_>| matches!(step.progress(), Progress::Done | Progress::Skipped);
    let past = all.iter().filter(|step| is_past(step)).count();
    let list = |shown: &dyn Fn(&Step<'_>) -> bool| {
        let items = all.iter().enumerate().filter(|(_, step)| shown(step));
        html! { <ol class="steps">{ for items.map(|(at, step)| item(&desk, whose, log, &names, &all, at, step)) }</ol> }
    };
    let ask = {
        let asking = asking.clone();
        Callback::from(move |_: MouseEvent| asking.set(!asking.get()))
    };
    html! {
        <>
            if all.is_empty() { { p("hint", t("web.plan_empty")) } } else { { hours(&desk, whose, &all) } }
            { order(&desk, whose, log, &all) }
            if past > 0 { { folded(ta("web.steps_past", [Arg::Count(past as i64)]), list(&|step| is_past(step))) } }
            if past < all.len() { { list(&|step| !is_past(step)) } }
            <p class="actions">{ button("", t("web.plan_ask"), ask) }</p>
            if asking.get() { <Suggested {whose} {log} /> }
        </>
    }
}

/// What is left to do, in hours, by the person's own pace.
fn hours(desk: &Desk, whose: Whose, all: &[Step<'_>]) -> Html {
    let open: Vec<&Work> = all
        .iter()
        .filter(|step| matches!(step.progress(), Progress::Open | Progress::Begun))
        .map(|step| &step.planned.work)
        .collect();
    if open.is_empty() {
        return p("", t("web.plan_all_done"));
    }
    let total = desk.model().bench(whose).paces().total(open.iter().copied());
    let span = |key, span: &Span| ta(key, [Arg::Time(span.likely), Arg::Time(span.low), Arg::Time(span.high)]);
    let mut words = vec![ta("web.plan_steps", [Arg::Count(open.len() as i64)]), span("web.plan_hours", &total.bench)];
    if total.waiting.high.get::<units::minute>() > 0.0 {
        words.push(span("web.plan_waiting", &total.waiting));
    }
    p("", words.join(" "))
}

/// What the order breaks, and the order that does not.
fn order(desk: &Desk, whose: Whose, log: LogId, all: &[Step<'_>]) -> Html {
    let open: Vec<(StepId, &Work)> = all
        .iter()
        .filter(|step| matches!(step.progress(), Progress::Open | Progress::Begun))
        .map(|step| (step.id, &step.planned.work))
        .collect();
    let found = judge::at_bench(desk.model(), whose, log, &|bench, now| care::order(bench, now, &open));
    // The next step's own findings stand on its card.
    let first = open.first().map(|(id, _)| *id);
    let later: Vec<&(StepId, care::Finding)> = found.findings.iter().filter(|(id, _)| Some(*id) != first).collect();
    if later.is_empty() && found.better.is_none() {
        return html! {};
    }
    let number = |id: &StepId| all.iter().position(|step| step.id == *id).map_or(0, |at| at as i64 + 1);
    let prefs = &desk.model().prefs;
    let better = found.better.map(|better| {
        let (desk, numbers) = (desk.clone(), better.iter().map(|id| number(id).to_string()).collect::<Vec<_>>());
        let take = Callback::from(move |_: MouseEvent| {
            let bodies: Vec<(LogId, Body)> =
                desk::order_steps(&desk.state(whose, log), &better).into_iter().map(|body| (log, body)).collect();
            desk.write(whose, bodies, None, Callback::noop());
        });
        html! { <>
            { p("", ta("web.plan_better", [Arg::Text(numbers.join(", "))])) }
            <p class="actions">{ button("primary", t("web.plan_take"), take) }</p>
        </> }
    });
    html! {
        <div class="banner" role="status">
            <p><strong>{ t("web.plan_breaks") }</strong></p>
            <ul class="cautions">
                { for later.into_iter().map(|(id, finding)| html! {
                    <li class="caution">
                        <strong class="weight">{ ta("web.plan_at", [Arg::Count(number(id))]) }</strong>
                        <span>{ say(&finding.what, prefs) }{ " " }<em>{ say(&finding.remedy, prefs) }</em></span>
                    </li>
                }) }
            </ul>
            { better.unwrap_or_default() }
        </div>
    }
}

fn item(
    desk: &Desk,
    whose: Whose,
    log: LogId,
    names: &Names<'_>,
    all: &[Step<'_>],
    at: usize,
    step: &Step<'_>,
) -> Html {
    let id = step.id;
    let (class, word) = match step.progress() {
        Progress::Open => ("open", "web.step_open"),
        Progress::Begun => ("begun", "web.step_begun_short"),
        Progress::Done => ("done", "web.step_done"),
        Progress::Skipped => ("skipped", "web.step_skipped"),
    };
    let moved = |before: Option<Option<StepId>>| {
        let desk = desk.clone();
        Callback::from(move |_: MouseEvent| {
            let Some(before) = before else { return };
            let bodies: Vec<(LogId, Body)> =
                desk::move_step(&desk.state(whose, log), id, before).into_iter().map(|body| (log, body)).collect();
            desk.write(whose, bodies, None, Callback::noop());
        })
    };
    let earlier = at.checked_sub(1).and_then(|before| all.get(before)).map(|step| Some(step.id));
    let later = (at + 1 < all.len()).then(|| all.get(at + 2).map(|step| step.id));
    let write = |body: Body| {
        let desk = desk.clone();
        Callback::from(move |_: MouseEvent| desk.write(whose, vec![(log, body.clone())], None, Callback::noop()))
    };
    let state = desk.state(whose, log);
    let open = !matches!(step.progress(), Progress::Done);
    let again = Planned { skipped: None, ..step.planned.clone() };
    let name = names.to_do(&step.planned.work);
    let about = |key: &'static str| {
        ta("web.about_step", [Arg::Text(t(key)), Arg::Count(at as i64 + 1), Arg::Text(name.clone())])
    };
    html! {
        <li key={id.to_string()} class={class} value={(at + 1).to_string()}>
            <p class="what"><strong>{ &name }</strong>{ " " }<span class="hint">{ t(word) }</span></p>
            { p("hint", names.plan(&step.planned.work)) }
            if let Some(why) = &step.planned.skipped { { p("hint", ta("web.skipped_because", [Arg::Text(why.clone())])) } }
            if step.two_answers { { p("reason", t("web.step_two_answers")) } }
            if step.recorded_done() > 1 { { p("reason", ta("web.step_twice", [Arg::Count(step.recorded_done() as i64)])) } }
            { checks::overruled(&step.done) }
            if open {
                <p class="entry-actions">
                    <button type="button" class="plain" aria-label={about("web.step_earlier")} disabled={earlier.is_none()} onclick={moved(earlier)}>{ t("web.step_earlier") }</button>
                    <button type="button" class="plain" aria-label={about("web.step_later")} disabled={later.is_none()} onclick={moved(later)}>{ t("web.step_later") }</button>
                    if step.planned.skipped.is_some() {
                        { button("plain", t("web.step_again"), write(plan_again(desk, whose, log, id, again))) }
                    }
                    <button type="button" class="plain" aria-label={about("web.step_remove")} onclick={write(desk::drop_step(&state, id))}>{ t("web.step_remove") }</button>
                </p>
            }
        </li>
    }
}

/// The steps this wig needs and does not have yet, from its weft plan and its condition.
#[component]
fn Suggested(props: &PlanProps) -> Html {
    let desk = use_desk();
    let (whose, log) = (props.whose, props.log);
    let state = desk.state(whose, log);
    let lots = desk.model().bench(whose).lots();
    let (answer, busy) = use_answer(state.clone(), lots.clone(), desk.model().bench(whose).paces().clone());
    if busy {
        return p("waiting", t("web.reckoning"));
    }
    let wig = Wig::new(&state);
    let answer = answer.as_ref().and_then(|answer| Rc::as_ref(answer).as_ref().ok());
    let wanted = plan::steps::missing(&state, plan::steps::suggest(&wig, answer, None));
    if wanted.is_empty() {
        return p("hint", t("web.plan_nothing_missing"));
    }
    let names = Names { lots: &lots };
    let take = {
        let (desk, wanted) = (desk.clone(), wanted.clone());
        Callback::from(move |_: MouseEvent| desk.plan_works(whose, log, wanted.clone(), Callback::noop()))
    };
    html! {
        <div class="card">
            { p("", t("web.plan_missing")) }
            <ol class="suggested">{ for wanted.iter().map(|work| html! { <li>{ names.step(work) }</li> }) }</ol>
            <p class="actions">{ button("primary", t("web.plan_add"), take) }</p>
        </div>
    }
}
