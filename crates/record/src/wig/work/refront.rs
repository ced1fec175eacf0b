//! A new front.
//!
//! What it is: the fields of one kind of work. What it is not: a repair of the old one.

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Count, Quantity, Text},
        field,
    },
    limits,
};

/// Made of.
pub const FRONTS: &[&str] = &["new_lace", "wefted_edge"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "refront",
    version: 0,
    group: Group::Weft,
    fields: &[
        field("front_made", Choice(FRONTS)),
        field("knots", Count(0, 100000)),
        field("hair_length", Quantity(&limits::FIBRE_LENGTH)),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
