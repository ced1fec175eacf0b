//! What is typed and not yet saved, kept so that a closed tab loses nothing.
//!
//! What it is: texts by the address of their field. What it is not: records.

use gloo_storage::{LocalStorage, Storage};

const PREFIX: &str = "weftbook.draft.";

fn key(address: &str) -> String {
    format!("{PREFIX}{address}")
}

/// The draft of a field.
pub fn read(address: &str) -> Option<String> {
    LocalStorage::get::<String>(key(address)).ok()
}

/// Keeps a draft; says whether this browser took it.
pub fn keep(address: &str, text: &str) -> bool {
    LocalStorage::set(key(address), text).is_ok()
}

/// Forgets a draft.
pub fn drop(address: &str) {
    LocalStorage::delete(key(address));
}
