//! A fitting on the wearer.
//!
//! What it is: the fields of one kind of work. What it is not: wearing it (see `worn`).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, YesNo},
        field, required,
    },
    limits,
};

/// How it sits.
pub const FITS: &[&str] = &["fits", "tight", "loose", "shifts"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "fitting",
    version: 0,
    group: Group::Wear,
    fields: &[
        required("fit", Choice(FITS)),
        field("pull_points", Text(400)),
        field("hairline_seen", Text(400)),
        field("fringe_cut", YesNo),
        field("final_cut", YesNo),
        field("hair_length", Quantity(&limits::FIBRE_LENGTH)),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
