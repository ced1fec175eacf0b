//! What is typed and not yet saved, kept so that a closed tab loses nothing.
//!
//! What it is: texts by the address of their field. What it is not: records.

use super::local;

fn name(address: &str) -> String {
    format!("weftbook.draft.{address}")
}

/// The draft of a field.
pub fn read(address: &str) -> Option<String> {
    local::get(&name(address))
}

/// Keeps a draft; says whether this browser took it.
pub fn keep(address: &str, text: &str) -> bool {
    local::set(&name(address), text)
}

/// Forgets a draft.
pub fn drop(address: &str) {
    local::remove(&name(address));
}
