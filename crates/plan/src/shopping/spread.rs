//! How far the answer may be off: which end of each input asks for more weft, and by how much.
//!
//! What it is: one input at a time, then all together at the corner that asks for least and the one that asks for most.
//! What it is not: the packs (each corner is solved like the likely one).

use measure::quantity::{Length, units};
use record::{wig::figures::Wig, workshop::lots::Lot};

use super::{
    pieces::amounts_for,
    prepare::{Stop, dome_at, main_lot, wanted_in_rows},
};
use crate::{
    dome::Dome,
    fullness::fullness,
    hairline::edge_pieces,
    inputs::{Base, Corner, End, Input, Weft},
    layout::{Layout, lay_out, none},
    wefts::rules,
};

/// The effect of each input on the weft wanted, and the two corners.
#[derive(Clone, Debug, PartialEq)]
pub struct Spread {
    /// With everything likely.
    pub likely: Length,
    /// With one input at its low and its high end, the rest likely.
    pub swings: Vec<(Input, Length, Length)>,
    /// The corner that asks for least.
    pub least: Corner,
    /// The corner that asks for most.
    pub most: Corner,
}

impl Spread {
    /// How much an input alone moves the answer.
    pub fn swing(&self, input: Input) -> Length {
        self.swings.iter().find(|(one, _, _)| *one == input).map_or(none(), |(_, low, high)| (*high - *low).abs())
    }

    /// The inputs by how much they move the answer, most first.
    pub fn by_swing(&self) -> Vec<Input> {
        let mut inputs: Vec<Input> = self.swings.iter().map(|(input, _, _)| *input).collect();
        inputs.sort_by(|a, b| {
            let swing = |input: &Input| self.swing(*input).get::<units::meter>();
            swing(b).total_cmp(&swing(a)).then(a.cmp(b))
        });
        inputs
    }
}

/// Weft wanted at a corner, before rows are placed: a continuous sum, so that ends can be compared.
///
/// # Errors
/// As [`super::prepare`].
pub fn metres(wig: &Wig<'_>, lots: &[Lot], layout: &Layout, corner: &Corner, parted: bool) -> Result<Length, Stop> {
    let base = Base::at(wig, corner);
    let full = fullness(wig, layout, &base, lots, corner);
    let main = main_lot(wig, lots).ok_or(Stop::NoLot)?;
    let weft = Weft::at(main, base.fibre_return, parted, corner);
    let rules = rules(wig, !main.may_be_cut());
    let fold = corner.pick(Input::Allowances, &wig.bench_length("end_fold"));
    let spare = corner.pick(Input::Allowances, &wig.bench_share("hairline_spare"));
    let edge = edge_pieces(wig, layout, main, parted, fold, spare);
    let strands = wanted_in_rows(&full, &rules);
    let rows = Length::new::<units::meter>(strands / weft.strands.get::<units::per_meter>());
    Ok(amounts_for(wig, &weft, rows, 0, &edge, corner).total())
}

/// Domes and layouts by the ends they depend on, each made once.
#[derive(Clone, Debug)]
pub struct Heads {
    domes: [Dome; 3],
    layouts: Vec<((End, End), Layout)>,
}

impl Heads {
    /// Fits the head at its three ends; where an end is no head at all, the likely head stands in.
    ///
    /// # Errors
    /// Where even the likely head cannot be.
    pub fn fit(wig: &Wig<'_>) -> Result<Heads, Stop> {
        let likely = dome_at(wig, &Corner::likely())?;
        let end = |end| dome_at(wig, &Corner::likely().with(Input::Head, end)).unwrap_or_else(|_| likely.clone());
        Ok(Heads { domes: [end(End::Low), likely.clone(), end(End::High)], layouts: Vec::new() })
    }

    /// The layout for a corner.
    pub fn layout(&mut self, wig: &Wig<'_>, corner: &Corner) -> &Layout {
        let key = (corner.end(Input::Head), corner.end(Input::Spacing));
        let at = match self.layouts.iter().position(|(one, _)| *one == key) {
            Some(at) => at,
            None => {
                let dome = self.domes[key.0 as usize].clone();
                self.layouts.push((key, lay_out(dome, &Base::at(wig, corner))));
                self.layouts.len() - 1
            }
        };
        &self.layouts[at].1
    }
}

/// Tries each input at both ends.
///
/// # Errors
/// As [`metres`] at the likely corner; an end that stops is left out.
pub fn spread(wig: &Wig<'_>, lots: &[Lot], heads: &mut Heads, parted: bool) -> Result<Spread, Stop> {
    let mut at = |corner: &Corner| metres(wig, lots, heads.layout(wig, corner), corner, parted);
    let likely = at(&Corner::likely())?;
    let mut spread = Spread { likely, swings: Vec::new(), least: Corner::likely(), most: Corner::likely() };
    for input in Input::ALL {
        let low = at(&Corner::likely().with(input, End::Low)).unwrap_or(likely);
        let high = at(&Corner::likely().with(input, End::High)).unwrap_or(likely);
        if low == high {
            continue;
        }
        let (less, more) = if low < high { (End::Low, End::High) } else { (End::High, End::Low) };
        spread.least = spread.least.with(input, less);
        spread.most = spread.most.with(input, more);
        spread.swings.push((input, low, high));
    }
    Ok(spread)
}
