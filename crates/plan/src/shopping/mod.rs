//! How much weft to buy: the answer first, then everything that stands behind it.
//!
//! What it is: one pass from the wig's figures to packs, at named corners of the inputs, in steps a page can interleave.
//! What it is not: the sums themselves (see `fullness`, `wefts`, `hairline`, `cutting`).

mod answer;
mod cautions;
mod headline;
mod heads;
mod job;
mod laid_out;
mod need;
mod pieces;
mod prepare;
mod reach;
mod rows_left;
mod spread;
mod summary;
mod working;

pub use answer::{Answer, Outcome, Packs, Settling, Solved};
pub use heads::{Heads, metres};
pub use job::{Job, Step};
pub use laid_out::{LaidPiece, LaidWeft};
pub use pieces::{Amounts, For, Piece, Way};
pub use prepare::{Prepared, Stop, parted, prepare};
pub use reach::{Met, NEAR, Reach, reached};
pub use spread::{Spread, spread};
pub use summary::{Bought, Summary, SummaryRow, ZoneReached};
