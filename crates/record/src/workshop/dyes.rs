//! Dye on the shelf: each packet or bottle of one batch, and what is left of it.
//!
//! What it is: the reader of the workshop's log together with what wigs and test locks used.
//! What it is not: stock-keeping of its own: on hand is the last weighing less later use.

use measure::{
    civil::Minute,
    money::Money,
    order,
    quantity::{Mass, Volume, units},
    typed::Typed,
};

use crate::{
    field::Value,
    history::{
        entry::{Key, LogId, Of},
        fold::{Done, State},
    },
    id::LotId,
    trade::{bath::BOTTLE_CAP, dye::Class},
    wig::{
        shade::Shade,
        work::{Work, colour_lock, count_dye, dye},
    },
};

/// What marks a lot as dye.
pub const MARK: &str = "stock_";

/// An amount of dye: a powder is weighed, a liquid measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Dose {
    /// Of a powder.
    Weighed(Mass),
    /// Of a liquid.
    Measured(Volume),
}

impl Dose {
    /// From what was typed.
    pub fn of(typed: &Typed) -> Option<Dose> {
        typed.mass().map(Dose::Weighed).or_else(|| typed.volume().map(Dose::Measured))
    }

    /// In g or mL: depth of shade counts both alike on 100 g of fibre.
    pub fn parts(self) -> f64 {
        match self {
            Dose::Weighed(mass) => mass.get::<units::gram>(),
            Dose::Measured(volume) => volume.get::<units::milliliter>(),
        }
    }

    /// So many g or mL, as the form of the dye asks.
    pub fn new(liquid: bool, parts: f64) -> Dose {
        if liquid {
            Dose::Measured(Volume::new::<units::milliliter>(parts))
        } else {
            Dose::Weighed(Mass::new::<units::gram>(parts))
        }
    }
}

/// A lot of dye.
#[derive(Clone, Debug, PartialEq)]
pub struct Dye {
    /// Its identity.
    pub id: LotId,
    /// As its label calls it.
    pub name: String,
    /// Its class, where known.
    pub class: Option<Class>,
    /// Whether it is a liquid.
    pub liquid: bool,
    /// Its batch.
    pub batch: String,
    /// What a full packet or bottle holds.
    pub packet: Option<Dose>,
    /// What its cap holds.
    pub cap: Volume,
    /// Price of a packet.
    pub price: Option<Money>,
    /// The colour on its label.
    pub shade: Option<Shade>,
    /// What is left; nothing where nobody weighed it and no packet was named.
    pub left: Option<DyeLeft>,
}

/// What is left of a lot of dye.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DyeLeft {
    /// When it was weighed; a packet never weighed counts as full.
    pub counted: Option<Minute>,
    /// How much is left, g or mL.
    pub parts: f64,
    /// Used since the weighing, g or mL.
    pub used_since: f64,
}

/// Bench order.
type Moment = (Minute, u64);

fn moment(done: &Done) -> Moment {
    (done.done, done.lamport)
}

/// A use of dye.
struct Used {
    when: Moment,
    lot: LotId,
    parts: f64,
}

/// The dyes that work names, with how much of each.
pub fn used_by(work: &Work) -> Vec<(LotId, Option<Dose>)> {
    if work.kind().name != dye::KIND.name && work.kind().name != colour_lock::KIND.name {
        return Vec::new();
    }
    [("stock", "dye_amount"), ("stock_2", "dye_amount_2"), ("stock_3", "dye_amount_3")]
        .into_iter()
        .filter_map(|(stock, amount)| match work.get(stock) {
            Some(Value::Lot(lot)) => Some((*lot, work.get(amount).and_then(Value::typed).and_then(Dose::of))),
            _ => None,
        })
        .collect()
}

/// Whether a lot is dye.
pub fn is_dye(workshop: &State, lot: LotId) -> bool {
    workshop.values().any(|(key, held)| key.of == Of::Lot(lot) && key.slot.starts_with(MARK) && held.value.is_some())
}

/// All dyes of the workshop; `wigs` are the states of all wigs, whose use comes off.
pub fn dyes<'a>(workshop: &'a State, wigs: impl IntoIterator<Item = &'a State>) -> Vec<Dye> {
    let mut ids: Vec<LotId> = workshop
        .values()
        .filter_map(|(key, held)| match key.of {
            Of::Lot(lot) if key.slot.starts_with(MARK) && held.value.is_some() => Some(lot),
            _ => None,
        })
        .collect();
    order::sort_unique(&mut ids);
    let mut used: Vec<Used> = Vec::new();
    for state in wigs.into_iter().chain([workshop]) {
        for done in state.works() {
            for (lot, dose) in used_by(&done.work) {
                used.push(Used { when: moment(done), lot, parts: dose.map_or(0.0, Dose::parts) });
            }
        }
    }
    let mut dyes: Vec<Dye> = ids.into_iter().map(|id| read(workshop, id, &used)).collect();
    order::sort_by(&mut dyes, &|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    dyes
}

fn read(workshop: &State, id: LotId, used: &[Used]) -> Dye {
    let value = |slot: &str| Key::new(LogId::Workshop, slot, Of::Lot(id)).and_then(|key| workshop.value(key));
    let words = |slot: &str| value(slot).and_then(Value::words).unwrap_or("").to_owned();
    let choice = |slot: &str| value(slot).and_then(Value::choice);
    let typed = |slot: &str| value(slot).and_then(Value::typed);
    let packet = typed("stock_packet").and_then(Dose::of);
    let liquid = match choice("stock_form") {
        Some(form) => form == "liquid",
        None => matches!(packet, Some(Dose::Measured(_))),
    };
    Dye {
        id,
        name: words("stock_name"),
        class: choice("stock_class").and_then(Class::read),
        liquid,
        batch: words("stock_batch"),
        packet,
        cap: typed("stock_cap")
            .and_then(Typed::volume)
            .unwrap_or_else(|| Volume::new::<units::milliliter>(BOTTLE_CAP.likely)),
        price: match value("stock_price") {
            Some(Value::Money(money)) => Some(*money),
            _ => None,
        },
        shade: value("stock_shade").and_then(Value::shade),
        left: left(workshop, id, packet, used),
    }
}

fn left(workshop: &State, id: LotId, packet: Option<Dose>, used: &[Used]) -> Option<DyeLeft> {
    let counted = workshop.works().iter().rev().find_map(|done| {
        let mine = done.work.kind().name == count_dye::KIND.name && done.work.get("stock") == Some(&Value::Lot(id));
        let dose = done.work.get("dye_amount").and_then(Value::typed).and_then(Dose::of);
        mine.then(|| dose.map(|dose| (moment(done), dose.parts()))).flatten()
    });
    let (when, parts) = match counted {
        Some((when, parts)) => (Some(when), parts),
        None => (None, packet?.parts()),
    };
    let used_since: f64 =
        used.iter().filter(|one| one.lot == id && when.is_none_or(|when| one.when > when)).map(|one| one.parts).sum();
    Some(DyeLeft { counted: when.map(|when| when.0), parts: (parts - used_since).max(0.0), used_since })
}
