//! What taking in a backup would do, before anything is done.
//!
//! What it is: counts and names for a person to decide by. What it is not: the merge itself.

use litemap::LiteMap;
use measure::order;
use record::{
    field::Value,
    history::{
        entry::{Body, Entry, Key, LogId, Of},
        fold::fold,
        log::Log,
        people::{People, Person},
    },
    id::{EntryId, LotId, PersonId, WigId},
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
    let mut texts: Vec<(EntryId, String)> = Vec::new();
    for item in have.all() {
        if let Some(at) = item.address {
            texts.push((at.id, same(item)));
        }
    }
    order::sort(&mut texts);
    let mut coming: Vec<(EntryId, String, LogId)> = Vec::new();
    let mut left_out = 0;
    for item in backup.records.all() {
        match item.address {
            Some(at) => coming.push((at.id, same(item), at.log)),
            None => left_out += 1,
        }
    }
    order::sort(&mut coming);
    let mut counts: LiteMap<LogId, Counts> = LiteMap::new_vec();
    for (index, (id, text, log)) in coming.iter().enumerate() {
        let before = index.checked_sub(1).and_then(|before| coming.get(before));
        let from = texts.partition_point(|(here, _)| here < id);
        let mut here = texts[from..].iter().take_while(|(here, _)| here == id).peekable();
        let standing = here.peek().is_some() || before.is_some_and(|(earlier, ..)| earlier == id);
        let known = here.any(|(_, standing)| standing == text)
            || before.is_some_and(|(earlier, standing, _)| (earlier, standing) == (id, text));
        let counts = of(&mut counts, *log);
        match (known, standing) {
            (true, _) => counts.known += 1,
            (false, true) => counts.clashing += 1,
            (false, false) => counts.new += 1,
        }
    }
    let workshop = counts.remove(&LogId::Workshop).unwrap_or_default();
    let is_here = |log: LogId| have.all().filter_map(|item| item.address).any(|at| at.log == log);
    let mut logs: LiteMap<LogId, Log> = LiteMap::new_vec();
    for entry in have.all().chain(backup.records.all()).filter_map(Item::entry) {
        of(&mut logs, entry.log).add(entry.clone());
    }
    let name = |log| value_in(&logs, log, "name", Of::Wig);
    let mut wigs = Vec::new();
    for (log, rows) in counts.iter() {
        if let LogId::Wig(wig) = *log {
            wigs.push(WigPreview { wig, name: name(*log), new: !is_here(*log), rows: *rows });
        }
    }
    let lots_here = lots_of(have);
    let mut lots_new = Vec::new();
    for lot in lots_of(&backup.records) {
        if lots_here.binary_search(&lot).is_err() {
            lots_new.push((lot, value_in(&logs, LogId::Workshop, "lot_name", Of::Lot(lot))));
        }
    }
    let known = |id: PersonId| people.all().find(|(here, _)| *here == id).map(|(_, person)| person);
    let forgotten = |person: &Person| *person == Person::Forgotten;
    let (mut people_new, mut people_forgotten) = (0, 0);
    for (id, person) in backup.people.all() {
        match (known(id), forgotten(person)) {
            (None, false) => people_new += 1,
            (Some(known), true) if !forgotten(known) => people_forgotten += 1,
            _ => {}
        }
    }
    Preview { wigs, workshop, lots_new, people_new, people_forgotten, left_out }
}

/// What decides whether two rows are the same; the store goes by it too.
fn same(item: &Item) -> String {
    stable(&item.raw).unwrap_or_else(|| item.raw.clone())
}

/// The value of a key, made where it was not there.
fn of<V: Default>(map: &mut LiteMap<LogId, V>, key: LogId) -> &mut V {
    if map.get(&key).is_none() {
        map.insert(key, V::default());
    }
    &mut map[&key]
}

/// The lots the workshop's rows describe, each once, sorted.
fn lots_of(rows: &Rows) -> Vec<LotId> {
    let mut lots = Vec::new();
    for item in rows.all() {
        if let Some(lot) = item.entry().and_then(lot_of) {
            lots.push(lot);
        }
    }
    order::sort_unique(&mut lots);
    lots
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

fn value_in(logs: &LiteMap<LogId, Log>, log: LogId, slot: &str, of: Of) -> Option<String> {
    let key = Key::new(log, slot, of)?;
    logs.get(&log).and_then(|log| fold(log).value(key).map(Value::text))
}
