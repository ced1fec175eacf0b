//! The limits of the record's figures, each named once.
//!
//! What it is: what is possible at a bench. What it is not: what is usual (see `trade`).

use measure::{
    limit::Limit,
    unit::Unit::{
        Celsius, Centimetre, Decitex, Gram, Hour, Kilogram, Litre, Metre, Millilitre, Millimetre, Minute,
        PerCentimetre, PerSquareCentimetre, Percent, Times,
    },
};

/// Round the head: a small child's to the largest published headform (EN 960: 445 to 645 mm) and a little more.
pub const GIRTH: Limit = Limit::new(42.0, 70.0, Centimetre, "limit.head");
/// Front hairline to nape, over the head.
pub const FRONT_TO_NAPE: Limit = Limit::new(24.0, 48.0, Centimetre, "limit.head");
/// Ear to ear along the front hairline.
pub const EAR_TO_EAR_FRONT: Limit = Limit::new(22.0, 42.0, Centimetre, "limit.head");
/// Ear to ear over the top, wherever the tape starts.
pub const EAR_TO_EAR_TOP: Limit = Limit::new(19.0, 45.0, Centimetre, "limit.head");
/// Temple to temple round the back.
pub const TEMPLE_TO_TEMPLE: Limit = Limit::new(26.0, 50.0, Centimetre, "limit.head");
/// Across the nape.
pub const NAPE_WIDTH: Limit = Limit::new(8.0, 20.0, Centimetre, "limit.head");
/// A whole wig.
pub const WIG_WEIGHT: Limit = Limit::new(30.0, 3000.0, Gram, "limit.wig_weight");
/// A cap without hair.
pub const CAP_WEIGHT: Limit = Limit::new(5.0, 500.0, Gram, "limit.cap_weight");
/// A strand.
pub const FIBRE_LENGTH: Limit = Limit::new(2.0, 200.0, Centimetre, "limit.fibre_length");
/// Root side of a strand.
pub const FIBRE_RETURN: Limit = Limit::new(0.0, 60.0, Millimetre, "limit.fibre_return");
/// Fineness of a strand: 10 to 300 dtex takes in the finest hair and the coarsest doll fibre.
pub const FINENESS: Limit = Limit::new(10.0, 300.0, Decitex, "limit.fineness");
/// Rows of weft on a cap.
pub const ROW_SPACING: Limit = Limit::new(2.0, 60.0, Millimetre, "limit.row_spacing");
/// Strands on a cm of weft or row.
pub const STRANDS: Limit = Limit::new(5.0, 2000.0, PerCentimetre, "limit.strands");
/// Hair on the head.
pub const FULLNESS: Limit = Limit::new(1.0, 1000.0, PerSquareCentimetre, "limit.fullness");
/// Times as full.
pub const TIMES: Limit = Limit::new(1.0, 6.0, Times, "limit.times");
/// The trade's percent.
pub const PERCENT: Limit = Limit::new(10.0, 800.0, Percent, "limit.percent");
/// A share of a whole.
pub const SHARE: Limit = Limit::new(0.0, 90.0, Percent, "limit.share");
/// How many times a row's thickness shows as a shelf.
pub const SHELF: Limit = Limit::new(1.0, 20.0, Times, "limit.shelf");
/// A small allowance.
pub const ALLOWANCE: Limit = Limit::new(0.0, 60.0, Millimetre, "limit.allowance");
/// The shortest piece worth sewing.
pub const SHORTEST_PIECE: Limit = Limit::new(10.0, 300.0, Millimetre, "limit.shortest_piece");
/// A pack's weight.
pub const PACK_WEIGHT: Limit = Limit::new(5.0, 2000.0, Gram, "limit.pack_weight");
/// All stitched edges of a pack, end to end.
pub const PACK_WIDTH: Limit = Limit::new(0.1, 50.0, Metre, "limit.pack_width");
/// A piece of weft.
pub const WEFT_PIECE: Limit = Limit::new(0.0, 50.0, Metre, "limit.weft_piece");
/// A piece of weft that was sewn.
pub const SEWN: Limit = Limit::new(1.0, 2000.0, Centimetre, "limit.sewn");
/// A place along the head's midline.
pub const PLACE: Limit = Limit::new(0.0, 480.0, Millimetre, "limit.place");
/// A parting.
pub const PARTING: Limit = Limit::new(2.0, 25.0, Centimetre, "limit.parting");
/// The strip along a parting.
pub const PARTING_WIDTH: Limit = Limit::new(5.0, 60.0, Millimetre, "limit.parting_width");
/// A sitting.
pub const SITTING: Limit = Limit::new(0.0, 2880.0, Minute, "limit.sitting");
/// Hours of work a day.
pub const HOURS_A_DAY: Limit = Limit::new(0.25, 16.0, Hour, "limit.hours_a_day");
/// A bath, a tool, air: from an ice bath to beyond any iron.
pub const TEMPERATURE: Limit = Limit::new(0.0, 260.0, Celsius, "limit.temperature");
/// Time at temperature.
pub const HOLD: Limit = Limit::new(0.05, 1440.0, Minute, "limit.hold");
/// Drying, wearing.
pub const HOURS: Limit = Limit::new(0.05, 240.0, Hour, "limit.hours");
/// A rod, roller or braid.
pub const DIAMETER: Limit = Limit::new(2.0, 150.0, Millimetre, "limit.diameter");
/// Dye on the weight of fibre.
pub const DEPTH: Limit = Limit::new(0.01, 12.0, Percent, "limit.depth");

// Curl and heat.
/// From turn to turn of a curl, from crest to crest of a wave.
pub const PITCH: Limit = Limit::new(1.0, 1000.0, Millimetre, "limit.pitch");
/// Turns of a curl.
pub const TURNS: Limit = Limit::new(0.25, 100.0, Times, "limit.turns");
/// Where a curl starts, from the root.
pub const CURL_START: Limit = Limit::new(0.0, 200.0, Centimetre, "limit.curl_start");
/// A section of hair on one rod.
pub const SECTION: Limit = Limit::new(2.0, 200.0, Millimetre, "limit.section");
/// A wound lock, from rod to outside; of one that is not wound, its thickness.
pub const LOCK: Limit = Limit::new(0.05, 60.0, Millimetre, "limit.lock");
/// Above the sea: what the lowest layer of the standard atmosphere and any bench have in common.
pub const ALTITUDE: Limit = Limit::new(-430.0, 5000.0, Metre, "limit.altitude");
/// Water poured; a litre weighs a kilogram.
pub const POURED: Limit = Limit::new(0.1, 30.0, Kilogram, "limit.poured");
/// A pot, a bath.
pub const POT: Limit = Limit::new(0.2, 100.0, Litre, "limit.pot");
/// Litres of bath for a kilogram of fibre.
pub const LIQUOR_RATIO: Limit = Limit::new(5.0, 200.0, Times, "limit.liquor_ratio");
/// A weighed amount of dye.
pub const DYE_WEIGHT: Limit = Limit::new(0.0, 5000.0, Gram, "limit.dye_amount");
/// A measured amount of dye.
pub const DYE_VOLUME: Limit = Limit::new(0.0, 10000.0, Millilitre, "limit.dye_amount");
/// A bottle's cap.
pub const BOTTLE_CAP: Limit = Limit::new(0.5, 100.0, Millilitre, "limit.bottle_cap");
/// Fibre in a bath.
pub const FIBRE_WEIGHT: Limit = Limit::new(0.1, 5000.0, Gram, "limit.fibre_weight");
/// How far above or below the widest part of the head the water stands.
pub const WATER_LINE: Limit = Limit::new(-30.0, 200.0, Centimetre, "limit.water_line");
/// Vinegar in a bath.
pub const ACID_AMOUNT: Limit = Limit::new(0.0, 2000.0, Millilitre, "limit.acid_amount");
