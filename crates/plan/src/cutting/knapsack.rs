//! Bounded knapsacks in whole numbers: the heaviest (or the fullest) load of one length.
//!
//! What it is: branch and bound with a work limit, a table when that limit is passed, and a bit set for pure length.
//! What it is not: a packing of several lengths.

use super::each::each;

/// A table larger than this is not filled: the caller is told that the answer is not known.
const TABLE_LIMIT: u64 = 8_000_000;

/// The best load found.
pub struct Best {
    pub value: u64,
    pub take: Vec<u32>,
    /// Whether nothing better exists.
    pub exact: bool,
}

/// Deeper than this many sizes is not searched (the search recurses); the answer is then not exact.
const DEPTH: usize = 1_000;

struct Search {
    size: Vec<u32>,
    bound: Vec<u32>,
    weight: Vec<u64>,
    /// Smallest size from here on.
    least: Vec<u32>,
    take: Vec<u32>,
    best: u64,
    best_take: Vec<u32>,
    nodes: u64,
    limit: u64,
}

impl Search {
    fn walk(&mut self, at: usize, room: u32, carried: u64) {
        if carried > self.best {
            self.best = carried;
            self.best_take.copy_from_slice(&self.take);
        }
        if at == self.size.len() || room < self.least[at] || self.nodes >= self.limit {
            return;
        }
        self.nodes += 1;
        let (size, weight) = (self.size[at], self.weight[at]);
        let most = self.bound[at].min(room / size);
        for n in (0..=most).rev() {
            let left = room - n * size;
            let have = carried + u64::from(n) * weight;
            let ahead = match self.size.get(at + 1) {
                Some(&next) => u64::from(left) * self.weight[at + 1] / u64::from(next),
                None => 0,
            };
            if have + ahead <= self.best {
                break;
            }
            self.take[at] = n;
            self.walk(at + 1, left, have);
            self.take[at] = 0;
            if self.nodes >= self.limit {
                return;
            }
        }
    }
}

/// The heaviest load of a length, looking at no more than `limit` branches.
pub fn search(values: &[u64], sizes: &[u32], bounds: &[u32], cap: u32, limit: u64, work: &mut u64) -> Best {
    // The most value for the size first, of equal ones the largest. Placed one by one, as this runs more often than all else.
    let mut order: Vec<usize> = Vec::with_capacity(sizes.len());
    for i in (0..sizes.len()).filter(|&i| values[i] > 0 && bounds[i] > 0 && sizes[i] <= cap) {
        let place = order.partition_point(|&other: &usize| {
            let (ours, theirs) = (values[i] * u64::from(sizes[other]), values[other] * u64::from(sizes[i]));
            theirs > ours || (theirs == ours && sizes[other] >= sizes[i])
        });
        order.insert(place, i);
    }
    let whole = order.len() <= DEPTH;
    order.truncate(DEPTH);
    let size = each(order.len(), &|at| sizes[order[at]]);
    let mut least = size.clone();
    for at in (1..least.len()).rev() {
        least[at - 1] = least[at - 1].min(least[at]);
    }
    let blank = vec![0; order.len()];
    let mut search = Search {
        bound: each(order.len(), &|at| bounds[order[at]]),
        weight: each(order.len(), &|at| values[order[at]]),
        size,
        least,
        take: blank.clone(),
        best: 0,
        best_take: blank,
        nodes: 0,
        limit,
    };
    search.walk(0, cap, 0);
    *work += search.nodes * 6 + 30 * sizes.len() as u64;
    let mut take = vec![0; values.len()];
    for (&i, &n) in order.iter().zip(&search.best_take) {
        take[i] = n;
    }
    Best { value: search.best, take, exact: whole && search.nodes < limit }
}

/// The heaviest load of a length, exactly; `None` when that would take too large a table.
pub fn heaviest(values: &[u64], sizes: &[u32], bounds: &[u32], cap: u32, work: &mut u64) -> Option<(u64, Vec<u32>)> {
    let best = search(values, sizes, bounds, cap, 20_000, work);
    if best.exact { Some((best.value, best.take)) } else { table(values, sizes, bounds, cap, work) }
}

/// Splits a bound into parts 1, 2, 4, … and a rest, so that every number up to it is a sum of parts.
fn parts(sizes: &[u32], bounds: &[u32], cap: u32) -> Vec<(usize, u32)> {
    let mut parts = Vec::new();
    for (i, (&size, &bound)) in sizes.iter().zip(bounds).enumerate() {
        let mut left = bound.min(cap / size.max(1));
        let mut part = 1;
        while left > 0 {
            let n = part.min(left);
            parts.push((i, n));
            left -= n;
            part *= 2;
        }
    }
    parts
}

fn table(values: &[u64], sizes: &[u32], bounds: &[u32], cap: u32, work: &mut u64) -> Option<(u64, Vec<u32>)> {
    let parts = parts(sizes, bounds, cap);
    let width = cap as usize + 1;
    let cells = parts.len() as u64 * width as u64;
    if cells > TABLE_LIMIT {
        return None;
    }
    *work += 2 * cells;
    let mut best = vec![0u64; width];
    let mut chosen = vec![false; parts.len() * width];
    for (row, &(i, n)) in parts.iter().enumerate() {
        let size = (sizes[i] * n) as usize;
        let value = values[i] * u64::from(n);
        for room in (size..width).rev() {
            let with = best[room - size] + value;
            if with > best[room] {
                best[room] = with;
                chosen[row * width + room] = true;
            }
        }
    }
    let mut take = vec![0; sizes.len()];
    let mut room = width - 1;
    for (row, &(i, n)) in parts.iter().enumerate().rev() {
        if chosen[row * width + room] {
            take[i] += n;
            room -= (sizes[i] * n) as usize;
        }
    }
    Some((best[width - 1], take))
}

/// The fullest that a length of `cap` can be filled, by a set of reachable sums held as bits.
pub fn fullest(sizes: &[u32], bounds: &[u32], cap: u32, work: &mut u64) -> u32 {
    let total: u64 = sizes.iter().zip(bounds).map(|(&s, &d)| u64::from(s) * u64::from(d)).sum();
    if total <= u64::from(cap) {
        return total as u32;
    }
    let words = cap as usize / 64 + 1;
    let mut reach = vec![0u64; words];
    reach[0] = 1;
    for (i, n) in parts(sizes, bounds, cap) {
        let shift = (sizes[i] * n) as usize;
        let (jump, bits) = (shift / 64, shift % 64);
        for at in (jump..words).rev() {
            let mut moved = reach[at - jump] << bits;
            if bits > 0 && at > jump {
                moved |= reach[at - jump - 1] >> (64 - bits);
            }
            reach[at] |= moved;
        }
        *work += words as u64;
    }
    (0..=cap).rev().find(|&sum| reach[sum as usize / 64] >> (sum % 64) & 1 == 1).unwrap_or(0)
}
