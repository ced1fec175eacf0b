//! A heat test lock: a hidden lock tried at one temperature.
//!
//! What it is: the fields of one kind of work. What it is not: the window learnt from several (see `workshop::tests`).

use super::{COMMON, Group, Kind, LOCK_RESULTS, MEDIA};
use crate::{
    field::{
        Holds::{Choice, Lot, Quantity, Text},
        field, required,
    },
    limits,
    trade::fibres,
};

/// The kind.
pub const KIND: Kind = Kind {
    name: "test_lock",
    version: 0,
    group: Group::Heat,
    fields: &[
        required("temperature", Quantity(&limits::TEMPERATURE)),
        required("lock_result", Choice(LOCK_RESULTS)),
        field("medium", Choice(MEDIA)),
        field("hold", Quantity(&limits::HOLD)),
        field("fibre", Choice(fibres::NAMES)),
        field("lot", Lot),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};
