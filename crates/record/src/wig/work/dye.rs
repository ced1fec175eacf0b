//! Colouring: bath, dip, brush, spray or marker.
//!
//! What it is: the fields of one kind of work. What it is not: the reckoning of dye and water.

use super::{COMMON, DYE_CLASSES, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Lot, Quantity, Text, Zones},
        field, required,
    },
    limits,
};

/// How.
pub const DYE_WAYS: &[&str] = &["bath", "dip", "brushed_on", "sprayed_on", "marker"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "dye",
    version: 0,
    group: Group::Colour,
    fields: &[
        required("dye_class", Choice(DYE_CLASSES)),
        field("dye_way", Choice(DYE_WAYS)),
        field("dye_name", Text(80)),
        field("dye_batch", Text(40)),
        field("depth", Quantity(&limits::DEPTH)),
        field("temperature", Quantity(&limits::TEMPERATURE)),
        field("hold", Quantity(&limits::HOLD)),
        field("colour", Text(80)),
        field("lot", Lot),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
