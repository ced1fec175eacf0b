//! The answer: what to buy, how sure, and everything that unfolds from it.
//!
//! What it is: plain values with their sentences. What it is not: layout.

use measure::{
    civil::Date,
    money::Money,
    quantity::{ArealNumberDensity, Length, Mass, Time, units},
    say::Say,
};
use record::{
    id::LotId,
    wig::{figures::Wig, zone::Zone},
    workshop::lots::Lot,
};

use super::{
    cautions::cautions,
    headline::headline,
    laid_out::{LaidWeft, lay_out},
    prepare::Prepared,
    reach::{Met, Reach, met, reach, reached},
    spread::Spread,
    working::lines,
};
use crate::{
    cutting::{Plan, Shortage},
    inputs::Input,
    layout::none,
    pace::{self, Paces},
    working::{Caution, Line},
};

/// One corner, solved.
#[derive(Clone, Debug)]
pub struct Solved {
    /// What was asked of the cutter.
    pub prepared: Prepared,
    /// What it answered.
    pub plan: Option<Plan>,
    /// Or what is lacking.
    pub shortage: Option<Shortage>,
}

/// Packs to buy at the three corners; nothing where no number of packs will do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Packs {
    /// At least.
    pub low: Option<u32>,
    /// Likely.
    pub likely: Option<u32>,
    /// At most.
    pub high: Option<u32>,
}

/// A measurement that would settle the answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Settling {
    /// Which input.
    pub input: Input,
    /// How much weft it decides about.
    pub swing: Length,
}

/// What kind of answer it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// The look wants no weft.
    NothingWanted,
    /// What is owned is enough.
    EnoughOwned,
    /// Buy packs.
    Buy,
    /// The lots cannot give it.
    Lacking,
}

/// The answer.
#[derive(Clone, Debug)]
pub struct Answer {
    /// What kind.
    pub outcome: Outcome,
    /// In one sentence or two.
    pub headline: Say,
    /// Packs at the three corners.
    pub packs: Packs,
    /// Packs to buy of each lot.
    pub buy: Vec<(LotId, u32)>,
    /// What would settle it, at most two.
    pub settle: Vec<Settling>,
    /// The likely corner.
    pub likely: Solved,
    /// How far it may be off.
    pub spread: Spread,
    /// The weft laid out.
    pub laid: Vec<LaidWeft>,
    /// What each number of packs gives.
    pub reach: Vec<Reach>,
    /// What it costs; nothing where a price is missing.
    pub cost: Option<Money>,
    /// Weight of the weft that goes on.
    pub weight_added: Mass,
    /// Hours of sewing.
    pub sewing: Time,
    /// Last day to order, and whether it is past.
    pub order_by: Option<(Date, bool)>,
    /// Fullness each zone reaches at the root, in the order of the zones.
    pub reached: [ArealNumberDensity; 8],
    /// Packs saved by joining pieces, and how many joins it takes.
    pub joins_save: Option<(u32, u32)>,
    /// The working.
    pub lines: Vec<Line>,
    /// What to mind.
    pub cautions: Vec<Caution>,
}

/// The corners an answer is read from.
pub(super) struct Corners {
    pub(super) likely: Solved,
    pub(super) fewest: Solved,
    pub(super) most: Solved,
    /// The likely corner with pieces joined, where that is asked.
    pub(super) joined: Option<Solved>,
}

pub(super) fn answer(
    wig: &Wig<'_>,
    lots: &[Lot],
    today: Date,
    paces: &Paces,
    spread: Spread,
    corners: Corners,
) -> Answer {
    let Corners { likely, fewest, most, joined } = corners;
    // Rounding to rows can turn a corner by a pack: the bounds are the least and the most of the three.
    let solved = [packs(&fewest), packs(&likely), packs(&most)];
    let packs = Packs {
        low: solved.into_iter().flatten().min(),
        likely: solved[1],
        high: if solved.contains(&None) { None } else { solved.into_iter().flatten().max() },
    };
    let prepared = &likely.prepared;
    let outcome = match (&likely.plan, &likely.shortage) {
        (_, Some(_)) => Outcome::Lacking,
        (None, None) => Outcome::NothingWanted,
        (Some(_), None) if packs.likely == Some(0) => Outcome::EnoughOwned,
        (Some(_), None) => Outcome::Buy,
    };
    let settle = settle(wig, lots, &spread, packs);
    let laid = likely.plan.as_ref().map(|plan| lay_out(prepared, plan)).unwrap_or_default();
    let buy = buy(&likely);
    let cost = cost(&likely, lots, &buy);
    let on_cap =
        prepared.edge.iter().fold(prepared.amounts.rows + prepared.amounts.folds, |sum, piece| sum + piece.length);
    let weight_added: Mass = on_cap * prepared.weft.mass_per_length;
    let sewing = pace::sewing(wig, paces, on_cap).likely;
    let most_packs = packs.high.or(packs.likely).unwrap_or(0).max(packs.likely.unwrap_or(0)) + 1;
    let headline = headline(outcome, packs, &settle, &likely);
    Answer {
        outcome,
        headline,
        packs,
        buy,
        settle,
        laid,
        reach: reach(prepared, lots, most_packs.min(12)),
        cost,
        weight_added,
        sewing,
        order_by: order_by(wig, today, sewing),
        reached: Zone::ALL.map(|zone| reached(prepared, zone)),
        joins_save: joined.and_then(|joined| joins_save(&likely, &joined)),
        lines: lines(wig, lots, &likely, &spread),
        cautions: cautions(wig, lots, &likely, packs),
        spread,
        likely,
    }
}

fn packs(solved: &Solved) -> Option<u32> {
    match (&solved.plan, &solved.shortage) {
        (Some(plan), _) => Some(plan.bought.iter().sum()),
        (None, Some(_)) => None,
        (None, None) => Some(0),
    }
}

fn buy(solved: &Solved) -> Vec<(LotId, u32)> {
    let Some(plan) = &solved.plan else { return Vec::new() };
    let mut buy = Vec::new();
    for (count, lot) in plan.bought.iter().zip(&solved.prepared.kinds) {
        if *count > 0 {
            buy.push((*lot, *count));
        }
    }
    buy
}

fn cost(solved: &Solved, lots: &[Lot], buy: &[(LotId, u32)]) -> Option<Money> {
    solved.plan.as_ref()?;
    let each = |(id, count): &(LotId, u32)| {
        let price = lots.iter().find(|lot| lot.id == *id)?.price?;
        Some(Money::from_hundredths(price.hundredths() * u64::from(*count)))
    };
    buy.iter().map(each).sum()
}

fn order_by(wig: &Wig<'_>, today: Date, sewing: Time) -> Option<(Date, bool)> {
    let due = wig.due()?;
    let days = libm::ceil((sewing / wig.time_a_day().likely).get::<units::ratio>()) as i64;
    let date = due.plus_days(-days - i64::from(wig.delivery_days().1));
    Some((date, date < today))
}

/// Assumed inputs that decide about most weft, while the number of packs is open.
fn settle(wig: &Wig<'_>, lots: &[Lot], spread: &Spread, packs: Packs) -> Vec<Settling> {
    if packs.low == packs.likely && packs.likely == packs.high {
        return Vec::new();
    }
    let mut settle = Vec::new();
    for input in spread.by_pack_swing() {
        if settle.len() < 2 && !said(wig, lots, input) && spread.pack_swing(input) > 0.02 {
            settle.push(Settling { input, swing: spread.swing(input) });
        }
    }
    settle
}

/// Whether an input was measured already.
fn said(wig: &Wig<'_>, lots: &[Lot], input: Input) -> bool {
    let main = super::prepare::main_lot(wig, lots);
    let of_lot = |read: fn(&Lot) -> bool| main.is_some_and(read);
    match input {
        Input::Head => ["girth", "front_to_nape", "ear_to_ear_top"].iter().all(|slot| wig.head(slot).origin.is_said()),
        Input::WholeWeight => wig.whole_weight().origin.is_said(),
        Input::CapWeight => wig.cap_weight().origin.is_said(),
        Input::Crimped => wig.crimped_share().origin.is_said(),
        Input::Fineness => wig.fineness().origin.is_said(),
        Input::Return | Input::WeftReturn => wig.fibre_return().origin.is_said(),
        Input::Lengths => Zone::ALL.into_iter().all(|zone| wig.mean_length(zone).origin.is_said()),
        Input::Spacing => {
            Zone::ALL.into_iter().all(|zone| wig.row_spacing(zone).is_none_or(|spacing| spacing.origin.is_said()))
        }
        Input::GroundFullness => {
            Zone::ALL.into_iter().all(|zone| wig.ground_fullness(zone).is_none_or(|ground| ground.origin.is_said()))
        }
        Input::PackWeight => of_lot(|lot| lot.weight.origin.is_said()),
        Input::PackWidth => of_lot(|lot| lot.width.origin.is_said()),
        Input::WeftLength => of_lot(|lot| lot.hanging.origin.is_said()),
        // Counting strands on a cm of weft settles its fineness too.
        Input::WeftFineness | Input::WeftStrands => {
            of_lot(|lot| lot.fineness.origin.is_said() || lot.strands.is_some())
        }
        // Habits, not measurements.
        Input::Allowances => true,
    }
}

fn joins_save(likely: &Solved, joined: &Solved) -> Option<(u32, u32)> {
    let (plain, joined_plan) = (likely.plan.as_ref()?, joined.plan.as_ref()?);
    let (plain_packs, joined_packs): (u32, u32) = (plain.bought.iter().sum(), joined_plan.bought.iter().sum());
    let cheaper = joined_plan.total_price < plain.total_price && joined_packs < plain_packs;
    cheaper.then(|| {
        let joins = lay_out(&joined.prepared, joined_plan)
            .iter()
            .flat_map(|weft| &weft.pieces)
            .filter(|piece| piece.part.0 > 1)
            .count();
        (plain_packs - joined_packs, joins as u32)
    })
}

impl Answer {
    /// How near a zone comes to what was wanted of it.
    pub fn met(&self, zone: Zone) -> Met {
        let full = self.likely.prepared.fullness.zones.get(zone as usize);
        full.map_or(Met::Near, |full| met(full, self.reached[zone as usize]))
    }

    /// Weft left over after everything, at the likely corner.
    pub fn left_over(&self) -> Length {
        self.laid.iter().fold(none(), |sum, weft| sum + Length::new::<units::millimeter>(f64::from(weft.offcut_mm)))
    }
}
