//! The linear relaxation, solved by column generation, for its prices on pieces.
//!
//! What it is: a small revised simplex method in floats. What it is not: a proof. Its prices become whole-number weights,
//! and the exact maxima of [`knapsack::heaviest`] make an inequality of them that holds whatever the float error.
//!
//! Rows: one for each size (placed + unmet - surplus = wanted) and one for each class (loads - brought + spare = supply).

use measure::order;

use super::each::each;
use super::knapsack;
use super::model::Kind;
use super::value::{Cut, Job, Load};

/// Whether linear relaxations are made at all: wigs never needed one (see the benchmark), and the page does without their bytes.
pub const RELAX: bool = cfg!(feature = "relaxation");

const EPS: f64 = 1e-9;
/// Weights are scaled so that the largest is this (2^30).
const SCALE: f64 = 1_073_741_824.0;
/// More rows than this are not attempted (the inverse is a dense square).
pub const ROWS: usize = 450;

/// A way to fill one length of a class: sizes with how many of each.
#[derive(Clone, Debug, PartialEq)]
pub struct Pattern {
    pub class: usize,
    pub take: Vec<(usize, u32)>,
}

/// Patterns made so far, for the next linear programme to begin with.
pub type Pool = Vec<Pattern>;

/// A pool larger than this is not kept.
const POOL: usize = 3_000;
/// How far the prices used for making patterns are drawn to the best ones so far.
const DRAWN: f64 = 0.7;

#[derive(Clone, Debug)]
enum Column {
    Unmet(usize),
    Surplus(usize),
    Spare(usize),
    Kind(usize),
    Pattern(Pattern),
}

/// Adds loads of a heuristic to a pool: good patterns to begin with.
pub fn keep(pool: &mut Pool, loads: &[Load]) {
    for load in loads {
        let mut take: Vec<(usize, u32)> = Vec::new();
        let mut items = load.items.clone();
        order::sort(&mut items);
        for item in items {
            match take.last_mut() {
                Some((last, n)) if *last == item => *n += 1,
                _ => take.push((item, 1)),
            }
        }
        pool.push(Pattern { class: load.class, take });
    }
}

/// A linear programme on its way to the optimum.
#[derive(Clone, Debug)]
pub struct Lp {
    job: Job,
    kinds: Vec<Kind>,
    unmet_cost: Vec<f64>,
    basis: Vec<Column>,
    inverse: Vec<f64>,
    level: Vec<f64>,
    dual: Vec<f64>,
    rows: usize,
    pivots: usize,
    pool: Pool,
    /// Whether the supply is given (then nothing unmet, or a broken inequality, ends it early).
    given: bool,
    refuted: Option<Cut>,
    /// The prices of pieces with the best bound so far, and that bound (over all of a given supply, or of the price).
    steady: Vec<f64>,
    bound: f64,
}

impl Lp {
    /// Least unmet length in a given supply.
    pub fn fit(job: Job, pool: &Pool) -> Self {
        let cost = each(job.sizes.len(), &|i| f64::from(job.sizes[i]));
        let mut lp = Self::new(job, Vec::new(), cost);
        lp.given = true;
        for pattern in pool {
            if let Some(clamped) = lp.clamped(pattern) {
                lp.pool.push(clamped);
            }
        }
        lp
    }

    /// Least price, with kinds to buy on top of the job's supply. A piece left unmet costs the cheapest pack that holds it
    /// (and more than everything where none does), but little more than twice its share of a length: prices that begin in
    /// proportion to the sizes settle much sooner.
    pub fn price(job: Job, kinds: Vec<Kind>, pool: &Pool) -> Self {
        let all: u64 = kinds.iter().map(|k| k.price).sum();
        let rate = |k: &Kind| k.price as f64 / (f64::from(k.bars) * f64::from(job.caps[k.class]));
        let rate = kinds.iter().map(rate).fold(f64::INFINITY, f64::min);
        let cost = each(job.sizes.len(), &|i| {
            let size = job.sizes[i];
            let mut least: Option<u64> = None;
            for kind in kinds.iter().filter(|k| job.caps[k.class] >= size) {
                least = Some(least.map_or(kind.price, |price| price.min(kind.price)));
            }
            match least {
                Some(price) => (price as f64).min(2.2 * rate * f64::from(size)),
                None => all as f64 * 10.0,
            }
        });
        let mut lp = Self::new(job, kinds, cost);
        lp.pool.clone_from(pool);
        lp
    }

    /// The pattern without what is not wanted in this job.
    fn clamped(&self, pattern: &Pattern) -> Option<Pattern> {
        let counts = &self.job.counts;
        let mut take = Vec::new();
        for &(i, n) in &pattern.take {
            if n.min(counts[i]) > 0 {
                take.push((i, n.min(counts[i])));
            }
        }
        (!take.is_empty()).then_some(Pattern { class: pattern.class, take })
    }

    /// The patterns made so far.
    pub fn into_pool(mut self) -> Pool {
        if self.pool.len() > POOL {
            self.pool.drain(..self.pool.len() - POOL);
        }
        self.pool
    }

    fn new(job: Job, kinds: Vec<Kind>, unmet_cost: Vec<f64>) -> Self {
        let (sizes, classes) = (job.sizes.len(), job.caps.len());
        let rows = sizes + classes;
        let mut inverse = vec![0.0; rows * rows];
        for at in 0..rows {
            inverse[at * rows + at] = 1.0;
        }
        // A trifle less is wanted of each size, of each another: equal steps in many rows at once would make it stall.
        let trifle = |i: usize| 1e-5 * (0.5 + (i * 619 % 1000) as f64 / 1000.0);
        let level = each(rows, &|row| match row.checked_sub(sizes) {
            None => (f64::from(job.counts[row]) - trifle(row)).max(0.0),
            Some(class) => f64::from(job.supply[class]),
        });
        let basis = each(rows, &|row| match row.checked_sub(sizes) {
            None => Column::Unmet(row),
            Some(class) => Column::Spare(class),
        });
        let mut lp = Self {
            job,
            kinds,
            unmet_cost,
            basis,
            inverse,
            level,
            dual: vec![0.0; rows],
            rows,
            pivots: 0,
            pool: Vec::new(),
            given: false,
            refuted: None,
            steady: Vec::new(),
            bound: f64::NEG_INFINITY,
        };
        // The inequality of length itself is a good first guess.
        let rate = (0..sizes).map(|i| lp.unmet_cost[i] / f64::from(lp.job.sizes[i])).fold(f64::INFINITY, f64::min);
        lp.steady = each(sizes, &|i| rate * f64::from(lp.job.sizes[i]));
        lp.price_rows();
        lp
    }

    /// One pivot; `true` when there is none left to make (or no more are wanted).
    pub fn pivot(&mut self, work: &mut u64) -> bool {
        *work += 3 * (self.rows * self.rows) as u64;
        self.pivots += 1;
        if self.pivots > 40 * self.rows + 200 {
            return true;
        }
        if self.given {
            if self.unmet() < 1e-7 {
                return true;
            }
            if self.bound > 1e-6 && self.refuted.is_none() {
                self.refuted = self.cut(work).filter(|cut| cut.broken_by(&self.job.supply));
                self.bound = self.bound.max(1e-6);
                if self.refuted.is_some() {
                    return true;
                }
            }
        }
        let Some(column) = self.entering(work) else { return true };
        let entering = self.transformed(&column);
        let mut leave: Option<usize> = None;
        for row in 0..self.rows {
            if entering[row] > EPS {
                let ratio = self.level[row] / entering[row];
                let better = leave.is_none_or(|best: usize| {
                    let least = self.level[best] / entering[best];
                    ratio < least - EPS || (ratio < least + EPS && entering[row] > entering[best])
                });
                if better {
                    leave = Some(row);
                }
            }
        }
        let Some(leave) = leave else { return true };
        self.exchange(leave, column, &entering);
        false
    }

    fn exchange(&mut self, leave: usize, column: Column, entering: &[f64]) {
        let rows = self.rows;
        let by = 1.0 / entering[leave];
        self.level[leave] *= by;
        for at in 0..rows {
            self.inverse[leave * rows + at] *= by;
        }
        let pivot: Vec<f64> = self.inverse[leave * rows..(leave + 1) * rows].to_vec();
        for row in (0..rows).filter(|&row| row != leave && entering[row] != 0.0) {
            let times = entering[row];
            self.level[row] = (self.level[row] - times * self.level[leave]).max(0.0);
            for (cell, p) in self.inverse[row * rows..(row + 1) * rows].iter_mut().zip(&pivot) {
                *cell -= times * p;
            }
        }
        self.basis[leave] = column;
        self.price_rows();
    }

    fn cost(&self, column: &Column) -> f64 {
        match column {
            Column::Unmet(i) => self.unmet_cost[*i],
            Column::Kind(k) => self.kinds[*k].price as f64,
            _ => 0.0,
        }
    }

    fn price_rows(&mut self) {
        self.dual.fill(0.0);
        for row in 0..self.rows {
            let cost = self.cost(&self.basis[row]);
            if cost != 0.0 {
                let inverse = &self.inverse[row * self.rows..(row + 1) * self.rows];
                for (dual, cell) in self.dual.iter_mut().zip(inverse) {
                    *dual += cost * cell;
                }
            }
        }
    }

    fn class_worth(&self, class: usize) -> f64 {
        -self.dual[self.job.sizes.len() + class]
    }

    fn entering(&mut self, work: &mut u64) -> Option<Column> {
        let sizes = self.job.sizes.len();
        let scale = self.dual.iter().fold(1.0, |a: f64, d| a.max(d.abs()));
        let eps = EPS * scale * 10.0;
        // The column that gains most; patterns already made count among them.
        let mut best: Option<(f64, Column)> = None;
        let mut offer = |gain: f64, column: Column| {
            if gain > eps && best.as_ref().is_none_or(|(most, _)| gain > *most) {
                best = Some((gain, column));
            }
        };
        for i in 0..sizes {
            offer(-self.dual[i], Column::Surplus(i));
            offer(self.dual[i] - self.unmet_cost[i], Column::Unmet(i));
        }
        for class in 0..self.job.caps.len() {
            offer(-self.class_worth(class), Column::Spare(class));
        }
        for (k, kind) in self.kinds.iter().enumerate() {
            offer(f64::from(kind.bars) * self.class_worth(kind.class) - kind.price as f64, Column::Kind(k));
        }
        let most = self.pool.iter().map(|p| self.gain(p)).enumerate().max_by(|a, b| a.1.total_cmp(&b.1));
        *work += 4 * self.pool.len() as u64;
        if let Some((at, gain)) = most {
            offer(gain, Column::Pattern(self.pool[at].clone()));
        }
        if best.is_some() {
            return best.map(|(_, column)| column);
        }
        let exact = each(sizes, &|i| self.dual[i].max(0.0));
        let drawn = each(sizes, &|i| DRAWN * self.steady[i] + (1.0 - DRAWN) * exact[i]);
        let entering = self.made(drawn, eps, work)?;
        if entering.is_some() {
            return entering.map(Column::Pattern);
        }
        self.made(exact, eps, work)?.map(Column::Pattern)
    }

    /// The heaviest load of each class by these prices; those that help go to the pool, and the best of them enters.
    /// `None` when a knapsack gave up.
    fn made(&mut self, prices: Vec<f64>, eps: f64, work: &mut u64) -> Option<Option<Pattern>> {
        let Some((weights, unit)) = weights(&prices) else { return Some(None) };
        let mut best: Option<(f64, Pattern)> = None;
        let mut most = Vec::new();
        for class in 0..self.job.caps.len() {
            let job = &self.job;
            let (value, take) = knapsack::heaviest(&weights, &job.sizes, &job.counts, job.caps[class], work)?;
            most.push(value as f64 * unit);
            let mut pattern = Pattern { class, take: Vec::new() };
            for (i, n) in take.into_iter().enumerate() {
                if n > 0 {
                    pattern.take.push((i, n));
                }
            }
            let gain = self.gain(&pattern);
            if gain > eps {
                self.pool.push(pattern.clone());
                if best.as_ref().is_none_or(|(least, _)| gain > *least) {
                    best = Some((gain, pattern));
                }
            }
        }
        let bound = self.bound_of(&prices, &most);
        if bound > self.bound {
            self.bound = bound;
            self.steady = prices;
        }
        Some(best.map(|(_, pattern)| pattern))
    }

    /// What these prices prove: length that must stay unmet, or price that must be paid.
    fn bound_of(&self, prices: &[f64], most: &[f64]) -> f64 {
        let need: f64 = prices.iter().zip(&self.job.counts).map(|(p, &n)| p * f64::from(n)).sum();
        let had: f64 = most.iter().zip(&self.job.supply).map(|(w, &n)| w * f64::from(n)).sum();
        let fair = |k: &Kind| k.price as f64 / (f64::from(k.bars) * most[k.class].max(EPS));
        let scale = self.kinds.iter().map(fair).fold(f64::INFINITY, f64::min);
        (need - had) * if self.given { 1.0 } else { scale.min(1e9) }
    }

    fn gain(&self, pattern: &Pattern) -> f64 {
        if self.given && self.job.supply[pattern.class] == 0 {
            return 0.0;
        }
        let worth: f64 = pattern.take.iter().map(|&(i, n)| f64::from(n) * self.dual[i]).sum();
        worth - self.class_worth(pattern.class)
    }

    /// The column in terms of the basis.
    fn transformed(&self, column: &Column) -> Vec<f64> {
        let sizes = self.job.sizes.len();
        let mut entries: Vec<(usize, f64)> = Vec::new();
        match column {
            Column::Unmet(i) => entries.push((*i, 1.0)),
            Column::Surplus(i) => entries.push((*i, -1.0)),
            Column::Spare(c) => entries.push((sizes + c, 1.0)),
            Column::Kind(k) => entries.push((sizes + self.kinds[*k].class, -f64::from(self.kinds[*k].bars))),
            Column::Pattern(p) => {
                for &(i, n) in &p.take {
                    entries.push((i, f64::from(n)));
                }
                entries.push((sizes + p.class, 1.0));
            }
        }
        each(self.rows, &|row| {
            let mut sum = 0.0;
            for &(at, v) in &entries {
                sum += self.inverse[row * self.rows + at] * v;
            }
            sum
        })
    }

    /// The inequality of the best prices; `None` when there is none or its maxima would take too long.
    pub fn cut(&self, work: &mut u64) -> Option<Cut> {
        if self.refuted.is_some() {
            return self.refuted.clone();
        }
        let (weights, _) = weights(&self.steady)?;
        let job = &self.job;
        let mut maxima = Vec::with_capacity(job.caps.len());
        for &cap in &job.caps {
            maxima.push(knapsack::heaviest(&weights, &job.sizes, &job.counts, cap, work)?.0);
        }
        Some(Cut::new(weights, maxima, &job.counts))
    }

    /// Length (or price) of what is unmet at the moment.
    pub fn unmet(&self) -> f64 {
        let cost = |(column, level): (&Column, &f64)| match column {
            Column::Unmet(i) => self.unmet_cost[*i] * level,
            _ => 0.0,
        };
        self.basis.iter().zip(&self.level).map(cost).sum()
    }

    /// The loads of the present solution and how often each is used.
    pub fn patterns(&self) -> Vec<(Pattern, f64)> {
        let mut patterns = Vec::new();
        for (column, &level) in self.basis.iter().zip(&self.level) {
            if let Column::Pattern(pattern) = column
                && level > 1e-6
            {
                patterns.push((pattern.clone(), level));
            }
        }
        patterns
    }
}

/// Prices as whole numbers, and what one unit of them is worth; `None` when all are nothing.
fn weights(prices: &[f64]) -> Option<(Vec<u64>, f64)> {
    let top = prices.iter().fold(0.0, |a: f64, &d| a.max(d));
    if top <= EPS {
        return None;
    }
    Some((each(prices.len(), &|i| (prices[i].max(0.0) / top * SCALE) as u64), top / SCALE))
}
