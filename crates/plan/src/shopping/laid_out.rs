//! The weft laid out: each length a bar, each piece on it named.
//!
//! What it is: the cutter's bars read back in the words of the wig. What it is not: a drawing.

use measure::order;
use record::id::LotId;

use super::{
    pieces::{For, Piece, Way},
    prepare::Prepared,
};
use crate::cutting::{Bar, Plan};

/// A length of weft with what comes from it.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidWeft {
    /// Of which lot.
    pub lot: LotId,
    /// Whether it is there already.
    pub owned: bool,
    /// How long it is.
    pub length_mm: u32,
    /// What is taken, in order from its end.
    pub pieces: Vec<LaidPiece>,
    /// What is left.
    pub offcut_mm: u32,
}

/// A piece on a length.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidPiece {
    /// What for.
    pub purpose: For,
    /// How long.
    pub length_mm: u32,
    /// Which part of a joined piece, and of how many.
    pub part: (u32, u32),
    /// Rows that a stretch of the run serves, by index.
    pub rows: Vec<usize>,
}

/// Names the pieces on the cutter's bars.
pub(super) fn lay_out(prepared: &Prepared, plan: &Plan) -> Vec<LaidWeft> {
    // By length, those of one length in the order they came; at the first of each length, how many are laid out already.
    let mut pieces = prepared.pieces.clone();
    order::sort_by(&mut pieces, &|a, b| a.length_mm.cmp(&b.length_mm));
    let mut taken = vec![0; pieces.len()];
    let mut bars: Vec<&Bar> = plan.bars.iter().collect();
    let place = |bar: &Bar| (bar.pieces_mm.is_empty(), !bar.owned, bar.pack);
    order::sort_by(&mut bars, &|a, b| place(a).cmp(&place(b)));
    let mut laid: Vec<LaidWeft> = Vec::with_capacity(bars.len());
    for bar in bars {
        let loss: u32 = bar.pieces_mm.iter().sum::<u32>() + bar.offcut_mm;
        let cuts = bar.pieces_mm.len().saturating_sub(1) as u32;
        let cut_loss = prepared.case.as_ref().map_or(0, |case| case.cut_loss_mm());
        let mut weft = LaidWeft {
            lot: prepared.kinds.get(bar.pack).copied().unwrap_or(prepared.main),
            owned: bar.owned,
            length_mm: loss + cuts * cut_loss,
            pieces: Vec::new(),
            offcut_mm: bar.offcut_mm,
        };
        for length in &bar.pieces_mm {
            let from = pieces.partition_point(|piece| piece.length_mm < *length);
            let Some(count) = taken.get_mut(from) else { continue };
            if let Some(piece) = pieces.get(from + *count).filter(|piece| piece.length_mm == *length) {
                *count += 1;
                add(&mut weft.pieces, *piece);
            }
        }
        laid.push(weft);
    }
    if prepared.way == Way::Run {
        name_rows(prepared, &mut laid);
    }
    laid
}

/// Steps of the run and of the hold-back lie together as one stretch.
fn add(pieces: &mut Vec<LaidPiece>, piece: Piece) {
    let merges = matches!(piece.purpose, For::Run | For::HoldBack);
    if merges && let Some(there) = pieces.iter_mut().find(|there| there.purpose == piece.purpose) {
        there.length_mm += piece.length_mm;
        return;
    }
    let rows = match piece.purpose {
        For::Row(index) => vec![index],
        _ => Vec::new(),
    };
    pieces.push(LaidPiece { purpose: piece.purpose, length_mm: piece.length_mm, part: piece.part, rows });
}

/// Which rows each stretch of the run serves, in sewing order.
fn name_rows(prepared: &Prepared, laid: &mut [LaidWeft]) {
    let folds = if prepared.placement.rows.is_empty() {
        0.0
    } else {
        super::pieces::mm(prepared.amounts.folds) as f64 / prepared.placement.rows.len() as f64
    };
    let mut ends = Vec::new();
    let mut at = 0.0;
    for row in &prepared.placement.rows {
        at += f64::from(super::pieces::mm(row.length)) + folds;
        ends.push(at);
    }
    let mut from = 0.0;
    for piece in laid.iter_mut().flat_map(|weft| &mut weft.pieces).filter(|piece| piece.purpose == For::Run) {
        let to = from + f64::from(piece.length_mm);
        let mut start = 0.0;
        piece.rows = Vec::new();
        for (index, end) in ends.iter().enumerate() {
            if start < to - 1.0 && *end > from + 1.0 {
                piece.rows.push(index);
            }
            start = *end;
        }
        from = to;
    }
}
