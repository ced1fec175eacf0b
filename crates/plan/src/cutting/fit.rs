//! Ways to fit pieces into a given supply of lengths: best fit, fill one by one, and fill by learned values.
//!
//! What it is: heuristics that either place everything or say nothing. What it is not: a proof.

use measure::order;

use super::each::{each, repeated};
use super::knapsack;
use super::value::{Job, Load, Packing};

/// Branches spent on filling one length.
const FILL_LIMIT: u64 = 1_500;
/// Work after which a filling pauses, so that one step of the solver stays small.
const PAUSE: u64 = 200_000;

/// Best fit, longest piece first; where no open length has room, the shortest (or the longest) unopened one that has is opened.
pub fn best_fit(job: &Job, shortest: bool, work: &mut u64) -> Option<Packing> {
    let mut left = job.supply.clone();
    let mut open = |size: u32| {
        let fits = |&c: &usize| left[c] > 0 && job.caps[c] >= size;
        let mut classes = 0..job.caps.len();
        let class = if shortest { classes.rfind(fits)? } else { classes.find(fits)? };
        left[class] -= 1;
        Some(class)
    };
    place(job, &job.counts, Vec::new(), &mut open, work)
}

/// Best fit on top of loads already there; `open` names the class of the next length for a piece, if there is one.
pub fn place(
    job: &Job,
    counts: &[u32],
    mut loads: Packing,
    open: &mut dyn FnMut(u32) -> Option<usize>,
    work: &mut u64,
) -> Option<Packing> {
    let room = |load: &Load| job.caps[load.class] - load.items.iter().map(|&i| job.sizes[i]).sum::<u32>();
    // Lengths that may still take a piece, by their room: those too short for every piece never come up again.
    let least = job.sizes.iter().copied().min().unwrap_or(0);
    let mut rooms: Vec<(u32, usize)> = loads.iter().enumerate().map(|(at, load)| (room(load), at)).collect();
    order::sort(&mut rooms);
    for (item, (&size, &count)) in job.sizes.iter().zip(counts).enumerate() {
        for _ in 0..count {
            *work += 60;
            let first = rooms.partition_point(|(room, _)| *room < size);
            let (room, bar) = match rooms.get(first) {
                Some(_) => rooms.remove(first),
                None => {
                    let class = open(size)?;
                    loads.push(Load { class, items: Vec::new() });
                    (job.caps[class], loads.len() - 1)
                }
            };
            loads[bar].items.push(item);
            if room - size >= least {
                order::add_new(&mut rooms, (room - size, bar));
            }
        }
    }
    Some(loads)
}

/// In which order lengths are filled, and how.
#[derive(Clone, Copy, Debug)]
pub struct Manner {
    /// Short lengths first.
    pub short_first: bool,
    /// Each length begins with the longest piece that fits.
    pub anchored: bool,
}

fn classes(job: &Job, short_first: bool) -> Vec<usize> {
    let mut classes = repeated(&job.supply);
    if short_first {
        classes.reverse();
    }
    classes
}

/// Lengths being filled one after the other, in pauses.
#[derive(Clone, Debug)]
pub struct Filling {
    order: Vec<usize>,
    at: usize,
    left: Vec<u32>,
    pieces: u32,
    /// What may still be wasted; `None` once it is overdrawn.
    slack: Option<u64>,
    loads: Packing,
}

/// Chooses the load of one length from what is left, for its room.
type Pick<'a> = &'a mut dyn FnMut(&[u32], u32, &mut u64) -> Vec<u32>;

/// How a filling ended.
pub enum Ended {
    Fits(Packing),
    Failed,
}

impl Filling {
    fn new(job: &Job, order: Vec<usize>) -> Self {
        let slack = job.room().checked_sub(job.need());
        Self { order, at: 0, left: job.counts.clone(), pieces: job.pieces(), slack, loads: Vec::new() }
    }

    /// Lengths filled as full as can be, one after the other.
    pub fn full(job: &Job, manner: Manner) -> Self {
        Self::new(job, classes(job, manner.short_first))
    }

    /// The loads so far.
    pub fn loads(&self) -> &[Load] {
        &self.loads
    }

    /// Goes on until a pause (`None`) or the end.
    pub fn go(&mut self, job: &Job, manner: Manner, work: &mut u64) -> Option<Ended> {
        let values = each(job.sizes.len(), &|i| u64::from(job.sizes[i]));
        let mut pick = |left: &[u32], cap: u32, work: &mut u64| {
            let mut room = cap;
            let mut bounds = left.to_vec();
            let first = (0..left.len()).find(|&i| manner.anchored && left[i] > 0 && job.sizes[i] <= cap);
            if let Some(first) = first {
                bounds[first] -= 1;
                room -= job.sizes[first];
            }
            let mut take = knapsack::search(&values, &job.sizes, &bounds, room, FILL_LIMIT, work).take;
            if let Some(first) = first {
                take[first] += 1;
            }
            take
        };
        self.run(job, &mut pick, work)
    }

    fn run(&mut self, job: &Job, pick: Pick<'_>, work: &mut u64) -> Option<Ended> {
        let until = *work + PAUSE;
        while *work < until {
            if self.pieces == 0 {
                return Some(Ended::Fits(std::mem::take(&mut self.loads)));
            }
            let (Some(slack), Some(&class)) = (self.slack, self.order.get(self.at)) else {
                return Some(Ended::Failed);
            };
            self.at += 1;
            *work += 10 + job.sizes.len() as u64;
            let take = pick(&self.left, job.caps[class], work);
            let mut load = Load { class, items: Vec::new() };
            let mut room = job.caps[class];
            for (item, &n) in take.iter().enumerate() {
                self.left[item] -= n;
                self.pieces -= n;
                room -= n * job.sizes[item];
            }
            load.items = repeated(&take);
            if !load.items.is_empty() {
                self.loads.push(load);
            }
            if self.pieces > 0 {
                self.slack = slack.checked_sub(u64::from(room));
            }
        }
        None
    }
}

/// Sequential value correction: pieces that end up in badly filled lengths, or nowhere, are worth more in the next round.
#[derive(Clone, Debug)]
pub struct Learner {
    worth: Vec<f64>,
    seed: u64,
    filling: Option<Filling>,
    /// Loads of the last round that failed.
    pub loads: Packing,
}

/// What a piece is worth before anything is learnt: a little more than its length, so that long ones go first.
fn plain(size: u32) -> f64 {
    libm::pow(f64::from(size), 1.02)
}

impl Learner {
    pub fn new(job: &Job, salt: u32) -> Self {
        let worth = each(job.sizes.len(), &|i| plain(job.sizes[i]));
        Self { worth, seed: 0x9e37_79b9_7f4a_7c15 ^ (u64::from(salt) << 20), filling: None, loads: Vec::new() }
    }

    fn draw(&mut self) -> u64 {
        // A fixed-seed xorshift: the same on every machine and in every run.
        self.seed ^= self.seed << 13;
        self.seed ^= self.seed >> 7;
        self.seed ^= self.seed << 17;
        self.seed
    }

    fn order(&mut self, job: &Job) -> Vec<usize> {
        let draw = self.draw();
        let mut order = classes(job, draw & 1 == 1);
        if draw & 6 == 6 {
            for at in (1..order.len()).rev() {
                let other = (self.draw() % (at as u64 + 1)) as usize;
                order.swap(at, other);
            }
        }
        order
    }

    /// Goes on with the present round, or begins one; `None` is a pause.
    pub fn round(&mut self, job: &Job, work: &mut u64) -> Option<Ended> {
        let mut filling = match self.filling.take() {
            Some(filling) => filling,
            None => Filling::new(job, self.order(job)),
        };
        let worth = &mut self.worth;
        let mut pick = |left: &[u32], cap: u32, work: &mut u64| {
            let top = worth.iter().fold(1.0f64, |a, &b| if b > a { b } else { a });
            let values = each(worth.len(), &|i| (worth[i] / top * 1e6) as u64 + 1);
            let take = knapsack::search(&values, &job.sizes, left, cap, FILL_LIMIT, work).take;
            let used: u32 = take.iter().zip(&job.sizes).map(|(n, s)| n * s).sum();
            let strain = f64::from(cap) / f64::from(used.max(1));
            for (i, _) in take.iter().enumerate().filter(|(_, n)| **n > 0) {
                worth[i] = 0.5 * worth[i] + 0.5 * strain * plain(job.sizes[i]);
            }
            take
        };
        let ended = filling.run(job, &mut pick, work);
        if ended.is_none() {
            self.filling = Some(filling);
        } else {
            self.loads = std::mem::take(&mut filling.loads);
            for i in (0..job.sizes.len()).filter(|&i| filling.left[i] > 0) {
                self.worth[i] *= 1.0 + (self.draw() % 16) as f64 / 64.0;
            }
        }
        ended
    }
}
