//! How much weft a wig needs at one corner, before any row is chosen.
//!
//! What it is: the sum that bounds and settling measurements are found with; it moves smoothly and, for each input, one way.
//! What it is not: rows or pieces (see `prepare`).

use measure::quantity::{Length, units};
use record::{wig::figures::Wig, wig::zone::Zone, workshop::lots::Lot};

use super::{
    pieces::{Amounts, amounts},
    prepare::{Stop, main_lot, wanting},
};
use crate::{
    fullness::{Fullness, ZoneFullness, fullness},
    hairline::{EdgePiece, edge_pieces},
    inputs::{Base, Corner, Input, Weft},
    layout::{Layout, none},
    wefts::{Room, rules},
};

/// What is needed at a corner.
pub(super) struct Need {
    pub(super) full: Fullness,
    pub(super) weft: Weft,
    pub(super) edge: Vec<EdgePiece>,
    pub(super) amounts: Amounts,
    /// Weft wanted in rows, whether there is room or not.
    pub(super) wanted: Length,
    /// Strands that zones which take rows lack, less what others have too many.
    pub(super) lacking: f64,
    /// Whether the weft is parted into singles.
    parted: bool,
    /// The fold at one end of a row.
    pub(super) fold: Length,
}

impl Need {
    /// The same in packs of the main lot, broken ones counted as their share; what is owned comes off.
    pub(super) fn packs(&self, main: &Lot) -> f64 {
        if self.weft.pieces == 0 {
            return 0.0;
        }
        // What is left was measured: it does not stretch with what a pack is taken to be.
        let rest = main.left.rest * if self.parted { 2.0 } else { 1.0 };
        let pack = self.weft.piece * f64::from(self.weft.pieces);
        let owned = f64::from(main.left.whole_lengths) / f64::from(self.weft.pieces);
        ((self.amounts.total() - rest) / pack).get::<units::ratio>() - owned
    }
}

/// The base's fullness, each zone as its own ends make it.
fn fullness_at(wig: &Wig<'_>, lots: &[Lot], layout: &Layout, corner: &Corner) -> Fullness {
    let at = |corner: Corner| fullness(wig, layout, &Base::at(wig, &corner), lots, &corner);
    let first = corner.of(Zone::FrontHairline);
    let mut full = at(first);
    let mut others: Vec<(Corner, Fullness)> = Vec::new();
    for zone in Zone::ALL {
        let own = corner.of(zone);
        if own == first {
            continue;
        }
        let known = others.iter().position(|(one, _)| *one == own);
        let known = known.unwrap_or_else(|| {
            others.push((own, at(own)));
            others.len() - 1
        });
        if let (Some(here), Some((_, other))) = (full.zones.get_mut(zone as usize), others.get(known))
            && let Some(there) = other.zones.get(zone as usize)
        {
            here.clone_from(there);
        }
    }
    full
}

/// Sums up what is needed.
pub(super) fn need(
    wig: &Wig<'_>,
    lots: &[Lot],
    layout: &Layout,
    room: &Room,
    corner: &Corner,
    parted: bool,
) -> Result<Need, Stop> {
    let full = fullness_at(wig, lots, layout, corner);
    let main = main_lot(wig, lots).ok_or(Stop::NoLot)?;
    let weft = Weft::at(main, &wig.fibre_return(), parted, corner);
    let rules = rules(wig, !main.may_be_cut());
    let fold = corner.pick(Input::Allowances, &wig.bench_length("end_fold"));
    let spare = corner.pick(Input::Allowances, &wig.bench_share("hairline_spare"));
    let edge = edge_pieces(wig, layout, main, parted, fold, spare);
    let strands = weft.strands.get::<units::per_meter>();
    let wanting = wanting(&full);
    let wanted = Zone::ALL.map(|zone| {
        let takes = rules.takes_weft[zone as usize] && strands > 0.0;
        Length::new::<units::meter>(if takes { wanting[zone as usize] / strands } else { 0.0 })
    });
    let sum = |parts: &[Length; 8]| parts.iter().fold(none(), |sum, one| sum + *one);
    let mut given = room.of(&wanted);
    // Told by the likely weft: else packs would jump where a wider pack makes a row of the same hair.
    let likely = Weft::at(main, &wig.fibre_return(), parted, &Corner::likely()).strands;
    let scale = if strands > 0.0 { strands / likely.get::<units::per_meter>() } else { 1.0 };
    if sum(&room.of(&wanted.map(|length| length * scale))) < rules.shortest {
        // Less than a row worth sewing is not bought either.
        given = [none(); 8];
    }
    let amounts = amounts(wig, &weft, sum(&given), room.rows(&given, rules.shortest), &edge, corner);
    let takers = full.zones.iter().filter(|zone| rules.takes_weft[zone.zone as usize]);
    let lacking = takers.map(ZoneFullness::lacking).sum();
    Ok(Need { full, weft, edge, amounts, wanted: sum(&wanted), lacking, parted, fold })
}
