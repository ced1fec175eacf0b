//! The plan of a set: the answer first, the curve, the tool, cautions and working; into the plan, or recorded.
//!
//! What it is: one zone's set, and all zones wound alike. What it is not: the sum, or the checks of the bench.

use measure::{prefs::Prefs, say::Arg};
use plan::{
    heat::{HeatPlan, Verdict, lasts, of_wig, tool::POURED_USUALLY},
    lengths::{Problem, Reach},
};
use record::{
    trade::heat::Medium,
    wig::{
        steps::steps,
        work::{Work, kind_named},
        zone::Zone,
    },
};
use sheet::{curve, drawing::Voice};
use yew::prelude::*;

use super::Page;
use crate::{
    pages::bench::{Named, work_form},
    parts::{
        cautions::cautions,
        cell::Cell,
        drawing::draw,
        lines::lines,
        pictures,
        plain::{button, folded, p, section},
    },
    shell::talk::{WORDS, choice, field, say, t, ta},
};

/// The answer and everything behind it.
pub(super) fn answer(
    page: &Page<'_>,
    planned: &Result<HeatPlan, Problem>,
    zone: Zone,
    zones: &[Zone],
    chosen: &Cell<Option<Zone>>,
) -> Html {
    let prefs = &page.desk.model().prefs;
    let names: Vec<String> = zones.iter().map(|zone| t(zone.label())).collect();
    html! {
        <>
            <section class="answer" aria-labelledby="answer-title">
                <h2 id="answer-title" class="visually-hidden">{ t("web.answer") }</h2>
                { headline(planned, prefs) }
                if page.needs.iter().all(|need| need.rod.is_none()) { { p("lead", t("web.heat_none_curled")) } }
                { p("hint", ta("web.heat_for", [Arg::Text(names.join(", "))])) }
                { page.need(zone).filter(|need| matches!(need.reach, Reach::Neither { .. })).map(|need| p("reason", say(&need.headline, prefs))).unwrap_or_default() }
            </section>
            <div class="choices" role="group" aria-label={t("web.zones")}>
                { for page.needs.iter().map(|need| {
                    let pick = {
                        let (chosen, zone) = (chosen.clone(), need.look.zone);
                        Callback::from(move |_: MouseEvent| chosen.set(Some(zone)))
                    };
                    let pressed = if need.look.zone == zone { "true" } else { "false" };
                    html! { <button type="button" aria-pressed={pressed} onclick={pick}>{ t(need.look.zone.label()) }</button> }
                }) }
            </div>
            if let Ok(plan) = planned { { behind(page, plan, zone, zones) } }
            { section("heat-tool", "web.heat_tool", tool(page, planned.as_ref().ok())) }
        </>
    }
}

fn headline(planned: &Result<HeatPlan, Problem>, prefs: &Prefs) -> Html {
    match planned {
        Err(problem) => html! {
            <div class="banner stop" id="headline" role="alert">{ p("", format!("{}: {}", field(problem.slot), say(&problem.say, prefs))) }</div>
        },
        Ok(plan) if plan.verdict == Verdict::Stop => html! {
            <div class="banner stop" role="alert">
                <p class="headline" id="headline">{ say(&plan.headline, prefs) }</p>
                { plan.instead.iter().map(|instead| p("", say(instead, prefs))).collect::<Html>() }
            </div>
        },
        Ok(plan) => html! { <p class="headline" id="headline" role="status">{ say(&plan.headline, prefs) }</p> },
    }
}

fn behind(page: &Page<'_>, plan: &HeatPlan, zone: Zone, zones: &[Zone]) -> Html {
    let prefs = &page.desk.model().prefs;
    let voice = Voice { words: &WORDS, prefs };
    let drawing = curve::chart(&plan.curve, &voice, pictures::width());
    let fact = |key: &str, times: Option<[f64; 3]>| {
        times.map(|[low, likely, high]| {
            let words = ta("web.heat_span", [lasts(likely), lasts(low), lasts(high)]);
            html! { <div><dt>{ t(key) }</dt><dd>{ words }</dd></div> }
        })
    };
    html! {
        <>
            if plan.heating.is_some() {
                <dl class="facts">
                    { fact("web.heat_hold", plan.heating).unwrap_or_default() }
                    { fact("web.heat_cool", plan.cooling).unwrap_or_default() }
                    if plan.tool.medium.wet() { <div><dt>{ t("web.heat_dry") }</dt><dd>{ t("web.heat_dry_long") }</dd></div> }
                </dl>
            }
            { drawing.map(|drawing| draw(&drawing, "heat-curve", None, prefs)).unwrap_or_default() }
            { cautions(&plan.cautions, prefs) }
            if plan.verdict == Verdict::Go { { take(page, plan, zone, zones) } }
            { lines(&plan.working, prefs) }
        </>
    }
}

/// Into the plan of work, or recorded right away.
fn take(page: &Page<'_>, plan: &HeatPlan, zone: Zone, zones: &[Zone]) -> Html {
    let (kind, fields) = of_wig::work(plan, page.wig, page.need(zone), zones);
    let work = kind_named(kind).and_then(|kind| {
        let texts = fields.iter().map(|(name, text)| (*name, text.as_str()));
        Work::read(kind, texts, &page.desk.model().prefs).ok()
    });
    let state = page.desk.state(page.whose, page.log);
    let there = work.as_ref().is_some_and(|work| steps(&state).iter().any(|step| step.planned.work == *work));
    let add = {
        let (desk, whose, log) = (page.desk.clone(), page.whose, page.log);
        Callback::from(move |_: MouseEvent| {
            if let Some(work) = work.clone() {
                desk.plan_works(whose, log, vec![work], Callback::noop());
            }
        })
    };
    // Another plan is another form; what was typed over the old one would not fit it.
    let key: String = fields.iter().map(|(_, text)| text.as_str()).collect::<Vec<_>>().join(" ");
    html! {
        <>
            <p class="actions">
                if there { <span class="hint" role="status">{ t("web.heat_planned") }</span> }
                else { { button("primary", t("web.heat_plan_it"), add) } }
            </p>
            { folded(t("web.heat_record"), html! {
                <div key={key}>{ work_form(page.whose, page.log, Named(kind), fields, Callback::noop()) }</div>
            }) }
        </>
    }
}

fn tool(page: &Page<'_>, plan: Option<&HeatPlan>) -> Html {
    let prefs = &page.desk.model().prefs;
    let shows = plan.map_or_else(String::new, |plan| prefs.temperature(plan.tool.shows));
    let poured = plan.is_some_and(|plan| plan.tool.poured);
    let thick = plan.map_or_else(String::new, |plan| format!("{} mm", prefs.number(plan.lock.millimetres(), 1)));
    let whole = page.wig.whole_weight().likely - page.wig.cap_weight().likely;
    html! {
        <div class="fields">
            { page.field("set_medium", choice("water")) }
            { page.field("set_temperature", shows) }
            if page.medium == Medium::Water {
                { page.field("water_way", choice("dipped")) }
                if poured {
                    { page.field("poured_water", format!("{} kg", prefs.number(POURED_USUALLY, 1))) }
                    { page.field("poured_fibre", prefs.mass(whole)) }
                }
            }
            if page.medium == Medium::Steam { { page.open("steam_air") } }
            if page.medium.wet() { { page.field("altitude", "0 m".to_owned()) } }
            if !page.medium.wet() { { page.field("heated_from", choice(if page.medium == Medium::Iron { "inside" } else { "outside" })) } }
            if page.medium != Medium::Iron { { page.field("cap_heated", t("web.yes")) } }
            { page.field("lock_thickness", thick) }
            { page.field("set_hold", t("web.heat_hold_usual")) }
        </div>
    }
}
