//! Tiny cases, solved by trying every way to put each piece into some length.
//!
//! What it is: the meaning of the three aims written down as plainly as can be. What it is not: usable beyond seven pieces.

use std::cmp::Reverse;

use plan::cutting::{Case, Demand, Pack};

use crate::sets::Draw;

/// A tiny case: few pieces, few kinds, packs of up to three, owned lengths, sometimes nothing for sale.
pub fn tiny(draw: &mut Draw) -> Case {
    loop {
        let kinds = draw.pick(1, 3);
        let packs = (0..kinds)
            .map(|i| Pack {
                name: format!("k{i}"),
                length_mm: draw.pick(10, 30),
                pieces: draw.pick(0, 3),
                price: u64::from(draw.pick(3, 20)),
                owned: draw.pick(0, 2),
            })
            .collect();
        let pieces = (0..draw.pick(1, 6)).map(|_| Demand { length_mm: draw.pick(3, 20), count: 1 }).collect();
        if let Ok(case) = Case::new(packs, pieces, draw.pick(0, 2)) {
            return case;
        }
    }
}

/// Price, owned lengths used and longest offcut of the best plan, if there is one.
pub fn best(case: &Case) -> Option<(u64, u32, u32)> {
    let mut pieces: Vec<u32> =
        case.pieces().iter().flat_map(|d| std::iter::repeat_n(d.length_mm, d.count as usize)).collect();
    pieces.sort_unstable_by_key(|&mm| Reverse(mm));
    let mut found = None;
    put(case, &pieces, &mut Vec::new(), &mut found);
    found.map(|(price, owned, Reverse(offcut))| (price, owned, offcut))
}

/// A length in use: its pack, whether it was owned, and what is left of it.
type Bar = (usize, bool, u32);

fn put(case: &Case, pieces: &[u32], bars: &mut Vec<Bar>, found: &mut Option<(u64, u32, Reverse<u32>)>) {
    let Some((&piece, rest)) = pieces.split_first() else {
        let value = measure(case, bars);
        if found.is_none_or(|best| value < best) {
            *found = Some(value);
        }
        return;
    };
    for at in 0..bars.len() {
        let with_cut = piece + case.cut_loss_mm();
        if bars[at].2 >= with_cut {
            bars[at].2 -= with_cut;
            put(case, rest, bars, found);
            bars[at].2 += with_cut;
        }
    }
    for (i, pack) in case.packs().iter().enumerate() {
        if pack.length_mm < piece {
            continue;
        }
        let owned = bars.iter().filter(|bar| bar.0 == i && bar.1).count() as u32;
        for (is_owned, there) in [(true, owned < pack.owned), (false, pack.pieces > 0)] {
            if there {
                bars.push((i, is_owned, pack.length_mm - piece));
                put(case, rest, bars, found);
                bars.pop();
            }
        }
    }
}

fn measure(case: &Case, bars: &[Bar]) -> (u64, u32, Reverse<u32>) {
    let (mut price, mut owned, mut offcut) = (0, 0, 0);
    for (i, pack) in case.packs().iter().enumerate() {
        let bought = bars.iter().filter(|bar| bar.0 == i && !bar.1).count() as u32;
        owned += bars.iter().filter(|bar| bar.0 == i && bar.1).count() as u32;
        if bought > 0 {
            price += u64::from(bought.div_ceil(pack.pieces)) * pack.price;
            if !bought.is_multiple_of(pack.pieces) {
                offcut = offcut.max(pack.length_mm);
            }
        }
    }
    offcut = bars.iter().map(|bar| bar.2).fold(offcut, u32::max);
    (price, owned, Reverse(offcut))
}
