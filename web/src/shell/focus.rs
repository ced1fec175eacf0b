//! Where the focus goes when what had it is gone.
//!
//! What it is: a focus that waits for its element to be drawn. What it is not: a trap.

use super::js;

/// Tries for so many frames.
const TRIES: u32 = 30;

/// Moves the focus to the first of these elements that is there, as soon as one is drawn.
pub fn later(ids: Vec<String>) {
    wasm_bindgen_futures::spawn_local(async move {
        for _ in 0..TRIES {
            // A frame for the page to draw what has changed.
            gloo_timers::future::TimeoutFuture::new(16).await;
            if ids.iter().any(|id| js::focus_id(id)) {
                return;
            }
        }
    });
}
