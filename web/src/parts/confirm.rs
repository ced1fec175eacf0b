//! A button that asks once more in its own place.
//!
//! What it is: two taps for what cannot be taken back lightly. What it is not: a dialog.

use yew::prelude::*;

use super::cell::use_cell;
use crate::shell::{focus, talk::t};

/// What it does and says.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The button's words.
    pub label: String,
    /// What is asked.
    pub ask: String,
    /// What happens then.
    pub then: Callback<()>,
    /// Its identity, for the focus.
    pub id: String,
}

/// The part.
#[component]
pub fn Confirm(props: &Props) -> Html {
    let asked = use_cell(|| false);
    let yes_id = format!("{}-yes", props.id);
    let set = |value: bool| {
        let (asked, focus) = (asked.clone(), if value { yes_id.clone() } else { props.id.clone() });
        Callback::from(move |_: MouseEvent| {
            asked.set(value);
            focus::later(vec![focus.clone()]);
        })
    };
    if !asked.get() {
        return html! { <button type="button" id={props.id.clone()} onclick={set(true)}>{ &props.label }</button> };
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
            <button type="button" id={yes_id.clone()} onclick={yes}>{ t("web.yes") }</button>
            <button type="button" onclick={set(false)}>{ t("web.no") }</button>
        </span>
    }
}
