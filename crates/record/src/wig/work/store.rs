//! Putting it away.
//!
//! What it is: the fields of one kind of work. What it is not: handing it over.

use super::{COMMON, Group, Kind};
use crate::field::{
    Holds::{Choice, Text},
    field,
};

/// How.
pub const STORED: &[&str] = &["on_block", "in_box", "in_bag", "in_net"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "store",
    version: 0,
    group: Group::Wear,
    fields: &[field("stored", Choice(STORED)), field("stored_where", Text(120)), field("remark", Text(1000))],
    common: COMMON,
};
