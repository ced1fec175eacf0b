//! The figures of a wig as they stand: said where somebody said them, assumed where not.
//!
//! What it is: the one reader of slots and trade tables for every planner and page.
//! What it is not: sums (see the `plan` room).

use measure::{
    civil::Date,
    money::Money,
    quantity::{
        ArealNumberDensity, Length, LinearMassDensity, LinearNumberDensity, Mass, Ratio, ThermodynamicTemperature,
        Time, Volume, units,
    },
    typed::Typed,
};

use super::{
    figure::{Figure, FromBase, Origin},
    shade::{Along, Shade},
    slots,
    zone::Zone,
};
use crate::{
    field::Value,
    history::{
        entry::{Key, LogId, Of},
        fold::{Held, State},
    },
    id::{Id, LotId, WigId},
    trade::{
        caps::{self, Cap, Ground},
        defaults,
        dye::Class,
        fibres::{self, Fibre},
        sizes,
        sources::MESH,
    },
};

/// A wig read from its state.
#[derive(Clone, Copy, Debug)]
pub struct Wig<'a> {
    state: &'a State,
}

/// A target as it was said.
#[derive(Clone, Debug, PartialEq)]
pub enum Target {
    /// So many times as full as the base was bought.
    Times(f64),
    /// So many strands on an area.
    Fullness(ArealNumberDensity),
    /// So much of the trade's percent, as a share.
    Percent(f64),
}

/// A parting as wanted.
#[derive(Clone, Debug, PartialEq)]
pub struct PartingLook {
    /// `none`, `weft_sides` or `insert`.
    pub kind: &'static str,
    /// `middle`, `left` or `right` of the wearer.
    pub place: &'static str,
    /// How long.
    pub length: Figure<Length>,
    /// How wide the strip along it is.
    pub width: Length,
    /// Rows on each side.
    pub rows: u32,
}

impl<'a> Wig<'a> {
    /// Reads a state.
    pub fn new(state: &'a State) -> Wig<'a> {
        Wig { state }
    }

    /// The state read.
    pub fn state(&self) -> &'a State {
        self.state
    }

    /// What stands at a slot.
    pub fn held(&self, slot: &str, of: Of) -> Option<&'a Held> {
        // Any wig's log has the same table, so the identity does not matter here.
        let key = Key::new(LogId::Wig(WigId(Id::from_bytes([0; 16]))), slot, of)?;
        self.state.held(key)
    }

    fn value(&self, slot: &str, of: Of) -> Option<&'a Value> {
        self.held(slot, of).and_then(|held| held.value.as_ref())
    }

    fn choice(&self, slot: &str) -> Option<&'static str> {
        self.value(slot, Of::Wig).and_then(Value::choice)
    }

    fn words(&self, slot: &str) -> Option<&'a str> {
        self.value(slot, Of::Wig).and_then(Value::words)
    }

    fn count(&self, slot: &str, of: Of) -> Option<u32> {
        self.value(slot, of).and_then(Value::count)
    }

    fn said<Q: FromBase>(&self, slot: &str, of: Of) -> Option<Figure<Q>> {
        let held = self.held(slot, of)?;
        let typed = held.value.as_ref()?.typed()?;
        Some(Figure::said(typed, Some(held.by), Q::from_base(within(slot))))
    }

    /// What was said of a slot of the whole wig, or its default.
    fn figure<Q: FromBase>(&self, slot: &str) -> Figure<Q> {
        self.said(slot, Of::Wig).unwrap_or_else(|| match defaults::default_for(slot) {
            Some(fact) => Figure::assumed(fact),
            // Every slot asked for here has a default: `every_bench_figure_has_a_default` walks them.
            None => Figure::assumed(&defaults::PACE_ROW),
        })
    }

    /// Its name; empty until given.
    pub fn name(&self) -> &'a str {
        self.words("name").unwrap_or("")
    }

    /// For whom or what it is.
    pub fn character(&self) -> &'a str {
        self.words("character").unwrap_or("")
    }

    /// The day it must be ready.
    pub fn due(&self) -> Option<Date> {
        match self.value("due", Of::Wig) {
            Some(Value::Date(date)) => Some(*date),
            _ => None,
        }
    }

    /// Its fibre.
    pub fn fibre(&self) -> &'static Fibre {
        fibres::fibre(self.choice("fibre").unwrap_or("unknown"))
    }

    /// Its cap.
    pub fn cap(&self) -> &'static Cap {
        caps::cap(self.choice("cap").unwrap_or("open_wefted"))
    }

    /// Its size by name.
    pub fn size(&self) -> &'static str {
        self.choice("size").unwrap_or("medium")
    }

    /// Round the head.
    pub fn girth(&self) -> Figure<Length> {
        self.said("girth", Of::Wig).unwrap_or_else(|| {
            let girth = sizes::girth(self.size());
            Figure {
                low: centimetres(girth - sizes::GIRTH_SPREAD),
                likely: centimetres(girth),
                high: centimetres(girth + sizes::GIRTH_SPREAD),
                origin: Origin::Follows { slot: "size", source: &MESH, sure: crate::trade::fact::Sure::Medium },
            }
        })
    }

    /// Any other head measure by its slot; over the top it is told as the tape was laid (see [`Wig::tape_from`]).
    pub fn head(&self, slot: &'static str) -> Figure<Length> {
        if slot == "girth" {
            return self.girth();
        }
        self.said(slot, Of::Wig).unwrap_or_else(|| {
            let girth = self.girth().likely.get::<units::centimeter>();
            let row = sizes::MEASURES.iter().find(|row| row.slot == slot).unwrap_or(&sizes::MEASURES[0]);
            let more =
                if slot == "ear_to_ear_top" && self.tape_from() == "tragus" { sizes::TRAGUS_MORE.likely } else { 0.0 };
            let likely = row.at_56 + row.slope * (girth - 56.0) + more;
            Figure {
                low: centimetres(likely - row.spread),
                likely: centimetres(likely),
                high: centimetres(likely + row.spread),
                origin: Origin::Follows { slot: "girth", source: row.source, sure: row.sure },
            }
        })
    }

    /// Where the tape over the top starts: `above_ear` or `tragus`.
    pub fn tape_from(&self) -> &'static str {
        self.choice("tape_from").unwrap_or(slots::TAPE_FROM[0])
    }

    /// The whole wig, as bought.
    pub fn whole_weight(&self) -> Figure<Mass> {
        self.said("whole_weight", Of::Wig).unwrap_or_else(|| {
            let length = self.mean_length_of_wig().get::<units::centimeter>();
            let (cap, each) = (&defaults::WEIGHT_CAP, &defaults::WEIGHT_PER_CM);
            let grams = |cap: f64, each: f64| Mass::new::<units::gram>(cap + each * length);
            Figure {
                low: grams(cap.low, each.low),
                likely: grams(cap.likely, each.likely),
                high: grams(cap.high, each.high),
                origin: Origin::Follows { slot: "longest", source: each.source, sure: each.sure },
            }
        })
    }

    /// The plain mean of the zones' lengths, good enough to assume a weight by.
    fn mean_length_of_wig(&self) -> Length {
        let sum = Zone::ALL.into_iter().fold(centimetres(0.0), |sum, zone| sum + self.mean_length(zone).likely);
        sum / Zone::ALL.len() as f64
    }

    /// The cap without hair.
    pub fn cap_weight(&self) -> Figure<Mass> {
        self.said("cap_weight", Of::Wig).unwrap_or_else(|| Figure::assumed(&self.cap().weight))
    }

    /// The share of fibre that is crimped filler at the root: it weighs, but does not hang.
    pub fn crimped_share(&self) -> Figure<Ratio> {
        self.figure("crimped_share")
    }

    /// Fineness of the base's fibre.
    pub fn fineness(&self) -> Figure<LinearMassDensity> {
        self.said("fineness", Of::Wig).unwrap_or_else(|| Figure::assumed(&self.fibre().fineness))
    }

    /// The short root side of each strand.
    pub fn fibre_return(&self) -> Figure<Length> {
        self.figure("fibre_return")
    }

    /// Shortest strand of a zone, hanging.
    pub fn shortest(&self, zone: Zone) -> Figure<Length> {
        self.strand("shortest", zone, defaults::BOB[zone as usize].0)
    }

    /// Longest strand of a zone, hanging.
    pub fn longest(&self, zone: Zone) -> Figure<Length> {
        self.strand("longest", zone, defaults::BOB[zone as usize].1)
    }

    fn strand(&self, slot: &str, zone: Zone, bob: f64) -> Figure<Length> {
        self.said(slot, Of::Zone(zone)).unwrap_or_else(|| Figure {
            low: centimetres(bob * 0.85),
            likely: centimetres(bob),
            high: centimetres(bob * 1.15),
            origin: Origin::Assumed { source: &crate::trade::sources::JUDGED, sure: crate::trade::fact::Sure::Low },
        })
    }

    /// Mean hanging length of a zone: half-way between shortest and longest, which may come in either order.
    pub fn mean_length(&self, zone: Zone) -> Figure<Length> {
        let (short, long) = (self.shortest(zone), self.longest(zone));
        let origin = if short.origin.is_said() { long.origin.clone() } else { short.origin.clone() };
        Figure {
            low: (short.low + long.low) / 2.0,
            likely: (short.likely + long.likely) / 2.0,
            high: (short.high + long.high) / 2.0,
            origin,
        }
    }

    /// What a zone is made of.
    pub fn ground(&self, zone: Zone) -> Ground {
        self.cap().ground(zone)
    }

    /// From row to row of a wefted zone; nothing elsewhere or where rows were counted (see [`Wig::rows_counted`]).
    pub fn row_spacing(&self, zone: Zone) -> Option<Figure<Length>> {
        match self.ground(zone) {
            Ground::Wefted { spacing } => {
                Some(self.said("row_spacing", Of::Zone(zone)).unwrap_or_else(|| Figure::assumed(&spacing)))
            }
            Ground::Knotted { .. } | Ground::Closed { .. } => None,
        }
    }

    /// Rows counted in a zone.
    pub fn rows_counted(&self, zone: Zone) -> Option<u32> {
        self.count("rows", Of::Zone(zone))
    }

    /// Strands on the area of a knotted or closed zone; nothing on a wefted one.
    pub fn ground_fullness(&self, zone: Zone) -> Option<Figure<ArealNumberDensity>> {
        match self.ground(zone) {
            Ground::Wefted { .. } => None,
            Ground::Knotted { fullness } | Ground::Closed { fullness } => {
                Some(self.said("ground_fullness", Of::Zone(zone)).unwrap_or_else(|| Figure::assumed(&fullness)))
            }
        }
    }

    /// Strands on a length of base row, where no weight says better.
    pub fn row_strands(&self) -> Figure<LinearNumberDensity> {
        self.figure("row_strands")
    }

    /// How it is worn.
    pub fn worn(&self) -> &'static str {
        self.choice("worn").unwrap_or(slots::WORN[0])
    }

    /// The target of a zone: its own, else the whole wig's, else as it is.
    pub fn target(&self, zone: Zone) -> Target {
        let read = |value: &Value| {
            let typed = value.typed()?;
            match (typed.fullness(), typed.unit().kind(), typed.ratio()) {
                (Some(fullness), _, _) => Some(Target::Fullness(fullness)),
                (None, measure::unit::Kind::Share, Some(share)) => Some(Target::Percent(share)),
                (None, _, Some(times)) => Some(Target::Times(times)),
                _ => None,
            }
        };
        self.value("zone_target", Of::Zone(zone))
            .and_then(read)
            .or_else(|| self.value("target", Of::Wig).and_then(read))
            .unwrap_or(Target::Times(1.0))
    }

    /// The target of a zone as it was typed.
    pub fn target_typed(&self, zone: Zone) -> Option<&'a Typed> {
        self.value("zone_target", Of::Zone(zone)).or_else(|| self.value("target", Of::Wig)).and_then(Value::typed)
    }

    /// Hanging length wanted in a zone; as long as the base's longest where nothing was said.
    pub fn look_length(&self, zone: Zone) -> Figure<Length> {
        self.said("look_length", Of::Zone(zone)).unwrap_or_else(|| self.longest(zone))
    }

    /// How the front edge is made.
    pub fn hairline(&self) -> &'static str {
        self.choice("hairline").unwrap_or(slots::HAIRLINES[0])
    }

    /// Layers of the front edge.
    pub fn hairline_layers(&self) -> u32 {
        self.count("hairline_layers", Of::Wig).unwrap_or(1)
    }

    /// The parting wanted.
    pub fn parting(&self) -> PartingLook {
        PartingLook {
            kind: self.choice("parting").unwrap_or(slots::PARTINGS[0]),
            place: self.choice("parting_place").unwrap_or(slots::PARTING_PLACES[0]),
            length: self.figure("parting_length"),
            width: self.said("parting_width", Of::Wig).map_or(centimetres(2.5), |figure: Figure<Length>| figure.likely),
            rows: self.count("parting_rows", Of::Wig).unwrap_or(2),
        }
    }

    /// Whether a lot is meant for this wig.
    pub fn uses_lot(&self, lot: LotId) -> bool {
        matches!(self.value("use_lot", Of::Lot(lot)), Some(Value::YesNo(true)))
    }

    /// The lot the rows are reckoned with.
    pub fn main_lot(&self) -> Option<LotId> {
        match self.value("main_lot", Of::Wig) {
            Some(Value::Lot(lot)) => Some(*lot),
            _ => None,
        }
    }

    /// Whether weft is sewn as one run with folds, or cut to rows.
    pub fn cut_to_rows(&self) -> bool {
        self.choice("sewing") == Some("cut")
    }

    /// Whether a row may be joined from pieces.
    pub fn joins(&self) -> bool {
        !matches!(self.value("joins", Of::Wig), Some(Value::YesNo(false)))
    }

    /// Whether double weft is taken apart into two singles before sewing.
    pub fn parts_double_weft(&self) -> bool {
        matches!(self.value("parted", Of::Wig), Some(Value::YesNo(true)))
    }

    /// Whether hairline and parting are made of single weft, double weft being parted for them.
    pub fn edges_of_singles(&self) -> bool {
        !matches!(self.value("edge_singles", Of::Wig), Some(Value::YesNo(false)))
    }

    /// A length of the bench by its slot: `closest_rows`, `edge_distance`, `end_fold`…
    pub fn bench_length(&self, slot: &'static str) -> Figure<Length> {
        self.figure(slot)
    }

    /// A share of the bench by its slot: `hold_back`, `hairline_spare`.
    pub fn bench_share(&self, slot: &'static str) -> Figure<Ratio> {
        self.figure(slot)
    }

    /// From how many times a base row's thickness an added row shows as a shelf.
    pub fn shelf_ratio(&self) -> Figure<Ratio> {
        self.figure("shelf_ratio")
    }

    /// Wefts that may lie on one another in a row, where said.
    pub fn most_stacked(&self) -> Option<u32> {
        self.count("most_stacked", Of::Wig)
    }

    /// Weight kept back of each lot at most.
    pub fn hold_back_weight(&self) -> Figure<Mass> {
        self.figure("hold_back_weight")
    }

    /// Minutes for a row of [`defaults::PACE_ROW`].
    pub fn time_per_row(&self) -> Figure<Time> {
        self.figure("minutes_per_row")
    }

    /// Hours at the bench on a day.
    pub fn time_a_day(&self) -> Figure<Time> {
        self.figure("hours_a_day")
    }

    /// Days an order takes: low, likely, high.
    pub fn delivery_days(&self) -> (u32, u32, u32) {
        self.count("delivery_days", Of::Wig).map_or(defaults::DELIVERY_DAYS, |days| (days, days, days))
    }

    /// The base's colour, where said.
    pub fn base_shade(&self) -> Option<Shade> {
        self.value("base_shade", Of::Wig).and_then(Value::shade)
    }

    /// Colours along the length of a zone: its own, else the whole wig's.
    pub fn colour_along(&self, zone: Zone) -> Option<&'a Along> {
        self.value("zone_colour_along", Of::Zone(zone))
            .or_else(|| self.value("colour_along", Of::Wig))
            .and_then(Value::along)
    }

    /// Whether a dye is meant for this wig.
    pub fn uses_dye(&self, lot: LotId) -> bool {
        matches!(self.value("use_dye", Of::Lot(lot)), Some(Value::YesNo(true)))
    }

    /// The class of dye or colour chosen.
    pub fn dye_with(&self) -> Option<Class> {
        self.choice("dye_with").and_then(Class::read)
    }

    /// What the pot holds to its brim.
    pub fn pot(&self) -> Figure<Volume> {
        self.figure("pot")
    }

    /// Litres of bath for a kilogram of fibre.
    pub fn liquor_ratio(&self) -> Figure<Ratio> {
        self.figure("liquor_ratio")
    }

    /// Spare and hairline fibre that goes into each bath.
    pub fn bath_spare(&self) -> Figure<Mass> {
        self.figure("bath_spare")
    }

    /// How hot the bath is to be held, where said.
    pub fn pot_temperature(&self) -> Option<ThermodynamicTemperature> {
        self.value("pot_temperature", Of::Wig).and_then(Value::typed).and_then(Typed::temperature)
    }

    /// What the base cost.
    pub fn base_price(&self) -> Option<Money> {
        match self.value("base_price", Of::Wig) {
            Some(Value::Money(money)) => Some(*money),
            _ => None,
        }
    }
}

/// How well a slot's figure is measured at a bench, SI base.
fn within(slot: &str) -> f64 {
    defaults::MEASURED_WITHIN
        .iter()
        .find(|(name, _, _)| *name == slot)
        .map_or(0.0, |(_, amount, unit)| unit.to_base(*amount))
}

fn centimetres(amount: f64) -> Length {
    Length::new::<units::centimeter>(amount)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_bench_figure_has_a_default() {
        for slot in [
            "crimped_share",
            "fibre_return",
            "row_strands",
            "closest_rows",
            "closest_rows_parting",
            "edge_distance",
            "shelf_ratio",
            "end_fold",
            "cut_loss",
            "shortest_piece",
            "hold_back",
            "hold_back_weight",
            "hairline_spare",
            "minutes_per_row",
            "hours_a_day",
            "parting_length",
            "pot",
            "liquor_ratio",
            "bath_spare",
        ] {
            assert!(defaults::default_for(slot).is_some(), "{slot}");
        }
    }

    #[test]
    fn a_new_wig_is_all_assumptions() {
        let state = State::default();
        let wig = Wig::new(&state);
        assert!(!wig.girth().origin.is_said());
        assert!((wig.girth().likely.get::<units::centimeter>() - 56.0).abs() < 1e-9);
        let weight = wig.whole_weight();
        assert!(weight.low < weight.likely && weight.likely < weight.high);
        assert_eq!(wig.target(Zone::Back), Target::Times(1.0));
    }
}
