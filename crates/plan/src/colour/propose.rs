//! The depth, or depths of up to three dyes, that come nearest to a wanted colour.
//!
//! What it is: a search on a grid, refined, the same on every machine. What it is not: fewer dyes where more come nearer: the
//! caller tries each number.

use super::{
    differ::{Difference, ciede2000, difference},
    light::{Absorbs, Light},
    mix::dyed,
};

/// Depths and what they make.
#[derive(Clone, Debug, PartialEq)]
pub struct Proposal {
    /// Percent on the weight of fibre, dye by dye.
    pub percent: Vec<f64>,
    /// The colour that comes out, by the model.
    pub makes: Light,
    /// How that differs from what is wanted.
    pub off: Difference,
}

/// The deepest proposed, percent on the weight of fibre.
pub const DEEPEST: f64 = 8.0;
/// Depths tried first: nothing, then rising by the same factor.
const GRID: [f64; 9] = [0.0, 0.05, 0.1, 0.25, 0.5, 1.0, 2.0, 4.0, 8.0];
/// Below this nobody weighs it.
const LEAST: f64 = 0.005;

/// The depths of up to three dyes that bring a base nearest to a wanted colour; each dye by what 1 % of it absorbs.
pub fn propose(base: Light, wanted: Light, dyes: &[Absorbs]) -> Proposal {
    let dyes = dyes.get(..3).unwrap_or(dyes);
    let off = |percent: &[f64]| -> f64 {
        let mut parts = [(Absorbs([0.0; 3]), 0.0); 3];
        for ((part, dye), depth) in parts.iter_mut().zip(dyes).zip(percent) {
            *part = (*dye, *depth);
        }
        ciede2000(dyed(base, &parts), wanted)
    };
    let mut best = vec![0.0; dyes.len()];
    let mut least = off(&best);
    let mut tried = vec![0.0; dyes.len()];
    grid(&mut tried, 0, &mut |percent| {
        let this = off(percent);
        if this < least {
            least = this;
            best.copy_from_slice(percent);
        }
    });
    refine(&mut best, &mut least, &off);
    // The grid's best may lie in another valley than that of one dye alone.
    if dyes.len() > 1 {
        for (only, dye) in dyes.iter().enumerate() {
            let alone = propose(base, wanted, core::slice::from_ref(dye));
            if alone.off.amount < least {
                least = alone.off.amount;
                best.fill(0.0);
                if let (Some(place), Some(depth)) = (best.get_mut(only), alone.percent.first()) {
                    *place = *depth;
                }
            }
        }
    }
    for depth in &mut best {
        if *depth < LEAST {
            *depth = 0.0;
        }
    }
    let parts: Vec<(Absorbs, f64)> = dyes.iter().copied().zip(best.iter().copied()).collect();
    let makes = dyed(base, &parts);
    Proposal { percent: best, makes, off: difference(wanted, makes) }
}

fn grid(tried: &mut Vec<f64>, at: usize, take: &mut dyn FnMut(&[f64])) {
    if at == tried.len() {
        take(tried);
        return;
    }
    for depth in GRID {
        tried[at] = depth;
        grid(tried, at + 1, take);
    }
}

/// Steps up and down by a factor that shrinks, one dye at a time and two against each other.
fn refine(best: &mut [f64], least: &mut f64, off: &dyn Fn(&[f64]) -> f64) {
    let mut factor = 1.5;
    while factor > 1.0005 {
        let mut better = false;
        for first in 0..best.len() {
            for second in 0..best.len() {
                for (one, other) in [(factor, 1.0), (1.0 / factor, 1.0), (factor, 1.0 / factor)] {
                    let mut tried = best.to_vec();
                    tried[first] = (tried[first] * one).min(DEEPEST);
                    if second != first {
                        tried[second] = (tried[second] * other).min(DEEPEST);
                    }
                    let this = off(&tried);
                    if this < *least {
                        *least = this;
                        best.copy_from_slice(&tried);
                        better = true;
                    }
                }
            }
        }
        if !better {
            factor = 1.0 + (factor - 1.0) / 2.0;
        }
    }
}
