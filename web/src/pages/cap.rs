//! The cap of this head: where everything is, and how full.
//!
//! What it is: the drawing that is also the menu, the same zones as a list, the zone chosen.
//! What it is not: a plan of rows (see `weft`).

use measure::say::Arg;
use plan::{
    fullness::{Fullness, fullness, percent_spread, to_percent},
    inputs::{Base, Corner},
    layout::{Layout, dome, lay_out, refusal, slot_of},
};
use record::{
    history::{entry::LogId, fold::State},
    id::WigId,
    trade::caps::Ground,
    wig::{figures::Wig, zone::Zone},
    workshop::lots::Lot,
};
use sheet::drawing::Target;
use yew::prelude::*;

use crate::parts::plain::{h2, p};

use crate::{
    pages::base::zone_fields,
    parts::{cautions::cautions, cell::use_cell, drawing::draw, field::figure, pictures},
    shell::talk::{say, t, ta},
    store::{desk::use_desk, model::Whose},
};

/// Which wig.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The wig.
    pub wig: WigId,
    /// Whose it is.
    pub whose: Whose,
}

/// A cap laid out with its fullness, or what the head's measures refuse.
pub type Laid = Result<(Layout, Fullness), Vec<(&'static str, measure::say::Say)>>;

/// Lays a cap out at its likely figures.
pub fn laid_out(state: &State, lots: &[Lot]) -> Laid {
    let wig = Wig::new(state);
    let corner = Corner::likely();
    let head = dome(&wig, &corner)
        .map_err(|problems| problems.iter().map(|one| (slot_of(one), refusal(one))).collect::<Vec<_>>())?;
    let base = Base::at(&wig, &corner);
    let layout = lay_out(head, &base);
    let full = fullness(&wig, &layout, &base, lots, &corner);
    Ok((layout, full))
}

/// What refuses to be a head, told above everything.
pub fn head_refused(problems: &[(&'static str, measure::say::Say)], prefs: &measure::prefs::Prefs) -> Html {
    html! {
        <div class="banner stop" role="alert">
            { p("", t("web.head_refused")) }
            <ul>{ for problems.iter().map(|(slot, why)| html! { <li>{ format!("{}: {}", crate::shell::talk::field(slot), say(why, prefs)) }</li> }) }</ul>
        </div>
    }
}

/// The page.
#[component]
pub fn Cap(props: &Props) -> Html {
    let desk = use_desk();
    let prefs = desk.model().prefs.clone();
    let (whose, log) = (props.whose, LogId::Wig(props.wig));
    let state = desk.state(whose, log);
    let lots = desk.model().bench(whose).lots();
    let laid = use_memo((state.clone(), lots.clone()), |(state, lots)| laid_out(state, lots));
    let chosen = use_cell(|| None::<Zone>);
    let wig = Wig::new(&state);
    let touched = {
        let chosen = chosen.clone();
        Callback::from(move |target: Target| {
            if let Target::Zone(zone) = target {
                chosen.set(Some(zone));
            }
        })
    };
    let (layout, full) = match &*laid {
        Ok(laid) => (&laid.0, &laid.1),
        Err(problems) => return head_refused(problems, &prefs),
    };
    html! {
        <>
            { p("lead", t("web.cap_lead")) }
            if !wig.cap().takes_weft() {
                <div class="banner" id="no-wefts">{ p("", t("web.no_wefts")) }</div>
            }
            { cautions(&full.cautions, &prefs) }
            <div class="cap-page">
                <div class="cap-map" role="group" aria-label={t("web.cap_map")}>
                    { for pictures::cap(&state, layout, full, chosen.get(), &prefs).iter().map(|drawing| draw(drawing, "cap-view", Some(&touched), &prefs)) }
                    { p("hint legend", t("web.cap_legend")) }
                </div>
                <section class="zones" aria-labelledby="zones-title">
                    { h2("zones-title", "web.zones") }
                    <ul class="zone-list">
                        { for full.there().into_iter().map(|zone| {
                            let pick = {
                                let (chosen, zone) = (chosen.clone(), zone.zone);
                                Callback::from(move |_: MouseEvent| chosen.set(if chosen.get() == Some(zone) { None } else { Some(zone) }))
                            };
                            let open = chosen.get() == Some(zone.zone);
                            html! {
                                <li key={zone.zone.name()} class={classes!(open.then_some("chosen"))}>
                                    <button type="button" class="zone-button" aria-expanded={if open { "true" } else { "false" }} onclick={pick}>
                                        <span>{ t(zone.zone.label()) }</span>
                                        <span class="figure-text">{ prefs.fullness(zone.now()) }</span>
                                    </button>
                                    if open {
                                        <div class="zone-open">
                                            { zone_words(zone, full, &prefs) }
                                            <div class="fields">
                                                { zone_fields(whose, log, &wig, zone.zone, &prefs) }
                                                { figure(whose, log, "zone_target", record::history::entry::Of::Zone(zone.zone), None, Some("web.target_hint")) }
                                            </div>
                                        </div>
                                    }
                                </li>
                            }
                        }) }
                    </ul>
                </section>
            </div>
        </>
    }
}

/// A zone in words.
fn zone_words(zone: &plan::fullness::ZoneFullness, full: &Fullness, prefs: &measure::prefs::Prefs) -> Html {
    let percent = to_percent(zone.now(), full.fineness);
    let (low, high) = percent_spread(percent);
    let ground = match zone.ground {
        Ground::Wefted { .. } => "web.ground_wefted",
        Ground::Knotted { .. } => "web.ground_knotted",
        Ground::Closed { .. } => "web.ground_closed",
    };
    let area = prefs.area(zone.area);
    html! {
        <p>{ ta("web.zone_words", [
            Arg::Key(ground),
            Arg::Text(area),
            Arg::Text(prefs.fullness(zone.now())),
            Arg::Percent(percent),
            Arg::Percent(low),
            Arg::Percent(high),
        ]) }</p>
    }
}
