//! Identities: sixteen random bytes given by the caller.
//!
//! What it is: one type per thing that has an identity. What it is not: a source of randomness.

use core::fmt;

/// Sixteen bytes, written as 32 lower-case hex digits.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id([u8; 16]);

impl Id {
    /// From bytes the caller drew.
    pub const fn from_bytes(bytes: [u8; 16]) -> Id {
        Id(bytes)
    }

    /// The bytes.
    pub fn bytes(self) -> [u8; 16] {
        self.0
    }

    /// Reads 32 lower-case hex digits; nothing else is an identity.
    pub fn read(text: &str) -> Option<Id> {
        let digits = text.as_bytes();
        if digits.len() != 32 {
            return None;
        }
        let value = |digit: u8| match digit {
            b'0'..=b'9' => Some(digit - b'0'),
            b'a'..=b'f' => Some(digit - b'a' + 10),
            _ => None,
        };
        let mut bytes = [0; 16];
        for (byte, pair) in bytes.iter_mut().zip(digits.chunks_exact(2)) {
            *byte = value(pair[0])? << 4 | value(pair[1])?;
        }
        Some(Id(bytes))
    }
}

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{self}")
    }
}

macro_rules! identity {
    ($($(#[$doc:meta])* $name:ident),+ $(,)?) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(pub Id);

        impl $name {
            /// Reads 32 lower-case hex digits.
            pub fn read(text: &str) -> Option<$name> {
                Id::read(text).map($name)
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }
    )+};
}

identity! {
    /// One entry of a log.
    EntryId,
    /// One wig.
    WigId,
    /// One lot of weft or hair: one purchase of one kind in one dye lot.
    LotId,
    /// One person who works here.
    PersonId,
    /// One step of a wig's plan of work.
    StepId,
}

/// A photo: the SHA-256 of its bytes, written as 64 lower-case hex digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct PhotoId(Id, Id);

impl PhotoId {
    /// Reads 64 lower-case hex digits.
    pub fn read(text: &str) -> Option<PhotoId> {
        let (first, second) = (text.get(..32)?, text.get(32..)?);
        Some(PhotoId(Id::read(first)?, Id::read(second)?))
    }
}

impl fmt::Display for PhotoId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)?;
        self.1.fmt(f)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_what_it_writes_and_nothing_else() {
        let id = Id::from_bytes([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 255]);
        assert_eq!(Id::read(&id.to_string()), Some(id));
        for text in [
            "",
            "0",
            "000102030405060708090a0b0c0d0eFF",
            "000102030405060708090a0b0c0d0eg0",
            "é00102030405060708090a0b0c0d0ef",
        ] {
            assert_eq!(Id::read(text), None, "{text}");
        }
    }
}
