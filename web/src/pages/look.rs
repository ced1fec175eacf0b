//! The look wanted: how it is worn, how full, hairline and parting.
//!
//! What it is: targets in whatever measure a person thinks in, converted before their eyes.
//! What it is not: what it takes (see `weft`).

use measure::{prefs::Prefs, quantity::units, say::Arg};
use plan::fullness::{Fullness, ZoneFullness, percent_spread, to_percent};
use record::{
    history::entry::{LogId, Of},
    id::WigId,
    wig::{figures::Wig, zone::Zone},
};
use yew::prelude::*;

use crate::parts::plain::{p, section};

use crate::{
    pages::cap::{Props, head_refused, laid_out},
    parts::{
        cell::use_cell,
        drawing::draw,
        field::{Stands, figure},
        pictures,
    },
    shell::talk::{choice, t, ta},
    store::{desk::use_desk, model::Whose},
};

/// The page.
#[component]
pub fn Look(props: &Props) -> Html {
    let desk = use_desk();
    let prefs = desk.model().prefs.clone();
    let (whose, log): (Whose, LogId) = (props.whose, LogId::Wig(props.wig));
    let state = desk.state(whose, log);
    let lots = desk.model().bench(whose).lots();
    let laid = use_memo((state.clone(), lots), |(state, lots)| laid_out(state, lots));
    let shown = use_cell(|| Zone::Back);
    let wig = Wig::new(&state);
    let parting = wig.parting();
    let plain = |slot: &'static str, value: String, hint: Option<&str>| {
        figure(whose, log, slot, Of::Wig, Some(Stands::plain(value)), hint)
    };
    let full = match &*laid {
        Ok((_, full)) => full,
        Err(problems) => return head_refused(problems, &prefs),
    };
    html! {
        <>
            { p("lead", t("web.look_lead")) }
            { section("look-worn", "web.look_worn", html! { <>
                <div class="fields">
                    { plain("worn", choice("down"), None) }
                    { plain("target", t("web.as_full_as_now"), Some("web.target_hint")) }
                </div>
                { conversion(full, &prefs) }
            </> }) }
            { section("look-edge", "web.look_edge", html! { <>
                <div class="fields">
                    { plain("hairline", choice("none"), None) }
                    if matches!(wig.hairline(), "glued_strip" | "sewn_edge") { { plain("hairline_layers", "1".to_owned(), None) } }
                    { plain("parting", choice("none"), None) }
                    if parting.kind != "none" {
                        { plain("parting_place", choice("middle"), None) }
                        { figure(whose, log, "parting_length", Of::Wig, Some(Stands::figure(&Arg::Length(parting.length.likely), &parting.length.origin, &prefs)), None) }
                        { plain("parting_width", prefs.gap(parting.width), None) }
                        if parting.kind == "weft_sides" { { plain("parting_rows", "2".to_owned(), None) } }
                    }
                </div>
                if wig.hairline() == "lace" { { p("hint", t("web.lace_hint")) } }
            </> }) }
            { section("look-zones", "web.look_zones", html! { <>
                { p("hint", t("web.look_zones_hint")) }
                { for full.there().into_iter().map(|zone| zone_row(props.wig, whose, &wig, zone, full, &prefs)) }
            </> }) }
            { section("look-depths", "web.look_depths", html! { <>
                { p("hint", t("web.look_depths_hint")) }
                <div class="choices" role="group" aria-label={t("web.zones")}>
                    { for full.there().into_iter().map(|zone| {
                        let pick = {
                            let (shown, zone) = (shown.clone(), zone.zone);
                            Callback::from(move |_: MouseEvent| shown.set(zone))
                        };
                        let pressed = if shown.get() == zone.zone { "true" } else { "false" };
                        html! { <button type="button" aria-pressed={pressed} onclick={pick}>{ t(zone.zone.label()) }</button> }
                    }) }
                </div>
                { for full.zones.iter().filter(|zone| zone.zone == shown.get()).map(|zone| draw(&pictures::depths(zone, None, &prefs), "depths", None, &prefs)) }
            </> }) }
        </>
    }
}

/// A target in all three measures, the trade's percent with its spread.
fn conversion(full: &Fullness, prefs: &Prefs) -> Html {
    let Some(back) = full.zones.get(Zone::Back as usize) else { return html! {} };
    html! { <p class="converted" id="converted">{ in_all_measures("web.converted", back, full, prefs) }</p> }
}

fn in_all_measures(key: &'static str, zone: &ZoneFullness, full: &Fullness, prefs: &Prefs) -> String {
    let bought = zone.bought.get::<units::per_square_meter>();
    let times = if bought > 0.0 { zone.target.get::<units::per_square_meter>() / bought } else { 1.0 };
    let percent = to_percent(zone.target, full.fineness);
    let (low, high) = percent_spread(percent);
    ta(
        key,
        [
            Arg::Key(zone.zone.label()),
            Arg::Number(times, 2),
            Arg::Text(prefs.fullness(zone.target)),
            Arg::Percent(percent),
            Arg::Percent(low),
            Arg::Percent(high),
            Arg::Text(prefs.fullness(zone.bought)),
        ],
    )
}

fn zone_row(wig: WigId, whose: Whose, of_wig: &Wig<'_>, zone: &ZoneFullness, full: &Fullness, prefs: &Prefs) -> Html {
    let log = LogId::Wig(wig);
    let of = Of::Zone(zone.zone);
    let length = of_wig.look_length(zone.zone);
    html! {
        <details class="zone" key={zone.zone.name()}>
            <summary>{ t(zone.zone.label()) }<span class="figure-text">{ prefs.fullness(zone.target) }</span></summary>
            <p class="hint">{ in_all_measures("web.converted", zone, full, prefs) }</p>
            <div class="fields">
                { figure(whose, log, "zone_target", of, Some(Stands::plain(t("web.as_whole_wig"))), Some("web.target_hint")) }
                { figure(whose, log, "look_length", of, Some(Stands::figure(&Arg::Length(length.likely), &length.origin, prefs)), None) }
            </div>
        </details>
    }
}
