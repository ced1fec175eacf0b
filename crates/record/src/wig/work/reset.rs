//! Putting a dressing right between performances.
//!
//! What it is: the fields of one kind of work. What it is not: a new set (see `heat_set`).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, Zones},
        field,
    },
    limits,
};

/// With what.
pub const RESETS: &[&str] = &["dry_fingers", "damp_pins", "rollers", "steam_off_head", "hot_iron"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "reset",
    version: 0,
    group: Group::Wear,
    fields: &[
        field("reset_with", Choice(RESETS)),
        field("temperature", Quantity(&limits::TEMPERATURE)),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
