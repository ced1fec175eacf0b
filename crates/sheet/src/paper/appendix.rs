//! The working behind the figures.
//!
//! What it is: the answer's own lines with their ground. What it is not: another sum.

use measure::say::Arg;
use plan::working::Ground;

use super::{
    Facts,
    model::{Block, Line, Sort},
    scribe::Scribe,
};

/// The part.
pub(super) fn appendix(facts: &Facts<'_>, scribe: &Scribe<'_>, blocks: &mut Vec<Block>) {
    let Some(answer) = facts.answer else { return };
    blocks.push(Block::Heading(scribe.key("sheet.working")));
    for line in &answer.lines {
        let ground = match line.ground {
            Ground::Said => scribe.key("sheet.ground_said"),
            Ground::Reckoned => scribe.key("sheet.ground_reckoned"),
            Ground::Assumed { source, sure } => {
                scribe.with("sheet.ground_assumed", [Arg::from(source.text), Arg::Key(sure.label())])
            }
        };
        let text = format!("{} {ground}", scribe.say(&line.sum));
        blocks.push(Block::Lines(vec![Line { sort: Sort::Small, name: scribe.say(&line.name), text }]));
    }
}
