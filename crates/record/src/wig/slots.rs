//! What may be said of a wig, one figure at a time: name, base, head, look, ways of working.
//!
//! What it is: the table of slots that "set a value" entries fill.
//! What it is not: work done, or the assumptions that stand until a slot is filled (see `trade`).

use crate::{
    field::{Field, Holds, field},
    limits,
    trade::{caps, fibres, sizes, soaking},
    wig::{
        steps,
        work::{DYE_CLASSES, MEDIA, heat_set},
    },
};

/// What a slot is filled for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Per {
    /// Once for the wig.
    Wig,
    /// Once for each zone.
    Zone,
    /// Once for each lot the wig may use.
    Lot,
    /// Once for each step of its plan.
    Step,
}

/// Where a slot is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Group {
    /// What it is.
    Wig,
    /// The wearer's head.
    Head,
    /// The base as bought.
    Base,
    /// The look wanted.
    Look,
    /// Weft to buy and use.
    Weft,
    /// Limits and ways of working.
    Bench,
}

/// A slot.
#[derive(Debug, PartialEq)]
pub struct Slot {
    /// Name and what it holds.
    pub field: Field,
    /// What it is filled for.
    pub per: Per,
    /// Where it is asked.
    pub group: Group,
}

const fn slot(name: &'static str, per: Per, group: Group, holds: Holds) -> Slot {
    Slot { field: field(name, holds), per, group }
}

use Group::{Base, Bench, Head, Look, Weft};
use Holds::{AnyOf, Choice, Count, Date, Lot, Money, Quantity, Text, YesNo};
use Per::{Wig, Zone};

/// Where the tape over the top starts.
pub const TAPE_FROM: &[&str] = &["above_ear", "tragus"];
/// How a wig is worn.
pub const WORN: &[&str] = &["down", "tied_up", "bunches", "upright"];
/// How the front edge is made.
pub const HAIRLINES: &[&str] = &["none", "glued_strip", "sewn_edge", "lace"];
/// How the parting is made.
pub const PARTINGS: &[&str] = &["none", "weft_sides", "insert"];
/// Where the parting lies; left and right are the wearer's.
pub const PARTING_PLACES: &[&str] = &["middle", "left", "right"];
/// How weft is put on.
pub const SEWING: &[&str] = &["run", "cut"];

/// How a zone falls when it is finished.
pub const CURLS: &[&str] = &["straight", "wave", "curl"];
/// Where a roller sits to its section.
pub const ON_BASE: &[&str] = &["on_base", "half_base", "off_base"];
/// Which way a roller is rolled.
pub const ROLLED: &[&str] = &["down", "up", "back", "forward"];
/// From where a wound lock is heated.
pub const HEATED_FROM: &[&str] = &["outside", "inside", "both"];
/// How hot water meets the fibre.
pub const WATER_WAYS: &[&str] = &["dipped", "poured"];

/// Every slot.
#[rustfmt::skip]
pub const SLOTS: &[Slot] = &[
    slot("name", Wig, Group::Wig, Text(80)),
    slot("character", Wig, Group::Wig, Text(200)),
    slot("due", Wig, Group::Wig, Date),
    slot("note", Wig, Group::Wig, Text(4000)),

    slot("size", Wig, Head, Choice(sizes::NAMES)),
    slot("girth", Wig, Head, Quantity(&limits::GIRTH)),
    slot("front_to_nape", Wig, Head, Quantity(&limits::FRONT_TO_NAPE)),
    slot("ear_to_ear_front", Wig, Head, Quantity(&limits::EAR_TO_EAR_FRONT)),
    slot("ear_to_ear_top", Wig, Head, Quantity(&limits::EAR_TO_EAR_TOP)),
    slot("tape_from", Wig, Head, Choice(TAPE_FROM)),
    slot("temple_to_temple_back", Wig, Head, Quantity(&limits::TEMPLE_TO_TEMPLE)),
    slot("nape_width", Wig, Head, Quantity(&limits::NAPE_WIDTH)),

    slot("fibre", Wig, Base, Choice(fibres::NAMES)),
    slot("cap", Wig, Base, Choice(caps::NAMES)),
    slot("base_colour", Wig, Base, Text(120)),
    slot("base_price", Wig, Base, Money),
    slot("label_heat", Wig, Base, Quantity(&limits::TEMPERATURE)),
    slot("whole_weight", Wig, Base, Quantity(&limits::WIG_WEIGHT)),
    slot("cap_weight", Wig, Base, Quantity(&limits::CAP_WEIGHT)),
    slot("crimped_share", Wig, Base, Quantity(&limits::SHARE)),
    slot("fineness", Wig, Base, Quantity(&limits::FINENESS)),
    slot("fibre_return", Wig, Base, Quantity(&limits::FIBRE_RETURN)),
    slot("shortest", Zone, Base, Quantity(&limits::FIBRE_LENGTH)),
    slot("longest", Zone, Base, Quantity(&limits::FIBRE_LENGTH)),
    slot("row_spacing", Zone, Base, Quantity(&limits::ROW_SPACING)),
    slot("rows", Zone, Base, Count(1, 60)),
    slot("ground_fullness", Zone, Base, Quantity(&limits::FULLNESS)),

    slot("worn", Wig, Look, Choice(WORN)),
    slot("target", Wig, Look, AnyOf(&[&limits::TIMES, &limits::FULLNESS, &limits::PERCENT])),
    slot("zone_target", Zone, Look, AnyOf(&[&limits::TIMES, &limits::FULLNESS, &limits::PERCENT])),
    slot("look_length", Zone, Look, Quantity(&limits::FIBRE_LENGTH)),
    slot("hairline", Wig, Look, Choice(HAIRLINES)),
    slot("hairline_layers", Wig, Look, Count(1, 3)),
    slot("parting", Wig, Look, Choice(PARTINGS)),
    slot("parting_place", Wig, Look, Choice(PARTING_PLACES)),
    slot("parting_length", Wig, Look, Quantity(&limits::PARTING)),
    slot("parting_width", Wig, Look, Quantity(&limits::PARTING_WIDTH)),
    slot("parting_rows", Wig, Look, Count(1, 4)),

    slot("look_shortest", Zone, Look, Quantity(&limits::FIBRE_LENGTH)),
    slot("curl", Zone, Look, Choice(CURLS)),
    slot("curl_diameter", Zone, Look, Quantity(&limits::DIAMETER)),
    slot("curl_pitch", Zone, Look, Quantity(&limits::PITCH)),
    slot("curl_turns", Zone, Look, Quantity(&limits::TURNS)),
    slot("curl_start", Zone, Look, Quantity(&limits::CURL_START)),
    slot("on_base", Zone, Look, Choice(ON_BASE)),
    slot("rolled", Zone, Look, Choice(ROLLED)),
    slot("test_straight", Wig, Look, Quantity(&limits::FIBRE_LENGTH)),
    slot("test_hangs", Wig, Look, Quantity(&limits::FIBRE_LENGTH)),
    slot("test_rod", Wig, Look, Quantity(&limits::DIAMETER)),
    slot("test_curl", Wig, Look, Quantity(&limits::DIAMETER)),

    slot("use_lot", Per::Lot, Weft, YesNo),
    slot("main_lot", Wig, Weft, Lot),
    slot("sewing", Wig, Weft, Choice(SEWING)),
    slot("joins", Wig, Weft, YesNo),
    slot("parted", Wig, Weft, YesNo),
    slot("edge_singles", Wig, Weft, YesNo),

    slot("closest_rows", Wig, Bench, Quantity(&limits::ROW_SPACING)),
    slot("closest_rows_parting", Wig, Bench, Quantity(&limits::ROW_SPACING)),
    slot("edge_distance", Wig, Bench, Quantity(&limits::ALLOWANCE)),
    slot("most_stacked", Wig, Bench, Count(1, 4)),
    slot("shelf_ratio", Wig, Bench, Quantity(&limits::SHELF)),
    slot("end_fold", Wig, Bench, Quantity(&limits::ALLOWANCE)),
    slot("cut_loss", Wig, Bench, Quantity(&limits::ALLOWANCE)),
    slot("shortest_piece", Wig, Bench, Quantity(&limits::SHORTEST_PIECE)),
    slot("hold_back", Wig, Bench, Quantity(&limits::SHARE)),
    slot("hairline_spare", Wig, Bench, Quantity(&limits::SHARE)),
    slot("minutes_per_row", Wig, Bench, Quantity(&limits::SITTING)),
    slot("hours_a_day", Wig, Bench, Quantity(&limits::HOURS_A_DAY)),
    slot("delivery_days", Wig, Bench, Count(0, 365)),
    slot("ask", Wig, Bench, Text(120)),

    slot("winding", Wig, Bench, Choice(heat_set::WINDINGS)),
    slot("rod", Zone, Bench, Quantity(&limits::DIAMETER)),
    slot("rod_kind", Wig, Bench, Choice(soaking::ROD_KINDS)),
    slot("section_width", Wig, Bench, Quantity(&limits::SECTION)),
    slot("section_depth", Wig, Bench, Quantity(&limits::SECTION)),
    slot("lock_thickness", Wig, Bench, Quantity(&limits::LOCK)),
    slot("set_medium", Wig, Bench, Choice(MEDIA)),
    slot("set_temperature", Wig, Bench, Quantity(&limits::TEMPERATURE)),
    slot("set_hold", Wig, Bench, Quantity(&limits::HOLD)),
    slot("cap_heated", Wig, Bench, YesNo),
    slot("heated_from", Wig, Bench, Choice(HEATED_FROM)),
    slot("water_way", Wig, Bench, Choice(WATER_WAYS)),
    slot("poured_water", Wig, Bench, Quantity(&limits::POURED)),
    slot("poured_fibre", Wig, Bench, Quantity(&limits::WIG_WEIGHT)),
    slot("altitude", Wig, Bench, Quantity(&limits::ALTITUDE)),
    slot("steam_air", Wig, Bench, Quantity(&limits::SHARE)),
    // Colour.
    slot("base_shade", Wig, Base, Holds::Shade),
    slot("colour_along", Wig, Look, Holds::Along),
    slot("zone_colour_along", Zone, Look, Holds::Along),
    slot("use_dye", Per::Lot, Look, YesNo),
    slot("dye_with", Wig, Bench, Choice(DYE_CLASSES)),
    slot("pot", Wig, Bench, Quantity(&limits::POT)),
    slot("liquor_ratio", Wig, Bench, Quantity(&limits::LIQUOR_RATIO)),
    slot("bath_spare", Wig, Bench, Quantity(&limits::FIBRE_WEIGHT)),
    slot("pot_temperature", Wig, Bench, Quantity(&limits::TEMPERATURE)),

    slot(steps::SLOT, Per::Step, Bench, Holds::Planned),
];

/// The slot of a name.
pub fn slot_named(name: &str) -> Option<&'static Slot> {
    SLOTS.iter().find(|slot| slot.field.name == name)
}
