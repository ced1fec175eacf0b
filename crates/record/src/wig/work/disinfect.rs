//! Washing and disinfecting between wearers.
//!
//! What it is: the fields of one kind of work. What it is not: an ordinary wash.

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text},
        field,
    },
    limits,
};

/// What with.
pub const DISINFECTANTS: &[&str] = &["alcohol_spray", "disinfecting_wash", "shampoo_only"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "disinfect",
    version: 0,
    group: Group::Clean,
    fields: &[
        field("disinfected_with", Choice(DISINFECTANTS)),
        field("temperature", Quantity(&limits::TEMPERATURE)),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
