//! Will it reach, and which rod: geometry of curls, waves and wound locks, and what each zone needs.
//!
//! What it is: straight length against what base and weft have. What it is not: heat.

pub mod helix;
pub mod look;
pub mod need;
pub mod opened;
pub mod pattern;
pub mod rods;
pub mod roller;
pub(crate) mod said;
pub mod wave;

pub use need::{Lengths, Reach, ZoneNeed, need};
pub use said::Problem;
