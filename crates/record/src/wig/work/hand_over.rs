//! Handing it to somebody.
//!
//! What it is: the fields of one kind of work. What it is not: sending a sheet.

use super::{COMMON, Group, Kind};
use crate::field::{
    Holds::{Date, Text},
    field, required,
};

/// The kind.
pub const KIND: Kind = Kind {
    name: "hand_over",
    version: 0,
    group: Group::Wear,
    fields: &[required("handed_to", Text(120)), field("back_on", Date), field("remark", Text(1000))],
    common: COMMON,
};
