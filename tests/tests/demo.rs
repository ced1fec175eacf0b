//! The demo wigs: each file is what its lines say, reads clean, and shows what it should.

#![allow(clippy::expect_used, clippy::panic, reason = "a test")]

use std::{collections::BTreeSet, fs, path::PathBuf};

use format::wig_file::{WigFile, read_wig};
use measure::civil::Date;
use plan::shopping::{Answer, Job, Outcome};
use record::{
    history::{
        entry::{Body, Of},
        fold::{State, fold},
    },
    wig::{figures::Wig, work::sew_weft::SewWeft, zone::Zone},
    workshop::lots::{Lot, lots},
};
use weftbook_tests::{demo, golden, places};

/// The day the demo's expected plan is reckoned on.
const TODAY: &str = "2026-11-25";

fn lines() -> Vec<PathBuf> {
    let mut paths: Vec<PathBuf> = fs::read_dir(places::demos())
        .expect("the folder of demo wigs")
        .map(|entry| entry.expect("a file").path())
        .filter(|path| path.extension().is_some_and(|ext| ext == "lines"))
        .collect();
    paths.sort();
    assert!(!paths.is_empty());
    paths
}

#[test]
fn each_file_is_what_its_lines_say() {
    for path in lines() {
        let text = fs::read_to_string(&path).expect("lines");
        assert!(text.lines().take(5).any(|line| line.contains("INVENTED")), "{}: say so at its top", path.display());
        let file = demo::wig_file(&text).unwrap_or_else(|reason| panic!("{}, {reason}", path.display()));
        golden::check(&path.with_extension("wig.json"), &file).unwrap_or_else(|reason| panic!("{reason}"));
    }
}

/// A demo wig as the pages see it.
struct Bench {
    file: WigFile,
    state: State,
    lots: Vec<Lot>,
}

fn bench(path: &PathBuf) -> Bench {
    // From the lines, so that this does not race with the test that writes the files.
    let text = demo::wig_file(&fs::read_to_string(path).expect("lines")).expect("a wig file");
    let file = read_wig(&text).expect("reads");
    let state = fold(&file.log());
    let lots = lots(&fold(&file.workshop()), [&state]);
    Bench { file, state, lots }
}

fn answer(bench: &Bench) -> Answer {
    let today = Date::read(TODAY).expect("a day");
    Job::new(bench.state.clone(), bench.lots.clone(), today).finish().expect("an answer")
}

#[test]
fn each_demo_reads_clean_and_has_an_identity_of_its_own() {
    let mut seen = BTreeSet::new();
    for path in lines() {
        let Bench { file, state, .. } = bench(&path);
        assert!(file.report.is_clean(), "{:?}", file.report);
        assert!(file.demo, "marked as a demo");
        assert_eq!(state.oddities(), [], "{}", path.display());
        assert_eq!(fold(&file.workshop()).oddities(), [], "{}", path.display());
        assert!(seen.insert(file.wig), "{}: another demo has this number", path.display());
    }
}

#[test]
fn the_copper_bob_shows_every_page() {
    let bench = bench(&places::demos().join("copper-bob.lines"));
    let wig = Wig::new(&bench.state);
    assert!(!wig.name().is_empty() && wig.character().contains("invented") && wig.base_price().is_some());
    assert_eq!((wig.fibre().name, wig.cap().name, wig.size()), ("modacrylic", "open_wefted", "medium"));
    let due = wig.due().expect("a day it must be ready");
    assert!(Date::read(TODAY).expect("a day").days_until(due) > 365, "far in the future");

    // Some measured, some assumed, typed as tapes and people differ.
    assert!(wig.girth().origin.is_said() && !wig.head("nape_width").origin.is_said());
    assert!(wig.whole_weight().origin.is_said() && !wig.cap_weight().origin.is_said());
    let typed: Vec<String> = bench.state.values().filter_map(|(_, held)| Some(held.value.as_ref()?.text())).collect();
    assert!(typed.iter().any(|text| text.ends_with(" in") && text.contains('/')), "an inch and its fraction");
    assert!(typed.iter().any(|text| text.contains(',') && text.ends_with(" cm")), "a comma for decimals");

    // The look.
    assert!(wig.held("zone_target", Of::Zone(Zone::Crown)).is_some(), "a zone with a target of its own");
    assert_eq!((wig.hairline(), wig.parting().kind, wig.parting().place), ("glued_strip", "weft_sides", "left"));

    // A counted rest of another dye lot, and one in the shop.
    assert_eq!(bench.lots.len(), 2);
    assert_ne!(bench.lots[0].dye_lot, bench.lots[1].dye_lot);
    assert_eq!(bench.lots.iter().filter(|lot| lot.left.counted.is_some()).count(), 1);
    assert_eq!(bench.lots.iter().filter(|lot| lot.price.is_some() && lot.still_sold).count(), 1);
    assert!(wig.main_lot().is_some());

    // A history of some weeks, one entry put right and one undone.
    let works = bench.state.works();
    let days: BTreeSet<Date> = works.iter().map(|done| done.done.date()).collect();
    let (first, last) = (days.first().expect("work"), days.last().expect("work"));
    assert!(days.len() >= 4 && first.days_until(*last) >= 21, "{days:?}");
    assert!(works.iter().filter(|done| SewWeft::of(&done.work).is_some()).count() >= 3);
    assert_eq!(works.iter().filter(|done| done.amended).count(), 1);
    let entries = bench.file.log();
    let undone =
        entries.entries().filter(|entry| matches!(&entry.body, Body::Amend(amendment) if amendment.to.is_none()));
    assert_eq!(undone.count(), 1);
}

#[test]
fn the_copper_bob_leaves_something_to_buy_and_something_to_settle() {
    let bench = bench(&places::demos().join("copper-bob.lines"));
    let answer = answer(&bench);
    assert_eq!(answer.outcome, Outcome::Buy);
    assert!(answer.packs.high > answer.packs.likely, "{:?}", answer.packs);
    assert!(!answer.settle.is_empty(), "a measurement would settle it");
    assert!(answer.cost.is_some() && answer.order_by.is_some_and(|(_, late)| !late));
    assert!(answer.likely.prepared.placement.rows.len() >= 3);
    assert!(answer.laid.iter().any(|weft| weft.owned), "the rest on the shelf is used");
    assert!(answer.likely.plan.is_some_and(|plan| plan.proved));
}
