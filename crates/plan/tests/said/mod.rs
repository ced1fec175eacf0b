//! Generated wigs and lots, as the lines a person might say, so that a failing one can be read and kept as a case.

#![allow(dead_code, reason = "each test binary uses its part")]
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test that fails says so")]

use measure::quantity::{Length, units};
use plan::shopping::{Answer, Job, Stop};
use proptest::prelude::*;

use crate::common::{Bench, today};

pub fn cm(length: Length) -> f64 {
    length.get::<units::centimeter>()
}

/// A figure said or left to be assumed.
pub fn said(name: &'static str, least: f64, most: f64, unit: &'static str) -> impl Strategy<Value = String> {
    prop_oneof![Just(String::new()), (least..most).prop_map(move |figure| format!("{name} = {figure:.1} {unit}"))]
}

pub fn one_of(name: &'static str, choices: &'static [&'static str]) -> impl Strategy<Value = String> {
    proptest::sample::select(choices).prop_map(move |choice| format!("{name} = {choice}"))
}

pub fn target(name: &'static str) -> impl Strategy<Value = String> {
    prop_oneof![
        Just(String::new()),
        (1.0..3.0).prop_map(move |times| format!("{name} = {times:.2}")),
        (80.0..300.0).prop_map(move |strands| format!("{name} = {strands:.0} /cm²")),
        (100.0..300.0).prop_map(move |percent| format!("{name} = {percent:.0} %")),
    ]
}

pub fn wigs() -> impl Strategy<Value = Vec<String>> {
    let base = (
        one_of("fibre", &["unknown", "modacrylic", "polyester", "human_hair"]),
        one_of("cap", &["open_wefted", "open_wefted", "wefted_lace_front", "wefted_closed_top"]),
        one_of("size", &["child", "small", "medium", "large", "extra_large"]),
        said("whole_weight", 90.0, 400.0, "g"),
        said("cap_weight", 20.0, 60.0, "g"),
        said("crimped_share", 0.0, 20.0, "%"),
        said("fineness", 40.0, 80.0, "dtex"),
        said("back.longest", 20.0, 80.0, "cm"),
        said("back.row_spacing", 8.0, 18.0, "mm"),
        said("crown.row_spacing", 5.0, 12.0, "mm"),
    );
    let look = (
        target("target"),
        target("crown.zone_target"),
        one_of("hairline", &["none", "glued_strip", "sewn_edge", "lace"]),
        one_of("parting", &["none", "weft_sides", "insert"]),
        one_of("parting_place", &["middle", "left", "right"]),
        one_of("worn", &["down", "tied_up"]),
        one_of("sewing", &["run", "run", "cut"]),
        one_of("parted", &["no", "no", "yes"]),
        said("edge_distance", 5.0, 40.0, "mm"),
        said("closest_rows", 4.0, 8.0, "mm"),
    );
    let lot = (
        said("lot A.pack_weight", 50.0, 150.0, "g"),
        said("lot A.pack_width", 60.0, 250.0, "cm"),
        said("lot A.weft_length", 25.0, 70.0, "cm"),
        said("lot A.lot_fineness", 40.0, 80.0, "dtex"),
        said("lot A.strands", 150.0, 500.0, "/cm"),
        one_of("lot A.made", &["machine", "machine", "flat", "hand_tied"]),
        one_of("lot A.pack_pieces", &["1", "1", "2", "4"]),
        prop_oneof![
            Just(String::new()),
            (0.1..1.5).prop_map(|rest| format!("count A whole_packs=0; opened={rest:.2} m"))
        ],
    );
    (base, look, lot).prop_map(|(base, look, lot)| {
        let (a, b, c, d, e, f, g, h, i, j) = base;
        let (k, l, m, n, o, p, q, r, s, t) = look;
        let (u, v, w, x, y, z, aa, count) = lot;
        let first = ["lot A.lot_name = Weft", "lot A.use_lot = yes", "lot A.pack_price = 20"].map(str::to_owned);
        let said = [a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s, t, u, v, w, x, y, z, aa, count];
        first.into_iter().chain(said).filter(|line| !line.is_empty()).collect()
    })
}

pub fn answered(lines: &[String]) -> Result<(Bench, Answer), Stop> {
    let bench = Bench::read(&lines.join("\n"));
    let answer = Job::new(bench.state(), bench.lots(), today()).finish()?;
    Ok((bench, answer))
}

/// A few hundred in all; `PROPTEST_CASES` asks for more.
pub fn cases() -> u32 {
    std::env::var("PROPTEST_CASES").ok().and_then(|cases| cases.parse().ok()).unwrap_or(30)
}
