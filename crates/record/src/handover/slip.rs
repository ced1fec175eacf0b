//! The return slip: what a helper did, line by line.
//!
//! What it is: work done under the numbers of a sheet, with who did it and photos. What it is not: entries (see `take`).

use measure::civil::Minute;

use crate::{
    history::entry::Written,
    id::{Id, PhotoId, StepId, WigId},
    wig::work::Work,
};

/// A return slip.
#[derive(Clone, Debug, PartialEq)]
pub struct Slip {
    /// Its identity: a slip sent twice is the same slip.
    pub id: Id,
    /// Which wig it is for.
    pub wig: WigId,
    /// The wig's name, as the sheet had it.
    pub name: String,
    /// Who did it, in their own words.
    pub who: String,
    /// How far the record's clock had gone when the sheet was made.
    pub lamport: u64,
    /// When the slip was written.
    pub written: Written,
    /// What was done.
    pub lines: Vec<Answer>,
    /// Photos, by the hash of their bytes.
    pub photos: Vec<Photo>,
}

/// What was done of one line.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Its number on the sheet; 0 where it stands on none.
    pub number: u32,
    /// Which step; none for a photo of the sheet or of the whole.
    pub step: Option<StepId>,
    /// When.
    pub done: Minute,
    /// Whether it was ticked as planned.
    pub as_planned: bool,
    /// The work with its figures.
    pub work: Work,
}

/// A photo that comes with a slip.
#[derive(Clone, Debug, PartialEq)]
pub struct Photo {
    /// The SHA-256 of its bytes.
    pub id: PhotoId,
    /// Its bytes.
    pub bytes: Vec<u8>,
}
