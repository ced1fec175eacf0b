//! How full it is now, and what the look wants: strands on an area, zone by zone, at root, middle and ends.
//!
//! What it is: physics from weight, fineness and length. What it is not: where added rows go (see `wefts`).

use measure::{
    quantity::{Area, ArealNumberDensity, Length, LinearMassDensity, LinearNumberDensity, Mass, units},
    say::{Arg, Say},
};
use record::{
    trade::{caps::Ground, defaults},
    wig::{
        figures::{Target, Wig},
        sewn::sewn,
        work::sew_weft::SewWeft,
        zone::Zone,
    },
    workshop::lots::Lot,
};

use crate::{
    dome::Section,
    inputs::{Base, Corner, Weft},
    layout::{Layout, none},
    working::{Caution, Weight},
};

/// Hair of one kind in a zone.
#[derive(Clone, Debug, PartialEq)]
pub struct Growth {
    /// At the root.
    pub root: ArealNumberDensity,
    /// Shortest strand.
    pub shortest: Length,
    /// Longest strand.
    pub longest: Length,
}

impl Growth {
    /// What is left of it so far from the root; lengths between shortest and longest are taken as equally common.
    pub fn at(&self, depth: Length) -> ArealNumberDensity {
        if depth <= self.shortest {
            self.root
        } else if depth >= self.longest {
            self.root * 0.0
        } else {
            self.root * ((self.longest - depth) / (self.longest - self.shortest)).get::<units::ratio>()
        }
    }
}

/// A zone's fullness.
#[derive(Clone, Debug, PartialEq)]
pub struct ZoneFullness {
    /// The zone.
    pub zone: Zone,
    /// Its area.
    pub area: Area,
    /// What it is made of.
    pub ground: Ground,
    /// As bought.
    pub bought: ArealNumberDensity,
    /// As it is now, kind by kind: the base, then what was sewn.
    pub growth: Vec<Growth>,
    /// As it is now at the root, but for rows that were sewn.
    pub without_rows: ArealNumberDensity,
    /// What the look wants at the root.
    pub target: ArealNumberDensity,
    /// The length the look wants.
    pub look_length: Length,
}

/// Fullness at root, middle and ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Depths {
    /// At the root.
    pub root: ArealNumberDensity,
    /// Half-way along the length wanted.
    pub middle: ArealNumberDensity,
    /// Nine tenths along it.
    pub ends: ArealNumberDensity,
}

impl ZoneFullness {
    /// At the root, now.
    pub fn now(&self) -> ArealNumberDensity {
        sum(self.growth.iter().map(|growth| growth.root))
    }

    /// Now, and with more growth, along the length wanted.
    pub fn depths(&self, more: &[Growth]) -> Depths {
        let at = |share: f64| sum(self.growth.iter().chain(more).map(|growth| growth.at(self.look_length * share)));
        Depths { root: at(0.0), middle: at(0.5), ends: at(0.9) }
    }

    /// Strands still wanted.
    pub fn wanting(&self) -> f64 {
        self.lacking().max(0.0)
    }

    /// Strands that were wanted before any row was sewn.
    pub fn wanted_at_first(&self) -> f64 {
        let more = self.target - self.without_rows;
        (more * self.area).get::<units::ratio>().max(0.0)
    }

    /// Strands still wanted, less than nothing where there are more already.
    pub fn lacking(&self) -> f64 {
        let more = self.target - self.now();
        (more * self.area).get::<units::ratio>()
    }
}

/// The whole wig's fullness.
#[derive(Clone, Debug, PartialEq)]
pub struct Fullness {
    /// Zone by zone, in the order of the zones.
    pub zones: Vec<ZoneFullness>,
    /// Hair that hangs, without cap and crimped filler.
    pub hanging_mass: Mass,
    /// Strands on a length of the base's rows.
    pub row_strands: LinearNumberDensity,
    /// Strands on the base.
    pub strands: f64,
    /// The fineness used for percent.
    pub fineness: LinearMassDensity,
    /// What is odd about the figures.
    pub cautions: Vec<Caution>,
}

impl Fullness {
    /// The zones this cap has: those with any area.
    pub fn there(&self) -> Vec<&ZoneFullness> {
        let mut there = Vec::new();
        for zone in &self.zones {
            if zone.area.get::<units::square_centimeter>() > 0.5 {
                there.push(zone);
            }
        }
        there
    }
}

/// Base rows thinner or thicker than this, as multiples of the assumed range, are questioned.
const ODD_BY: f64 = 1.6;
/// No base row is reckoned thinner than this share of the thinnest usual.
const THINNEST: f64 = 0.25;

/// Reckons a wig's fullness on a layout at a corner; `lots` are those its sewn weft came from.
pub fn fullness(wig: &Wig<'_>, layout: &Layout, base: &Base, lots: &[Lot], corner: &Corner) -> Fullness {
    let mut cautions = Vec::new();
    let share = 1.0 - base.crimped.get::<units::ratio>();
    let fibre_mass = base.whole_weight - base.cap_weight;
    let hanging_mass = if fibre_mass.get::<units::gram>() > 1.0 {
        fibre_mass * share
    } else {
        cautions.push(Caution {
            weight: Weight::Stop,
            what: Say::new("plan.cap_heavier", [Arg::Mass(base.cap_weight), Arg::Mass(base.whole_weight)]),
            remedy: Say::key("plan.cap_heavier_remedy"),
        });
        Mass::new::<units::gram>(1.0)
    };

    let usual = wig.row_strands();
    let strand = |zone: Zone| (base.mean_length(zone) + base.fibre_return) * base.fineness;
    let knotted: Mass = Zone::ALL.into_iter().fold(Mass::new::<units::gram>(0.0), |mass, zone| {
        let strands = base.ground[zone as usize]
            .map_or(0.0, |ground| (ground * layout.areas[zone as usize]).get::<units::ratio>());
        mass + strand(zone) * strands
    });
    let per_strand_run: f64 = Zone::ALL
        .into_iter()
        .filter(|zone| base.spacing[*zone as usize].is_some())
        .map(|zone| (strand(zone) * layout.row_length[zone as usize].get::<units::meter>()).get::<units::kilogram>())
        .sum();
    let wefted_mass = hanging_mass - knotted;
    let row_strands = if per_strand_run <= 0.0 {
        LinearNumberDensity::new::<units::per_centimeter>(0.0)
    } else {
        if wefted_mass.get::<units::gram>() <= 1.0 {
            cautions.push(Caution {
                weight: Weight::Care,
                what: Say::new("plan.too_light", [Arg::Mass(hanging_mass), Arg::Mass(knotted)]),
                remedy: Say::key("plan.too_light_remedy"),
            });
        }
        let reckoned = wefted_mass.get::<units::kilogram>() / per_strand_run;
        // A floor rather than a stand-in: the sum must not jump as the weight falls.
        let floor = usual.low.get::<units::per_meter>() * THINNEST;
        LinearNumberDensity::new::<units::per_meter>(reckoned.max(floor))
    };
    if per_strand_run > 0.0 && (row_strands < usual.low / ODD_BY || row_strands > usual.high * ODD_BY) {
        cautions.push(Caution {
            weight: Weight::Care,
            what: Say::new(
                "plan.odd_row",
                [Arg::Strands(row_strands), Arg::Strands(usual.low), Arg::Strands(usual.high)],
            ),
            remedy: Say::key("plan.odd_row_remedy"),
        });
    }

    let mut zones: Vec<ZoneFullness> = Zone::ALL
        .into_iter()
        .map(|zone| {
            let area = layout.areas[zone as usize];
            let bought = match base.ground[zone as usize] {
                Some(ground) => ground,
                None if area.get::<units::square_centimeter>() > 0.0 => {
                    (row_strands * layout.row_length[zone as usize] / area).into()
                }
                None => none_per_area(),
            };
            let (short, long) = (base.shortest[zone as usize], base.longest[zone as usize]);
            ZoneFullness {
                zone,
                area,
                ground: wig.ground(zone),
                bought,
                growth: vec![Growth { root: bought, shortest: short.min(long), longest: short.max(long) }],
                without_rows: bought,
                target: target(&wig.target(zone), bought, base.fineness),
                look_length: wig.look_length(zone).likely,
            }
        })
        .collect();
    add_sewn(wig, layout, base, lots, corner, &mut zones);
    let strands = zones.iter().map(|zone| (zone.bought * zone.area).get::<units::ratio>()).sum();
    Fullness { zones, hanging_mass, row_strands, strands, fineness: base.fineness, cautions }
}

/// What a target means in strands.
fn target(target: &Target, bought: ArealNumberDensity, fineness: LinearMassDensity) -> ArealNumberDensity {
    match target {
        Target::Times(times) => bought * *times,
        Target::Fullness(fullness) => *fullness,
        Target::Percent(share) => from_percent(*share, fineness),
    }
}

/// Strands that are so much of the trade's percent, by the one definition used here: mass on an area per length of hair.
pub fn from_percent(share: f64, fineness: LinearMassDensity) -> ArealNumberDensity {
    let hundred = defaults::HUNDRED_PERCENT_MG * 1e-6 / 1e-4 / 1e-2;
    ArealNumberDensity::new::<units::per_square_meter>(share * hundred / fineness.get::<units::kilogram_per_meter>())
}

/// The trade's percent of so many strands, as a share.
pub fn to_percent(fullness: ArealNumberDensity, fineness: LinearMassDensity) -> f64 {
    fullness.get::<units::per_square_meter>() / from_percent(1.0, fineness).get::<units::per_square_meter>()
}

/// The percent other readings of the trade's scale would give for the same hair: lowest and highest.
pub fn percent_spread(share: f64) -> (f64, f64) {
    let readings = &defaults::HUNDRED_PERCENT;
    (share * readings.likely / readings.high, share * readings.likely / readings.low)
}

fn add_sewn(wig: &Wig<'_>, layout: &Layout, base: &Base, lots: &[Lot], corner: &Corner, zones: &mut [ZoneFullness]) {
    for weft in sewn(wig.state()) {
        // Weft of an unknown lot hangs and counts like the base's own rows.
        let (strands, hanging) = match lots.iter().find(|lot| Some(lot.id) == weft.lot) {
            Some(lot) => {
                let weft = Weft::at(lot, &wig.fibre_return(), weft.as_single, corner);
                (weft.strands, Some(weft.hanging))
            }
            None => (wig.row_strands().likely, None),
        };
        for (zone, length) in lies_in(layout, &weft) {
            let Some(fullness) = zones.get_mut(zone as usize) else { continue };
            if fullness.area.get::<units::square_centimeter>() <= 0.0 {
                continue;
            }
            let root: ArealNumberDensity = (strands * length / fullness.area).into();
            let longest = hanging.unwrap_or(base.longest[zone as usize]);
            if weft.sewn_as != "row" {
                fullness.without_rows += root;
            }
            fullness.growth.push(Growth { root, shortest: longest, longest });
        }
    }
}

/// Which zones a sewn weft lies in, and how much of it.
pub fn lies_in(layout: &Layout, weft: &SewWeft) -> Vec<(Zone, Length)> {
    let section = match weft.section {
        Some("back_and_sides") => Some(Section::BackAndSides),
        Some("top") => Some(Section::Top),
        _ => None,
    };
    let row = section.zip(weft.place).and_then(|(section, place)| layout.dome.row(section, place));
    match (weft.sewn_as, row, weft.zone) {
        ("hairline", _, _) => vec![(Zone::FrontHairline, weft.length)],
        ("parting", _, _) => vec![(Zone::Part, weft.length)],
        (_, Some(row), None) => {
            let whole = row.length();
            row.spans
                .iter()
                .map(|span| (span.zone, weft.length * (span.length / whole).get::<units::ratio>()))
                .collect()
        }
        (_, _, Some(zone)) => vec![(zone, weft.length)],
        (_, None, None) => {
            let wefted: Vec<Zone> =
                Zone::ALL.into_iter().filter(|zone| layout.row_length[*zone as usize] > none()).collect();
            let whole = wefted.iter().fold(none(), |sum, zone| sum + layout.row_length[*zone as usize]);
            wefted
                .into_iter()
                .map(|zone| (zone, weft.length * (layout.row_length[zone as usize] / whole).get::<units::ratio>()))
                .collect()
        }
    }
}

fn sum(parts: impl Iterator<Item = ArealNumberDensity>) -> ArealNumberDensity {
    parts.fold(none_per_area(), |sum, one| sum + one)
}

fn none_per_area() -> ArealNumberDensity {
    ArealNumberDensity::new::<units::per_square_meter>(0.0)
}
