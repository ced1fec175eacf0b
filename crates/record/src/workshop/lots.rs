//! Lots as they stand: what each is, and what is left of it.
//!
//! What it is: the reader of the workshop's log together with what wigs used.
//! What it is not: stock-keeping of its own: on hand is the last count less later use.

use measure::{
    civil::Minute,
    money::Money,
    order,
    quantity::{Length, LinearMassDensity, LinearNumberDensity, Mass, units},
};

use super::dyes;
use crate::{
    field::Value,
    history::{
        entry::{Key, LogId, Of},
        fold::{Done, State},
    },
    id::LotId,
    trade::{
        defaults,
        fibres::{self, Fibre},
    },
    wig::{
        figure::{Figure, FromBase},
        shade::Shade,
        work::{count::Counted, sew_weft::SewWeft},
    },
};

/// A lot.
#[derive(Clone, Debug, PartialEq)]
pub struct Lot {
    /// Its identity.
    pub id: LotId,
    /// Its name.
    pub name: String,
    /// Its colour in words.
    pub colour: String,
    /// The dye lot on its label.
    pub dye_lot: String,
    /// Its fibre.
    pub fibre: &'static Fibre,
    /// `machine`, `flat` or `hand_tied`.
    pub made: &'static str,
    /// Whether it was said to be double or single.
    pub layers: Option<&'static str>,
    /// Weight of a pack.
    pub weight: Figure<Mass>,
    /// All stitched edges of a pack, end to end.
    pub width: Figure<Length>,
    /// Pieces in a pack.
    pub pieces: u32,
    /// Hanging length of its fibre; an unfolded length is already halved.
    pub hanging: Figure<Length>,
    /// Fineness of its fibre.
    pub fineness: Figure<LinearMassDensity>,
    /// Strands counted on a length of it.
    pub strands: Option<Figure<LinearNumberDensity>>,
    /// Its colour.
    pub shade: Option<Shade>,
    /// Price of a pack.
    pub price: Option<Money>,
    /// Whether more of this dye lot can be had.
    pub still_sold: bool,
    /// What is left.
    pub left: Left,
}

/// What is left of a lot.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Left {
    /// When it was counted; never, where nobody did.
    pub counted: Option<Minute>,
    /// Lengths never cut into.
    pub whole_lengths: u32,
    /// The rest, as one length.
    pub rest: Length,
    /// Used by wigs since the count.
    pub used_since: Length,
}

impl Lot {
    /// Whether it may be cut.
    pub fn may_be_cut(&self) -> bool {
        self.made != "hand_tied"
    }

    /// Whether it is double weft, which can be parted into singles; judged by its weight where nobody said.
    pub fn is_double(&self) -> bool {
        match self.layers {
            Some(layers) => layers == "double",
            None => {
                let single = &defaults::SINGLE_WEFT_AT_MOST;
                let each = (self.weight.likely / self.width.likely).get::<units::kilogram_per_meter>();
                self.made == "machine" && each > single.unit.to_base(single.likely)
            }
        }
    }

    /// Length of one piece of a pack.
    pub fn piece(&self) -> Length {
        self.width.likely / f64::from(self.pieces)
    }
}

/// All lots of the workshop; `wigs` are the states of all wigs, whose use comes off.
pub fn lots<'a>(workshop: &State, wigs: impl IntoIterator<Item = &'a State>) -> Vec<Lot> {
    let mut ids: Vec<LotId> = workshop
        .values()
        .filter_map(|(key, held)| match key.of {
            Of::Lot(lot) if held.value.is_some() && !key.slot.starts_with(dyes::MARK) => Some(lot),
            _ => None,
        })
        .collect();
    order::sort_unique(&mut ids);
    let used: Vec<(Moment, SewWeft)> = wigs
        .into_iter()
        .flat_map(|wig| wig.works().iter().filter_map(|done| SewWeft::of(&done.work).map(|weft| (moment(done), weft))))
        .collect();
    let mut lots: Vec<Lot> = ids.into_iter().map(|id| read(workshop, id, &used)).collect();
    order::sort_by(&mut lots, &|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    lots
}

/// Bench order: within one minute the logs' clock decides.
type Moment = (Minute, u64);

fn moment(done: &Done) -> Moment {
    (done.done, done.lamport)
}

fn read(workshop: &State, id: LotId, used: &[(Moment, SewWeft)]) -> Lot {
    let value = |slot: &str| Key::new(LogId::Workshop, slot, Of::Lot(id)).and_then(|key| workshop.value(key));
    let words = |slot: &str| value(slot).and_then(Value::words).unwrap_or("").to_owned();
    let choice = |slot: &str| value(slot).and_then(Value::choice);
    let fibre = fibres::fibre(choice("lot_fibre").unwrap_or("unknown"));
    let made = choice("made").unwrap_or("machine");
    let pieces = value("pack_pieces").and_then(Value::count).unwrap_or(1).max(1);
    let width: Figure<Length> = said(value("pack_width")).unwrap_or_else(|| {
        if made == "hand_tied" {
            assumed::<Length>("hand_tied_width").times(f64::from(pieces))
        } else {
            assumed("pack_width")
        }
    });
    let halve = if choice("length_taken") == Some("unfolded") { 0.5 } else { 1.0 };
    let mut lot = Lot {
        id,
        name: words("lot_name"),
        colour: words("lot_colour"),
        dye_lot: words("dye_lot"),
        fibre,
        made,
        layers: choice("layers"),
        weight: said(value("pack_weight")).unwrap_or_else(|| assumed("pack_weight")),
        width,
        pieces,
        hanging: said(value("weft_length")).unwrap_or_else(|| assumed::<Length>("weft_length")).times(halve),
        fineness: said(value("lot_fineness")).unwrap_or_else(|| Figure::assumed(&fibre.fineness)),
        strands: said(value("strands")),
        shade: value("lot_shade").and_then(Value::shade),
        price: match value("pack_price") {
            Some(Value::Money(money)) => Some(*money),
            _ => None,
        },
        still_sold: !matches!(value("still_sold"), Some(Value::YesNo(false))),
        left: Left::default(),
    };
    lot.left = left(workshop, &lot, used);
    lot
}

fn left(workshop: &State, lot: &Lot, used: &[(Moment, SewWeft)]) -> Left {
    let counted = workshop
        .works()
        .iter()
        .filter_map(|done| Counted::of(&done.work).map(|counted| (moment(done), counted)))
        .rfind(|(_, counted)| counted.lot == lot.id);
    let Some((when, counted)) = counted else { return Left::default() };
    let used_since = used
        .iter()
        .filter(|(done, weft)| weft.lot == Some(lot.id) && *done > when)
        .fold(Length::new::<units::meter>(0.0), |sum, (_, weft)| sum + weft.of_lot());
    let piece = lot.piece();
    let mut whole = counted.whole_packs * lot.pieces;
    let mut rest = counted.opened;
    let mut wanted = used_since;
    // Opened lengths go first, as they do at the bench.
    while wanted > rest && whole > 0 {
        wanted -= rest;
        rest = piece;
        whole -= 1;
    }
    rest = if rest > wanted { rest - wanted } else { Length::new::<units::meter>(0.0) };
    Left { counted: Some(when.0), whole_lengths: whole, rest, used_since }
}

fn said<Q: FromBase>(value: Option<&Value>) -> Option<Figure<Q>> {
    value.and_then(Value::typed).map(|typed| Figure::said(typed, None, Q::from_base(0.0)))
}

fn assumed<Q: FromBase>(slot: &str) -> Figure<Q> {
    Figure::assumed(defaults::default_for(slot).unwrap_or(&defaults::PACE_ROW))
}
