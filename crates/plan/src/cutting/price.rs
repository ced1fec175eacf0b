//! The first aim: the least price, and the proof of it.
//!
//! What it is: the walk through complete price windows, cheapest mix first. What it is not: allowed to forget a mix; what it
//! can neither fill nor refute stays on the list and holds the bound down.

use super::decide::{Decider, Effort, Verdict};
use super::found::Found;
use super::lp::{Lp, Pool, RELAX, ROWS};
use super::mixes::{Choice, Enumerator, Mix};
use super::model::Model;
use super::value::{Cut, Job};

/// Undecided mixes after which the walk stops.
const OPEN_LIMIT: usize = 12;
/// Mixes put through all ways after which the walk stops.
const FULL_LIMIT: u32 = 1_500;

/// How the price ended.
#[derive(Clone, Debug, Default)]
pub struct PriceEnd {
    /// No plan is cheaper.
    pub bound: u64,
    /// Mixes (by kind) searched to the end without an answer.
    pub searched: Vec<Vec<u32>>,
    /// How many inequalities were known by then.
    pub cuts: usize,
}

#[derive(Clone, Debug)]
enum At {
    Window,
    /// The next mix of the list.
    Next,
    Quick(Box<Decider>),
    /// The linear relaxation of the price, once, when the quick ways fail for the first time.
    Relax(Box<Lp>),
    Full(Box<Decider>),
}

/// The walk.
#[derive(Clone, Debug)]
pub struct PricePhase {
    choices: Vec<Choice>,
    base: Vec<u32>,
    at: At,
    /// Every mix cheaper than this was decided, or is among `open`.
    floor: u64,
    width: u64,
    window_end: u64,
    mixes: std::vec::IntoIter<Mix>,
    mix: Option<Mix>,
    open: Vec<(u64, Vec<u32>)>,
    searched: Vec<Vec<u32>>,
    relaxed: bool,
    /// Patterns of the relaxations so far.
    pool: Pool,
    full: u32,
}

impl PricePhase {
    pub fn new(model: &Model) -> Self {
        Self {
            choices: model.choices(),
            base: model.base(),
            at: At::Window,
            floor: 0,
            width: 0,
            window_end: 0,
            mixes: Vec::new().into_iter(),
            mix: None,
            open: Vec::new(),
            searched: Vec::new(),
            relaxed: false,
            pool: Pool::new(),
            full: 0,
        }
    }

    /// No plan is cheaper than this, as far as is known.
    pub fn floor(&self) -> u64 {
        self.open.iter().map(|(price, _)| *price).min().map_or(self.floor, |open| open.min(self.floor))
    }

    /// One small step; an end when the price is settled, or cannot be.
    pub fn advance(
        &mut self,
        model: &Model,
        cuts: &mut Vec<Cut>,
        best: &mut Option<Found>,
        work: &mut u64,
    ) -> Option<PriceEnd> {
        let ceiling = best.as_ref().map_or(u64::MAX, |b| b.price);
        match std::mem::replace(&mut self.at, At::Next) {
            At::Window => return self.window(cuts, ceiling, work),
            At::Next => {
                let Some(mix) = self.mixes.next() else {
                    self.floor = self.floor.max(self.window_end);
                    self.width = self.width.saturating_mul(2);
                    self.at = At::Window;
                    return None;
                };
                *work += 10;
                if mix.price >= ceiling || self.open.len() >= OPEN_LIMIT || self.full >= FULL_LIMIT {
                    self.floor = self.floor.max(mix.price);
                    return Some(self.end(cuts, ceiling));
                }
                self.floor = self.floor.max(mix.price);
                let supply = model.supply(&self.base, &mix.counts);
                if !cuts.iter().any(|cut| cut.broken_by(&supply)) {
                    self.at = At::Quick(Box::new(Decider::new(job(model, supply), Effort::LIGHT)));
                    self.mix = Some(mix);
                }
            }
            At::Quick(mut decider) => match decider.advance(work) {
                None => self.at = At::Quick(decider),
                Some(Verdict::Fits(packing)) => return self.fits(model, packing, cuts, best),
                Some(_) if !self.relaxed => {
                    self.relaxed = true;
                    self.pool = decider.pool;
                    self.at = if RELAX && model.sizes.len() + model.caps.len() <= ROWS {
                        At::Relax(Box::new(Lp::price(job(model, self.base.clone()), model.kinds.clone(), &self.pool)))
                    } else {
                        self.try_fully(decider.job)
                    };
                }
                Some(_) => self.at = self.try_fully(decider.job),
            },
            At::Relax(mut lp) if RELAX => {
                if !lp.pivot(work) {
                    self.at = At::Relax(lp);
                    return None;
                }
                if let Some(cut) = lp.cut(work) {
                    cuts.push(cut);
                }
                self.pool = lp.into_pool();
                if let Some(mix) = &self.mix {
                    let supply = model.supply(&self.base, &mix.counts);
                    if !cuts.iter().any(|cut| cut.broken_by(&supply)) {
                        self.at = self.try_fully(job(model, supply));
                        return None;
                    }
                }
                // The list is stale: most of it breaks the new inequality, and the window may now be wider.
                self.at = At::Window;
            }
            At::Relax(_) => self.at = At::Window,
            At::Full(mut decider) => {
                let Some(verdict) = decider.advance(work) else {
                    self.at = At::Full(decider);
                    return None;
                };
                self.pool = decider.pool;
                match verdict {
                    Verdict::Fits(packing) => return self.fits(model, packing, cuts, best),
                    Verdict::Cut(cut) => cuts.push(cut),
                    Verdict::Exhausted => self.searched.extend(self.mix.take().map(|mix| mix.counts)),
                    Verdict::Open => {
                        let supply = decider.job.supply;
                        self.open.extend(self.mix.take().map(|mix| (mix.price, supply)));
                    }
                }
            }
        }
        None
    }

    fn try_fully(&mut self, job: Job) -> At {
        self.full += 1;
        At::Full(Box::new(Decider::with_pool(job, Effort::FULL, self.pool.clone())))
    }

    /// Lists the next window, complete or not at all.
    fn window(&mut self, cuts: &[Cut], ceiling: u64, work: &mut u64) -> Option<PriceEnd> {
        *work += 50;
        let list = Enumerator::new(&self.choices, &self.base, cuts);
        let lo = match list.floor() {
            Some(floor) => self.floor.max(floor),
            None => ceiling,
        };
        if lo >= ceiling {
            self.floor = self.floor.max(ceiling);
            return Some(self.end(cuts, ceiling));
        }
        self.floor = lo;
        if self.width == 0 {
            self.width = (ceiling - lo) / 8 + 1;
        }
        let hi = lo.saturating_add(self.width).min(ceiling);
        match list.list(lo, hi, work) {
            Some(mixes) => {
                // A restart after a new inequality meets mixes of the same price that were decided before.
                let known = |mix: &Mix| self.searched.contains(&mix.counts);
                let mixes: Vec<Mix> = mixes.into_iter().filter(|mix| !known(mix)).collect();
                self.mixes = mixes.into_iter();
                self.window_end = hi;
            }
            None if self.width > 1 => {
                self.width /= 2;
                self.at = At::Window;
            }
            None => return Some(self.end(cuts, ceiling)),
        }
        None
    }

    fn fits(
        &mut self,
        model: &Model,
        packing: super::value::Packing,
        cuts: &[Cut],
        best: &mut Option<Found>,
    ) -> Option<PriceEnd> {
        let mix = self.mix.take()?;
        let found = Found::new(model, packing, &mix.counts);
        if best.as_ref().is_none_or(|best| found.better_than(best)) {
            *best = Some(found);
        }
        // Every cheaper mix was decided before this one was looked at.
        let ceiling = best.as_ref().map_or(mix.price, |b| b.price);
        Some(self.end(cuts, ceiling))
    }

    fn end(&mut self, cuts: &[Cut], ceiling: u64) -> PriceEnd {
        self.open.retain(|(price, supply)| *price < ceiling && !cuts.iter().any(|cut| cut.broken_by(supply)));
        PriceEnd { bound: self.floor().min(ceiling), searched: std::mem::take(&mut self.searched), cuts: cuts.len() }
    }
}

/// The whole job in a given supply.
pub fn job(model: &Model, supply: Vec<u32>) -> Job {
    Job { caps: model.caps.clone(), supply, sizes: model.sizes.clone(), counts: model.counts.clone() }
}
