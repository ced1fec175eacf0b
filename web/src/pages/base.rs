//! What I have: the base as bought and the wearer's head, assumption by assumption.
//!
//! What it is: fields with what stands for each. What it is not: the look wanted.

use measure::say::Arg;
use record::{
    history::entry::{LogId, Of},
    id::WigId,
    wig::{figure::Origin, figures::Wig, zone::Zone},
};
use yew::prelude::*;

use crate::parts::plain::{p, section};

use crate::{
    parts::field::{Stands, figure},
    shell::talk::{choice, t},
    store::{desk::Desk, model::Whose},
};

/// The page.
pub fn page(desk: &Desk, wig: WigId, whose: Whose) -> Html {
    let prefs = desk.model().prefs.clone();
    let log = LogId::Wig(wig);
    let state = desk.state(whose, log);
    let wig = Wig::new(&state);
    let field = |slot: &'static str, stands: Option<Stands>, hint: Option<&str>| {
        figure(whose, log, slot, Of::Wig, stands, hint)
    };
    let plain = |slot: &'static str, value: String| field(slot, Some(Stands::plain(value)), None);
    let known = |slot: &'static str, likely: Arg, origin: &Origin, hint: Option<&str>| {
        field(slot, Some(Stands::figure(&likely, origin, &prefs)), hint)
    };
    let head = |slot: &'static str, hint: Option<&str>| {
        let measure = wig.head(slot);
        known(slot, Arg::Length(measure.likely), &measure.origin, hint)
    };
    let (whole, cap) = (wig.whole_weight(), wig.cap_weight());
    let (crimped, fineness, back) = (wig.crimped_share(), wig.fineness(), wig.fibre_return());
    let crimped_share = Arg::Percent(crimped.likely.get::<measure::quantity::units::ratio>());
    html! {
        <>
            { p("lead", t("web.base_lead")) }
            { section("base-what", "web.base_what", html! { <>
                <div class="fields">
                    { for ["name", "character", "due"].into_iter().map(|slot| field(slot, None, None)) }
                    { plain("fibre", choice("unknown")) }
                    { plain("cap", choice("open_wefted")) }
                    { for ["base_colour", "base_price", "label_heat"].into_iter().map(|slot| field(slot, None, None)) }
                </div>
            </> }) }
            { section("base-weight", "web.base_weight", html! { <>
                { p("hint", t("web.base_weight_hint")) }
                <div class="fields">
                    { known("whole_weight", Arg::Mass(whole.likely), &whole.origin, None) }
                    { known("cap_weight", Arg::Mass(cap.likely), &cap.origin, Some("web.cap_weight_hint")) }
                    { known("crimped_share", crimped_share, &crimped.origin, None) }
                    { known("fineness", Arg::Fineness(fineness.likely), &fineness.origin, Some("web.fineness_hint")) }
                    { known("fibre_return", Arg::Gap(back.likely), &back.origin, None) }
                </div>
            </> }) }
            { section("base-head", "web.base_head", html! { <>
                { p("hint", t("web.base_head_hint")) }
                { tape_picture() }
                <div class="fields">
                    { plain("size", choice("medium")) }
                    { head("girth", Some("web.girth_hint")) }
                    { head("front_to_nape", None) }
                    { head("ear_to_ear_front", Some("web.ear_front_hint")) }
                    { plain("tape_from", choice("above_ear")) }
                    { head("ear_to_ear_top", Some("web.over_top_hint")) }
                    { head("temple_to_temple_back", Some("web.temple_hint")) }
                    { head("nape_width", None) }
                </div>
            </> }) }
            { section("base-zones", "web.base_zones", html! { <>
                { p("hint", t("web.base_zones_hint")) }
                { for Zone::ALL.into_iter().map(|zone| html! {
                    <details class="zone" key={zone.name()}>
                        <summary>{ t(zone.label()) }</summary>
                        <div class="fields">{ zone_fields(whose, log, &wig, zone, &prefs) }</div>
                    </details>
                }) }
            </> }) }
        </>
    }
}

/// The base's fields of one zone.
pub(crate) fn zone_fields(whose: Whose, log: LogId, wig: &Wig<'_>, zone: Zone, prefs: &measure::prefs::Prefs) -> Html {
    let known = |slot: &'static str, likely: Arg, origin: &Origin| {
        figure(whose, log, slot, Of::Zone(zone), Some(Stands::figure(&likely, origin, prefs)), None)
    };
    let (short, long) = (wig.shortest(zone), wig.longest(zone));
    let spacing = wig.row_spacing(zone).map(|spacing| known("row_spacing", Arg::Gap(spacing.likely), &spacing.origin));
    let counted = spacing.is_some() && !matches!(zone, Zone::LeftSide | Zone::RightSide);
    let ground = wig.ground_fullness(zone);
    html! {
        <>
            { known("shortest", Arg::Length(short.likely), &short.origin) }
            { known("longest", Arg::Length(long.likely), &long.origin) }
            { spacing.unwrap_or_default() }
            if counted { { figure(whose, log, "rows", Of::Zone(zone), None, Some("web.rows_hint")) } }
            if let Some(ground) = ground {
                { known("ground_fullness", Arg::Fullness(ground.likely), &ground.origin) }
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
