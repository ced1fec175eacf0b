//! What to lay out before the first step.
//!
//! What it is: a table from planned work to things, each named once, and the weft with its length. What it is not: a shop's list.

use measure::{quantity::Length, say::Arg};
use record::{
    field::Value,
    id::LotId,
    wig::{
        steps::{Progress, Step},
        work::{Work, sew_weft::SewWeft},
    },
};

use super::{model::Block, scribe::Scribe};

/// A kind, a choice of it where it matters, and the thing.
type Need = (&'static str, Option<(&'static str, &'static str)>, &'static str);

/// Common practice, no source.
#[rustfmt::skip]
const NEEDS: &[Need] = &[
    ("block", None, "sheet.lay_block"),
    ("measure", None, "sheet.lay_tape"),
    ("wash", None, "sheet.lay_basin"),
    ("rinse", None, "sheet.lay_basin"),
    ("disinfect", None, "sheet.lay_disinfect"),
    ("straighten", Some(("medium", "steam")), "sheet.lay_steamer"),
    ("heat_set", Some(("medium", "steam")), "sheet.lay_steamer"),
    ("straighten", Some(("medium", "water")), "sheet.lay_hot_water"),
    ("heat_set", Some(("medium", "water")), "sheet.lay_hot_water"),
    ("straighten", Some(("medium", "dryer")), "sheet.lay_dryer"),
    ("heat_set", Some(("medium", "dryer")), "sheet.lay_dryer"),
    ("dry", Some(("dry_way", "wig_dryer")), "sheet.lay_dryer"),
    ("dry", Some(("dry_way", "towel")), "sheet.lay_towels"),
    ("straighten", Some(("medium", "iron")), "sheet.lay_iron"),
    ("heat_set", Some(("medium", "iron")), "sheet.lay_iron"),
    ("test_lock", None, "sheet.lay_lock"),
    ("colour_lock", None, "sheet.lay_lock"),
    ("sew_weft", None, "sheet.lay_needle"),
    ("unpick", None, "sheet.lay_ripper"),
    ("edge", None, "sheet.lay_hook"),
    ("refront", None, "sheet.lay_hook"),
    ("gather", None, "sheet.lay_ties"),
    ("heat_set", Some(("winding", "from_points")), "sheet.lay_rods"),
    ("heat_set", Some(("winding", "spiral")), "sheet.lay_rods"),
    ("heat_set", Some(("winding", "pinned_curl")), "sheet.lay_rods"),
    ("heat_set", Some(("winding", "flat_wrap")), "sheet.lay_rods"),
    ("dye", None, "sheet.lay_dye"),
    ("glue", None, "sheet.lay_glue"),
    ("cut", None, "sheet.lay_scissors"),
    ("fitting", None, "sheet.lay_fitting"),
    ("dress", None, "sheet.lay_comb"),
    ("reset", None, "sheet.lay_comb"),
    ("product", None, "sheet.lay_product"),
    ("accessory", None, "sheet.lay_accessory"),
    ("anchor", None, "sheet.lay_anchor"),
    ("wig_prep", None, "sheet.lay_wig_cap"),
    ("repair", None, "sheet.lay_needle"),
    ("photo", None, "sheet.lay_camera"),
    ("store", None, "sheet.lay_store"),
];

/// Whether a step is still to do.
pub(super) fn is_open(step: &Step<'_>) -> bool {
    matches!(step.progress(), Progress::Open | Progress::Begun)
}

/// The part.
pub(super) fn tools(plan: &[Step<'_>], scribe: &Scribe<'_>, blocks: &mut Vec<Block>) {
    let mut open: Vec<&Work> = Vec::new();
    for step in plan.iter().filter(|step| is_open(step)) {
        open.push(&step.planned.work);
    }
    if open.is_empty() {
        return;
    }
    blocks.push(Block::Heading(scribe.key("sheet.lay_out")));
    let mut ticks: Vec<String> = Vec::new();
    let mut tick = |text: String| {
        if !ticks.contains(&text) {
            ticks.push(text);
        }
    };
    tick(scribe.key("sheet.lay_paper"));
    for (lot, length) in weft(&open) {
        tick(scribe.with("sheet.lay_weft", [Arg::Text(scribe.lot(lot)), Arg::Length(length)]));
    }
    for work in &open {
        for (kind, choice, thing) in NEEDS {
            let meant = choice.is_none_or(|(field, wanted)| work.choice(field) == Some(wanted));
            if *kind == work.kind().name && meant {
                tick(scribe.key(thing));
            }
        }
        // What has a name of its own is laid out by that name.
        for field in ["dye_name", "product_name", "accessory"] {
            if let Some(words) = work.get(field).and_then(Value::words) {
                tick(super::scribe::clean(words));
            }
        }
    }
    for text in ticks {
        blocks.push(Block::Tick(text));
    }
}

/// Weft to sew of each lot.
fn weft(open: &[&Work]) -> Vec<(LotId, Length)> {
    let mut all: Vec<(LotId, Length)> = Vec::new();
    for weft in open.iter().filter_map(|work| SewWeft::of(work)) {
        let (Some(lot), length) = (weft.lot, weft.of_lot()) else { continue };
        match all.iter_mut().find(|(one, _)| *one == lot) {
            Some((_, sum)) => *sum += length,
            None => all.push((lot, length)),
        }
    }
    all
}
