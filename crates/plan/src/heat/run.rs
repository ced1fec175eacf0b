//! A soak run until something is reached.
//!
//! What it is: steps that grow with time, the moment interpolated. What it is not: a decision.

use super::soak::{Outside, Soak};

/// A moment of the curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// Since the beginning, s.
    pub time: f64,
    /// The coolest of the fibre, °C.
    pub low: f64,
    /// The hottest of the fibre, °C.
    pub high: f64,
}

/// Each step is so much of the time gone by, and no shorter than so many s.
const GROWS: f64 = 0.03;
const SHORTEST: f64 = 0.02;

fn sample(soak: &Soak, outside: &Outside, since: f64) -> Sample {
    let (low, high) = soak.range(outside);
    Sample { time: since + soak.time(), low, high }
}

/// Runs until `lacks` is no longer above zero; nothing where that takes longer than `most` s.
pub fn until(
    soak: &mut Soak,
    outside: &Outside,
    most: f64,
    lacks: &dyn Fn(&Sample) -> f64,
    since: f64,
    samples: &mut Vec<Sample>,
) -> Option<f64> {
    let mut before = sample(soak, outside, since);
    samples.push(before);
    if lacks(&before) <= 0.0 {
        return Some(soak.time());
    }
    while soak.time() < most {
        let at = soak.time();
        soak.step((at * GROWS).max(SHORTEST), outside);
        let now = sample(soak, outside, since);
        samples.push(now);
        let (left, right) = (lacks(&before), lacks(&now));
        if right <= 0.0 {
            return Some(at + (soak.time() - at) * left / (left - right));
        }
        before = now;
    }
    None
}

/// Runs for some time more.
pub fn on(soak: &mut Soak, outside: &Outside, time: f64, samples: &mut Vec<Sample>) {
    let steps = if time > 0.0 { 24 } else { 0 };
    for _ in 0..steps {
        soak.step(time / f64::from(steps), outside);
        samples.push(sample(soak, outside, 0.0));
    }
}
