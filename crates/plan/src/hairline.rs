//! Weft for the front edge and along the parting: how much, in which pieces.
//!
//! What it is: lengths from the dome times layers and rows; double weft parted into singles, which lie flatter there.
//! What it is not: knots for lace (those are counted in knots).

use measure::quantity::{Length, Ratio, units};
use record::{
    wig::{figures::Wig, sewn::sewn},
    workshop::lots::Lot,
};

use crate::layout::{Layout, none};

/// A piece of weft that is not a row of the body.
#[derive(Clone, Debug, PartialEq)]
pub struct EdgePiece {
    /// What it is for.
    pub purpose: Purpose,
    /// The first row or layer it serves, from 1.
    pub number: usize,
    /// How many rows or layers it serves: two where a double weft is parted into singles.
    pub serves: usize,
    /// The length to take from the pack, spare and end folds included.
    pub length: Length,
    /// The length of pack's weft that ends up as hair on the cap.
    pub on_cap: Length,
}

/// What an edge piece is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Purpose {
    /// A layer of the front edge.
    Hairline,
    /// A row beside the parting, the closing row last.
    Parting,
}

/// The pieces the look wants, less those already sewn. `parted`: the lot's lengths already count as singles.
pub fn edge_pieces(
    wig: &Wig<'_>,
    layout: &Layout,
    lot: &Lot,
    parted: bool,
    fold: Length,
    spare: Ratio,
) -> Vec<EdgePiece> {
    let sewn = sewn(wig.state());
    let count = |purpose: &str| sewn.iter().filter(|weft| weft.sewn_as == purpose).count();
    let layers = match wig.hairline() {
        "glued_strip" | "sewn_edge" => wig.hairline_layers() as usize,
        _ => 0,
    };
    let singles = lot.is_double() && !parted && wig.edges_of_singles();
    let mut pieces = Vec::new();
    let edge = layout.dome.front_edge_length() * (1.0 + spare.get::<units::ratio>());
    add(&mut pieces, Purpose::Hairline, count("hairline") + 1, layers, edge, fold, singles && wig.joins());
    let parting = wig.parting();
    if parting.kind == "weft_sides" {
        // Rows on both sides, and the row that closes the parting over.
        let rows = parting.rows as usize * 2 + 1;
        let length = layout.dome.parting().map_or(parting.length.likely, |drawn| drawn.length);
        add(&mut pieces, Purpose::Parting, count("parting") + 1, rows, length, fold, singles);
    }
    pieces
}

/// Adds rows `first..=last` of a length; parted weft serves two at a time, an odd last one is taken at half length.
fn add(
    pieces: &mut Vec<EdgePiece>,
    purpose: Purpose,
    first: usize,
    last: usize,
    length: Length,
    fold: Length,
    singles: bool,
) {
    let mut number = first;
    while number <= last {
        let serves = if singles && number < last { 2 } else { 1 };
        // A lone single is joined from the two halves that parting gives.
        let taken = if singles && serves == 1 { length / 2.0 } else { length };
        pieces.push(EdgePiece { purpose, number, serves, length: taken + fold * 2.0, on_cap: taken });
        number += serves;
    }
}

/// Length of all pieces for one purpose.
pub fn total(pieces: &[EdgePiece], purpose: Purpose) -> Length {
    pieces.iter().filter(|piece| piece.purpose == purpose).fold(none(), |sum, piece| sum + piece.length)
}
