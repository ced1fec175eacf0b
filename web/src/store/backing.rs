//! A store of rows: the seam between the pages and the browser's store.
//!
//! What it is: what the app asks of any store. What it is not: what rows mean.

use std::{future::Future, pin::Pin};

use format::{
    backup::{Rows, read_rows},
    row::{Item, encode_row},
};
use measure::say::Say;
use record::history::entry::Entry;

use crate::shell::{js, js::JsError, talk};

/// An answer to come.
pub type Later<T> = Pin<Box<dyn Future<Output = T>>>;

/// Why a store did not do it.
#[derive(Clone, Debug, PartialEq)]
pub struct Failure {
    /// `quota`, `aborted`, `newer`, `unreadable`…
    pub kind: String,
    /// What to tell the person.
    pub message: String,
    /// What the browser said.
    pub detail: String,
}

impl From<JsError> for Failure {
    fn from(error: JsError) -> Failure {
        Failure { kind: error.kind, message: error.message, detail: error.detail }
    }
}

impl Failure {
    fn said(kind: &str, say: &Say) -> Failure {
        let message = talk::say(say, &measure::prefs::Prefs::default());
        Failure { kind: kind.to_owned(), message, detail: String::new() }
    }
}

/// What opening a store found.
#[derive(Clone, Debug, PartialEq)]
pub enum Opened {
    /// Rows, perhaps none.
    Ready(Rows),
    /// Made by a newer version of this app.
    Newer(String),
    /// There is something that cannot be read.
    Unreadable(String),
}

/// A store of rows.
pub trait Backing {
    /// Opens it and reads everything.
    fn open(&self) -> Later<Result<Opened, Failure>>;
    /// Adds entries in one transaction; answers them with their lamports once they are safe.
    fn add(&self, entries: Vec<Entry>) -> Later<Result<Vec<Entry>, Failure>>;
    /// Reads everything again.
    fn all(&self) -> Later<Result<Rows, Failure>>;
}

/// The browser's store.
#[derive(Clone, Copy, Debug)]
pub struct Browser;

impl Backing for Browser {
    fn open(&self) -> Later<Result<Opened, Failure>> {
        Box::pin(async {
            let answer = js::open().await?;
            let has = |word: &str| answer.contains(&format!("\"answer\":\"{word}\""));
            if has("newer") {
                return Ok(Opened::Newer(answer));
            }
            if !has("ready") {
                return Ok(Opened::Unreadable(answer));
            }
            let text = js::all().await?;
            read_rows(&text).map(Opened::Ready).map_err(|say| Failure::said("unreadable", &say))
        })
    }

    fn add(&self, entries: Vec<Entry>) -> Later<Result<Vec<Entry>, Failure>> {
        Box::pin(async move {
            let rows: Vec<String> =
                entries.iter().map(encode_row).collect::<Result<_, _>>().map_err(|say| Failure::said("other", &say))?;
            let stored = js::add(&format!("[{}]", rows.join(","))).await?;
            let rows = read_rows(&format!("{{\"rows\":{stored},\"clashes\":[]}}"))
                .map_err(|say| Failure::said("unreadable", &say))?;
            Ok(rows.rows.iter().filter_map(Item::entry).cloned().collect())
        })
    }

    fn all(&self) -> Later<Result<Rows, Failure>> {
        Box::pin(async {
            let text = js::all().await?;
            read_rows(&text).map_err(|say| Failure::said("unreadable", &say))
        })
    }
}
