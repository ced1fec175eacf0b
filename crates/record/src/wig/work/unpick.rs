//! Taking something off again.
//!
//! What it is: the fields of one kind of work. What it is not: undoing an entry that was never true.

use super::{COMMON, Group, Kind, sew_weft::SECTIONS};
use crate::{
    field::{
        Holds::{Choice, Lot, Quantity, Text, Zones},
        field, required,
    },
    limits,
};

/// What was taken off.
pub const UNPICKED: &[&str] = &["row", "hairline", "parting", "knots", "accessory", "anchor", "glue"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "unpick",
    version: 0,
    group: Group::Weft,
    fields: &[
        required("unpicked", Choice(UNPICKED)),
        field("length", Quantity(&limits::SEWN)),
        field("lot", Lot),
        field("section", Choice(SECTIONS)),
        field("place", Quantity(&limits::PLACE)),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
