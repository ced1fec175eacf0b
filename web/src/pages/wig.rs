//! A wig: its name, its pages, and whether it is the demo.
//!
//! What it is: what all pages of a wig share. What it is not: any one of them.

use record::{
    history::{entry::LogId, fold::Oddity},
    id::WigId,
    wig::figures::Wig,
};
use yew::prelude::*;

use crate::{
    shell::{
        route::{Route, Tab},
        talk::{t, ta},
    },
    store::{desk::use_desk, model::Whose},
};

/// Which wig, which page.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The wig.
    pub wig: WigId,
    /// Whose it is.
    pub whose: Whose,
    /// The page shown.
    pub tab: Tab,
    /// The page itself.
    pub children: Html,
}

/// The frame of a wig's pages.
#[component]
pub fn WigPage(props: &Props) -> Html {
    let desk = use_desk();
    let log = LogId::Wig(props.wig);
    let state = desk.state(props.whose, log);
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
                    { wig.name() }<span class="visually-hidden">{ format!(": {}", t(&format!("tab.{}", props.tab.name()))) }</span>
                </h1>
                if props.whose == Whose::Demo { <p class="tag demo-tag">{ t("web.demo_wig") }</p> }
                if !wig.character().is_empty() { <p class="hint">{ wig.character() }</p> }
            </div>
            if desk.model().bench(props.whose).is_newer(log) {
                <div class="banner stop" role="status"><p>{ t("web.newer_wig") }</p></div>
            }
            if conflicts > 0 {
                <div class="banner" role="status"><p>{ ta("web.conflicts", [measure::say::Arg::Count(conflicts as i64)]) }</p></div>
            }
            <nav class="tabs" aria-label={t("web.wig_nav")}>
                <ul>
                    { for Tab::ALL.iter().map(|tab| {
                        let current = (*tab == props.tab).then_some("page");
                        html! { <li><a href={Route::Wig(props.wig, *tab).href()} aria-current={current}>{ t(&format!("tab.{}", tab.name())) }</a></li> }
                    }) }
                </ul>
            </nav>
            { props.children.clone() }
        </>
    }
}
