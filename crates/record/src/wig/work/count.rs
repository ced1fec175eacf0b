//! Counting what is left of a lot: the only thing that says how much there is.
//!
//! What it is: an entry of the workshop's log. What it is not: use, which wigs record.

use measure::quantity::{Length, units};

use super::{Group, Kind, Work};
use crate::{
    field::{
        Holds::{Count, Lot, Quantity},
        Value, field, required,
    },
    id::LotId,
    limits,
};

/// A count.
pub const KIND: Kind = Kind {
    name: "count",
    version: 0,
    group: Group::Workshop,
    fields: &[
        required("lot", Lot),
        field("whole_packs", Count(0, 1000)),
        field("opened", Quantity(&limits::WEFT_PIECE)),
    ],
    common: &[],
};

/// What was counted of a lot.
#[derive(Clone, Debug, PartialEq)]
pub struct Counted {
    /// The lot.
    pub lot: LotId,
    /// Packs never cut into.
    pub whole_packs: u32,
    /// The longest length left of opened ones.
    pub opened: Length,
}

impl Counted {
    /// Reads work of this kind.
    pub fn of(work: &Work) -> Option<Counted> {
        let Some(Value::Lot(lot)) = work.get("lot") else { return None };
        (work.kind().name == KIND.name).then(|| Counted {
            lot: *lot,
            whole_packs: work.get("whole_packs").and_then(Value::count).unwrap_or(0),
            opened: work
                .get("opened")
                .and_then(Value::typed)
                .and_then(|typed| typed.length())
                .unwrap_or_else(|| Length::new::<units::meter>(0.0)),
        })
    }
}
