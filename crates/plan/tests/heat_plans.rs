//! Plans of sets, cases in `tests/cases/heat_plans`: what is said of a wig, what must come out.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a check fails by panicking")]

mod common;

use measure::{
    prefs::Prefs,
    quantity::{
        ArealNumberDensity, ThermodynamicTemperature,
        units::{degree_celsius, per_square_centimeter},
    },
    say::{Say, Words},
};
use plan::{
    heat::{Ask, Ceiling, HeatPlan, Verdict, plan, refuse, tool},
    lengths::{Lengths, Problem, Reach, ZoneNeed, need, pattern},
    working::Ground,
};
use proptest::prelude::*;
use record::{
    history::entry::Of,
    trade::{fact::Sure, heat, sources::JUDGED},
    wig::{condition::Condition, figures::Wig, zone::Zone},
};

const WORDS: Words = Words(&[measure::words::ENGLISH, record::words::ENGLISH, plan::words::ENGLISH]);

fn words(say: &Say) -> String {
    say.words(&WORDS, &Prefs::default())
}

struct Planned {
    need: Result<ZoneNeed, Problem>,
    plan: Option<Result<HeatPlan, Problem>>,
}

/// Everything for the back of a wig, with the limit of its fibre.
fn planned(text: &str) -> Planned {
    let bench = common::Bench::read(text);
    let (state, lots) = (bench.state(), bench.lots());
    let wig = Wig::new(&state);
    let condition = Condition::now(&wig);
    let full = [ArealNumberDensity::new::<per_square_centimeter>(100.0); 8];
    let medium = tool::medium(&wig);
    let lengths = Lengths { wig: &wig, condition: &condition, lots: &lots, results: &[], full: &full, medium };
    let need = need(&lengths, Zone::Back);
    let limit = heat::limit(wig.fibre(), medium);
    let ceiling = Ceiling {
        most: ThermodynamicTemperature::new::<degree_celsius>(limit.likely),
        name: Say::key("choice.modacrylic"),
        ground: Ground::Assumed { source: &JUDGED, sure: Sure::Low },
        kept_out: false,
    };
    let plan = need.as_ref().ok().map(|need| {
        let wound = need.rod.is_some().then_some(need);
        plan(&Ask { wig: &wig, medium, need: wound, full: full[6], ceiling: Some(&ceiling), own: None })
    });
    Planned { need, plan }
}

fn check(name: &str, text: &str) {
    let (said, expected) = text.split_once("\n---\n").unwrap();
    let got = planned(said);
    let mut lines = Vec::new();
    match &got.need {
        Err(problem) => lines.push(format!("refused {}: {}", problem.slot, words(&problem.say))),
        Ok(need) => {
            lines.push(format!("length {}", words(&need.headline)));
            if let Some(rod) = &need.rod {
                let mm = |length: measure::quantity::Length| Prefs::default().gap(length);
                lines.push(format!(
                    "rod {}, {:.1} turns, comes out {} ({} to {})",
                    mm(rod.rod),
                    rod.turns,
                    mm(rod.comes_out[1]),
                    mm(rod.comes_out[0]),
                    mm(rod.comes_out[2])
                ));
            }
            lines.extend(need.cautions.iter().map(|caution| format!("mind {}", words(&caution.what))));
        }
    }
    match &got.plan {
        None => {}
        Some(Err(problem)) => lines.push(format!("refused {}: {}", problem.slot, words(&problem.say))),
        Some(Ok(plan)) => {
            lines.push(format!("{:?} {}", plan.verdict, words(&plan.headline)));
            lines.extend(plan.instead.iter().map(|say| format!("instead {}", words(say))));
            for (name, times) in [("heating", plan.heating), ("cooling", plan.cooling)] {
                if let Some([low, likely, high]) = times {
                    lines.push(format!("{name} {low:.0} {likely:.0} {high:.0} s"));
                }
            }
            let stops = plan.cautions.iter().filter(|caution| caution.weight > plan::working::Weight::Care);
            lines.extend(stops.map(|caution| format!("stop {}", words(&caution.what))));
            let curve = &plan.curve.samples;
            assert!(curve.windows(2).all(|pair| pair[0].time <= pair[1].time + 1e-9), "{name}: time runs backwards");
            assert!(curve.iter().all(|sample| sample.low <= sample.high + 1e-9), "{name}");
        }
    }
    let text = lines.join("\n") + "\n";
    if std::env::var_os("UPDATE_EXPECT").is_some() {
        let path = format!("{}/tests/cases/heat_plans/{name}.txt", env!("CARGO_MANIFEST_DIR"));
        std::fs::write(path, format!("{said}\n---\n{text}")).unwrap();
        return;
    }
    assert_eq!(text, expected, "{name}");
}

#[test]
fn plans_come_out_as_looked_at() {
    let folder = format!("{}/tests/cases/heat_plans", env!("CARGO_MANIFEST_DIR"));
    let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().path()).collect();
    files.sort();
    assert!(files.len() >= 12);
    for file in files {
        let name = file.file_stem().unwrap().to_str().unwrap().to_owned();
        check(&name, &std::fs::read_to_string(&file).unwrap());
    }
}

/// The windows themselves: no plan ever lets fibre meet more than its lowest published damage.
#[test]
fn no_default_plan_meets_published_damage() {
    use record::trade::{damage, fibres::NAMES, heat::Medium};
    for fibre in NAMES {
        for medium in Medium::ALL {
            let got = planned(&format!("fibre = {fibre}\nback.curl = curl\nset_medium = {}", medium.name()));
            let Some(Ok(plan)) = got.plan else { panic!("{fibre} {medium:?}") };
            if plan.verdict == Verdict::Stop {
                continue;
            }
            if let Some(harm) = damage::lowest_harm(record::trade::fibres::fibre(fibre), medium) {
                let meets = plan.tool.at_most.get::<degree_celsius>();
                assert!(meets <= harm.figure.low, "{fibre} {medium:?}: {meets} against {}", harm.figure.low);
            }
            assert!(plan.heating.is_none_or(|times| times[0] > 0.0 && times[0] <= times[1] && times[1] <= times[2]));
            assert!(
                plan.cooling.is_none_or(|times| times[0] <= times[1] && times[1] <= times[2]),
                "{:?}",
                plan.cooling
            );
        }
    }
}

#[test]
fn impossible_looks_and_tools_are_refused_at_their_field() {
    let cases = [
        ("set_temperature", Of::Wig, "fibre = modacrylic\nset_medium = iron\nset_temperature = 230 c"),
        ("set_temperature", Of::Wig, "fibre = polyester\nset_temperature = 99 c\naltitude = 2000 m"),
        ("altitude", Of::Wig, "fibre = polyester\naltitude = 3000 m\nset_temperature = 95 c"),
        ("rod", Of::Zone(Zone::Back), "back.curl = wave\nback.look_length = 10 cm\nback.rod = 60 mm"),
        ("curl_pitch", Of::Zone(Zone::Back), "back.curl = wave\nback.curl_diameter = 20 mm\nback.curl_pitch = 50 mm"),
        ("curl_start", Of::Zone(Zone::Back), "back.curl = curl\nback.look_length = 20 cm\nback.curl_start = 25 cm"),
        ("test_hangs", Of::Wig, "test_straight = 20 cm\ntest_hangs = 21 cm"),
        ("look_shortest", Of::Zone(Zone::Back), "back.look_length = 20 cm\nback.look_shortest = 25 cm"),
    ];
    for (slot, of, text) in cases {
        let bench = common::Bench::read(text);
        let state = bench.state();
        let key = record::history::entry::Key::new(common::wig_log(), slot, of).unwrap();
        let refused = refuse::check(&Wig::new(&state), key);
        assert!(refused.is_err(), "{slot}: {text}");
        let said = words(&refused.unwrap_err());
        assert!(
            !said.contains("lengths.") && !said.contains("heat.") && said.contains(|c: char| c.is_ascii_digit()),
            "{said}"
        );
    }
}

/// Common practice counts 30 to 60 rollers on a full head; area over section gives 38 rollers of 25 mm (600 cm², 63 mm long).
#[test]
fn a_full_head_takes_as_many_rollers_as_its_area_says() {
    let zones = Zone::ALL.map(|zone| format!("{0}.curl = curl\n{0}.rod = 25 mm", zone.name())).join("\n");
    let bench = common::Bench::read(&format!("fibre = modacrylic\n{zones}"));
    let state = bench.state();
    let wig = Wig::new(&state);
    let dome = plan::layout::dome(&wig, &plan::inputs::Corner::likely()).unwrap();
    let condition = Condition::now(&wig);
    let full = [ArealNumberDensity::new::<per_square_centimeter>(100.0); 8];
    let lengths =
        Lengths { wig: &wig, condition: &condition, lots: &[], results: &[], full: &full, medium: tool::medium(&wig) };
    let needs: Vec<ZoneNeed> = Zone::ALL.into_iter().map(|zone| need(&lengths, zone).unwrap()).collect();
    let pattern = pattern::pattern(&dome, &wig, &needs);
    assert!((32..=46).contains(&pattern.rods.len()), "{}", pattern.rods.len());
    for rod in &pattern.rods {
        assert!(rod.line.iter().flatten().chain(&rod.towards).all(|place| place.is_finite()));
    }
}

#[test]
fn weft_reaches_where_the_base_does_not() {
    let got = planned(
        "fibre = modacrylic\nback.longest = 30 cm\nback.look_length = 25 cm\nback.curl = curl\nback.curl_diameter = 20 mm\n\
         back.curl_pitch = 40 mm\nlot A.lot_name = Long\nlot A.weft_length = 60 cm\nlot A.use_lot = yes",
    );
    let need = got.need.unwrap();
    assert!(matches!(&need.reach, Reach::Weft { lot, .. } if lot == "Long"), "{:?}", need.reach);
}

/// How long the likely lock is heated; nothing where it is stopped.
fn heating(said: &str) -> Option<f64> {
    let got = planned(said);
    got.plan?.ok()?.heating.map(|times| times[1])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// A thicker lock is never there sooner, a hotter bath never later, and more of the look wanted never needs less hair.
    #[test]
    fn more_never_means_less(thick in 0.2..6.0f64, more in 1.05..2.0f64, heat in 82.0..86.0f64, pitch in 10.0..60.0f64) {
        let said = |thick: f64, heat: f64| {
            format!("fibre = modacrylic\nback.curl = curl\nset_temperature = {heat:.1} c\nlock_thickness = {thick:.2} mm")
        };
        if let (Some(thin), Some(thicker)) = (heating(&said(thick, heat)), heating(&said(thick * more, heat))) {
            prop_assert!(thin <= thicker + 0.5, "{thick}: {thin} against {thicker}");
        }
        if let (Some(cool), Some(hot)) = (heating(&said(thick, heat)), heating(&said(thick, heat + 2.0))) {
            prop_assert!(hot <= cool + 0.5, "{heat}: {cool} against {hot}");
        }
        let looks = |length: f64| {
            let text = format!("back.curl = curl\nback.curl_pitch = {pitch:.1} mm\nback.look_length = {length:.1} cm");
            planned(&text).need.map(|need| need.straight)
        };
        let (short, long) = (looks(10.0).unwrap(), looks(10.0 * more).unwrap());
        prop_assert!(short < long);
    }
}
