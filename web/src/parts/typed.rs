//! What a field holds when the browser says it changed.
//!
//! What it is: the value of any kind of field. What it is not: its reading.

use web_sys::Event;

/// The text of the field an event comes from.
pub fn text_of(event: &Event) -> String {
    event
        .target()
        .and_then(|target| js_sys::Reflect::get(&target, &"value".into()).ok())
        .and_then(|value| value.as_string())
        .unwrap_or_default()
}
