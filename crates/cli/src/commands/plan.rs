//! `weftbook plan WIG`: how much weft to buy for a wig, the answer first.
//!
//! What it is: the planner's answer in the order a person asks. What it is not: the sum.

use format::wig_file::{WigFile, read_wig};
use measure::{
    money::Money,
    quantity::units::square_centimeter,
    say::{Arg, Say},
};
use plan::{
    pace::Paces,
    shopping::{Answer, Job, Outcome, Stop},
    wefts::Mount,
    working::{Caution, Ground, Weight},
};
use record::{
    history::fold::{State, fold},
    wig::{figures::Wig, zone::Zone},
    workshop::lots::{Lot, lots},
};
use sheet::{
    cutting::{Bench, drawing},
    drawing::{Target, Voice},
};

use super::plan_json::{Answered, Figures};
use crate::{
    args::Options,
    input,
    out::{Fault, Said, json},
    rows::Page,
    today::today,
    words::WORDS,
};

/// Runs it.
pub fn run(options: &Options) -> Result<Said, Fault> {
    let text = input::text(&options.file, format::limits::FILE_BYTES_MOST)?;
    let file = read_wig(&text).map_err(|say| Fault::of(&say))?;
    let state = fold(&file.log());
    let lots = lots(&fold(&file.workshop()), [&state]);
    let today = match options.today {
        Some(today) => today,
        None => today()?,
    };
    let answer = Job::new(state.clone(), lots.clone(), today).at_pace(Paces::learn([&state])).finish();
    let clean = matches!(answer, Ok(_) | Err(Stop::NoWefts));
    let text = if options.json {
        let (outcome, reasons) = match &answer {
            Ok(answer) => (answer.summary(&lots).outcome, Vec::new()),
            Err(stop) => stopped(stop, options),
        };
        let headline = match &answer {
            Ok(answer) => answer.headline.words(&WORDS, &options.prefs),
            Err(stop) => why(stop).words(&WORDS, &options.prefs),
        };
        let plan = answer.as_ref().ok().map(|answer| Figures::of(answer.summary(&lots)));
        let wig = Wig::new(&state).name();
        json(&Answered { wig, today: today.to_string(), headline, outcome, reasons, unread: unread(&file), plan })?
    } else {
        page(&file, &state, &lots, answer.as_ref(), options)
    };
    Ok(Said { text, clean })
}

fn unread(file: &WigFile) -> usize {
    file.report.newer.len() + file.report.unreadable.len() + file.report.dropped.len()
}

/// Why there is no plan, in a sentence.
fn why(stop: &Stop) -> Say {
    Say::key(match stop {
        Stop::NoWefts => "cli.no_wefts",
        Stop::NoLot => "cli.no_lot",
        Stop::Head(_) => "cli.head_refused",
        Stop::Pieces(_) => "cli.pieces_refused",
    })
}

fn stopped(stop: &Stop, options: &Options) -> (&'static str, Vec<String>) {
    let words = |say: &Say| say.words(&WORDS, &options.prefs);
    match stop {
        Stop::NoWefts => ("no_wefts", Vec::new()),
        Stop::NoLot => ("no_lot", Vec::new()),
        Stop::Head(problems) => ("head", problems.iter().map(|problem| words(&of_field(problem))).collect()),
        Stop::Pieces(reasons) => ("pieces", reasons.iter().map(words).collect()),
    }
}

/// A field by its label, and what is wrong with it.
pub fn of_field((slot, say): &(&'static str, Say)) -> Say {
    Say::new("cli.of_field", [Arg::Text(WORDS.get(&format!("field.{slot}"))), say.clone().into()])
}

fn page(file: &WigFile, state: &State, lots: &[Lot], answer: Result<&Answer, &Stop>, options: &Options) -> String {
    let mut page = Page::new(&options.prefs);
    match answer {
        Ok(answer) => {
            page.line(&answer.headline);
            facts(&mut page, state, answer, lots);
            rows(&mut page, answer);
            laid(&mut page, answer, lots, options);
            fullness(&mut page, answer);
            cautions(&mut page, &answer.cautions);
            working(&mut page, answer);
        }
        Err(stop) => {
            page.line(&why(stop));
            for reason in stopped(stop, options).1 {
                page.put(&format!("  {reason}"));
            }
        }
    }
    if unread(file) > 0 {
        page.heading("cli.file");
        page.line(&file.report.summary());
        page.line(&Say::key("cli.see_check"));
    }
    page.done()
}

fn facts(page: &mut Page<'_>, state: &State, answer: &Answer, lots: &[Lot]) {
    let wig = Wig::new(state);
    page.heading("cli.facts");
    page.fact("cli.fact_wig", Arg::from(wig.name()));
    let count = |packs: Option<u32>| packs.map_or(Arg::Key("cli.not_enough"), |packs| Arg::Count(i64::from(packs)));
    let packs = answer.packs;
    page.fact(
        "cli.fact_packs",
        Say::new("cli.three", [count(packs.low), count(packs.likely), count(packs.high)]).into(),
    );
    for (id, packs) in &answer.buy {
        let name = lots.iter().find(|lot| lot.id == *id).map_or("", |lot| lot.name.as_str());
        page.fact("cli.fact_buy", Say::new("cli.times", [Arg::Count(i64::from(*packs)), Arg::from(name)]).into());
    }
    match answer.cost {
        Some(cost) => page.fact("cli.fact_cost", Arg::Money(cost)),
        None if answer.outcome == Outcome::Buy => page.fact("cli.fact_cost", Arg::Key("cli.no_price")),
        None => {}
    }
    let (spread, amounts) = (&answer.spread, &answer.likely.prepared.amounts);
    let three = [spread.low, spread.likely, spread.high].map(Arg::Run);
    page.fact("cli.fact_weft", Say::new("cli.three", three).into());
    page.fact("cli.fact_hold", Arg::Run(amounts.hold_back));
    page.fact("cli.fact_hairline", Arg::Run(amounts.hairline));
    page.fact("cli.fact_parting", Arg::Run(amounts.parting));
    page.fact("cli.fact_left", Arg::Run(answer.left_over()));
    page.fact("cli.fact_weight", Arg::Mass(answer.weight_added));
    page.fact("cli.fact_time", Arg::Time(answer.sewing));
    if let Some((day, late)) = answer.order_by {
        let late = if late { "cli.order_late" } else { "cli.order_day" };
        page.fact("cli.fact_order", Say::new(late, [Arg::Date(day)]).into());
    }
}

fn rows(page: &mut Page<'_>, answer: &Answer) {
    let rows = &answer.likely.prepared.placement.rows;
    if rows.is_empty() {
        return;
    }
    page.heading("cli.rows");
    let mut table = vec![
        ["cli.row", "cli.section", "cli.gap", "cli.place", "cli.length", "cli.zones"]
            .map(|key| page.word(key))
            .to_vec(),
    ];
    for (at, row) in rows.iter().enumerate() {
        let gap = Say::new(
            match row.mount {
                Mount::Gap => "cli.in_gap",
                Mount::OnRow => "cli.on_row",
            },
            [Arg::Count(i64::try_from(row.gap).unwrap_or(i64::MAX))],
        );
        let length = if row.part { "cli.part_row" } else { "cli.whole_row" };
        let zones: Vec<String> = row.zones.iter().map(|(zone, _)| page.word(zone.label())).collect();
        table.push(vec![
            (at + 1).to_string(),
            page.word(match row.section {
                plan::dome::Section::BackAndSides => "sheet.back_and_sides",
                plan::dome::Section::Top => "sheet.top",
            }),
            page.words(&gap),
            page.words(&Say::new("cli.whole_row", [Arg::Gap(row.at)])),
            page.words(&Say::new(length, [Arg::Length(row.length)])),
            zones.join(", "),
        ]);
    }
    page.table(&table);
}

/// The cutting drawing, read aloud: its labels in their order.
fn laid(page: &mut Page<'_>, answer: &Answer, lots: &[Lot], options: &Options) {
    let Some(plan) = &answer.likely.plan else { return };
    page.heading("cli.laid");
    page.line(&match (plan.proved, answer.likely.prepared.priced) {
        (true, _) => Say::new("cli.plan_proved", [Arg::from(plan.closed.words())]),
        (false, true) => {
            let above = Money::from_hundredths(plan.total_price.saturating_sub(plan.lower_bound));
            Say::new("cli.plan_open", [Arg::Money(above)])
        }
        (false, false) => Say::key("cli.plan_open_packs"),
    });
    let bench = Bench { laid: &answer.laid, rows: &answer.likely.prepared.placement.rows, lots };
    let drawing = drawing(&bench, &Voice { words: &WORDS, prefs: &options.prefs }, 180.0);
    for shape in &drawing.shapes {
        let Some(label) = &shape.label else { continue };
        let indent = if matches!(shape.target, Some(Target::Bar(_))) { "  " } else { "     " };
        let words = page.words(label);
        page.put(&format!("{indent}{words}"));
    }
}

fn fullness(page: &mut Page<'_>, answer: &Answer) {
    page.heading("cli.fullness");
    let mut table = vec![["cli.zone", "cli.now", "cli.wanted", "cli.with_plan"].map(|key| page.word(key)).to_vec()];
    for zone in Zone::ALL {
        let Some(full) = answer.likely.prepared.fullness.zones.get(zone as usize) else { continue };
        if full.area.get::<square_centimeter>() <= 0.0 {
            continue;
        }
        let show = |fullness| page.words(&Say::new("cli.whole_row", [Arg::Fullness(fullness)]));
        table.push(vec![
            page.word(zone.label()),
            show(full.now()),
            show(full.target),
            show(answer.reached[zone as usize]),
        ]);
    }
    page.table(&table);
}

/// Cautions, heaviest first.
pub fn cautions(page: &mut Page<'_>, cautions: &[Caution]) {
    if cautions.is_empty() {
        return;
    }
    page.heading("cli.cautions");
    let mut sorted: Vec<&Caution> = cautions.iter().collect();
    sorted.sort_by_key(|caution| core::cmp::Reverse(caution.weight));
    for caution in sorted {
        let weight = Arg::Key(weight(caution.weight));
        page.line(&Say::new("cli.caution", [weight, caution.what.clone().into(), caution.remedy.clone().into()]));
    }
}

/// Key of the word for how much a caution weighs.
pub fn weight(weight: Weight) -> &'static str {
    match weight {
        Weight::Stop => "cli.stop",
        Weight::Care => "cli.care",
        Weight::Consider => "cli.consider",
    }
}

fn working(page: &mut Page<'_>, answer: &Answer) {
    page.heading("cli.working");
    for line in &answer.lines {
        let ground = match line.ground {
            Ground::Said => Say::key("cli.measured"),
            Ground::Reckoned => Say::key("cli.reckoned"),
            Ground::Assumed { source, sure } => {
                Say::new("cli.assumed", [Arg::from(source.text), Arg::Key(sure.label())])
            }
        };
        page.line(&Say::new("cli.worked", [line.name.clone().into(), line.sum.clone().into(), ground.into()]));
    }
}
