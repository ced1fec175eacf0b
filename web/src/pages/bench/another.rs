//! Starting another wig like this one: its plan and look, not its history.
//!
//! What it is: one button with its question. What it is not: what carries over (see `record::history::another`).

use record::{
    history::{
        another,
        entry::{Body, LogId, Of},
    },
    id::StepId,
};
use yew::prelude::*;

use crate::{
    parts::{
        cell::use_cell,
        plain::{button, p},
    },
    shell::{
        route::{Route, Tab},
        talk::{say, t},
    },
    store::{desk::use_desk, model::Whose},
};

/// Like which wig.
#[derive(Properties, PartialEq)]
pub struct AnotherProps {
    /// Whose records it stands in; the new one is the person's own.
    pub whose: Whose,
    /// Its log.
    pub log: LogId,
}

/// The button.
#[component]
pub fn Another(props: &AnotherProps) -> Html {
    let desk = use_desk();
    let wearer = use_cell(|| false);
    let toggle = {
        let wearer = wearer.clone();
        Callback::from(move |_: Event| wearer.set(!wearer.get()))
    };
    let start = {
        let (desk, wearer, whose, log) = (desk.clone(), wearer.clone(), props.whose, props.log);
        Callback::from(move |_: MouseEvent| {
            let Some(wig) = desk.new_wig() else { return };
            let state = desk.state(whose, log);
            let name = say(&another::name(&state), &desk.model().prefs);
            let mut drawn = || desk.new_step().unwrap_or(StepId(wig.0));
            // A name that grew too long is cut by the person, not here: it starts as the same name.
            let bodies = another::like(&state, &name, wearer.get(), &mut drawn)
                .or_else(|_| another::like(&state, "", wearer.get(), &mut drawn))
                .unwrap_or_default();
            // The demo's lots stand on no own shelf.
            let ours = |body: &Body| {
                whose == Whose::Own
                    || !matches!(body, Body::Set(setting) if matches!(setting.key.of, Of::Lot(_)) || setting.key.slot == "main_lot")
            };
            let bodies: Vec<(LogId, Body)> =
                bodies.into_iter().filter(ours).map(|body| (LogId::Wig(wig), body)).collect();
            let then = Callback::from(move |safe: bool| {
                if safe {
                    Route::Wig(wig, Tab::Base).go();
                }
            });
            desk.write(Whose::Own, bodies, None, then);
        })
    };
    html! {
        <>
            { p("hint", t("web.another_hint")) }
            <label class="tick"><input type="checkbox" checked={wearer.get()} onchange={toggle} /><span>{ t("web.another_wearer") }</span></label>
            <p class="actions">{ button("", t("web.another_start"), start) }</p>
        </>
    }
}
