//! Lots of weft: in the shop or owned, what each is, what is left.
//!
//! What it is: the workshop's shelf. What it is not: a plan.

use measure::say::Arg;
use record::{
    history::{
        desk,
        entry::{LogId, Of},
    },
    id::WigId,
    wig::{figure::Origin, work::count},
    workshop::lots::Lot,
};
use yew::prelude::*;

use crate::parts::plain::{folded, p, section, title};

use crate::{
    pages::bench::{Named, work_form},
    parts::{
        cell::use_cell,
        field::{Stands, figure},
    },
    shell::{
        focus,
        talk::{choice, t, ta},
    },
    store::{
        desk::{Desk, use_desk},
        judge,
        model::Whose,
    },
};

/// The page.
pub fn page(desk: &Desk) -> Html {
    let lots = desk.model().own.lots();
    html! {
        <>
            { title("web.nav_lots") }
            { p("lead", t("web.lots_lead")) }
            { add_lot(desk, Whose::Own, None) }
            if !lots.is_empty() { <h2 class="visually-hidden">{ t("web.on_shelf") }</h2> }
            { for lots.iter().map(|lot| html! { <LotCard key={lot.id.to_string()} whose={Whose::Own} lot={lot.clone()} /> }) }
            { section("shelf-dyes", "web.colour_dyes", crate::pages::colour::shelf(desk, Whose::Own)) }
        </>
    }
}

/// Adding a lot (meant for a wig, where one is named): its name first, everything else assumed until measured.
pub fn add_lot(desk: &Desk, whose: Whose, wig: Option<WigId>) -> Html {
    let add = {
        let desk = desk.clone();
        Callback::from(move |_: MouseEvent| {
            let Some(lot) = desk.new_lot() else { return };
            let count = desk.model().bench(whose).lots().len() + 1;
            let name = ta("web.new_lot_name", [Arg::Count(count as i64)]);
            let mut bodies = Vec::new();
            if let Ok(body) = judge::set(desk.model(), whose, LogId::Workshop, "lot_name", Of::Lot(lot), &name) {
                bodies.push((LogId::Workshop, body));
            }
            if let Some(wig) = wig {
                let state = desk.state(whose, LogId::Wig(wig));
                let fibre = record::wig::figures::Wig::new(&state).fibre().name;
                if let Ok(body) = judge::set(desk.model(), whose, LogId::Workshop, "lot_fibre", Of::Lot(lot), fibre) {
                    bodies.push((LogId::Workshop, body));
                }
                if let Ok(body) =
                    desk::set(&state, LogId::Wig(wig), "use_lot", Of::Lot(lot), "yes", &desk.model().prefs)
                {
                    bodies.push((LogId::Wig(wig), body));
                }
            }
            let after = Callback::from(move |safe: bool| {
                if safe {
                    focus::later(vec![format!("lot_name-{lot}")]);
                }
            });
            desk.write(whose, bodies, None, after);
        })
    };
    html! { <p class="actions"><button type="button" class="primary" id="add-lot" onclick={add}>{ t("web.add_lot") }</button></p> }
}

/// Which lot.
#[derive(Properties, PartialEq)]
pub struct CardProps {
    /// Whose records.
    pub whose: Whose,
    /// The lot.
    pub lot: Lot,
    /// More to say or do about it, from the page around.
    #[prop_or_default]
    pub children: Html,
}

/// A lot with all its fields.
#[component]
pub fn LotCard(props: &CardProps) -> Html {
    let desk = use_desk();
    let prefs = desk.model().prefs.clone();
    let (whose, log, lot) = (props.whose, LogId::Workshop, &props.lot);
    // A lot nobody has measured yet opens its fields; typing must not close them again.
    let fresh = use_cell(|| !lot.weight.origin.is_said() && !lot.width.origin.is_said());
    let of = Of::Lot(lot.id);
    let field =
        |slot: &'static str, stands: Option<Stands>, hint: Option<&str>| figure(whose, log, slot, of, stands, hint);
    let known = |slot: &'static str, likely: Arg, origin: &Origin, hint: Option<&str>| {
        field(slot, Some(Stands::figure(&likely, origin, &prefs)), hint)
    };
    let words = |value: &str| Some(Stands::plain(value));
    let left = &lot.left;
    let left_words = match left.counted {
        None => t("web.never_counted"),
        Some(when) => ta(
            "web.left",
            [
                Arg::Count(i64::from(left.whole_lengths)),
                Arg::Text(prefs.length(lot.piece())),
                Arg::Text(prefs.length(left.rest)),
                Arg::Text(when.date().to_string()),
                Arg::Text(prefs.run(left.used_since)),
            ],
        ),
    };
    html! {
        <article class="card lot" aria-label={lot.name.clone()}>
            <h3>{ &lot.name }</h3>
            <p class="hint">{ format!("{} · {} · {}", choice(lot.fibre.name), choice(lot.made), left_words) }</p>
            { props.children.clone() }
            <details open={fresh.get()}>
                <summary>{ t("web.lot_fields") }</summary>
                <div class="fields">
                    { field("lot_name", None, None) }
                    { field("lot_fibre", words(&choice("unknown")), None) }
                    { field("made", words(&choice("machine")), None) }
                    { field("layers", words(&choice(if lot.is_double() { "double" } else { "single" })), None) }
                    { known("pack_weight", Arg::Mass(lot.weight.likely), &lot.weight.origin, None) }
                    { known("pack_width", Arg::Length(lot.width.likely), &lot.width.origin, Some("web.width_hint")) }
                    { weft_picture() }
                    { field("pack_pieces", Some(Stands::plain("1")), None) }
                    { known("weft_length", Arg::Length(lot.hanging.likely), &lot.hanging.origin, None) }
                    { field("length_taken", words(&choice("hanging")), None) }
                    { field("strands", None, Some("web.strands_hint")) }
                    { known("lot_fineness", Arg::Fineness(lot.fineness.likely), &lot.fineness.origin, None) }
                    { field("pack_price", None, None) }
                    { field("lot_colour", None, None) }
                    { field("lot_shade", None, None) }
                    { field("dye_lot", None, None) }
                    { field("still_sold", words(&choice("yes")), None) }
                    { field("lot_label_heat", None, None) }
                </div>
            </details>
            { folded(t("web.count_lot"), html! { <>
                { p("hint", t("web.count_hint")) }
                { work_form(whose, log, Named(count::KIND.name), vec![("lot", lot.id.to_string())], Callback::noop()) }
            </> }) }
        </article>
    }
}

/// The stitched edge, unfolded, in a picture.
fn weft_picture() -> Html {
    html! {
        <figure class="tape weft">
            <svg viewBox="0 0 220 60" role="img" aria-labelledby="weft-title">
                <title id="weft-title">{ t("web.weft_picture") }</title>
                <path class="tape-line" d="M10 10 L210 10" />
                <path class="tape-line thin" d="M10 4 L10 16 M210 4 L210 16" />
                { for (0..40).map(|index| { let x = 12 + index * 5; html! { <path class="head-line thin" d={format!("M{x} 14 L{x} 52")} /> } }) }
            </svg>
        </figure>
    }
}
