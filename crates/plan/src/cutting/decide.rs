//! Decides one supply: do the pieces fit into these lengths?
//!
//! What it is: a chain of ways, quick ones first, advanced one small step at a time. What it is not: a choice of supplies.

use super::dive::{Dive, Step};
use super::exhaust::{Outcome, exhaust};
use super::fit::{self, Ended, Filling, Learner, Manner};
use super::lp::{self, Lp, Pool, RELAX, ROWS};
use super::value::{Cut, Job, Packing};

/// How much to spend on one supply.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Effort {
    /// Rounds of learning from which to which.
    pub rounds: (u32, u32),
    /// Whether the linear relaxation may refute it.
    pub relax: bool,
    /// Whether to dive.
    pub dive: bool,
    /// Branches of the search that tries everything.
    pub branches: u64,
}

impl Effort {
    /// The quick ways only.
    pub const LIGHT: Self = Self { rounds: (0, 6), relax: false, dive: false, branches: 0 };
    /// All ways.
    pub const FULL: Self = Self { rounds: (6, 46), relax: true, dive: true, branches: 60_000 };
    /// For pieces that only owned lengths can hold: all ways, quick ones first.
    pub const HELD: Self = Self { rounds: (0, 40), relax: true, dive: true, branches: 60_000 };
    /// For the second aim (fewest owned lengths).
    pub const MIDDLE: Self = Self { rounds: (0, 12), relax: true, dive: false, branches: 20_000 };
    /// For the third aim (the longest offcut).
    pub const SHORT: Self = Self { rounds: (0, 2), relax: false, dive: false, branches: 3_000 };
}

/// The answer for one supply.
pub enum Verdict {
    /// The pieces fit, like this.
    Fits(Packing),
    /// They do not: the inequality says why, for this supply and others.
    Cut(Cut),
    /// They do not: everything was tried.
    Exhausted,
    /// Not known.
    Open,
}

const MANNERS: [Manner; 4] = [
    Manner { short_first: true, anchored: true },
    Manner { short_first: false, anchored: true },
    Manner { short_first: true, anchored: false },
    Manner { short_first: false, anchored: false },
];

#[derive(Clone, Debug)]
enum Stage {
    BestFit(bool),
    Fill(usize, Box<Filling>),
    Learn(Box<Learner>, u32),
    Relax(Box<Lp>),
    LearnMore(Box<Learner>, u32),
    Dive(Box<Dive>),
    Exhaust,
    Over,
}

/// The chain, at some stage.
#[derive(Clone, Debug)]
pub struct Decider {
    pub job: Job,
    effort: Effort,
    stage: Stage,
    /// Patterns to begin a relaxation with, and those made on the way.
    pub pool: Pool,
}

impl Decider {
    pub fn new(job: Job, effort: Effort) -> Self {
        Self::with_pool(job, effort, Pool::new())
    }

    pub fn with_pool(job: Job, effort: Effort, pool: Pool) -> Self {
        let mut decider = Self { job, effort, stage: Stage::BestFit(false), pool };
        if effort.rounds.0 > 0 {
            decider.stage = decider.after_quick();
        }
        decider
    }

    fn small_enough(&self) -> bool {
        RELAX && self.job.sizes.len() + self.job.caps.len() <= ROWS
    }

    fn after_quick(&self) -> Stage {
        if self.effort.relax && self.small_enough() {
            Stage::Relax(Box::new(Lp::fit(self.job.clone(), &self.pool)))
        } else {
            self.after_relax()
        }
    }

    fn after_relax(&self) -> Stage {
        match self.effort.rounds.0 {
            0 => self.after_learning(),
            from => Stage::LearnMore(Box::new(Learner::new(&self.job, from)), from),
        }
    }

    fn after_learning(&self) -> Stage {
        if self.effort.dive && self.small_enough() {
            Stage::Dive(Box::new(Dive::new(&self.job, self.pool.clone())))
        } else {
            Stage::Exhaust
        }
    }

    fn filling(job: &Job, at: usize) -> Stage {
        Stage::Fill(at, Box::new(Filling::full(job, MANNERS[at])))
    }

    /// One small step; an answer ends the chain.
    pub fn advance(&mut self, work: &mut u64) -> Option<Verdict> {
        *work += 20;
        let (job, effort) = (&self.job, self.effort);
        let mut packed = None;
        let next = match std::mem::replace(&mut self.stage, Stage::Over) {
            Stage::BestFit(shortest) => {
                packed = fit::best_fit(job, shortest, work);
                if shortest { Self::filling(job, 0) } else { Stage::BestFit(true) }
            }
            Stage::Fill(at, mut filling) => match filling.go(job, MANNERS[at], work) {
                None => Stage::Fill(at, filling),
                Some(Ended::Fits(packing)) => return Some(Verdict::Fits(packing)),
                Some(Ended::Failed) => {
                    if RELAX {
                        lp::keep(&mut self.pool, filling.loads());
                    }
                    match at + 1 {
                        at if at < MANNERS.len() => Self::filling(job, at),
                        _ => Stage::Learn(Box::new(Learner::new(job, 0)), 0),
                    }
                }
            },
            Stage::Learn(mut learner, round) => match learner.round(job, work) {
                None => Stage::Learn(learner, round),
                Some(Ended::Fits(packing)) => return Some(Verdict::Fits(packing)),
                Some(Ended::Failed) => {
                    if RELAX {
                        lp::keep(&mut self.pool, &learner.loads);
                    }
                    if round + 1 < effort.rounds.1 { Stage::Learn(learner, round + 1) } else { self.after_quick() }
                }
            },
            Stage::Relax(mut lp) if RELAX => {
                if !lp.pivot(work) {
                    Stage::Relax(lp)
                } else {
                    let cut = lp.cut(work).filter(|cut| cut.broken_by(&job.supply));
                    self.pool = lp.into_pool();
                    if let Some(cut) = cut {
                        return Some(Verdict::Cut(cut));
                    }
                    self.after_relax()
                }
            }
            Stage::LearnMore(mut learner, round) => match learner.round(job, work) {
                None => Stage::LearnMore(learner, round),
                Some(Ended::Fits(packing)) => return Some(Verdict::Fits(packing)),
                Some(Ended::Failed) if round + 1 < effort.rounds.1 => Stage::LearnMore(learner, round + 1),
                Some(Ended::Failed) => self.after_learning(),
            },
            Stage::Dive(mut dive) if RELAX => match dive.advance(work) {
                Step::Going => Stage::Dive(dive),
                Step::Fits(packing) => return Some(Verdict::Fits(packing)),
                Step::GaveUp => Stage::Exhaust,
            },
            Stage::Relax(_) => self.after_relax(),
            Stage::Dive(_) | Stage::Exhaust => {
                return Some(match exhaust(job, effort.branches, work) {
                    Outcome::Fits(packing) => Verdict::Fits(packing),
                    Outcome::Impossible => Verdict::Exhausted,
                    Outcome::Unknown => Verdict::Open,
                });
            }
            Stage::Over => return Some(Verdict::Open),
        };
        self.stage = next;
        packed.map(Verdict::Fits)
    }
}
