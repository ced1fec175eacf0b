//! The solver as a person's browser runs it: in small steps, each a count of work, with the same answer however it is sliced.
//!
//! What it is: the order of the phases and the state between steps. What it is not: the searches themselves.

use super::case::Case;
use super::decide::{Decider, Effort, Verdict};
use super::each::each;
use super::found::Found;
use super::model::Model;
use super::plan::{Certificate, Closed, Inequality, Plan};
use super::price::{PriceEnd, PricePhase};
use super::refine::{OffcutPhase, OwnedPhase};
use super::start::start;
use super::value::{Cut, Job};

/// Work for one step of a browser's main thread. Measured natively (the benchmark prints it): below 2 ms for 5 to 200 pieces,
/// up to 17 ms for 10 000; not measured in a browser.
pub const STEP_UNITS: u64 = 500_000;

/// What the solver is busy with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// Fitting the pieces that no pack for sale is long enough for into owned lengths.
    Held,
    /// Looking for the least price.
    Price,
    /// Looking for fewer owned lengths at that price.
    Owned,
    /// Looking for a longer single offcut.
    Offcut,
}

/// How it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Standing {
    /// The phase.
    pub phase: Phase,
    /// Price of the best plan so far, if there is one; [`Solver::best`] gives the plan itself.
    pub best_price: Option<u64>,
    /// No plan can cost less than this.
    pub lower_bound: u64,
}

/// The owned lengths do not hold the pieces that no pack for sale is long enough for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shortage {
    /// Length of the longest piece that only owned lengths can hold, in millimetres.
    pub piece_mm: u32,
    /// How many pieces only owned lengths can hold.
    pub pieces: u32,
    /// Longest length for sale, in millimetres, if anything is for sale.
    pub longest_for_sale_mm: Option<u32>,
    /// Whether it is proved that they do not fit; otherwise no way was found.
    pub proved: bool,
}

impl std::fmt::Display for Shortage {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let pieces = if self.pieces == 1 { "piece".into() } else { format!("{} pieces", self.pieces) };
        match self.longest_for_sale_mm {
            Some(mm) => write!(f, "pieces: the longest length for sale has {mm} mm, so that the {pieces} up to ")?,
            None => write!(f, "pieces: nothing is for sale, so that the {pieces} up to ")?,
        }
        let verdict = if self.proved { "they do not fit" } else { "no way to fit them was found" };
        write!(
            f,
            "{} mm must come from owned lengths, and {verdict}: add a longer pack or more owned lengths, or shorten or join pieces",
            self.piece_mm
        )
    }
}

impl std::error::Error for Shortage {}

/// What a step says.
#[derive(Clone, Debug)]
pub enum Progress {
    /// Not finished.
    Running(Standing),
    /// Finished.
    Done(Box<Plan>),
    /// Finished without a plan.
    Short(Shortage),
}

#[derive(Clone, Debug)]
enum Stage {
    Begin,
    Held(Box<Decider>),
    Price(Box<PricePhase>),
    Owned(Box<OwnedPhase>),
    Offcut(Box<OffcutPhase>),
    Done,
    Short(Shortage),
}

/// A case being solved.
#[derive(Clone, Debug)]
pub struct Solver {
    case: Case,
    model: Model,
    stage: Stage,
    cuts: Vec<Cut>,
    best: Option<Found>,
    price_end: PriceEnd,
    owned_proved: bool,
}

impl Solver {
    /// Begins a case.
    #[must_use]
    pub fn new(case: Case) -> Self {
        let model = Model::new(&case);
        Self {
            case,
            model,
            stage: Stage::Begin,
            cuts: Vec::new(),
            best: None,
            price_end: PriceEnd::default(),
            owned_proved: false,
        }
    }

    /// Goes on for about `units` of work (at least one small step); the answer does not depend on how it is sliced.
    pub fn step(&mut self, units: u64) -> Progress {
        let mut work = 0;
        loop {
            let phase = match &self.stage {
                Stage::Done => return self.done(),
                Stage::Short(shortage) => return Progress::Short(shortage.clone()),
                Stage::Begin | Stage::Held(_) => Phase::Held,
                Stage::Price(_) => Phase::Price,
                Stage::Owned(_) => Phase::Owned,
                Stage::Offcut(_) => Phase::Offcut,
            };
            if work >= units {
                return Progress::Running(Standing {
                    phase,
                    best_price: self.best.as_ref().map(|b| b.price),
                    lower_bound: self.lower_bound(),
                });
            }
            work += 1;
            self.stage = self.advance(&mut work);
        }
    }

    /// The best plan so far; its bound is what is known by now.
    #[must_use]
    pub fn best(&self) -> Option<Plan> {
        self.best.as_ref().map(|found| self.plan(found))
    }

    fn done(&self) -> Progress {
        match &self.best {
            Some(found) => Progress::Done(Box::new(self.plan(found))),
            None => Progress::Short(self.shortage(false)),
        }
    }

    fn lower_bound(&self) -> u64 {
        match &self.stage {
            Stage::Price(phase) => phase.floor(),
            Stage::Begin | Stage::Held(_) => 0,
            _ => self.price_end.bound,
        }
    }

    fn advance(&mut self, work: &mut u64) -> Stage {
        match std::mem::replace(&mut self.stage, Stage::Done) {
            Stage::Begin => {
                self.cuts.push(self.model.length_cut(work));
                let longest = self.longest_for_sale();
                let mut counts = self.model.counts.clone();
                for (count, &size) in counts.iter_mut().zip(&self.model.sizes) {
                    if longest.is_some_and(|cap| size <= cap) {
                        *count = 0;
                    }
                }
                if counts.iter().all(|&n| n == 0) {
                    return self.priced(&Vec::new(), work);
                }
                let job = Job {
                    caps: self.model.caps.clone(),
                    supply: self.model.base(),
                    sizes: self.model.sizes.clone(),
                    counts,
                };
                Stage::Held(Box::new(Decider::new(job, Effort::HELD)))
            }
            Stage::Held(mut decider) => match decider.advance(work) {
                None => Stage::Held(decider),
                Some(Verdict::Fits(packing)) => self.priced(&packing, work),
                Some(Verdict::Open) => Stage::Short(self.shortage(false)),
                Some(_) => Stage::Short(self.shortage(true)),
            },
            Stage::Price(mut phase) => {
                if let Some(end) = phase.advance(&self.model, &mut self.cuts, &mut self.best, work) {
                    self.price_end = end;
                    return match &self.best {
                        Some(best) => Stage::Owned(Box::new(OwnedPhase::new(&self.model, &self.cuts, best, work))),
                        None => Stage::Short(self.shortage(false)),
                    };
                }
                Stage::Price(phase)
            }
            Stage::Owned(mut phase) => {
                let Some(best) = &mut self.best else { return Stage::Done };
                let Some(proved) = phase.advance(&self.model, best, work) else { return Stage::Owned(phase) };
                self.owned_proved = proved;
                Stage::Offcut(Box::new(OffcutPhase::new(&self.model, *phase, best, work)))
            }
            Stage::Offcut(mut phase) => {
                let Some(best) = &mut self.best else { return Stage::Done };
                if phase.advance(&self.model, best, work) { Stage::Done } else { Stage::Offcut(phase) }
            }
            over @ (Stage::Done | Stage::Short(_)) => over,
        }
    }

    fn priced(&mut self, held: &super::value::Packing, work: &mut u64) -> Stage {
        match start(&self.model, held, work) {
            Some(found) => {
                self.best = Some(found);
                Stage::Price(Box::new(PricePhase::new(&self.model)))
            }
            None => Stage::Short(self.shortage(false)),
        }
    }

    /// Capacity of the longest class that can be bought, for money or free.
    fn longest_for_sale(&self) -> Option<u32> {
        let sold = self.model.kinds.iter().map(|k| k.class);
        let free = (0..self.model.caps.len()).filter(|&c| self.model.free[c] > 0);
        sold.chain(free).min().map(|class| self.model.caps[class])
    }

    fn shortage(&self, proved: bool) -> Shortage {
        let longest = self.longest_for_sale();
        let held = self.model.sizes.iter().zip(&self.model.counts).filter(|(s, _)| longest.is_none_or(|cap| **s > cap));
        Shortage {
            piece_mm: self.model.sizes.first().map_or(0, |s| s - self.model.loss),
            pieces: held.map(|(_, &n)| n).sum(),
            longest_for_sale_mm: longest.map(|cap| cap - self.model.loss),
            proved,
        }
    }

    fn plan(&self, found: &Found) -> Plan {
        let (bars, bought, owned_used) = found.share_out(&self.case, &self.model);
        let bound = self.lower_bound().min(found.price);
        let proved = bound == found.price;
        let used = self.cuts.len().min(self.price_end.cuts.max(1));
        let spread = |mix: &Vec<u32>| {
            let mut packs = vec![0; self.case.packs().len()];
            for (&n, kind) in mix.iter().zip(&self.model.kinds) {
                packs[kind.pack] = n;
            }
            packs
        };
        let class_of = &self.model.class_of;
        let inequalities = each(used, &|at| {
            let cut = &self.cuts[at];
            let maxima = each(class_of.len(), &|pack| cut.maxima[class_of[pack]]);
            Inequality { weights: cut.weights.clone(), maxima }
        });
        let searched = &self.price_end.searched;
        Plan {
            total_price: found.price,
            lower_bound: bound,
            proved,
            closed: match proved {
                false => Closed::Open,
                true if found.price == 0 => Closed::NothingToPay,
                true if self.price_end.searched.is_empty() => Closed::Inequalities,
                true => Closed::Searched,
            },
            bought,
            owned_used,
            owned_proved: self.owned_proved,
            bars,
            certificate: Certificate {
                lengths_mm: each(self.model.sizes.len(), &|at| self.model.sizes[at] - self.model.loss),
                counts: self.model.counts.clone(),
                inequalities,
                searched: each(searched.len(), &|at| spread(&searched[at])),
            },
        }
    }
}
