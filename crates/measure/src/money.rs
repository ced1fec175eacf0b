//! Money in the smallest unit of whatever currency the person chose.
//!
//! What it is: whole hundredths, read and written. What it is not: a currency or an exchange rate.

use core::{iter::Sum, ops::Add};

use crate::typed::{ReadError, number};

/// An amount of money, never negative.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Money(u64);

impl Money {
    /// The most one price may be: ten million.
    pub const MOST: Money = Money(1_000_000_000);

    /// From hundredths.
    pub fn from_hundredths(hundredths: u64) -> Money {
        Money(hundredths)
    }

    /// In hundredths.
    pub fn hundredths(self) -> u64 {
        self.0
    }

    /// Reads `18.99`, `18,99` or `19`, with or without a sign of currency around it.
    ///
    /// # Errors
    /// Where it is no number, negative, finer than a hundredth or above [`Money::MOST`].
    pub fn read(text: &str) -> Result<Money, ReadError> {
        let bare = text.trim_matches(|c: char| c.is_whitespace() || (!c.is_ascii_digit() && !",.-".contains(c)));
        let amount = number(bare)?;
        if amount < 0.0 {
            return Err(ReadError::Negative);
        }
        let hundredths = amount * 100.0;
        let whole = libm::round(hundredths);
        if libm::fabs(hundredths - whole) > 1e-6 {
            return Err(ReadError::TooFine);
        }
        if whole > Money::MOST.0 as f64 {
            return Err(ReadError::TooMuch);
        }
        Ok(Money(whole as u64))
    }

    /// Written with two decimals and a point, as it is stored.
    pub fn plain(self) -> String {
        format!("{}.{:02}", self.0 / 100, self.0 % 100)
    }
}

impl Add for Money {
    type Output = Money;
    fn add(self, other: Money) -> Money {
        Money(self.0.saturating_add(other.0))
    }
}

impl Sum for Money {
    fn sum<I: Iterator<Item = Money>>(iter: I) -> Money {
        iter.fold(Money::default(), Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_prices() {
        for (text, want) in
            [("18.99", 1899), ("18,99", 1899), ("€ 19", 1900), ("7,50 €", 750), ("0", 0), ("£12.5", 1250)]
        {
            assert_eq!(Money::read(text), Ok(Money(want)), "{text}");
        }
        for (text, want) in [
            ("-1", ReadError::Negative),
            ("1.2345", ReadError::TooFine),
            ("99999999999", ReadError::TooMuch),
            ("cheap", ReadError::Empty),
        ] {
            assert_eq!(Money::read(text), Err(want), "{text}");
        }
        assert_eq!(Money(1905).plain(), "19.05");
    }
}
