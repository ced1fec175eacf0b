//! The bath's temperature over time: wet out, warm up, hold, cool in the pot, lift.
//!
//! What it is: points of a curve and the minutes of each part. What it is not: a controller: stir and read the thermometer.

use measure::quantity::{ThermodynamicTemperature, Time, units};
use record::trade::{
    bath::{COOL, LIFT, QUICK_FROM, RAMP, START, WET_OUT},
    dye::Bath,
};

/// What happens on a part of the curve.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Wetting out, before the dye.
    WetOut,
    /// Warming up.
    Warm,
    /// Warming up where fibre takes dye quickly.
    WarmSlowly,
    /// Holding.
    Hold,
    /// Cooling in the pot.
    Cool,
}

impl Part {
    /// Key of its label.
    pub fn label(self) -> &'static str {
        match self {
            Part::WetOut => "dye.part_wet_out",
            Part::Warm => "dye.part_warm",
            Part::WarmSlowly => "dye.part_warm_slowly",
            Part::Hold => "dye.part_hold",
            Part::Cool => "dye.part_cool",
        }
    }
}

/// A part of the curve: from the end of the part before to its own end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leg {
    /// What happens.
    pub part: Part,
    /// How long.
    pub time: Time,
    /// Where it begins.
    pub from: ThermodynamicTemperature,
    /// Where it ends.
    pub to: ThermodynamicTemperature,
}

/// The curve of a bath held at a temperature, °C.
pub fn curve(bath: &Bath, held: f64) -> Vec<Leg> {
    // A cool bath starts where it is held.
    let start = START.likely.min(held);
    let mut legs = Vec::new();
    let mut add = |part, minutes: f64, from: f64, to: f64| {
        if minutes > 0.0 {
            let celsius = ThermodynamicTemperature::new::<units::degree_celsius>;
            legs.push(Leg { part, time: Time::new::<units::minute>(minutes), from: celsius(from), to: celsius(to) });
        }
    };
    add(Part::WetOut, WET_OUT.likely, start, start);
    let quick = QUICK_FROM.likely.min(held);
    add(Part::Warm, (quick - start) / RAMP.high, start, quick);
    add(Part::WarmSlowly, (held - quick) / RAMP.likely, quick, held);
    add(Part::Hold, bath.time.likely, held, held);
    let lift = LIFT.likely.min(held);
    add(Part::Cool, (held - lift) / COOL.likely, held, lift);
    legs
}

/// How long the whole takes.
pub fn whole(legs: &[Leg]) -> Time {
    legs.iter().fold(Time::new::<units::minute>(0.0), |sum, leg| sum + leg.time)
}
