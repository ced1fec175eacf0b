//! How strong a person's own dye is, from their own test locks.
//!
//! What it is: what 1 % of it on the weight of fibre absorbs, fitted band by band to what locks added, and how well they agree.
//! What it is not: a promise beyond the depths that were tried: fibre fills up.

use record::{
    trade::bath::STRENGTH,
    workshop::{colour_locks::ColourLock, dyes::Dye},
};

use super::{
    differ::ciede2000,
    light::{Absorbs, Light},
    mix::dyed,
};

/// On what ground a strength stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Trust {
    /// Two or more locks of this fibre.
    Fitted {
        /// How many.
        locks: usize,
        /// The worst CIEDE2000 between a lock and what the fit says of it.
        worst: f64,
        /// The deepest that was tried, as a share.
        deepest: f64,
    },
    /// One lock only.
    OneLock {
        /// Its depth.
        depth: f64,
    },
    /// Nobody tried it: its hue from its label or from what is wanted, its strength from the trade.
    Untried,
}

/// What 1 % of a dye on the weight of fibre absorbs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// Likely.
    pub each: Absorbs,
    /// How many times weaker and stronger it may be.
    pub spread: (f64, f64),
    /// On what ground.
    pub trust: Trust,
}

/// How far a fit may be off either way, as a factor. Our own judgement, no source: a second weighing of a small lock.
const FITTED_WITHIN: f64 = 1.2;
/// The same from one lock.
const ONE_WITHIN: f64 = 1.5;

/// Of a dye that nobody tried: a hue, of the trade's usual strength where it absorbs most.
pub fn untried(absorbs: Absorbs) -> Strength {
    let most = absorbs.most();
    let scale = if most > 0.0 { STRENGTH.likely / most } else { 0.0 };
    Strength {
        each: Absorbs(absorbs.0.map(|band| band * scale)),
        spread: (STRENGTH.low / STRENGTH.likely, STRENGTH.high / STRENGTH.likely),
        trust: Trust::Untried,
    }
}

/// What a lock tells: depth, colour before, colour after.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Told {
    /// Dye on the weight of fibre, percent.
    pub percent: f64,
    /// Before.
    pub before: Light,
    /// After.
    pub after: Light,
}

/// The strength fitted to what locks told; nothing where none told anything.
///
/// Each band by least squares through nothing-for-nothing, each lock weighted by one over its own K/S, so that dark locks,
/// whose K/S runs up steeply, do not drown the pale ones.
pub fn fitted(told: &[Told]) -> Option<Strength> {
    let told: Vec<&Told> = told.iter().filter(|one| one.percent > 0.0).collect();
    let first = told.first()?;
    let mut each = Absorbs([0.0; 3]);
    for band in 0..3 {
        let (mut above, mut below) = (0.0, 0.0);
        for one in &told {
            let (before, after) = (one.before.absorbs().0[band], one.after.absorbs().0[band]);
            let weight = 1.0 / ((0.1 + after) * (0.1 + after));
            above += weight * one.percent * (after - before);
            below += weight * one.percent * one.percent;
        }
        each.0[band] = if below > 0.0 { (above / below).max(0.0) } else { 0.0 };
    }
    let (trust, within) = if told.len() == 1 {
        (Trust::OneLock { depth: first.percent / 100.0 }, ONE_WITHIN)
    } else {
        let worst =
            told.iter().map(|one| ciede2000(dyed(one.before, &[(each, one.percent)]), one.after)).fold(0.0, f64::max);
        let deepest = told.iter().map(|one| one.percent).fold(0.0, f64::max) / 100.0;
        (Trust::Fitted { locks: told.len(), worst, deepest }, FITTED_WITHIN)
    };
    Some(Strength { each, spread: (1.0 / within, within), trust })
}

/// The locks of a dye on a fibre; those whose colour before nobody told are taken to start from `base`.
pub fn told_by(locks: &[ColourLock], dye: &Dye, fibre: &str, base: Option<Light>) -> Vec<Told> {
    locks
        .iter()
        .filter(|lock| lock.dye == dye.id && lock.fibre.name == fibre)
        .filter_map(|lock| {
            let before = lock.before.map(Light::of).or(base)?;
            Some(Told { percent: lock.depth * 100.0, before, after: Light::of(lock.after) })
        })
        .collect()
}
