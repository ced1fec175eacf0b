//! The case as the solver sees it: classes of equal length, kinds for sale, different sizes of piece.
//!
//! What it is: grouping, and the trick that makes cuts cost nothing (every length and every piece grows by one cut, so that
//! `k` pieces and `k - 1` cuts fit exactly when the grown pieces fit the grown length). What it is not: a search.

use measure::order;

use super::case::{Case, Pack};
use super::each::each;
use super::knapsack;
use super::mixes::Choice;
use super::value::Cut;

/// A pack that can be bought, worth keeping in the mix.
#[derive(Clone, Debug)]
pub struct Kind {
    /// Class of its lengths.
    pub class: usize,
    /// Lengths it brings.
    pub bars: u32,
    /// What it costs; never 0 (free packs are part of the base supply).
    pub price: u64,
    /// More than this many can never help.
    pub max: u32,
    /// Which pack of the case it is.
    pub pack: usize,
}

/// The case, grouped.
#[derive(Clone, Debug)]
pub struct Model {
    /// Capacity of each class (length plus one cut), longest first.
    pub caps: Vec<u32>,
    /// Class of each pack of the case.
    pub class_of: Vec<usize>,
    /// Owned lengths of each class.
    pub owned: Vec<u32>,
    /// Free lengths of each class: as many as there are pieces where a pack for sale costs nothing.
    pub free: Vec<u32>,
    /// A free pack of each class and the lengths it brings, where there is one.
    pub free_pack: Vec<Option<(usize, u32)>>,
    /// Packs for sale that no other pack beats in length, pieces and price at once.
    pub kinds: Vec<Kind>,
    /// Different sizes of piece (length plus one cut), longest first.
    pub sizes: Vec<u32>,
    /// How many of each size.
    pub counts: Vec<u32>,
    /// Pieces in all.
    pub total: u32,
    /// Millimetres lost by a cut.
    pub loss: u32,
}

impl Model {
    pub fn new(case: &Case) -> Self {
        let loss = case.cut_loss_mm();
        let packs = case.packs();
        let mut caps = each(packs.len(), &|i| packs[i].length_mm + loss);
        descend(&mut caps);
        let class_of = each(packs.len(), &|i| place(&caps, packs[i].length_mm + loss));
        let mut sizes = each(case.pieces().len(), &|i| case.pieces()[i].length_mm + loss);
        descend(&mut sizes);
        let mut counts = vec![0; sizes.len()];
        for demand in case.pieces() {
            counts[place(&sizes, demand.length_mm + loss)] += demand.count;
        }
        let total: u32 = counts.iter().sum();
        let mut owned = vec![0u32; caps.len()];
        let mut free = vec![0; caps.len()];
        let mut free_pack: Vec<Option<(usize, u32)>> = vec![None; caps.len()];
        for (i, pack) in packs.iter().enumerate() {
            let class = class_of[i];
            owned[class] = (owned[class] + pack.owned).min(total);
            if pack.pieces > 0 && pack.price == 0 {
                free[class] = total;
                // More lengths in the same free pack leave more behind.
                let better = free_pack[class].is_none_or(|(_, pieces)| pieces < pack.pieces);
                if better {
                    free_pack[class] = Some((i, pack.pieces));
                }
            }
        }
        let mut kinds = Vec::new();
        for (pack, &Pack { pieces: bars, price, .. }) in packs.iter().enumerate() {
            if worth_keeping(case, pack) {
                kinds.push(Kind { class: class_of[pack], bars, price, max: total.div_ceil(bars), pack });
            }
        }
        Self { caps, class_of, owned, free, free_pack, kinds, sizes, counts, total, loss }
    }

    /// The kinds, as what can be added to a supply.
    pub fn choices(&self) -> Vec<Choice> {
        each(self.kinds.len(), &|at| {
            let &Kind { class, bars, price, max, .. } = &self.kinds[at];
            Choice { class, bars, price, max }
        })
    }

    /// Lengths at hand without paying: owned and free.
    pub fn base(&self) -> Vec<u32> {
        each(self.owned.len(), &|class| (self.owned[class] + self.free[class]).min(self.total))
    }

    /// Lengths that a mix of kinds brings, on top of `base`; more than one for each piece is of no use.
    pub fn supply(&self, base: &[u32], mix: &[u32]) -> Vec<u32> {
        let mut supply = base.to_vec();
        for (kind, &n) in self.kinds.iter().zip(mix) {
            supply[kind.class] = supply[kind.class].saturating_add(kind.bars * n).min(self.total);
        }
        supply
    }

    /// The inequality of length itself, with what each class can really be filled to.
    pub fn length_cut(&self, work: &mut u64) -> Cut {
        let mut maxima = Vec::with_capacity(self.caps.len());
        for &cap in &self.caps {
            maxima.push(u64::from(knapsack::fullest(&self.sizes, &self.counts, cap, work)));
        }
        Cut::new(each(self.sizes.len(), &|size| u64::from(self.sizes[size])), maxima, &self.counts)
    }
}

/// Where a length stands among lengths, longest first.
fn place(lengths: &[u32], length: u32) -> usize {
    lengths.partition_point(|&other| other > length)
}

fn descend(values: &mut Vec<u32>) {
    order::sort_unique(values);
    values.reverse();
}

/// Whether no other pack is at least as long, as many and as cheap (a free one at least as long is enough).
fn worth_keeping(case: &Case, i: usize) -> bool {
    let packs = case.packs();
    let this = &packs[i];
    if this.pieces == 0 || this.price == 0 {
        return false;
    }
    !packs.iter().enumerate().any(|(j, other)| {
        if j == i || other.pieces == 0 || other.length_mm < this.length_mm {
            return false;
        }
        let beats = other.pieces >= this.pieces && other.price <= this.price;
        let equal = other.length_mm == this.length_mm && other.pieces == this.pieces && other.price == this.price;
        other.price == 0 || (beats && (!equal || j < i))
    })
}
