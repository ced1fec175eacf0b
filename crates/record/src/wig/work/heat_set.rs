//! Setting a curl, wave or bend by heat.
//!
//! What it is: the fields of one kind of work. What it is not: the reckoning of temperature and time.

use super::{COMMON, Group, Kind, MEDIA};
use crate::{
    field::{
        Holds::{Choice, Quantity, Text, YesNo, Zones},
        field, required,
    },
    limits,
};

/// How it was wound.
pub const WINDINGS: &[&str] = &["from_points", "spiral", "pinned_curl", "flat_wrap"];

/// The kind.
pub const KIND: Kind = Kind {
    name: "heat_set",
    version: 0,
    group: Group::Heat,
    fields: &[
        required("medium", Choice(MEDIA)),
        required("temperature", Quantity(&limits::TEMPERATURE)),
        field("hold", Quantity(&limits::HOLD)),
        field("diameter", Quantity(&limits::DIAMETER)),
        field("came_out", Quantity(&limits::DIAMETER)),
        field("winding", Choice(WINDINGS)),
        field("poured", YesNo),
        field("cooled", YesNo),
        field("dried", YesNo),
        field("on_head", YesNo),
        field("zones", Zones),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
