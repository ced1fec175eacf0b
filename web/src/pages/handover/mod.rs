//! Handing over and taking back: what a helper opens, what comes back, what goes to other programs.
//!
//! What it is: the pages' parts of it. What it is not: links, slips and their comparison with the record (see `format`, `record`).

pub mod back;
pub mod helper;
pub mod open;
mod others;
mod send;
mod take;
pub mod words;

use format::file::Head;
use record::{handover::handed::Handed, id::WigId};

use crate::{pages::safe::producer, shell::js};

/// The longest file that is read here: a slip with its photos.
const FILE_MOST: f64 = format::limits::FILE_BYTES_MOST as f64;
/// Files that carry something to open.
const ACCEPT: &str = ".json,.html,.htm,application/json,text/html";

/// The head of a file written now.
fn head() -> Head {
    Head { producer: producer(), made: js::now_utc() }
}

/// The address of this app, without what leads to a page of it.
pub fn address() -> String {
    web_sys::window().and_then(|window| window.location().href().ok()).unwrap_or_default()
}

/// The start of all drafts for a sheet.
fn draft(handed: &Handed) -> String {
    format!("handover.{}.{}.{}.", handed.wig, handed.lamport, handed.day)
}

/// A file's name for a wig.
fn named(wig: WigId, name: &str, end: &str) -> String {
    let words = crate::pages::paper::file_name(name);
    let words = if words == "wig" { wig.to_string().chars().take(8).collect() } else { words };
    format!("{words}{end}")
}
