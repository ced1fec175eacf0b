//! Something attached.
//!
//! What it is: the fields of one kind of work. What it is not: clips that hold the wig (see `anchor`).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, Zones},
        field, required,
    },
    limits,
};

/// How.
pub const FIXED_BY: &[&str] = &["sewn_on", "glued_on", "pinned_on", "clipped_on"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "accessory",
    version: 0,
    group: Group::Finish,
    fields: &[
        required("accessory", Text(120)),
        field("fixed_by", Choice(FIXED_BY)),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
