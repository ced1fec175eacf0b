//! Setting pattern and heat curve of an invented wig: goldens, frames, numbers.

#![allow(clippy::expect_used, reason = "a check fails by panicking")]

#[cfg(test)]
#[allow(dead_code, reason = "shared with the other drawings")]
mod support;

use measure::{
    prefs::{Degrees, Prefs},
    quantity::{ThermodynamicTemperature, units::degree_celsius},
    say::Say,
};
use plan::{
    heat::{Ask, Ceiling, HeatPlan, tool},
    lengths::{Lengths, ZoneNeed, need, pattern::pattern},
    working::Ground,
};
use record::wig::{condition::Condition, figures::Wig, zone::Zone};
use sheet::{
    curve,
    drawing::{Drawing, Voice, node::Form, paint, svg},
    setting,
};
use support::{BOB, WORDS, golden, metric};

const CURLED: &str = "
    back.curl = curl
    back.on_base = half_base
    crown.curl = curl
    crown.on_base = on_base
    top.curl = curl
    top.on_base = on_base
    left_side.curl = curl
    left_side.on_base = off_base
    right_side.curl = curl
    right_side.on_base = off_base
    right_side.rolled = back
    nape.curl = wave
";

fn planned(said: &str) -> (support::common::Bench, Vec<ZoneNeed>, HeatPlan) {
    let bench = support::common::Bench::read(&format!("{BOB}{CURLED}{said}"));
    let (state, lots) = (bench.state(), bench.lots());
    let wig = Wig::new(&state);
    let full = [plan::lengths::rods::usual_fullness(); 8];
    let medium = tool::medium(&wig);
    let condition = Condition::now(&wig);
    let lengths = Lengths { wig: &wig, condition: &condition, lots: &lots, results: &[], full: &full, medium };
    let needs: Vec<ZoneNeed> = Zone::ALL.into_iter().map(|zone| need(&lengths, zone).expect("a look")).collect();
    let limit = record::trade::heat::limit(wig.fibre(), medium);
    let most = ThermodynamicTemperature::new::<degree_celsius>(limit.likely);
    let ceiling = Ceiling { most, name: Say::key("choice.modacrylic"), ground: Ground::Said, kept_out: false };
    let back = needs.iter().find(|need| need.look.zone == Zone::Back);
    let ask = Ask { wig: &wig, medium, need: back, full: full[0], ceiling: Some(&ceiling), own: None };
    let plan = plan::heat::plan(&ask).expect("a plan");
    (bench, needs, plan)
}

fn drawings(said: &str, prefs: &Prefs) -> Vec<(String, Drawing)> {
    let voice = Voice { words: &WORDS, prefs };
    let (bench, needs, plan) = planned(said);
    let (answer, _) = support::answer(BOB);
    let prepared = &answer.likely.prepared;
    let state = bench.state();
    let pattern = pattern(&prepared.layout.dome, &Wig::new(&state), &needs);
    let mut all = Vec::new();
    for (at, drawing) in setting::views(&prepared.layout, &prepared.fullness, &pattern, &voice).into_iter().enumerate()
    {
        all.push((format!("setting-{at}"), drawing));
    }
    for (name, width) in [("phone", 86.0), ("paper", 180.0)] {
        all.extend(curve::chart(&plan.curve, &voice, width).map(|drawing| (format!("curve-{name}"), drawing)));
    }
    all
}

#[test]
fn drawings_are_as_they_were_looked_at() {
    for (name, drawing) in drawings("", &metric()) {
        let text = svg::write(&drawing, &WORDS, &metric(), Form::Standalone);
        if let Some(folder) = std::env::var_os("DRAW_TO") {
            std::fs::write(std::path::Path::new(&folder).join(format!("{name}.svg")), &text).expect("written");
        }
        if ["setting-3", "curve-phone"].contains(&name.as_str()) {
            golden(&format!("tests/golden/{name}.svg"), &text);
        }
    }
}

#[test]
fn all_lies_within_its_frame_and_is_painted() {
    let fahrenheit = Prefs { degrees: Degrees::Fahrenheit, ..metric() };
    for prefs in [metric(), fahrenheit] {
        for said in ["", "set_medium = iron\nset_temperature = 85 c", "set_temperature = 99 c"] {
            let drawn = drawings(said, &prefs);
            assert!(drawn.iter().any(|(name, _)| name.starts_with("curve")), "{said}");
            for (name, drawing) in drawn {
                let voice = Voice { words: &WORDS, prefs: &prefs };
                let [left, top, width, height] = drawing.view_box;
                for shape in &drawing.shapes {
                    assert!(paint::of(shape.class).is_some(), "{name}: no paint for {}", shape.class);
                    let [l, t, r, b] = shape.bounds(&voice).expect("no empty shapes");
                    let within =
                        l >= left - 0.2 && t >= top - 0.2 && r <= left + width + 0.2 && b <= top + height + 0.2;
                    assert!(within, "{name} {said}: {shape:?} {:?}", drawing.view_box);
                }
                let svg = svg::write(&drawing, &WORDS, &prefs, Form::Standalone);
                assert!(!svg.contains("sheet.") && !svg.contains("choice.") && !svg.contains("NaN"), "{name}: {svg}");
            }
        }
    }
}
