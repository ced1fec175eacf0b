//! Colour: what a dye does to a base, what a base can reach, how far two colours lie apart, how strong one's own dye is.
//!
//! What it is: three-band Kubelka-Munk arithmetic on linear light, a model that test locks correct.
//! What it is not: dyed fibre (no measured mixtures of dyed fibre were found to check it by), or baths (see `dye`).

pub mod differ;
pub mod light;
pub mod mix;
pub mod propose;
pub mod reach;
pub mod strength;
pub mod white;
pub mod words;

pub use differ::{Difference, difference};
pub use light::{Absorbs, Light};
pub use mix::dyed;
pub use propose::{Proposal, propose};
pub use reach::{Reach, reach};
pub use strength::{Strength, Trust};
