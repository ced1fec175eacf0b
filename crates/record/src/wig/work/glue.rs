//! Gluing.
//!
//! What it is: the fields of one kind of work. What it is not: skin-safe wear (see `wig_prep`, `fitting`).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, Zones},
        field, required,
    },
    limits,
};

/// Which kind.
pub const GLUES: &[&str] = &["spirit_glue", "water_glue", "hot_melt", "silicone_glue", "tape"];

/// Where.
pub const GLUED_TO: &[&str] = &["cap", "lace_edge", "accessory", "skin"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "glue",
    version: 0,
    group: Group::Weft,
    fields: &[
        required("glue", Choice(GLUES)),
        field("glued_to", Choice(GLUED_TO)),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
