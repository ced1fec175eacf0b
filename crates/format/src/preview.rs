//! What taking in a backup would do, before anything is done.
//!
//! What it is: counts and names for a person to decide by. What it is not: the merge itself.

use std::collections::{BTreeMap, BTreeSet};

use record::{
    field::Value,
    history::{
        entry::{Body, Entry, Key, LogId, Of},
        fold::fold,
        log::Log,
        people::{People, Person},
    },
    id::{EntryId, LotId, WigId},
};

use crate::{
    backup::{Backup, Rows},
    json::stable,
    row::Item,
};

/// What would become of some rows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Not here yet.
    pub new: usize,
    /// Here already, to the letter.
    pub known: usize,
    /// Here with other contents: both would be kept.
    pub clashing: usize,
}

/// What would become of one wig.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WigPreview {
    /// Which.
    pub wig: WigId,
    /// Its name after the merge.
    pub name: Option<String>,
    /// Whether it is not here at all yet.
    pub new: bool,
    /// Its rows.
    pub rows: Counts,
}

/// What taking in a backup would do.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Preview {
    /// The wigs the backup speaks of, by identity.
    pub wigs: Vec<WigPreview>,
    /// The workshop's rows.
    pub workshop: Counts,
    /// Lots that are not here yet, with their names.
    pub lots_new: Vec<(LotId, Option<String>)>,
    /// People who are not here yet.
    pub people_new: usize,
    /// People known here who would be forgotten.
    pub people_forgotten: usize,
    /// Rows that do not say where they belong: they stay in the file.
    pub left_out: usize,
}

/// Looks at what taking in a backup would do to what is here.
pub fn preview(backup: &Backup, have: &Rows, people: &People) -> Preview {
    let mut here: BTreeMap<EntryId, BTreeSet<String>> = BTreeMap::new();
    for item in have.all() {
        if let Some(at) = item.address {
            here.entry(at.id).or_default().insert(same(item));
        }
    }
    let mut counts: BTreeMap<LogId, Counts> = BTreeMap::new();
    let mut left_out = 0;
    for item in backup.records.all() {
        let Some(at) = item.address else {
            left_out += 1;
            continue;
        };
        let log = counts.entry(at.log).or_default();
        let texts = here.entry(at.id).or_default();
        let first = texts.is_empty();
        match (texts.insert(same(item)), first) {
            (true, true) => log.new += 1,
            (true, false) => log.clashing += 1,
            (false, _) => log.known += 1,
        }
    }
    let workshop = counts.remove(&LogId::Workshop).unwrap_or_default();
    let here: BTreeSet<LogId> = have.all().filter_map(|item| item.address).map(|at| at.log).collect();
    let mut logs: BTreeMap<LogId, Log> = BTreeMap::new();
    for entry in have.all().chain(backup.records.all()).filter_map(Item::entry) {
        logs.entry(entry.log).or_default().add(entry.clone());
    }
    let name = |log| value_in(&logs, log, "name", Of::Wig);
    let wigs = counts.into_iter().filter_map(|(log, rows)| match log {
        LogId::Wig(wig) => Some(WigPreview { wig, name: name(log), new: !here.contains(&log), rows }),
        LogId::Workshop => None,
    });
    let lots: BTreeSet<LotId> = lots_of(&backup.records).difference(&lots_of(have)).copied().collect();
    let lot_name = |lot| value_in(&logs, LogId::Workshop, "lot_name", Of::Lot(lot));
    let known: BTreeMap<_, _> = people.all().collect();
    let forgotten = |person: &Person| *person == Person::Forgotten;
    Preview {
        wigs: wigs.collect(),
        workshop,
        lots_new: lots.into_iter().map(|lot| (lot, lot_name(lot))).collect(),
        people_new: backup.people.all().filter(|(id, person)| !known.contains_key(id) && !forgotten(person)).count(),
        people_forgotten: backup
            .people
            .all()
            .filter(|(id, person)| forgotten(person) && known.get(id).is_some_and(|known| !forgotten(known)))
            .count(),
        left_out,
    }
}

/// What decides whether two rows are the same; the store goes by it too.
fn same(item: &Item) -> String {
    stable(&item.raw).unwrap_or_else(|| item.raw.clone())
}

fn lots_of(rows: &Rows) -> BTreeSet<LotId> {
    rows.all().filter_map(Item::entry).filter_map(lot_of).collect()
}

/// The lot that an entry of the workshop's log describes.
pub(crate) fn lot_of(entry: &Entry) -> Option<LotId> {
    match (&entry.log, &entry.body) {
        (LogId::Workshop, Body::Set(setting)) => match setting.key.of {
            Of::Lot(lot) => Some(lot),
            _ => None,
        },
        _ => None,
    }
}

fn value_in(logs: &BTreeMap<LogId, Log>, log: LogId, slot: &str, of: Of) -> Option<String> {
    let key = Key::new(log, slot, of)?;
    logs.get(&log).and_then(|log| fold(log).value(key).map(Value::text))
}
