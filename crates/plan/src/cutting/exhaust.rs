//! The search that tries everything: every way to fill one length after another, until the waste is spent.
//!
//! What it is: exact for small jobs, with a limit of branches and the honest answer "not known" beyond it. What it is not:
//! a heuristic.
//!
//! Two things may be left out without losing an answer. Take the packing whose loads, written in the order of the lengths
//! with their longest pieces first, come last in the dictionary: each load is then full (no later piece would still go in,
//! or moving it would come later), and no load comes before its neighbour of equal length (or swapping them would). So only
//! full loads in falling order are tried.

use super::each::repeated;
use super::value::{Job, Load, Packing};

/// What the search found.
pub enum Outcome {
    Fits(Packing),
    Impossible,
    Unknown,
}

/// Lengths times sizes above which nothing is tried: the search recurses, and a browser's stack is small.
const DEPTH: usize = 3_000;

struct Search<'a> {
    job: &'a Job,
    bars: Vec<usize>,
    left: Vec<u32>,
    pieces: u32,
    loads: Vec<Vec<u32>>,
    nodes: u64,
    limit: u64,
}

/// Tries everything, within `limit` branches.
pub fn exhaust(job: &Job, limit: u64, work: &mut u64) -> Outcome {
    let Some(slack) = job.room().checked_sub(job.need()) else { return Outcome::Impossible };
    if job.bars() as usize * job.sizes.len() > DEPTH {
        return Outcome::Unknown;
    }
    let bars = repeated(&job.supply);
    let mut search =
        Search { job, bars, left: job.counts.clone(), pieces: job.pieces(), loads: Vec::new(), nodes: 0, limit };
    let fits = search.bar(slack);
    *work += search.nodes * 10;
    if fits {
        let mut packing = Packing::new();
        for (take, &class) in search.loads.iter().zip(&search.bars) {
            let items = repeated(take);
            if !items.is_empty() {
                packing.push(Load { class, items });
            }
        }
        Outcome::Fits(packing)
    } else if search.nodes < limit {
        Outcome::Impossible
    } else {
        Outcome::Unknown
    }
}

impl Search<'_> {
    fn bar(&mut self, slack: u64) -> bool {
        if self.pieces == 0 {
            return true;
        }
        let at = self.loads.len();
        let Some(&class) = self.bars.get(at) else { return false };
        self.loads.push(vec![0; self.job.sizes.len()]);
        let falling = at > 0 && self.bars[at - 1] == class;
        if self.choose(0, self.job.caps[class], falling, slack) {
            return true;
        }
        self.loads.pop();
        false
    }

    /// Chooses how many of size `item` go into the last load; `tied` while it equals the load before so far.
    fn choose(&mut self, item: usize, room: u32, tied: bool, slack: u64) -> bool {
        self.nodes += 1;
        if self.nodes >= self.limit {
            return false;
        }
        let at = self.loads.len() - 1;
        let (mut item, mut tied) = (item, tied);
        // Sizes of which none is left or fits need no branch.
        while item < self.job.sizes.len() && (self.left[item] == 0 || self.job.sizes[item] > room) {
            tied = tied && self.loads[at - 1][item] == 0;
            item += 1;
        }
        if item == self.job.sizes.len() {
            let full = (0..item).rev().find(|&i| self.left[i] > 0).is_none_or(|i| self.job.sizes[i] > room);
            // Waste counts only while pieces are left: what comes after the last piece is not needed.
            return (self.pieces == 0 || (full && u64::from(room) <= slack))
                && self.bar(slack.saturating_sub(u64::from(room)));
        }
        let size = self.job.sizes[item];
        let mut most = self.left[item].min(room / size);
        if tied {
            most = most.min(self.loads[at - 1][item]);
        }
        for n in (0..=most).rev() {
            self.loads[at][item] = n;
            self.left[item] -= n;
            self.pieces -= n;
            let still = tied && n == self.loads[at - 1][item];
            if self.choose(item + 1, room - n * size, still, slack) {
                return true;
            }
            self.left[item] += n;
            self.pieces += n;
            self.loads[at][item] = 0;
            if self.nodes >= self.limit {
                return false;
            }
        }
        false
    }
}
