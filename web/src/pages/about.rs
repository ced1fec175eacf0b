//! What leaves this device: nothing. And the page for an address that leads nowhere.
//!
//! What it is: two short texts. What it is not: terms.

use yew::prelude::*;

use crate::parts::plain::{p, title};

use crate::shell::{route::Route, talk::t};

/// The page.
pub fn page() -> Html {
    html! {
        <article class="text">
            { title("web.privacy_title") }
            { for ["web.privacy_1", "web.privacy_2", "web.privacy_3", "web.privacy_4"].iter().map(|key| html! { <p>{ t(key) }</p> }) }
            <h2>{ t("web.about_title") }</h2>
            { p("", t("web.about_1")) }
            { p("", t("web.about_2")) }
            <p class="hint">{ format!("Weftbook {}", env!("CARGO_PKG_VERSION")) }</p>
        </article>
    }
}

/// Nothing here.
pub fn missing() -> Html {
    html! {
        <article class="text">
            { title("web.missing_title") }
            { p("", t("web.missing")) }
            <p><a class="button" href={Route::Wigs.href()}>{ t("web.nav_wigs") }</a></p>
        </article>
    }
}
