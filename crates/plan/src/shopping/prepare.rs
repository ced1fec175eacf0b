//! From a wig and its lots to a case for the cutter, at one corner.
//!
//! What it is: the pass through dome, fullness, rows, edges and pieces. What it is not: the cutting.

use measure::{
    order,
    quantity::{Length, units},
    say::{Arg, Say},
};
use record::{
    id::LotId,
    wig::{figures::Wig, zone::Zone},
    workshop::lots::Lot,
};

use super::{
    need::{Need, need},
    pieces::{Amounts, Bench, Piece, Way, mm, pieces},
    rows_left::{places, rows_left},
};
use crate::{
    cutting::{Case, Demand, Pack, each::each},
    dome::Dome,
    fullness::Fullness,
    hairline::EdgePiece,
    inputs::{Corner, Input, Weft},
    layout::{self, Layout},
    wefts::{Placement, Room, room_for_rows, rules},
};

/// Why there is no answer.
#[derive(Clone, Debug, PartialEq)]
pub enum Stop {
    /// The cap takes no weft: it is knotted.
    NoWefts,
    /// No lot is chosen for this wig.
    NoLot,
    /// The head's measures cannot be; slot and sentence for each.
    Head(Vec<(&'static str, Say)>),
    /// The pieces cannot be had; what and why.
    Pieces(Vec<Say>),
}

/// Everything the cutter's answer is read against.
#[derive(Clone, Debug)]
pub struct Prepared {
    /// The cap laid out.
    pub layout: Layout,
    /// How full it is and shall be.
    pub fullness: Fullness,
    /// The weft reckoned with.
    pub weft: Weft,
    /// Its lot.
    pub main: LotId,
    /// Lots like it, which pieces may come from too.
    pub others: Vec<LotId>,
    /// Lots of this wig that are too unlike it to mix in one plan.
    pub left_out: Vec<LotId>,
    /// Rows to sew.
    pub placement: Placement,
    /// Pieces for front edge and parting.
    pub edge: Vec<EdgePiece>,
    /// Weft by purpose; rows as long as wanted and as there is room, which the placement meets as nearly as whole rows can.
    pub amounts: Amounts,
    /// Whether all of the weft is parted into singles.
    pub parted: bool,
    /// Whether double weft is parted into singles for front edge and parting only.
    pub edge_singles: bool,
    /// Weft wanted in rows, whether there is room or not.
    pub wanted: Length,
    /// How it is put on.
    pub way: Way,
    /// Pieces to take.
    pub pieces: Vec<Piece>,
    /// Which lot each kind of pack of the case is of.
    pub kinds: Vec<LotId>,
    /// The case for the cutter; none where nothing is wanted.
    pub case: Option<Case>,
    /// Whether every pack for sale has its price.
    pub priced: bool,
}

/// Strands on a cm may differ by so much between lots that share a plan.
const LIKE: f64 = 0.2;
/// Price stand-in where none was given: packs are then counted, not paid.
const ONE_PACK: u64 = 1000;

/// Whether the main lot is double weft to be parted into singles; single weft stays as it is.
pub fn parted(wig: &Wig<'_>, lots: &[Lot]) -> bool {
    wig.parts_double_weft() && main_lot(wig, lots).is_some_and(Lot::is_double)
}

/// Prepares a wig at a corner on a cap already laid out for it.
///
/// # Errors
/// Why there is nothing to reckon.
pub fn prepare(
    wig: &Wig<'_>,
    lots: &[Lot],
    layout: Layout,
    corner: &Corner,
    parted: bool,
    halves: bool,
) -> Result<Prepared, Stop> {
    prepare_with(wig, lots, layout, corner, parted, halves, true)
}

/// The same, without choosing rows where a bound needs none.
pub(super) fn prepare_with(
    wig: &Wig<'_>,
    lots: &[Lot],
    layout: Layout,
    corner: &Corner,
    parted: bool,
    halves: bool,
    choose: bool,
) -> Result<Prepared, Stop> {
    let main = main_lot(wig, lots).ok_or(Stop::NoLot)?;
    let room = room(wig, lots, &layout)?;
    let Need { full, weft, edge, amounts, wanted, fold, .. } = need(wig, lots, &layout, &room, corner, parted)?;
    let hand_tied = !main.may_be_cut();
    let rules = rules(wig, hand_tied);
    let way = match (hand_tied, wig.cut_to_rows()) {
        (true, _) => Way::Whole,
        (false, true) => Way::Cut,
        (false, false) => Way::Run,
    };
    let placement =
        if choose || way != Way::Run { rows_left(wig, &layout, &rules, &full, &weft) } else { Placement::default() };

    let (like, left_out) = alike(wig, lots, main, &weft, parted, corner);
    let unit = mm(rules.shortest).max(1);
    let longest = like.iter().map(|(_, weft)| mm_down(weft.piece)).max().unwrap_or(1).max(1);
    let pieces =
        pieces(way, &amounts, &placement.rows, &edge, &Bench { fold, unit_mm: unit, longest_mm: longest, halves });
    refuse_joins(wig, way, &pieces, longest)?;
    let priced = like.iter().all(|(lot, _)| lot.price.is_some() || !lot.still_sold);
    let (packs, kinds) = packs(&like, parted, priced);
    let loss = corner.pick(Input::Allowances, &wig.bench_length("cut_loss"));
    // Nothing is lost at a fold or beside a whole piece.
    let loss = if way == Way::Cut { mm(loss) } else { 0 };
    let case = case(packs, &pieces, loss)?;
    Ok(Prepared {
        layout,
        fullness: full,
        weft,
        main: main.id,
        others: like.iter().map(|(lot, _)| lot.id).filter(|id| *id != main.id).collect(),
        left_out,
        placement,
        edge,
        amounts,
        wanted,
        parted,
        edge_singles: !parted && main.is_double() && wig.edges_of_singles(),
        way,
        pieces,
        kinds,
        case,
        priced,
    })
}

/// The room that a cap has for rows of its main lot.
pub(super) fn room(wig: &Wig<'_>, lots: &[Lot], layout: &Layout) -> Result<Room, Stop> {
    if !wig.cap().takes_weft() {
        return Err(Stop::NoWefts);
    }
    let main = main_lot(wig, lots).ok_or(Stop::NoLot)?;
    Ok(room_for_rows(layout, &rules(wig, !main.may_be_cut()), &places(wig)))
}

/// Strands wanting in each zone, in the order of the zones.
pub(super) fn wanting(full: &Fullness) -> [f64; 8] {
    Zone::ALL.map(|zone| full.zones.get(zone as usize).map_or(0.0, |zone| zone.wanting()))
}

/// The lot the rows are reckoned with: the one said, else the first of this wig's.
pub(super) fn main_lot<'a>(wig: &Wig<'_>, lots: &'a [Lot]) -> Option<&'a Lot> {
    let said = wig.main_lot();
    lots.iter().find(|lot| Some(lot.id) == said).or_else(|| lots.iter().find(|lot| wig.uses_lot(lot.id)))
}

/// Lots of this wig like the main one (that one first), and the rest.
fn alike<'a>(
    wig: &Wig<'_>,
    lots: &'a [Lot],
    main: &'a Lot,
    weft: &Weft,
    parted: bool,
    corner: &Corner,
) -> (Vec<(&'a Lot, Weft)>, Vec<LotId>) {
    let mut like = vec![(main, weft.clone())];
    let mut left_out = Vec::new();
    for lot in lots.iter().filter(|lot| lot.id != main.id && wig.uses_lot(lot.id)) {
        let other = Weft::at(lot, &wig.fibre_return(), parted, corner);
        let ratio = (other.strands / weft.strands).get::<units::ratio>();
        let close = (1.0 - LIKE..=1.0 + LIKE).contains(&ratio);
        let layers = lot.is_double() == main.is_double();
        if close && layers && lot.made == main.made && lot.fibre == main.fibre {
            like.push((lot, other));
        } else {
            left_out.push(lot.id);
        }
    }
    (like, left_out)
}

fn mm_down(length: Length) -> u32 {
    libm::floor(length.get::<units::millimeter>() + 1e-6).clamp(0.0, 100_000.0) as u32
}

fn packs(like: &[(&Lot, Weft)], parted: bool, priced: bool) -> (Vec<Pack>, Vec<LotId>) {
    let mut packs = Vec::new();
    let mut kinds = Vec::new();
    for (lot, weft) in like {
        let price = match lot.price {
            Some(price) if priced => price.hundredths(),
            _ => ONE_PACK,
        };
        packs.push(Pack {
            name: format!("{} {}", lot.name, lot.id),
            length_mm: mm_down(weft.piece).max(1),
            pieces: if lot.still_sold { lot.pieces } else { 0 },
            price,
            owned: lot.left.whole_lengths,
        });
        kinds.push(lot.id);
        let rest = lot.left.rest * if parted { 2.0 } else { 1.0 };
        if mm_down(rest) > 0 {
            packs.push(Pack {
                name: format!("rest of {} {}", lot.name, lot.id),
                length_mm: mm_down(rest),
                pieces: 0,
                price: 0,
                owned: 1,
            });
            kinds.push(lot.id);
        }
    }
    (packs, kinds)
}

fn refuse_joins(wig: &Wig<'_>, way: Way, pieces: &[Piece], longest: u32) -> Result<(), Stop> {
    if wig.joins() || way == Way::Whole || pieces.iter().all(|piece| piece.part.1 == 1) {
        return Ok(());
    }
    let longest = Length::new::<units::millimeter>(f64::from(longest));
    Err(Stop::Pieces(vec![Say::new("plan.needs_joins", [Arg::Length(longest)])]))
}

fn case(packs: Vec<Pack>, pieces: &[Piece], loss: u32) -> Result<Option<Case>, Stop> {
    if pieces.is_empty() {
        return Ok(None);
    }
    let mut lengths = each(pieces.len(), &|at| pieces[at].length_mm);
    order::sort_by(&mut lengths, &|a, b| b.cmp(a));
    let mut demands: Vec<Demand> = Vec::new();
    for length_mm in lengths {
        match demands.last_mut() {
            Some(demand) if demand.length_mm == length_mm => demand.count += 1,
            _ => demands.push(Demand { length_mm, count: 1 }),
        }
    }
    Case::new(packs, demands, loss).map(Some).map_err(|errors| {
        Stop::Pieces(each(errors.len(), &|at| Say::new("plan.case", [Arg::Text(errors[at].to_string())])))
    })
}

/// The dome of a wig so far from the likely head to a corner's, or what its measures refuse.
pub(super) fn dome_at(wig: &Wig<'_>, corner: &Corner, reach: f64) -> Result<Dome, Stop> {
    layout::dome_towards(wig, corner, reach).map_err(|problems| {
        Stop::Head(problems.iter().map(|problem| (layout::slot_of(problem), layout::refusal(problem))).collect())
    })
}
