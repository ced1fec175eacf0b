//! Drying.
//!
//! What it is: the fields of one kind of work. What it is not: setting by heat (see `heat_set`).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, Zones},
        field, required,
    },
    limits,
};

/// How.
pub const DRY_WAYS: &[&str] = &["air", "towel", "wig_dryer", "hair_dryer"];

/// How it was left.
pub const LEFT: &[&str] = &["dry_through", "damp"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "dry",
    version: 0,
    group: Group::Clean,
    fields: &[
        required("dry_way", Choice(DRY_WAYS)),
        field("temperature", Quantity(&limits::TEMPERATURE)),
        field("hours", Quantity(&limits::HOURS)),
        field("left", Choice(LEFT)),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
