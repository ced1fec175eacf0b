//! Each zone: its look, whether it reaches, its rod.
//!
//! What it is: fields with the answer above them. What it is not: the geometry.

use measure::{
    quantity::units,
    say::{Arg, Say},
};
use plan::lengths::{Problem, Reach, ZoneNeed, look::Fall, pattern::Pattern, rods::tenths};
use record::history::entry::Of;
use yew::prelude::*;

use super::Page;
use crate::{
    parts::{
        cautions::cautions,
        field::{Stands, figure},
        lines::lines,
        plain::p,
    },
    shell::talk::{choice, field, say, t, ta},
};

/// All zones.
pub(super) fn zones(page: &Page<'_>, problems: &[Problem], pattern: &Pattern) -> Html {
    let prefs = &page.desk.model().prefs;
    html! {
        <>
            { p("hint", t("web.heat_reach_hint")) }
            if !problems.is_empty() {
                <div class="banner stop" role="alert"><ul>
                    { for problems.iter().map(|problem| html! { <li>{ format!("{}: {}", field(problem.slot), say(&problem.say, prefs)) }</li> }) }
                </ul></div>
                // The fields that can put it right.
                { for problems.iter().map(|problem| html! { <div class="fields">{ looks(page, problem.of, true) }</div> }) }
            }
            { for page.needs.iter().map(|need| zone(page, need, pattern)) }
        </>
    }
}

fn zone(page: &Page<'_>, need: &ZoneNeed, pattern: &Pattern) -> Html {
    let prefs = &page.desk.model().prefs;
    let zone = need.look.zone;
    let short = match &need.reach {
        Reach::Base { cut_to: Some(to) } if need.look.is_curled() => ta("web.heat_cut", [Arg::Text(prefs.length(*to))]),
        Reach::Base { .. } => t("web.heat_reaches"),
        Reach::Weft { .. } => t("web.heat_by_weft"),
        Reach::Neither { .. } => t("web.heat_short"),
    };
    let fall = match &need.look.fall {
        Fall::Straight => choice("straight"),
        Fall::Wave { .. } => choice("wave"),
        Fall::Curl { .. } => choice("curl"),
    };
    html! {
        <details class="zone" key={zone.name()}>
            <summary>{ t(zone.label()) }<span class="figure-text">{ format!("{fall} · {short}") }</span></summary>
            <p><strong>{ say(&need.headline, prefs) }</strong></p>
            { rod(page, need, pattern) }
            <div class="fields">{ looks(page, Of::Zone(zone), need.look.is_curled()) }</div>
            { cautions(&need.cautions, prefs) }
            { lines(&need.working, prefs) }
        </details>
    }
}

fn rod(page: &Page<'_>, need: &ZoneNeed, pattern: &Pattern) -> Html {
    let prefs = &page.desk.model().prefs;
    let Some(rod) = &need.rod else { return html! {} };
    let [low, likely, high] = rod.comes_out;
    let count = Arg::Count(pattern.count(need.look.zone) as i64);
    let mut words = say(
        &Say::new("web.heat_rod", [count, tenths(rod.rod), Arg::Gap(likely), Arg::Gap(low), Arg::Gap(high)]),
        prefs,
    );
    if let Some((larger, out)) = &rod.larger {
        words.push(' ');
        words.push_str(&say(&Say::new("web.heat_rod_larger", [tenths(*larger), Arg::Gap(*out)]), prefs));
    }
    p("", words)
}

/// The fields of a zone's look.
fn looks(page: &Page<'_>, of: Of, curled: bool) -> Html {
    let Of::Zone(zone) = of else { return html! {} };
    let prefs = &page.desk.model().prefs;
    let one = |slot, stands: Option<String>| figure(page.whose, page.log, slot, of, stands.map(Stands::plain), None);
    let need = page.need(zone);
    let hangs = need.map(|need| Stands::figure(&Arg::Length(need.look.hangs.likely), &need.look.hangs.origin, prefs));
    let wide = need
        .and_then(|need| need.look.fall.diameter())
        .map(|wide| Stands::figure(&Arg::Gap(wide.likely), &wide.origin, prefs));
    let pitch = need.and_then(|need| match &need.look.fall {
        Fall::Curl { pitch, .. } => Some(prefs.gap(*pitch)),
        Fall::Wave { wave, .. } => Some(prefs.gap(wave.pitch())),
        Fall::Straight => None,
    });
    let rod = need
        .and_then(|need| need.rod.as_ref())
        .map(|rod| format!("{} mm", prefs.number(rod.rod.get::<units::millimeter>(), 1)));
    html! {
        <>
            { one("curl", Some(choice("straight"))) }
            { figure(page.whose, page.log, "look_length", of, hangs, None) }
            { one("look_shortest", None) }
            if curled {
                { figure(page.whose, page.log, "curl_diameter", of, wide, None) }
                { one("curl_pitch", pitch) }
                { one("curl_turns", None) }
                { one("curl_start", Some(t("web.heat_at_root"))) }
                { one("rod", rod) }
                { one("on_base", Some(choice("half_base"))) }
                { one("rolled", Some(t("web.heat_rolled_usual"))) }
            }
        </>
    }
}
