//! Getting a head ready for a wig.
//!
//! What it is: the fields of one kind of work. What it is not: the wig’s own work.

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, YesNo},
        field,
    },
    limits,
};

/// The wearer’s hair.
pub const PREPS: &[&str] = &["flat_pin_curls", "flat_braids", "wrapped", "none_needed"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "wig_prep",
    version: 0,
    group: Group::Wear,
    fields: &[
        field("hair_prep", Choice(PREPS)),
        field("wig_cap", YesNo),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
