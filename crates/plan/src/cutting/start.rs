//! A first plan that works: best fit with each kind of pack as the main one, each length then made as cheap as its load allows.
//!
//! What it is: an upper bound on the price. What it is not: good; it can be a fifth too dear.

use super::fit;
use super::found::Found;
use super::model::Model;
use super::value::{Job, Packing};

/// The best of the first plans, on top of the loads (in owned lengths) of pieces that no pack for sale holds.
pub fn start(model: &Model, held: &Packing, work: &mut u64) -> Option<Found> {
    let mut best: Option<Found> = None;
    let mains = 0..model.kinds.len().max(1);
    for main in mains {
        for use_owned in [true, false] {
            let Some(found) = trial(model, held, main, use_owned, work) else { continue };
            if best.as_ref().is_none_or(|best| found.better_than(best)) {
                best = Some(found);
            }
        }
    }
    best
}

fn trial(model: &Model, held: &Packing, main: usize, use_owned: bool, work: &mut u64) -> Option<Found> {
    let mut counts = model.counts.clone();
    let mut left = model.base();
    for load in held {
        left[load.class] -= 1;
        for &item in &load.items {
            counts[item] -= 1;
        }
    }
    let base = left.clone();
    if !use_owned {
        left.clone_from(&model.free);
    }
    let mut open = |size: u32| {
        let at_hand = (0..left.len()).rfind(|&c| left[c] > 0 && model.caps[c] >= size);
        if let Some(class) = at_hand {
            left[class] -= 1;
            return Some(class);
        }
        let main = model.kinds.get(main)?;
        if model.caps[main.class] >= size { Some(main.class) } else { cheapest(model, size) }
    };
    let job = Job {
        caps: model.caps.clone(),
        supply: base.clone(),
        sizes: model.sizes.clone(),
        counts: model.counts.clone(),
    };
    let mut packing = fit::place(&job, &counts, held.clone(), &mut open, work)?;
    // Lengths beyond those at hand are bought: each as the cheapest class that holds its load.
    let mut used = vec![0u32; model.caps.len()];
    for load in &mut packing {
        used[load.class] += 1;
        let at_hand = model.owned[load.class] + model.free[load.class];
        if used[load.class] > at_hand {
            let size = load.items.iter().map(|&i| model.sizes[i]).sum();
            if let Some(class) = cheapest(model, size).filter(|&class| class != load.class) {
                used[load.class] -= 1;
                load.class = class;
                used[class] += 1;
            }
        }
    }
    let mut used = vec![0u32; model.caps.len()];
    for load in &packing {
        used[load.class] += 1;
    }
    let mut mix = vec![0; model.kinds.len()];
    for (class, &used) in used.iter().enumerate() {
        let lacking = used.saturating_sub(model.owned[class] + model.free[class]);
        let kinds = (0..mix.len()).filter(|&k| model.kinds[k].class == class);
        let kind = kinds.min_by_key(|&k| u64::from(lacking.div_ceil(model.kinds[k].bars)) * model.kinds[k].price);
        match kind {
            Some(kind) => mix[kind] = lacking.div_ceil(model.kinds[kind].bars),
            None if lacking > 0 => return None,
            None => {}
        }
    }
    Some(Found::new(model, packing, &mix))
}

/// The class for sale that holds `size` at the least price for a length.
fn cheapest(model: &Model, size: u32) -> Option<usize> {
    let holds = model.kinds.iter().filter(|k| model.caps[k.class] >= size);
    holds.min_by(|a, b| (a.price * u64::from(b.bars)).cmp(&(b.price * u64::from(a.bars)))).map(|k| k.class)
}
