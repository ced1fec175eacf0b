//! A figure of a wig: what stands for it now, and on what ground.
//!
//! What it is: low, likely and high with their origin. What it is not: where it is stored.

use core::ops::Mul;

use measure::{
    quantity::{ArealNumberDensity, Length, LinearMassDensity, LinearNumberDensity, Mass, Ratio, Time, Volume, units},
    typed::Typed,
};

use crate::{
    id::EntryId,
    trade::fact::{Fact, Source, Sure},
};

/// On what ground a figure stands.
#[derive(Clone, Debug, PartialEq)]
pub enum Origin {
    /// Somebody measured or said it.
    Said {
        /// As typed.
        typed: Typed,
        /// In which entry; none where a planner's own value stands in.
        entry: Option<EntryId>,
    },
    /// Assumed from the trade's tables.
    Assumed {
        /// Where from.
        source: &'static Source,
        /// How sure.
        sure: Sure,
    },
    /// Follows from another figure of this wig, named by its slot.
    Follows {
        /// The slot it follows from.
        slot: &'static str,
        /// Where the rule is from.
        source: &'static Source,
        /// How sure.
        sure: Sure,
    },
}

impl Origin {
    /// Whether somebody said it.
    pub fn is_said(&self) -> bool {
        matches!(self, Origin::Said { .. })
    }
}

/// A figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure<Q> {
    /// Lowest it may reasonably be.
    pub low: Q,
    /// Most likely.
    pub likely: Q,
    /// Highest it may reasonably be.
    pub high: Q,
    /// On what ground.
    pub origin: Origin,
}

/// A quantity that reads from the SI base of its kind.
pub trait FromBase: Copy + PartialOrd {
    /// From the SI base.
    fn from_base(base: f64) -> Self;
    /// In the SI base.
    fn base(self) -> f64;
}

macro_rules! from_base {
    ($($quantity:ident: $unit:ident;)+) => {$(
        impl FromBase for $quantity {
            fn from_base(base: f64) -> Self {
                $quantity::new::<units::$unit>(base)
            }
            fn base(self) -> f64 {
                self.get::<units::$unit>()
            }
        }
    )+};
}

from_base! {
    Length: meter;
    Mass: kilogram;
    LinearMassDensity: kilogram_per_meter;
    LinearNumberDensity: per_meter;
    ArealNumberDensity: per_square_meter;
    Time: second;
    Ratio: ratio;
    Volume: cubic_meter;
}

impl<Q: FromBase> Figure<Q> {
    /// From a table.
    pub fn assumed(fact: &Fact) -> Figure<Q> {
        let read = |amount| Q::from_base(fact.unit.to_base(amount));
        Figure {
            low: read(fact.low),
            likely: read(fact.likely),
            high: read(fact.high),
            origin: Origin::Assumed { source: fact.source, sure: fact.sure },
        }
    }

    /// As somebody said it, within what such a measurement is good for.
    pub fn said(typed: &Typed, entry: Option<EntryId>, within: Q) -> Figure<Q> {
        let base = typed.base();
        Figure {
            low: Q::from_base((base - within.base()).max(base * 0.5)),
            likely: Q::from_base(base),
            high: Q::from_base(base + within.base()),
            origin: Origin::Said { typed: typed.clone(), entry },
        }
    }

    /// The same figure with its spread closed: as if it were known.
    pub fn settled(&self) -> Figure<Q> {
        Figure { low: self.likely, likely: self.likely, high: self.likely, origin: self.origin.clone() }
    }
}

impl<Q: FromBase + Mul<f64, Output = Q>> Figure<Q> {
    /// So many times as much, on the same ground.
    pub fn times(&self, factor: f64) -> Figure<Q> {
        Figure {
            low: self.low * factor,
            likely: self.likely * factor,
            high: self.high * factor,
            origin: self.origin.clone(),
        }
    }
}
