//! Rinsing.
//!
//! What it is: the fields of one kind of work. What it is not: washing.

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, YesNo, Zones},
        field,
    },
    limits,
};

/// What with.
pub const RINSES: &[&str] = &["plain_water", "vinegar", "conditioner"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "rinse",
    version: 0,
    group: Group::Clean,
    fields: &[
        field("rinsed_with", Choice(RINSES)),
        field("temperature", Quantity(&limits::TEMPERATURE)),
        field("ran_clear", YesNo),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
