//! Dressing: brushing, combing, pinning, the last touch of an iron.
//!
//! What it is: the fields of one kind of work. What it is not: a set that shall hold by itself (see `heat_set`).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, YesNo, Zones},
        field,
    },
    limits,
};

/// With what.
pub const TOOLS: &[&str] = &["fingers", "brush", "comb", "hairpins", "hot_iron"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "dress",
    version: 0,
    group: Group::Finish,
    fields: &[
        field("dressed_with", Choice(TOOLS)),
        field("temperature", Quantity(&limits::TEMPERATURE)),
        field("on_head", YesNo),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
