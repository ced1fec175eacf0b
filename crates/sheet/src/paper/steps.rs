//! The steps in order, one action a line, with what to mind beside each.
//!
//! What it is: the plan of work as it stands, numbered as on the bench. What it is not: the checks (see the `plan` room).

use measure::{quantity::units, say::Arg};
use plan::{care, dome::Section, steps::guide, wefts::PlannedRow, working::Weight};
use record::{
    field::{Field, Value},
    id::StepId,
    trade::heat::Medium,
    wig::{
        condition::Condition,
        steps::{Progress, Step},
        work::{Work, sew_weft::SewWeft},
    },
};

use super::{
    Choices, Facts, Part,
    model::{self, Block, Line, Sort},
    now::overruled_words,
    scribe::{Scribe, clean, each, figure, line},
    tools::is_open,
};

/// Told in lines of their own, or not at all before the work is done.
const ASIDE: &[&str] =
    &["sewn_as", "remark", "words", "result", "more_to_come", "step", "overruled", "judgement", "photo", "lock_result"];
/// Fields that tell of a person, each on its own part only.
const OF_PEOPLE: &[(&str, Part)] =
    &[("handed_to", Part::Wearer), ("pull_points", Part::Notes), ("hairline_seen", Part::Notes)];
/// A row of the plan is the one on the drawing where their places are no further apart, mm.
const SAME_ROW: f64 = 8.0;

/// The part; answers which numbers stand for which steps.
pub(super) fn steps(
    facts: &Facts<'_>,
    condition: &Condition,
    plan: &[Step<'_>],
    choices: &Choices,
    scribe: &Scribe<'_>,
    blocks: &mut Vec<Block>,
    numbers: &mut Vec<(usize, StepId)>,
) {
    blocks.push(Block::Heading(scribe.key("sheet.steps")));
    if plan.is_empty() {
        blocks.push(Block::Lines(vec![line(Sort::Plain, scribe.key("sheet.no_steps"))]));
        return;
    }
    let mut open: Vec<(StepId, &Work)> = Vec::new();
    for step in plan.iter().filter(|step| is_open(step)) {
        open.push((step.id, &step.planned.work));
    }
    // Each step is looked at as the wig will be by then.
    let order = care::order(facts.bench, condition, &open);
    let mut closed: Vec<Line> = Vec::new();
    for (at, step) in plan.iter().enumerate() {
        let number = at + 1;
        if !is_open(step) {
            closed.push(over(number, step, choices.has(Part::Notes), scribe));
            continue;
        }
        if !closed.is_empty() {
            blocks.push(Block::Lines(core::mem::take(&mut closed)));
        }
        numbers.push((number, step.id));
        let work = &step.planned.work;
        let mut lines = figures(facts, work, choices, scribe);
        if step.progress() == Progress::Begun {
            lines.insert(0, line(Sort::Plain, scribe.key("sheet.begun")));
        }
        if step.two_answers {
            lines.push(Line {
                sort: Sort::Stop,
                name: scribe.key("sheet.stop"),
                text: scribe.key("sheet.two_answers"),
            });
        }
        lines.extend(limits(facts, condition, work, scribe));
        if let Some(hazard) = care::hazard(work) {
            let mut words: Vec<String> = Vec::new();
            for key in hazard.lines {
                words.push(scribe.key(key));
            }
            lines.push(Line { sort: Sort::Care, name: scribe.key("sheet.care"), text: words.join(" ") });
        }
        for (_, finding) in order.findings.iter().filter(|(id, _)| *id == step.id) {
            let (sort, name) = match finding.rule.weight {
                Weight::Stop => (Sort::Stop, "sheet.stop"),
                Weight::Care | Weight::Consider => (Sort::Care, "sheet.care"),
            };
            let text = format!("{} {}", scribe.say(&finding.what), scribe.say(&finding.remedy));
            lines.push(Line { sort, name: scribe.key(name), text });
        }
        for text in overruled_words(work, scribe) {
            lines.push(Line { sort: Sort::Care, name: scribe.key("sheet.overruled"), text });
        }
        let guide = guide(work.kind().name);
        lines.push(line(Sort::Right, scribe.key(guide.right_when)));
        lines.push(line(Sort::Stop, scribe.key(guide.stop_if)));
        blocks.push(Block::Step(model::Step { number, what: what(work, scribe), lines, goes_on: false }));
    }
    if !closed.is_empty() {
        blocks.push(Block::Lines(closed));
    }
}

/// A step that is over: done, or left out.
fn over(number: usize, step: &Step<'_>, notes: bool, scribe: &Scribe<'_>) -> Line {
    let what = [Arg::Count(number as i64), Arg::Text(what(&step.planned.work, scribe))];
    let mut text = match (step.done.last(), step.progress()) {
        (Some(last), Progress::Done) => {
            let [number, what] = what;
            scribe.with("sheet.step_over", [number, what, Arg::Date(last.done.date())])
        }
        _ => scribe.with("sheet.step_left_out", what),
    };
    // Why is what somebody wrote for themselves.
    if let Some(why) = step.planned.skipped.as_ref().filter(|_| notes) {
        text = format!("{text}: {}", clean(why));
    }
    line(Sort::Small, text)
}

/// What to do, with what makes it this one.
fn what(work: &Work, scribe: &Scribe<'_>) -> String {
    let to_do = scribe.to_do(work.kind().name);
    match work.choice("sewn_as") {
        Some(sewn_as) => scribe.with("sheet.what_as", [Arg::Text(to_do), Arg::Text(scribe.choice(sewn_as))]),
        None => to_do,
    }
}

/// Whether a field stands among the figures of a step.
pub(super) fn on_sheet(of: &Field, choices: &Choices) -> bool {
    let part = OF_PEOPLE.iter().find(|(name, _)| *name == of.name).map(|(_, part)| *part);
    !ASIDE.contains(&of.name) && part.is_none_or(|part| choices.has(part))
}

/// One line for each thing that was planned, in the order of the form.
fn figures(facts: &Facts<'_>, work: &Work, choices: &Choices, scribe: &Scribe<'_>) -> Vec<Line> {
    let mut lines = Vec::new();
    if let Some(number) = row_on_drawing(facts, work) {
        lines.push(line(Sort::Figure, scribe.with("sheet.row_on_drawing", [Arg::Count(number as i64)])));
    }
    for (of, value) in
        work.kind().every_field().filter(|of| on_sheet(of, choices)).filter_map(|of| Some((of, work.get(of.name)?)))
    {
        let done = if *value == Value::YesNo(true) { scribe.yes(of.name) } else { None };
        lines.push(match done {
            Some(sentence) => line(Sort::Figure, sentence),
            None => figure(scribe.field(of.name), scribe.value(value)),
        });
    }
    for field in ["words", "remark"] {
        if let Some(words) = work.get(field).and_then(Value::words) {
            lines.push(line(Sort::Plain, clean(words)));
        }
    }
    lines
}

/// The number that a row has on the cap drawing.
fn row_on_drawing(facts: &Facts<'_>, work: &Work) -> Option<usize> {
    let weft = SewWeft::of(work)?;
    let section = if weft.section? == "top" { Section::Top } else { Section::BackAndSides };
    let place = weft.place?.get::<units::millimeter>();
    let apart = |row: &PlannedRow| libm::fabs(row.at.get::<units::millimeter>() - place);
    let rows = &facts.answer?.likely.prepared.placement.rows;
    let (at, row) = rows
        .iter()
        .enumerate()
        .filter(|(_, row)| row.section == section)
        .min_by(|(_, a), (_, b)| apart(a).total_cmp(&apart(b)))?;
    (apart(row) <= SAME_ROW).then_some(at + 1)
}

/// How hot it may be at most, and what limits it.
pub(super) fn limits(facts: &Facts<'_>, condition: &Condition, work: &Work, scribe: &Scribe<'_>) -> Option<Line> {
    let medium = match (work.kind().name, work.choice("medium")) {
        ("test_lock", _) => return None,
        (_, Some(medium)) => Medium::read(medium)?,
        (_, None) => {
            work.temperature()?;
            Medium::Water
        }
    };
    let limit = care::limit(facts.bench, condition, &each(work.zones()), medium);
    let lowest = limit.lowest()?;
    let says = [Arg::Key(medium.label()), Arg::Temperature(lowest.most), lowest.name.clone().into()];
    Some(line(Sort::Stop, scribe.with("sheet.never_above", says)))
}
