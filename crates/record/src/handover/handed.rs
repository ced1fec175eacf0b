//! What a helper is given: the steps of a sheet with their numbers, as data.
//!
//! What it is: what the sheet showed and nothing more. What it is not: a record: nobody's own wigs come from it.

use measure::civil::Date;

use crate::{
    field::{Field, Value},
    id::{LotId, StepId, WigId},
    wig::work::Kind,
};

/// Lines of a sheet at most; far beyond any plan of work.
pub const LINES_MOST: usize = 2000;

/// The data of a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Handed {
    /// Which wig, so that what comes back finds it.
    pub wig: WigId,
    /// Its name, as the sheet has it.
    pub name: String,
    /// Whom to ask, where the record says.
    pub ask: String,
    /// The day the sheet was made.
    pub day: Date,
    /// How far the record's clock had gone.
    pub lamport: u64,
    /// Names of the lots that the lines speak of.
    pub lots: Vec<(LotId, String)>,
    /// Steps still to do, in their order.
    pub lines: Vec<Line>,
}

/// A step to do.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Its number on the sheet.
    pub number: u32,
    /// Which step.
    pub step: StepId,
    /// Whether it was begun.
    pub begun: bool,
    /// The kind of work.
    pub kind: &'static Kind,
    /// Planned figures, as far as the sheet shows them.
    pub values: Vec<(&'static Field, Value)>,
    /// Never hotter than this, in the words of the sheet.
    pub most: Option<String>,
    /// Names of the checks that spoke, heaviest first.
    pub mind: Vec<String>,
}

impl Line {
    /// What a form starts with: each field with the text that fills it.
    pub fn texts(&self) -> Vec<(&'static str, String)> {
        self.values.iter().map(|(field, value)| (field.name, value.text())).collect()
    }
}

impl Handed {
    /// The line of a number.
    pub fn line(&self, number: u32) -> Option<&Line> {
        self.lines.iter().find(|line| line.number == number)
    }
}
