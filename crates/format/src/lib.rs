//! How a saved thing looks on disk or in a link: a row of the store, a backup, a wig file, what is handed over and what comes
//! back; versions and migrations.
//!
//! What it is: the only room that knows JSON, and the repair report of whatever came from outside.
//! What it is not: rules of the record, or storage: texts come in and texts go out.

pub mod backup;
pub mod file;
pub mod handover;
pub mod limits;
pub mod people;
pub mod preview;
pub mod row;
pub mod schema;
pub mod table;
pub mod wig_file;
pub mod words;

mod body;
mod json;
mod mend;
mod migrate;
mod scan;
