//! Where records are kept, and what the pages see of them.
//!
//! What it is: a trait over the browser's store with twins for tests, and the model above it.
//! What it is not: the JavaScript that talks to IndexedDB, which the crash screen shares.

pub mod backing;
pub mod desk;
pub mod drafts;
pub mod judge;
pub mod local;
pub mod model;
