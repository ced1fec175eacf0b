//! The wound lock that is heated: its form, its thickness, from where the heat comes.
//!
//! What it is: what the solver is given, at the fast, the likely and the slow end. What it is not: the solver.

use measure::{
    quantity::{
        ArealNumberDensity, Length,
        units::{meter, millimeter},
    },
    say::{Arg, Say},
};
use record::{
    history::entry::Of,
    trade::{
        heat::Medium,
        soaking::{self, Span},
    },
    wig::figures::Wig,
};

use super::{
    bundle::bundle,
    soak::{CELLS, Form, Inside, Layer, Outside, Soak},
    tool::{Tool, celsius, from_span},
};
use crate::{
    lengths::{
        need::ZoneNeed,
        rods::{Section, Winding, tenths},
        said::{choice, said},
    },
    working::{Ground, Line},
};

/// Which end of what is guessed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// Thin, well handed over.
    Fast,
    /// As it is likely.
    Likely,
    /// Thick, badly handed over.
    Slow,
}

impl End {
    /// All three.
    pub const ALL: [End; 3] = [End::Fast, End::Likely, End::Slow];

    /// The figure of a span that is high where things go slowly.
    fn slow_high(self, span: &Span) -> f64 {
        match self {
            End::Fast => span.low,
            End::Likely => span.likely,
            End::Slow => span.high,
        }
    }

    /// The figure of a span that is low where things go slowly.
    pub(super) fn slow_low(self, span: &Span) -> f64 {
        match self {
            End::Fast => span.high,
            End::Likely => span.likely,
            End::Slow => span.low,
        }
    }
}

/// From where the heat comes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum From {
    /// From outside.
    Outside,
    /// From the rod, which is the tool.
    Inside,
    /// From both.
    Both,
}

/// A lock.
#[derive(Clone, Debug, PartialEq)]
pub struct Lock {
    /// Rod, where there is one.
    pub rod: Option<Length>,
    /// What the rod is of.
    pub rod_kind: &'static str,
    /// From rod to outside; through the whole where there is no rod.
    pub thickness: Length,
    /// From where it is heated.
    pub from: From,
    flat: bool,
    fibre: &'static str,
    /// The working.
    pub working: Vec<Line>,
}

impl Lock {
    /// The lock of a wig: wound as a zone needs it, or hanging.
    pub fn of(wig: &Wig<'_>, medium: Medium, need: Option<&ZoneNeed>, full: ArealNumberDensity) -> Lock {
        let winding = Winding::of(wig, medium);
        let choice_of_rod = need.and_then(|need| need.rod.as_ref());
        let wound = choice_of_rod.filter(|_| winding != Winding::Pinned);
        let rod = wound.map(|choice| choice.rod);
        let iron = medium == Medium::Iron;
        let rod_kind = match (rod, choice(wig, "rod_kind", Of::Wig)) {
            (None, _) | (_, Some("no_rod")) => "no_rod",
            (_, Some(kind)) => kind,
            _ if iron => "heated_rod",
            _ => "plastic_rod",
        };
        let rod = rod.filter(|_| rod_kind != "no_rod");
        let from = match (choice(wig, "heated_from", Of::Wig), rod_kind) {
            (Some("inside"), kind) if kind != "no_rod" => From::Inside,
            (Some("both"), kind) if kind != "no_rod" => From::Both,
            (None, "heated_rod") => From::Inside,
            _ => From::Outside,
        };
        let thick = said::<Length>(wig, "lock_thickness", Of::Wig);
        let section = Section::of(wig, winding, None, full);
        // Between the plates of a flat iron, or as a pinned coil, a lock lies flat; else it hangs round.
        let flat = rod.is_none() && (iron || (choice_of_rod.is_some() && winding == Winding::Pinned));
        let usual = match wound {
            Some(choice) if rod.is_some() => choice.thickness,
            _ if flat && iron => section.build_up(),
            _ => section.round(),
        };
        let thickness = thick.as_ref().map_or(usual, |thick| thick.likely);
        let ground = if thick.is_some() { Ground::Said } else { from_span(&soaking::THICKNESS) };
        let packed = &soaking::PACKED;
        let working = vec![
            Line {
                name: Say::key("field.lock_thickness"),
                sum: Say::new(
                    "plan.likely_range",
                    [
                        tenths(thickness),
                        tenths(thickness * soaking::THICKNESS.low),
                        tenths(thickness * soaking::THICKNESS.high),
                    ],
                ),
                ground,
            },
            Line {
                name: Say::key("heat.packed"),
                sum: Say::new(
                    "plan.likely_range",
                    [Arg::Percent(packed.likely), Arg::Percent(packed.low), Arg::Percent(packed.high)],
                ),
                ground: from_span(packed),
            },
        ];
        Lock { rod, rod_kind, thickness, from, flat, fibre: wig.fibre().name, working }
    }

    /// The same, so many times as thick.
    #[must_use]
    pub fn times(&self, factor: f64) -> Lock {
        Lock { thickness: self.thickness * factor, ..self.clone() }
    }

    /// The lock in the room, and what the tool puts round it; `wet`: its gaps are full of water.
    ///
    /// Nothing where it has no thickness at all.
    pub fn put_to(&self, tool: &Tool, wet: bool, end: End) -> Option<(Soak, Outside)> {
        let thick = self.thickness.get::<meter>() * end.slow_high(&soaking::THICKNESS);
        let stuff = bundle(soaking::stuff_of(self.fibre), end.slow_high(&soaking::PACKED), wet);
        let room = soaking::ROOM.likely;
        let (form, inner, deep) = match self.rod {
            Some(rod) => (Form::Round, rod.get::<meter>() / 2.0, thick),
            // Both sides alike: half of it.
            None if self.flat => (Form::Flat, 0.0, thick / 2.0),
            None => (Form::Round, 0.0, thick / 2.0),
        };
        let layer = Layer::new(form, inner, deep, stuff.conductivity, stuff.holds)?;
        let contact = end.slow_low(&soaking::ROD_CONTACT);
        let transfer = end.slow_low(soaking::transfer(tool.medium));
        let heat = celsius(tool.meets);
        let inside = match (self.rod, self.from) {
            (None, _) => Inside::Closed,
            (Some(rod), From::Outside) => {
                Inside::Rod { transfer: contact, holds: soaking::rod_holds(self.rod_kind, rod.get::<meter>()) }
            }
            (Some(_), From::Inside | From::Both) => Inside::Held { transfer, heat },
        };
        let falls = match end {
            End::Fast => tool.falls[0],
            End::Likely => tool.falls[1],
            End::Slow => tool.falls[2],
        };
        let outside = if self.from == From::Inside {
            Outside::held(end.slow_low(&soaking::ROOM_AIR), room)
        } else {
            Outside { transfer, heat, falls, floor: room }
        };
        Some((Soak::new(layer, inside, room, CELLS), outside))
    }

    /// The lock when the heat is taken away: in still air, a hot barrel drawn out.
    pub fn cooling(&self, heated: &Soak, end: End) -> (Soak, Outside) {
        let mut soak = match self.from {
            From::Inside | From::Both if self.rod_kind == "heated_rod" => heated.with_inside(Inside::Closed),
            From::Inside | From::Both => heated.with_inside(Inside::Rod {
                transfer: end.slow_low(&soaking::ROD_CONTACT),
                holds: soaking::rod_holds(self.rod_kind, self.rod.map_or(0.0, |rod| rod.get::<meter>())),
            }),
            From::Outside => heated.clone(),
        };
        soak.restart();
        (soak, Outside::held(end.slow_low(&soaking::ROOM_AIR), soaking::ROOM.likely))
    }

    /// Its thickness, mm.
    pub fn millimetres(&self) -> f64 {
        self.thickness.get::<millimeter>()
    }
}
