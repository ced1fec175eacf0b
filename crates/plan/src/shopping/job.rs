//! The answer in small steps, so that a page stays alive while it is reckoned.
//!
//! What it is: a row of stages, each a few milliseconds. What it is not: a thread, or a clock.

use measure::civil::Date;
use record::{history::fold::State, wig::figures::Wig, workshop::lots::Lot};

use super::{
    answer::{Answer, Corners, Solved, answer},
    heads::Heads,
    prepare::{Prepared, Stop, parted, prepare_with},
    spread::{Search, Spread},
};
use crate::{
    cutting::{Progress, Solver},
    inputs::Corner,
    pace::Paces,
};

/// A question being reckoned.
#[derive(Debug)]
pub struct Job {
    state: State,
    lots: Vec<Lot>,
    today: Date,
    parted: bool,
    paces: Paces,
    stage: Stage,
}

#[derive(Debug)]
enum Stage {
    Fit(Heads),
    Begin(Heads),
    Search(Heads, Box<Search>),
    Prepare(Box<Before>),
    Cut(Box<Before>, Box<Prepared>, Box<Solver>),
    Over,
}

/// What is known so far.
#[derive(Debug)]
struct Before {
    heads: Heads,
    spread: Spread,
    solved: Vec<Solved>,
}

/// How far a job is.
#[derive(Debug)]
pub enum Step {
    /// Call again.
    More,
    /// The answer, or why there is none.
    Done(Box<Result<Answer, Stop>>),
}

impl Job {
    /// Asks; nothing is reckoned yet.
    pub fn new(state: State, lots: Vec<Lot>, today: Date) -> Job {
        let parted = parted(&Wig::new(&state), &lots);
        Job { state, lots, today, parted, paces: Paces::default(), stage: Stage::Fit(Heads::default()) }
    }

    /// The same by the person's own pace instead of stated practice.
    #[must_use]
    pub fn at_pace(self, paces: Paces) -> Job {
        Job { paces, ..self }
    }

    /// Goes on for about so much work (see [`crate::cutting::STEP_UNITS`]).
    pub fn step(&mut self, units: u64) -> Step {
        let stage = core::mem::replace(&mut self.stage, Stage::Over);
        match self.advance(stage, units) {
            Ok(None) => Step::More,
            Ok(Some(answer)) => Step::Done(Box::new(Ok(answer))),
            Err(stop) => Step::Done(Box::new(Err(stop))),
        }
    }

    /// Goes on to the end.
    ///
    /// # Errors
    /// Why there is no answer.
    pub fn finish(mut self) -> Result<Answer, Stop> {
        loop {
            if let Step::Done(answer) = self.step(u64::MAX) {
                return *answer;
            }
        }
    }

    fn advance(&mut self, stage: Stage, units: u64) -> Result<Option<Answer>, Stop> {
        let wig = Wig::new(&self.state);
        match stage {
            Stage::Fit(mut heads) => {
                let all = heads.fit_next(&wig)?;
                if !wig.cap().takes_weft() {
                    return Err(Stop::NoWefts);
                }
                self.stage = if all { Stage::Begin(heads) } else { Stage::Fit(heads) };
                Ok(None)
            }
            Stage::Begin(mut heads) => {
                let search = Search::new(&wig, &self.lots, &mut heads, self.parted)?;
                self.stage = Stage::Search(heads, Box::new(search));
                Ok(None)
            }
            Stage::Search(mut heads, mut search) => {
                self.stage = if search.step(&wig, &self.lots, &mut heads, self.parted)? {
                    let spread = search.spread(&wig, &self.lots, &mut heads, self.parted)?;
                    Stage::Prepare(Box::new(Before { heads, spread, solved: Vec::new() }))
                } else {
                    Stage::Search(heads, search)
                };
                Ok(None)
            }
            Stage::Prepare(mut before) => {
                let corner = before.corner(before.solved.len());
                let halves = before.solved.len() == HALVES;
                let layout = before.heads.layout(&wig, &corner).ok_or(Stop::NoLot)?.clone();
                let prepared =
                    prepare_with(&wig, &self.lots, layout, &corner, self.parted, halves, before.solved.is_empty())?;
                match prepared.case.clone() {
                    Some(case) => {
                        self.stage = Stage::Cut(before, Box::new(prepared), Box::new(Solver::new(case)));
                        Ok(None)
                    }
                    None => self.solved(before, Solved { prepared, plan: None, shortage: None }),
                }
            }
            Stage::Cut(before, prepared, mut solver) => match solver.step(units) {
                Progress::Running(_) => {
                    self.stage = Stage::Cut(before, prepared, solver);
                    Ok(None)
                }
                Progress::Done(plan) => {
                    self.solved(before, Solved { prepared: *prepared, plan: Some(*plan), shortage: None })
                }
                Progress::Short(shortage) => {
                    self.solved(before, Solved { prepared: *prepared, plan: None, shortage: Some(shortage) })
                }
            },
            // A job that is over has answered; asked again it has nothing.
            Stage::Over => Err(Stop::NoLot),
        }
    }

    fn solved(&mut self, mut before: Box<Before>, solved: Solved) -> Result<Option<Answer>, Stop> {
        before.solved.push(solved);
        let wig = Wig::new(&self.state);
        let halves = wig.cut_to_rows() && wig.joins();
        let wanted = if halves { HALVES + 1 } else { HALVES };
        if before.solved.len() < wanted {
            self.stage = Stage::Prepare(before);
            return Ok(None);
        }
        let Before { spread, solved, .. } = *before;
        let mut solved = solved.into_iter();
        match (solved.next(), solved.next(), solved.next()) {
            (Some(likely), Some(fewest), Some(most)) => {
                let corners = Corners { likely, fewest, most, joined: solved.next() };
                Ok(Some(answer(&wig, &self.lots, self.today, &self.paces, spread, corners)))
            }
            _ => Err(Stop::NoLot),
        }
    }
}

/// The pass with joined pieces comes after likely, least and most.
const HALVES: usize = 3;

impl Before {
    fn corner(&self, pass: usize) -> Corner {
        match pass {
            1 => self.spread.fewest_packs,
            2 => self.spread.most_packs,
            _ => Corner::likely(),
        }
    }
}
