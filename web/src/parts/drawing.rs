//! A drawing on the page.
//!
//! What it is: the sheet's elements as the page's own, and touches on them told by what they mean.
//! What it is not: the drawing, or the only way to anything: lists beside it do the same by keyboard.

use sheet::drawing::{
    Drawing, Target, Voice,
    node::{Form, Node, node},
};
use wasm_bindgen::JsCast;
use yew::{
    prelude::*,
    virtual_dom::{VNode, VTag, VText},
};

use crate::{shell::talk::WORDS, store::desk::use_desk};

/// What is drawn.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The drawing.
    pub drawing: Drawing,
    /// A name for its class.
    #[prop_or("plain-drawing")]
    pub class: &'static str,
    /// Hears what was touched.
    #[prop_or_default]
    pub touched: Callback<Target>,
}

/// The part.
#[component]
pub fn Draw(props: &Props) -> Html {
    let desk = use_desk();
    let voice = Voice { words: &WORDS, prefs: &desk.model().prefs };
    let root = node(&props.drawing, &voice, Form::Embedded);
    let mut targets = Vec::new();
    let picture = element(&root, &mut targets);
    let onclick = {
        let touched = props.touched.clone();
        Callback::from(move |event: MouseEvent| {
            let place = event
                .target()
                .and_then(|target| target.dyn_into::<web_sys::Element>().ok())
                .and_then(|element| element.closest("[data-target]").ok().flatten())
                .and_then(|element| element.get_attribute("data-target"))
                .and_then(|place| place.parse::<usize>().ok());
            if let Some(target) = place.and_then(|place| targets.get(place)) {
                touched.emit(*target);
            }
        })
    };
    html! { <div class={classes!("drawing", props.class)} {onclick}>{ picture }</div> }
}

fn element(of: &Node, targets: &mut Vec<Target>) -> VNode {
    let mut tag = VTag::new(of.tag);
    for (name, value) in &of.attributes {
        tag.add_attribute(name, value.clone());
    }
    if let Some(target) = of.target {
        tag.add_attribute("data-target", targets.len().to_string());
        targets.push(target);
    }
    if let Some(text) = &of.text {
        tag.add_child(VText::new(text.clone()).into());
    }
    for child in &of.children {
        tag.add_child(element(child, targets));
    }
    tag.into()
}
