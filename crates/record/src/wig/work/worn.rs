//! Worn.
//!
//! What it is: the fields of one kind of work. What it is not: a fitting.

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Count, Quantity, Text},
        field,
    },
    limits,
};

/// The kind.
pub const KIND: Kind = Kind {
    name: "worn",
    version: 0,
    group: Group::Wear,
    fields: &[
        field("occasion", Text(120)),
        field("times_worn", Count(1, 100)),
        field("hours", Quantity(&limits::HOURS)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
