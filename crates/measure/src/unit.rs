//! The units people type and read, in one table.
//!
//! What it is: symbols, accepted spellings and conversion of each unit to its SI base.
//! What it is not: a choice of unit (see `prefs`) or a number's limits (see `limit`).

/// What a number measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// A length; base metre.
    Length,
    /// A mass (the trade says weight); base kilogram.
    Mass,
    /// A temperature; base kelvin.
    Temperature,
    /// Linear density of fibre, its fineness; base kilogram per metre.
    Fineness,
    /// A duration; base second.
    Time,
    /// Strands on an area; base per square metre.
    StrandsPerArea,
    /// Strands on a length of weft; base per metre.
    StrandsPerLength,
    /// A share; base 1.
    Share,
    /// How many times as much; base 1.
    Times,
    /// A volume; base cubic metre.
    Volume,
}

/// A unit that can be typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Unit {
    /// mm
    Millimetre,
    /// cm
    Centimetre,
    /// m
    Metre,
    /// in
    Inch,
    /// g
    Gram,
    /// kg
    Kilogram,
    /// oz (avoirdupois)
    Ounce,
    /// °C
    Celsius,
    /// °F
    Fahrenheit,
    /// dtex
    Decitex,
    /// den
    Denier,
    /// min
    Minute,
    /// h
    Hour,
    /// strands per cm²
    PerSquareCentimetre,
    /// strands per square inch
    PerSquareInch,
    /// strands per cm of weft
    PerCentimetre,
    /// strands per inch of weft
    PerInch,
    /// %
    Percent,
    /// times as much
    Times,
    /// mL
    Millilitre,
    /// L
    Litre,
}

struct Row {
    unit: Unit,
    kind: Kind,
    symbol: &'static str,
    spellings: &'static [&'static str],
    factor: f64,
    offset: f64,
}

const fn row(unit: Unit, kind: Kind, symbol: &'static str, spellings: &'static [&'static str], factor: f64) -> Row {
    Row { unit, kind, symbol, spellings, factor, offset: 0.0 }
}

/// Factors: the inch (25.4 mm) and the avoirdupois ounce (28.349523125 g) are exact by the
/// international yard and pound agreement of 1959; the rest are SI and ISO 1144 (tex system).
#[rustfmt::skip]
const TABLE: &[Row] = &[
    row(Unit::Millimetre, Kind::Length, "mm", &["mm"], 1e-3),
    row(Unit::Centimetre, Kind::Length, "cm", &["cm"], 1e-2),
    row(Unit::Metre, Kind::Length, "m", &["m"], 1.0),
    row(Unit::Inch, Kind::Length, "in", &["in", "inch", "inches", "\"", "″"], 0.0254),
    row(Unit::Gram, Kind::Mass, "g", &["g", "gr"], 1e-3),
    row(Unit::Kilogram, Kind::Mass, "kg", &["kg"], 1.0),
    row(Unit::Ounce, Kind::Mass, "oz", &["oz"], 0.028_349_523_125),
    Row { unit: Unit::Celsius, kind: Kind::Temperature, symbol: "°C", spellings: &["°c", "c"], factor: 1.0, offset: 273.15 },
    Row { unit: Unit::Fahrenheit, kind: Kind::Temperature, symbol: "°F", spellings: &["°f", "f"], factor: 5.0 / 9.0, offset: 459.67 * 5.0 / 9.0 },
    row(Unit::Decitex, Kind::Fineness, "dtex", &["dtex"], 1e-7),
    row(Unit::Denier, Kind::Fineness, "den", &["den", "denier", "d"], 1.0 / 9.0e6),
    row(Unit::Minute, Kind::Time, "min", &["min", "mins", "minutes"], 60.0),
    row(Unit::Hour, Kind::Time, "h", &["h", "hr", "hours"], 3600.0),
    row(Unit::PerSquareCentimetre, Kind::StrandsPerArea, "/cm²", &["/cm²", "/cm2", "per cm²", "per cm2"], 1e4),
    row(Unit::PerSquareInch, Kind::StrandsPerArea, "/in²", &["/in²", "/in2", "per in²", "per in2"], 1.0 / 6.4516e-4),
    row(Unit::PerCentimetre, Kind::StrandsPerLength, "/cm", &["/cm", "per cm"], 1e2),
    row(Unit::PerInch, Kind::StrandsPerLength, "/in", &["/in", "per in"], 1.0 / 0.0254),
    row(Unit::Percent, Kind::Share, "%", &["%", "percent"], 1e-2),
    row(Unit::Times, Kind::Times, "×", &["×", "x", "times"], 1.0),
    row(Unit::Millilitre, Kind::Volume, "mL", &["ml", "cc"], 1e-6),
    row(Unit::Litre, Kind::Volume, "L", &["l", "litre", "litres"], 1e-3),
];

impl Unit {
    fn row(self) -> &'static Row {
        // Every unit has its row: the test below walks the enum, so the fallback is never met.
        TABLE.iter().find(|row| row.unit == self).unwrap_or(&TABLE[0])
    }

    /// What it measures.
    pub fn kind(self) -> Kind {
        self.row().kind
    }

    /// How it is written after a number.
    pub fn symbol(self) -> &'static str {
        self.row().symbol
    }

    /// A number in this unit, in the SI base of its kind.
    pub fn to_base(self, amount: f64) -> f64 {
        let row = self.row();
        amount * row.factor + row.offset
    }

    /// A number in the SI base of its kind, in this unit.
    pub fn from_base(self, base: f64) -> f64 {
        let row = self.row();
        (base - row.offset) / row.factor
    }

    /// Reads a unit of this kind as people spell it; case does not matter.
    pub fn read(text: &str, kind: Kind) -> Option<Unit> {
        let wanted = text.trim();
        let spelt = |row: &&Row| row.spellings.iter().any(|spelling| spelling.eq_ignore_ascii_case(wanted));
        TABLE.iter().filter(|row| row.kind == kind).find(spelt).map(|row| row.unit)
    }

    /// The units of one kind, in table order.
    pub fn of(kind: Kind) -> impl Iterator<Item = Unit> {
        TABLE.iter().filter(move |row| row.kind == kind).map(|row| row.unit)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_has_its_own_row_and_converts_both_ways() {
        for row in TABLE {
            assert_eq!(TABLE.iter().filter(|other| other.unit == row.unit).count(), 1);
            assert_eq!(row.unit.kind(), row.kind);
            let there = row.unit.to_base(12.5);
            assert!((row.unit.from_base(there) - 12.5).abs() < 1e-9, "{}", row.symbol);
            assert_eq!(Unit::read(row.symbol, row.kind), Some(row.unit));
        }
    }

    #[test]
    fn boiling_water_and_inches() {
        // 212 °F = 100 °C, the scales' fixed point.
        assert!((Unit::Celsius.from_base(Unit::Fahrenheit.to_base(212.0)) - 100.0).abs() < 1e-9);
        assert!((Unit::Millimetre.from_base(Unit::Inch.to_base(12.0)) - 304.8).abs() < 1e-9);
        // 1 den = 10/9 dtex, by definition of both.
        assert!((Unit::Decitex.from_base(Unit::Denier.to_base(9.0)) - 10.0).abs() < 1e-9);
    }
}
