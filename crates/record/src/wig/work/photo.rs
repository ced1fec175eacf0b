//! A photo.
//!
//! What it is: the fields of one kind of work. What it is not: the picture’s bytes, which are kept by their hash.

use super::{COMMON, Group, Kind};
use crate::field::{
    Holds::{Choice, Photo, Text, Zones},
    field, required,
};

/// When it was taken.
pub const SHOWS: &[&str] = &["before", "during", "after", "detail"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "photo",
    version: 0,
    group: Group::Look,
    fields: &[
        required("photo", Photo),
        field("shows", Choice(SHOWS)),
        field("zones", Zones),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
