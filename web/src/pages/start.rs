//! Starting a wig: four questions, everything else assumed.
//!
//! What it is: one short form. What it is not: the base's figures, which follow one by one.

use record::{
    history::entry::{LogId, Of},
    trade::{caps, fibres, sizes},
};
use yew::prelude::*;

use crate::parts::plain::{p, title};

use crate::{
    parts::{cell::use_cell, typed::text_of},
    shell::{
        js,
        route::{Route, Tab},
        talk::{choice, field, t},
    },
    store::{desk::use_desk, drafts, judge, model::Whose},
};

const DRAFT: &str = "start.";
const ASKED: [&str; 4] = ["name", "fibre", "cap", "size"];

fn usual(slot: &str) -> &'static str {
    match slot {
        "fibre" => "unknown",
        "cap" => "open_wefted",
        "size" => "medium",
        _ => "",
    }
}

/// The page.
#[component]
pub fn Start() -> Html {
    let desk = use_desk();
    let answers = use_cell(|| {
        ASKED.map(|slot| drafts::read(&format!("{DRAFT}{slot}")).unwrap_or_else(|| usual(slot).to_owned()))
    });
    let refusal = use_cell(|| None::<(&'static str, String)>);
    let set = {
        let answers = answers.clone();
        Callback::from(move |(place, text): (usize, String)| {
            drafts::keep(&format!("{DRAFT}{}", ASKED[place]), &text);
            let mut now = answers.get();
            now[place] = text;
            answers.set(now);
        })
    };
    let onsubmit = {
        let (desk, answers, refusal) = (desk.clone(), answers.clone(), refusal.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let answers = answers.get();
            if answers[0].trim().is_empty() {
                refusal.set(Some(("name", t("web.name_needed"))));
                js::focus_id("start-name");
                return;
            }
            let Some(wig) = desk.new_wig() else { return };
            let log = LogId::Wig(wig);
            let mut bodies = Vec::new();
            for (slot, text) in ASKED.iter().zip(answers.iter()) {
                match judge::set(desk.model(), Whose::Own, log, slot, Of::Wig, text) {
                    Ok(body) => bodies.push((log, body)),
                    Err(reason) => {
                        refusal.set(Some((slot, reason)));
                        js::focus_id(&format!("start-{slot}"));
                        return;
                    }
                }
            }
            let then = Callback::from(move |safe: bool| {
                if safe {
                    ASKED.iter().for_each(|slot| drafts::drop(&format!("{DRAFT}{slot}")));
                    Route::Wig(wig, Tab::Cap).go();
                }
            });
            desk.write(Whose::Own, bodies, None, then);
        })
    };
    let said = answers.get();
    let select = |place: usize, names: &[&'static str]| {
        let set = set.clone();
        let slot = ASKED[place];
        let onchange = Callback::from(move |event: Event| set.emit((place, text_of(&event))));
        html! {
            <div class="figure">
                <label for={format!("start-{slot}")}>{ field(slot) }</label>
                <select id={format!("start-{slot}")} {onchange}>
                    { for names.iter().map(|name| html! {
                        <option value={*name} selected={said[place] == *name}>{ choice(name) }</option>
                    }) }
                </select>
                if slot == "cap" { { cap_help() } }
            </div>
        }
    };
    let oninput = {
        let set = set.clone();
        Callback::from(move |event: InputEvent| set.emit((0, text_of(&event))))
    };
    html! {
        <>
            { title("web.start") }
            { p("lead", t("web.start_lead")) }
            <form class="form" {onsubmit} novalidate=true>
                <div class={classes!("figure", refusal.get().is_some().then_some("refused"))}>
                    <label for="start-name">{ field("name") }</label>
                    <input id="start-name" type="text" value={said[0].clone()} {oninput} autocomplete="off"
                        aria-describedby="start-note" aria-invalid={if refusal.get().is_some() { "true" } else { "false" }} />
                    <p class="note" id="start-note">
                        if let Some((_, reason)) = refusal.get() { <span class="reason" role="alert">{ reason }</span> }
                    </p>
                </div>
                { select(1, fibres::NAMES) }
                { select(2, caps::NAMES) }
                { select(3, sizes::NAMES) }
                <p class="actions"><button type="submit" class="primary">{ t("web.start_now") }</button></p>
            </form>
        </>
    }
}

/// Pictures beside words that a first-timer would not know.
fn cap_help() -> Html {
    html! {
        <details class="help">
            <summary>{ t("web.cap_help") }</summary>
            <ul class="caps">
                { for caps::CAPS.iter().map(|cap| html! {
                    <li>
                        <svg viewBox="0 0 64 48" class="cap-sign" aria-hidden="true" focusable="false">
                            <path class="outline" d="M8 44 C4 20 16 4 32 4 C48 4 60 20 56 44 L46 44 C46 36 44 30 44 30 L20 30 C20 30 18 36 18 44 Z" />
                            { for rows_of(cap.name).iter().map(|d| html! { <path class="row" d={*d} /> }) }
                            if cap.name == "wefted_lace_front" { <path class="net" d="M20 30 L44 30 L46 24 L18 24 Z" /> }
                            if cap.name == "wefted_closed_top" { <path class="skin" d="M22 12 C26 7 38 7 42 12 L40 22 L24 22 Z" /> }
                            if cap.name == "fully_knotted" { <path class="net" d="M8 44 C4 20 16 4 32 4 C48 4 60 20 56 44 L46 44 C46 36 44 30 44 30 L20 30 C20 30 18 36 18 44 Z" /> }
                        </svg>
                        <span>{ t(&format!("web.cap_{}", cap.name)) }</span>
                    </li>
                }) }
            </ul>
        </details>
    }
}

fn rows_of(cap: &str) -> &'static [&'static str] {
    match cap {
        "fully_knotted" => &[],
        _ => &[
            "M9 38 L17 38",
            "M47 38 L55 38",
            "M9 32 L18 32",
            "M46 32 L55 32",
            "M10 24 L54 24",
            "M13 17 L51 17",
            "M18 11 L46 11",
        ],
    }
}
