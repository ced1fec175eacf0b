//! The desk: what a page does to records, and hears of it.
//!
//! What it is: the model with the ways to write. What it is not: what is written.

use std::rc::Rc;

use measure::civil::Minute;
use record::{
    history::{
        desk::usual_done,
        entry::{Body, Entry, LogId, Written},
    },
    id::{EntryId, Id, LotId, StepId, WigId},
    wig::work::Work,
};
use yew::{Callback, UseReducerHandle, hook, use_context};

use super::{
    backing::{Backing, Browser, Failure, Opened},
    model::{Change, Model, Opening, Saving, Whose},
};
use crate::shell::js;

/// The model and the ways to write; one counted pointer, since every handler on the page holds it.
#[derive(Clone)]
pub struct Desk {
    model: Rc<UseReducerHandle<Model>>,
}

impl PartialEq for Desk {
    fn eq(&self, other: &Desk) -> bool {
        Rc::ptr_eq(&self.model, &other.model)
    }
}

/// The desk of the app.
#[hook]
pub fn use_desk() -> Desk {
    // The root always gives one; without it nothing could be shown at all.
    match use_context::<Desk>() {
        Some(desk) => desk,
        None => wasm_bindgen::throw_str("a page outside the app"),
    }
}

impl Desk {
    /// A desk over a model.
    pub fn new(model: UseReducerHandle<Model>) -> Desk {
        Desk { model: Rc::new(model) }
    }

    /// What the pages see.
    pub fn model(&self) -> &Model {
        &self.model
    }

    /// Changes the model.
    pub fn change(&self, change: Change) {
        self.model.dispatch(change);
    }

    /// Opens the records, listens to other tabs and to new versions.
    pub fn open(&self) {
        let desk = self.clone();
        wasm_bindgen_futures::spawn_local(async move {
            let change = match Browser.open().await {
                Ok(Opened::Ready(rows)) => Change::Opened(Opening::Ready, rows),
                Ok(Opened::Newer(detail)) => Change::Opened(Opening::Newer(detail), Default::default()),
                Ok(Opened::Unreadable(detail)) => Change::Opened(Opening::Unreadable(detail), Default::default()),
                Err(failure) => Change::Opened(
                    Opening::Unreadable(format!("{} {}", failure.message, failure.detail)),
                    Default::default(),
                ),
            };
            desk.change(change);
            desk.change(Change::Persisted(js::persisted().await));
            desk.change(Change::Offline(js::offline_ready().await));
            if let Ok(Some(at)) = js::get_meta("last_backup").await {
                desk.change(Change::BackedUp(at));
            }
        });
        let dispatch = self.model.dispatcher();
        js::subscribe(move |_| {
            let dispatch = dispatch.clone();
            wasm_bindgen_futures::spawn_local(async move {
                // Another tab's rows are safe already; where they cannot be read now, the next news tries again.
                if let Ok(rows) = Browser.all().await {
                    dispatch.dispatch(Change::Read(rows));
                }
            });
        });
        let dispatch = self.model.dispatcher();
        js::watch_update(move |what| dispatch.dispatch(Change::Update(what)));
    }

    /// Reads everything again.
    pub fn read_again(&self) {
        let desk = self.clone();
        wasm_bindgen_futures::spawn_local(async move {
            match Browser.all().await {
                Ok(rows) => desk.change(Change::Read(rows)),
                Err(failure) => desk.change(Change::Failed(failure, Vec::new(), Vec::new())),
            }
        });
    }

    /// Writes entries; `then` hears whether they are safe. `done` is now unless the person said otherwise.
    pub fn write(&self, whose: Whose, bodies: Vec<(LogId, Body)>, done: Option<Minute>, then: Callback<bool>) {
        // One moment for all of it: what was written together can be taken back together.
        let written = Written::read(&js::now_utc());
        let entries: Vec<Entry> =
            bodies.into_iter().filter_map(|(log, body)| self.entry(whose, log, body, done, written.clone()?)).collect();
        self.write_entries(whose, entries, vec![then]);
    }

    fn entry(&self, whose: Whose, log: LogId, body: Body, done: Option<Minute>, written: Written) -> Option<Entry> {
        let state = self.model.bench(whose).state(log);
        let now = Minute::read(&js::now_local_minute())?;
        Some(Entry {
            lamport: 0,
            id: EntryId(Id::read(&js::random_id())?),
            log,
            done: done.unwrap_or_else(|| usual_done(&state, now)),
            written,
            by: None,
            body,
        })
    }

    fn write_entries(&self, whose: Whose, mut entries: Vec<Entry>, waiting: Vec<Callback<bool>>) {
        let tell = |waiting: &[Callback<bool>], safe: bool| waiting.iter().for_each(|one| one.emit(safe));
        if whose == Whose::Demo {
            let highest = self.model.demo.highest();
            for (index, entry) in entries.iter_mut().enumerate() {
                entry.lamport = highest + 1 + index as u64;
            }
            self.change(Change::Added(whose, entries, String::new()));
            tell(&waiting, true);
            return;
        }
        let refused = entries.iter().any(|entry| self.model.own.is_newer(entry.log));
        if refused {
            let failure = Failure {
                kind: "newer".to_owned(),
                message: crate::shell::talk::t("web.newer_wig"),
                detail: String::new(),
            };
            tell(&waiting, false);
            self.change(Change::Failed(failure, entries, waiting));
            return;
        }
        self.change(Change::Going);
        let desk = self.clone();
        wasm_bindgen_futures::spawn_local(async move {
            match Browser.add(entries.clone()).await {
                Ok(stored) => {
                    let at = js::now_local_minute();
                    let clock = at.split_once('T').map_or(at.clone(), |(_, clock)| clock.to_owned());
                    desk.change(Change::Added(whose, stored, clock));
                    tell(&waiting, true);
                }
                Err(failure) => {
                    tell(&waiting, false);
                    desk.change(Change::Failed(failure, entries, waiting));
                }
            }
        });
    }

    /// Tries entries that failed once more.
    pub fn try_again(&self) {
        if let Saving::Failed(_, entries, waiting) = &self.model.saving {
            // Whoever waited since the first attempt hears of this one.
            self.write_entries(Whose::Own, entries.clone(), waiting.clone());
        }
    }

    /// Puts work into a wig's plan, each piece where it is least out of order.
    pub fn plan_works(&self, whose: Whose, log: LogId, works: Vec<Work>, then: Callback<bool>) {
        let state = self.state(whose, log);
        let mut ids: Vec<StepId> = works.iter().filter_map(|_| self.new_step()).collect();
        // A browser without chance gives no identities: then nothing can be planned.
        if ids.len() < works.len() {
            return;
        }
        let mut fresh = || ids.pop().unwrap_or(StepId(Id::from_bytes([0; 16])));
        let bodies = plan::steps::plan(&state, works, &mut fresh);
        self.write(whose, bodies.into_iter().map(|body| (log, body)).collect(), None, then);
    }

    /// A new identity for a wig.
    pub fn new_wig(&self) -> Option<WigId> {
        WigId::read(&js::random_id())
    }

    /// A new identity for a lot.
    pub fn new_lot(&self) -> Option<LotId> {
        LotId::read(&js::random_id())
    }

    /// A new identity for a step.
    pub fn new_step(&self) -> Option<StepId> {
        StepId::read(&js::random_id())
    }

    /// The state of a log.
    pub fn state(&self, whose: Whose, log: LogId) -> Rc<record::history::fold::State> {
        self.model.bench(whose).state(log)
    }
}
