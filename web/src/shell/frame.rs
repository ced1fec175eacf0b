//! The frame round every page: name, ways, how saving goes, what the person must hear.
//!
//! What it is: header and banners. What it is not: a page.

use yew::prelude::*;

use crate::parts::plain::{button, p};

use super::{
    js,
    route::Route,
    talk::{t, ta},
};
use crate::store::{
    desk::Desk,
    model::{Change, Opening, Saving},
};

/// The frame, round a page.
pub fn frame(desk: &Desk, here: Route, page: Html) -> Html {
    let model = desk.model();
    let link = |route: Route, key: &str| {
        let inside = here == route
            || (route == Route::Wigs && matches!(here, Route::Wig(..)))
            || (route == Route::Fibres && matches!(here, Route::Fibre(_)));
        let current = inside.then_some("page");
        html! { <li><a href={route.href()} aria-current={current}>{ t(key) }</a></li> }
    };
    html! {
        <>
            <a class="skip" href="#page-title" onclick={Callback::from(|event: MouseEvent| {
                event.prevent_default();
                js::focus_id("page-title");
            })}>{ t("web.skip") }</a>
            <header class="top">
                <p class="brand"><a href={Route::Wigs.href()}>{ "Weftbook" }</a></p>
                <nav aria-label={t("web.nav")}>
                    <ul>
                        { link(Route::Wigs, "web.nav_wigs") }
                        { link(Route::Lots, "web.nav_lots") }
                        { link(Route::Fibres, "web.nav_fibres") }
                        { link(Route::Find, "web.nav_find") }
                        { link(Route::Open, "web.nav_open") }
                        { link(Route::Safe, "web.nav_safe") }
                        { link(Route::Units, "web.nav_units") }
                    </ul>
                </nav>
                { saving(&model.saving) }
            </header>
            { failure(desk) }
            { update(desk) }
            <main id="main">
                { match &model.opening {
                    Opening::Waiting => html! { { p("waiting", t("web.opening")) } },
                    Opening::Ready => page,
                    Opening::Newer(detail) => trouble("web.store_newer", detail),
                    Opening::Unreadable(detail) => html! { <>
                        { trouble("web.store_unreadable", detail) }
                        { page }
                    </> },
                } }
            </main>
            <footer>
                <p><a href={Route::About.href()}>{ t("web.privacy_short") }</a></p>
            </footer>
        </>
    }
}

fn trouble(key: &str, detail: &str) -> Html {
    html! { <div class="banner stop" role="alert"><p>{ t(key) }</p><p class="detail">{ detail }</p></div> }
}

/// The quiet word that it is safe; loud words stand in the banner.
fn saving(saving: &Saving) -> Html {
    let (class, words) = match saving {
        Saving::Quiet => ("quiet", String::new()),
        Saving::Going => ("going", t("web.saving")),
        Saving::Safe(at) => ("safe", ta("web.saved_at", [at.clone().into()])),
        Saving::Failed(..) => ("failed", t("web.not_saved")),
    };
    html! { <p class={classes!("saving", class)} id="saving" role="status">{ words }</p> }
}

/// What was not saved stays on the screen until it is, or the person puts it aside.
fn failure(desk: &Desk) -> Html {
    let Saving::Failed(failure, entries, _) = &desk.model().saving else { return html! {} };
    let again = {
        let desk = desk.clone();
        Callback::from(move |_: MouseEvent| desk.try_again())
    };
    let file = {
        let entries = entries.clone();
        Callback::from(move |_: MouseEvent| {
            let rows: Vec<String> = entries.iter().filter_map(|entry| format::row::encode_row(entry).ok()).collect();
            js::download("weftbook-not-saved.json", "application/json", &format!("[{}]", rows.join(",")));
        })
    };
    let aside = {
        let desk = desk.clone();
        Callback::from(move |_: MouseEvent| desk.change(Change::Aside))
    };
    let why = match failure.kind.as_str() {
        "quota" => t("web.failed_quota"),
        "newer" => t("web.failed_newer"),
        "closed" | "blocked" => t("web.failed_closed"),
        _ => t("web.failed_other"),
    };
    html! {
        <div class="banner stop" id="not-saved" role="alert">
            <p><strong>{ t("web.not_saved") }</strong>{ " " }{ why }</p>
            <p class="detail">{ format!("{} {}", failure.message, failure.detail) }</p>
            <p class="actions">
                if !entries.is_empty() {
                    { button("", t("web.try_again"), again) }
                    { button("", t("web.save_to_file"), file) }
                }
                { button("plain", t("web.put_aside"), aside) }
            </p>
        </div>
    }
}

/// A new version is offered, and taken when the person says so.
fn update(desk: &Desk) -> Html {
    let Some(what) = &desk.model().update else { return html! {} };
    if what == "taken" {
        return html! { <div class="banner" role="status">{ p("", t("web.update_taken")) }</div> };
    }
    let take = {
        let desk = desk.clone();
        Callback::from(move |_: MouseEvent| {
            let desk = desk.clone();
            wasm_bindgen_futures::spawn_local(async move {
                if let Err(error) = js::take_update().await {
                    desk.change(Change::Failed(error.into(), Vec::new(), Vec::new()));
                }
            });
        })
    };
    html! {
        <div class="banner" id="update" role="status">
            { p("", t("web.update")) }
            <p class="actions">{ button("", t("web.update_take"), take) }</p>
        </div>
    }
}
