//! The bench of a wig: the next step, the plan of work, what else was done, how the wig is, what was done.
//!
//! What it is: one page. What it is not: its parts, a file each.

mod another;
pub mod checks;
mod condition;
pub mod form;
mod log;
pub mod names;
mod next;
pub mod photo;
mod plan;
mod timer;
pub mod words;

use record::{
    history::entry::LogId,
    id::WigId,
    wig::{
        steps::steps,
        work::{Group, KINDS},
    },
};
use yew::prelude::*;

pub use form::{Given, Named, WorkForm, given, work_form};
pub use names::Names;

use self::{
    another::Another,
    condition::AsItIs,
    log::History,
    next::{Next, next_of},
    plan::PlanOfWork,
};
use crate::{
    parts::{
        cell::use_cell,
        plain::{p, section},
        typed::text_of,
    },
    shell::talk::t,
    store::{desk::Desk, drafts, model::Whose},
};

/// The page.
pub fn page(desk: &Desk, wig: WigId, whose: Whose) -> Html {
    let log = LogId::Wig(wig);
    let state = desk.state(whose, log);
    let steps = steps(&state);
    let next = match next_of(&steps) {
        Some(step) => html! { <Next key={step.id.to_string()} {whose} {log} step={step.id} /> },
        None => p("hint", t(if steps.is_empty() { "web.next_none" } else { "web.plan_all_done" })),
    };
    html! {
        <>
            <section aria-labelledby="bench-next"><h2 id="bench-next" tabindex="-1">{ t("web.next_step") }</h2>{ next }</section>
            { section("bench-plan", "web.plan_of_work", html! { <PlanOfWork {whose} {log} /> }) }
            { section("bench-record", "web.record_else", html! { <AnyWork {whose} {log} /> }) }
            { section("bench-note", "web.record_note", work_form(whose, log, Named("note"), Vec::new(), Callback::noop())) }
            { section("bench-condition", "web.condition", html! { <AsItIs {whose} {log} /> }) }
            { photo::before_and_after(state.works(), whose) }
            { section("record-log", "web.record_log", html! { <History {whose} {log} /> }) }
            { section("bench-another", "web.another", html! { <Another {whose} {log} /> }) }
        </>
    }
}

/// Whose work.
#[derive(Properties, PartialEq)]
struct AnyProps {
    whose: Whose,
    log: LogId,
}

/// Any kind of work, picked from all.
#[component]
fn AnyWork(props: &AnyProps) -> Html {
    let (whose, log) = (props.whose, props.log);
    let named = |text: &str| KINDS.iter().find(|one| one.name == text).map_or("", |found| found.name);
    // What was chosen outlives a closed tab as what was typed does, until it is recorded.
    let address = format!("{log}.work-kind");
    let kind = use_cell(|| named(&drafts::read(&address).unwrap_or_default()));
    let then = {
        let address = address.clone();
        Callback::from(move |()| drafts::drop(&address))
    };
    let picked = {
        let kind = kind.clone();
        Callback::from(move |event: Event| {
            let text = text_of(&event);
            drafts::keep(&address, &text);
            kind.set(named(&text));
        })
    };
    let now = kind.get();
    html! {
        <>
            <div class="figure">
                <label for="work-kind">{ t("web.what_work") }</label>
                <select id="work-kind" onchange={picked}>
                    <option value="" selected={now.is_empty()}>{ t("web.choose") }</option>
                    { for Group::ALL.iter().map(|group| html! {
                        <optgroup label={t(group.label())}>
                            { for KINDS.iter().filter(|kind| kind.group == *group && kind.name != "note").map(|kind| html! {
                                <option value={kind.name} selected={kind.name == now}>{ t(&format!("work.{}", kind.name)) }</option>
                            }) }
                        </optgroup>
                    }) }
                </select>
            </div>
            if !now.is_empty() { <div key={now}>{ work_form(whose, log, Named(now), Vec::new(), then) }</div> }
        </>
    }
}
