//! One bath: what goes in, how deep, how it comes out by the model.
//!
//! What it is: the joint of colour, fibre and water for one colour of the look. What it is not: the order of baths.

use measure::{
    quantity::{Mass, ThermodynamicTemperature, units},
    say::Say,
};
use record::{
    trade::dye::{Bath, Class, Takes, uptake},
    workshop::dyes::{Dose, Dye},
};

use super::{
    amounts::{DyePart, Recipe, as_solution, dye},
    curve::Leg,
    dips::Dipping,
    hair::Hair,
    order::{Dip, Stretch},
};
use crate::{
    colour::{
        Absorbs, Difference, Light, Proposal, Strength, Trust, difference, propose,
        strength::{fitted, told_by, untried},
    },
    working::Line,
};

/// A bath, planned.
#[derive(Clone, Debug, PartialEq)]
pub struct BathPlan {
    /// Which one, from 1.
    pub number: usize,
    /// The colour wanted.
    pub wanted: Light,
    /// The nearest this base can become.
    pub aim: Light,
    /// How that differs from what is wanted.
    pub reach: Difference,
    /// The colour it starts from.
    pub from: Light,
    /// What goes in.
    pub stretches: Vec<Stretch>,
    /// The dyes.
    pub dyes: Vec<DyePart>,
    /// What comes out, by the model.
    pub makes: Light,
    /// How that differs from what is wanted.
    pub off: Difference,
    /// Fibre, water, acid.
    pub recipe: Recipe,
    /// How hot it is held.
    pub held: ThermodynamicTemperature,
    /// The curve.
    pub legs: Vec<Leg>,
    /// The water line, where ends are dipped.
    pub dipping: Option<Dipping>,
    /// What to do, in order.
    pub steps: Vec<Say>,
    /// The working.
    pub working: Vec<Line>,
}

/// The fibre that a class of dye finds in some stretches: all that gets wet, and that of it which takes dye.
pub fn fibre_in(
    hair: &[Hair],
    lengths: &dyn Fn(record::wig::zone::Zone) -> measure::quantity::Length,
    stretches: &[Stretch],
    class: Class,
) -> (Mass, Mass) {
    let mut wet = Mass::new::<units::gram>(0.0);
    let mut takes = wet;
    for stretch in stretches {
        let long = lengths(stretch.zone);
        for one in hair.iter().filter(|one| one.zone == stretch.zone) {
            // What is longer than the zone's mean hangs in with the ends.
            let to = if stretch.to >= 1.0 { one.longest.max(long) } else { long * stretch.to };
            let mass = one.between(long * stretch.from, to);
            wet += mass;
            if matches!(uptake(one.fibre, class).takes, Takes::Takes | Takes::Weak | Takes::Untested) {
                takes += mass;
            }
        }
    }
    (wet, takes)
}

/// A dye that may go in, with its strength.
#[derive(Clone, Debug, PartialEq)]
pub struct Candidate<'a> {
    /// The lot; nothing for "a dye of that colour".
    pub dye: Option<&'a Dye>,
    /// Its strength.
    pub strength: Strength,
}

/// The dyes that may go into a bath: those meant for this wig, of its class; else one of just the right hue.
pub fn candidates<'a>(
    dyes: &[&'a Dye],
    locks: &[record::workshop::colour_locks::ColourLock],
    fibre: &str,
    base: Light,
    dip: &Dip,
) -> Vec<Candidate<'a>> {
    let lacking = dip.from.absorbs().lacking(dip.aim.absorbs());
    let mut all: Vec<Candidate<'a>> = dyes
        .iter()
        .map(|dye| {
            let told = told_by(locks, dye, fibre, Some(base));
            let hue = dye.shade.map_or(lacking, |shade| Light::of(shade).absorbs());
            Candidate { dye: Some(dye), strength: fitted(&told).unwrap_or_else(|| untried(hue)) }
        })
        .collect();
    if all.is_empty() {
        all.push(Candidate { dye: None, strength: untried(lacking) });
    }
    all
}

/// More dyes are taken only where they come nearer by this much.
const WORTH: f64 = 1.0;
/// No more dyes than this are tried together, so that the page stays quick.
const TRIED: usize = 5;

/// The fewest dyes that come nearest: which, and how deep.
pub fn choose(candidates: &[Candidate<'_>], from: Light, aim: Light) -> (Vec<usize>, Proposal) {
    let each: Vec<Absorbs> = candidates.iter().take(TRIED).map(|one| one.strength.each).collect();
    let mut best: Option<(Vec<usize>, Proposal)> = None;
    for many in 1..=each.len().min(3) {
        let mut nearest: Option<(Vec<usize>, Proposal)> = None;
        for picked in picks(each.len(), many) {
            let dyes: Vec<Absorbs> = picked.iter().filter_map(|index| each.get(*index).copied()).collect();
            let proposal = propose(from, aim, &dyes);
            if nearest.as_ref().is_none_or(|(_, other)| proposal.off.amount < other.off.amount) {
                nearest = Some((picked, proposal));
            }
        }
        if let Some(found) = nearest
            && best.as_ref().is_none_or(|(_, other)| found.1.off.amount < other.off.amount - WORTH)
        {
            best = Some(found);
        }
    }
    best.unwrap_or_else(|| {
        let off = difference(aim, from);
        (Vec::new(), Proposal { percent: Vec::new(), makes: from, off })
    })
}

/// Every choice of so many out of a row.
fn picks(of: usize, many: usize) -> Vec<Vec<usize>> {
    if many == 0 {
        return vec![Vec::new()];
    }
    let mut all = Vec::new();
    for first in 0..of {
        for mut rest in picks(first, many - 1) {
            rest.push(first);
            all.push(rest);
        }
    }
    all
}

/// The dyes of a bath as they are weighed.
pub fn parts(candidates: &[Candidate<'_>], picked: &[usize], percent: &[f64], takes: Mass) -> Vec<DyePart> {
    let mut parts = Vec::new();
    for (index, percent) in picked.iter().zip(percent) {
        let Some(candidate) = candidates.get(*index).filter(|_| *percent > 0.0) else { continue };
        let (weaker, stronger) = candidate.strength.spread;
        let percents = [percent / stronger, *percent, percent / weaker];
        let liquid = candidate.dye.is_some_and(|dye| dye.liquid);
        let grams = percents.map(|percent| dye(takes, percent));
        let cap = candidate.dye.map(|dye| dye.cap.get::<units::milliliter>()).filter(|cap| *cap > 0.0);
        parts.push(DyePart {
            lot: candidate.dye.map(|dye| dye.id),
            name: candidate.dye.map(|dye| dye.name.clone()).unwrap_or_default(),
            percent: percents,
            dose: grams.map(|grams| Dose::new(liquid, grams)),
            caps: cap.filter(|_| liquid).map(|cap| grams[1] / cap),
            solution: if liquid { None } else { as_solution(grams[1]) },
            on_shelf: candidate.dye.and_then(|dye| dye.left).map(|left| left.parts),
            locks: match candidate.strength.trust {
                Trust::Fitted { locks, .. } => locks,
                Trust::OneLock { .. } => 1,
                Trust::Untried => 0,
            },
        });
    }
    parts
}

/// How hot a bath is held: as the person says, else as the fibre likes it, never above what anything in it bears.
pub fn held(bath: &Bath, said: Option<ThermodynamicTemperature>, most: Option<f64>) -> f64 {
    let wanted = said.map_or(bath.temperature.likely, |heat| heat.get::<units::degree_celsius>());
    most.map_or(wanted, |most| wanted.min(most))
}
