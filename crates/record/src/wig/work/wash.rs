//! Washing.
//!
//! What it is: the fields of one kind of work. What it is not: disinfecting between wearers (see `disinfect`).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, Zones},
        field,
    },
    limits,
};

/// What with.
pub const WASHES: &[&str] = &["plain_water", "mild_shampoo", "conditioner", "fabric_softener"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "wash",
    version: 0,
    group: Group::Clean,
    fields: &[
        field("washed_with", Choice(WASHES)),
        field("temperature", Quantity(&limits::TEMPERATURE)),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
