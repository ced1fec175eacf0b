//! A drawing on the page.
//!
//! What it is: the sheet's elements as the page's own, and touches on them told by what they mean.
//! What it is not: the drawing, or the only way to anything: lists beside it do the same by keyboard.

use measure::prefs::Prefs;
use sheet::drawing::{
    Drawing, Target, Voice,
    node::{Form, Node, node},
};
use wasm_bindgen::JsCast;
use yew::{
    prelude::*,
    virtual_dom::{VNode, VTag, VText},
};

use crate::shell::talk::WORDS;

/// A drawing, and what hears of touches on it.
pub fn draw(drawing: &Drawing, class: &'static str, touched: Option<&Callback<Target>>, prefs: &Prefs) -> Html {
    let voice = Voice { words: &WORDS, prefs };
    let root = node(drawing, &voice, Form::Embedded);
    let mut targets = Vec::new();
    let picture = element(&root, &mut targets);
    let onclick = {
        let touched = touched.cloned();
        Callback::from(move |event: MouseEvent| {
            let place = event
                .target()
                .and_then(|target| target.dyn_into::<web_sys::Element>().ok())
                .and_then(|element| element.closest("[data-target]").ok().flatten())
                .and_then(|element| element.get_attribute("data-target"))
                .and_then(|place| place.parse::<usize>().ok());
            if let Some((touched, target)) = touched.as_ref().zip(place.and_then(|place| targets.get(place))) {
                touched.emit(*target);
            }
        })
    };
    html! { <div class={classes!("drawing", class)} {onclick}>{ picture }</div> }
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
