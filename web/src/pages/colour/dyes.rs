//! Dye on the shelf: what each packet or bottle is, what is left, its label to print.
//!
//! What it is: the workshop's dye, and which of it is for this wig. What it is not: a recipe.

use measure::say::Arg;
use record::{
    history::{
        desk,
        entry::{LogId, Of},
    },
    id::WigId,
    workshop::dyes::{Dose, Dye},
};
use sheet::{colour::label, drawing::Voice};
use yew::prelude::*;

use super::{Here, baths::dose};
use crate::{
    pages::bench::{Named, work_form},
    parts::{
        cell::use_cell,
        drawing::draw,
        field::{Stands, figure},
        plain::{button, folded, p},
        reckon::today,
    },
    shell::{
        focus, js,
        talk::{WORDS, choice, t, ta},
    },
    store::{
        desk::{Desk, use_desk},
        judge,
        model::Whose,
    },
};

/// The dyes as a wig sees them.
pub fn of_wig(here: &Here<'_>) -> Html {
    let (desk, whose, log) = (here.desk, here.whose, here.log);
    let LogId::Wig(wig) = log else { return html! {} };
    html! {
        <>
            { p("hint", t("web.dyes_hint")) }
            { add(desk, whose, Some(wig)) }
            { for here.dyes.iter().map(|dye| {
                let used = here.wig.uses_dye(dye.id);
                let toggle = {
                    let (desk, state, id) = (desk.clone(), desk.state(whose, log), dye.id);
                    Callback::from(move |_: MouseEvent| {
                        let text = if used { "no" } else { "yes" };
                        if let Ok(body) = desk::set(&state, log, "use_dye", Of::Lot(id), text, &desk.model().prefs) {
                            desk.write(whose, vec![(log, body)], None, Callback::noop());
                        }
                    })
                };
                html! {
                    <DyeCard key={dye.id.to_string()} {whose} dye={dye.clone()}>
                        <p class="actions"><button type="button" aria-pressed={if used { "true" } else { "false" }} onclick={toggle}>
                            { t(if used { "web.dye_used" } else { "web.dye_use" }) }
                        </button></p>
                    </DyeCard>
                }
            }) }
        </>
    }
}

/// All dye of the workshop.
pub fn shelf(desk: &Desk, whose: Whose) -> Html {
    html! {
        <>
            { add(desk, whose, None) }
            { for desk.model().bench(whose).dyes().iter().map(|dye| html! { <DyeCard key={dye.id.to_string()} {whose} dye={dye.clone()} /> }) }
        </>
    }
}

/// Adding a dye (meant for a wig, where one is named): its name first.
fn add(desk: &Desk, whose: Whose, wig: Option<WigId>) -> Html {
    let add = {
        let desk = desk.clone();
        Callback::from(move |_: MouseEvent| {
            let Some(lot) = desk.new_lot() else { return };
            let count = desk.model().bench(whose).dyes().len() + 1;
            let name = ta("web.new_dye_name", [Arg::Count(count as i64)]);
            let mut bodies = Vec::new();
            if let Ok(body) = judge::set(desk.model(), whose, LogId::Workshop, "stock_name", Of::Lot(lot), &name) {
                bodies.push((LogId::Workshop, body));
            }
            if let Some(wig) = wig {
                let log = LogId::Wig(wig);
                let state = desk.state(whose, log);
                if let Ok(body) = desk::set(&state, log, "use_dye", Of::Lot(lot), "yes", &desk.model().prefs) {
                    bodies.push((log, body));
                }
            }
            let after = Callback::from(move |safe: bool| {
                if safe {
                    focus::later(vec![format!("stock_name-{lot}")]);
                }
            });
            desk.write(whose, bodies, None, after);
        })
    };
    html! { <p class="actions"><button type="button" class="primary" id="add-dye" onclick={add}>{ t("web.add_dye") }</button></p> }
}

/// Which dye.
#[derive(Properties, PartialEq)]
struct CardProps {
    whose: Whose,
    dye: Dye,
    #[prop_or_default]
    children: Html,
}

/// A dye with all its fields.
#[component]
fn DyeCard(props: &CardProps) -> Html {
    let desk = use_desk();
    let prefs = desk.model().prefs.clone();
    let (whose, dye) = (props.whose, &props.dye);
    let fresh = use_cell(|| dye.packet.is_none());
    let labelled = use_cell(|| false);
    let field = |slot: &'static str, stands: Option<Stands>, hint: Option<&str>| {
        figure(whose, LogId::Workshop, slot, Of::Lot(dye.id), stands, hint)
    };
    let left = match dye.left {
        None => t("web.dye_not_weighed"),
        Some(left) => {
            let words = dose(Dose::new(dye.liquid, left.parts)).words(&WORDS, &prefs);
            match left.counted {
                Some(when) => ta("web.dye_left", [Arg::Text(words), Arg::Text(when.date().to_string())]),
                None => ta("web.dye_left_of_packet", [Arg::Text(words)]),
            }
        }
    };
    let class = dye.class.map_or_else(|| t("web.class_unknown"), |class| t(class.label()));
    let toggle = {
        let labelled = labelled.clone();
        Callback::from(move |_: MouseEvent| labelled.set(!labelled.get()))
    };
    let print = Callback::from(|_: MouseEvent| js::print());
    html! {
        <article class="card lot" aria-label={dye.name.clone()}>
            <h3>{ &dye.name }</h3>
            <p class="hint">{ format!("{class} · {left}") }</p>
            { props.children.clone() }
            <details open={fresh.get()}>
                <summary>{ t("web.dye_fields") }</summary>
                <div class="fields">
                    { field("stock_name", None, None) }
                    { field("stock_class", None, Some("web.stock_class_hint")) }
                    { field("stock_form", Some(Stands::plain(choice("powder"))), None) }
                    { field("stock_packet", None, Some("web.stock_packet_hint")) }
                    if dye.liquid { { field("stock_cap", Some(Stands::plain(prefs.volume(dye.cap))), None) } }
                    { field("stock_shade", None, Some("web.stock_shade_hint")) }
                    { field("stock_batch", None, None) }
                    { field("stock_price", None, None) }
                </div>
            </details>
            { folded(t("web.weigh_back"), html! { <>
                { p("hint", t("web.weigh_back_hint")) }
                { work_form(whose, LogId::Workshop, Named("count_dye"), vec![("stock", dye.id.to_string())], Callback::noop()) }
            </> }) }
            <p class="actions">{ button("plain", t(if labelled.get() { "web.label_close" } else { "web.label_open" }), toggle) }</p>
            if labelled.get() {
                <div class="label-sheet" id="dye-label" tabindex="-1">
                    { draw(&label::drawing(dye, today(), &Voice { words: &WORDS, prefs: &prefs }), "label", None, &prefs) }
                    <p class="actions">{ button("", t("web.label_print"), print) }</p>
                </div>
            }
        </article>
    }
}
