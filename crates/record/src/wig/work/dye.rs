//! Colouring: bath, dip, brush, spray or marker.
//!
//! What it is: the fields of one kind of work. What it is not: the reckoning of dye and water.

use measure::limit::Limit;

use super::{COMMON, DYE_CLASSES, Group, Kind};
use crate::{
    field::{
        Holds::{AnyOf, Choice, Lot, Quantity, Shade, Text, Zones},
        field, required,
    },
    limits,
};

/// How.
pub const DYE_WAYS: &[&str] = &["bath", "dip", "brushed_on", "sprayed_on", "marker"];

/// Dye as it is weighed or measured; a bare number is grams.
pub const DOSE: &[&Limit] = &[&limits::DYE_WEIGHT, &limits::DYE_VOLUME];

/// The kind.
pub const KIND: Kind = Kind {
    name: "dye",
    version: 0,
    group: Group::Colour,
    fields: &[
        required("dye_class", Choice(DYE_CLASSES)),
        field("dye_way", Choice(DYE_WAYS)),
        field("dye_name", Text(80)),
        field("dye_batch", Text(40)),
        field("depth", Quantity(&limits::DEPTH)),
        field("temperature", Quantity(&limits::TEMPERATURE)),
        field("hold", Quantity(&limits::HOLD)),
        field("colour", Text(80)),
        field("stock", Lot),
        field("dye_amount", AnyOf(DOSE)),
        field("stock_2", Lot),
        field("dye_amount_2", AnyOf(DOSE)),
        field("stock_3", Lot),
        field("dye_amount_3", AnyOf(DOSE)),
        field("fibre_weight", Quantity(&limits::FIBRE_WEIGHT)),
        field("bath", Quantity(&limits::POT)),
        field("vinegar", Quantity(&limits::ACID_AMOUNT)),
        field("water_line", Quantity(&limits::WATER_LINE)),
        field("target_shade", Shade),
        field("result_shade", Shade),
        field("lot", Lot),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
