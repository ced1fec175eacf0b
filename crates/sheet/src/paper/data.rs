//! What the sheet shows of its steps, as data that a tool opens again; and the code on paper that leads there.
//!
//! What it is: the same lines, figures and cautions as on paper, picked by the same rules. What it is not: encoding.

use plan::care;
use record::{
    field::Value,
    handover::handed::{Handed, Line},
    history::entry::Of,
    id::{LotId, StepId, WigId},
    wig::{condition::Condition, steps::Progress, work::Work},
};

use super::{
    Choices, Facts, Part,
    model::{Block, Picture, Sort},
    scribe::{Scribe, clean, line},
    steps::{limits, on_sheet},
    tools::is_open,
};
use crate::drawing::{
    Drawing, Shape, Voice,
    node::{Form, node, number},
    rect,
};
use measure::say::Say;

/// Words that are told in lines of their own, and what makes a step this one.
const BESIDE: &[&str] = &["words", "remark", "sewn_as"];
/// Width of a square of a code on paper, mm.
const SQUARE: f64 = 0.5;
/// Light squares that belong round a code.
const QUIET: usize = 4;

/// A code of dark and light squares, made by others.
#[derive(Clone, Debug, PartialEq)]
pub struct Squares {
    /// Squares a side.
    pub side: usize,
    /// Row by row, dark ones true.
    pub dark: Vec<bool>,
}

/// What stands on paper of the way into the tool.
#[derive(Clone, Debug, PartialEq)]
pub enum Way {
    /// Nothing.
    None,
    /// A code that leads there.
    Code(Squares),
    /// That it does not fit a code, and the file carries it.
    File,
}

/// The data of a sheet: only what was ticked. `lamport` is how far the wig's log has gone.
pub fn handed(facts: &Facts<'_>, choices: &Choices, wig: WigId, lamport: u64, voice: &Voice<'_>) -> Handed {
    let scribe = Scribe::new(voice, facts.bench.lots);
    let condition = Condition::now(facts.bench.wig);
    let plan = record::wig::steps::steps(facts.state());
    let mut lines: Vec<Line> = Vec::new();
    if choices.has(Part::Steps) {
        let open: Vec<(StepId, &Work)> =
            plan.iter().filter(|step| is_open(step)).map(|step| (step.id, &step.planned.work)).collect();
        let order = care::order(facts.bench, &condition, &open);
        for (number, step) in (1..).zip(&plan).filter(|(_, step)| is_open(step)) {
            let work = &step.planned.work;
            let shown = |of: &&'static record::field::Field| on_sheet(of, choices) || BESIDE.contains(&of.name);
            let mut mind: Vec<String> = Vec::new();
            for (_, finding) in order.findings.iter().filter(|(id, _)| *id == step.id) {
                if !mind.iter().any(|name| name == finding.rule.name) {
                    mind.push(finding.rule.name.to_owned());
                }
            }
            lines.push(Line {
                number,
                step: step.id,
                begun: step.progress() == Progress::Begun,
                kind: work.kind(),
                values: work
                    .kind()
                    .every_field()
                    .filter(shown)
                    .filter_map(|of| Some((of, work.get(of.name)?.clone())))
                    .collect(),
                most: limits(facts, &condition, work, &scribe).map(|line| line.text),
                mind,
            });
        }
    }
    let mut lots: Vec<(LotId, String)> = Vec::new();
    for (_, value) in lines.iter().flat_map(|line| &line.values) {
        if let Value::Lot(lot) = value
            && lots.iter().all(|(one, _)| one != lot)
        {
            lots.push((*lot, scribe.lot(*lot)));
        }
    }
    let ask = facts.bench.wig.held("ask", Of::Wig).and_then(|held| held.value.as_ref()).and_then(Value::words);
    Handed {
        wig,
        name: clean(facts.bench.wig.name().trim()),
        ask: clean(ask.unwrap_or_default()),
        day: facts.today,
        lamport,
        lots,
        lines,
    }
}

/// The part.
pub(super) fn way(way: &Way, scribe: &Scribe<'_>, blocks: &mut Vec<Block>) {
    let (key, code) = match way {
        Way::None => return,
        Way::Code(code) => ("sheet.back_code", Some(code)),
        Way::File => ("sheet.back_file", None),
    };
    blocks.push(Block::Heading(scribe.key("sheet.back")));
    blocks.push(Block::Lines(vec![line(Sort::Plain, scribe.key(key))]));
    if let Some(code) = code {
        let drawing = drawn(code);
        let mut node = node(&drawing, &scribe.voice(), Form::Embedded);
        let size = [drawing.view_box[2], drawing.view_box[3]];
        node.attributes.push(("width", format!("{}mm", number(size[0]))));
        node.attributes.push(("height", format!("{}mm", number(size[1]))));
        blocks.push(Block::Pictures(vec![Picture { node, size, said: Vec::new() }]));
    }
}

/// A code as a drawing in its own size: each run of dark squares of a row is one rectangle.
pub fn drawn(code: &Squares) -> Drawing {
    let mut runs = Vec::new();
    for (y, row) in code.dark.chunks(code.side.max(1)).enumerate() {
        let mut x = 0;
        for part in row.chunk_by(|a, b| a == b) {
            if part.first() == Some(&true) {
                let at = [x + QUIET, y + QUIET].map(|squares| squares as f64 * SQUARE);
                runs.push(rect(at, [part.len() as f64 * SQUARE, SQUARE]));
            }
            x += part.len();
        }
    }
    let side = (code.side + 2 * QUIET) as f64 * SQUARE;
    Drawing {
        view_box: [0.0, 0.0, side, side],
        shapes: vec![Shape::area("d-have", runs)],
        title: Say::key("sheet.back"),
        description: Say::key("sheet.back_code"),
    }
}
