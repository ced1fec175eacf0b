//! The base as it came.
//!
//! What it is: the fields of one kind of work. What it is not: its measures (those are slots).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text},
        field,
    },
    limits,
};

/// How its fibre falls.
pub const TEXTURES: &[&str] = &["straight", "wavy", "curly", "crimped"];

/// What state it came in.
pub const CONDITIONS: &[&str] = &["new", "worn_before", "needs_care"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "base",
    version: 0,
    group: Group::Prepare,
    fields: &[
        field("texture", Choice(TEXTURES)),
        field("condition", Choice(CONDITIONS)),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
