//! What a wig is like at a moment of its history: bound or loose, wet or dry, clean or sprayed, set, dyed, cut.
//!
//! What it is: a pure, total replay of work in bench order: whatever was merged gives a condition.
//! What it is not: advice (see the `plan` room's `care`), or the figures of the wig (see `figures`).

mod replay;
mod zone;

use measure::quantity::ThermodynamicTemperature;

pub use zone::{Dyed, Set, Sewn, ZoneCondition};

use super::{figures::Wig, zone::Zone};
use crate::{
    history::fold::Done,
    id::{EntryId, LotId},
};

/// The condition of a wig.
#[derive(Clone, Debug, PartialEq)]
pub struct Condition {
    /// Zone by zone, in the order of the zones.
    pub zones: [ZoneCondition; 8],
    /// What the block it is pinned on is made of.
    pub block: Option<&'static str>,
    /// What was glued, and where, while it is glued.
    pub glued: Vec<Glued>,
    /// Lots of weft that went through a dye bath, with the batch of dye.
    pub dyed_lots: Vec<(LotId, Option<String>)>,
    /// Heat test locks made on this wig.
    pub test_locks: usize,
    /// Whether it was worn since it was last disinfected.
    pub worn: bool,
    /// How it is put away, where it is.
    pub stored: Option<&'static str>,
    /// To whom it was handed, while it is away.
    pub handed_to: Option<String>,
}

/// Something glued.
#[derive(Clone, Debug, PartialEq)]
pub struct Glued {
    /// The kind of glue.
    pub glue: &'static str,
    /// To what.
    pub to: Option<&'static str>,
    /// The entry that says so.
    pub by: EntryId,
}

impl Condition {
    /// As it was bought: loose, dry, clean, of a fall that nobody told.
    pub fn bought() -> Condition {
        Condition {
            zones: Zone::ALL.map(|_| ZoneCondition::default()),
            block: None,
            glued: Vec::new(),
            dyed_lots: Vec::new(),
            test_locks: 0,
            worn: false,
            stored: None,
            handed_to: None,
        }
    }

    /// As it is after all work that stands.
    pub fn now(wig: &Wig<'_>) -> Condition {
        Condition::after(wig, wig.state().works())
    }

    /// As it was right after one entry; as it was bought where no such work stands.
    pub fn at(wig: &Wig<'_>, entry: EntryId) -> Condition {
        let works = wig.state().works();
        let upto = works.iter().position(|done| done.entry == entry).map_or(0, |at| at + 1);
        Condition::after(wig, works.get(..upto).unwrap_or_default())
    }

    /// As it is after some work.
    pub fn after(wig: &Wig<'_>, works: &[Done]) -> Condition {
        let mut condition = Condition::bought();
        for done in works {
            condition.apply(wig, done);
        }
        condition
    }

    /// The zones a condition holds in.
    pub fn zones_where(&self, holds: impl Fn(&ZoneCondition) -> bool) -> Vec<Zone> {
        Zone::ALL.into_iter().filter(|zone| self.zones.get(*zone as usize).is_some_and(&holds)).collect()
    }

    /// The condition of a zone.
    pub fn zone(&self, zone: Zone) -> &ZoneCondition {
        &self.zones[zone as usize]
    }
}

/// Heat this near below a set's own temperature loosens it, K. Common practice, no source: a set lasts until it meets the
/// heat it was made with, and thermometers and pots differ by that much.
pub const LOOSENS_WITHIN: f64 = 10.0;

/// Whether heat undoes a set made at another heat; unknown figures undo nothing.
pub fn undoes(heat: Option<ThermodynamicTemperature>, set: Option<ThermodynamicTemperature>) -> bool {
    match (heat, set) {
        (Some(heat), Some(set)) => heat.value >= set.value - LOOSENS_WITHIN,
        _ => false,
    }
}
