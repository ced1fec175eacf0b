//! The demo's plan, the same everywhere: `golden/<name>.plan.json` is what the browser test holds the page against.
//!
//! What it is: the terminal's answer, byte for byte, and its agreement with the planner. What it is not: a judgement of it.

#![allow(clippy::expect_used, clippy::panic, clippy::print_stderr, reason = "a test")]

use std::{fs, process::Command};

use format::wig_file::read_wig;
use measure::{civil::Date, prefs::Prefs};
use plan::{pace::Paces, shopping::Job};
use record::{history::fold::fold, workshop::lots::lots};
use serde_json::Value;
use weftbook_tests::{demo, golden, places};

const TODAY: &str = "2026-11-25";

fn weftbook(args: &[&str]) -> (i32, String) {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let output = Command::new(cargo)
        .args(["run", "--quiet", "--package", "weftbook-cli", "--bin", "weftbook", "--"])
        .args(args)
        .current_dir(places::root())
        .output()
        .expect("the program");
    // What it complains of, or the compiler warns of, is worth seeing where the test fails.
    eprint!("{}", String::from_utf8_lossy(&output.stderr));
    (output.status.code().expect("an exit status"), String::from_utf8(output.stdout).expect("text"))
}

#[test]
fn the_terminal_answers_as_expected() {
    let (status, text) = weftbook(&["plan", "demo-data/copper-bob.wig.json", "--json", "--today", TODAY]);
    assert_eq!(status, 0);
    golden::check(&places::golden().join("copper-bob.plan.json"), &text).unwrap_or_else(|reason| panic!("{reason}"));
    let (status, text) = weftbook(&["check", "demo-data/copper-bob.wig.json"]);
    assert_eq!(status, 0, "{text}");
}

#[test]
fn the_terminal_says_what_the_planner_says() {
    let text = fs::read_to_string(places::demos().join("copper-bob.wig.json")).expect("the demo");
    let file = read_wig(&text).expect("reads");
    let state = fold(&file.log());
    let lots = lots(&fold(&file.workshop()), [&state]);
    let today = Date::read(TODAY).expect("a day");
    let paces = Paces::learn([&state]);
    let answer = Job::new(state, lots.clone(), today).at_pace(paces).finish().expect("an answer");
    let summary = answer.summary(&lots);

    let (_, said) = weftbook(&["plan", "demo-data/copper-bob.wig.json", "--json", "--today", TODAY]);
    let said: Value = serde_json::from_str(&said).expect("JSON");
    assert_eq!(said["headline"], answer.headline.words(&demo::WORDS, &Prefs::default()));
    assert_eq!(said["outcome"], summary.outcome);
    assert_eq!(said["packs"]["low"], Value::from(summary.packs_low));
    assert_eq!(said["packs"]["likely"], Value::from(summary.packs_likely));
    assert_eq!(said["packs"]["high"], Value::from(summary.packs_high));
    assert_eq!(said["cost_hundredths"], Value::from(summary.cost_hundredths));
    assert_eq!(said["needed_mm"]["likely"], Value::from(summary.needed_mm[1]));
    assert_eq!(said["order_by"], Value::from(summary.order_by.clone()));
    let lengths: Vec<u64> = summary.rows.iter().map(|row| row.length_mm).collect();
    let rows = said["rows"].as_array().expect("rows");
    assert_eq!(rows.iter().filter_map(|row| row["length_mm"].as_u64()).collect::<Vec<_>>(), lengths);
    for (zone, reached) in said["zones"].as_array().expect("zones").iter().zip(&summary.zones) {
        assert_eq!(zone["zone"], reached.zone);
        assert_eq!(zone["reached"].as_f64(), Some(reached.reached));
    }
}
