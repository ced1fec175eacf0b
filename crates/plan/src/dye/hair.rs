//! How much fibre lies between two places along the length, zone by zone, kind by kind.
//!
//! What it is: strands, fineness and lengths (layers and cuts included) turned into mass.
//! What it is not: the cap, or how much of a fibre takes dye.

use measure::quantity::{Length, LinearMassDensity, Mass, units};
use record::{
    trade::fibres::Fibre,
    wig::{condition::Condition, figures::Wig, sewn::sewn, zone::Zone},
    workshop::lots::Lot,
};

use crate::{
    fullness::{Fullness, lies_in},
    inputs::{Base, Corner, Weft},
    layout::{Layout, none},
};

/// Hair of one kind in one zone.
#[derive(Clone, Debug, PartialEq)]
pub struct Hair {
    /// The zone.
    pub zone: Zone,
    /// Its fibre.
    pub fibre: &'static Fibre,
    /// The lot of weft it is of; its name.
    pub lot: Option<String>,
    /// How many strands.
    pub strands: f64,
    /// Fineness.
    pub fineness: LinearMassDensity,
    /// Shortest strand; from here on they thin out evenly.
    pub shortest: Length,
    /// Longest strand.
    pub longest: Length,
    /// Where it was cut off, if shorter.
    pub cut: Option<Length>,
    /// What weighs at the root without hanging: the root side, crimped filler.
    pub at_root: Mass,
}

impl Hair {
    /// Mean length of strand between root and a place.
    fn reach(&self, to: Length) -> Length {
        let to = self.cut.map_or(to, |cut| to.min(cut)).max(none());
        if to <= self.shortest {
            return to;
        }
        let tail = self.longest - self.shortest;
        let past = (to - self.shortest).min(tail);
        // Strands left fall evenly to none: the area under a straight line.
        let part = (past / tail).get::<units::ratio>();
        self.shortest + past * (1.0 - part / 2.0)
    }

    /// Its mass between two places along the length; what lies at the root goes with the first.
    pub fn between(&self, from: Length, to: Length) -> Mass {
        let hanging = (self.reach(to) - self.reach(from)).max(none()) * self.fineness * self.strands;
        if from <= none() { hanging + self.at_root } else { hanging }
    }

    /// Its whole mass.
    pub fn whole(&self) -> Mass {
        self.between(none(), self.longest)
    }
}

/// All hair of a wig, the base's first in each zone, as it is now.
pub fn hair(
    wig: &Wig<'_>,
    condition: &Condition,
    layout: &Layout,
    fullness: &Fullness,
    lots: &[Lot],
    corner: &Corner,
) -> Vec<Hair> {
    let base = Base::at(wig, corner);
    let cut = |zone: Zone| condition.zone(zone).longest;
    let mut all = Vec::new();
    let crimped = base.crimped.get::<units::ratio>();
    for zone in fullness.there() {
        let strands = (zone.bought * zone.area).get::<units::ratio>();
        let (short, long) = (base.shortest[zone.zone as usize], base.longest[zone.zone as usize]);
        let (shortest, longest) = (short.min(long), short.max(long));
        let root_side: Mass = base.fibre_return * base.fineness * strands;
        let hanging: Mass = (shortest + longest) / 2.0 * base.fineness * strands;
        // Crimped filler is a share of all fibre, this the rest.
        let filler = (hanging + root_side) * (crimped / (1.0 - crimped).max(0.1));
        all.push(Hair {
            zone: zone.zone,
            fibre: wig.fibre(),
            lot: None,
            strands,
            fineness: base.fineness,
            shortest,
            longest,
            cut: cut(zone.zone),
            at_root: root_side + filler,
        });
    }
    let root_side = wig.fibre_return();
    for weft in sewn(wig.state()) {
        let lot = lots.iter().find(|lot| Some(lot.id) == weft.lot);
        for (zone, length) in lies_in(layout, &weft) {
            let (strands, hanging, fineness) = match lot {
                Some(lot) => {
                    let each = Weft::at(lot, &root_side, weft.as_single, corner);
                    (each.strands, each.hanging, lot.fineness.likely)
                }
                None => (wig.row_strands().likely, base.longest[zone as usize], base.fineness),
            };
            let strands = (strands * length).get::<units::ratio>();
            all.push(Hair {
                zone,
                fibre: lot.map_or(wig.fibre(), |lot| lot.fibre),
                lot: lot.map(|lot| lot.name.clone()),
                strands,
                fineness,
                shortest: hanging,
                longest: hanging,
                cut: cut(zone),
                at_root: root_side.likely * fineness * strands,
            });
        }
    }
    all
}

/// The length that shares of a zone are taken of: its longest strand as it is now.
pub fn length_of(hair: &[Hair], zone: Zone) -> Length {
    hair.iter()
        .filter(|one| one.zone == zone)
        .map(|one| one.cut.map_or(one.longest, |cut| one.longest.min(cut)))
        .fold(none(), |most, one| if one > most { one } else { most })
}
