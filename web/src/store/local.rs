//! The browser's small storage: preferences and drafts, never records.
//!
//! What it is: texts by name, where the browser allows it; where it does not, nothing is kept and nothing breaks.
//! What it is not: the store of records (see `backing`).

fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// A text kept under a name.
pub fn get(name: &str) -> Option<String> {
    storage()?.get_item(name).ok()?
}

/// Keeps a text; says whether this browser took it.
pub fn set(name: &str, text: &str) -> bool {
    storage().is_some_and(|storage| storage.set_item(name, text).is_ok())
}

/// Forgets a text; says whether it is gone.
pub fn remove(name: &str) -> bool {
    storage().is_some_and(|storage| storage.remove_item(name).is_ok())
}
