//! From rows and edges to pieces of weft.
//!
//! What it is: folds, hold-back and the way of sewing turned into lengths to take from packs.
//! What it is not: the taking (see `cutting`).

use measure::quantity::{Length, Mass, units};
use record::wig::figures::Wig;

use crate::{
    hairline::{EdgePiece, Purpose, total},
    inputs::{Corner, Input, Weft},
    layout::none,
    wefts::PlannedRow,
};

/// What a piece of weft is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum For {
    /// The row of this index in the placement.
    Row(usize),
    /// A stretch of the one run all rows are sewn as.
    Run,
    /// Layers of the front edge: the first, and how many one piece serves.
    Hairline(usize, usize),
    /// Rows beside the parting: the first, and how many one piece serves.
    Parting(usize, usize),
    /// Kept for tests and repairs.
    HoldBack,
}

/// A piece to take from a pack.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Piece {
    /// What for.
    pub purpose: For,
    /// Its length.
    pub length_mm: u32,
    /// Which part of a joined piece it is, and of how many.
    pub part: (u32, u32),
}

/// How weft is put on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// As one run, folded at row ends, uncut.
    Run,
    /// Cut to rows.
    Cut,
    /// Whole pieces, never cut, folded.
    Whole,
}

/// Weft by what it is for.
#[derive(Clone, Debug, PartialEq)]
pub struct Amounts {
    /// Rows, as they lie on the cap.
    pub rows: Length,
    /// Folds at row ends.
    pub folds: Length,
    /// The front edge, with spare and folds.
    pub hairline: Length,
    /// Along the parting, with folds.
    pub parting: Length,
    /// Kept back.
    pub hold_back: Length,
}

impl Amounts {
    /// All of it.
    pub fn total(&self) -> Length {
        self.rows + self.folds + self.hairline + self.parting + self.hold_back
    }
}

/// Sums up what is wanted at a corner, from a length of rows and about how many they are.
pub(super) fn amounts(
    wig: &Wig<'_>,
    weft: &Weft,
    rows: Length,
    count: f64,
    edge: &[EdgePiece],
    corner: &Corner,
) -> Amounts {
    let fold = corner.pick(Input::Allowances, &wig.bench_length("end_fold"));
    let folds = fold * 2.0 * count;
    let (hairline, parting) = (total(edge, Purpose::Hairline), total(edge, Purpose::Parting));
    let used = rows + folds + hairline + parting;
    // A share of what is used, but no more than the usual few grams are worth.
    let share = corner.pick(Input::Allowances, &wig.bench_share("hold_back")).get::<units::ratio>();
    let most: Mass = corner.pick(Input::Allowances, &wig.hold_back_weight());
    let most_length: Length = most / weft.mass_per_length;
    let hold_back = if used > none() { (used * share).min(most_length) } else { none() };
    Amounts { rows, folds, hairline, parting, hold_back }
}

/// Whole millimetres, rounded up.
pub(super) fn mm(length: Length) -> u32 {
    libm::ceil(length.get::<units::millimeter>() - 1e-6).max(0.0) as u32
}

/// What pieces depend on beside the rows.
pub(super) struct Bench {
    /// The fold at one end.
    pub(super) fold: Length,
    /// The steps that a run is taken in.
    pub(super) unit_mm: u32,
    /// The longest length of weft.
    pub(super) longest_mm: u32,
    /// Whether pieces are joined from two halves.
    pub(super) halves: bool,
}

/// The pieces to take, no one longer than the longest length.
pub(super) fn pieces(
    way: Way,
    amounts: &Amounts,
    rows: &[PlannedRow],
    edge: &[EdgePiece],
    bench: &Bench,
) -> Vec<Piece> {
    let Bench { fold, unit_mm, longest_mm, halves } = *bench;
    let mut pieces = Vec::new();
    let mut wanted = |purpose: For, length: Length| {
        let length_mm = mm(length).max(1);
        let parts = parts(way, length_mm, fold, longest_mm, halves && !matches!(purpose, For::HoldBack));
        let count = parts.len() as u32;
        let mut part = 0;
        for length_mm in parts {
            part += 1;
            pieces.push(Piece { purpose, length_mm, part: (part, count) });
        }
    };
    if way != Way::Run {
        for (index, row) in rows.iter().enumerate() {
            wanted(For::Row(index), row.length + fold * 2.0);
        }
    }
    for piece in edge {
        let purpose = match piece.purpose {
            Purpose::Hairline => For::Hairline(piece.number, piece.serves),
            Purpose::Parting => For::Parting(piece.number, piece.serves),
        };
        wanted(purpose, piece.length);
    }
    let unit_mm = unit_mm.min(longest_mm).max(1);
    let mut steps = |purpose: For, length: Length| {
        // A remainder of its own keeps the sum exact, and more weft never easier to pack than less.
        let (count, rest) = (mm(length) / unit_mm, mm(length) % unit_mm);
        for _ in 0..count {
            pieces.push(Piece { purpose, length_mm: unit_mm, part: (1, 1) });
        }
        if rest > 0 {
            pieces.push(Piece { purpose, length_mm: rest, part: (1, 1) });
        }
    };
    if way == Way::Run {
        steps(For::Run, amounts.rows + amounts.folds);
    }
    match way {
        // A whole piece is kept where pieces are never cut.
        Way::Whole => {
            if amounts.hold_back > none() {
                pieces.push(Piece { purpose: For::HoldBack, length_mm: longest_mm, part: (1, 1) });
            }
        }
        Way::Run | Way::Cut => steps(For::HoldBack, amounts.hold_back),
    }
    pieces
}

/// The lengths one piece is taken in: whole, or joined from equal parts.
fn parts(way: Way, length_mm: u32, fold: Length, longest_mm: u32, halve: bool) -> Vec<u32> {
    let longest_mm = longest_mm.max(1);
    if way == Way::Whole {
        return vec![longest_mm; length_mm.div_ceil(longest_mm).max(1) as usize];
    }
    let least = if halve { 2 } else { 1 };
    let overlap = mm(fold * 2.0);
    let mut count = length_mm.div_ceil(longest_mm).max(least);
    // Each join takes an overlap, which may need a part more.
    while count < 64 && (length_mm + overlap * (count - 1)).div_ceil(count) > longest_mm {
        count += 1;
    }
    vec![(length_mm + overlap * (count - 1)).div_ceil(count).min(longest_mm); count as usize]
}
