//! Spray, lotion and the like left in the fibre.
//!
//! What it is: the fields of one kind of work. What it is not: glue (see `glue`), colour (see `dye`).

use super::{COMMON, Group, Kind};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, YesNo, Zones},
        field, required,
    },
    limits,
};

/// What.
pub const PRODUCTS: &[&str] = &["hairspray", "setting_lotion", "silicone", "gel", "oil", "detangler"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "product",
    version: 0,
    group: Group::Finish,
    fields: &[
        required("product", Choice(PRODUCTS)),
        field("product_name", Text(80)),
        field("flammable", YesNo),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
