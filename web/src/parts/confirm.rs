//! A button that asks once more in its own place.
//!
//! What it is: two taps for what cannot be taken back lightly. What it is not: a dialog.

use yew::prelude::*;

use crate::shell::talk::t;

/// What it does and says.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The button's words.
    pub label: String,
    /// What is asked.
    pub ask: String,
    /// What happens then.
    pub then: Callback<()>,
}

/// The part.
#[component]
pub fn Confirm(props: &Props) -> Html {
    let asked = use_state(|| false);
    let set = |value: bool| {
        let asked = asked.clone();
        Callback::from(move |_: MouseEvent| asked.set(value))
    };
    if !*asked {
        return html! { <button type="button" onclick={set(true)}>{ &props.label }</button> };
    }
    let yes = {
        let (asked, then) = (asked.clone(), props.then.clone());
        Callback::from(move |_: MouseEvent| {
            asked.set(false);
            then.emit(());
        })
    };
    html! {
        <span class="confirm" role="group" aria-label={props.ask.clone()}>
            <span>{ &props.ask }</span>
            <button type="button" onclick={yes}>{ t("web.yes") }</button>
            <button type="button" onclick={set(false)}>{ t("web.no") }</button>
        </span>
    }
}
