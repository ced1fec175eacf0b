//! The dye bath: from the colours wanted to grams, litres, a curve, a water line and what must not be done.
//!
//! What it is: a plan of baths, light to dark, each with its working and cautions. What it is not: bleaching and oxidation
//! colour, which are recorded and left to the maker's instructions and licensed practice.

pub mod amounts;
pub mod bath;
pub mod cautions;
pub mod curve;
pub mod dips;
pub mod hair;
pub mod level;
pub mod order;
pub mod plan;
pub mod record;
pub mod steps;

pub use amounts::{DyePart, Recipe};
pub use bath::BathPlan;
pub use dips::Dipping;
pub use hair::Hair;
pub use order::{Column, Stretch, Way};
pub use plan::{Asked, Met, Plan, Stop, plan};
