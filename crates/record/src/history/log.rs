//! A set of entries, and the union of two.
//!
//! What it is: merge by identity: the same result in any order, any number of times.
//! What it is not: what the entries amount to (see `fold`).

use litemap::LiteMap;
use measure::order;

use super::entry::Entry;
use crate::id::EntryId;

/// Entries by identity; the same identity with other contents is kept beside it, sorted, never dropped.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Log {
    entries: LiteMap<EntryId, Vec<Entry>>,
}

/// What adding entries did.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Added {
    /// Not there before.
    pub new: usize,
    /// There already, to the letter.
    pub known: usize,
    /// Same identity, other contents: both kept.
    pub clashing: usize,
}

impl Log {
    /// A log of these entries.
    pub fn of(entries: impl IntoIterator<Item = Entry>) -> Log {
        let mut entries: Vec<Entry> = entries.into_iter().collect();
        // In order of identity each is added at the end, however many there are.
        order::sort_by(&mut entries, &|a, b| a.id.cmp(&b.id));
        let mut log = Log::default();
        for entry in entries {
            log.add(entry);
        }
        log
    }

    /// Adds one entry.
    pub fn add(&mut self, entry: Entry) -> Added {
        let Some(same_id) = self.entries.get_mut(&entry.id) else {
            self.entries.insert(entry.id, vec![entry]);
            return Added { new: 1, ..Added::default() };
        };
        match same_id.binary_search(&entry) {
            Ok(_) => Added { known: 1, ..Added::default() },
            Err(place) => {
                same_id.insert(place, entry);
                Added { clashing: 1, ..Added::default() }
            }
        }
    }

    /// Adds all entries of another log.
    pub fn merge(&mut self, other: &Log) -> Added {
        let mut added = Added::default();
        for entry in other.all() {
            let one = self.add(entry.clone());
            added.new += one.new;
            added.known += one.known;
            added.clashing += one.clashing;
        }
        added
    }

    /// The entry that counts for each identity: of clashing ones the greatest, on every device the same.
    pub fn entries(&self) -> impl Iterator<Item = &Entry> {
        self.entries.values().filter_map(|same_id| same_id.last())
    }

    /// Every entry, clashing ones too.
    pub fn all(&self) -> impl Iterator<Item = &Entry> {
        self.entries.values().flatten()
    }

    /// Identities that stand for more than one content.
    pub fn clashes(&self) -> impl Iterator<Item = (EntryId, &[Entry])> {
        self.entries.iter().filter(|(_, same_id)| same_id.len() > 1).map(|(id, same_id)| (*id, same_id.as_slice()))
    }

    /// One entry.
    pub fn get(&self, id: EntryId) -> Option<&Entry> {
        self.entries.get(&id).and_then(|same_id| same_id.last())
    }

    /// Whether nothing is in it.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }
}
