//! What leaves this device: nothing. And the page for an address that leads nowhere.
//!
//! What it is: two short texts. What it is not: terms.

use yew::prelude::*;

use crate::shell::{route::Route, talk::t};

/// The page.
pub fn page() -> Html {
    html! {
        <article class="text">
            <h1 id="page-title" tabindex="-1">{ t("web.privacy_title") }</h1>
            { for ["web.privacy_1", "web.privacy_2", "web.privacy_3", "web.privacy_4"].iter().map(|key| html! { <p>{ t(key) }</p> }) }
            <h2>{ t("web.about_title") }</h2>
            <p>{ t("web.about_1") }</p>
            <p>{ t("web.about_2") }</p>
            <p class="hint">{ format!("Weftbook {}", env!("CARGO_PKG_VERSION")) }</p>
        </article>
    }
}

/// Nothing here.
pub fn missing() -> Html {
    html! {
        <article class="text">
            <h1 id="page-title" tabindex="-1">{ t("web.missing_title") }</h1>
            <p>{ t("web.missing") }</p>
            <p><a class="button" href={Route::Wigs.href()}>{ t("web.nav_wigs") }</a></p>
        </article>
    }
}
