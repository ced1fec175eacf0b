//! Hot water and steam: where water boils at a height, what steam mixed with air gives, what pouring leaves.
//!
//! What it is: IAPWS-IF97's saturation line (region 4), the standard atmosphere of ISO 2533, a heat balance.
//! What it is not: the weather, which moves the boiling point by 0.8 K either way.

use measure::quantity::{Length, ThermodynamicTemperature, units};
use uom::si::thermodynamic_temperature::kelvin;

/// IAPWS R7-97, table 34: coefficients of equations 29 to 31.
const N: [f64; 10] = [
    0.116_705_214_527_67e4,
    -0.724_213_167_032_06e6,
    -0.170_738_469_400_92e2,
    0.120_208_247_024_70e5,
    -0.323_255_503_223_33e7,
    0.149_151_086_135_30e2,
    -0.482_326_573_615_91e4,
    0.405_113_405_420_57e6,
    -0.238_555_575_678_49,
    0.650_175_348_447_98e3,
];

/// Pressures of the saturation line, Pa.
const LINE: (f64, f64) = (611.213, 22.064e6);
/// Its temperatures, K.
const LINE_HEAT: (f64, f64) = (273.15, 647.096);

/// Where water boils under a pressure in Pa; nothing beyond the line.
pub fn boils_under(pascal: f64) -> Option<ThermodynamicTemperature> {
    if !(pascal >= LINE.0 && pascal <= LINE.1) {
        return None;
    }
    let beta = libm::sqrt(libm::sqrt(pascal / 1.0e6));
    let e = beta * beta + N[2] * beta + N[5];
    let f = N[0] * beta * beta + N[3] * beta + N[6];
    let g = N[1] * beta * beta + N[4] * beta + N[7];
    let d = 2.0 * g / (-f - libm::sqrt(f * f - 4.0 * e * g));
    let sum = N[9] + d;
    let heat = (sum - libm::sqrt(sum * sum - 4.0 * (N[8] + N[9] * d))) / 2.0;
    Some(ThermodynamicTemperature::new::<kelvin>(heat))
}

/// The pressure in Pa under which water boils at a temperature; nothing beyond the line.
pub fn vapour_pressure(heat: ThermodynamicTemperature) -> Option<f64> {
    let heat = heat.value;
    if !(heat >= LINE_HEAT.0 && heat <= LINE_HEAT.1) {
        return None;
    }
    let theta = heat + N[8] / (heat - N[9]);
    let a = theta * theta + N[0] * theta + N[1];
    let b = N[2] * theta * theta + N[3] * theta + N[4];
    let c = N[5] * theta * theta + N[6] * theta + N[7];
    let root = 2.0 * c / (-b + libm::sqrt(b * b - 4.0 * a * c));
    Some(root * root * root * root * 1.0e6)
}

/// Pressure of the standard atmosphere at a height above the sea, Pa (ISO 2533, lowest layer, 11 km and no more).
pub fn pressure_at(height: Length) -> Option<f64> {
    let metres = height.get::<units::meter>();
    if !(-5000.0..=11000.0).contains(&metres) {
        return None;
    }
    let (ground, lapse, gravity, gas) = (288.15, 0.0065, 9.80665, 287.052_87);
    Some(101_325.0 * libm::pow(1.0 - lapse * metres / ground, gravity / (gas * lapse)))
}

/// Where water boils at a height.
pub fn boils_at(height: Length) -> Option<ThermodynamicTemperature> {
    boils_under(pressure_at(height)?)
}

/// The dew point of steam mixed with a share of air: as hot as it can make what it condenses on.
pub fn moist_steam(air: f64, height: Length) -> Option<ThermodynamicTemperature> {
    if !(0.0..1.0).contains(&air) {
        return None;
    }
    boils_under((1.0 - air) * pressure_at(height)?)
}

/// The share of air with which steam condenses at a temperature; nothing where even pure steam is cooler.
pub fn air_for(heat: ThermodynamicTemperature, height: Length) -> Option<f64> {
    let share = 1.0 - vapour_pressure(heat)? / pressure_at(height)?;
    (share >= 0.0).then_some(share)
}

/// What is put together when water is poured over wet fibre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pour {
    /// Water, kg.
    pub water: f64,
    /// Its temperature.
    pub heat: f64,
    /// Fibre, kg.
    pub fibre: f64,
    /// Specific heat of fibre, J/(kg K).
    pub specific_heat: f64,
    /// Water that the fibre carries already, in its own weights.
    pub carries: f64,
    /// Temperature of the wet fibre.
    pub cool: f64,
}

impl Pour {
    /// Where it ends, before the bowl cools. Bowl and block take heat too: the real one is a little lower.
    pub fn mixed(&self) -> f64 {
        let hot = self.water * record::trade::soaking::WATER_HEAT;
        let cool = self.fibre * (self.specific_heat + self.carries * record::trade::soaking::WATER_HEAT);
        (hot * self.heat + cool * self.cool) / (hot + cool)
    }
}
