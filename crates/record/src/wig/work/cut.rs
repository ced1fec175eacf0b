//! Cutting and layering.
//!
//! What it is: the fields of one kind of work. What it is not: cutting weft to rows.

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, YesNo, Zones},
        field,
    },
    limits,
};

/// How.
pub const CUT_WAYS: &[&str] = &["blunt", "layers", "point_cut", "thinning"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "cut",
    version: 0,
    group: Group::Shape,
    fields: &[
        field("cut_way", Choice(CUT_WAYS)),
        field("hair_length", Quantity(&limits::FIBRE_LENGTH)),
        field("shortest_left", Quantity(&limits::FIBRE_LENGTH)),
        field("final_cut", YesNo),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
