//! What holds the wig on a head.
//!
//! What it is: the fields of one kind of work. What it is not: the wearer’s own hair (see `wig_prep`).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Count, Quantity, Text, Zones},
        field, required,
    },
    limits,
};

/// What.
pub const ANCHORS: &[&str] = &["clips", "combs", "tabs", "elastic", "pin_points"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "anchor",
    version: 0,
    group: Group::Weft,
    fields: &[
        required("anchor", Choice(ANCHORS)),
        field("pieces", Count(1, 40)),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
