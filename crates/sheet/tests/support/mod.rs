//! Wigs for the drawings' tests, and golden files.
//!
//! What it is: helpers. What it is not: a test.

#[path = "../../../plan/tests/common.rs"]
#[allow(missing_docs, reason = "shared with the tests of plan")]
pub mod common;

pub mod plan;

use std::path::PathBuf;

use ::plan::{
    dome::Section,
    fullness::Growth,
    shopping::{Answer, Job},
};
use measure::{prefs::Prefs, say::Words};

pub const WORDS: Words = Words(&[
    measure::words::ENGLISH,
    record::words::ENGLISH,
    ::plan::words::ENGLISH,
    ::plan::colour::words::ENGLISH,
    sheet::words::ENGLISH,
]);

/// An invented bob with a side part, thickened by a third.
pub const BOB: &str = "
    name = Try
    fibre = modacrylic
    cap = open_wefted
    size = medium
    target = 1.3
    hairline = glued_strip
    parting = weft_sides
    parting_place = left
    lot A.lot_name = Copper weft
    lot A.lot_fibre = modacrylic
    lot A.pack_weight = 100 g
    lot A.pack_width = 1 m
    lot A.weft_length = 45 cm
    lot A.pack_price = 18.99
    lot A.use_lot = yes
";

/// The same, cut to rows, twice as full, with weft at hand, three rows sewn.
pub const CUT: &str = "
    name = Try
    fibre = modacrylic
    cap = open_wefted
    size = medium
    target = 2
    sewing = cut
    hairline = glued_strip
    parting = weft_sides
    parting_place = right
    lot A.lot_name = Copper weft
    lot A.lot_fibre = modacrylic
    lot A.pack_weight = 100 g
    lot A.pack_width = 2.5 m
    lot A.weft_length = 45 cm
    lot A.pack_price = 18.99
    lot A.use_lot = yes
    count A whole_packs=1; opened=40 cm
    sew sewn_as=row; length=24 cm; lot=A; section=back_and_sides; place=6 cm
";

pub fn answer(text: &str) -> (Answer, common::Bench) {
    let bench = common::Bench::read(text);
    let answer = Job::new(bench.state(), bench.lots(), common::today()).finish().expect("an answer");
    (answer, bench)
}

pub fn metric() -> Prefs {
    Prefs::default()
}

/// Compares with a file; with `UPDATE_EXPECT=1` writes it.
pub fn golden(file: &str, text: &str) {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(file);
    if std::env::var_os("UPDATE_EXPECT").is_some() {
        std::fs::write(&path, text).expect("golden file written");
        return;
    }
    let there = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(there == text, "{} differs; look at it and run again with UPDATE_EXPECT=1", path.display());
}

/// Each drawing of a wig, by name.
pub fn drawings(text: &str, prefs: &Prefs) -> Vec<(String, sheet::drawing::Drawing)> {
    use sheet::{cap, cutting, depths, drawing::Voice};
    let (answer, bench) = answer(text);
    let (prepared, lots) = (&answer.likely.prepared, bench.lots());
    let voice = Voice { words: &WORDS, prefs };
    let sewn: Vec<_> = bench
        .state()
        .works()
        .iter()
        .filter_map(|done| record::wig::work::sew_weft::SewWeft::of(&done.work))
        .filter_map(|weft| Some((Section::BackAndSides, weft.place?)))
        .collect();
    let mut map = cap::Map {
        layout: &prepared.layout,
        fullness: &prepared.fullness,
        placement: Some(&prepared.placement),
        reached: Some(&answer.reached),
        sewn: &sewn,
        show: cap::Show::Rows,
        chosen: None,
    };
    let mut drawn = vec![("rows".to_owned(), cap::all(&map, &voice))];
    for (view, drawing) in cap::views(&map, &voice) {
        drawn.push((format!("rows-{view:?}").to_lowercase(), drawing));
    }
    map.show = cap::Show::Fullness;
    map.chosen = Some(record::wig::zone::Zone::Back);
    drawn.push(("fullness".to_owned(), cap::all(&map, &voice)));
    let bench = cutting::Bench { laid: &answer.laid, rows: &prepared.placement.rows, lots: &lots };
    for (name, width) in [("phone", 95.0), ("paper", 180.0)] {
        drawn.push((format!("weft-{name}"), cutting::drawing(&bench, &voice, width)));
    }
    let zone = &prepared.fullness.zones[record::wig::zone::Zone::Back as usize];
    let reached = answer.reached[zone.zone as usize];
    let more = [Growth { root: reached - zone.now(), shortest: prepared.weft.hanging, longest: prepared.weft.hanging }];
    let depths = depths::depths(zone, Some(&more));
    drawn.push(("depths".to_owned(), depths::chart(zone.zone, &depths, &voice, 95.0)));
    drawn
}

/// Drawings of the bob's head with the plan said by hand, by name.
pub fn by_hand(prefs: &Prefs) -> Vec<(String, sheet::drawing::Drawing)> {
    use sheet::{cap, cutting, depths, drawing::Voice};
    let (answer, bench) = answer(BOB);
    let (prepared, lots) = (&answer.likely.prepared, bench.lots());
    let voice = Voice { words: &WORDS, prefs };
    let placement = plan::placement(&prepared.layout);
    let sewn = [(Section::BackAndSides, measure::quantity::Length::new::<measure::quantity::units::millimeter>(84.0))];
    let reached = prepared.fullness.zones.iter().map(|zone| zone.now() * 1.5).collect::<Vec<_>>();
    let reached = reached.try_into().expect("eight zones");
    let mut map = cap::Map {
        layout: &prepared.layout,
        fullness: &prepared.fullness,
        placement: Some(&placement),
        reached: Some(&reached),
        sewn: &sewn,
        show: cap::Show::Rows,
        chosen: None,
    };
    let mut drawn = vec![("rows".to_owned(), cap::all(&map, &voice))];
    for (view, drawing) in cap::views(&map, &voice) {
        drawn.push((format!("rows-{view:?}").to_lowercase(), drawing));
    }
    map.show = cap::Show::Fullness;
    map.chosen = Some(record::wig::zone::Zone::Back);
    drawn.push(("fullness".to_owned(), cap::all(&map, &voice)));
    let laid = plan::laid();
    let bench = cutting::Bench { laid: &laid, rows: &placement.rows, lots: &lots };
    for (name, width) in [("phone", 95.0), ("paper", 180.0)] {
        drawn.push((format!("weft-{name}"), cutting::drawing(&bench, &voice, width)));
    }
    let depth = |now, plan, wanted: Option<f64>| depths::Depth {
        now: plan::full(now),
        plan: Some(plan::full(plan)),
        wanted: wanted.map(plan::full),
    };
    let depths = [depth(68.0, 95.0, Some(88.0)), depth(60.0, 87.0, None), depth(19.0, 46.0, None)];
    drawn.push(("depths".to_owned(), depths::chart(record::wig::zone::Zone::Back, &depths, &voice, 95.0)));
    drawn
}
