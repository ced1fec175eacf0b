//! A colour test lock: one lock dyed to a known depth, and the colour it came out.
//!
//! What it is: the fields of one kind of work. What it is not: a dye's strength fitted from several (see the `plan` room).

use super::{COMMON, DYE_CLASSES, Group, Kind, dye::DOSE};
use crate::{
    field::{
        Holds::{AnyOf, Choice, Lot, Photo, Quantity, Shade, Text},
        field, required,
    },
    limits,
    trade::fibres,
};

/// How a colour was read.
pub const SEEN_BY: &[&str] = &["photo_white", "typed", "by_eye"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "colour_lock",
    version: 0,
    group: Group::Colour,
    fields: &[
        required("stock", Lot),
        field("dye_name", Text(80)),
        required("depth", Quantity(&limits::DEPTH)),
        required("result_shade", Shade),
        field("base_shade", Shade),
        field("seen_by", Choice(SEEN_BY)),
        field("dye_class", Choice(DYE_CLASSES)),
        field("fibre", Choice(fibres::NAMES)),
        field("lot", Lot),
        field("dye_amount", AnyOf(DOSE)),
        field("temperature", Quantity(&limits::TEMPERATURE)),
        field("hold", Quantity(&limits::HOLD)),
        field("photo", Photo),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
