//! The rules rows are placed under.
//!
//! What it is: the bench's limits read from a wig. What it is not: the placing.

use measure::quantity::{Length, units};
use record::{trade::caps::Ground, wig::figures::Wig, wig::zone::Zone};

/// Limits for placing rows.
#[derive(Clone, Debug, PartialEq)]
pub struct Rules {
    /// Closest two rows may lie.
    pub closest: Length,
    /// Closest beside a parting.
    pub closest_parting: Length,
    /// From a row to an edge others see.
    pub edge_distance: Length,
    /// Whether the neck and ear edges are seen too.
    pub worn_up: bool,
    /// Wefts that may lie on one another, the base's own counted.
    pub most_stacked: u32,
    /// How far the rows may miss the amount, as a share.
    pub tolerance: f64,
    /// Shortest part row worth sewing.
    pub shortest: Length,
    /// Which zones take weft, in the order of the zones.
    pub takes_weft: [bool; 8],
    /// Whether a parting keeps rows out of its strip.
    pub parting: bool,
}

/// Machine weft is thick: two on one another, hand-tied three. Common practice, no source.
const STACK_MACHINE: u32 = 2;
const STACK_HAND_TIED: u32 = 3;

/// Reads the rules of a wig for a kind of weft.
pub fn rules(wig: &Wig<'_>, hand_tied: bool) -> Rules {
    let parting = wig.parting().kind != "none";
    let shortest = wig.bench_length("shortest_piece").likely;
    Rules {
        closest: wig.bench_length("closest_rows").likely,
        closest_parting: wig.bench_length("closest_rows_parting").likely,
        edge_distance: wig.bench_length("edge_distance").likely,
        worn_up: wig.worn() != "down",
        most_stacked: wig.most_stacked().unwrap_or(if hand_tied { STACK_HAND_TIED } else { STACK_MACHINE }),
        tolerance: record::trade::defaults::ROW_TOLERANCE,
        shortest: shortest.max(Length::new::<units::millimeter>(10.0)),
        takes_weft: Zone::ALL.map(|zone| match zone {
            // Those two are made by the hairline's and the parting's own pieces.
            Zone::FrontHairline => false,
            Zone::Part => false,
            _ => matches!(wig.ground(zone), Ground::Wefted { .. }),
        }),
        parting,
    }
}
