//! The fold: from a log to the state it amounts to.
//!
//! What it is: pure and total: whatever was merged opens, with its oddities beside it.
//! What it is not: advice about the state (see the `plan` room).

use litemap::LiteMap;
use measure::{civil::Minute, order};

use super::{
    entry::{Amendment, Body, Entry, Key, Says, Setting},
    log::Log,
};
use crate::{field::Value, id::EntryId, wig::work::Work};

/// What a log amounts to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct State {
    values: LiteMap<Key, Held>,
    works: Vec<Done>,
    oddities: Vec<Oddity>,
    last_done: Option<Minute>,
}

/// A value that stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Held {
    /// The value; nothing where it was taken back.
    pub value: Option<Value>,
    /// The entry that set it.
    pub by: EntryId,
    /// All settings nobody has replaced, that one included: more than one is two answers.
    pub heads: Vec<EntryId>,
    /// Whether the heads differ in what they say.
    pub two_answers: bool,
}

/// Work that stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Done {
    /// Its original entry.
    pub entry: EntryId,
    /// When it was done, as put right.
    pub done: Minute,
    /// Its original entry's place on the logs' clock.
    pub lamport: u64,
    /// The work, as put right.
    pub work: Work,
    /// Whether it was put right.
    pub amended: bool,
}

/// Something a merged history may hold that no single bench would.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Oddity {
    /// An amendment of an entry that is not here.
    TargetMissing(EntryId),
    /// An amendment of an amendment.
    TargetIsAmendment(EntryId),
    /// An amendment that turns work into a value, a value into work, or one value into another.
    OtherKind(EntryId),
    /// Two corrections that had not seen each other.
    TwoCorrections(EntryId),
    /// Two values that had not seen each other.
    TwoAnswers(EntryId),
    /// One identity with two contents.
    Clash(EntryId),
}

/// An original entry as it stands after amendments.
struct Standing<'a> {
    entry: &'a Entry,
    done: Minute,
    says: StandingSays<'a>,
    amended: bool,
}

enum StandingSays<'a> {
    Work(&'a Work),
    Set(&'a Setting, &'a Option<Value>),
}

/// Folds a log.
pub fn fold(log: &Log) -> State {
    let mut oddities: Vec<Oddity> = log.clashes().map(|(id, _)| Oddity::Clash(id)).collect();
    let amendments = amendments(log, &mut oddities);

    let mut standing: Vec<Standing<'_>> =
        log.entries().filter_map(|entry| stand(log, entry, amendments.get(&entry.id), &mut oddities)).collect();
    let place = |one: &Standing<'_>| (one.done, one.entry.lamport, one.entry.id);
    order::sort_by(&mut standing, &|a, b| place(a).cmp(&place(b)));

    let last_done = standing.iter().map(|one| one.done).max();
    let mut settings: LiteMap<Key, Vec<&Standing<'_>>> = LiteMap::new_vec();
    let mut works = Vec::new();
    for one in &standing {
        match &one.says {
            StandingSays::Work(work) => works.push(Done {
                entry: one.entry.id,
                done: one.done,
                lamport: one.entry.lamport,
                work: (*work).clone(),
                amended: one.amended,
            }),
            StandingSays::Set(setting, _) => group(&mut settings, setting.key, one),
        }
    }
    let mut values = LiteMap::new_vec();
    for (key, all) in &settings {
        if let Some(held) = held(log, all, &mut oddities) {
            values.insert(*key, held);
        }
    }
    order::sort_unique(&mut oddities);
    State { values, works, oddities, last_done }
}

fn group<K: Ord, V>(groups: &mut LiteMap<K, Vec<V>>, key: K, value: V) {
    match groups.get_mut(&key) {
        Some(group) => group.push(value),
        None => {
            groups.insert(key, vec![value]);
        }
    }
}

/// The amendments of an entry that nobody has replaced: what a new one is made over.
pub fn amendments_over(log: &Log, target: EntryId) -> Vec<EntryId> {
    let all: Vec<(&Entry, &Amendment)> = amendments(log, &mut Vec::new()).remove(&target).unwrap_or_default();
    let all: Vec<Link<'_>> = all.iter().map(|(entry, amendment)| (*entry, amendment.over.as_slice())).collect();
    heads(log, &all)
}

/// The amendments of each original, those that name an original only.
fn amendments<'a>(log: &'a Log, oddities: &mut Vec<Oddity>) -> LiteMap<EntryId, Vec<(&'a Entry, &'a Amendment)>> {
    let mut by_target: LiteMap<EntryId, Vec<(&Entry, &Amendment)>> = LiteMap::new_vec();
    for entry in log.entries() {
        let Body::Amend(amendment) = &entry.body else { continue };
        match log.get(amendment.target).map(|target| (&target.body, target.log == entry.log)) {
            None | Some((_, false)) => oddities.push(Oddity::TargetMissing(entry.id)),
            Some((Body::Amend(_), _)) => oddities.push(Oddity::TargetIsAmendment(entry.id)),
            Some((Body::Work(_), _))
                if !matches!(amendment.to.as_ref().map(|to| &to.says), None | Some(Says::Work(_))) =>
            {
                oddities.push(Oddity::OtherKind(entry.id));
            }
            Some((Body::Set(setting), _))
                if !amendment
                    .to
                    .as_ref()
                    .is_none_or(|to| matches!(&to.says, Says::Value(key, _) if *key == setting.key)) =>
            {
                oddities.push(Oddity::OtherKind(entry.id));
            }
            Some(_) => group(&mut by_target, amendment.target, (entry, amendment)),
        }
    }
    by_target
}

fn stand<'a>(
    log: &Log,
    entry: &'a Entry,
    amendments: Option<&Vec<(&'a Entry, &'a Amendment)>>,
    oddities: &mut Vec<Oddity>,
) -> Option<Standing<'a>> {
    let original = match &entry.body {
        Body::Work(work) => StandingSays::Work(work),
        Body::Set(setting) => StandingSays::Set(setting, &setting.value),
        Body::Amend(_) => return None,
    };
    let Some(amendments) = amendments else {
        return Some(Standing { entry, done: entry.done, says: original, amended: false });
    };
    let all: Vec<Link<'_>> = amendments.iter().map(|(entry, amendment)| (*entry, amendment.over.as_slice())).collect();
    let heads = heads(log, &all);
    let differ = heads
        .iter()
        .any(|head| says_of(amendments, *head) != heads.first().and_then(|first| says_of(amendments, *first)));
    if differ {
        oddities.push(Oddity::TwoCorrections(entry.id));
    }
    let winner = heads.last()?;
    let to = says_of(amendments, *winner)?.as_ref()?;
    let says = match (&to.says, original) {
        (Says::Work(work), StandingSays::Work(_)) => StandingSays::Work(work),
        (Says::Value(_, value), StandingSays::Set(setting, _)) => StandingSays::Set(setting, value),
        (_, original) => original,
    };
    Some(Standing { entry, done: to.done, says, amended: true })
}

fn says_of<'a>(amendments: &[(&'a Entry, &'a Amendment)], id: EntryId) -> Option<&'a Option<super::entry::Corrected>> {
    amendments.iter().find(|(entry, _)| entry.id == id).map(|(_, amendment)| &amendment.to)
}

fn held(log: &Log, all: &[&Standing<'_>], oddities: &mut Vec<Oddity>) -> Option<Held> {
    let links: Vec<Link<'_>> = all
        .iter()
        .filter_map(|one| match &one.says {
            StandingSays::Set(setting, _) => Some((one.entry, setting.over.as_slice())),
            StandingSays::Work(_) => None,
        })
        .collect();
    let value_of = |id: EntryId| {
        all.iter().find(|one| one.entry.id == id).and_then(|one| match &one.says {
            StandingSays::Set(_, value) => Some(*value),
            StandingSays::Work(_) => None,
        })
    };
    let heads = heads(log, &links);
    let by = *heads.last()?;
    let value = value_of(by)?;
    let two_answers = heads.iter().any(|head| value_of(*head) != Some(value));
    if two_answers {
        oddities.push(Oddity::TwoAnswers(by));
    }
    Some(Held { value: value.clone(), by, heads, two_answers })
}

/// An entry and those it was made over.
type Link<'a> = (&'a Entry, &'a [EntryId]);

/// Those that no other replaced, lowest (lamport, id) first.
///
/// What an undone entry had replaced stays replaced by whoever replaced that one.
fn heads(log: &Log, all: &[Link<'_>]) -> Vec<EntryId> {
    let mut replaced: Vec<EntryId> = Vec::new();
    for (entry, over) in all {
        let mut seen: Vec<EntryId> = Vec::new();
        let mut to_see: Vec<(u64, EntryId)> = over.iter().map(|id| (entry.lamport, *id)).collect();
        while let Some((above, id)) = to_see.pop() {
            // Only a later lamport can have seen an earlier one, so rings cannot hide an answer.
            let Some(earlier) = log.get(id).filter(|earlier| earlier.lamport < above && !seen.contains(&id)) else {
                continue;
            };
            seen.push(id);
            if all.iter().any(|(standing, _)| standing.id == id) {
                replaced.push(id);
            } else if let Body::Set(setting) = &earlier.body {
                to_see.extend(setting.over.iter().map(|id| (earlier.lamport, *id)));
            }
        }
    }
    let mut heads: Vec<(u64, EntryId)> = all
        .iter()
        .filter(|(entry, _)| !replaced.contains(&entry.id))
        .map(|(entry, _)| (entry.lamport, entry.id))
        .collect();
    order::sort(&mut heads);
    heads.into_iter().map(|(_, id)| id).collect()
}

impl State {
    /// The value at an address, with who set it.
    pub fn held(&self, key: Key) -> Option<&Held> {
        self.values.get(&key)
    }

    /// The value at an address.
    pub fn value(&self, key: Key) -> Option<&Value> {
        self.values.get(&key).and_then(|held| held.value.as_ref())
    }

    /// All values that stand.
    pub fn values(&self) -> impl Iterator<Item = (Key, &Held)> {
        self.values.iter().map(|(key, held)| (*key, held))
    }

    /// All work that stands, in bench order.
    pub fn works(&self) -> &[Done] {
        &self.works
    }

    /// The same with only so much of its work done: what it was like then. Values stand as they are known now.
    #[must_use]
    pub fn after(&self, works: usize) -> State {
        let mut state = self.clone();
        state.works.truncate(works);
        state
    }

    /// What is odd about this history.
    pub fn oddities(&self) -> &[Oddity] {
        &self.oddities
    }

    /// The latest time anything was done.
    pub fn last_done(&self) -> Option<Minute> {
        self.last_done
    }

    /// What a new setting of this value replaces.
    pub fn over(&self, key: Key) -> Vec<EntryId> {
        self.values.get(&key).map(|held| held.heads.clone()).unwrap_or_default()
    }
}
