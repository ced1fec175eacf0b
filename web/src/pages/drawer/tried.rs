//! What this bench found out about a fibre: heat test locks and what worked.
//!
//! What it is: own locks with the window they give, and a form for one more. What it is not: the trade's windows.

use measure::say::Arg;
use record::{
    history::entry::LogId,
    search::Hit,
    trade::{fibres::Fibre, heat::Medium},
    workshop::locks,
};
use yew::prelude::*;

use crate::{
    pages::{
        bench::{Named, Names, work_form},
        find::hits,
    },
    parts::plain::{columns, folded, p, row},
    shell::talk::{WORDS, choice, t, ta},
    store::{desk::Desk, model::Whose},
};

/// Own heat test locks, the window they give, and a form for one more.
pub fn own(desk: &Desk, fibre: &'static Fibre) -> Html {
    let prefs = &desk.model().prefs;
    let form = work_form(
        Whose::Own,
        LogId::Workshop,
        Named("test_lock"),
        vec![("fibre", fibre.name.to_owned())],
        Callback::noop(),
    );
    html! {
        <>
            { for [Whose::Own, Whose::Demo].into_iter().map(|whose| {
                let all = desk.model().bench(whose).locks();
                let here: Vec<&locks::TestLock> = all.iter().filter(|lock| lock.fibre == fibre).collect();
                if here.is_empty() {
                    return if whose == Whose::Own { p("hint", t("web.no_locks")) } else { html! {} };
                }
                let lots = desk.model().bench(whose).lots();
                let heat = |heat| Arg::Temperature(heat).words(&WORDS, prefs);
                let windows = Medium::ALL.into_iter().filter_map(|medium| {
                    let window = locks::window(&all, fibre, None, medium)?;
                    let held = window.held_from.zip(window.held_to).map(|(low, high)| {
                        let (low, high) = (heat(low), heat(high));
                        if low == high { ta("web.own_at", [Arg::Text(low)]) } else { ta("web.own_window", [low, high].map(Arg::Text)) }
                    });
                    let harmed = |key| window.harmed_from.map(|harm| ta(key, [Arg::Text(heat(harm))]));
                    let words = match held {
                        Some(held) => harmed("web.own_harmed").into_iter().fold(held, |held, harm| format!("{held}, {harm}")),
                        None => harmed("web.own_harm").unwrap_or_else(|| t("web.own_nothing")),
                    };
                    let locks = match window.locks {
                        1 => t("web.own_lock"),
                        many => ta("web.own_locks", [Arg::Count(many as i64)]),
                    };
                    Some(html! { <li>{ format!("{}: {words}; {locks}", t(medium.label())) }</li> })
                });
                html! {
                    <>
                        if whose == Whose::Demo { { p("tag demo-tag", t("web.demo")) } }
                        <ul>{ for windows }</ul>
                        <div class="scroll" tabindex="0" role="group" aria-label={t("web.table")}><table>
                            { columns(&["web.lock_heat", "web.medium", "web.lock_shown", "web.lock_of"]) }
                            <tbody>{ for here.iter().map(|lock| row(heat(lock.temperature), vec![
                                html! { { lock.medium.map(|medium| t(medium.label())).unwrap_or_default() } },
                                html! { { choice(lock.result) } },
                                html! { { lots.iter().find(|lot| Some(lot.id) == lock.lot).map(|lot| lot.name.clone()).unwrap_or_default() } },
                            ])) }</tbody>
                        </table></div>
                    </>
                }
            }) }
            { folded(t("web.lock_add"), form) }
        </>
    }
}

/// What was done to this fibre, and how it turned out.
pub fn worked(desk: &Desk, fibre: &'static Fibre) -> Html {
    let mut any = false;
    let parts: Vec<Html> = [Whose::Own, Whose::Demo]
        .into_iter()
        .map(|whose| {
            let bench = desk.model().bench(whose);
            let worked = bench.index().worked(fibre.name);
            any |= !worked.is_empty();
            let names = Names { lots: &bench.lots() };
            let outcomes =
                worked.iter().flat_map(|worked| worked.outcomes.iter().map(move |outcome| (worked.kind, outcome)));
            html! { <>
                if whose == Whose::Demo && !worked.is_empty() { { p("tag demo-tag", t("web.demo")) } }
                { for outcomes.map(|(kind, outcome)| {
                let found: Vec<Hit> = outcome.tried.iter().map(|tried| tried.hit).collect();
                html! { <>
                    <h3>{ format!("{}: {}", t(&format!("work.{kind}")), choice(outcome.result)) }</h3>
                    { hits(desk, whose, &names, &found) }
                </> }
            }) }</> }
        })
        .collect();
    if any {
        html! { <>{ for parts }</> }
    } else {
        p("hint", t("web.nothing_worked"))
    }
}
