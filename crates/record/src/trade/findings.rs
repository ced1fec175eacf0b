//! What was published or is said in the trade of heat and fibre, a row each, disagreements side by side.
//!
//! What it is: data for [`super::damage`]. What it is not: our own limits.

use measure::unit::Unit::Celsius;

use super::{
    damage::{
        Effect::{
            self, Ceiling, Changes, Decomposes, Discolours, Melts, Moves, MovesWet, Set, Shrinks, Softens, Sticks,
            Stiffens, Weakens, Wears,
        },
        Finding,
        Holds::{self, Always, Dry, Wet},
    },
    fact::{
        Source,
        Sure::{self, High, Low, Medium},
        fact,
    },
    sources::{
        CHLOROFIBRE_ARTICLE, COOK, GARMENT_CARE, HAIR_TEXT, HANDBOOKS, HARPER, IJCS_1984, JANAS, JCS_2011, JCS_2013,
        JUDGED, KOHAN, LEE, MCMULLEN, MODACRYLIC_MAKER, MORTON_HEARLE, MUSEUM_MODACRYLIC, MUSEUM_VINYLIDENE,
        POLYESTERS, POLYMER_HANDBOOK, POLYPROPYLENE_PATENT, POLYPROPYLENE_SETTING, POLYPROPYLENE_TRADE, PRACTICE,
        SETTING_METHODS, SETTING_TABLE, SONIC, SOVIET_ENCYCLOPEDIA, SPINNERET, US5954062, VINYLIDENE_ARTICLE,
        WOOL_ESSAY, WORTMANN, WORTMANN_DRY, ZHANG,
    },
};

type Row = (Effect, Holds, &'static str, f64, f64, &'static Source, Sure);

const fn said(fibre: &'static str, row: Row) -> Finding {
    let (effect, holds, of, low, high, source, sure) = row;
    Finding { fibre, effect, holds, of, figure: fact(low, (low + high) / 2.0, high, Celsius, source, sure) }
}

const MAC: &str = "modacrylic";
const PES: &str = "polyester";
const HAIR: &str = "human_hair";
const CLF: &str = "chlorofibre";
const PA: &str = "polyamide";
const PP: &str = "polypropylene";
const PVDC: &str = "vinylidene";

const TYPE_6: &str = "of.polyamide_6";
const TYPE_66: &str = "of.polyamide_66";
const BUTYLENE: &str = "of.butylene";
const IRONED: &str = "of.ironed";
const OLDER: &str = "of.older_types";
const DRY_AIR: &str = "of.dry_air";
const OVEN: &str = "of.hours";

/// Every row; the likely figure is the middle of the two.
#[rustfmt::skip]
pub(super) const FINDINGS: &[Finding] = &[
    said(MAC, (Set, Wet, "", 80.0, 95.0, &JUDGED, Low)),
    said(MAC, (Set, Wet, "of.poured", 82.0, 84.0, &PRACTICE, Medium)),
    said(MAC, (Set, Always, "of.trade_at_large", 70.0, 160.0, &US5954062, Medium)),
    said(MAC, (Moves, Dry, "of.vinylidene_type", 89.0, 108.0, &ZHANG, Medium)),
    said(MAC, (Moves, Dry, "of.vinyl_chloride_type", 75.0, 90.0, &HANDBOOKS, Low)),
    said(MAC, (MovesWet, Wet, "", 70.0, 85.0, &HANDBOOKS, Low)),
    said(MAC, (Softens, Always, "", 120.0, 125.0, &MUSEUM_MODACRYLIC, Medium)),
    said(MAC, (Ceiling, Always, OLDER, 70.0, 70.0, &PRACTICE, Low)),
    said(MAC, (Ceiling, Always, "", 100.0, 100.0, &PRACTICE, Low)),
    said(MAC, (Ceiling, Dry, IRONED, 116.0, 116.0, &GARMENT_CARE, Medium)),
    said(MAC, (Ceiling, Always, "of.one_type", 190.0, 190.0, &MUSEUM_MODACRYLIC, Low)),
    said(MAC, (Discolours, Always, "", 120.0, 120.0, &PRACTICE, Low)),
    said(MAC, (Shrinks, Always, "", 121.0, 121.0, &MODACRYLIC_MAKER, Medium)),
    said(MAC, (Stiffens, Always, "", 149.0, 149.0, &MODACRYLIC_MAKER, Medium)),
    said(MAC, (Sticks, Always, "of.below", 150.0, 150.0, &SPINNERET, Low)),
    said(MAC, (Decomposes, Always, "of.vinylidene_type", 190.0, 220.0, &ZHANG, Medium)),

    said(PES, (Set, Dry, "of.cloth", 170.0, 210.0, &SETTING_TABLE, Medium)),
    said(PES, (Set, Wet, "of.steamed_cloth", 107.0, 130.0, &SETTING_METHODS, Medium)),
    said(PES, (Set, Always, BUTYLENE, 80.0, 110.0, &JUDGED, Low)),
    said(PES, (Moves, Dry, "of.undrawn", 69.0, 80.0, &POLYESTERS, Medium)),
    said(PES, (Moves, Dry, "of.drawn", 100.0, 125.0, &HANDBOOKS, Medium)),
    said(PES, (Moves, Dry, BUTYLENE, 22.0, 24.0, &POLYESTERS, Medium)),
    said(PES, (Moves, Dry, BUTYLENE, 35.0, 50.0, &HANDBOOKS, Low)),
    said(PES, (Ceiling, Always, "of.heat_resistant", 160.0, 180.0, &PRACTICE, Medium)),
    said(PES, (Ceiling, Always, "of.unlabelled", 120.0, 120.0, &JUDGED, Low)),
    said(PES, (Ceiling, Always, BUTYLENE, 140.0, 140.0, &JUDGED, Low)),
    said(PES, (Sticks, Always, BUTYLENE, 200.0, 200.0, &HANDBOOKS, Low)),
    said(PES, (Sticks, Always, "", 230.0, 240.0, &COOK, Medium)),
    said(PES, (Melts, Always, BUTYLENE, 224.0, 226.0, &POLYESTERS, Medium)),
    said(PES, (Melts, Always, "", 250.0, 256.0, &MORTON_HEARLE, Medium)),
    said(PES, (Melts, Always, "", 260.0, 265.0, &POLYESTERS, Medium)),

    said(HAIR, (Set, Dry, "of.treated", 100.0, 150.0, &HARPER, High)),
    said(HAIR, (Moves, Dry, "of.bone_dry", 144.0, 144.0, &WORTMANN, High)),
    said(HAIR, (Moves, Dry, "of.room_moisture", 50.0, 100.0, &HARPER, High)),
    said(HAIR, (MovesWet, Wet, "of.below", 0.0, 0.0, &HARPER, High)),
    said(HAIR, (Wears, Dry, DRY_AIR, 47.0, 95.0, &LEE, High)),
    said(HAIR, (Wears, Dry, IRONED, 130.0, 164.0, &MCMULLEN, High)),
    said(HAIR, (Ceiling, Wet, "of.bath", 80.0, 85.0, &JUDGED, Low)),
    said(HAIR, (Ceiling, Dry, IRONED, 180.0, 180.0, &PRACTICE, Low)),
    said(HAIR, (Weakens, Wet, "of.bath", 90.0, 100.0, &WOOL_ESSAY, Low)),
    said(HAIR, (Weakens, Dry, IRONED, 180.0, 210.0, &JCS_2011, High)),
    said(HAIR, (Changes, Dry, "", 140.0, 140.0, &IJCS_1984, Medium)),
    said(HAIR, (Changes, Dry, "of.curl_lost", 144.0, 175.0, &JCS_2013, High)),
    said(HAIR, (Changes, Wet, "", 150.0, 160.0, &HAIR_TEXT, High)),
    said(HAIR, (Melts, Dry, IRONED, 220.0, 220.0, &JCS_2011, High)),
    said(HAIR, (Melts, Dry, "", 230.0, 235.0, &WORTMANN_DRY, Medium)),
    said(HAIR, (Decomposes, Dry, "", 200.0, 200.0, &IJCS_1984, Medium)),

    said(CLF, (Set, Wet, "", 60.0, 75.0, &JUDGED, Low)),
    said(CLF, (Moves, Always, "", 75.0, 85.0, &POLYMER_HANDBOOK, Medium)),
    said(CLF, (Softens, Always, "of.acetate_type", 55.0, 55.0, &CHLOROFIBRE_ARTICLE, Low)),
    said(CLF, (Softens, Always, "", 65.0, 85.0, &HANDBOOKS, Medium)),
    said(CLF, (Ceiling, Always, "", 80.0, 80.0, &JUDGED, Low)),
    said(CLF, (Shrinks, Wet, "of.not_stabilised", 100.0, 100.0, &SOVIET_ENCYCLOPEDIA, Medium)),
    said(CLF, (Decomposes, Always, "of.acid_gas", 180.0, 180.0, &HANDBOOKS, Medium)),

    said(PA, (Set, Dry, TYPE_6, 160.0, 180.0, &SETTING_TABLE, Medium)),
    said(PA, (Set, Dry, TYPE_6, 185.0, 195.0, &JANAS, Medium)),
    said(PA, (Set, Dry, TYPE_66, 170.0, 210.0, &SETTING_TABLE, Medium)),
    said(PA, (Set, Dry, TYPE_66, 210.0, 210.0, &JANAS, Medium)),
    said(PA, (Moves, Dry, TYPE_6, 70.0, 70.0, &SONIC, Medium)),
    said(PA, (Moves, Dry, TYPE_6, 40.0, 57.0, &HANDBOOKS, Medium)),
    said(PA, (Moves, Dry, TYPE_66, 50.0, 60.0, &KOHAN, Medium)),
    said(PA, (Moves, Dry, TYPE_66, 80.0, 80.0, &KOHAN, Medium)),
    said(PA, (MovesWet, Wet, "", -20.0, 0.0, &KOHAN, Medium)),
    said(PA, (Ceiling, Always, TYPE_6, 150.0, 150.0, &JUDGED, Low)),
    said(PA, (Discolours, Dry, OVEN, 150.0, 150.0, &PRACTICE, Low)),
    said(PA, (Sticks, Always, TYPE_6, 170.0, 170.0, &HANDBOOKS, Medium)),
    said(PA, (Sticks, Always, TYPE_66, 230.0, 235.0, &HANDBOOKS, Medium)),
    said(PA, (Melts, Always, TYPE_6, 215.0, 220.0, &HANDBOOKS, High)),
    said(PA, (Melts, Always, TYPE_66, 250.0, 260.0, &HANDBOOKS, High)),

    said(PP, (Set, Dry, "of.single_fibres", 110.0, 135.0, &POLYPROPYLENE_SETTING, Low)),
    said(PP, (Set, Always, "", 80.0, 95.0, &JUDGED, Low)),
    said(PP, (Moves, Always, "", -20.0, -5.0, &POLYMER_HANDBOOK, Medium)),
    said(PP, (Ceiling, Dry, IRONED, 100.0, 100.0, &PRACTICE, Low)),
    said(PP, (Shrinks, Always, "", 100.0, 119.0, &POLYPROPYLENE_PATENT, Medium)),
    said(PP, (Stiffens, Always, "", 120.0, 140.0, &POLYPROPYLENE_PATENT, Medium)),
    said(PP, (Sticks, Always, "", 150.0, 150.0, &POLYPROPYLENE_TRADE, Medium)),
    said(PP, (Melts, Always, "", 160.0, 173.0, &POLYPROPYLENE_TRADE, Medium)),

    said(PVDC, (Set, Wet, "", 60.0, 75.0, &JUDGED, Low)),
    said(PVDC, (Moves, Always, "", -18.0, 0.0, &POLYMER_HANDBOOK, Medium)),
    said(PVDC, (Softens, Always, "", 115.0, 115.0, &MUSEUM_VINYLIDENE, Medium)),
    said(PVDC, (Ceiling, Always, "", 85.0, 85.0, &JUDGED, Low)),
    said(PVDC, (Weakens, Always, "", 99.0, 99.0, &MUSEUM_VINYLIDENE, Medium)),
    said(PVDC, (Melts, Always, "", 160.0, 177.0, &MUSEUM_VINYLIDENE, Medium)),
    said(PVDC, (Decomposes, Always, "of.acid_gas", 125.0, 125.0, &VINYLIDENE_ARTICLE, Medium)),
];

#[cfg(test)]
mod tests {
    use super::{super::fibres::fibre, *};

    #[test]
    fn every_finding_is_of_a_fibre_that_stands_in_the_table() {
        assert!(FINDINGS.iter().all(|finding| fibre(finding.fibre).name == finding.fibre));
    }
}
