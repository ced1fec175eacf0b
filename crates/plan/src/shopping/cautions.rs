//! What to mind about the weft answer, and what to do about it.
//!
//! What it is: one test after another on the likely corner. What it is not: the figures.

use measure::quantity::units;
use measure::say::{Arg, Say};
use record::{
    trade::caps::Ground,
    wig::{figures::Wig, zone::Zone},
    workshop::lots::Lot,
};

use super::{
    answer::{Packs, Solved},
    pieces::Way,
    working::weft_length,
};
use crate::{
    layout::none,
    wefts::Why,
    working::{Caution, Weight},
};

pub(super) fn cautions(wig: &Wig<'_>, lots: &[Lot], likely: &Solved, packs: Packs) -> Vec<Caution> {
    let prepared = &likely.prepared;
    let mut cautions = prepared.fullness.cautions.clone();
    let mut say = |weight, what: Say, remedy: &'static str| {
        cautions.push(Caution { weight, what, remedy: Say::key(remedy) });
    };
    let base = prepared.fullness.row_strands;
    let double = lots.iter().any(|lot| lot.id == prepared.main && lot.is_double());
    let ratio = (prepared.weft.strands / base).get::<units::ratio>();
    let shelf = wig.shelf_ratio().likely.get::<units::ratio>();
    if !prepared.placement.rows.is_empty() && base.get::<units::per_meter>() > 0.0 && ratio > shelf {
        let what = Say::new(
            "plan.shelf",
            [Arg::Strands(prepared.weft.strands), Arg::Strands(base), Arg::Number(ratio, 1), Arg::Number(shelf, 1)],
        );
        say(Weight::Care, what, if prepared.parted || !double { "plan.shelf_parted" } else { "plan.shelf_remedy" });
    }
    for shortfall in &prepared.placement.shortfalls {
        let zones = zones_said(&shortfall.zones);
        match shortfall.why {
            Why::NoRoom => {
                let args = [Arg::from(zones), weft_length(shortfall.placed), weft_length(shortfall.wanted)];
                say(Weight::Care, Say::new("plan.shortfall", args), "plan.shortfall_remedy");
            }
            Why::LessThanARow => {
                let what = Say::new("plan.less_than_a_row", [Arg::from(zones), weft_length(shortfall.wanted)]);
                say(Weight::Consider, what, "plan.less_than_a_row_remedy");
            }
        }
    }
    let edge_wants = prepared
        .fullness
        .zones
        .get(Zone::FrontHairline as usize)
        .is_some_and(|zone| matches!(zone.ground, Ground::Wefted { .. }) && zone.wanting() > 1.0);
    if edge_wants && wig.hairline() == "none" {
        say(Weight::Consider, Say::key("plan.bare_edge"), "plan.bare_edge_remedy");
    }
    for zone in &prepared.placement.closed {
        let key = match wig.ground(*zone) {
            Ground::Closed { .. } => "plan.closed_zone",
            _ => "plan.knotted_zone",
        };
        say(Weight::Care, Say::new(key, [Arg::Key(zone.label())]), "plan.closed_remedy");
    }
    if wig.hairline() == "lace" {
        say(Weight::Consider, Say::key("plan.lace_hairline"), "plan.lace_hairline_remedy");
    }
    if wig.hairline() == "glued_strip" {
        say(Weight::Care, Say::key("plan.glue"), "plan.glue_remedy");
    }
    if wig.worn() != "down" {
        say(Weight::Consider, Say::key("plan.worn_up"), "plan.worn_up_remedy");
    }
    if let (Some(likely), high) = (packs.likely, packs.high)
        && likely > 0
        && high.is_none_or(|high| high > likely)
    {
        say(Weight::Care, Say::key("plan.dye_lot"), "plan.dye_lot_remedy");
    }
    if mixes_dye_lots(lots, likely) {
        say(Weight::Care, Say::key("plan.mixed_lots"), "plan.mixed_lots_remedy");
    }
    for id in &prepared.left_out {
        let name = lots.iter().find(|lot| lot.id == *id).map_or("", |lot| lot.name.as_str());
        say(Weight::Consider, Say::new("plan.left_out", [Arg::from(name)]), "plan.left_out_remedy");
    }
    thin_ends(prepared, &mut say);
    if prepared.way == Way::Whole {
        say(Weight::Consider, Say::key("plan.hand_tied"), "plan.hand_tied_remedy");
    }
    cautions
}

/// Zones in a row: one, two and three.
fn zones_said(zones: &[Zone]) -> Say {
    let mut said: Option<Say> = None;
    for (index, zone) in zones.iter().enumerate() {
        let key = if index + 1 == zones.len() { "plan.and" } else { "plan.comma" };
        said = Some(match said {
            None => Say::key(zone.label()),
            Some(before) => Say::new(key, [Arg::from(before), Arg::Key(zone.label())]),
        });
    }
    said.unwrap_or_else(|| Say::key("number.0"))
}

/// A weft shorter than the look thins out before the ends.
fn thin_ends(prepared: &super::prepare::Prepared, say: &mut impl FnMut(Weight, Say, &'static str)) {
    let longest = prepared
        .fullness
        .zones
        .iter()
        .filter(|zone| zone.wanting() > 1.0)
        .map(|zone| zone.look_length)
        .fold(none(), |most, one| if one > most { one } else { most });
    if longest > prepared.weft.hanging * 1.02 {
        say(
            Weight::Care,
            Say::new("plan.thin_ends", [Arg::Length(prepared.weft.hanging), Arg::Length(longest)]),
            "plan.thin_ends_remedy",
        );
    }
}

/// Whether weft of two dye lots (or of an unlabelled one and another) goes onto the same head.
fn mixes_dye_lots(lots: &[Lot], likely: &Solved) -> bool {
    let Some(plan) = &likely.plan else { return false };
    let mut used = plan
        .bars
        .iter()
        .filter(|bar| !bar.pieces_mm.is_empty())
        .filter_map(|bar| likely.prepared.kinds.get(bar.pack))
        .filter_map(|id| lots.iter().find(|lot| lot.id == *id));
    let Some(first) = used.next() else { return false };
    used.any(|lot| lot.id != first.id && (lot.dye_lot != first.dye_lot || lot.dye_lot.is_empty()))
}
