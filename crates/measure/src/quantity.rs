//! The physical quantities of the bench, as types: a length cannot be added to a weight.
//!
//! What it is: names for the `uom` quantities this house uses, and the textile units `uom` lacks.
//! What it is not: what a person typed (see `typed`) or which unit a screen shows (see `unit`).

pub use uom::si::f64::{
    Area, ArealNumberDensity, Length, LinearMassDensity, LinearNumberDensity, Mass, MassDensity, Ratio,
    TemperatureInterval, ThermodynamicTemperature, Time, Volume,
};

/// Units to construct and read quantities with, one module per quantity.
pub mod units {
    pub use uom::si::area::{square_centimeter, square_inch, square_meter, square_millimeter};
    pub use uom::si::areal_number_density::{per_square_centimeter, per_square_meter};
    pub use uom::si::length::{centimeter, inch, meter, micrometer, millimeter};
    pub use uom::si::linear_mass_density::kilogram_per_meter;
    pub use uom::si::linear_number_density::{per_centimeter, per_meter};
    pub use uom::si::mass::{gram, kilogram, milligram, ounce};
    pub use uom::si::mass_density::gram_per_cubic_centimeter;
    pub use uom::si::ratio::{percent, ratio};
    pub use uom::si::temperature_interval::kelvin;
    pub use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};
    pub use uom::si::time::{hour, minute, second};
    pub use uom::si::volume::{cubic_meter, liter, milliliter};

    pub use super::fineness::{decitex, denier};
}

mod fineness {
    uom::unit! {
        system: uom::si;
        quantity: uom::si::linear_mass_density;

        /// Decitex: 1 g in 10 km of yarn or fibre (the tex system, ISO 1144).
        @decitex: 1.0e-7; "dtex", "decitex", "decitex";
        /// Denier: 1 g in 9 km.
        @denier: 1.0 / 9.0e6; "den", "denier", "denier";
    }
}
