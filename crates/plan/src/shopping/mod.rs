//! How much weft to buy: the answer first, then everything that stands behind it.
//!
//! What it is: one pass from the wig's figures to packs, at named corners of the inputs, in steps a page can interleave.
//! What it is not: the sums themselves (see `fullness`, `wefts`, `hairline`, `cutting`).

mod answer;
mod job;
mod laid_out;
mod pieces;
mod prepare;
mod reach;
mod spread;
mod working;

pub use answer::{Answer, Outcome, Packs, Settling, Solved};
pub use job::{Job, Step};
pub use laid_out::{LaidPiece, LaidWeft};
pub use pieces::{Amounts, For, Piece, Way};
pub use prepare::{Prepared, Stop, prepare};
pub use reach::{Reach, reached};
pub use spread::{Heads, Spread, metres};
