//! Drawings of colour: goldens that were looked at, hostile words, colours that stay readable without colour.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that fails says so")]

#[allow(dead_code, reason = "each test binary uses its part")]
mod support;

use ::plan::{
    care,
    dye::{self, Asked, Plan, hair::length_of, level},
    fullness::fullness,
    inputs::{Base, Corner},
    layout::{dome, lay_out},
};
use record::{
    trade::fibres::fibre,
    wig::{condition::Condition, figures::Wig, zone::Zone},
    workshop::dyes::{Dye, dyes},
};
use sheet::{
    colour::{bath, fall, label, strip},
    drawing::{Drawing, Voice, node::Form, svg},
};
use support::{WORDS, common::Bench, golden, metric};

const ROSE: &str = "
    name = Try
    fibre = modacrylic
    base_shade = #f0e6d2
    colour_along = #f0e6d2 to 40, #e0a0b0 to 70, #802040 smooth
    nape.zone_colour_along = #f0e6d2 to 60, #802040
    whole_weight = 180 g
    cap_weight = 35 g
    pot = 10 L
    lot D.stock_name = rose <b>
    lot D.stock_class = disperse
    lot D.stock_batch = 7 & 8
    lot D.stock_packet = 20 g
    lot D.use_dye = yes
    work dye dye_class=disperse; stock=D; dye_amount=1.5 g
";

/// The drawings of a wig dyed rose.
fn drawings() -> Vec<(&'static str, Drawing)> {
    let bench = Bench::read(ROSE);
    let (state, workshop, lots) = (bench.state(), bench.workshop(), bench.lots());
    let wig = Wig::new(&state);
    let corner = Corner::likely();
    let base = Base::at(&wig, &corner);
    let layout = lay_out(dome(&wig, &corner).unwrap(), &base);
    let full = fullness(&wig, &layout, &base, &lots, &corner);
    let shelf: Vec<Dye> = dyes(&workshop, [&state]);
    let condition = Condition::now(&wig);
    let asked = Asked {
        bench: &care::Bench { wig: &wig, lots: &lots, locks: &[], labels: &[] },
        condition: &condition,
        layout: &layout,
        fullness: &full,
        dyes: &shelf,
        locks: &[],
    };
    let plan: Plan = dye::plan(&asked).unwrap();
    assert_eq!(fibre("modacrylic").name, plan.met[0].fibre.name);
    let hair = dye::hair::hair(&wig, &condition, &layout, &full, &lots, &corner);
    let rows = level::rows(&layout);
    let prefs = metric();
    let voice = Voice { words: &WORDS, prefs: &prefs };
    let smooth = Zone::ALL.map(|zone| wig.colour_along(zone).is_some_and(|along| along.smooth()));
    let strips: Vec<strip::Strip> = [Zone::Back, Zone::Nape]
        .into_iter()
        .map(|zone| strip::Strip {
            zones: vec![zone],
            column: plan.columns.iter().find(|column| column.zone == zone).unwrap().clone(),
            smooth: smooth[zone as usize],
            shortest: base.shortest[zone as usize],
            longest: length_of(&hair, zone),
        })
        .collect();
    let fall = |dipping| fall::Fall {
        dome: &layout.dome,
        rows: &rows,
        columns: &plan.columns,
        long: fall::lengths(|zone| length_of(&hair, zone)),
        smooth,
        dipping,
    };
    let dipping = plan.baths[0].dipping.as_ref();
    assert!(dipping.is_some());
    vec![
        ("strip", strip::drawing(&strips, &voice, 86.0)),
        ("fall", fall::drawing(&fall(None), &voice)),
        ("dip", fall::drawing(&fall(dipping), &voice)),
        ("bath", bath::drawing(&plan.baths[0].legs, &voice, 86.0)),
        ("label", label::drawing(&shelf[0], Some(support::common::today()), &voice)),
    ]
}

#[test]
fn drawings_are_as_they_were_looked_at() {
    for (name, drawing) in drawings() {
        let text = svg::write(&drawing, &WORDS, &metric(), Form::Standalone);
        assert!(!text.contains("<b>") && !text.contains("style=") && !text.contains("NaN"), "{name}");
        assert!(!text.contains("sheet.") && !text.contains("dye."), "{name}: a key was not found");
        golden(&format!("tests/golden/colour-{name}.svg"), &text);
    }
}

/// A colour is never said by itself: its number stands beside it.
#[test]
fn colours_have_their_numbers_beside_them() {
    let strip = drawings().into_iter().find(|(name, _)| *name == "strip").unwrap().1;
    let text = svg::write(&strip, &WORDS, &metric(), Form::Embedded);
    for shade in ["#f0e6d2 from", "#e0a0b0 from", "#802040 from"] {
        assert!(text.contains(shade), "{shade}");
    }
}
