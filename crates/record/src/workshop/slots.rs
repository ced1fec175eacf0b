//! What may be said of a lot: one purchase of one kind of weft in one dye lot, or of one batch of dye.
//!
//! What it is: the table of slots that "set a value" entries of the workshop fill.
//! What it is not: how much of it is left (that is counted, see `work::count`).

use crate::{
    field::Holds::{AnyOf, Choice, Count, Money, Quantity, Shade, Text, YesNo},
    field::{Field, field},
    limits,
    trade::fibres,
    wig::work::DYE_CLASSES,
};

/// How weft is made, which decides whether it may be cut.
pub const MADE: &[&str] = &["machine", "flat", "hand_tied"];
/// Whether two layers are stitched together, which can be parted.
pub const LAYERS: &[&str] = &["double", "single"];
/// How the fibre length was taken.
pub const LENGTH_TAKEN: &[&str] = &["hanging", "unfolded"];

/// What dye comes as.
pub const FORMS: &[&str] = &["powder", "liquid"];

/// Every slot of a lot.
#[rustfmt::skip]
pub const SLOTS: &[Field] = &[
    field("lot_name", Text(80)),
    field("lot_fibre", Choice(fibres::NAMES)),
    field("lot_colour", Text(120)),
    field("dye_lot", Text(60)),
    field("made", Choice(MADE)),
    field("layers", Choice(LAYERS)),
    field("pack_weight", Quantity(&limits::PACK_WEIGHT)),
    field("pack_width", Quantity(&limits::PACK_WIDTH)),
    field("pack_pieces", Count(1, 40)),
    field("weft_length", Quantity(&limits::FIBRE_LENGTH)),
    field("length_taken", Choice(LENGTH_TAKEN)),
    field("lot_fineness", Quantity(&limits::FINENESS)),
    field("strands", Quantity(&limits::STRANDS)),
    field("pack_price", Money),
    field("still_sold", YesNo),
    field("lot_label_heat", Quantity(&limits::TEMPERATURE)),
    field("lot_shade", Shade),
    // A lot of dye: one packet or bottle of one batch.
    field("stock_name", Text(80)),
    field("stock_class", Choice(DYE_CLASSES)),
    field("stock_form", Choice(FORMS)),
    field("stock_batch", Text(60)),
    field("stock_packet", AnyOf(&[&limits::DYE_WEIGHT, &limits::DYE_VOLUME])),
    field("stock_cap", Quantity(&limits::BOTTLE_CAP)),
    field("stock_price", Money),
    field("stock_shade", Shade),
];

/// The slot of a name.
pub fn slot_named(name: &str) -> Option<&'static Field> {
    SLOTS.iter().find(|field| field.name == name)
}
