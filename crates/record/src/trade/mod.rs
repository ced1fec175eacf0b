//! The facts of the trade, each once, with source and confidence.
//!
//! What it is: tables of data: a row more is a fibre, a cap or a default more.
//! What it is not: arithmetic, or a person's own figures, which replace these one by one.

pub mod bath;
pub mod bears;
pub mod burns;
pub mod caps;
pub mod curl;
pub mod damage;
pub mod defaults;
pub mod dye;
pub mod fact;
pub mod fibres;
mod findings;
pub mod heat;
pub mod lock;
pub mod sizes;
pub mod soaking;
pub mod solvent;
pub mod sources;
mod uptake;
mod windows;
pub(crate) mod words;
