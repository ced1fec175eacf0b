//! The sheet: what a helper follows at the bench from paper, without the tool.
//!
//! What it is: the parts a person ticked, put on pages as a model, then written as text or as one HTML file.
//! What it is not: planning, encoding, or a file that runs anything.

mod appendix;
mod choices;
mod data;
mod drawings;
mod fit;
mod head;
mod html;
mod model;
mod now;
mod scribe;
mod steps;
mod style;
mod text;
mod tools;
mod zones;

use measure::{civil::Date, say::Arg};
use plan::{
    care,
    fullness::{Fullness, fullness},
    inputs::{Base, Corner},
    layout::{self, Layout, lay_out},
    shopping::Answer,
};
use record::{history::fold::State, id::PhotoId, wig::condition::Condition};

pub use choices::{Choices, Paper, Part};
pub use data::{Squares, Way, drawn, handed};
pub use html::{body, file};
pub use model::{Block, Line, Page, Photo, Picture, Sheet, Sort, Step};
pub use style::{POLICY, STYLE, STYLE_HASH};
pub use text::text;

use self::{model::Fixed, scribe::Scribe};
use crate::drawing::Voice;

/// What a sheet is made from.
#[derive(Clone, Copy, Debug)]
pub struct Facts<'a> {
    /// The wig, and what the workshop knows.
    pub bench: &'a care::Bench<'a>,
    /// The weft answer, where there is one.
    pub answer: Option<&'a Answer>,
    /// Bytes of photos at hand, as `data:` addresses.
    pub photos: &'a [(PhotoId, String)],
    /// Entries of the wig's log.
    pub entries: usize,
    /// Whether the wig is an invented one.
    pub demo: bool,
    /// The day the sheet is made.
    pub today: Date,
}

impl<'a> Facts<'a> {
    fn state(&self) -> &'a State {
        self.bench.wig.state()
    }
}

/// The cap laid out where there is no answer that has it; nothing where the head's measures refuse.
fn laid(facts: &Facts<'_>) -> Option<(Layout, Fullness)> {
    let (wig, corner) = (facts.bench.wig, Corner::likely());
    let base = Base::at(wig, &corner);
    let layout = lay_out(layout::dome(wig, &corner).ok()?, &base);
    let fullness = fullness(wig, &layout, &base, facts.bench.lots, &corner);
    Some((layout, fullness))
}

/// A cap laid out, and how full it is.
#[derive(Clone, Copy)]
pub(crate) struct Cap<'a> {
    layout: &'a Layout,
    fullness: &'a Fullness,
}

/// Makes the sheet of a wig: only what was ticked, on pages of our own.
pub fn sheet(facts: &Facts<'_>, choices: &Choices, voice: &Voice<'_>) -> Sheet {
    sheet_with(facts, choices, &Way::None, voice)
}

/// The same, with the way back into the tool on it.
pub fn sheet_with(facts: &Facts<'_>, choices: &Choices, way: &Way, voice: &Voice<'_>) -> Sheet {
    let scribe = Scribe::new(voice, facts.bench.lots);
    let condition = Condition::now(facts.bench.wig);
    let plan = record::wig::steps::steps(facts.state());
    let has = |part| choices.has(part);
    let wanted = has(Part::Drawings) || has(Part::Zones);
    let own = if wanted && facts.answer.is_none() { laid(facts) } else { None };
    let cap = match (facts.answer, &own) {
        (Some(answer), _) => {
            let prepared = &answer.likely.prepared;
            Some(Cap { layout: &prepared.layout, fullness: &prepared.fullness })
        }
        (None, Some((layout, fullness))) => Some(Cap { layout, fullness }),
        (None, None) => None,
    };
    let mut blocks = Vec::new();
    let (mut numbers, mut drawings) = (Vec::new(), Vec::new());
    head::head(facts, choices, &scribe, &mut blocks);
    if has(Part::Steps) {
        now::now(facts, &condition, &scribe, &mut blocks);
        tools::tools(&plan, &scribe, &mut blocks);
    }
    if has(Part::Photos) {
        drawings::photos(facts, &scribe, &mut blocks);
    }
    if has(Part::Steps) {
        steps::steps(facts, &condition, &plan, choices, &scribe, &mut blocks, &mut numbers);
    }
    if let (true, Some(cap)) = (has(Part::Drawings), cap) {
        drawings::drawings(facts, cap, &scribe, &mut blocks, &mut drawings);
    }
    if let (true, Some(cap)) = (has(Part::Zones), cap) {
        zones::zones(facts, cap, &condition, &scribe, &mut blocks);
    }
    head::private(facts, choices, &scribe, &mut blocks);
    head::room(&scribe, &mut blocks);
    data::way(way, &scribe, &mut blocks);
    if has(Part::Working) {
        appendix::appendix(facts, &scribe, &mut blocks);
    }
    let mut pages = fit::pages(blocks, choices.paper);
    let many = pages.len() as i64;
    for (at, page) in pages.iter_mut().enumerate() {
        page.number = scribe.with("sheet.page", [Arg::Count(at as i64 + 1), Arg::Count(many)]);
    }
    let name = facts.bench.wig.name().trim();
    let wig = if name.is_empty() { scribe.key("sheet.no_name") } else { scribe::clean(name) };
    Sheet {
        paper: choices.paper,
        title: scribe.with("sheet.title", [wig.clone().into()]),
        wig,
        state: head::state(facts, &scribe),
        pages,
        numbers,
        drawings,
        words: Fixed::of(&scribe),
    }
}

impl Fixed {
    fn of(scribe: &Scribe<'_>) -> Fixed {
        Fixed {
            done: scribe.key("sheet.as_planned"),
            otherwise: scribe.key("sheet.otherwise"),
            minutes: scribe.key("sheet.minutes"),
            goes_on: scribe.key("sheet.goes_on"),
        }
    }
}
