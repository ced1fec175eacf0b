//! Weighing back what is left of a packet or bottle of dye.
//!
//! What it is: an entry of the workshop's log. What it is not: use, which wigs record.

use super::{Group, Kind, dye::DOSE};
use crate::field::{
    Holds::{AnyOf, Lot},
    required,
};

/// A count.
pub const KIND: Kind = Kind {
    name: "count_dye",
    version: 0,
    group: Group::Workshop,
    fields: &[required("stock", Lot), required("dye_amount", AnyOf(DOSE))],
    common: &[],
};
