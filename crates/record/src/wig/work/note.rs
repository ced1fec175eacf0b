//! A note at the bench.
//!
//! What it is: words kept with their day. What it is not: the wig's own standing note (a slot).

use super::{COMMON, Group, Kind};
use crate::field::{
    Holds::{Text, Zone},
    field, required,
};

/// A note.
pub const KIND: Kind = Kind {
    name: "note",
    version: 0,
    group: Group::Look,
    fields: &[required("words", Text(4000)), field("zone", Zone)],
    common: COMMON,
};
