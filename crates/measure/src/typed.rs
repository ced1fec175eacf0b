//! What a person typed, kept as typed: 12 in stays 12 in; "1,5" and "1.5" both read.
//!
//! What it is: the reader of numbers with units. What it is not: a check of limits (see `limit`).

use core::{cmp::Ordering, fmt};

use crate::{
    decimal,
    quantity::{
        ArealNumberDensity, Length, LinearMassDensity, LinearNumberDensity, Mass, ThermodynamicTemperature, Time,
        Volume, units,
    },
    say::{Arg, Say},
    unit::{Kind, Unit},
};

/// A number with its unit, with the words it was typed in.
///
/// Equal means typed alike: 12 in and 30.48 cm are two records of one length.
#[derive(Clone, Debug)]
pub struct Typed {
    text: String,
    amount: f64,
    unit: Unit,
}

/// Why something typed is not a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReadError {
    /// Nothing there.
    Empty,
    /// No number to be seen.
    NotANumber,
    /// A number, then something that is no unit of this kind.
    NotAUnit(Kind),
    /// `1,500` may be one and a half or fifteen hundred.
    TwoReadings,
    /// Below zero where that means nothing.
    Negative,
    /// Finer than a hundredth of the currency.
    TooFine,
    /// Beyond any use.
    TooMuch,
}

impl ReadError {
    /// The reason with its remedy, as a sentence.
    pub fn say(self, typed: &str) -> Say {
        let key = match self {
            ReadError::Empty if typed.trim().is_empty() => "measure.empty",
            // Letters alone: no figure was found, yet something was typed.
            ReadError::Empty | ReadError::NotANumber => "measure.not_a_number",
            ReadError::NotAUnit(kind) => {
                let units: Vec<&str> = Unit::of(kind).map(Unit::symbol).collect();
                return Say::new("measure.not_a_unit", [Arg::from(typed), Arg::Text(units.join(", "))]);
            }
            ReadError::TwoReadings => "measure.two_readings",
            ReadError::Negative => "measure.negative",
            ReadError::TooFine => "measure.too_fine",
            ReadError::TooMuch => "measure.too_much",
        };
        Say::new(key, [Arg::from(typed)])
    }
}

/// The longest text a number may have.
const LONGEST: usize = 40;

impl Typed {
    /// Reads a number with or without a unit; without one it is in the person's usual unit.
    ///
    /// # Errors
    /// Says why the text is not such a number; nothing is guessed.
    pub fn read(text: &str, kind: Kind, usual: Unit) -> Result<Typed, ReadError> {
        let text = text.trim();
        if text.is_empty() {
            return Err(ReadError::Empty);
        }
        if text.chars().count() > LONGEST {
            return Err(ReadError::NotANumber);
        }
        let end = text
            .char_indices()
            .find(|(_, c)| !(c.is_ascii_digit() || ".,/+-−½¼¾ \u{a0}\u{2009}\u{202f}".contains(*c)))
            .map_or(text.len(), |(at, _)| at);
        // "30 /cm": the stroke belongs to the unit when no digit follows it.
        let (head, tail) = match text[..end].rfind('/') {
            Some(stroke) if !text[stroke + 1..].trim_start().starts_with(|c: char| c.is_ascii_digit()) => {
                text.split_at(stroke)
            }
            _ => text.split_at(end),
        };
        let amount = number(head)?;
        let unit = match tail.trim() {
            "" => usual,
            tail => Unit::read(tail, kind).ok_or(ReadError::NotAUnit(kind))?,
        };
        let text = if tail.trim().is_empty() { format!("{} {}", head.trim(), usual.symbol()) } else { text.to_owned() };
        // The unit was added: what is kept must itself be short enough to be read again.
        if text.chars().count() > LONGEST {
            return Err(ReadError::NotANumber);
        }
        Ok(Typed { text, amount, unit })
    }

    /// A number in a unit, written plainly; for values the tool itself makes. Rounded to hundredths, below 1 to
    /// thousandths.
    pub fn plain(amount: f64, unit: Unit) -> Typed {
        // Not finer: `1.234` would have two readings.
        let parts = if libm::fabs(amount) < 1.0 { 1000.0 } else { 100.0 };
        let rounded = libm::round(amount * parts) / parts;
        Typed { text: format!("{} {}", decimal::trimmed(rounded, 3), unit.symbol()), amount: rounded, unit }
    }

    /// As it was typed, with its unit.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Its unit.
    pub fn unit(&self) -> Unit {
        self.unit
    }

    /// In the SI base of its kind.
    pub fn base(&self) -> f64 {
        self.unit.to_base(self.amount)
    }

    /// As a length, when it is one.
    pub fn length(&self) -> Option<Length> {
        (self.unit.kind() == Kind::Length).then(|| Length::new::<units::meter>(self.base()))
    }

    /// As a mass, when it is one.
    pub fn mass(&self) -> Option<Mass> {
        (self.unit.kind() == Kind::Mass).then(|| Mass::new::<units::kilogram>(self.base()))
    }

    /// As a fineness, when it is one.
    pub fn fineness(&self) -> Option<LinearMassDensity> {
        (self.unit.kind() == Kind::Fineness).then(|| LinearMassDensity::new::<units::kilogram_per_meter>(self.base()))
    }

    /// As a temperature, when it is one.
    pub fn temperature(&self) -> Option<ThermodynamicTemperature> {
        (self.unit.kind() == Kind::Temperature)
            .then(|| ThermodynamicTemperature::new::<uom::si::thermodynamic_temperature::kelvin>(self.base()))
    }

    /// As a duration, when it is one.
    pub fn time(&self) -> Option<Time> {
        (self.unit.kind() == Kind::Time).then(|| Time::new::<units::second>(self.base()))
    }

    /// As a volume, when it is one.
    pub fn volume(&self) -> Option<Volume> {
        (self.unit.kind() == Kind::Volume).then(|| Volume::new::<units::cubic_meter>(self.base()))
    }

    /// As strands per area, when it is that.
    pub fn fullness(&self) -> Option<ArealNumberDensity> {
        (self.unit.kind() == Kind::StrandsPerArea)
            .then(|| ArealNumberDensity::new::<units::per_square_meter>(self.base()))
    }

    /// As strands per length of weft, when it is that.
    pub fn strands(&self) -> Option<LinearNumberDensity> {
        (self.unit.kind() == Kind::StrandsPerLength).then(|| LinearNumberDensity::new::<units::per_meter>(self.base()))
    }

    /// As a share or a factor, when it is one.
    pub fn ratio(&self) -> Option<f64> {
        matches!(self.unit.kind(), Kind::Share | Kind::Times).then(|| self.base())
    }
}

impl PartialEq for Typed {
    fn eq(&self, other: &Typed) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Typed {}

impl PartialOrd for Typed {
    fn partial_cmp(&self, other: &Typed) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Typed {
    fn cmp(&self, other: &Typed) -> Ordering {
        (&self.text, self.unit).cmp(&(&other.text, other.unit))
    }
}

impl fmt::Display for Typed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}

/// Reads a bare number: `12`, `1,5`, `1.5`, `12 1/2`, `3/4`, `12½`, `-3`.
///
/// # Errors
/// Where it is none, or could be read in two ways.
pub fn number(text: &str) -> Result<f64, ReadError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(ReadError::Empty);
    }
    let (sign, text) = match text.strip_prefix(['-', '−']) {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, text.strip_prefix('+').unwrap_or(text)),
    };
    let (whole, fraction) = split_fraction(text)?;
    let whole = if whole.is_empty() { 0.0 } else { decimal_figures(whole)? };
    let amount = sign * (whole + fraction);
    if amount.is_finite() { Ok(amount) } else { Err(ReadError::TooMuch) }
}

/// Parts `12 1/2` and `12½` into the whole and the fraction.
fn split_fraction(text: &str) -> Result<(&str, f64), ReadError> {
    for (sign, value) in [('½', 0.5), ('¼', 0.25), ('¾', 0.75)] {
        if let Some(whole) = text.strip_suffix(sign) {
            return Ok((whole.trim_end(), value));
        }
    }
    let Some((left, below)) = text.split_once('/') else { return Ok((text, 0.0)) };
    let (whole, above) = left.trim_end().rsplit_once(' ').unwrap_or(("", left.trim_end()));
    let part = |text: &str| text.trim().parse::<u16>().map_err(|_| ReadError::NotANumber);
    let (above, below) = (part(above)?, part(below)?);
    if below == 0 {
        return Err(ReadError::NotANumber);
    }
    Ok((whole.trim(), f64::from(above) / f64::from(below)))
}

fn decimal_figures(text: &str) -> Result<f64, ReadError> {
    let marks = text.matches([',', '.']).count();
    if marks > 1 {
        return Err(ReadError::TwoReadings);
    }
    if let Some(at) = text.find([',', '.']) {
        let (whole, after) = (&text[..at], &text[at + 1..]);
        let grouped = after.len() == 3 && (1..=3).contains(&whole.len()) && !whole.starts_with('0');
        if grouped {
            return Err(ReadError::TwoReadings);
        }
        if after.is_empty() {
            return Err(ReadError::NotANumber);
        }
    }
    decimal::read(&text.replace(',', ".")).ok_or(ReadError::NotANumber)
}
