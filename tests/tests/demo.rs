//! The demo wigs: each file is what its lines say, reads clean, and shows what it should.

#![allow(clippy::expect_used, clippy::panic, reason = "a test")]

use std::{collections::BTreeSet, fs, path::PathBuf};

use format::wig_file::{WigFile, read_wig};
use measure::civil::Date;
use plan::{
    care,
    shopping::{Answer, Job, Outcome},
    working::Weight,
};
use record::{
    history::{
        entry::{Body, LogId, Of},
        fold::{State, fold},
    },
    id::StepId,
    trade::heat::Medium,
    wig::{
        condition::Condition,
        figures::Wig,
        steps::{Progress, steps},
        work::{RESULTS, Work, sew_weft::SewWeft},
        zone::Zone,
    },
    workshop::{
        locks::{self, TestLock},
        lots::{Lot, lots},
    },
};
use weftbook_tests::{demo, golden, lines::Lines, places};

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

/// What a demo's history must show.
struct Story {
    name: &'static str,
    /// Kinds of work, at least.
    kinds: &'static [&'static str],
    /// What is next in its plan of work; nothing where it is finished.
    next: Option<&'static str>,
    results: &'static [&'static str],
    overruled: &'static [&'static str],
    /// The hottest that held and the coolest that harmed, °C, by its own locks.
    window: Option<(Medium, f64, f64)>,
    /// Days from its first entry to its last, at least.
    days: i64,
}

const STORIES: &[Story] = &[
    Story {
        name: "copper-bob",
        kinds: &["base", "test_lock", "wash", "straighten", "sew_weft", "fitting", "store"],
        next: Some("sew_weft"),
        results: &["good", "partly"],
        overruled: &[],
        window: Some((Medium::Steam, 82.0, 88.0)),
        days: 60,
    },
    Story {
        name: "storm-mane",
        kinds: &["gather", "heat_set", "release", "dress", "product", "worn", "reset", "wash", "unpick", "store"],
        next: None,
        results: &["good", "partly", "failed"],
        overruled: &["dye_lots_mixed"],
        window: Some((Medium::Iron, 130.0, 140.0)),
        days: 200,
    },
    Story {
        name: "evening-dressing",
        kinds: &[
            "disinfect",
            "sew_weft",
            "dye",
            "rinse",
            "gather",
            "heat_set",
            "dry",
            "release",
            "dress",
            "edge",
            "fitting",
            "worn",
            "reset",
            "repair",
            "hand_over",
        ],
        next: None,
        results: &["good", "partly", "failed"],
        overruled: &["not_ready_to_go", "set_let_go_wet"],
        window: None,
        days: 100,
    },
];

fn tests(bench: &Bench) -> Vec<TestLock> {
    locks::locks(&fold(&bench.file.workshop()), [(bench.file.wig, &bench.state)])
}

#[test]
fn each_demo_tells_its_story() {
    let told: Vec<PathBuf> = lines().iter().map(|path| path.with_extension("")).collect();
    for path in told {
        let name = path.file_name().and_then(|name| name.to_str()).expect("a name");
        assert!(STORIES.iter().any(|story| story.name == name), "{name} has no story in the table");
    }
    for story in STORIES {
        let name = story.name;
        let bench = bench(&places::demos().join(name).with_extension("lines"));
        let works = bench.state.works();
        let kinds: BTreeSet<&str> = works.iter().map(|done| done.work.kind().name).collect();
        for kind in story.kinds {
            assert!(kinds.contains(kind), "{name} shows no {kind}");
        }
        let results: BTreeSet<&str> = works.iter().filter_map(|done| done.work.choice("result")).collect();
        assert_eq!(results, story.results.iter().copied().collect(), "{name}");
        assert!(results.iter().all(|result| RESULTS.contains(result)));
        let minutes = works.iter().filter(|done| done.work.get("minutes").is_some()).count();
        assert!(minutes >= 10, "{name}: own pace has only {minutes} sittings to learn from");
        let corrected = works.iter().filter(|done| done.amended).count();
        assert!(corrected >= 1, "{name}: nothing was put right");
        let days: BTreeSet<Date> = works.iter().map(|done| done.done.date()).collect();
        let lasted = days.first().zip(days.last()).map(|(first, last)| first.days_until(*last));
        assert!(lasted.is_some_and(|lasted| lasted >= story.days), "{name}: {lasted:?} days");

        let overruled: BTreeSet<&str> =
            works.iter().flat_map(|done| care::overruled(&done.work)).map(|rule| rule.name).collect();
        assert_eq!(overruled, story.overruled.iter().copied().collect(), "{name}");
        if let Some((medium, held, harmed)) = story.window {
            let window = locks::window_of_wig(&tests(&bench), &Wig::new(&bench.state), medium).expect("locks");
            let celsius = |heat: f64| heat - 273.15;
            let learnt = (window.held_to.expect("one held").value, window.harmed_from.expect("one harmed").value);
            assert!((celsius(learnt.0) - held).abs() < 0.01 && (celsius(learnt.1) - harmed).abs() < 0.01, "{name}");
        }
    }
}

#[test]
fn each_plan_of_work_stands_as_told() {
    for story in STORIES {
        let name = story.name;
        let bench = bench(&places::demos().join(name).with_extension("lines"));
        let steps = steps(&bench.state);
        assert!(steps.len() >= 10, "{name}");
        let open = |progress| matches!(progress, Progress::Open | Progress::Begun);
        let next = steps.iter().find(|step| open(step.progress())).map(|step| step.planned.work.kind().name);
        assert_eq!(next, story.next, "{name}");
        assert!(steps.iter().any(|step| step.progress() == Progress::Done), "{name}");
        assert!(steps.iter().any(|step| step.progress() == Progress::Skipped), "{name}: nothing was left out");
        for step in &steps {
            assert!(!step.two_answers && step.recorded_done() <= 1, "{name}: {:?}", step.planned.work);
            assert!(step.done.iter().all(|done| done.work.kind().name == step.planned.work.kind().name), "{name}");
        }

        // What is still planned is in an order that works.
        let wig = Wig::new(&bench.state);
        let locks = tests(&bench);
        let labels = locks::labels(&fold(&bench.file.workshop()));
        let care_bench = care::Bench { wig: &wig, lots: &bench.lots, locks: &locks, labels: &labels };
        let left: Vec<(StepId, &Work)> =
            steps.iter().filter(|step| open(step.progress())).map(|step| (step.id, &step.planned.work)).collect();
        let order = care::order(&care_bench, &Condition::now(&wig), &left);
        let grave: Vec<_> = order.findings.iter().filter(|(_, one)| one.rule.weight != Weight::Consider).collect();
        assert!(grave.is_empty() && order.better.is_none(), "{name}: {grave:?}");
    }
}

#[test]
fn the_finished_demos_have_nothing_more_to_buy() {
    for story in STORIES.iter().filter(|story| story.next.is_none()) {
        let bench = bench(&places::demos().join(story.name).with_extension("lines"));
        let outcome = answer(&bench).outcome;
        assert!(matches!(outcome, Outcome::NothingWanted | Outcome::EnoughOwned), "{}: {outcome:?}", story.name);
    }
}

#[test]
fn the_three_do_not_clash_on_one_bench() {
    let all: Vec<Bench> = lines().iter().map(bench).collect();
    let mut seen = BTreeSet::new();
    for entry in all.iter().flat_map(|bench| bench.file.log().entries().cloned().collect::<Vec<_>>()) {
        assert!(matches!(entry.log, LogId::Wig(_)) && seen.insert(entry.id), "{entry:?}");
    }
    let lots: Vec<_> = all.iter().flat_map(|bench| bench.lots.iter().map(|lot| lot.id)).collect();
    assert_eq!(lots.iter().collect::<BTreeSet<_>>().len(), lots.len(), "no lot is shared by accident");
}

/// Before each of these lines: a copper wig of modacrylic on its block, braided.
const BRAIDED: &str = "wig 9\nat 2026-01-01T10:00\nfibre = modacrylic\n(lay) plan dye dye_class=cationic\n\
                       do gather gathered=braided";

/// Lines that are refused, and what the refusal speaks of; the last two go through.
const REFUSED: &[(&str, &str)] = &[
    ("do dye dye_class=cationic; dye_way=bath; temperature=82 °C", "bound_in_dye"),
    ("do straighten medium=steam; temperature=120 °C", "too_hot"),
    ("do wash washed_with=mild_shampoo; overruled=too_hot; judgement=because", "too_hot does not speak here"),
    ("do dye dye_class=cationic; dye_way=bath; temperature=82 °C; overruled=bound_in_dye", "go together"),
    ("do wash judgement=because", "go together"),
    ("do wash step=nowhere", "no step is named"),
    ("do wash minutes=5; minutes=6", "stands twice"),
    ("do knit minutes=5", "no kind of work"),
    ("plan wash minutes=5", "needs a name"),
    ("(lay) plan wash minutes=5", "two steps are named"),
    ("skip (lay)", "because"),
    ("skip (none) because words", "no step is named"),
    ("do wash washed_with=mild_shampoo; temperature=30 °C", ""),
    (
        "do dye dye_class=cationic; temperature=82 °C; step=lay; overruled=bound_in_dye; judgement=Pale inside is wanted",
        "",
    ),
];

#[test]
fn lines_that_no_bench_would_do_are_refused() {
    for (line, why) in REFUSED {
        let read = Lines::read(&format!("{BRAIDED}\n{line}"));
        match read {
            Ok(_) => assert!(why.is_empty(), "{line}: read, though {why}"),
            Err(said) => assert!(!why.is_empty() && said.contains(why), "{line}: {said}"),
        }
    }
}
