//! How far the answer may be off: which end of each input asks for more weft, and by how much.
//!
//! What it is: one input at a time, then all together at the corners that ask for least and for most, in metres and in packs.
//! What it is not: the solving of those corners (each is solved like the likely one).
//!
//! **Widening an input never narrows the bounds**, in metres, where the input is one of the base's own weights, lengths,
//! fineness, root side or filler, or one of the weft's. Each moves a zone's want one way; which way depends on how the zone's
//! target is told (a heavier base asks more of a zone told in multiples and less of one told in strands), so that a corner
//! may take the base's inputs at other ends for zones told otherwise. In packs the same holds where weft of one lot is sewn as one run.
//!
//! What is not promised:
//! - The head's measures and the spacing of rows. They move whole rows in and out of zones, and hair with them from one zone to
//!   another: their three ends are tried, but an end between, or one measure alone, may ask for a little more or less.
//! - Packs where rows are cut, put on in whole pieces, or shared among lots: pieces are counted whole, and lots are like or not,
//!   so that one piece may tip a pack either way.
//! - A base beside knots so light that its rows come out at the least row reckoned with (which is questioned), told in percent.
//!
//! Metres and packs have corners of their own: weft sewn thinner makes more metres and not one pack more.

use measure::{
    order,
    quantity::{Length, units},
};
use record::{
    trade::caps::Ground,
    wig::{
        figures::{Target, Wig},
        zone::Zone,
    },
    workshop::lots::Lot,
};

use super::{
    heads::{Heads, Needed},
    prepare::{Stop, main_lot},
};
use crate::{
    inputs::{Base, Corner, End, Input, Weft},
    layout::none,
};

/// The effect of each input on the weft wanted, and the corners that bound it.
#[derive(Clone, Debug, PartialEq)]
pub struct Spread {
    /// With everything likely.
    pub likely: Length,
    /// The least that may be needed: what is needed at [`Spread::least`].
    pub low: Length,
    /// The most that may be needed: what is needed at [`Spread::most`].
    pub high: Length,
    /// With one input at its low and its high end, the rest likely.
    pub swings: Vec<(Input, Length, Length)>,
    /// The same in packs of the main lot, broken ones counted as their share.
    pub pack_swings: Vec<(Input, f64, f64)>,
    /// The corner that asks for least weft.
    pub least: Corner,
    /// The corner that asks for most weft.
    pub most: Corner,
    /// The corner that asks for fewest packs.
    pub fewest_packs: Corner,
    /// The corner that asks for most packs.
    pub most_packs: Corner,
}

impl Spread {
    /// How much an input alone moves the answer.
    pub fn swing(&self, input: Input) -> Length {
        self.swings.iter().find(|(one, _, _)| *one == input).map_or(none(), |(_, low, high)| (*high - *low).abs())
    }

    /// How much an input alone moves the packs.
    pub fn pack_swing(&self, input: Input) -> f64 {
        let found = self.pack_swings.iter().find(|(one, _, _)| *one == input);
        found.map_or(0.0, |(_, low, high)| libm::fabs(high - low))
    }

    /// The inputs by how much they move the answer, most first.
    pub fn by_swing(&self) -> Vec<Input> {
        let mut inputs: Vec<Input> = self.swings.iter().map(|(input, _, _)| *input).collect();
        order::sort_by(&mut inputs, &|a, b| {
            let swing = |input: &Input| self.swing(*input).get::<units::meter>();
            swing(b).total_cmp(&swing(a)).then(a.cmp(b))
        });
        inputs
    }

    /// The inputs by how much they move the packs, most first.
    pub fn by_pack_swing(&self) -> Vec<Input> {
        let mut inputs: Vec<Input> = self.pack_swings.iter().map(|(input, _, _)| *input).collect();
        order::sort_by(&mut inputs, &|a, b| self.pack_swing(*b).total_cmp(&self.pack_swing(*a)).then(a.cmp(b)));
        inputs
    }
}

/// What a corner is sought for.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Aim {
    LeastMetres,
    MostMetres,
    FewestPacks,
    MostPacks,
}

const AIMS: [Aim; 4] = [Aim::LeastMetres, Aim::MostMetres, Aim::FewestPacks, Aim::MostPacks];

impl Aim {
    /// The greater the nearer to the aim.
    fn worth(self, needed: Needed) -> (f64, f64, f64) {
        let (metres, wanted) = (needed.metres.get::<units::meter>(), needed.wanted.get::<units::meter>());
        match self {
            Aim::LeastMetres => (-metres, -wanted, -needed.lacking),
            Aim::MostMetres => (metres, wanted, needed.lacking),
            Aim::FewestPacks => (-needed.packs, -wanted, -needed.lacking),
            Aim::MostPacks => (needed.packs, wanted, needed.lacking),
        }
    }
}

/// The search for the corners, an input at a time.
#[derive(Debug)]
pub(super) struct Search {
    likely: Needed,
    /// Inputs that are open, with what is needed at their low and high end.
    tried: Vec<(Input, Needed, Needed)>,
    /// Open inputs with the zones whose ends go together.
    open: Vec<(Input, Vec<Zone>)>,
    corners: [Corner; 4],
    /// Next input to try alone, then next to try again at each corner, and whether that changed anything.
    next: usize,
    again: (usize, usize),
    rounds: usize,
    changed: bool,
}

/// Inputs seldom change their mind with the others' ends; where one does, this many rounds settle it.
const ROUNDS: usize = 4;

impl Search {
    pub(super) fn new(wig: &Wig<'_>, lots: &[Lot], heads: &mut Heads, parted: bool) -> Result<Search, Stop> {
        let likely = heads.needed(wig, lots, &Corner::likely(), parted)?;
        Ok(Search {
            likely,
            tried: Vec::new(),
            open: Vec::new(),
            corners: [Corner::likely(); 4],
            next: 0,
            again: (0, 0),
            rounds: 0,
            changed: false,
        })
    }

    /// Tries one input alone, or again at one corner; answers whether all is found.
    pub(super) fn step(&mut self, wig: &Wig<'_>, lots: &[Lot], heads: &mut Heads, parted: bool) -> Result<bool, Stop> {
        if let Some(input) = Input::ALL.get(self.next) {
            self.next += 1;
            if is_open(wig, lots, *input, parted) {
                self.alone(*input, wig, lots, heads, parted)?;
            }
            return Ok(false);
        }
        let (at, aim) = self.again;
        let Some((input, zones)) = self.open.get(at) else {
            self.rounds += 1;
            let over = !self.changed || self.rounds >= ROUNDS;
            (self.again, self.changed) = ((0, 0), false);
            return Ok(over);
        };
        self.again = if aim + 1 < AIMS.len() { (at, aim + 1) } else { (at + 1, 0) };
        if let (Some(aim), Some(corner)) = (AIMS.get(aim).copied(), self.corners.get_mut(aim)) {
            let (mut best, mut worth) = (*corner, None);
            for other in others(*corner, *input, zones, self.open.iter().any(|(one, _)| *one == Input::Spacing)) {
                let found = Some(aim.worth(heads.needed(wig, lots, &other, parted)?));
                if found > worth {
                    (best, worth) = (other, found);
                }
            }
            if best != *corner {
                *corner = best;
                self.changed = true;
            }
        }
        Ok(false)
    }

    /// Tries the ends of one input, all others likely.
    fn alone(
        &mut self,
        input: Input,
        wig: &Wig<'_>,
        lots: &[Lot],
        heads: &mut Heads,
        parted: bool,
    ) -> Result<(), Stop> {
        let mut at =
            |zones: &[Zone], end| heads.needed(wig, lots, &Corner::likely().with_for(zones, input, end), parted);
        let (low, high) = (at(&Zone::ALL, End::Low)?, at(&Zone::ALL, End::High)?);
        self.tried.push((input, low, high));
        for zones in together(wig, input) {
            let whole = zones.len() == Zone::ALL.len();
            let low = if whole { low } else { at(&zones, End::Low)? };
            let high = if whole { high } else { at(&zones, End::High)? };
            let ends = [(End::Likely, self.likely), (End::Low, low), (End::High, high)];
            for (aim, corner) in AIMS.into_iter().zip(&mut self.corners) {
                *corner = corner.with_for(&zones, input, best(aim, &ends));
            }
            self.open.push((input, zones));
        }
        Ok(())
    }

    pub(super) fn spread(self, wig: &Wig<'_>, lots: &[Lot], heads: &mut Heads, parted: bool) -> Result<Spread, Stop> {
        let [least, most, fewest_packs, most_packs] = self.corners;
        let (mut swings, mut pack_swings) = (Vec::new(), Vec::new());
        for (input, low, high) in &self.tried {
            if *low != self.likely || *high != self.likely {
                swings.push((*input, low.metres, high.metres));
                pack_swings.push((*input, low.packs, high.packs));
            }
        }
        Ok(Spread {
            likely: self.likely.metres,
            low: heads.needed(wig, lots, &least, parted)?.metres,
            high: heads.needed(wig, lots, &most, parted)?.metres,
            swings,
            pack_swings,
            least,
            most,
            fewest_packs,
            most_packs,
        })
    }
}

/// The corners that differ from one in an input for some zones, that one first, so that equals change nothing.
///
/// Head and spacing decide together which rows there are, so that their ends are tried together.
fn others(corner: Corner, input: Input, zones: &[Zone], spacing: bool) -> Vec<Corner> {
    const ENDS: [End; 3] = [End::Low, End::High, End::Likely];
    let mut others = vec![corner];
    let mut add = |other: Corner| {
        if !others.contains(&other) {
            others.push(other);
        }
    };
    for end in ENDS {
        let other = corner.with_for(zones, input, end);
        match input {
            Input::Head if spacing => ENDS.into_iter().for_each(|end| add(other.with(Input::Spacing, end))),
            _ => add(other),
        }
    }
    others
}

/// How a target is told, and for which zone where that matters; nothing where nothing is wanted of rows.
type Told = Option<(u8, Option<Zone>)>;

/// The zones that an input moves the same way: those whose targets are told alike. A zone that wants nothing goes with any.
fn together(wig: &Wig<'_>, input: Input) -> Vec<Vec<Zone>> {
    let alike = |zone: Zone| match (wig.ground(zone), wig.target(zone)) {
        (Ground::Knotted { .. } | Ground::Closed { .. }, _) => None,
        (_, Target::Times(times)) => (times > 1.0).then_some((0, None)),
        (_, Target::Fullness(_)) => Some((1, None)),
        // Percent is told by the fibre's fineness, which also decides what there is: knots beside make it either way.
        (_, Target::Percent(_)) => Some((2, (input == Input::Fineness).then_some(zone))),
    };
    let mut groups: Vec<(Told, Vec<Zone>)> = Vec::new();
    if input.own_fullness() {
        for zone in Zone::ALL {
            let told = alike(zone);
            match groups.iter_mut().find(|(one, _)| *one == told) {
                Some((_, zones)) => zones.push(zone),
                None => groups.push((told, vec![zone])),
            }
        }
    }
    let idle = groups.iter().position(|(told, _)| told.is_none());
    let idle = idle.map(|at| groups.remove(at).1).unwrap_or_default();
    match groups.first_mut() {
        Some((_, zones)) => zones.extend(idle),
        None => groups.push((None, Zone::ALL.to_vec())),
    }
    groups.into_iter().map(|(_, zones)| zones).collect()
}

/// Whether an input's ends are figures apart.
fn is_open(wig: &Wig<'_>, lots: &[Lot], input: Input, parted: bool) -> bool {
    let read = |end| {
        let corner = Corner::likely().with(input, end);
        let main = main_lot(wig, lots);
        (Base::at(wig, &corner), main.map(|lot| Weft::at(lot, &wig.fibre_return(), parted, &corner)))
    };
    // Every tape is good to a few mm only, and what is folded and kept back is never known before.
    matches!(input, Input::Head | Input::Allowances)
        || read(End::Low) != read(End::Likely)
        || read(End::High) != read(End::Likely)
}

/// The first of the ends that come nearest to the aim.
fn best(aim: Aim, ends: &[(End, Needed)]) -> End {
    let mut best = End::Likely;
    let mut worth = (f64::NEG_INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY);
    for (end, needed) in ends {
        if aim.worth(*needed) > worth {
            (best, worth) = (*end, aim.worth(*needed));
        }
    }
    best
}

/// Finds the corners at one go.
///
/// # Errors
/// As [`super::metres`] at any corner.
pub fn spread(wig: &Wig<'_>, lots: &[Lot], heads: &mut Heads, parted: bool) -> Result<Spread, Stop> {
    let mut search = Search::new(wig, lots, heads, parted)?;
    while !search.step(wig, lots, heads, parted)? {}
    search.spread(wig, lots, heads, parted)
}
