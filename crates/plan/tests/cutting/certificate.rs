//! An independent check of a plan: that it can be cut, and that nothing cheaper can.
//!
//! What it is: other code than the solver's, from the meaning of the case alone: every maximum again by a full table, every
//! cheaper mix listed without pruning by inequalities, and what breaks none of them searched by remaining pieces. What it is
//! not: fast.

use std::collections::{BTreeMap, BTreeSet};

use plan::cutting::{Case, Plan};

/// Checks that the plan can be cut and paid as it says.
pub fn can_be_cut(case: &Case, plan: &Plan) -> Result<(), String> {
    let mut wanted: BTreeMap<u32, i64> = BTreeMap::new();
    for demand in case.pieces() {
        *wanted.entry(demand.length_mm).or_default() += i64::from(demand.count);
    }
    let mut lengths = vec![(0u32, 0u32); case.packs().len()];
    for bar in &plan.bars {
        let pack = &case.packs()[bar.pack];
        for piece in &bar.pieces_mm {
            *wanted.entry(*piece).or_default() -= 1;
        }
        let cuts = bar.pieces_mm.len().saturating_sub(1) as u32 * case.cut_loss_mm();
        if bar.pieces_mm.iter().sum::<u32>() + cuts + bar.offcut_mm != pack.length_mm {
            return Err(format!("a bar of {} does not add up: {bar:?}", pack.name));
        }
        if bar.owned && bar.pieces_mm.is_empty() {
            return Err(format!("an owned length of {} is listed but not used", pack.name));
        }
        if bar.owned { lengths[bar.pack].1 += 1 } else { lengths[bar.pack].0 += 1 }
    }
    if let Some((piece, n)) = wanted.iter().find(|(_, n)| **n != 0) {
        return Err(format!("{n} pieces of {piece} mm are missing"));
    }
    let mut price = 0;
    for (i, pack) in case.packs().iter().enumerate() {
        if lengths[i].0 != plan.bought[i] * pack.pieces {
            return Err(format!("{} lengths of {} from {} packs", lengths[i].0, pack.name, plan.bought[i]));
        }
        if lengths[i].1 > pack.owned || lengths[i].1 != plan.owned_used[i] {
            return Err(format!("{} owned lengths of {}", lengths[i].1, pack.name));
        }
        price += u64::from(plan.bought[i]) * pack.price;
    }
    if price != plan.total_price {
        return Err(format!("the packs cost {price}, not {}", plan.total_price));
    }
    if plan.proved != (plan.lower_bound == plan.total_price) || plan.lower_bound > plan.total_price {
        return Err(format!("proved is {} with the bound {} of {price}", plan.proved, plan.lower_bound));
    }
    Ok(())
}

/// How many mixes were checked, and how many of them needed a search.
#[derive(Debug, Default, PartialEq, Eq)]
pub struct Checked {
    /// Mixes that no cheaper mix contains.
    pub mixes: u64,
    /// Those that break no inequality and were searched.
    pub searched: u64,
}

/// Checks that nothing is cheaper than `bound`, from the certificate.
pub fn nothing_cheaper(case: &Case, plan: &Plan, bound: u64) -> Result<Checked, String> {
    let certificate = &plan.certificate;
    let mut wanted: BTreeMap<u32, u32> = BTreeMap::new();
    for demand in case.pieces() {
        *wanted.entry(demand.length_mm).or_default() += demand.count;
    }
    let named: BTreeMap<u32, u32> =
        certificate.lengths_mm.iter().copied().zip(certificate.counts.iter().copied()).collect();
    if named != wanted {
        return Err("the certificate speaks of other pieces".into());
    }
    for inequality in &certificate.inequalities {
        for (pack, &claimed) in case.packs().iter().zip(&inequality.maxima) {
            let really = most_weight(case, certificate, &inequality.weights, pack.length_mm);
            if really > claimed {
                return Err(format!("a length of {} carries {really}, not {claimed}", pack.name));
            }
        }
    }
    let total: u32 = wanted.values().sum();
    let at_hand: Vec<u32> =
        case.packs().iter().map(|p| if p.pieces > 0 && p.price == 0 { total } else { p.owned.min(total) }).collect();
    let sold = (0..at_hand.len()).filter(|&i| case.packs()[i].pieces > 0 && case.packs()[i].price > 0).collect();
    let needed = certificate.inequalities.iter().map(|inequality| {
        inequality.weights.iter().zip(&certificate.counts).map(|(&w, &n)| u128::from(w) * u128::from(n)).sum()
    });
    let needed = needed.collect();
    let mut checker = Checker { case, plan, needed, total, sold, done: Checked::default() };
    if bound > 0 {
        checker.mixes(0, bound - 1, &at_hand)?;
    }
    Ok(checker.done)
}

fn most_weight(case: &Case, certificate: &plan::cutting::Certificate, weights: &[u64], length_mm: u32) -> u64 {
    let loss = case.cut_loss_mm();
    let room = (length_mm + loss) as usize;
    let mut best = vec![0u64; room + 1];
    for ((&piece, &count), &weight) in certificate.lengths_mm.iter().zip(&certificate.counts).zip(weights) {
        let size = (piece + loss) as usize;
        let mut left = count.min((room / size) as u32);
        let mut portion = 1;
        while left > 0 {
            let n = portion.min(left);
            let (take, gain) = (size * n as usize, weight * u64::from(n));
            for at in (take..=room).rev() {
                best[at] = best[at].max(best[at - take] + gain);
            }
            left -= n;
            portion *= 2;
        }
    }
    best[room]
}

struct Checker<'a> {
    case: &'a Case,
    plan: &'a Plan,
    /// Weight of all pieces, for each inequality.
    needed: Vec<u128>,
    total: u32,
    sold: Vec<usize>,
    done: Checked,
}

impl Checker<'_> {
    /// Walks the mixes for `money`. The last kind is bought as often as the money allows: a mix that holds less supply than
    /// one that cannot hold the pieces cannot hold them either.
    fn mixes(&mut self, at: usize, money: u64, lengths: &[u32]) -> Result<(), String> {
        let Some(&pack) = self.sold.get(at) else { return self.mix(lengths) };
        let (price, brings) = (self.case.packs()[pack].price, self.case.packs()[pack].pieces);
        let most = (money / price).min(u64::from(self.total.div_ceil(brings)));
        let least = if at + 1 == self.sold.len() { most } else { 0 };
        for n in least..=most {
            let mut more = lengths.to_vec();
            more[pack] += n as u32 * brings;
            self.mixes(at + 1, money - n * price, &more)?;
        }
        Ok(())
    }

    fn mix(&mut self, lengths: &[u32]) -> Result<(), String> {
        self.done.mixes += 1;
        let certificate = &self.plan.certificate;
        let broken = certificate.inequalities.iter().zip(&self.needed).any(|(inequality, &needed)| {
            let carried: u128 =
                inequality.maxima.iter().zip(lengths).map(|(&w, &n)| u128::from(w) * u128::from(n)).sum();
            carried < needed
        });
        if broken {
            return Ok(());
        }
        self.done.searched += 1;
        match self.holds(lengths) {
            Some(false) => Ok(()),
            Some(true) => Err(format!("a cheaper mix holds all pieces: {lengths:?}")),
            None => Err(format!("a cheaper mix breaks no inequality and is too large to search: {lengths:?}")),
        }
    }

    /// Whether lengths hold all pieces, by the sets of pieces that can be left after each length.
    fn holds(&self, lengths: &[u32]) -> Option<bool> {
        let loss = self.case.cut_loss_mm();
        let certificate = &self.plan.certificate;
        let sizes: Vec<u32> = certificate.lengths_mm.iter().map(|mm| mm + loss).collect();
        let mut states = BTreeSet::from([certificate.counts.clone()]);
        let mut rooms: Vec<u32> = Vec::new();
        for (pack, &n) in self.case.packs().iter().zip(lengths) {
            rooms.extend(std::iter::repeat_n(pack.length_mm + loss, n.min(self.total) as usize));
        }
        rooms.sort_unstable();
        let mut ahead: u64 = rooms.iter().map(|&r| u64::from(r)).sum();
        for room in rooms {
            ahead -= u64::from(room);
            let mut next = BTreeSet::new();
            for state in &states {
                let mut left = state.clone();
                leave(&sizes, 0, room, &mut left, ahead, &mut next);
                if next.len() > 4_000 {
                    return None;
                }
            }
            if next.iter().any(|left| left.iter().all(|&n| n == 0)) {
                return Some(true);
            }
            states = next;
        }
        Some(false)
    }
}

/// Every set of pieces that one length can leave, full or not, as long as the lengths ahead have the length for it.
fn leave(sizes: &[u32], at: usize, room: u32, left: &mut Vec<u32>, ahead: u64, next: &mut BTreeSet<Vec<u32>>) {
    let Some(&size) = sizes.get(at) else {
        let rest: u64 = sizes.iter().zip(left.iter()).map(|(&s, &n)| u64::from(s) * u64::from(n)).sum();
        if rest <= ahead {
            next.insert(left.clone());
        }
        return;
    };
    for n in 0..=left[at].min(room / size) {
        left[at] -= n;
        leave(sizes, at + 1, room - n * size, left, ahead, next);
        left[at] += n;
    }
}
