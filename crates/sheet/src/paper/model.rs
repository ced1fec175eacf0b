//! The sheet as a model: pages, the blocks on them, the lines in a block.
//!
//! What it is: plain words already put together, with how high each block is. What it is not: HTML or text (see `html`, `text`).

use record::id::StepId;

use super::choices::Paper;
use crate::drawing::{Drawing, node::Node};

/// A sheet, ready to be written.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// On which paper.
    pub paper: Paper,
    /// Its title.
    pub title: String,
    /// The wig, over every page.
    pub wig: String,
    /// The day it was made and the state of the record, over every page.
    pub state: String,
    /// Its pages.
    pub pages: Vec<Page>,
    /// The numbers beside the steps that stand on it, and whose they are.
    pub numbers: Vec<(usize, StepId)>,
    /// Its drawings, for files of their own.
    pub drawings: Vec<Drawing>,
    /// Words that the writers need: each with its key.
    pub(super) words: Fixed,
}

/// Words that the writers put beside what is in the blocks.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Fixed {
    pub done: String,
    pub otherwise: String,
    pub minutes: String,
    pub goes_on: String,
}

/// A page.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Page {
    /// Which page of how many, in words.
    pub number: String,
    /// What stands on it, from top to bottom; no block is on two pages.
    pub blocks: Vec<Block>,
}

/// What stands together.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// Begins a part.
    Heading(String),
    /// Lines across the page.
    Lines(Vec<Line>),
    /// Lines under a name.
    Item(String, Vec<Line>),
    /// Something to tick off.
    Tick(String),
    /// A step to do.
    Step(Step),
    /// Drawings side by side.
    Pictures(Vec<Picture>),
    /// Photos side by side.
    Photos(Vec<Photo>),
    /// Names, each with room to write behind it.
    Fill(Vec<String>),
    /// So many ruled lines to write on.
    Pencil(usize),
}

/// A step to do.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// Its number in the plan of work.
    pub number: usize,
    /// What to do.
    pub what: String,
    /// One thing a line.
    pub lines: Vec<Line>,
    /// Whether it goes on from the page before.
    pub goes_on: bool,
}

impl Step {
    /// What to do, then what to mind: the lines from the first one that warns or tells when it is right.
    pub fn halves(&self) -> (&[Line], &[Line]) {
        let does = |line: &Line| matches!(line.sort, Sort::Plain | Sort::Small | Sort::Figure);
        self.lines.split_at(self.lines.iter().position(|line| !does(line)).unwrap_or(self.lines.len()))
    }
}

/// What sort of line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sort {
    /// To be read.
    Plain,
    /// Small print.
    Small,
    /// A figure: name and value.
    Figure,
    /// Take care.
    Care,
    /// Right when.
    Right,
    /// Stop and ask.
    Stop,
}

/// A line: its name, where it has one, and what it says.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What sort.
    pub sort: Sort,
    /// Its name; empty where it needs none.
    pub name: String,
    /// What it says.
    pub text: String,
}

/// A drawing at its size on paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Its elements.
    pub node: Node,
    /// Width and height on paper, mm.
    pub size: [f64; 2],
    /// What it shows, in words.
    pub said: Vec<String>,
}

/// A photo.
#[derive(Clone, Debug, PartialEq)]
pub struct Photo {
    /// Its bytes as a `data:` address.
    pub data: String,
    /// What stands under it.
    pub caption: String,
}
