//! The workshop: lots, counts and what is left.
//!
//! What it is: what all wigs share. What it is not: use of a lot, which stands in the wig's own log.

pub mod colour_locks;
pub mod dyes;
pub mod locks;
pub mod lots;
pub mod slots;
