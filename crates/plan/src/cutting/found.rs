//! A packing with what it costs, and how it becomes a plan.
//!
//! What it is: the three aims measured on one packing, and the sharing out of equal lengths among packs and owned stock.
//! What it is not: a search.

use std::cmp::Reverse;

use measure::order;

use super::case::Case;
use super::model::Model;
use super::plan::Bar;
use super::value::Packing;

/// A complete packing and the packs bought for it.
#[derive(Clone, Debug)]
pub struct Found {
    pub packing: Packing,
    /// How many of each kind are bought.
    pub mix: Vec<u32>,
    pub price: u64,
    pub owned: u32,
    pub offcut: u32,
}

impl Found {
    /// Measures a packing, without the packs of `mix` that it does not need.
    pub fn new(model: &Model, packing: Packing, mix: &[u32]) -> Self {
        let mut used = vec![0u32; model.caps.len()];
        for load in &packing {
            used[load.class] += 1;
        }
        let mut mix = mix.to_vec();
        let mut bought = bought(model, &mix);
        let mut dear: Vec<usize> = (0..mix.len()).collect();
        order::sort_by(&mut dear, &|&a, &b| model.kinds[b].price.cmp(&model.kinds[a].price));
        for k in dear {
            let kind = &model.kinds[k];
            let at_hand = model.owned[kind.class] + model.free[kind.class];
            while mix[k] > 0 && used[kind.class] + kind.bars <= bought[kind.class] + at_hand {
                mix[k] -= 1;
                bought[kind.class] -= kind.bars;
            }
        }
        let price = mix.iter().zip(&model.kinds).map(|(&n, kind)| u64::from(n) * kind.price).sum();
        let owned = (0..used.len()).filter(|&c| model.free[c] == 0).map(|c| used[c].saturating_sub(bought[c])).sum();
        let mut found = Self { packing, mix, price, owned, offcut: 0 };
        found.offcut = found.longest(model, &used, &bought);
        found
    }

    fn longest(&self, model: &Model, used: &[u32], bought: &[u32]) -> u32 {
        let rest = |items: &[usize], class: usize| -> u32 {
            model.caps[class] - items.iter().map(|&i| model.sizes[i]).sum::<u32>()
        };
        let cut = self.packing.iter().map(|load| rest(&load.items, load.class)).max().unwrap_or(0);
        let spare = |c: usize| match model.free_pack[c] {
            Some((_, pieces)) => !used[c].is_multiple_of(pieces),
            None => bought[c] > used[c],
        };
        let whole = (0..used.len()).filter(|&c| spare(c)).map(|c| model.caps[c] - model.loss);
        whole.max().unwrap_or(0).max(cut)
    }

    /// Least price, then fewest owned lengths, then the longest offcut.
    pub fn better_than(&self, other: &Self) -> bool {
        (self.price, self.owned, Reverse(self.offcut)) < (other.price, other.owned, Reverse(other.offcut))
    }

    /// The bars, packs bought and owned lengths used, for the packs of the case.
    pub fn share_out(&self, case: &Case, model: &Model) -> (Vec<Bar>, Vec<u32>, Vec<u32>) {
        let packs = case.packs();
        let mut bought = vec![0u32; packs.len()];
        for (&n, kind) in self.mix.iter().zip(&model.kinds) {
            bought[kind.pack] += n;
        }
        for (class, free_pack) in model.free_pack.iter().enumerate() {
            let used = self.packing.iter().filter(|load| load.class == class).count() as u32;
            if let Some((pack, pieces)) = *free_pack {
                bought[pack] = used.div_ceil(pieces);
            }
        }
        // The lengths that each class has to give: what was bought, then what was owned.
        let mut slots: Vec<Vec<(usize, bool)>> = vec![Vec::new(); model.caps.len()];
        for (i, pack) in packs.iter().enumerate() {
            slots[model.class_of[i]].extend(std::iter::repeat_n((i, false), (bought[i] * pack.pieces) as usize));
        }
        for (i, pack) in packs.iter().enumerate() {
            let owned = pack.owned.min(model.total);
            slots[model.class_of[i]].extend(std::iter::repeat_n((i, true), owned as usize));
        }
        let mut slots: Vec<_> = slots.into_iter().map(Vec::into_iter).collect();
        let mut bars = Vec::new();
        let mut owned_used = vec![0u32; packs.len()];
        for load in &self.packing {
            let Some((pack, owned)) = slots[load.class].next() else { continue };
            let mut items = load.items.clone();
            order::sort(&mut items);
            let used: u32 = items.iter().map(|&i| model.sizes[i]).sum();
            let pieces_mm = items.iter().map(|&i| model.sizes[i] - model.loss).collect();
            owned_used[pack] += u32::from(owned);
            bars.push(Bar { pack, owned, pieces_mm, offcut_mm: model.caps[load.class] - used });
        }
        for (class, rest) in slots.into_iter().enumerate() {
            for (pack, _) in rest.filter(|(_, owned)| !owned) {
                bars.push(Bar { pack, owned: false, pieces_mm: Vec::new(), offcut_mm: model.caps[class] - model.loss });
            }
        }
        order::sort_by(&mut bars, &|a, b| {
            let place = |bar: &Bar| (bar.pack, bar.owned, bar.pieces_mm.is_empty(), bar.offcut_mm);
            place(a).cmp(&place(b)).then_with(|| b.pieces_mm.cmp(&a.pieces_mm))
        });
        (bars, bought, owned_used)
    }
}

/// Lengths of each class that a mix brings.
pub fn bought(model: &Model, mix: &[u32]) -> Vec<u32> {
    let mut bought = vec![0; model.caps.len()];
    for (&n, kind) in mix.iter().zip(&model.kinds) {
        bought[kind.class] += n * kind.bars;
    }
    bought
}
