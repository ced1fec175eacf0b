//! When a step is right, and when to stop and ask: two sentences a kind of work, for the sheet that a helper follows.
//!
//! What it is: a table of keys. What it is not: how the work is done, or the cautions beside it.

/// Two sentences of a kind of work.
#[derive(Debug, PartialEq, Eq)]
pub struct Guide {
    /// Name of the kind.
    pub kind: &'static str,
    /// Key of “Right when…”.
    pub right_when: &'static str,
    /// Key of “Stop and ask if…”.
    pub stop_if: &'static str,
}

const fn row(kind: &'static str, right_when: &'static str, stop_if: &'static str) -> Guide {
    Guide { kind, right_when, stop_if }
}

/// Common practice, no source; makers' labels come first.
#[rustfmt::skip]
const GUIDES: &[Guide] = &[
    row("base", "guide.base_right", "guide.base_stop"),
    row("measure", "guide.measure_right", "guide.measure_stop"),
    row("block", "guide.block_right", "guide.block_stop"),
    row("wash", "guide.wash_right", "guide.wash_stop"),
    row("straighten", "guide.straighten_right", "guide.straighten_stop"),
    row("sew_weft", "guide.sew_weft_right", "guide.sew_weft_stop"),
    row("unpick", "guide.unpick_right", "guide.unpick_stop"),
    row("edge", "guide.edge_right", "guide.edge_stop"),
    row("glue", "guide.glue_right", "guide.glue_stop"),
    row("refront", "guide.refront_right", "guide.refront_stop"),
    row("gather", "guide.gather_right", "guide.gather_stop"),
    row("release", "guide.release_right", "guide.release_stop"),
    row("rinse", "guide.rinse_right", "guide.rinse_stop"),
    row("dry", "guide.dry_right", "guide.dry_stop"),
    row("heat_set", "guide.heat_set_right", "guide.heat_set_stop"),
    row("dye", "guide.dye_right", "guide.dye_stop"),
    row("colour_lock", "guide.colour_lock_right", "guide.colour_lock_stop"),
    row("test_lock", "guide.test_lock_right", "guide.test_lock_stop"),
    row("cut", "guide.cut_right", "guide.cut_stop"),
    row("product", "guide.product_right", "guide.product_stop"),
    row("dress", "guide.dress_right", "guide.dress_stop"),
    row("accessory", "guide.accessory_right", "guide.accessory_stop"),
    row("anchor", "guide.anchor_right", "guide.anchor_stop"),
    row("wig_prep", "guide.wig_prep_right", "guide.wig_prep_stop"),
    row("fitting", "guide.fitting_right", "guide.fitting_stop"),
    row("worn", "guide.worn_right", "guide.worn_stop"),
    row("reset", "guide.reset_right", "guide.reset_stop"),
    row("disinfect", "guide.disinfect_right", "guide.disinfect_stop"),
    row("repair", "guide.repair_right", "guide.repair_stop"),
    row("store", "guide.store_right", "guide.store_stop"),
    row("hand_over", "guide.hand_over_right", "guide.hand_over_stop"),
    row("photo", "guide.photo_right", "guide.photo_stop"),
    row("count", "guide.count_right", "guide.count_stop"),
    row("count_dye", "guide.count_dye_right", "guide.count_dye_stop"),
    row("note", "guide.note_right", "guide.note_stop"),
];

/// The two sentences of a kind; those of a note for a kind that is unheard of.
pub fn guide(kind: &str) -> &'static Guide {
    let last = GUIDES.len() - 1;
    GUIDES.iter().find(|row| row.kind == kind).unwrap_or(&GUIDES[last])
}
