//! What the pages see: the own bench and the demo's, kept apart, and how saving goes.
//!
//! What it is: pure values and their one way of changing. What it is not: storage or a page.

use std::{cell::OnceCell, rc::Rc};

use format::{
    backup::Rows,
    row::{Decoded, Item},
    wig_file::read_wig,
};
use litemap::LiteMap;
use measure::prefs::Prefs;
use plan::{
    lengths::opened::{Opened, results},
    pace::Paces,
};
use record::{
    history::{
        entry::{Entry, LogId},
        fold::{State, fold},
        log::Log,
    },
    id::WigId,
    search::Index,
    wig::figures::Wig,
    workshop::{
        colour_locks::{ColourLock, colour_locks},
        dyes::{Dye, dyes},
        locks::{TestLock, locks},
        lots::{Lot, lots},
    },
};
use yew::{Callback, Reducible};

use super::backing::Failure;
use crate::shell::talk::t;

/// Whose records.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whose {
    /// The person's own.
    Own,
    /// The demo's: invented, and only kept while the page is open.
    Demo,
}

/// Logs that belong together: wigs and the workshop they share.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bench {
    logs: LiteMap<LogId, Rc<Log>>,
    states: LiteMap<LogId, Rc<State>>,
    lots: Rc<Vec<Lot>>,
    newer: Vec<LogId>,
    unreadable: Vec<Item>,
    locks: Rc<Vec<TestLock>>,
    later: Rc<Later>,
}

/// What is made from the records when it is first asked for.
#[derive(Debug, Default)]
struct Later {
    index: OnceCell<Index>,
    paces: OnceCell<Paces>,
}

impl PartialEq for Later {
    /// It follows from the records beside it.
    fn eq(&self, _: &Later) -> bool {
        true
    }
}

impl Bench {
    fn of_rows(rows: &Rows) -> Bench {
        let mut bench = Bench::default();
        for item in rows.all() {
            match &item.decoded {
                Decoded::Entry(entry) => bench.put(entry.clone()),
                Decoded::Newer { log, .. } => bench.newer.push(*log),
                Decoded::Unreadable { .. } => bench.unreadable.push(item.clone()),
            }
        }
        bench.settle();
        bench
    }

    fn put(&mut self, entry: Entry) {
        if self.logs.get(&entry.log).is_none() {
            self.logs.insert(entry.log, Rc::default());
        }
        Rc::make_mut(&mut self.logs[&entry.log]).add(entry);
    }

    fn settle(&mut self) {
        self.states = LiteMap::new_vec();
        for (id, log) in &self.logs {
            self.states.insert(*id, Rc::new(fold(log)));
        }
        let empty = State::default();
        let workshop = self.states.get(&LogId::Workshop).map_or(&empty, |state| state);
        let wigs = self.states.iter().filter(|(id, _)| **id != LogId::Workshop).map(|(_, state)| state.as_ref());
        self.lots = Rc::new(lots(workshop, wigs));
        self.locks = Rc::new(locks(workshop, self.each_wig()));
        self.later = Rc::default();
    }

    fn each_wig(&self) -> impl Iterator<Item = (WigId, &State)> {
        self.states.iter().filter_map(|(id, state)| match id {
            LogId::Wig(wig) => Some((*wig, state.as_ref())),
            LogId::Workshop => None,
        })
    }

    /// Heat test locks of the workshop and of all wigs.
    pub fn locks(&self) -> Rc<Vec<TestLock>> {
        self.locks.clone()
    }

    /// How far sets opened, by all wigs' records.
    pub fn opened(&self) -> Vec<Opened> {
        results(self.each_wig().map(|(_, state)| state))
    }

    /// Dye on the shelf, with what is left of it.
    pub fn dyes(&self) -> Vec<Dye> {
        dyes(&self.state(LogId::Workshop), self.each_wig().map(|(_, state)| state))
    }

    /// Colour test locks of the workshop and of all wigs.
    pub fn colour_locks(&self) -> Vec<ColourLock> {
        colour_locks(&self.state(LogId::Workshop), self.each_wig())
    }

    /// Everything done, ready to be searched.
    pub fn index(&self) -> &Index {
        self.later.index.get_or_init(|| {
            let wigs = self.each_wig().map(|(wig, state)| (LogId::Wig(wig), state));
            Index::of(wigs, &self.state(LogId::Workshop), &t)
        })
    }

    /// The person's own pace.
    pub fn paces(&self) -> &Paces {
        self.later.paces.get_or_init(|| Paces::learn(self.each_wig().map(|(_, state)| state)))
    }

    /// The state of a log; of one that is not there, the empty one.
    pub fn state(&self, log: LogId) -> Rc<State> {
        self.states.get(&log).cloned().unwrap_or_default()
    }

    /// A log; of one that is not there, the empty one.
    pub fn log(&self, log: LogId) -> Rc<Log> {
        self.logs.get(&log).cloned().unwrap_or_default()
    }

    /// Whether such a log is there.
    pub fn has(&self, log: LogId) -> bool {
        self.logs.contains_key(&log) || self.newer.contains(&log)
    }

    /// Whether a log holds what only a newer version reads, so that nothing may be written to it here.
    pub fn is_newer(&self, log: LogId) -> bool {
        self.newer.contains(&log)
    }

    /// Rows nobody can read.
    pub fn unreadable(&self) -> &[Item] {
        &self.unreadable
    }

    /// The wigs, by name.
    pub fn wigs(&self) -> Vec<(WigId, String)> {
        let mut wigs: Vec<(WigId, String)> = self
            .states
            .iter()
            .filter_map(|(id, state)| match id {
                LogId::Wig(wig) => Some((*wig, Wig::new(state).name().to_owned())),
                LogId::Workshop => None,
            })
            .filter(|(_, name)| !name.is_empty())
            .collect();
        measure::order::sort_by(&mut wigs, &|a, b| (a.1.as_str(), a.0).cmp(&(b.1.as_str(), b.0)));
        wigs
    }

    /// The lots, with what is left of them.
    pub fn lots(&self) -> Rc<Vec<Lot>> {
        self.lots.clone()
    }

    /// The highest lamport of any entry.
    pub fn highest(&self) -> u64 {
        self.logs.values().flat_map(|log| log.all()).map(|entry| entry.lamport).max().unwrap_or(0)
    }
}

/// How saving goes.
#[derive(Clone, Debug, PartialEq)]
pub enum Saving {
    /// Nothing was written yet.
    Quiet,
    /// On its way.
    Going,
    /// Safe since this minute.
    Safe(String),
    /// It failed; these entries are nowhere yet, and these pages wait to hear that they are.
    Failed(Failure, Vec<Entry>, Vec<Callback<bool>>),
}

impl Saving {
    /// One more failure: what failed before still waits beside it.
    fn failed(&mut self, failure: Failure, entries: Vec<Entry>, waiting: Vec<Callback<bool>>) {
        match self {
            Saving::Failed(why, held, hear) => {
                *why = failure;
                held.extend(
                    entries.into_iter().filter(|entry| held.iter().all(|one| one.id != entry.id)).collect::<Vec<_>>(),
                );
                hear.extend(waiting.into_iter().filter(|one| !hear.contains(one)).collect::<Vec<_>>());
            }
            other => *other = Saving::Failed(failure, entries, waiting),
        }
    }

    /// These are safe; a failure stands until all of its entries are.
    fn safe(&mut self, entries: &[Entry], at: String) {
        if let Saving::Failed(_, held, _) = self {
            held.retain(|entry| entries.iter().all(|one| one.id != entry.id));
            if !held.is_empty() {
                return;
            }
        }
        *self = Saving::Safe(at);
    }
}

/// How opening went.
#[derive(Clone, Debug, PartialEq)]
pub enum Opening {
    /// Not answered yet.
    Waiting,
    /// Open.
    Ready,
    /// Made by a newer version.
    Newer(String),
    /// It cannot be read.
    Unreadable(String),
}

/// Everything the pages see.
#[derive(Clone, Debug, PartialEq)]
pub struct Model {
    /// How opening went.
    pub opening: Opening,
    /// The person's own.
    pub own: Bench,
    /// The demo's.
    pub demo: Bench,
    /// The demo wigs.
    pub demos: Vec<WigId>,
    /// How saving goes.
    pub saving: Saving,
    /// Units.
    pub prefs: Prefs,
    /// Whether this browser kept them.
    pub prefs_kept: bool,
    /// `yes`, `no` or `unknown`: whether the browser promised to keep the records.
    pub persisted: String,
    /// `waiting` or `taken`, where there is a new version.
    pub update: Option<String>,
    /// Whether the app opens without a network.
    pub offline: bool,
    /// When the last backup was made.
    pub backed_up: Option<String>,
}

/// What changes the model.
#[derive(Debug)]
pub enum Change {
    /// Opening was answered.
    Opened(Opening, Rows),
    /// All rows were read again.
    Read(Rows),
    /// Entries are on their way.
    Going,
    /// Entries are safe (or in the demo's memory).
    Added(Whose, Vec<Entry>, String),
    /// Entries were not taken; who waits for them.
    Failed(Failure, Vec<Entry>, Vec<Callback<bool>>),
    /// The person put a failure aside.
    Aside,
    /// Units were chosen; whether this browser kept the choice.
    Prefs(Prefs, bool),
    /// What the browser says of keeping.
    Persisted(String),
    /// A new version.
    Update(String),
    /// Whether it opens offline.
    Offline(bool),
    /// A backup was made.
    BackedUp(String),
}

/// The demo wigs, as they ship.
const DEMOS: &[&str] = &[
    include_str!("../../../demo-data/copper-bob.wig.json"),
    include_str!("../../../demo-data/storm-mane.wig.json"),
    include_str!("../../../demo-data/evening-dressing.wig.json"),
];

impl Model {
    /// Before anything is read.
    pub fn start(prefs: Prefs) -> Model {
        let mut demo = Bench::default();
        let mut demos = Vec::new();
        for text in DEMOS {
            // A damaged demo file is caught by the tests; here the app goes on without it.
            let Ok(file) = read_wig(text) else { continue };
            demos.push(file.wig);
            file.rows.iter().chain(&file.lots).filter_map(Item::entry).cloned().for_each(|entry| demo.put(entry));
        }
        demo.settle();
        Model {
            opening: Opening::Waiting,
            own: Bench::default(),
            demo,
            demos,
            saving: Saving::Quiet,
            prefs,
            prefs_kept: true,
            persisted: "unknown".to_owned(),
            update: None,
            offline: false,
            backed_up: None,
        }
    }

    /// Whose a wig is; nothing where there is no such wig.
    pub fn whose(&self, wig: WigId) -> Option<Whose> {
        if self.demos.contains(&wig) {
            Some(Whose::Demo)
        } else if self.own.has(LogId::Wig(wig)) {
            Some(Whose::Own)
        } else {
            None
        }
    }

    /// The bench of one or the other.
    pub fn bench(&self, whose: Whose) -> &Bench {
        match whose {
            Whose::Own => &self.own,
            Whose::Demo => &self.demo,
        }
    }
}

impl Reducible for Model {
    type Action = Change;

    fn reduce(self: Rc<Self>, change: Change) -> Rc<Self> {
        let mut model = (*self).clone();
        match change {
            Change::Opened(opening, rows) => {
                model.opening = opening;
                model.own = Bench::of_rows(&rows);
            }
            Change::Read(rows) => model.own = Bench::of_rows(&rows),
            // A failure stays on the screen while anything else is on its way.
            Change::Going => {
                if !matches!(model.saving, Saving::Failed(..)) {
                    model.saving = Saving::Going;
                }
            }
            Change::Added(whose, entries, at) => {
                let bench = match whose {
                    Whose::Own => {
                        model.saving.safe(&entries, at);
                        &mut model.own
                    }
                    Whose::Demo => &mut model.demo,
                };
                entries.into_iter().for_each(|entry| bench.put(entry));
                bench.settle();
            }
            Change::Failed(failure, entries, waiting) => model.saving.failed(failure, entries, waiting),
            Change::Aside => model.saving = Saving::Quiet,
            Change::Prefs(prefs, kept) => {
                model.prefs = prefs;
                model.prefs_kept = kept;
            }
            Change::Persisted(persisted) => model.persisted = persisted,
            Change::Update(update) => model.update = Some(update),
            Change::Offline(offline) => model.offline = offline,
            Change::BackedUp(at) => model.backed_up = Some(at),
        }
        Rc::new(model)
    }
}
