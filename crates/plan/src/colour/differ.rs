//! How far two colours lie apart, in words first.
//!
//! What it is: CIEDE2000 (by `palette`) with what it means at a bench, and which way the one differs from the other.
//! What it is not: finer than its input: a phone photo is good for some units at best.

use libm::{fabs, sqrt};
use measure::say::{Arg, Say};
use palette::{IntoColor, Lab, Lch, color_difference::Ciede2000, white_point::D65};

use super::light::Light;

/// A difference of two colours.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// CIEDE2000.
    pub amount: f64,
    /// What it means and which way it goes, in words.
    pub words: Say,
}

/// How much shows: up to so many units, key of the words. Common practice in judging dyeings, no single source: about 1 is
/// the least a practised eye sees side by side, 2 is passed in most trades, 5 is seen by anybody.
const MEANS: [(f64, &str); 4] =
    [(1.0, "colour.same"), (2.5, "colour.close"), (5.0, "colour.seen"), (20.0, "colour.clear")];
/// A part of a difference smaller than this is not named.
const NAMED: f64 = 0.8;

/// CIEDE2000 of two colours.
pub fn ciede2000(a: Light, b: Light) -> f64 {
    a.lab().difference(b.lab())
}

/// How `got` differs from `wanted`.
pub fn difference(wanted: Light, got: Light) -> Difference {
    let (wanted, got) = (wanted.lab(), got.lab());
    let amount: f64 = got.difference(wanted);
    let means = MEANS.iter().find(|(most, _)| amount < *most).map_or("colour.other", |(_, key)| key);
    let ways = ways(wanted, got);
    let words = if amount < MEANS[0].0 || ways.is_empty() {
        Say::key(means)
    } else {
        let mut ways = ways.into_iter();
        let first = ways.next().map_or_else(|| Say::key("colour.other"), Say::key);
        let said = match ways.next() {
            Some(second) => Say::new("colour.two_ways", [Arg::from(first), Arg::Key(second)]),
            None => first,
        };
        Say::new("colour.means_way", [Arg::Key(means), said.into()])
    };
    Difference { amount, words }
}

/// At most two ways in which a colour differs, the larger first.
fn ways(wanted: Lab<D65, f64>, got: Lab<D65, f64>) -> Vec<&'static str> {
    let chroma = |lab: Lab<D65, f64>| -> f64 {
        let lch: Lch<D65, f64> = lab.into_color();
        lch.chroma
    };
    let lighter = got.l - wanted.l;
    let stronger = chroma(got) - chroma(wanted);
    let (red, yellow) = (got.a - wanted.a, got.b - wanted.b);
    // What is left of the way across a and b once its change of strength is taken out is a change of hue.
    let across = red * red + yellow * yellow - stronger * stronger;
    let hue = if across > 0.0 { sqrt(across) } else { 0.0 };
    let pick = |amount: f64, up: &'static str, down: &'static str| if amount > 0.0 { up } else { down };
    let hue_way = if fabs(red) >= fabs(yellow) {
        pick(red, "colour.redder", "colour.greener")
    } else {
        pick(yellow, "colour.yellower", "colour.bluer")
    };
    let mut all = [
        (fabs(lighter), pick(lighter, "colour.lighter", "colour.darker")),
        (hue, hue_way),
        // Strong colours bear more change of strength before the eye minds.
        (fabs(stronger) / (1.0 + 0.045 * chroma(wanted)), pick(stronger, "colour.brighter", "colour.duller")),
    ];
    measure::order::sort_by(&mut all, &|a, b| b.0.total_cmp(&a.0));
    all.into_iter().filter(|(amount, _)| *amount >= NAMED).take(2).map(|(_, way)| way).collect()
}
