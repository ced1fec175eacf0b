//! Lists every mix of kinds in a price window that breaks no known inequality.
//!
//! What it is: a complete list or none at all: a list cut short without saying so could make a false "proved". What it is
//! not: a judgement on whether a mix can be packed.

use measure::order;

use super::each::each;
use super::value::Cut;

/// Something that can be added to a supply: a pack for its price, or an owned length for the price of 1.
#[derive(Clone, Debug)]
pub struct Choice {
    pub class: usize,
    pub bars: u32,
    pub price: u64,
    pub max: u32,
}

/// A mix and its price.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mix {
    pub price: u64,
    pub counts: Vec<u32>,
    /// What the first inequality (length) makes of it: the roomier of two equal prices is tried first.
    pub room: u64,
}

/// Most mixes in one list.
const LIST_LIMIT: usize = 20_000;
/// Most branches walked for one list.
const NODE_LIMIT: u64 = 60_000;

/// What the choices and inequalities make of each other, worked out once.
pub struct Enumerator<'a> {
    choices: &'a [Choice],
    /// What is still needed by each inequality, over the base supply.
    need: Vec<i128>,
    /// What one of each choice gives to each inequality: `gain[choice][cut]`.
    gain: Vec<Vec<i128>>,
    /// The best choice from here on for each inequality, by gain for its price: `best[choice][cut]`.
    best: Vec<Vec<usize>>,
}

impl<'a> Enumerator<'a> {
    pub fn new(choices: &'a [Choice], base: &[u32], cuts: &[Cut]) -> Self {
        let need = each(cuts.len(), &|cut| {
            let mut need = i128::from(cuts[cut].need);
            for (&weight, &count) in cuts[cut].maxima.iter().zip(base) {
                need -= i128::from(weight) * i128::from(count);
            }
            need
        });
        let gain = each(choices.len(), &|at| {
            let choice = &choices[at];
            each(cuts.len(), &|cut| i128::from(cuts[cut].maxima[choice.class]) * i128::from(choice.bars))
        });
        let mut best: Vec<Vec<usize>> = vec![vec![0; cuts.len()]; choices.len()];
        for at in (0..choices.len()).rev() {
            for cut in 0..cuts.len() {
                let mut lead = at;
                if at + 1 < choices.len() {
                    let other = best[at + 1][cut];
                    let here = gain[at][cut] * i128::from(choices[other].price);
                    if gain[other][cut] * i128::from(choices[at].price) > here {
                        lead = other;
                    }
                }
                best[at][cut] = lead;
            }
        }
        Self { choices, need, gain, best }
    }

    /// No mix of a lower price can satisfy every inequality; `None` when no mix can at all.
    pub fn floor(&self) -> Option<u64> {
        let mut floor = 0;
        for (cut, &need) in self.need.iter().enumerate().filter(|(_, need)| **need > 0) {
            let lead = *self.best.first()?.get(cut)?;
            let gain = self.gain[lead][cut];
            if gain == 0 {
                return None;
            }
            let price = (need * i128::from(self.choices[lead].price) + gain - 1) / gain;
            floor = floor.max(u64::try_from(price).ok()?);
        }
        Some(floor)
    }

    /// Every mix with a price in `lo..hi` that satisfies every inequality, cheapest first; `None` when there are too many.
    pub fn list(&self, lo: u64, hi: u64, work: &mut u64) -> Option<Vec<Mix>> {
        let mut walk = Walk { of: self, lo, hi, counts: vec![0; self.choices.len()], found: Vec::new(), nodes: 0 };
        let whole = walk.walk(0, 0, &self.need);
        *work += walk.nodes * (30 + 4 * self.need.len() as u64);
        if !whole {
            return None;
        }
        order::sort_by(&mut walk.found, &|a, b| {
            a.price.cmp(&b.price).then(b.room.cmp(&a.room)).then_with(|| a.counts.cmp(&b.counts))
        });
        Some(walk.found)
    }
}

struct Walk<'a, 'b> {
    of: &'a Enumerator<'b>,
    lo: u64,
    hi: u64,
    counts: Vec<u32>,
    found: Vec<Mix>,
    nodes: u64,
}

impl Walk<'_, '_> {
    /// `false` when a limit stopped it.
    fn walk(&mut self, at: usize, price: u64, need: &[i128]) -> bool {
        self.nodes += 1;
        if self.nodes > NODE_LIMIT || self.found.len() >= LIST_LIMIT {
            return false;
        }
        if price >= self.hi {
            return true;
        }
        let of = self.of;
        if at == of.choices.len() {
            if price >= self.lo && need.iter().all(|&n| n <= 0) {
                let mut room = 0_u64;
                for (&n, gain) in self.counts.iter().zip(&of.gain) {
                    let length = gain.first().copied().unwrap_or(0);
                    room = room.saturating_add(u64::try_from(length * i128::from(n)).unwrap_or(u64::MAX));
                }
                self.found.push(Mix { price, counts: self.counts.clone(), room });
            }
            return true;
        }
        let money = self.hi - 1 - price;
        for (cut, &need) in need.iter().enumerate().filter(|(_, need)| **need > 0) {
            let lead = of.best[at][cut];
            if need * i128::from(of.choices[lead].price) > i128::from(money) * of.gain[lead][cut] {
                return true;
            }
        }
        let choice = &of.choices[at];
        let most = u64::from(choice.max).min(money / choice.price) as u32;
        let mut least = 0;
        if at + 1 == of.choices.len() {
            // The last choice must bring what is still missing, and the price up to the window.
            for (cut, &need) in need.iter().enumerate().filter(|(_, need)| **need > 0) {
                let gain = of.gain[at][cut];
                if gain == 0 {
                    return true;
                }
                least = least.max(u32::try_from((need + gain - 1) / gain).unwrap_or(u32::MAX));
            }
            let short = self.lo.saturating_sub(price).div_ceil(choice.price);
            least = least.max(u32::try_from(short).unwrap_or(u32::MAX));
        }
        for n in least..=most {
            self.counts[at] = n;
            let left = each(need.len(), &|cut| need[cut] - of.gain[at][cut] * i128::from(n));
            if !self.walk(at + 1, price + u64::from(n) * choice.price, &left) {
                return false;
            }
        }
        self.counts[at] = 0;
        true
    }
}

#[cfg(test)]
mod tests {
    use super::{Choice, Enumerator};
    use crate::cutting::value::Cut;

    fn choices(prices: &[u64]) -> Vec<Choice> {
        prices.iter().enumerate().map(|(class, &price)| Choice { class, bars: 1, price, max: 30 }).collect()
    }

    #[test]
    fn a_window_lists_every_mix_that_breaks_nothing() {
        let cut = Cut { weights: Vec::new(), maxima: vec![70, 50, 32], need: 600 };
        let choices = choices(&[19, 14, 10]);
        let list = Enumerator::new(&choices, &[1, 0, 2], std::slice::from_ref(&cut)).list(100, 160, &mut 0);
        let mut all = 0;
        let list = list.unwrap_or_default();
        for (a, b, c) in (0..=30).flat_map(|a| (0..=30).flat_map(move |b| (0..=30).map(move |c| (a, b, c)))) {
            let price = u64::from(19 * a + 14 * b + 10 * c);
            if (100..160).contains(&price) && !cut.broken_by(&[a + 1, b, c + 2]) {
                all += 1;
                assert!(list.iter().any(|mix| mix.counts == [a, b, c] && mix.price == price), "{a} {b} {c}");
            }
        }
        assert_eq!((list.len(), all > 10), (all, true));
        assert!(list.windows(2).all(|two| two[0].price <= two[1].price));
    }

    #[test]
    fn a_window_that_is_too_full_is_refused_and_not_cut_short() {
        let cut = Cut { weights: Vec::new(), maxima: vec![1; 8], need: 1 };
        let choices = choices(&[7, 8, 9, 10, 11, 12, 13, 14]);
        assert_eq!(Enumerator::new(&choices, &[0; 8], &[cut]).list(0, 10_000, &mut 0), None);
    }
}
