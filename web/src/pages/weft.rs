//! Weft to buy: the answer first, then what stands behind it.
//!
//! What it is: the planner's answer in the order a person asks. What it is not: the sum.

use std::rc::Rc;

use measure::{
    prefs::Prefs,
    quantity::{Time, units},
    say::Arg,
};
use plan::{
    cutting::Closed,
    dome::Section,
    pace,
    shopping::{Answer, Met, Outcome, Stop},
    wefts::{Mount, PlannedRow},
};
use record::{
    history::{
        desk,
        entry::{LogId, Of},
    },
    id::LotId,
    wig::{
        figure::{Figure, Origin},
        figures::Wig,
        work::{Work, sew_weft},
    },
    workshop::lots::Lot,
};
use yew::prelude::*;

use crate::parts::plain::{self, columns, folded, p, section};

use crate::{
    pages::{
        bench::{Named, WorkForm, given, work_form},
        cap::{Props, head_refused},
        lots::{LotCard, add_lot},
    },
    parts::{
        cautions::cautions,
        cell::use_cell,
        drawing::draw,
        field::{Stands, figure},
        lines::lines,
        pictures,
        reckon::{Reckoned, use_answer},
    },
    shell::{
        focus,
        talk::{choice, say, t, ta},
    },
    store::{
        desk::{Desk, use_desk},
        judge,
        model::Whose,
    },
};

/// The page.
#[component]
pub fn Weft(props: &Props) -> Html {
    let desk = use_desk();
    let prefs = desk.model().prefs.clone();
    let (whose, log) = (props.whose, LogId::Wig(props.wig));
    let state = desk.state(whose, log);
    let lots = desk.model().bench(whose).lots();
    let (answer, busy) = use_answer(state.clone(), lots.clone(), desk.model().bench(whose).paces().clone());
    let wig = Wig::new(&state);
    html! {
        <>
            <section class={classes!("answer", busy.then_some("busy"))} aria-labelledby="answer-title" aria-busy={if busy { "true" } else { "false" }}>
                <h2 id="answer-title" class="visually-hidden">{ t("web.answer") }</h2>
                { match answer.as_deref() {
                    None => html! { <p role="status">{ t("web.reckoning") }</p> },
                    Some(reckoned) => headline(reckoned, &prefs),
                } }
            </section>
            if let Some(Ok(answer)) = answer.as_deref() { { behind(&desk, props, answer, &lots, &prefs) } }
            { lots_of(&desk, props, &wig, &lots) }
            { bench(props, &wig, &prefs, &pace::row(&wig, desk.model().bench(whose).paces())) }
        </>
    }
}

fn headline(reckoned: &Reckoned, prefs: &Prefs) -> Html {
    match reckoned {
        Ok(answer) => html! { <p class="headline" id="headline" role="status">{ say(&answer.headline, prefs) }</p> },
        Err(Stop::NoWefts) => html! { <p class="headline" id="headline" role="status">{ t("web.no_wefts") }</p> },
        Err(Stop::NoLot) => html! { <p class="headline" id="headline" role="status">{ t("web.no_lot") }</p> },
        Err(Stop::Head(problems)) => head_refused(problems, prefs),
        Err(Stop::Pieces(reasons)) => html! {
            <div class="banner stop" id="headline" role="alert">
                { for reasons.iter().map(|reason| html! { <p>{ say(reason, prefs) }</p> }) }
            </div>
        },
    }
}

fn behind(desk: &Desk, props: &Props, answer: &Answer, lots: &Rc<Vec<Lot>>, prefs: &Prefs) -> Html {
    let rows = &answer.likely.prepared.placement.rows;
    let works = plan::steps::sewing(&Wig::new(&desk.state(props.whose, LogId::Wig(props.wig))), answer);
    html! {
        <>
            { short_facts(answer, lots, prefs) }
            { cautions(&answer.cautions, prefs) }
            if !rows.is_empty() {
                { section("rows-title", "web.rows_title", html! { <>
                    <div class="cap-map rows">
                        { for pictures::rows(&desk.state(props.whose, LogId::Wig(props.wig)), answer, prefs).iter().map(|drawing| draw(drawing, "cap-view", None, prefs)) }
                    </div>
                    { rows_table(props, answer, &works, lots, prefs) }
                </> }) }
            }
            if !answer.laid.is_empty() {
                { section("laid-title", "web.laid_title", html! { <>
                    <p class="hint" id="proved">{ proved(answer) }</p>
                    { draw(&pictures::laid_out(answer, lots, prefs), "laid", None, prefs) }
                    if let Some((packs, joins)) = answer.joins_save {
                        <p>{ ta("web.joins_save", [Arg::Count(i64::from(packs)), Arg::Count(i64::from(joins))]) }</p>
                    }
                </> }) }
            }
            { fullness_table(answer, prefs) }
            { reach_table(answer, prefs) }
            { edges(props, answer, &works, prefs) }
            { lines(&answer.lines, prefs) }
            { choose_main(desk, props, lots) }
        </>
    }
}

/// Low, likely, high; cost; time; order-by day; weight.
fn short_facts(answer: &Answer, lots: &[Lot], prefs: &Prefs) -> Html {
    let count = |packs: Option<u32>| packs.map_or_else(|| t("web.not_enough"), |packs| packs.to_string());
    let name = |id: LotId| lots.iter().find(|lot| lot.id == id).map_or("", |lot| lot.name.as_str()).to_owned();
    let buy: Vec<String> = answer.buy.iter().map(|(lot, packs)| format!("{packs} × {}", name(*lot))).collect();
    let amounts = &answer.likely.prepared.amounts;
    let fact = |term: &str, value: String| html! { <div><dt>{ t(term) }</dt><dd>{ value }</dd></div> };
    html! {
        <dl class="facts" id="facts">
            if !buy.is_empty() { { fact("web.fact_buy", buy.join(", ")) } }
            { fact("web.fact_packs", ta("web.low_likely_high", [
                Arg::Text(count(answer.packs.low)), Arg::Text(count(answer.packs.likely)), Arg::Text(count(answer.packs.high)),
            ])) }
            if let Some(cost) = answer.cost { { fact("web.fact_cost", prefs.money(cost)) } }
            else if answer.outcome == Outcome::Buy { { fact("web.fact_cost", t("web.no_price")) } }
            { fact("web.fact_weft", prefs.run(amounts.total())) }
            { fact("web.fact_hold", prefs.run(amounts.hold_back)) }
            { fact("web.fact_left", prefs.run(answer.left_over())) }
            { fact("web.fact_weight", prefs.mass(answer.weight_added)) }
            { fact("web.fact_time", prefs.time(answer.sewing)) }
            if let Some((day, late)) = answer.order_by {
                { fact("web.fact_order", if late { ta("web.order_late", [Arg::Date(day)]) } else { day.to_string() }) }
            } else { { fact("web.fact_order", t("web.no_due")) } }
        </dl>
    }
}

fn place(row: &PlannedRow, prefs: &Prefs) -> String {
    let section = match row.section {
        Section::BackAndSides => "web.section_back",
        Section::Top => "web.section_top",
    };
    let mount = match row.mount {
        Mount::Gap => "web.mount_gap",
        Mount::OnRow => "web.mount_row",
    };
    ta(
        "web.row_place",
        [Arg::Key(section), Arg::Count(row.gap as i64), Arg::Text(prefs.length(row.at)), Arg::Key(mount)],
    )
}

fn rows_table(props: &Props, answer: &Answer, works: &[Work], lots: &Rc<Vec<Lot>>, prefs: &Prefs) -> Html {
    let rows = &answer.likely.prepared.placement.rows;
    let lot_of = |index: usize| -> String {
        let mut names: Vec<&str> = answer
            .laid
            .iter()
            .filter(|weft| weft.pieces.iter().any(|piece| piece.rows.contains(&index)))
            .filter_map(|weft| lots.iter().find(|lot| lot.id == weft.lot).map(|lot| lot.name.as_str()))
            .collect();
        names.dedup();
        names.join(", ")
    };
    html! {
        <div class="scroll" tabindex="0" role="group" aria-labelledby="rows-title">
            <table id="rows">
                { columns(&["web.row", "web.where", "web.zones", "field.length", "field.lot", "web.done_column"]) }
                <tbody>
                    { for rows.iter().enumerate().map(|(index, row)| {
                        let zones: Vec<String> = row.zones.iter().map(|(zone, _)| t(zone.label())).collect();
                        let part = if row.part { format!(" ({})", t("web.part_row")) } else { String::new() };
                        let done = html! { <Sewn whose={props.whose} wig={props.wig} work={works.get(index).cloned()} number={index + 1} /> };
                        plain::row((index + 1).to_string(), vec![
                            (place(row, prefs) + &part).into(),
                            zones.join(", ").into(),
                            prefs.length(row.length).into(),
                            lot_of(index).into(),
                            done,
                        ])
                    }) }
                </tbody>
            </table>
        </div>
    }
}

/// Which row.
#[derive(Properties, PartialEq)]
struct SewnProps {
    whose: Whose,
    wig: record::id::WigId,
    work: Option<Work>,
    number: usize,
}

/// "Sewn" records the planned figures; "Sewn, but…" opens them first.
#[component]
fn Sewn(props: &SewnProps) -> Html {
    let desk = use_desk();
    let open = use_cell(|| false);
    let log = LogId::Wig(props.wig);
    let Some(work) = &props.work else { return html! {} };
    let step = plan::steps::open_step(&desk.state(props.whose, log), work);
    let given = given(work);
    let done = {
        let (desk, open, given, whose) = (desk.clone(), open.clone(), given.clone(), props.whose);
        Callback::from(move |_: MouseEvent| {
            let mut texts: Vec<(String, String)> =
                given.iter().map(|(name, text)| ((*name).to_owned(), text.clone())).collect();
            // The plan of work knows then that it is done.
            texts.extend(step.map(|step| ("step".to_owned(), step.to_string())));
            match judge::work(desk.model(), whose, log, &sew_weft::KIND, &texts) {
                Ok(body) => {
                    let then =
                        Callback::from(|_: bool| focus::later(vec!["rows-title".to_owned(), "headline".to_owned()]));
                    desk.write(whose, vec![(log, body)], None, then);
                }
                // The form says why.
                Err(_) => open.set(true),
            }
        })
    };
    let toggle = {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| open.set(!open.get()))
    };
    let name = ta("web.row_number", [Arg::Count(props.number as i64)]);
    html! {
        <>
            <span class="row-actions">
                <button type="button" aria-label={format!("{}: {}", t("web.sewn"), name)} onclick={done}>{ t("web.sewn") }</button>
                <button type="button" class="plain" aria-label={format!("{}: {}", t("web.sewn_but"), name)} aria-expanded={if open.get() { "true" } else { "false" }} onclick={toggle}>{ t("web.sewn_but") }</button>
            </span>
            if open.get() {
                <WorkForm whose={props.whose} log={log} kind={Named("sew_weft")} {step} {given} then={{
                    let open = open.clone();
                    Callback::from(move |()| {
                        open.set(false);
                        focus::later(vec!["rows-title".to_owned(), "headline".to_owned()]);
                    })
                }} />
            }
        </>
    }
}

fn proved(answer: &Answer) -> String {
    match &answer.likely.plan {
        None => String::new(),
        Some(plan) if plan.proved => ta(
            "web.proved",
            [Arg::Text(match plan.closed {
                Closed::NothingToPay => t("web.proved_free"),
                _ => t("web.proved_least"),
            })],
        ),
        Some(plan) => ta(
            "web.best_found",
            [Arg::Money(measure::money::Money::from_hundredths(plan.total_price - plan.lower_bound))],
        ),
    }
}

/// What is reached against what was wanted.
fn fullness_table(answer: &Answer, prefs: &Prefs) -> Html {
    let full = &answer.likely.prepared.fullness;
    html! {
        { section("full-title", "web.full_title", html! { <>
            <div class="scroll" tabindex="0" role="group" aria-labelledby="full-title">
                <table id="fullness">
                    { columns(&["web.zone", "web.as_now", "web.wanted", "web.with_plan"]) }
                    <tbody>
                        { for full.there().into_iter().map(|zone| {
                            let reached = answer.reached[zone.zone as usize];
                            let words = prefs.fullness(reached);
                            let with_plan = match answer.met(zone.zone) {
                                Met::Thinner => ta("web.thin", [Arg::Text(words)]),
                                Met::Fuller => ta("web.full", [Arg::Text(words)]),
                                Met::Near => words,
                            };
                            let cells = [prefs.fullness(zone.now()), prefs.fullness(zone.target), with_plan];
                            plain::row(t(zone.zone.label()), cells.into_iter().map(Html::from).collect())
                        }) }
                    </tbody>
                </table>
            </div>
        </> }) }
    }
}

/// What each number of packs gives.
fn reach_table(answer: &Answer, prefs: &Prefs) -> Html {
    if answer.reach.is_empty() {
        return html! {};
    }
    html! {
        { section("reach-title", "web.reach_title", html! { <>
            <ul class="reach" id="reach">
                { for answer.reach.iter().map(|reach| {
                    let key = if reach.lacking.get::<units::millimeter>() > 1.0 { "web.reach_lacks" } else { "web.reach_gives" };
                    html! { <li>{ ta(key, [
                        Arg::Count(i64::from(reach.packs)),
                        Arg::Number(reach.times, 2),
                        Arg::Text(prefs.run(reach.for_rows)),
                        Arg::Text(prefs.run(reach.lacking)),
                    ]) }</li> }
                }) }
            </ul>
        </> }) }
    }
}

/// Hairline and parting out of the same packs, and their recording.
fn edges(props: &Props, answer: &Answer, works: &[Work], prefs: &Prefs) -> Html {
    let amounts = &answer.likely.prepared.amounts;
    let form = |sewn_as: &str, key: &str| match works.iter().find(|work| work.choice("sewn_as") == Some(sewn_as)) {
        None => html! {},
        Some(work) => {
            let form = work_form(props.whose, LogId::Wig(props.wig), Named("sew_weft"), given(work), Callback::noop());
            folded(t(key), form)
        }
    };
    let (hairline, parting) = (form("hairline", "web.record_hairline"), form("parting", "web.record_parting"));
    let nothing = works.iter().all(|work| work.choice("sewn_as") == Some("row"));
    if nothing {
        return html! {};
    }
    let left = [amounts.hairline, amounts.parting, answer.left_over()].map(|length| Arg::Text(prefs.run(length)));
    section(
        "edges-title",
        "web.edges_title",
        html! { <><p id="edges">{ ta("web.edges", left) }</p>{ hairline }{ parting }</> },
    )
}

/// Which lot the rows are reckoned with.
fn choose_main(desk: &Desk, props: &Props, lots: &[Lot]) -> Html {
    if lots.len() < 2 {
        return html! {};
    }
    let log = LogId::Wig(props.wig);
    let state = desk.state(props.whose, log);
    let wig = Wig::new(&state);
    let main = wig.main_lot().or_else(|| lots.iter().find(|lot| wig.uses_lot(lot.id)).map(|lot| lot.id));
    html! {
        <fieldset class="main-lot">
            <legend>{ t("field.main_lot") }</legend>
            { for lots.iter().filter(|lot| wig.uses_lot(lot.id)).map(|lot| {
                let choose = {
                    let (desk, whose, state, id) = (desk.clone(), props.whose, state.clone(), lot.id);
                    Callback::from(move |_: Event| {
                        if let Ok(body) = desk::set(&state, log, "main_lot", Of::Wig, &id.to_string(), &desk.model().prefs) {
                            desk.write(whose, vec![(log, body)], None, Callback::noop());
                        }
                    })
                };
                let id = format!("main-{}", lot.id);
                html! { <p class="radio" key={lot.id.to_string()}>
                    <input type="radio" name="main-lot" id={id.clone()} checked={main == Some(lot.id)} onchange={choose} />
                    <label for={id}>{ &lot.name }</label>
                </p> }
            }) }
        </fieldset>
    }
}

/// The lots of this wig, and the rest of the shelf.
fn lots_of(desk: &Desk, props: &Props, wig: &Wig<'_>, lots: &Rc<Vec<Lot>>) -> Html {
    let log = LogId::Wig(props.wig);
    let toggle = |lot: LotId, yes: bool| {
        let (desk, whose, state) = (desk.clone(), props.whose, desk.state(props.whose, log));
        Callback::from(move |_: MouseEvent| {
            let text = if yes { "yes" } else { "no" };
            if let Ok(body) = desk::set(&state, log, "use_lot", Of::Lot(lot), text, &desk.model().prefs) {
                desk.write(whose, vec![(log, body)], None, Callback::noop());
            }
        })
    };
    html! {
        { section("wefts-title", "web.wefts_title", html! { <>
            { p("hint", t("web.wefts_hint")) }
            { add_lot(desk, props.whose, Some(props.wig)) }
            { for lots.iter().map(|lot| {
                let used = wig.uses_lot(lot.id);
                html! {
                    <LotCard key={lot.id.to_string()} whose={props.whose} lot={lot.clone()}>
                        <p class="actions"><button type="button" aria-pressed={if used { "true" } else { "false" }} onclick={toggle(lot.id, !used)}>
                            { t(if used { "web.lot_used" } else { "web.lot_use" }) }
                        </button></p>
                    </LotCard>
                }
            }) }
        </> }) }
    }
}

/// Ways of working and limits, all of them the person's to change.
fn bench(props: &Props, wig: &Wig<'_>, prefs: &Prefs, per_row: &Figure<Time>) -> Html {
    let (whose, log) = (props.whose, LogId::Wig(props.wig));
    let plain = |slot: &'static str, value: String, hint: Option<&str>| {
        figure(whose, log, slot, Of::Wig, Some(Stands::plain(value)), hint)
    };
    let known = |slot: &'static str, likely: Arg, origin: &Origin| {
        figure(whose, log, slot, Of::Wig, Some(Stands::figure(&likely, origin, prefs)), None)
    };
    let gap = |slot: &'static str| {
        let length = wig.bench_length(slot);
        known(slot, Arg::Gap(length.likely), &length.origin)
    };
    let share = |slot: &'static str| {
        let share = wig.bench_share(slot);
        known(slot, Arg::Percent(share.likely.get::<units::ratio>()), &share.origin)
    };
    let (a_day, shelf) = (wig.time_a_day(), wig.shelf_ratio());
    let days = wig.delivery_days();
    html! {
        { section("bench-title", "web.bench_title", html! { <>
            <div class="fields">
                { plain("sewing", choice("run"), Some("web.sewing_hint")) }
                { plain("parted", choice("no"), Some("web.parted_hint")) }
                { plain("edge_singles", choice("yes"), None) }
                { plain("joins", choice("yes"), None) }
                { figure(whose, log, "due", Of::Wig, None, None) }
                { plain("delivery_days", days.1.to_string(), None) }
                { known("hours_a_day", Arg::Time(a_day.likely), &a_day.origin) }
                { known("minutes_per_row", Arg::Time(per_row.likely), &per_row.origin) }
            </div>
            { folded(t("web.bench_limits"), html! { <>
                <div class="fields">
                    { gap("closest_rows") }{ gap("closest_rows_parting") }{ gap("edge_distance") }
                    { plain("most_stacked", "2".to_owned(), None) }
                    { known("shelf_ratio", Arg::Number(shelf.likely.get::<units::ratio>(), 1), &shelf.origin) }
                    { gap("end_fold") }{ gap("cut_loss") }{ gap("shortest_piece") }
                    { share("hold_back") }{ share("hairline_spare") }
                </div>
            </> }) }
        </> }) }
    }
}
