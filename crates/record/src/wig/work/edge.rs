//! Hairline or parting made, other than by sewing weft.
//!
//! What it is: the fields of one kind of work. What it is not: weft sewn there (see `sew_weft`).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text},
        field, required,
    },
    limits,
};

/// Which.
pub const EDGES: &[&str] = &["hairline", "parting"];

/// How.
pub const EDGE_WAYS: &[&str] = &["glued_strip", "knotted", "plucked", "lace_trimmed", "insert"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "edge",
    version: 0,
    group: Group::Weft,
    fields: &[
        required("edge", Choice(EDGES)),
        field("edge_way", Choice(EDGE_WAYS)),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
