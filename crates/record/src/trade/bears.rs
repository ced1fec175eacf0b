//! What else limits heat: parts of the cap, glues, blocks.
//!
//! What it is: the highest temperature each bears. What it is not: fibre (see [`super::heat`]).
//! No published figures for these as wigs use them were found: all are practice or judged, so the maker's label goes first.

use measure::unit::Unit::Celsius;

use super::{
    fact::{Fact, Source, Sure, fact},
    sources::{JUDGED, PRACTICE},
};

/// What sort of thing it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sort {
    /// A part of the cap.
    Cap,
    /// A glue or tape.
    Glue,
    /// What the wig stands on.
    Block,
}

/// A thing that bears heat only so far.
#[derive(Debug, PartialEq)]
pub struct Bearer {
    /// Its name in files.
    pub name: &'static str,
    /// Key of its label.
    pub label: &'static str,
    /// What sort.
    pub sort: Sort,
    /// The most it bears, wet or dry; its three figures are one.
    pub most: Fact,
    /// Key of what happens above.
    pub above: &'static str,
}

const fn bearer(
    name: &'static str,
    label: &'static str,
    sort: Sort,
    most: f64,
    above: &'static str,
    source: &'static Source,
) -> Bearer {
    Bearer { name, label, sort, most: fact(most, most, most, Celsius, source, Sure::Low), above }
}

const SHRINKS: &str = "effect.shrinks";
const WEAKENS: &str = "effect.weakens";
const SOFTENS: &str = "effect.softens";
const LETS_GO: &str = "bears.lets_go";

/// All of them.
#[rustfmt::skip]
pub const BEARERS: &[Bearer] = &[
    // Polyamide is dyed at up to 100 °C and sets there: lace must lie flat.
    bearer("polyamide_lace", "bears.polyamide_lace", Sort::Cap, 100.0, SHRINKS, &JUDGED),
    // Caps with elastic are dipped at 80 to 85 °C.
    bearer("elastic", "bears.elastic", Sort::Cap, 90.0, WEAKENS, &PRACTICE),
    bearer("skin_top", "bears.skin_top", Sort::Cap, 60.0, SOFTENS, &JUDGED),
    bearer("hot_melt", "choice.hot_melt", Sort::Glue, 60.0, LETS_GO, &JUDGED),
    bearer("spirit_glue", "choice.spirit_glue", Sort::Glue, 40.0, LETS_GO, &JUDGED),
    bearer("water_glue", "choice.water_glue", Sort::Glue, 40.0, LETS_GO, &JUDGED),
    bearer("silicone_glue", "choice.silicone_glue", Sort::Glue, 100.0, LETS_GO, &JUDGED),
    bearer("tape", "choice.tape", Sort::Glue, 40.0, LETS_GO, &JUDGED),
    bearer("canvas", "choice.canvas", Sort::Block, 100.0, WEAKENS, &PRACTICE),
    // Polystyrene softens near 100 °C (recalled); its foam gives way well before.
    bearer("foam", "choice.foam", Sort::Block, 75.0, SOFTENS, &JUDGED),
    bearer("cork", "choice.cork", Sort::Block, 100.0, WEAKENS, &PRACTICE),
    bearer("hard_head", "choice.hard_head", Sort::Block, 60.0, SOFTENS, &JUDGED),
];

/// The bearer of a name.
pub fn bearer_named(name: &str) -> Option<&'static Bearer> {
    BEARERS.iter().find(|bearer| bearer.name == name)
}

/// The one that bears least among these names; unheard-of names are passed over.
pub fn weakest<'n>(names: impl IntoIterator<Item = &'n str>) -> Option<&'static Bearer> {
    names.into_iter().filter_map(bearer_named).min_by(|one, other| one.most.likely.total_cmp(&other.most.likely))
}
