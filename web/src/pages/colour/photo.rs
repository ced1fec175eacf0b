//! A colour off a photo: touched, or judged against something white beside it.
//!
//! What it is: a button, the photo, what was touched. What it is not: a measurement: a phone photo is what it is.

use plan::colour::white::against_white;
use record::wig::shade::Shade;
use yew::prelude::*;

use crate::{
    parts::{
        cell::use_cell,
        plain::{button, p},
    },
    shell::{js, talk::t},
};

/// What hears of the colour.
#[derive(Properties, PartialEq)]
pub struct PhotoProps {
    /// Identity of the place the photo is drawn in.
    pub id: String,
    /// Whether the first touch is on something white.
    pub white: bool,
    /// Hears of the colour.
    pub picked: Callback<String>,
}

/// The part.
#[component]
pub fn FromPhoto(props: &PhotoProps) -> Html {
    let white = use_cell(|| None::<Shade>);
    let said = use_cell(|| None::<String>);
    let there = use_cell(|| false);
    // The photo outlives a drawing of the page: each touch asks whoever listens now.
    let listens = use_mut_ref(|| props.picked.clone());
    *listens.borrow_mut() = props.picked.clone();
    let host = format!("{}-photo", props.id);
    let open = {
        let (host, white, said, there) = (host.clone(), white.clone(), said.clone(), there.clone());
        let (wants_white, listens) = (props.white, listens.clone());
        Callback::from(move |_: MouseEvent| {
            let (host, white, said, there, listens) =
                (host.clone(), white.clone(), said.clone(), there.clone(), listens.clone());
            white.set(None);
            wasm_bindgen_futures::spawn_local(async move {
                let tapped = {
                    let (white, said) = (white.clone(), said.clone());
                    move |red: u8, green: u8, blue: u8| {
                        let shade = Shade([red, green, blue]);
                        let picked = listens.borrow().clone();
                        if !wants_white {
                            picked.emit(shade.to_string());
                            return;
                        }
                        match white.get() {
                            None => {
                                white.set(Some(shade));
                                said.set(Some(t("web.swatch_now_lock")));
                            }
                            Some(paper) => match against_white(shade, paper) {
                                Ok(shade) => {
                                    said.set(Some(shade.to_string()));
                                    picked.emit(shade.to_string());
                                }
                                Err(useless) => {
                                    white.set(None);
                                    said.set(Some(t(useless.key())));
                                }
                            },
                        }
                    }
                };
                there.set(js::tap_photo(&host, tapped).await);
            });
        })
    };
    let hint = if props.white { "web.swatch_white_hint" } else { "web.swatch_hint" };
    html! {
        <div class="from-photo">
            { p("hint", t(hint)) }
            <p class="actions">{ button("", t("web.swatch_choose"), open) }</p>
            if there.get() && props.white { <p role="status">{ said.get().unwrap_or_else(|| t("web.swatch_first_white")) }</p> }
            <div id={host}></div>
        </div>
    }
}
