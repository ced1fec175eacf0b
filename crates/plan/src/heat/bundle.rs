//! A bundle of fibre as one stuff: what it conducts and what heat it holds.
//!
//! What it is: Rayleigh's formula for round fibres across the flow of heat, to first order. What it is not: heat along fibres,
//! or what flows between them.

use record::trade::soaking::{AIR_CONDUCTS, AIR_HOLDS, Stuff, WATER_CONDUCTS, WATER_HOLDS};

/// A bundle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bundle {
    /// W/(m K).
    pub conductivity: f64,
    /// J/(m³ K).
    pub holds: f64,
}

/// A bundle of which a share is fibre and the rest air, or water.
pub fn bundle(stuff: &Stuff, packed: f64, wet: bool) -> Bundle {
    let (conducts, holds) = if wet { (WATER_CONDUCTS, WATER_HOLDS) } else { (AIR_CONDUCTS, AIR_HOLDS) };
    let (sum, difference) = (stuff.conductivity + conducts, stuff.conductivity - conducts);
    Bundle {
        conductivity: conducts * (sum + packed * difference) / (sum - packed * difference),
        holds: packed * stuff.density * stuff.specific_heat + (1.0 - packed) * holds,
    }
}
