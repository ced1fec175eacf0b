//! A wig of which every field is filled: slots, lots, every kind of work both done and planned.
//!
//! What it is: a walk over the tables, so that a field added later is met by itself. What it is not: a sensible wig.

use format::{file::Head, row::Item, wig_file::write_wig};
use measure::{civil::Minute, prefs::Prefs};
use record::{
    field::{Field, Holds},
    history::{
        desk,
        entry::{Body, Entry, LogId, Of, Written},
        fold::fold,
        log::Log,
    },
    id::{EntryId, Id, LotId, StepId, WigId},
    wig::{
        slots::{Per, SLOTS},
        steps::{GAP, Planned},
        work::{Group, KINDS, Work},
        zone::Zone,
    },
    workshop,
};

/// Where a field stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// A slot of the wig, of a zone, of a lot of it.
    Slot,
    /// A slot of a lot.
    Lot,
    /// Work that was done, by its kind.
    Done(&'static str),
    /// Work that is planned.
    Planned(&'static str),
    /// Why a planned step is left out.
    Skipped,
}

/// The field that holds why a step is left out.
pub const WHY: Field = record::field::field("why", Holds::Text(400));

/// The wig's log and the workshop's.
#[derive(Debug, Default)]
pub struct Full {
    /// The wig's.
    pub wig: Log,
    /// The workshop's.
    pub workshop: Log,
    count: u16,
    more: u8,
}

/// The one wig.
pub const WIG: WigId = WigId(Id::from_bytes([0x77; 16]));
/// Its one lot.
pub const LOT: LotId = LotId(Id::from_bytes([0x4c; 16]));

/// Something that any field of this sort may hold.
pub fn usual(field: &Field) -> Option<String> {
    let middle = |limit: &measure::limit::Limit| {
        let middle = (limit.low + limit.high) / 2.0;
        let text = if middle < 1.0 { format!("{middle:.2}") } else { format!("{}", middle.round()) };
        format!("{text} {}", limit.unit.symbol())
    };
    Some(match &field.holds {
        Holds::Quantity(limit) => middle(limit),
        Holds::AnyOf(limits) => middle(limits.first()?),
        Holds::Money => "12.34".to_owned(),
        Holds::Count(low, high) => (low + 1).min(*high).to_string(),
        Holds::Text(_) => field.name.to_owned(),
        Holds::Choice(choices) => (*choices.first()?).to_owned(),
        Holds::Date => "2029-04-14".to_owned(),
        Holds::Zone => "back".to_owned(),
        Holds::Lot => LOT.to_string(),
        Holds::YesNo => "yes".to_owned(),
        Holds::Zones => "back nape".to_owned(),
        Holds::Photo => "ab".repeat(32),
        Holds::Shade => "#c04a7a".to_owned(),
        Holds::Along => "#3b2a20 to 40, #c04a7a".to_owned(),
        Holds::Step | Holds::Planned => return None,
    })
}

/// Fills every field with what `fill` says; where it says nothing the field is left out, unless it is needed.
///
/// # Errors
/// The field that refused.
pub fn full(fill: &mut dyn FnMut(Place, &Field) -> Option<String>) -> Result<Full, String> {
    let mut all = Full::default();
    for field in workshop::slots::SLOTS {
        if let Some(text) = fill(Place::Lot, field) {
            all.set(LogId::Workshop, field.name, Of::Lot(LOT), &text)?;
        }
    }
    for slot in SLOTS {
        let of = match slot.per {
            Per::Wig => vec![Of::Wig],
            Per::Zone => Zone::ALL.map(Of::Zone).to_vec(),
            Per::Lot => vec![Of::Lot(LOT)],
            Per::Step => continue,
        };
        for of in of {
            if let Some(text) = fill(Place::Slot, &slot.field) {
                all.set(LogId::Wig(WIG), slot.field.name, of, &text)?;
            }
        }
    }
    for kind in KINDS {
        let mut work = |place: Place| {
            let mut texts = Vec::new();
            for field in kind.every_field() {
                let text = fill(place, field).or_else(|| if field.required { usual(field) } else { None });
                texts.extend(text.map(|text| (field.name, text)));
            }
            let pairs = texts.iter().map(|(name, text)| (*name, text.as_str()));
            Work::read(kind, pairs, &Prefs::default()).map_err(|refusals| format!("{}: {refusals:?}", kind.name))
        };
        let done = work(Place::Done(kind.name))?;
        let planned = work(Place::Planned(kind.name))?;
        if kind.group == Group::Workshop {
            all.add(LogId::Workshop, Body::Work(done));
            continue;
        }
        all.add(LogId::Wig(WIG), Body::Work(done));
        for skipped in [None, Some(fill(Place::Skipped, &WHY).unwrap_or_default())] {
            all.more += 1;
            let step = StepId(Id::from_bytes([all.more; 16]));
            let place = u32::from(all.more) * GAP;
            let body = desk::plan_step(&fold(&all.wig), step, Planned { place, work: planned.clone(), skipped });
            all.add(LogId::Wig(WIG), body);
        }
    }
    Ok(all)
}

impl Full {
    fn set(&mut self, log: LogId, slot: &str, of: Of, text: &str) -> Result<(), String> {
        let state = fold(if log == LogId::Workshop { &self.workshop } else { &self.wig });
        let body = desk::set(&state, log, slot, of, text, &Prefs::default())
            .map_err(|refusal| format!("{slot} = {text}: {refusal:?}"))?;
        self.add(log, body);
        Ok(())
    }

    fn add(&mut self, log: LogId, body: Body) {
        self.count += 1;
        let (Some(done), Some(written)) = (Minute::read("2026-10-01T10:00"), Written::read("2026-10-01T10:00:00Z"))
        else {
            return;
        };
        let mut id = [0xe0; 16];
        let [high, low] = self.count.to_be_bytes();
        id[14] |= high;
        id[15] = low;
        let id = EntryId(Id::from_bytes(id));
        let entry = Entry { lamport: u64::from(self.count), id, log, done, written, by: None, body };
        if log == LogId::Workshop { &mut self.workshop } else { &mut self.wig }.add(entry);
    }

    /// The wig as a file.
    ///
    /// # Errors
    /// Why it cannot be written.
    pub fn file(&self) -> Result<String, String> {
        let items = |log: &Log| log.all().map(Item::of).collect::<Result<Vec<Item>, _>>();
        let said = |say: measure::say::Say| format!("{say:?}");
        let head = Head { producer: "Weftbook tests".to_owned(), made: "2026-10-01".to_owned() };
        let (rows, workshop) = (items(&self.wig).map_err(said)?, items(&self.workshop).map_err(said)?);
        write_wig(&head, true, WIG, &rows, &workshop).map_err(said)
    }
}
