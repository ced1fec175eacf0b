//! Loosening what was bound.
//!
//! What it is: the fields of one kind of work. What it is not: brushing out (see `dress`).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Quantity, Text, YesNo, Zones},
        field,
    },
    limits,
};

/// The kind.
pub const KIND: Kind = Kind {
    name: "release",
    version: 0,
    group: Group::Shape,
    fields: &[
        field("zones", Zones),
        field("cooled", YesNo),
        field("dried", YesNo),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
