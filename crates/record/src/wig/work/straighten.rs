//! Straightening by heat.
//!
//! What it is: the fields of one kind of work. What it is not: a curl (see `heat_set`).

use super::{COMMON, Group, Kind, MEDIA};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, YesNo, Zones},
        field, required,
    },
    limits,
};

/// The kind.
pub const KIND: Kind = Kind {
    name: "straighten",
    version: 0,
    group: Group::Heat,
    fields: &[
        required("medium", Choice(MEDIA)),
        required("temperature", Quantity(&limits::TEMPERATURE)),
        field("hold", Quantity(&limits::HOLD)),
        field("cooled", YesNo),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
