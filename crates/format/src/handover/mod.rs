//! Handing over and taking back, on disk and in a link.
//!
//! What it is: the data of a sheet and a return slip as documented JSON, folded into the text that a link, a code or a sheet's
//! file carries; the file of a slip with its photos. What it is not: what a slip adds to a record (see the record's
//! `handover`).

pub mod base64;
pub mod code;
pub mod entries;
pub mod handed;
mod lines;
pub mod link;
pub mod payload;
pub mod slip;
pub mod slip_file;
