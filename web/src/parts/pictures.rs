//! The drawings of the pages, made by the sheet from what was reckoned.
//!
//! What it is: one function for each place a drawing stands. What it is not: the drawing.

use measure::{prefs::Prefs, quantity::Length};
use plan::{
    dome::Section,
    fullness::{Fullness, Growth, ZoneFullness},
    layout::Layout,
    shopping::Answer,
};
use record::{
    history::fold::State,
    wig::{sewn, zone::Zone},
    workshop::lots::Lot,
};
use sheet::{
    cap::{self, Map, Show},
    cutting::{self, Bench},
    depths,
    drawing::{Drawing, Voice},
};

use crate::shell::talk::WORDS;

/// Widths the page's columns come near to, mm: a CSS pixel is 25.4/96 mm.
const WIDE: f64 = 180.0;
const NARROW: f64 = 86.0;

/// How wide a drawing may be laid out on this screen.
pub fn width() -> f64 {
    let inner = web_sys::window().and_then(|window| window.inner_width().ok()).and_then(|width| width.as_f64());
    if inner.unwrap_or(1024.0) < 760.0 { NARROW } else { WIDE }
}

/// Rows sewn already, where their place was said.
fn sewn(state: &State) -> Vec<(Section, Length)> {
    sewn::sewn(state)
        .into_iter()
        .filter(|weft| weft.sewn_as == "row")
        .filter_map(|weft| {
            let section = if weft.section? == "top" { Section::Top } else { Section::BackAndSides };
            Some((section, weft.place?))
        })
        .collect()
}

/// The cap's fullness from all sides, its legend last.
pub fn cap(state: &State, layout: &Layout, fullness: &Fullness, chosen: Option<Zone>, prefs: &Prefs) -> Vec<Drawing> {
    let sewn = sewn(state);
    let map = Map { layout, fullness, placement: None, reached: None, sewn: &sewn, show: Show::Fullness, chosen };
    with_legend(&map, prefs)
}

/// The rows to sew, from all sides, the legend last.
pub fn rows(state: &State, answer: &Answer, prefs: &Prefs) -> Vec<Drawing> {
    let prepared = &answer.likely.prepared;
    let sewn = sewn(state);
    let map = Map {
        layout: &prepared.layout,
        fullness: &prepared.fullness,
        placement: Some(&prepared.placement),
        reached: Some(&answer.reached),
        sewn: &sewn,
        show: Show::Rows,
        chosen: None,
    };
    with_legend(&map, prefs)
}

fn with_legend(map: &Map<'_>, prefs: &Prefs) -> Vec<Drawing> {
    let voice = Voice { words: &WORDS, prefs };
    let mut drawings: Vec<Drawing> = cap::views(map, &voice).into_iter().map(|(_, drawing)| drawing).collect();
    drawings.push(cap::legend(map, &voice));
    drawings
}

/// The weft laid out.
pub fn laid_out(answer: &Answer, lots: &[Lot], prefs: &Prefs) -> Drawing {
    let bench = Bench { laid: &answer.laid, rows: &answer.likely.prepared.placement.rows, lots };
    cutting::drawing(&bench, &Voice { words: &WORDS, prefs }, width())
}

/// A zone's fullness along its length.
pub fn depths(zone: &ZoneFullness, more: Option<&[Growth]>, prefs: &Prefs) -> Drawing {
    depths::chart(zone.zone, &depths::depths(zone, more), &Voice { words: &WORDS, prefs }, NARROW)
}
