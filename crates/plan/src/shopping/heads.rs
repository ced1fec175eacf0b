//! Heads and layouts by the ends they depend on, and what is needed on each.
//!
//! What it is: domes fitted once, caps laid out once, sums on them. What it is not: the search for bounds (see `spread`).

use measure::quantity::Length;
use record::{wig::figures::Wig, workshop::lots::Lot};

use super::{
    need::need,
    prepare::{Stop, dome_at, main_lot, room},
};
use crate::{
    dome::Dome,
    inputs::{Base, Corner, End, Input},
    layout::{Layout, lay_out},
    wefts::Room,
};

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

    pub(super) fn needed(
        &mut self,
        wig: &Wig<'_>,
        lots: &[Lot],
        corner: &Corner,
        parted: bool,
    ) -> Result<Needed, Stop> {
        let main = main_lot(wig, lots).ok_or(Stop::NoLot)?;
        let at = self.at(wig, corner);
        let Some((_, layout, kept)) = at.and_then(|at| self.layouts.get_mut(at)) else { return Err(Stop::NoLot) };
        let room = match kept {
            Some(room) => &*room,
            None => kept.insert(room(wig, lots, layout)?),
        };
        let need = need(wig, lots, layout, room, corner, parted)?;
        Ok(Needed { metres: need.amounts.total(), packs: need.packs(main), wanted: need.wanted, lacking: need.lacking })
    }
}

/// What is needed at a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Needed {
    pub(super) metres: Length,
    pub(super) packs: f64,
    /// Wanted in rows, whether there is room or not: tells equals apart where room is short.
    pub(super) wanted: Length,
    /// Strands lacking, less than none where there are too many: tells equals apart where nothing is wanted yet.
    pub(super) lacking: f64,
}
