//! The list of wigs: the demo first, the own ones below, never mixed.
//!
//! What it is: the first page. What it is not: a search.

use record::{history::entry::LogId, id::WigId, wig::figures::Wig};
use yew::prelude::*;

use crate::parts::plain::{p, title};

use crate::{
    pages::safe::keeping,
    shell::{
        route::{Route, Tab},
        talk::{choice, t, ta},
    },
    store::{desk::Desk, model::Whose},
};

/// The page.
pub fn page(desk: &Desk) -> Html {
    let model = desk.model();
    // However its rows came here: a demo stands once, and only as the demo.
    let mut own = model.own.wigs();
    own.retain(|(wig, _)| !model.demos.contains(wig));
    html! {
        <>
            { title("web.nav_wigs") }
            { p("lead", t("web.lead")) }
            <p><a class="button primary" href={Route::Start.href()}>{ t("web.start") }</a></p>
            { keeping(desk, !own.is_empty()) }
            <ul class="wigs">
                { for model.demos.iter().map(|wig| card(desk, Whose::Demo, *wig)) }
                { for own.iter().map(|(wig, _)| card(desk, Whose::Own, *wig)) }
            </ul>
            if own.is_empty() { { p("hint", t("web.no_wigs")) } }
        </>
    }
}

fn card(desk: &Desk, whose: Whose, id: WigId) -> Html {
    let log = LogId::Wig(id);
    let state = desk.state(whose, log);
    let wig = Wig::new(&state);
    let newer = desk.model().bench(whose).is_newer(log);
    html! {
        <li key={id.to_string()} class={classes!("card", (whose == Whose::Demo).then_some("demo"))}>
            <h2><a href={Route::Wig(id, Tab::Cap).href()}>{ wig.name() }</a></h2>
            if whose == Whose::Demo { { p("tag", t("web.demo")) } }
            if !wig.character().is_empty() { <p>{ wig.character() }</p> }
            <p class="hint">{ format!("{} · {}", choice(wig.fibre().name), choice(wig.cap().name)) }</p>
            if let Some(last) = state.last_done() {
                <p class="hint">{ ta("web.last_done", [last.date().to_string().into()]) }</p>
            }
            if newer { { p("reason", t("web.newer_wig")) } }
            <p class="actions">
                <a href={Route::Wig(id, Tab::Record).href()}>{ t("tab.record") }</a>
                <a href={Route::Wig(id, Tab::Weft).href()}>{ t("tab.weft") }</a>
            </p>
        </li>
    }
}
