//! Where records are kept, and what the pages see of them.
//!
//! What it is: a trait over the browser's store, and the model above it. Failures are tested in real browsers.
//! What it is not: the JavaScript that talks to IndexedDB, which the crash screen shares.

pub mod backing;
pub mod desk;
pub mod drafts;
pub mod judge;
pub mod local;
pub mod model;
