//! The app: pages over the core, in a browser.
//!
//! What it is: forms, drawings and storage at the rim. What it is not: arithmetic or rules of the trade.

mod pages;
mod parts;
mod shell;
mod store;
mod words;

use wasm_bindgen::prelude::wasm_bindgen;

/// Starts the app in the page.
#[wasm_bindgen(start)]
pub fn start() {
    shell::start();
}
