//! A wig: its name, its pages, and whether it is the demo.
//!
//! What it is: what all pages of a wig share. What it is not: any one of them.

use record::{
    history::{entry::LogId, fold::Oddity},
    id::WigId,
    wig::figures::Wig,
};
use yew::prelude::*;

use crate::parts::plain::p;

use crate::{
    shell::{
        route::{Route, Tab},
        talk::{t, ta},
    },
    store::{desk::Desk, model::Whose},
};

/// The frame of a wig's pages, round one of them.
pub fn frame(desk: &Desk, id: WigId, whose: Whose, here: Tab, page: Html) -> Html {
    let log = LogId::Wig(id);
    let state = desk.state(whose, log);
    let wig = Wig::new(&state);
    let conflicts = state
        .oddities()
        .iter()
        .filter(|oddity| matches!(oddity, Oddity::TwoAnswers(_) | Oddity::TwoCorrections(_) | Oddity::Clash(_)))
        .count();
    html! {
        <>
            <div class="wig-head">
                <h1 id="page-title" tabindex="-1">
                    { wig.name() }<span class="visually-hidden">{ format!(": {}", t(&format!("tab.{}", here.name()))) }</span>
                </h1>
                if whose == Whose::Demo { { p("tag demo-tag", t("web.demo_wig")) } }
                if !wig.character().is_empty() { <p class="hint">{ wig.character() }</p> }
            </div>
            if desk.model().bench(whose).is_newer(log) {
                <div class="banner stop" role="status">{ p("", t("web.newer_wig")) }</div>
            }
            if conflicts > 0 {
                <div class="banner" role="status"><p>{ ta("web.conflicts", [measure::say::Arg::Count(conflicts as i64)]) }</p></div>
            }
            <nav class="tabs" aria-label={t("web.wig_nav")}>
                <ul>
                    { for Tab::ALL.iter().map(|tab| {
                        let current = (*tab == here).then_some("page");
                        html! { <li><a href={Route::Wig(id, *tab).href()} aria-current={current}>{ t(&format!("tab.{}", tab.name())) }</a></li> }
                    }) }
                </ul>
            </nav>
            { page }
            if let Some(next) = Tab::ALL.iter().skip_while(|tab| **tab != here).nth(1) {
                <p class="next"><a class="button" href={Route::Wig(id, *next).href()}>
                    { ta("web.next", [measure::say::Arg::Text(t(&format!("tab.{}", next.name())))]) }
                </a></p>
            }
        </>
    }
}
