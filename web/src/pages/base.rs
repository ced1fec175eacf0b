//! What I have: the base as bought and the wearer's head, assumption by assumption.
//!
//! What it is: fields with what stands for each. What it is not: the look wanted.

use measure::say::Arg;
use record::{
    history::entry::{LogId, Of},
    id::WigId,
    wig::{figures::Wig, zone::Zone},
};
use yew::prelude::*;

use crate::{
    parts::field::{FigureField, Stands},
    shell::talk::{choice, t},
    store::{desk::Desk, model::Whose},
};

/// The page.
pub fn page(desk: &Desk, wig: WigId, whose: Whose) -> Html {
    let prefs = desk.model().prefs.clone();
    let log = LogId::Wig(wig);
    let state = desk.state(whose, log);
    let wig = Wig::new(&state);
    let plain = |slot: &'static str, value: String| {
        html! { <FigureField {whose} {log} {slot} stands={Stands::plain(value)} /> }
    };
    let open = |slot: &'static str| html! { <FigureField {whose} {log} {slot} /> };
    let head = |slot: &'static str, hint: Option<&str>| {
        let stands = Stands::figure(&wig.head(slot), Arg::Length, &prefs);
        html! { <FigureField {whose} {log} {slot} {stands} hint={hint.map(t)} /> }
    };
    html! {
        <>
            <p class="lead">{ t("web.base_lead") }</p>
            <section aria-labelledby="base-what">
                <h2 id="base-what">{ t("web.base_what") }</h2>
                <div class="fields">
                    { open("name") }
                    { open("character") }
                    { open("due") }
                    { plain("fibre", choice("unknown")) }
                    { plain("cap", choice("open_wefted")) }
                    { open("base_colour") }
                    { open("base_price") }
                </div>
            </section>
            <section aria-labelledby="base-weight">
                <h2 id="base-weight">{ t("web.base_weight") }</h2>
                <p class="hint">{ t("web.base_weight_hint") }</p>
                <div class="fields">
                    <FigureField {whose} {log} slot="whole_weight" stands={Stands::figure(&wig.whole_weight(), Arg::Mass, &prefs)} />
                    <FigureField {whose} {log} slot="cap_weight" stands={Stands::figure(&wig.cap_weight(), Arg::Mass, &prefs)} hint={t("web.cap_weight_hint")} />
                    <FigureField {whose} {log} slot="crimped_share" stands={Stands::figure(&wig.crimped_share(), |share| Arg::Percent(share.get::<measure::quantity::units::ratio>()), &prefs)} />
                    <FigureField {whose} {log} slot="fineness" stands={Stands::figure(&wig.fineness(), Arg::Fineness, &prefs)} hint={t("web.fineness_hint")} />
                    <FigureField {whose} {log} slot="fibre_return" stands={Stands::figure(&wig.fibre_return(), Arg::Gap, &prefs)} />
                </div>
            </section>
            <section aria-labelledby="base-head">
                <h2 id="base-head">{ t("web.base_head") }</h2>
                <p class="hint">{ t("web.base_head_hint") }</p>
                { tape_picture() }
                <div class="fields">
                    { plain("size", choice("medium")) }
                    { head("girth", Some("web.girth_hint")) }
                    { head("front_to_nape", None) }
                    { head("ear_to_ear_front", None) }
                    { plain("tape_from", choice(wig.tape_from())) }
                    { head("ear_to_ear_top", Some("web.over_top_hint")) }
                    { head("temple_to_temple_back", None) }
                    { head("nape_width", None) }
                </div>
            </section>
            <section aria-labelledby="base-zones">
                <h2 id="base-zones">{ t("web.base_zones") }</h2>
                <p class="hint">{ t("web.base_zones_hint") }</p>
                { for Zone::ALL.into_iter().map(|zone| html! {
                    <details class="zone" key={zone.name()}>
                        <summary>{ t(zone.label()) }</summary>
                        <div class="fields">{ zone_fields(whose, log, &wig, zone, &prefs) }</div>
                    </details>
                }) }
            </section>
        </>
    }
}

/// The base's fields of one zone.
pub(crate) fn zone_fields(whose: Whose, log: LogId, wig: &Wig<'_>, zone: Zone, prefs: &measure::prefs::Prefs) -> Html {
    let of = Of::Zone(zone);
    html! {
        <>
            <FigureField {whose} {log} slot="shortest" {of} stands={Stands::figure(&wig.shortest(zone), Arg::Length, prefs)} />
            <FigureField {whose} {log} slot="longest" {of} stands={Stands::figure(&wig.longest(zone), Arg::Length, prefs)} />
            if let Some(spacing) = wig.row_spacing(zone) {
                <FigureField {whose} {log} slot="row_spacing" {of} stands={Stands::figure(&spacing, Arg::Gap, prefs)} />
                if !matches!(zone, Zone::LeftSide | Zone::RightSide) {
                    <FigureField {whose} {log} slot="rows" {of} hint={t("web.rows_hint")} />
                }
            }
            if let Some(ground) = wig.ground_fullness(zone) {
                <FigureField {whose} {log} slot="ground_fullness" {of} stands={Stands::figure(&ground, Arg::Fullness, prefs)} />
            }
        </>
    }
}

/// Where the tape over the top starts: the trap of this measure, in a picture.
fn tape_picture() -> Html {
    html! {
        <figure class="tape">
            <svg viewBox="0 0 200 150" role="img" aria-labelledby="tape-title">
                <title id="tape-title">{ t("web.tape_picture") }</title>
                <path class="head-line" d="M60 140 L62 118 C40 112 40 96 42 88 L34 80 L42 66 C40 34 66 12 102 12 C142 12 166 40 164 76 C163 98 154 108 150 140" />
                <path class="head-line" d="M104 78 C96 74 92 86 98 94 C100 100 108 100 108 90 C114 86 112 78 104 78" />
                <circle class="mark" cx="97" cy="88" r="3" />
                <circle class="mark hollow" cx="104" cy="68" r="3" />
                <path class="tape-line" d="M97 88 C94 50 98 26 102 12" />
                <path class="tape-line thin" d="M104 68 C102 46 102 28 102 12" />
                <text x="10" y="106">{ t("web.tape_tragus") }</text>
                <text x="112" y="66">{ t("web.tape_above") }</text>
            </svg>
        </figure>
    }
}
