//! Measuring something that has no slot of its own.
//!
//! What it is: the fields of one kind of work. What it is not: head and base measures, which are slots.

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Quantity, Text},
        field, required,
    },
    limits,
};

/// The kind.
pub const KIND: Kind = Kind {
    name: "measure",
    version: 0,
    group: Group::Prepare,
    fields: &[
        required("measured", Text(200)),
        field("found", Text(200)),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
