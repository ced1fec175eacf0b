//! Putting it on a block and pinning it.
//!
//! What it is: the fields of one kind of work. What it is not: storing (see `store`).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text},
        field,
    },
    limits,
};

/// What the block is made of.
pub const BLOCKS: &[&str] = &["canvas", "foam", "cork", "hard_head"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "block",
    version: 0,
    group: Group::Prepare,
    fields: &[
        field("block", Choice(BLOCKS)),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
