//! How far an answer may be off: what must hold of every bound. Generated wigs and lots as in `shopping_properties`.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that fails says so")]

mod common;
mod said;

use common::Bench;
use measure::quantity::{Length, units};
use plan::{
    inputs::{Corner, End, Input},
    shopping::{Answer, Heads, Way, parted, prepare},
};
use proptest::prelude::*;
use record::wig::{figures::Wig, zone::Zone};
use said::{answered, cases, cm, wigs};

/// Rows sewn here and there.
fn sewn_rows() -> impl Strategy<Value = Vec<String>> {
    let zone = proptest::sample::select(vec!["back", "crown", "nape", "left_side"]);
    let row = (zone, 5.0..25.0)
        .prop_map(|(zone, length)| format!("sew sewn_as=row; zone={zone}; length={length:.1} cm; lot=A"));
    prop_oneof![Just(Vec::new()), proptest::collection::vec(row, 1..4)]
}

/// Figures that are closed by saying them exactly as they are assumed: all that are promised (head and rows are not).
const CLOSED: [&str; 10] = [
    "whole_weight",
    "cap_weight",
    "crimped_share",
    "fineness",
    "fibre_return",
    "back.longest",
    "lot A.pack_weight",
    "lot A.pack_width",
    "lot A.weft_length",
    "lot A.lot_fineness",
];

/// The answer with a figure unsaid, and with it said as it was assumed.
fn open_and_closed(lines: &[String], closed: &str) -> Option<(Answer, Answer)> {
    let mut lines: Vec<String> =
        lines.iter().filter(|line| !line.starts_with(&format!("{closed} ="))).cloned().collect();
    let (bench, wide) = answered(&lines).ok()?;
    let (state, lots) = (bench.state(), bench.lots());
    let (wig, lot) = (Wig::new(&state), lots.first()?);
    lines.push(match closed {
        "whole_weight" => format!("whole_weight = {:.9} g", wig.whole_weight().likely.get::<units::gram>()),
        "cap_weight" => format!("cap_weight = {:.9} g", wig.cap_weight().likely.get::<units::gram>()),
        "crimped_share" => format!("crimped_share = {:.9} %", wig.crimped_share().likely.get::<units::ratio>() * 100.0),
        "fineness" => format!("fineness = {:.9} dtex", wig.fineness().likely.get::<units::kilogram_per_meter>() * 1e7),
        "fibre_return" => format!("fibre_return = {:.9} cm", cm(wig.fibre_return().likely)),
        "back.longest" => format!("back.longest = {:.9} cm", cm(wig.longest(Zone::Back).likely)),
        "lot A.pack_weight" => format!("lot A.pack_weight = {:.9} g", lot.weight.likely.get::<units::gram>()),
        "lot A.pack_width" => format!("lot A.pack_width = {:.9} cm", cm(lot.width.likely)),
        "lot A.weft_length" => format!("lot A.weft_length = {:.9} cm", cm(lot.hanging.likely)),
        "lot A.lot_fineness" => {
            format!("lot A.lot_fineness = {:.9} dtex", lot.fineness.likely.get::<units::kilogram_per_meter>() * 1e7)
        }
        other => panic!("{other}: nothing closes that"),
    });
    let (_, narrow) = answered(&lines).ok()?;
    Some((wide, narrow))
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(cases()) })]

    #[test]
    fn each_bound_is_a_solve_at_its_corner(lines in wigs()) {
        let Ok((bench, answer)) = answered(&lines) else { return Ok(()) };
        let (state, lots) = (bench.state(), bench.lots());
        let wig = Wig::new(&state);
        let mut heads = Heads::fit(&wig).unwrap();
        let spread = &answer.spread;
        for (corner, bound) in [(spread.least, spread.low), (spread.most, spread.high)] {
            let layout = heads.layout(&wig, &corner).unwrap().clone();
            if let Ok(prepared) = prepare(&wig, &lots, layout, &corner, parted(&wig, &lots), false) {
                prop_assert_eq!(prepared.amounts.total(), bound);
            }
        }
    }

    #[test]
    fn a_wider_input_never_narrows_the_answer(mut lines in wigs(), which in 0..CLOSED.len(), sewn in sewn_rows()) {
        lines.extend(sewn);
        // Saying a figure as it was assumed closes its spread: the answer with it unsaid is the wider one.
        let Some((wide, narrow)) = open_and_closed(&lines, CLOSED[which]) else { return Ok(()) };
        let hair = Length::new::<units::micrometer>(1.0);
        prop_assert!(wide.spread.low <= narrow.spread.low + hair, "{:?} {:?}", wide.spread.low, narrow.spread.low);
        prop_assert!(wide.spread.high >= narrow.spread.high - hair, "{:?} {:?}", wide.spread.high, narrow.spread.high);
        if wide.likely.prepared.way == Way::Run {
            prop_assert!(wide.packs.low <= narrow.packs.low, "{:?} {:?}", wide.packs, narrow.packs);
            let no_less = wide.packs.high.is_none() || narrow.packs.high.is_some_and(|high| wide.packs.high >= Some(high));
            prop_assert!(no_less, "{:?} {:?}", wide.packs, narrow.packs);
        }
    }
}

#[test]
fn a_settled_input_stays_inside_at_any_corner() {
    let bench =
        Bench::read("cap = open_wefted\ntarget = 1.5\nhairline = sewn_edge\nlot A.lot_name = W\nlot A.use_lot = yes");
    let (state, lots) = (bench.state(), bench.lots());
    let wig = Wig::new(&state);
    let mut heads = Heads::fit(&wig).unwrap();
    let spread = plan::shopping::spread(&wig, &lots, &mut heads, false).unwrap();
    for input in Input::ALL {
        for corner in [spread.least, spread.most] {
            let settled: Corner = corner.with(input, End::Likely);
            let layout = heads.layout(&wig, &settled).unwrap().clone();
            let metres = plan::shopping::metres(&wig, &lots, &layout, &settled, false).unwrap();
            assert!(spread.low <= metres && metres <= spread.high, "{input:?}");
        }
    }
}
