//! A repair.
//!
//! What it is: the fields of one kind of work. What it is not: reset, refront.

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Quantity, Text, Zones},
        field, required,
    },
    limits,
};

/// The kind.
pub const KIND: Kind = Kind {
    name: "repair",
    version: 0,
    group: Group::Wear,
    fields: &[
        required("repaired", Text(300)),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
