//! The second and third aims at the price found: fewest owned lengths, then the longest single offcut.
//!
//! What it is: the same listing and deciding as for the price, with owned lengths as what is paid, and then with one more
//! piece, the offcut wanted, among the pieces. What it is not: a claim beyond what was searched.

use super::decide::{Decider, Effort, Verdict};
use super::each::each;
use super::found::{Found, bought};
use super::mixes::{Choice, Enumerator};
use super::model::Model;
use super::price::job;
use super::value::{Cut, Job, Load, Packing};

/// Mixes of kinds of the same price that are looked at.
const MIX_LIMIT: usize = 60;
/// Supplies decided for the second aim.
const OWNED_LIMIT: u32 = 80;
/// Supplies tried for the third aim.
const OFFCUT_LIMIT: usize = 24;
/// More pieces than this, and the offcut is left as it fell.
const OFFCUT_PIECES: u32 = 600;

/// Fewest owned lengths.
#[derive(Clone, Debug)]
pub struct OwnedPhase {
    cuts: Vec<Cut>,
    /// Mixes of kinds with the price found, and the supply that each brings without owned lengths.
    mixes: Vec<(Vec<u32>, Vec<u32>)>,
    owned: Vec<Choice>,
    /// How many owned lengths are being tried, and with which mix.
    lengths: u64,
    at: usize,
    queue: Vec<(usize, Vec<u32>)>,
    /// The mix of the supply being decided.
    mix: usize,
    decider: Option<Box<Decider>>,
    decided: u32,
    /// Whether nothing was left out or undecided.
    whole: bool,
}

impl OwnedPhase {
    pub fn new(model: &Model, cuts: &[Cut], best: &Found, work: &mut u64) -> Self {
        let choices = model.choices();
        let base = model.base();
        let list = Enumerator::new(&choices, &base, cuts).list(best.price, best.price + 1, work);
        let mut whole = list.as_ref().is_some_and(|list| list.len() <= MIX_LIMIT);
        let mut mixes = vec![best.mix.clone()];
        for mix in list.unwrap_or_default().into_iter().take(MIX_LIMIT) {
            if !mixes.contains(&mix.counts) {
                mixes.push(mix.counts);
            }
        }
        let mut owned: Vec<Choice> = Vec::new();
        for class in 0..model.caps.len() {
            if model.owned[class] > 0 && model.free[class] == 0 {
                owned.push(Choice { class, bars: 1, price: 1, max: model.owned[class] });
            }
        }
        let mut floor: Option<u64> = None;
        let mixes = each(mixes.len(), &|at| (mixes[at].clone(), model.supply(&model.free, &mixes[at])));
        for (_, supply) in &mixes {
            if let Some(one) = Enumerator::new(&owned, supply, cuts).floor() {
                floor = Some(floor.map_or(one, |least| least.min(one)));
            }
        }
        let lengths = floor.unwrap_or_default();
        whole |= best.owned == 0;
        Self {
            cuts: cuts.to_vec(),
            mixes,
            owned,
            lengths,
            at: 0,
            queue: Vec::new(),
            mix: 0,
            decider: None,
            decided: 0,
            whole,
        }
    }

    /// One small step; at the end, whether the number of owned lengths is proved least.
    pub fn advance(&mut self, model: &Model, best: &mut Found, work: &mut u64) -> Option<bool> {
        *work += 20;
        if let Some(decider) = &mut self.decider {
            let verdict = decider.advance(work)?;
            self.decider = None;
            match verdict {
                Verdict::Fits(packing) => {
                    let found = Found::new(model, packing, &self.mixes[self.mix].0);
                    if found.better_than(best) {
                        *best = found;
                    }
                    return Some(self.whole);
                }
                Verdict::Cut(cut) => self.cuts.push(cut),
                Verdict::Exhausted => {}
                Verdict::Open => self.whole = false,
            }
            return None;
        }
        if self.lengths >= u64::from(best.owned) {
            return Some(self.whole);
        }
        if self.decided >= OWNED_LIMIT {
            return Some(false);
        }
        match self.queue.pop() {
            Some((mix, supply)) => {
                if !self.cuts.iter().any(|cut| cut.broken_by(&supply)) {
                    self.decided += 1;
                    self.mix = mix;
                    self.decider = Some(Box::new(Decider::new(job(model, supply), Effort::MIDDLE)));
                }
            }
            None if self.at < self.mixes.len() => {
                let list = self.supplies(model, self.at, self.lengths, work);
                self.whole &= list.is_some();
                for supply in list.unwrap_or_default().into_iter().rev() {
                    self.queue.push((self.at, supply));
                }
                self.at += 1;
            }
            None => {
                self.at = 0;
                self.lengths += 1;
            }
        }
        None
    }

    /// Every supply of a mix with so many owned lengths that breaks no inequality; `None` when there are too many.
    fn supplies(&self, model: &Model, mix: usize, lengths: u64, work: &mut u64) -> Option<Vec<Vec<u32>>> {
        let base = &self.mixes[mix].1;
        *work += 50;
        let list = Enumerator::new(&self.owned, base, &self.cuts).list(lengths, lengths + 1, work)?;
        Some(each(list.len(), &|at| {
            let mut supply = base.clone();
            for (choice, &n) in self.owned.iter().zip(&list[at].counts) {
                supply[choice.class] = (supply[choice.class] + n).min(model.total);
            }
            supply
        }))
    }
}

/// The longest single offcut.
#[derive(Clone, Debug)]
pub struct OffcutPhase {
    /// Supplies with the price and the number of owned lengths found, and the mix of kinds of each.
    supplies: std::vec::IntoIter<(Vec<u32>, Vec<u32>)>,
    now: Option<Trial>,
}

#[derive(Clone, Debug)]
struct Trial {
    mix: Vec<u32>,
    supply: Vec<u32>,
    /// Offcut being tried; it fits or it does not.
    wanted: u32,
    /// Known not to fit, or too long by simple sums.
    too_long: u32,
    decider: Box<Decider>,
}

impl OffcutPhase {
    pub fn new(model: &Model, owned: OwnedPhase, best: &mut Found, work: &mut u64) -> Self {
        spread_free(model, best);
        let mut supplies = Vec::new();
        if model.total <= OFFCUT_PIECES {
            supplies.push((best.mix.clone(), own_supply(model, best)));
            for mix in 0..owned.mixes.len() {
                let list = owned.supplies(model, mix, u64::from(best.owned), work);
                for supply in list.unwrap_or_default() {
                    supplies.push((owned.mixes[mix].0.clone(), supply));
                }
                if supplies.len() > OFFCUT_LIMIT {
                    break;
                }
            }
            supplies.truncate(OFFCUT_LIMIT);
        }
        Self { supplies: supplies.into_iter(), now: None }
    }

    /// One small step; `true` at the end.
    pub fn advance(&mut self, model: &Model, best: &mut Found, work: &mut u64) -> bool {
        *work += 20;
        let Some(trial) = &mut self.now else {
            let Some((mix, supply)) = self.supplies.next() else { return true };
            let too_long = limit(model, &supply).saturating_add(1);
            // One millimetre more than is had: if that does not fit, nothing longer does.
            if best.offcut + 1 < too_long {
                let wanted = best.offcut + 1;
                let decider = with_offcut(model, &supply, wanted);
                self.now = Some(Trial { mix, supply, wanted, too_long, decider });
            }
            return false;
        };
        let Some(verdict) = trial.decider.advance(work) else { return false };
        let mut fitted = false;
        if let Verdict::Fits(packing) = verdict {
            let found = Found::new(model, without_offcut(model, packing, trial.wanted), &trial.mix);
            // A packing that is no better (it may use more owned lengths than were needed after all) counts as none.
            if found.better_than(best) {
                fitted = found.offcut >= trial.wanted;
                *best = found;
            }
        }
        if !fitted {
            trial.too_long = trial.wanted;
        }
        let lo = best.offcut + 1;
        if lo >= trial.too_long {
            self.now = None;
            return false;
        }
        trial.wanted = lo + (trial.too_long - lo) / 2;
        trial.decider = with_offcut(model, &trial.supply, trial.wanted);
        false
    }
}

/// The longest offcut that a supply could leave by simple sums.
fn limit(model: &Model, supply: &[u32]) -> u32 {
    let classes = || (0..supply.len()).filter(|&c| supply[c] > 0);
    let longest = classes().map(|c| model.caps[c] - model.loss).max().unwrap_or(0);
    let room: u64 = classes().map(|c| u64::from(model.caps[c]) * u64::from(supply[c])).sum();
    let need: u64 = model.sizes.iter().zip(&model.counts).map(|(&s, &d)| u64::from(s) * u64::from(d)).sum();
    u32::try_from(room.saturating_sub(need)).map_or(longest, |slack| slack.min(longest))
}

/// The job with the wanted offcut as one more piece (no cut is lost to it).
fn with_offcut(model: &Model, supply: &[u32], wanted: u32) -> Box<Decider> {
    let mut job: Job = job(model, supply.to_vec());
    let at = job.sizes.partition_point(|&size| size > wanted);
    if job.sizes.get(at) == Some(&wanted) {
        job.counts[at] += 1;
    } else {
        job.sizes.insert(at, wanted);
        job.counts.insert(at, 1);
    }
    Box::new(Decider::new(job, Effort::SHORT))
}

fn without_offcut(model: &Model, packing: Packing, wanted: u32) -> Packing {
    let at = model.sizes.partition_point(|&size| size > wanted);
    let shared = model.sizes.get(at) == Some(&wanted);
    let mut taken = false;
    let mut packing = packing;
    for load in &mut packing {
        if !taken && let Some(i) = load.items.iter().position(|&item| item == at) {
            load.items.remove(i);
            taken = true;
        }
        if !shared {
            for item in load.items.iter_mut().filter(|item| **item > at) {
                *item -= 1;
            }
        }
    }
    packing.retain(|load| !load.items.is_empty());
    packing
}

/// Lengths of the best plan: bought, free and the owned ones it uses.
fn own_supply(model: &Model, best: &Found) -> Vec<u32> {
    let mut supply = bought(model, &best.mix);
    let mut used = vec![0u32; supply.len()];
    for load in &best.packing {
        used[load.class] += 1;
    }
    for class in 0..supply.len() {
        supply[class] = supply[class].max(used[class]).max(model.free[class]).min(model.total);
    }
    supply
}

/// Where a pack costs nothing, one more length of it with the shortest piece alone leaves the longest offcut it can.
fn spread_free(model: &Model, best: &mut Found) {
    let Some(class) = (0..model.caps.len()).find(|&c| model.free[c] > 0) else { return };
    let mut packing = best.packing.clone();
    let shortest = model.sizes.len() - 1;
    for load in &mut packing {
        if let Some(at) = load.items.iter().position(|&item| item == shortest) {
            load.items.remove(at);
            break;
        }
    }
    packing.retain(|load| !load.items.is_empty());
    packing.push(Load { class, items: vec![shortest] });
    let found = Found::new(model, packing, &best.mix);
    if found.better_than(best) {
        *best = found;
    }
}
