//! How far the answer may be off: which end of each input asks for more weft, and by how much.
//!
//! What it is: one input at a time, then all together at the corners that ask for least and for most, in metres and in packs.
//! What it is not: the solving of those corners (each is solved like the likely one).
//!
//! Where one zone's target is told in multiples and another's in strands, a heavier base asks for more here and for less there:
//! a bound may then lie between the ends that are tried, and is the best of those.
//!
//! Metres and packs have corners of their own: weft sewn thinner makes more metres and not one pack more.

use measure::{
    order,
    quantity::{Length, units},
};
use record::{wig::figures::Wig, workshop::lots::Lot};

use super::{
    need::need,
    prepare::{Stop, dome_at, main_lot, room},
};
use crate::{
    dome::Dome,
    inputs::{Base, Corner, End, Input, Weft},
    layout::{Layout, lay_out, none},
    wefts::Room,
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

/// Weft needed at a corner, before rows are placed.
///
/// # Errors
/// As [`super::prepare`].
pub fn metres(wig: &Wig<'_>, lots: &[Lot], layout: &Layout, corner: &Corner, parted: bool) -> Result<Length, Stop> {
    let room = room(wig, lots, layout)?;
    Ok(need(wig, lots, layout, &room, corner, parted)?.amounts.total())
}

/// Domes and layouts by the ends they depend on, each made once.
#[derive(Clone, Debug, Default)]
pub struct Heads {
    domes: Vec<Dome>,
    layouts: Vec<Laid>,
}

/// The ends of head and spacing, the layout for them, and its room once asked for.
type Laid = ((End, End), Layout, Option<Room>);

/// The heads in the order they are fitted.
const ENDS: [End; 3] = [End::Likely, End::Low, End::High];

impl Heads {
    /// Fits the head at its three ends; an end that no head can have is drawn in as far as need be.
    ///
    /// # Errors
    /// Where even the likely head cannot be.
    pub fn fit(wig: &Wig<'_>) -> Result<Heads, Stop> {
        let mut heads = Heads::default();
        while !heads.fit_next(wig)? {}
        Ok(heads)
    }

    /// Fits one head more; answers whether all are there.
    pub(super) fn fit_next(&mut self, wig: &Wig<'_>) -> Result<bool, Stop> {
        match (self.domes.first(), ENDS.get(self.domes.len())) {
            (None, _) => self.domes.push(dome_at(wig, &Corner::likely(), 1.0)?),
            (Some(likely), Some(end)) => {
                let corner = Corner::likely().with(Input::Head, *end);
                let reach = [1.0, 0.75, 0.5, 0.25].into_iter();
                let dome = reach.filter_map(|reach| dome_at(wig, &corner, reach).ok()).next();
                self.domes.push(dome.unwrap_or_else(|| likely.clone()));
            }
            (Some(_), None) => {}
        }
        Ok(self.domes.len() == ENDS.len())
    }

    fn at(&mut self, wig: &Wig<'_>, corner: &Corner) -> Option<usize> {
        let key = (corner.end(Input::Head), corner.end(Input::Spacing));
        if let Some(at) = self.layouts.iter().position(|(one, _, _)| *one == key) {
            return Some(at);
        }
        let dome = ENDS.iter().position(|end| *end == key.0).and_then(|at| self.domes.get(at))?;
        self.layouts.push((key, lay_out(dome.clone(), &Base::at(wig, corner)), None));
        Some(self.layouts.len() - 1)
    }

    /// The layout for a corner; none before the heads are fitted.
    pub fn layout(&mut self, wig: &Wig<'_>, corner: &Corner) -> Option<&Layout> {
        let at = self.at(wig, corner)?;
        self.layouts.get(at).map(|(_, layout, _)| layout)
    }

    fn needed(&mut self, wig: &Wig<'_>, lots: &[Lot], corner: &Corner, parted: bool) -> Result<Needed, Stop> {
        let main = main_lot(wig, lots).ok_or(Stop::NoLot)?;
        let at = self.at(wig, corner);
        let Some((_, layout, kept)) = at.and_then(|at| self.layouts.get_mut(at)) else { return Err(Stop::NoLot) };
        let room = match kept {
            Some(room) => &*room,
            None => kept.insert(room(wig, lots, layout)?),
        };
        let need = need(wig, lots, layout, room, corner, parted)?;
        Ok(Needed { metres: need.amounts.total(), packs: need.packs(main), wanted: need.wanted })
    }
}

/// What is needed at a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Needed {
    metres: Length,
    packs: f64,
    /// Wanted in rows, whether there is room or not: tells equals apart where room is short.
    wanted: Length,
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
    fn worth(self, needed: Needed) -> (f64, f64) {
        let (metres, wanted) = (needed.metres.get::<units::meter>(), needed.wanted.get::<units::meter>());
        match self {
            Aim::LeastMetres => (-metres, -wanted),
            Aim::MostMetres => (metres, wanted),
            Aim::FewestPacks => (-needed.packs, -wanted),
            Aim::MostPacks => (needed.packs, wanted),
        }
    }
}

/// The search for the corners, an input at a time.
#[derive(Debug)]
pub(super) struct Search {
    likely: Needed,
    /// Inputs that are open, with what is needed at their low and high end.
    tried: Vec<(Input, Needed, Needed)>,
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
        let corners = [Corner::likely(); 4];
        Ok(Search { likely, tried: Vec::new(), corners, next: 0, again: (0, 0), rounds: 0, changed: false })
    }

    /// Tries one input alone, or again at one corner; answers whether all is found.
    pub(super) fn step(&mut self, wig: &Wig<'_>, lots: &[Lot], heads: &mut Heads, parted: bool) -> Result<bool, Stop> {
        if let Some(input) = Input::ALL.get(self.next) {
            self.next += 1;
            if is_open(wig, lots, *input, parted) {
                let low = heads.needed(wig, lots, &Corner::likely().with(*input, End::Low), parted)?;
                let high = heads.needed(wig, lots, &Corner::likely().with(*input, End::High), parted)?;
                for (aim, corner) in AIMS.into_iter().zip(&mut self.corners) {
                    let ends = [(End::Likely, self.likely), (End::Low, low), (End::High, high)];
                    *corner = corner.with(*input, best(aim, &ends));
                }
                self.tried.push((*input, low, high));
            }
            return Ok(false);
        }
        let (at, aim) = self.again;
        let Some((input, _, _)) = self.tried.get(at).copied() else {
            self.rounds += 1;
            let over = !self.changed || self.rounds >= ROUNDS;
            (self.again, self.changed) = ((0, 0), false);
            return Ok(over);
        };
        self.again = if aim + 1 < AIMS.len() { (at, aim + 1) } else { (at + 1, 0) };
        if let (Some(aim), Some(corner)) = (AIMS.get(aim).copied(), self.corners.get_mut(aim)) {
            let mut ends = Vec::with_capacity(3);
            // The end it has stands first, so that equals change nothing.
            let has = corner.end(input);
            for end in [has, End::Low, End::High, End::Likely] {
                if ends.iter().all(|(one, _): &(End, Needed)| *one != end) {
                    ends.push((end, heads.needed(wig, lots, &corner.with(input, end), parted)?));
                }
            }
            let found = best(aim, &ends);
            if found != has {
                *corner = corner.with(input, found);
                self.changed = true;
            }
        }
        Ok(false)
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
    let mut worth = (f64::NEG_INFINITY, f64::NEG_INFINITY);
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
/// As [`metres`] at any corner.
pub fn spread(wig: &Wig<'_>, lots: &[Lot], heads: &mut Heads, parted: bool) -> Result<Spread, Stop> {
    let mut search = Search::new(wig, lots, heads, parted)?;
    while !search.step(wig, lots, heads, parted)? {}
    search.spread(wig, lots, heads, parted)
}
