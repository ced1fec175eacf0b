//! Sewing weft: a row, a layer of the hairline, a row along the parting.
//!
//! What it is: the fields and the reading of one kind of work. What it is not: the plan of rows.

use measure::quantity::{Length, Time};

use super::{COMMON, Group, Kind, Work};
use crate::{
    field::{
        Holds::{Choice, Lot, Quantity, Text, YesNo, Zone},
        Value, field, required,
    },
    id::LotId,
    limits,
    wig::zone,
};

/// What the weft was sewn as.
pub const SEWN_AS: &[&str] = &["row", "hairline", "parting"];
/// The two runs of rows on a cap.
pub const SECTIONS: &[&str] = &["back_and_sides", "top"];

/// Sewing weft.
pub const KIND: Kind = Kind {
    name: "sew_weft",
    version: 0,
    group: Group::Weft,
    fields: &[
        required("sewn_as", Choice(SEWN_AS)),
        required("length", Quantity(&limits::SEWN)),
        field("lot", Lot),
        field("as_single", YesNo),
        field("zone", Zone),
        field("section", Choice(SECTIONS)),
        field("place", Quantity(&limits::PLACE)),
        field("minutes", Quantity(&limits::SITTING)),
        field("remark", Text(1000)),
    ],
    common: COMMON,
};

/// Weft that was sewn.
#[derive(Clone, Debug, PartialEq)]
pub struct SewWeft {
    /// `row`, `hairline` or `parting`.
    pub sewn_as: &'static str,
    /// How much weft went in.
    pub length: Length,
    /// Of which lot.
    pub lot: Option<LotId>,
    /// Whether it is double weft parted into singles: `length` is then told in single weft, twice what came off the lot.
    pub as_single: bool,
    /// In which zone, where it lies in one.
    pub zone: Option<zone::Zone>,
    /// In which run of rows.
    pub section: Option<&'static str>,
    /// How far along that run's midline.
    pub place: Option<Length>,
    /// How long it took.
    pub time: Option<Time>,
}

impl SewWeft {
    /// How much came off the lot.
    pub fn of_lot(&self) -> Length {
        if self.as_single { self.length / 2.0 } else { self.length }
    }

    /// Reads work of this kind.
    pub fn of(work: &Work) -> Option<SewWeft> {
        if work.kind().name != KIND.name {
            return None;
        }
        let typed = |field| work.get(field).and_then(Value::typed);
        let choice = |field| work.get(field).and_then(Value::choice);
        Some(SewWeft {
            sewn_as: choice("sewn_as")?,
            length: typed("length")?.length()?,
            lot: match work.get("lot") {
                Some(Value::Lot(lot)) => Some(*lot),
                _ => None,
            },
            as_single: matches!(work.get("as_single"), Some(Value::YesNo(true))),
            zone: match work.get("zone") {
                Some(Value::Zone(zone)) => Some(*zone),
                _ => None,
            },
            section: choice("section"),
            place: typed("place").and_then(|typed| typed.length()),
            time: typed("minutes").and_then(|typed| typed.time()),
        })
    }
}
