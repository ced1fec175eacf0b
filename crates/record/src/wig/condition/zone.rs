//! The condition of one zone.
//!
//! What it is: the parts of it. What it is not: how work changes them (see `replay`).

use measure::quantity::{Length, ThermodynamicTemperature};

use crate::id::{EntryId, LotId};

/// What one zone is like.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ZoneCondition {
    /// How its fibre is bound, while it is.
    pub bound: Option<&'static str>,
    /// Whether it is wet.
    pub wet: bool,
    /// What was left in the fibre and not washed out.
    pub products: Vec<&'static str>,
    /// Whether something flammable in it has not dried yet.
    pub flammable: bool,
    /// How its fibre falls, where somebody said or made it so.
    pub texture: Option<&'static str>,
    /// The set it holds.
    pub set: Option<Set>,
    /// Colour put on, in order.
    pub dyed: Vec<Dyed>,
    /// Whether the last colour reached only the outside of bound fibre.
    pub undyed_inside: bool,
    /// The longest strand that was left by cutting.
    pub longest: Option<Length>,
    /// Whether it was cut to its final length.
    pub final_cut: bool,
    /// Weft sewn in, in order.
    pub sewn: Vec<Sewn>,
}

/// A set.
#[derive(Clone, Debug, PartialEq)]
pub struct Set {
    /// How it was heated.
    pub medium: Option<&'static str>,
    /// How hot.
    pub temperature: Option<ThermodynamicTemperature>,
    /// Whether it cooled before it was released; nobody said, where none.
    pub cooled: Option<bool>,
    /// The entry that made it.
    pub by: EntryId,
}

/// Colour that was put on.
#[derive(Clone, Debug, PartialEq)]
pub struct Dyed {
    /// Its class.
    pub class: &'static str,
    /// The batch of dye.
    pub batch: Option<String>,
    /// The colour in words.
    pub colour: Option<String>,
    /// The entry that put it on.
    pub by: EntryId,
}

/// Weft that was sewn in.
#[derive(Clone, Debug, PartialEq)]
pub struct Sewn {
    /// Of which lot.
    pub lot: Option<LotId>,
    /// How much.
    pub length: Length,
    /// Whether its lot had been through a bath by then.
    pub lot_dyed: bool,
    /// The entry that says so.
    pub by: EntryId,
}
