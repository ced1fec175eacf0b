//! Colour test locks, from the workshop's log and all wigs' logs.
//!
//! What it is: what each dye did to which fibre, at which depth. What it is not: the strength fitted from them.

use crate::{
    field::Value,
    history::{
        entry::{Key, LogId, Of},
        fold::{Done, State},
    },
    id::{EntryId, LotId, WigId},
    trade::fibres::{self, Fibre},
    wig::{
        figures::Wig,
        shade::Shade,
        work::colour_lock::{self, SEEN_BY},
    },
};

/// A colour test lock.
#[derive(Clone, Debug, PartialEq)]
pub struct ColourLock {
    /// The entry that says so.
    pub entry: EntryId,
    /// The dye.
    pub dye: LotId,
    /// Its fibre: as said, else its weft's, else its wig's.
    pub fibre: &'static Fibre,
    /// The colour before, where said or known of the wig.
    pub before: Option<Shade>,
    /// Dye on the weight of fibre, as a share.
    pub depth: f64,
    /// The colour it came out.
    pub after: Shade,
    /// How it was read, one of [`SEEN_BY`].
    pub seen_by: &'static str,
    /// The wig it was recorded on.
    pub wig: Option<WigId>,
}

/// All locks: the workshop's, then each wig's, in bench order.
pub fn colour_locks<'a>(workshop: &State, wigs: impl IntoIterator<Item = (WigId, &'a State)>) -> Vec<ColourLock> {
    let mut all: Vec<ColourLock> = workshop.works().iter().filter_map(|done| read(workshop, done, None)).collect();
    for (id, state) in wigs {
        let wig = Wig::new(state);
        all.extend(state.works().iter().filter_map(|done| read(workshop, done, Some((id, &wig)))));
    }
    all
}

fn read(workshop: &State, done: &Done, of: Option<(WigId, &Wig<'_>)>) -> Option<ColourLock> {
    let work = &done.work;
    if work.kind().name != colour_lock::KIND.name {
        return None;
    }
    let lot = |name: &str| match work.get(name) {
        Some(Value::Lot(lot)) => Some(*lot),
        _ => None,
    };
    let weft = lot("lot");
    let of_weft = |slot: &str| Key::new(LogId::Workshop, slot, Of::Lot(weft?)).and_then(|key| workshop.value(key));
    let own = of.filter(|_| weft.is_none());
    let fibre = work
        .choice("fibre")
        .or_else(|| of_weft("lot_fibre").and_then(Value::choice))
        .or_else(|| own.map(|(_, wig)| wig.fibre().name));
    Some(ColourLock {
        entry: done.entry,
        dye: lot("stock")?,
        fibre: fibres::fibre(fibre.unwrap_or(fibres::NAMES[0])),
        before: work
            .get("base_shade")
            .and_then(Value::shade)
            .or_else(|| of_weft("lot_shade").and_then(Value::shade))
            .or_else(|| own.and_then(|(_, wig)| wig.base_shade())),
        depth: work.get("depth").and_then(Value::typed)?.ratio()?,
        after: work.get("result_shade").and_then(Value::shade)?,
        seen_by: work.choice("seen_by").unwrap_or(SEEN_BY[2]),
        wig: of.map(|(id, _)| id),
    })
}
