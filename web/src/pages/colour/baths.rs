//! A bath on the page: what to weigh out, how it comes out, its steps, its curve, its water line, and its recording.
//!
//! What it is: one card a bath. What it is not: its sums.

use measure::{prefs::Prefs, say::Arg};
use plan::dye::{BathPlan, Dipping, DyePart};
use record::{
    history::entry::LogId,
    trade::dye::Class,
    wig::work::{Work, dye as dye_work},
    workshop::dyes::Dose,
};
use sheet::{colour::bath as curve, drawing::Voice};
use yew::prelude::*;

use super::{Hangs, Here, off, swatch};
use crate::{
    pages::bench::{Given, Named, work_form},
    parts::{
        cell::use_cell,
        drawing::draw,
        lines::lines,
        pictures,
        plain::{button, columns, folded, p, row},
    },
    shell::{
        focus,
        talk::{WORDS, say, t, ta},
    },
    store::{desk::use_desk, judge, model::Whose},
};

/// An amount in words.
pub fn dose(dose: Dose) -> Arg {
    match dose {
        Dose::Weighed(mass) => Arg::Dose(mass),
        Dose::Measured(volume) => Arg::Volume(volume),
    }
}

/// A bath.
pub fn bath(here: &Here<'_>, hangs: &Hangs<'_>, class: Class, bath: &BathPlan) -> Html {
    let prefs = &here.desk.model().prefs;
    let words = |arg: Arg| arg.words(&WORDS, prefs);
    let voice = Voice { words: &WORDS, prefs };
    let recipe = &bath.recipe;
    let ways: Vec<String> = {
        let mut ways: Vec<&'static str> = bath.stretches.iter().map(|stretch| stretch.way.label()).collect();
        ways.dedup();
        ways.into_iter().map(t).collect()
    };
    let mut facts: Vec<(String, String)> =
        bath.dyes.iter().map(|dye| (dye_name(dye, class), amount(dye, prefs))).collect();
    let mut fact = |key: &str, value: String| facts.push((t(key), value));
    fact("web.bath_water", words(Arg::Volume(recipe.bath)));
    if let Some(vinegar) = recipe.vinegar {
        fact("web.bath_vinegar", words(Arg::Volume(vinegar)));
    }
    fact("web.bath_fibre", words(Arg::Mass(recipe.takes)));
    fact("web.bath_held", words(Arg::Temperature(bath.held)));
    fact("web.bath_way", ways.join("; "));
    let name = ta("web.bath_number", [Arg::Count(bath.number as i64)]);
    let id = format!("bath-{}", bath.number);
    html! {
        <article class="card bath" aria-labelledby={id.clone()} key={bath.number.to_string()}>
            <h2 {id}>{ name }</h2>
            <p class="swatches">
                { swatch(bath.from) }<span aria-hidden="true">{ "→" }</span>{ swatch(bath.makes) }
                <span>{ ta("web.bath_wanted", [Arg::Text(off(&bath.off.words, bath.off.amount, prefs))]) }</span>
                { swatch(bath.wanted) }
            </p>
            <dl class="facts">{ for facts.into_iter().map(|(name, value)| html! { <div><dt>{ name }</dt><dd>{ value }</dd></div> }) }</dl>
            { for bath.dyes.iter().filter_map(|dye| rest(dye, prefs)) }
            <Record whose={here.whose} log={here.log} given={bath.texts(class, bath.held)} />
            { folded(t("web.bath_steps"), html! { <ol class="bath-steps">{ for bath.steps.iter().map(|step| html! { <li>{ say(step, prefs) }</li> }) }</ol> }) }
            { folded(t("web.bath_curve"), draw(&curve::drawing(&bath.legs, &voice, pictures::width().min(120.0)), "curve", None, prefs)) }
            if let Some(dipping) = &bath.dipping {
                { folded(t("web.bath_dip"), html! { <>
                    { draw(&hangs.drawing(Some(dipping), &voice), "fall", None, prefs) }
                    { levels(dipping, prefs) }
                </> }) }
            }
            { lines(&bath.working, prefs) }
        </article>
    }
}

/// What a dye is called.
pub fn dye_name(dye: &DyePart, class: Class) -> String {
    if dye.name.is_empty() { t(class.label()) } else { dye.name.clone() }
}

/// How much, from to; of a liquid in caps too.
fn amount(dye: &DyePart, prefs: &Prefs) -> String {
    let words = |which: usize| dose(dye.dose[which]).words(&WORDS, prefs);
    let span = ta("web.dose_span", [Arg::Text(words(1)), Arg::Text(words(0)), Arg::Text(words(2))]);
    match dye.caps {
        Some(caps) => ta("web.dose_caps", [Arg::Text(span), Arg::Number(caps, 1)]),
        None => span,
    }
}

/// Part of a packet: what goes back to the shelf.
fn rest(dye: &DyePart, prefs: &Prefs) -> Option<Html> {
    let left = dye.left().filter(|left| *left >= 0.0)?;
    let liquid = matches!(dye.dose[1], Dose::Measured(_));
    let words = dose(Dose::new(liquid, left)).words(&WORDS, prefs);
    Some(p("hint", ta("web.dose_rest", [Arg::Text(dye.name.clone()), Arg::Text(words)])))
}

/// Who gets wet at which level.
fn levels(dipping: &Dipping, prefs: &Prefs) -> Html {
    let cm = |length| prefs.length(length);
    let zones = dipping.zones.iter().map(|(zone, level)| (t(zone.label()), vec![cm(*level)])).collect();
    let rows = dipping.rows.iter().map(|one| {
        let head = format!("{} {}", t(one.row.zone.label()), one.row.number);
        (head, vec![cm(one.wanted), one.falls.map_or_else(|| t("web.level_misses"), cm)])
    });
    let rows = table(&["web.row", "web.level_wanted", "web.level_falls"], rows.collect());
    html! {
        <>
            { p("hint", t("web.levels_hint")) }
            { table(&["web.zone", "web.level_alone"], zones) }
            { folded(t("web.levels_rows"), rows) }
        </>
    }
}

/// A table of words.
fn table(heads: &[&str], rows: Vec<(String, Vec<String>)>) -> Html {
    html! {
        <div class="scroll" tabindex="0"><table>
            { columns(heads) }
            <tbody>{ for rows.into_iter().map(|(head, cells)| row(head, cells.into_iter().map(Html::from).collect())) }</tbody>
        </table></div>
    }
}

/// Which bath.
#[derive(Properties, PartialEq)]
struct RecordProps {
    whose: Whose,
    log: LogId,
    given: Given,
}

/// "Done" records the planned figures, "Done, but…" opens them, and it can be put into the plan of work.
#[component]
fn Record(props: &RecordProps) -> Html {
    let desk = use_desk();
    let open = use_cell(|| false);
    let said = use_cell(|| None::<String>);
    let (whose, log) = (props.whose, props.log);
    let texts = props.given.clone();
    let prefs = desk.model().prefs.clone();
    let work = {
        let pairs = texts.iter().map(|(name, text)| (*name, text.as_str()));
        Work::read(&dye_work::KIND, pairs, &prefs)
    };
    // What is a stop or a care is only done with a judgement, which the form asks for.
    let asks = work.as_ref().is_ok_and(|work| {
        judge::findings(desk.model(), whose, log, work)
            .iter()
            .any(|finding| finding.rule.weight != plan::working::Weight::Consider)
    });
    let done = {
        let (desk, texts, said, open) = (desk.clone(), texts.clone(), said.clone(), open.clone());
        Callback::from(move |_: MouseEvent| {
            if asks {
                open.set(true);
                return;
            }
            let pairs: Vec<(String, String)> =
                texts.iter().map(|(name, text)| ((*name).to_owned(), text.clone())).collect();
            match judge::work(desk.model(), whose, log, &dye_work::KIND, &pairs) {
                Ok(body) => {
                    let said = said.clone();
                    let then = Callback::from(move |safe: bool| {
                        if safe {
                            said.set(Some(t("web.bath_recorded")));
                        }
                    });
                    desk.write(whose, vec![(log, body)], None, then);
                }
                Err(refused) => {
                    said.set(refused.into_iter().map(|(_, reason)| reason).reduce(|all, one| format!("{all} {one}")))
                }
            }
        })
    };
    let to_plan = {
        let (desk, said, work) = (desk.clone(), said.clone(), work.clone());
        Callback::from(move |_: MouseEvent| {
            let Ok(work) = work.clone() else { return };
            let said = said.clone();
            let then = Callback::from(move |safe: bool| {
                if safe {
                    said.set(Some(t("web.bath_in_plan")));
                }
            });
            desk.plan_works(whose, log, vec![work], then);
        })
    };
    let toggle = {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| open.set(!open.get()))
    };
    let closed = {
        let (open, said) = (open.clone(), said.clone());
        Callback::from(move |()| {
            open.set(false);
            said.set(Some(t("web.bath_recorded")));
            focus::later(vec!["headline".to_owned()]);
        })
    };
    html! {
        <>
            <p class="actions">
                { button("primary", t("web.bath_to_plan"), to_plan) }
                { button("", t(if asks { "web.done_but" } else { "web.done" }), done) }
                if !asks { <button type="button" class="plain" aria-expanded={if open.get() { "true" } else { "false" }} onclick={toggle}>{ t("web.done_but") }</button> }
            </p>
            if let Some(words) = said.get() { <p role="status">{ words }</p> }
            if open.get() { { work_form(whose, log, Named("dye"), texts, closed) } }
        </>
    }
}
