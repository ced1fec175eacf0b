//! Binding fibre: braided, tied, pinned or on rollers.
//!
//! What it is: the fields of one kind of work. What it is not: heat (see `heat_set`).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, Zones},
        field, required,
    },
    limits,
};

/// How.
pub const GATHERED: &[&str] = &["braided", "tied", "pinned", "rollers"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "gather",
    version: 0,
    group: Group::Shape,
    fields: &[
        required("gathered", Choice(GATHERED)),
        field("diameter", Quantity(&limits::DIAMETER)),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
