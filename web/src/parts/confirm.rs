//! A button that asks once more in its own place.
//!
//! What it is: two taps for what cannot be taken back lightly. What it is not: a dialog.

use yew::prelude::*;

use super::cell::Cell;
use crate::shell::{focus, talk::t};

/// The button, or its question; `asked` belongs to the part around it.
pub fn confirm(asked: &Cell<bool>, id: &str, label: String, ask: String, then: Callback<MouseEvent>) -> Html {
    let yes_id = format!("{id}-yes");
    let set = |value: bool, focus_to: &str| {
        let (asked, focus_to) = (asked.clone(), focus_to.to_owned());
        Callback::from(move |_: MouseEvent| {
            asked.set(value);
            focus::later(vec![focus_to.clone()]);
        })
    };
    if !asked.get() {
        return html! { <button type="button" id={id.to_owned()} onclick={set(true, &yes_id)}>{ label }</button> };
    }
    html! {
        <span class="confirm" role="group" aria-label={ask.clone()}>
            <span>{ ask }</span>
            <button type="button" id={yes_id.clone()} onclick={then}>{ t("web.yes") }</button>
            <button type="button" onclick={set(false, id)}>{ t("web.no") }</button>
        </span>
    }
}
