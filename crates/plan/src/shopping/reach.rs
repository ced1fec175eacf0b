//! What each number of packs gives.
//!
//! What it is: the question turned round: so many packs, so full. What it is not: a cutting plan.

use measure::quantity::{ArealNumberDensity, Length, units};
use record::{trade::caps::Ground, wig::zone::Zone, workshop::lots::Lot};

use super::prepare::Prepared;
use crate::{fullness::ZoneFullness, hairline::Purpose, layout::none};

/// What a number of packs gives.
#[derive(Clone, Debug, PartialEq)]
pub struct Reach {
    /// Packs of the main lot bought, beside what is owned.
    pub packs: u32,
    /// Times as full as bought, over the zones that take rows; as it is now where nothing is left for rows.
    pub times: f64,
    /// Weft left for rows after front edge, parting and hold-back; nothing where they lack some.
    pub for_rows: Length,
    /// Weft that front edge, parting and hold-back lack.
    pub lacking: Length,
}

/// How near a zone comes to what was wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Met {
    /// Thinner than wanted, by more than whole rows explain.
    Thinner,
    /// Near enough.
    Near,
    /// Fuller than wanted.
    Fuller,
}

/// Shares of what was wanted below which a zone is called thinner and above which fuller: a tenth too thin is seen before a
/// fifth too full. Our own judgement, no source.
pub const NEAR: (f64, f64) = (0.9, 1.2);

/// How near what is reached comes to what was wanted, or to what is there where that is more.
pub(super) fn met(zone: &ZoneFullness, reached: ArealNumberDensity) -> Met {
    let now = zone.now();
    let wanted = if zone.target > now { zone.target } else { now };
    let (least, most) = (wanted * NEAR.0, wanted * NEAR.1);
    if reached < least {
        Met::Thinner
    } else if reached > most {
        Met::Fuller
    } else {
        Met::Near
    }
}

/// Turns the question round for 0 to `most` packs.
pub(super) fn reach(prepared: &Prepared, lots: &[Lot], most: u32) -> Vec<Reach> {
    let Some(main) = lots.iter().find(|lot| lot.id == prepared.main) else { return Vec::new() };
    let parted = (prepared.weft.piece / main.piece()).get::<units::ratio>();
    let owned = (main.piece() * f64::from(main.left.whole_lengths) + main.left.rest) * parted;
    let amounts = &prepared.amounts;
    let rest = amounts.hairline + amounts.parting + amounts.hold_back;
    let zones = &prepared.fullness.zones;
    let body = || zones.iter().filter(|zone| takes_rows(zone));
    let bought: f64 = body().map(|zone| (zone.bought * zone.area).get::<units::ratio>()).sum();
    let now: f64 = body().map(|zone| (zone.now() * zone.area).get::<units::ratio>()).sum();
    // Folds take the same share of any number of rows.
    let folds = if amounts.rows > none() { (amounts.folds / amounts.rows).get::<units::ratio>() } else { 0.0 };
    let mut reach = Vec::new();
    for packs in 0..=most {
        let have = owned + prepared.weft.piece * f64::from(packs * prepared.weft.pieces);
        let left = have - rest;
        let (for_rows, lacking) = if left >= none() { (left, none()) } else { (none(), none() - left) };
        let added = (for_rows / (1.0 + folds) * prepared.weft.strands).get::<units::ratio>();
        let times = if bought > 0.0 { (now + added) / bought } else { 1.0 };
        reach.push(Reach { packs, times, for_rows, lacking });
    }
    reach
}

fn takes_rows(zone: &ZoneFullness) -> bool {
    let edge = matches!(zone.zone, Zone::FrontHairline | Zone::Part);
    !edge && matches!(zone.ground, Ground::Wefted { .. })
}

/// Fullness a zone reaches at the root, rows and edge pieces on.
pub fn reached(prepared: &Prepared, zone: Zone) -> ArealNumberDensity {
    let Some(full) = prepared.fullness.zones.get(zone as usize) else {
        return ArealNumberDensity::new::<units::per_square_meter>(0.0);
    };
    let rows = prepared
        .placement
        .rows
        .iter()
        .flat_map(|row| &row.zones)
        .filter(|(one, _)| *one == zone)
        .fold(none(), |sum, (_, length)| sum + *length);
    let purpose = match zone {
        Zone::FrontHairline => Some(Purpose::Hairline),
        Zone::Part => Some(Purpose::Parting),
        _ => None,
    };
    let edge = prepared
        .edge
        .iter()
        .filter(|piece| Some(piece.purpose) == purpose)
        .fold(none(), |sum, piece| sum + piece.on_cap);
    if full.area.get::<units::square_centimeter>() <= 0.0 {
        return full.now();
    }
    full.now() + ArealNumberDensity::from((rows + edge) * prepared.weft.strands / full.area)
}
