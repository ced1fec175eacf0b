//! What stands first and last: what the wig is, whom to ask, what was ticked of wearer, prices and notes, room to write.
//!
//! What it is: plain facts of the record. What it is not: the steps.

use measure::say::Arg;
use record::{
    field::Value,
    history::{entry::Of, fold::Oddity},
    wig::slots::{Group, SLOTS},
    workshop::lots::Lot,
};

use super::{
    Choices, Facts, Part,
    model::{Block, Line, Sort},
    scribe::{Scribe, clean, figure, line},
};

/// The day and how far the record goes.
pub(super) fn state(facts: &Facts<'_>, scribe: &Scribe<'_>) -> String {
    let entries = Arg::Count(i64::try_from(facts.entries).unwrap_or(i64::MAX));
    let made = made(facts, entries, scribe);
    if facts.demo { format!("{made} {}", scribe.key("sheet.demo")) } else { made }
}

fn made(facts: &Facts<'_>, entries: Arg, scribe: &Scribe<'_>) -> String {
    match facts.state().last_done() {
        Some(last) => {
            let last = Arg::Text(last.to_string().replace('T', " "));
            scribe.with("sheet.state", [Arg::Date(facts.today), entries, last])
        }
        None => scribe.with("sheet.state_empty", [Arg::Date(facts.today)]),
    }
}

/// What stands at a slot of the whole wig, in words.
fn slot(facts: &Facts<'_>, name: &str, sort: Sort, scribe: &Scribe<'_>, lines: &mut Vec<Line>) {
    if let Some(value) = facts.bench.wig.held(name, Of::Wig).and_then(|held| held.value.as_ref()) {
        lines.push(Line { sort, name: scribe.field(name), text: scribe.value(value) });
    }
}

/// What the wig is, how to use the sheet, when to stop.
pub(super) fn head(facts: &Facts<'_>, choices: &Choices, scribe: &Scribe<'_>, blocks: &mut Vec<Block>) {
    let wig = facts.bench.wig;
    // Over each page there is room for a line of it only.
    let mut lines: Vec<Line> = Vec::new();
    slot(facts, "name", Sort::Figure, scribe, &mut lines);
    if choices.has(Part::Wearer) {
        slot(facts, "character", Sort::Figure, scribe, &mut lines);
    }
    lines.push(figure(scribe.field("fibre"), scribe.choice(wig.fibre().name)));
    lines.push(figure(scribe.field("cap"), scribe.choice(wig.cap().name)));
    slot(facts, "base_colour", Sort::Figure, scribe, &mut lines);
    slot(facts, "label_heat", Sort::Figure, scribe, &mut lines);
    slot(facts, "due", Sort::Figure, scribe, &mut lines);
    blocks.push(Block::Lines(lines));
    // Each device shows one of the answers; a helper has to know that there is another.
    let open =
        |oddity: &&Oddity| matches!(oddity, Oddity::TwoAnswers(_) | Oddity::TwoCorrections(_) | Oddity::Clash(_));
    let conflicts = facts.state().oddities().iter().filter(open).count();
    if conflicts > 0 {
        let text = scribe.with("sheet.conflicts", [Arg::Count(conflicts as i64)]);
        blocks.push(Block::Lines(vec![line(Sort::Stop, text)]));
    }
    let mut rules = vec![
        line(Sort::Stop, scribe.key("sheet.stop_always")),
        line(Sort::Care, scribe.key("sheet.label_first")),
        line(Sort::Plain, scribe.key("sheet.how_to")),
    ];
    match facts.bench.wig.held("ask", Of::Wig).and_then(|held| held.value.as_ref()).and_then(Value::words) {
        Some(words) => rules.insert(1, figure(scribe.key("sheet.ask"), clean(words))),
        None => blocks.push(Block::Fill(vec![scribe.key("sheet.ask"), scribe.key("sheet.phone")])),
    }
    blocks.push(Block::Lines(rules));
}

/// Wearer's measures, prices, notes: each only where it was ticked.
pub(super) fn private(facts: &Facts<'_>, choices: &Choices, scribe: &Scribe<'_>, blocks: &mut Vec<Block>) {
    let mut part = |heading, lines: Vec<Line>| {
        if !lines.is_empty() {
            blocks.push(Block::Heading(scribe.key(heading)));
            blocks.push(Block::Lines(lines));
        }
    };
    if choices.has(Part::Wearer) {
        let mut lines = Vec::new();
        for one in SLOTS.iter().filter(|one| one.group == Group::Head) {
            slot(facts, one.field.name, Sort::Figure, scribe, &mut lines);
        }
        part("sheet.measures", lines);
    }
    if choices.has(Part::Prices) {
        part("sheet.prices", prices(facts, scribe));
    }
    if choices.has(Part::Notes) {
        part("sheet.notes", notes(facts, scribe));
    }
}

fn prices(facts: &Facts<'_>, scribe: &Scribe<'_>) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    slot(facts, "base_price", Sort::Figure, scribe, &mut lines);
    let used = |lot: &&Lot| facts.bench.wig.uses_lot(lot.id);
    for lot in facts.bench.lots.iter().filter(used) {
        if let Some(price) = lot.price {
            lines.push(figure(scribe.with("sheet.a_pack", [Arg::Text(scribe.lot(lot.id))]), scribe.prefs.money(price)));
        }
    }
    if let Some(answer) = facts.answer {
        for (lot, packs) in &answer.buy {
            let says = [Arg::Count(i64::from(*packs)), Arg::Text(scribe.lot(*lot))];
            lines.push(figure(scribe.key("sheet.to_buy"), scribe.with("sheet.packs_of", says)));
        }
        if let Some(cost) = answer.cost {
            lines.push(figure(scribe.key("sheet.cost"), scribe.prefs.money(cost)));
        }
    }
    lines
}

/// The standing note, then notes and remarks of what was done, in bench order.
fn notes(facts: &Facts<'_>, scribe: &Scribe<'_>) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    slot(facts, "note", Sort::Plain, scribe, &mut lines);
    for done in facts.state().works() {
        let words = |field| done.work.get(field).and_then(Value::words);
        let kind = done.work.kind().name;
        // What was found and measured on a body is for the person alone too.
        for field in ["words", "remark", "found", "pull_points", "hairline_seen"] {
            let Some(words) = words(field) else { continue };
            let name = scribe.with(
                "sheet.noted",
                [
                    Arg::Text(done.done.to_string().replace('T', " ")),
                    Arg::Text(scribe.words.get(&format!("work.{kind}"))),
                ],
            );
            lines.push(Line { sort: Sort::Plain, name, text: clean(words) });
        }
    }
    lines
}

/// Who did it, and room for notes.
pub(super) fn room(scribe: &Scribe<'_>, blocks: &mut Vec<Block>) {
    blocks.push(Block::Heading(scribe.key("sheet.room")));
    blocks.push(Block::Fill(vec![scribe.key("sheet.done_by"), scribe.key("sheet.done_on")]));
    blocks.push(Block::Pencil(6));
}
