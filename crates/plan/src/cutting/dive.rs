//! Diving: take whole loads from the linear relaxation, solve what is left again, and now and then take the second best.
//!
//! What it is: a heuristic for jobs that the relaxation allows and the quick ways do not fill. What it is not: a proof.

use measure::order;

use super::exhaust::{Outcome, exhaust};
use super::fit;
use super::lp::{Lp, Pattern, Pool};
use super::value::{Job, Load, Packing};

/// Dives made before giving up.
const DIVES: u32 = 24;
/// A rest of no more pieces than this is tried in every way, within so many branches.
const SMALL: u32 = 40;
const BRANCHES: u64 = 8_000;

/// A series of dives, advanced pivot by pivot.
#[derive(Clone, Debug)]
pub struct Dive {
    whole: Job,
    rest: Job,
    fixed: Packing,
    /// The relaxation being solved; none while the choices of the first one are taken again.
    lp: Option<Lp>,
    pool: Pool,
    /// What the relaxation of the whole job said.
    root: Vec<(Pattern, f64)>,
    dive: u32,
    seed: u64,
}

/// What a step of diving says.
pub enum Step {
    Going,
    Fits(Packing),
    GaveUp,
}

impl Dive {
    pub fn new(job: &Job, pool: Pool) -> Self {
        let lp = Some(Lp::fit(job.clone(), &pool));
        Self {
            whole: job.clone(),
            rest: job.clone(),
            fixed: Vec::new(),
            lp,
            pool,
            root: Vec::new(),
            dive: 0,
            seed: 0x9e37_79b9_7f4a_7c15,
        }
    }

    fn draw(&mut self) -> u64 {
        // A fixed-seed xorshift: the same on every machine and in every run.
        self.seed ^= self.seed << 13;
        self.seed ^= self.seed >> 7;
        self.seed ^= self.seed << 17;
        self.seed >> 20
    }

    pub fn advance(&mut self, work: &mut u64) -> Step {
        let patterns = match self.lp.take() {
            None => self.root.clone(),
            Some(mut lp) => {
                if !lp.pivot(work) {
                    self.lp = Some(lp);
                    return Step::Going;
                }
                let (unmet, patterns) = (lp.unmet(), lp.patterns());
                self.pool = lp.into_pool();
                if unmet > 1e-6 {
                    return self.again();
                }
                if self.root.is_empty() {
                    self.root.clone_from(&patterns);
                }
                patterns
            }
        };
        if !self.choose(patterns) {
            return self.again();
        }
        if self.rest.pieces() == 0 {
            return Step::Fits(std::mem::take(&mut self.fixed));
        }
        let rest = fit::best_fit(&self.rest, false, work).or_else(|| self.fill_rest(work));
        match rest {
            Some(rest) => Step::Fits(self.fixed.iter().cloned().chain(rest).collect()),
            None => {
                self.lp = Some(Lp::fit(self.rest.clone(), &self.pool));
                Step::Going
            }
        }
    }

    /// Takes the whole loads of a solution, or else its largest part of one. The first dive takes the best; later ones leave
    /// some out by chance.
    fn choose(&mut self, mut patterns: Vec<(Pattern, f64)>) -> bool {
        order::sort_by(&mut patterns, &|a, b| b.1.total_cmp(&a.1));
        let mut fixed = false;
        for (pattern, level) in &patterns {
            for _ in 0..(level + 1e-6) as u32 {
                if self.dive == 0 || !self.draw().is_multiple_of(4) {
                    fixed |= self.fix(pattern);
                }
            }
        }
        if !fixed {
            let spread = if self.dive == 0 { 1 } else { patterns.len().min(4) as u64 };
            let at = (self.draw() % spread.max(1)) as usize;
            fixed = patterns.get(at).is_some_and(|(pattern, _)| self.fix(pattern));
            // Nearly whole ones go along, so that a large job takes few relaxations.
            for (pattern, _) in patterns.iter().skip(1).filter(|(_, level)| *level > 0.7).take(4) {
                fixed |= self.fix(pattern);
            }
        }
        fixed
    }

    /// One filling of the rest, as far as it gets without a pause; a small rest is tried in every way.
    fn fill_rest(&self, work: &mut u64) -> Option<Packing> {
        let manner = fit::Manner { short_first: true, anchored: true };
        let filled = fit::Filling::full(&self.rest, manner).go(&self.rest, manner, work);
        if let Some(fit::Ended::Fits(packing)) = filled {
            return Some(packing);
        }
        if self.rest.pieces() <= SMALL
            && let Outcome::Fits(packing) = exhaust(&self.rest, BRANCHES, work)
        {
            return Some(packing);
        }
        None
    }

    /// Takes one load, without what is no longer wanted of it; `false` when nothing of it is left or no length is.
    fn fix(&mut self, pattern: &Pattern) -> bool {
        let counts = &self.rest.counts;
        let take: Vec<_> = pattern.take.iter().map(|&(i, n)| (i, n.min(counts[i]))).filter(|(_, n)| *n > 0).collect();
        if self.rest.supply[pattern.class] == 0 || take.is_empty() {
            return false;
        }
        self.rest.supply[pattern.class] -= 1;
        let mut items = Vec::new();
        for (i, n) in take {
            self.rest.counts[i] -= n;
            items.extend(std::iter::repeat_n(i, n as usize));
        }
        self.fixed.push(Load { class: pattern.class, items });
        true
    }

    fn again(&mut self) -> Step {
        self.dive += 1;
        if self.dive >= DIVES || self.root.is_empty() {
            return Step::GaveUp;
        }
        self.rest = self.whole.clone();
        self.fixed.clear();
        self.lp = None;
        Step::Going
    }
}
