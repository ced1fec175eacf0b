//! The units a person chose once, and numbers shown in them.
//!
//! What it is: cm or in, °C or °F, g or oz, a currency sign; the only place that rounds for the eye.
//! What it is not: stored values: what was typed stays as typed.

use crate::{
    decimal,
    money::Money,
    quantity::{
        Area, ArealNumberDensity, Length, LinearMassDensity, LinearNumberDensity, Mass, ThermodynamicTemperature, Time,
        Volume, units,
    },
    unit::{Kind, Unit},
};

/// Units of length.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Lengths {
    /// Centimetres and millimetres.
    #[default]
    Metric,
    /// Inches.
    Inches,
}

/// Units of weight.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Weights {
    /// Grams.
    #[default]
    Grams,
    /// Ounces.
    Ounces,
}

/// Units of temperature.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Degrees {
    /// °C
    #[default]
    Celsius,
    /// °F
    Fahrenheit,
    /// °C with °F beside it, for paper that anybody may read; a bare number is °C.
    Both,
}

/// What the person chose.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Prefs {
    /// Lengths in.
    pub lengths: Lengths,
    /// Weights in.
    pub weights: Weights,
    /// Temperatures in.
    pub degrees: Degrees,
    /// Sign of the currency, up to four characters.
    pub currency: String,
}

impl Default for Prefs {
    fn default() -> Prefs {
        Prefs {
            lengths: Lengths::Metric, weights: Weights::Grams, degrees: Degrees::Celsius, currency: "€".to_owned()
        }
    }
}

impl Prefs {
    /// The unit a bare number of this kind is taken to be in.
    pub fn usual(&self, kind: Kind) -> Unit {
        match kind {
            Kind::Length => match self.lengths {
                Lengths::Metric => Unit::Centimetre,
                Lengths::Inches => Unit::Inch,
            },
            Kind::Mass => match self.weights {
                Weights::Grams => Unit::Gram,
                Weights::Ounces => Unit::Ounce,
            },
            Kind::Temperature => match self.degrees {
                Degrees::Celsius | Degrees::Both => Unit::Celsius,
                Degrees::Fahrenheit => Unit::Fahrenheit,
            },
            Kind::Fineness => Unit::Decitex,
            Kind::Time => Unit::Minute,
            Kind::StrandsPerArea => match self.lengths {
                Lengths::Metric => Unit::PerSquareCentimetre,
                Lengths::Inches => Unit::PerSquareInch,
            },
            Kind::StrandsPerLength => match self.lengths {
                Lengths::Metric => Unit::PerCentimetre,
                Lengths::Inches => Unit::PerInch,
            },
            Kind::Share => Unit::Percent,
            Kind::Times => Unit::Times,
            Kind::Volume => Unit::Millilitre,
        }
    }

    /// A plain number, trailing zeros dropped.
    pub fn number(&self, number: f64, decimals: usize) -> String {
        let text = decimal::trimmed(number, decimals);
        if text == "-0" { "0".to_owned() } else { text }
    }

    fn shown(&self, base: f64, unit: Unit, decimals: usize) -> String {
        format!("{} {}", self.number(unit.from_base(base), decimals), unit.symbol())
    }

    /// A length of a head, a row or a fibre.
    pub fn length(&self, length: Length) -> String {
        self.shown(length.get::<units::meter>(), self.usual(Kind::Length), 1)
    }

    /// A small gap.
    pub fn gap(&self, length: Length) -> String {
        match self.lengths {
            Lengths::Metric => self.shown(length.get::<units::meter>(), Unit::Millimetre, 0),
            Lengths::Inches => self.shown(length.get::<units::meter>(), Unit::Inch, 2),
        }
    }

    /// A length of weft off the pack.
    pub fn run(&self, length: Length) -> String {
        match self.lengths {
            Lengths::Metric => self.shown(length.get::<units::meter>(), Unit::Metre, 2),
            Lengths::Inches => self.shown(length.get::<units::meter>(), Unit::Inch, 0),
        }
    }

    /// A weight.
    pub fn mass(&self, mass: Mass) -> String {
        let decimals = match self.weights {
            Weights::Grams => 0,
            Weights::Ounces => 1,
        };
        self.shown(mass.get::<units::kilogram>(), self.usual(Kind::Mass), decimals)
    }

    /// A small weight, as one weighs dye: hundredths below 10 g.
    pub fn dose(&self, mass: Mass) -> String {
        let decimals = match self.weights {
            Weights::Grams if mass.get::<units::gram>() < 10.0 => 2,
            Weights::Grams => 1,
            Weights::Ounces => 3,
        };
        self.shown(mass.get::<units::kilogram>(), self.usual(Kind::Mass), decimals)
    }

    /// A volume: litres from one upwards, else millilitres.
    pub fn volume(&self, volume: Volume) -> String {
        let base = volume.get::<units::cubic_meter>();
        let litres = Unit::Litre.from_base(base);
        match litres {
            _ if litres >= 0.9995 => self.shown(base, Unit::Litre, 1),
            _ if litres >= 0.01 => self.shown(base, Unit::Millilitre, 0),
            _ => self.shown(base, Unit::Millilitre, 1),
        }
    }

    /// The area of a zone: cm² or in².
    pub fn area(&self, area: Area) -> String {
        match self.lengths {
            Lengths::Metric => format!("{} cm²", self.number(area.get::<units::square_centimeter>(), 0)),
            Lengths::Inches => format!("{} in²", self.number(area.get::<units::square_inch>(), 1)),
        }
    }

    /// A temperature, to the degree.
    pub fn temperature(&self, heat: ThermodynamicTemperature) -> String {
        let first = self.shown(heat.value, self.usual(Kind::Temperature), 0);
        if self.degrees == Degrees::Both {
            format!("{first} ({})", self.shown(heat.value, Unit::Fahrenheit, 0))
        } else {
            first
        }
    }

    /// Hours and minutes.
    pub fn time(&self, time: Time) -> String {
        let minutes = libm::round(time.get::<units::minute>()) as i64;
        match (minutes / 60, minutes % 60) {
            (0, minutes) => format!("{minutes} min"),
            (hours, 0) => format!("{hours} h"),
            (hours, minutes) => format!("{hours} h {minutes} min"),
        }
    }

    /// Fibre fineness.
    pub fn fineness(&self, fineness: LinearMassDensity) -> String {
        self.shown(fineness.get::<units::kilogram_per_meter>(), Unit::Decitex, 0)
    }

    /// Strands per area.
    pub fn fullness(&self, fullness: ArealNumberDensity) -> String {
        self.shown(fullness.get::<units::per_square_meter>(), self.usual(Kind::StrandsPerArea), 0)
    }

    /// Strands per length of weft.
    pub fn strands(&self, strands: LinearNumberDensity) -> String {
        self.shown(strands.get::<units::per_meter>(), self.usual(Kind::StrandsPerLength), 0)
    }

    /// Money with the chosen sign.
    pub fn money(&self, money: Money) -> String {
        format!("{}{}", self.currency, money.plain())
    }
}
