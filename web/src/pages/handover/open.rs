//! Opening what was sent: a link, what stood in a code, a sheet's file, a slip.
//!
//! What it is: from a text to a helper's lines or to a slip. What it is not: a way into the own wigs: nothing is added unasked.

use format::handover::link::{self, Opened};
use gloo_events::EventListener;
use record::{history::entry::LogId, id::WigId};
use wasm_bindgen::JsValue;
use yew::prelude::*;

use super::{ACCEPT, FILE_MOST, helper::Helper, take::Take};
use crate::{
    parts::{
        cell::{Cell, use_cell},
        plain::{button, p, title},
        typed::text_of,
    },
    shell::{
        js,
        route::Route,
        talk::{say, t},
    },
    store::{
        desk::{Desk, use_desk},
        drafts,
    },
};

/// Where the last sheet is kept, so that a phone that closes the page does not lose it.
const LAST: &str = "handover-last";

#[derive(Clone, PartialEq)]
enum Seen {
    Nothing,
    Refused(String),
    Here(Box<Opened>),
}

/// Takes the payload out of the address, which is cleared: a screen shown to others must not hand it on.
fn taken() -> Option<String> {
    let window = web_sys::window()?;
    let hash = window.location().hash().ok()?;
    let payload = hash.strip_prefix(link::ROUTE)?.to_owned();
    // An address that cannot be cleared is still read; the person can close the window.
    if let Ok(history) = window.history() {
        drop(history.replace_state_with_url(&JsValue::NULL, "", Some(&Route::Open.href())));
    }
    Some(payload).filter(|payload| !payload.is_empty())
}

/// The page.
#[component]
pub fn Open() -> Html {
    let desk = use_desk();
    let typed = use_cell(String::new);
    let seen = {
        let desk = desk.clone();
        use_cell(move || match taken() {
            Some(payload) => look(&desk, &payload),
            None => drafts::read(LAST).map_or(Seen::Nothing, |payload| look(&desk, &payload)),
        })
    };
    {
        let (desk, seen) = (desk.clone(), seen.clone());
        use_effect_with((), move |()| {
            let listener = web_sys::window().map(|window| {
                EventListener::new(&window, "hashchange", move |_| {
                    if let Some(payload) = taken() {
                        seen.set(look(&desk, &payload));
                    }
                })
            });
            move || drop(listener)
        });
    }
    let pick = {
        let (desk, seen) = (desk.clone(), seen.clone());
        Callback::from(move |_: MouseEvent| {
            let (desk, seen) = (desk.clone(), seen.clone());
            wasm_bindgen_futures::spawn_local(async move {
                match js::pick_text_file(ACCEPT, FILE_MOST).await {
                    Ok(None) => {}
                    Ok(Some((_, text))) => seen.set(look(&desk, &text)),
                    Err(error) => seen.set(Seen::Refused(error.message)),
                }
            });
        })
    };
    let paste = {
        let (desk, seen, typed) = (desk.clone(), seen.clone(), typed.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            seen.set(look(&desk, &typed.get()));
        })
    };
    let on_typed = {
        let typed = typed.clone();
        Callback::from(move |event: InputEvent| typed.set(text_of(&event)))
    };
    html! {
        <>
            { title("web.open_title") }
            { p("lead", t("web.open_lead")) }
            <form class="form" onsubmit={paste}>
                <div class="figure">
                    <label for="open-link">{ t("web.open_link") }</label>
                    <input id="open-link" type="text" autocomplete="off" oninput={on_typed} value={typed.get()} />
                </div>
                <p class="actions">
                    <button type="submit">{ t("web.open_now") }</button>
                    { button("", t("web.open_file"), pick) }
                </p>
            </form>
            { shown(&desk, &seen) }
        </>
    }
}

fn look(desk: &Desk, text: &str) -> Seen {
    match link::open(text) {
        Ok(opened) => {
            if let Opened::Handed(handed) = &opened
                && let Ok(payload) = format::handover::handed::payload(handed)
            {
                // Where this browser keeps no drafts the sheet lives as long as the page.
                drafts::keep(LAST, &payload);
            }
            Seen::Here(Box::new(opened))
        }
        Err(reason) => Seen::Refused(say(&reason, &desk.model().prefs)),
    }
}

fn shown(desk: &Desk, seen: &Cell<Seen>) -> Html {
    match seen.get() {
        Seen::Nothing => html! {},
        Seen::Refused(reason) => html! { <p class="reason" role="alert">{ reason }</p> },
        Seen::Here(opened) => match *opened {
            Opened::Handed(handed) => {
                let close = {
                    let seen = seen.clone();
                    Callback::from(move |_: MouseEvent| {
                        drafts::drop(LAST);
                        seen.set(Seen::Nothing);
                    })
                };
                let key = format!("{}{}", handed.wig, handed.lamport);
                html! { <>
                    <Helper {key} {handed} />
                    <p class="actions">{ button("plain", t("web.open_close"), close) }</p>
                </> }
            }
            Opened::Slip(slip) => slip_here(desk, slip.wig, html! { <Take slip={slip.clone()} /> }, &slip.name),
        },
    }
}

/// A slip goes into the wig it is for, if that wig is here.
fn slip_here(desk: &Desk, wig: WigId, take: Html, name: &str) -> Html {
    match desk.model().whose(wig) {
        Some(whose) => {
            let here = desk.state(whose, LogId::Wig(wig));
            let known = record::wig::figures::Wig::new(&here).name().to_owned();
            html! { <><h2>{ crate::shell::talk::ta("web.slip_for", [known.into()]) }</h2>{ take }</> }
        }
        None => {
            html! { <p class="reason" role="alert">{ crate::shell::talk::ta("web.slip_no_wig", [name.to_owned().into()]) }</p> }
        }
    }
}
