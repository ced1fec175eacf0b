//! How heat goes into a wound lock: fibres, packing, contact, rods, holding times.
//!
//! What it is: physical figures, in the units their names say. What it is not: the conduction (see the `plan` room).

use super::{
    fact::{Source, Sure},
    heat::Medium,
    sources::{CONDUCTION_TEXT, FIBRE_CONDUCTION, FIBRE_TABLES, JUDGED, PRACTICE},
};

/// Low, likely and high of a physical figure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Lowest usual.
    pub low: f64,
    /// Likely.
    pub likely: f64,
    /// Highest usual.
    pub high: f64,
    /// Where from.
    pub source: &'static Source,
    /// How sure.
    pub sure: Sure,
}

const fn span(low: f64, likely: f64, high: f64, source: &'static Source, sure: Sure) -> Span {
    Span { low, likely, high, source, sure }
}

/// What fibre is made of, to heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stuff {
    /// Density, kg/m³.
    pub density: f64,
    /// Specific heat, J/(kg K).
    pub specific_heat: f64,
    /// Conductivity across, W/(m K).
    pub conductivity: f64,
    /// Where from.
    pub source: &'static Source,
    /// How sure.
    pub sure: Sure,
}

const fn stuff(density: f64, specific_heat: f64, conductivity: f64, source: &'static Source, sure: Sure) -> Stuff {
    Stuff { density, specific_heat, conductivity, source, sure }
}

/// A row per fibre, in the order of the fibre table; specific heats of modacrylic, chlorofibre, polypropylene and vinylidene
/// and conductivities of modacrylic and vinylidene are judged from their neighbours.
#[rustfmt::skip]
const STUFFS: [Stuff; 8] = [
    stuff(1350.0, 1300.0, 0.20, &JUDGED, Sure::Low),             // unknown
    stuff(1340.0, 1300.0, 0.20, &FIBRE_TABLES, Sure::Medium),    // modacrylic
    stuff(1390.0, 1030.0, 0.14, &FIBRE_TABLES, Sure::High),      // polyester
    stuff(1320.0, 1360.0, 0.20, &FIBRE_CONDUCTION, Sure::High),  // human hair
    stuff(1400.0, 950.0, 0.16, &FIBRE_TABLES, Sure::Medium),     // chlorofibre
    stuff(1140.0, 1430.0, 0.25, &FIBRE_TABLES, Sure::High),      // polyamide
    stuff(910.0, 1800.0, 0.12, &FIBRE_TABLES, Sure::Medium),     // polypropylene
    stuff(1700.0, 1000.0, 0.16, &JUDGED, Sure::Low),             // vinylidene
];

/// What a fibre is made of.
pub fn stuff_of(name: &str) -> &'static Stuff {
    let at = super::fibres::NAMES.iter().position(|one| *one == name).unwrap_or(0);
    STUFFS.get(at).unwrap_or(&STUFFS[0])
}

/// Conductivity of what fills the gaps, W/(m K): air at 40 to 60 °C, water at 80 °C.
pub const AIR_CONDUCTS: f64 = 0.027;
/// Of water.
pub const WATER_CONDUCTS: f64 = 0.67;
/// Heat held by air, J/(m³ K).
pub const AIR_HOLDS: f64 = 1.1e3;
/// Heat held by water, J/(m³ K).
pub const WATER_HOLDS: f64 = 4.18e6;
/// Specific heat of water, J/(kg K).
pub const WATER_HEAT: f64 = 4180.0;

/// The share of a wound lock that is fibre, the rest being air or water.
pub const PACKED: Span = span(0.3, 0.5, 0.6, &JUDGED, Sure::Low);
/// How far a wound lock's thickness is known, as a factor.
pub const THICKNESS: Span = span(0.8, 1.0, 1.25, &JUDGED, Sure::Low);

/// How well a medium hands heat to the outside of a lock, W/(m² K).
pub fn transfer(medium: Medium) -> &'static Span {
    match medium {
        Medium::Water => &WATER,
        Medium::Steam => &STEAM,
        Medium::Dryer => &DRYER,
        Medium::Iron => &IRON,
    }
}

const WATER: Span = span(200.0, 500.0, 1000.0, &CONDUCTION_TEXT, Sure::Medium);
/// Air that steam drew in slows its condensing: far below the textbook's 2500 and more of pure steam.
const STEAM: Span = span(100.0, 500.0, 2500.0, &JUDGED, Sure::Low);
const DRYER: Span = span(25.0, 50.0, 100.0, &CONDUCTION_TEXT, Sure::Medium);
const IRON: Span = span(200.0, 500.0, 2000.0, &JUDGED, Sure::Low);
/// Of still room air, W/(m² K).
pub const ROOM_AIR: Span = span(5.0, 8.0, 15.0, &CONDUCTION_TEXT, Sure::Medium);
/// From rod to lock, W/(m² K).
pub const ROD_CONTACT: Span = span(100.0, 300.0, 1000.0, &JUDGED, Sure::Low);

/// Kinds of rod.
pub const ROD_KINDS: &[&str] = &["plastic_rod", "metal_rod", "wooden_rod", "foam_rod", "heated_rod", "no_rod"];

/// Heat that a kind of rod holds, J/K for each m² of its face: wall or half its radius, by density and specific heat.
pub fn rod_holds(kind: &str, diameter: f64) -> f64 {
    match kind {
        // A tube of 1 mm aluminium: 2700 kg/m³, 900 J/(kg K).
        "metal_rod" => 2700.0 * 900.0 * 1.0e-3,
        // Solid wood: 650 kg/m³, 1600 J/(kg K).
        "wooden_rod" => 650.0 * 1600.0 * diameter / 4.0,
        // Foam: 30 kg/m³, 1400 J/(kg K).
        "foam_rod" => 30.0 * 1400.0 * diameter / 4.0,
        // A tube of 1.5 mm plastic: 950 kg/m³, 1900 J/(kg K).
        _ => 950.0 * 1900.0 * 1.5e-3,
    }
}
/// How sure [`rod_holds`] is: densities and specific heats recalled from handbooks, walls judged.
pub const ROD_SOURCE: &Source = &JUDGED;

/// The room, °C.
pub const ROOM: Span = span(18.0, 20.0, 25.0, &JUDGED, Sure::Medium);

/// How long the middle is held at heat once it is there, s; drying is another matter.
pub fn hold(medium: Medium) -> &'static Span {
    match medium {
        Medium::Water | Medium::Steam | Medium::Dryer => &HOLD_WET,
        Medium::Iron => &HOLD_IRON,
    }
}

const HOLD_WET: Span = span(60.0, 120.0, 300.0, &PRACTICE, Sure::Low);
const HOLD_IRON: Span = span(8.0, 10.0, 15.0, &PRACTICE, Sure::Medium);

/// The longest an iron stays on one section, s.
pub const IRON_AT_MOST: Span = span(15.0, 20.0, 30.0, &PRACTICE, Sure::Low);

/// Water that wet fibre carries, in its own weights.
pub const CARRIES: Span = span(0.5, 1.0, 1.5, &PRACTICE, Sure::Low);
/// How fast poured water cools in its bowl, K a minute.
pub const BOWL_COOLS: Span = span(0.5, 1.0, 2.0, &JUDGED, Sure::Low);
/// The share of air in open steam where it meets the lock.
pub const STEAM_AIR: Span = span(0.1, 0.3, 0.6, &JUDGED, Sure::Low);

/// Drying of a set, s: with warm air, and left overnight.
pub const DRIES_WARM: Span = span(7200.0, 10800.0, 14400.0, &PRACTICE, Sure::Medium);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::fibres::NAMES;

    #[test]
    fn every_fibre_has_a_row_and_spans_are_in_order() {
        assert_eq!(STUFFS.len(), NAMES.len());
        let all =
            [PACKED, THICKNESS, WATER, STEAM, DRYER, IRON, ROOM_AIR, ROD_CONTACT, ROOM, HOLD_WET, HOLD_IRON, CARRIES];
        assert!(all.iter().all(|one| one.low <= one.likely && one.likely <= one.high));
    }
}
