//! Own pace: cases told by hand, and what holds of any sittings.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that fails says so")]

use measure::{
    civil::Minute,
    prefs::Prefs,
    quantity::{Length, Time, units},
};
use plan::pace::{OWN, Pace, Paces, STATED_COUNTS_AS, Span, row, sewing};
use proptest::{collection::vec, prelude::*};
use record::{
    history::{
        desk,
        entry::{Entry, LogId, Of, Written},
        fold::{State, fold},
        log::Log,
    },
    id::{EntryId, Id, StepId, WigId},
    trade::defaults,
    wig::{
        figure::Origin,
        figures::Wig,
        steps::Planned,
        work::{KINDS, Work, kind_named},
    },
};

fn work(line: &str) -> Work {
    let (kind, texts) = line.split_once(' ').unwrap_or((line, ""));
    let step = StepId(Id::from_bytes([5; 16])).to_string();
    let pairs = texts.split(';').filter_map(|pair| pair.trim().split_once('='));
    let pairs = pairs.map(|(name, text)| (name, if name == "step" { step.as_str() } else { text }));
    Work::read(kind_named(kind).expect(line), pairs, &Prefs::default()).expect(line)
}

/// A wig on which this was done; `plan …` plans the one step that `step=x` names, `slot = text` says a figure.
fn wig(lines: &[&str]) -> State {
    let log_id = LogId::Wig(WigId(Id::from_bytes([7; 16])));
    let mut log = Log::default();
    for (at, line) in (1u32..).zip(lines) {
        let body = if let Some(line) = line.strip_prefix("plan ") {
            let planned = Planned { place: 1, work: work(line), skipped: None };
            desk::plan_step(&State::default(), StepId(Id::from_bytes([5; 16])), planned)
        } else if let Some((slot, text)) = line.split_once(" = ") {
            desk::set(&State::default(), log_id, slot, Of::Wig, text, &Prefs::default()).expect(line)
        } else {
            record::history::entry::Body::Work(work(line))
        };
        let mut bytes = [0; 16];
        bytes[..4].copy_from_slice(&at.to_be_bytes());
        log.add(Entry {
            lamport: u64::from(at),
            id: EntryId(Id::from_bytes(bytes)),
            log: log_id,
            done: Minute::read("2026-10-01T10:00").unwrap(),
            written: Written::read("2026-10-01T10:00:00Z").unwrap(),
            by: None,
            body,
        });
    }
    fold(&log)
}

fn told(span: Option<Span>) -> String {
    let minutes = |time: Time| libm::round(time.get::<units::minute>() * 10.0) / 10.0;
    span.map_or_else(
        || "none".to_owned(),
        |span| format!("{} {} {}", minutes(span.low), minutes(span.likely), minutes(span.high)),
    )
}

#[test]
fn cases() {
    let row = "sew_weft sewn_as=row; length=20 cm";
    // What was done, what is asked, its low, likely and high minutes, on how many sittings.
    let cases: &[(&str, &[&str], &str, &str, usize)] = &[
        ("nothing known", &[], row, "30 35 40", 0),
        ("half a row", &[], "sew_weft sewn_as=hairline; length=10 cm", "15 17.5 20", 0),
        // (3 × 35 + 55) ÷ 4; (3 × 30 + 55) ÷ 4; (3 × 40 + 55) ÷ 4.
        ("one sitting", &["sew_weft sewn_as=row; length=20 cm; minutes=55"], row, "36.3 40 43.8", 1),
        // Told per 20 cm: 28 and 20; (3 × 35 + 48) ÷ 5; quick half 20, slow half 28.
        (
            "rows of other lengths",
            &["sew_weft sewn_as=row; length=10 cm; minutes=14", "sew_weft sewn_as=row; length=40 cm; minutes=40"],
            row,
            "26 30.6 35.2",
            2,
        ),
        // A timer left running: 1200 counts as 4 × 35 while it is alone. (105 + 140) ÷ 4.
        ("one absurd sitting", &["sew_weft sewn_as=row; length=20 cm; minutes=1200"], row, "57.5 61.3 65", 1),
        ("a sitting without a time", &[row, "sew_weft sewn_as=row; length=20 cm; minutes=0"], row, "30 35 40", 0),
        ("a first lace front", &[], "refront knots=3000", "1200 1440 1800", 0),
        // 200 knots in 60 minutes are 30 for 100: (3 × 48 + 30) ÷ 4.
        ("knots", &["refront knots=200; minutes=60"], "refront knots=100", "37.5 43.5 52.5", 1),
        ("knots nobody counted", &["refront minutes=60"], "refront", "none", 0),
        ("rolling", &[], "gather gathered=rollers", "60 90 120", 0),
        (
            "other binding keeps its own pace",
            &["gather gathered=rollers; minutes=30"],
            "gather gathered=braided",
            "15 30 60",
            0,
        ),
        // Three sittings of one piece of work are one: 20 + 30 + 40 = 90; (3 × 60 + 90) ÷ 4.
        (
            "several sittings",
            &[
                "dress dressed_with=comb; minutes=20; more_to_come=yes",
                "dress dressed_with=comb; minutes=30; more_to_come=yes",
                "dress dressed_with=comb; minutes=40",
            ],
            "dress dressed_with=comb",
            "45 67.5 112.5",
            1,
        ),
        ("a piece not finished", &["dress minutes=20; more_to_come=yes"], "dress", "30 60 120", 0),
        ("a sitting of it untimed", &["dress more_to_come=yes", "dress minutes=20"], "dress", "30 60 120", 0),
        (
            "a step's sittings are kept apart from other work between them",
            &["dress minutes=20; more_to_come=yes; step=x", "dress minutes=60", "dress minutes=40; step=x"],
            "dress",
            "42 60 96",
            2,
        ),
        (
            "planned minutes copied are no sitting",
            &["plan dress minutes=20", "dress minutes=20; step=x"],
            "dress",
            "30 60 120",
            0,
        ),
        ("planned minutes stand, in the pace's range", &[], "dress minutes=40", "20 40 80", 0),
        ("work that is not timed", &[], "note words=x", "none", 0),
    ];
    for (name, done, asked, wanted, sittings) in cases {
        let state = wig(done);
        let paces = Paces::learn([&state]);
        let work = work(asked);
        assert_eq!(told(paces.time(&work)), *wanted, "{name}");
        assert_eq!(paces.of(&work).map_or(0, |pace| pace.sittings), *sittings, "{name}");
    }
}

#[test]
fn drying_is_a_wait() {
    let paces = Paces::learn([&wig(&["dry dry_way=wig_dryer; hours=7 h; minutes=12"])]);
    assert_eq!(told(paces.wait(&work("dry dry_way=air"))), "480 720 2880");
    // (3 × 3 h + 7 h) ÷ 4.
    assert_eq!(told(paces.wait(&work("dry dry_way=wig_dryer"))), "195 240 285");
    assert_eq!(told(paces.wait(&work("worn hours=7 h"))), "none");
    let total = paces.total(&[work("dry dry_way=air"), work("note words=x"), work("refront"), work("block")]);
    assert_eq!(total.unknown, 1);
    assert_eq!(told(Some(total.waiting)), "480 720 2880");
    // (3 × 10 + 12) ÷ 4 and a block's 10.
    assert_eq!(told(Some(total.bench)), "11.8 20.5 33");
}

#[test]
fn every_timed_kind_has_a_pace_and_every_pace_its_words() {
    let paces = Paces::default();
    for kind in KINDS {
        assert_eq!(
            kind.field("minutes").is_some(),
            paces.all().iter().any(|pace| pace.kind == kind.name && !pace.waiting),
            "{}",
            kind.name
        );
    }
    for pace in paces.all() {
        let known = |key: &str| plan::words::ENGLISH.iter().any(|(one, _)| *one == key);
        assert!(known(pace.per.label()), "{:?}", pace.per);
        assert!(pace.low <= pace.likely && pace.likely <= pace.high && pace.sittings == 0);
        assert_eq!(pace.figure(), pace.stated);
    }
    let stated = defaults::default_for("minutes_per_row").expect("a default");
    assert_eq!(
        paces.of(&work("sew_weft sewn_as=row; length=20 cm")).unwrap().stated,
        record::wig::figure::Figure::assumed(stated)
    );
}

#[test]
fn what_is_said_for_a_wig_goes_before_own_pace() {
    let timed = wig(&["sew_weft sewn_as=row; length=20 cm; minutes=55"]);
    let paces = Paces::learn([&timed]);
    let metre = Length::new::<units::meter>(1.0);
    assert_eq!(told(Some(sewing(&Wig::new(&timed), &paces, metre))), "181.3 200 218.8");
    assert!(matches!(row(&Wig::new(&timed), &paces).origin, Origin::Assumed { source, .. } if *source == OWN));
    let said = wig(&["minutes_per_row = 20 min"]);
    assert_eq!(told(Some(sewing(&Wig::new(&said), &paces, metre))), "100 100 100");
}

fn rows(minutes: &[u32]) -> Pace {
    let lines: Vec<String> =
        minutes.iter().map(|m| format!("sew_weft sewn_as=row; length=20 cm; minutes={m}")).collect();
    let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
    Paces::learn([&wig(&lines)]).of(&work("sew_weft sewn_as=row; length=20 cm")).unwrap().clone()
}

fn likely(minutes: &[u32]) -> f64 {
    rows(minutes).likely.get::<units::minute>()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    /// No sitting far from the middle: the plain formula, and the more the nearer to the own mean.
    #[test]
    fn more_sittings_come_nearer_to_the_own_mean(minutes in vec(18u32..70, 1..8), times in 1usize..5) {
        let mean = f64::from(minutes.iter().sum::<u32>()) / minutes.len() as f64;
        let k = STATED_COUNTS_AS.likely;
        let mut before = f64::INFINITY;
        for times in 1..=times {
            let all = minutes.repeat(times);
            let count = all.len() as f64;
            let found = likely(&all);
            prop_assert!((found - (k * 35.0 + mean * count) / (k + count)).abs() < 1e-9);
            let away = (found - mean).abs();
            prop_assert!(away <= before + 1e-9);
            before = away;
        }
    }

    /// Whatever it is, however far from practice: the same time again and again is believed in the end.
    #[test]
    fn a_steady_pace_is_believed_in_the_end(minutes in 1u32..2880, count in 1usize..40) {
        let away = |count: usize| (likely(&vec![minutes; count]) - f64::from(minutes)).abs();
        prop_assert!(away(count + 1) <= away(count) + 1e-9);
        let share = 3.0 / (3.0 + 60.0) * (f64::from(minutes) - 35.0).abs();
        prop_assert!((away(60) - share).abs() < 1e-6);
    }

    /// A slower sitting never makes the pace quicker, nor its range.
    #[test]
    fn a_slower_sitting_never_makes_it_quicker(minutes in vec(1u32..2000, 1..9), at in any::<prop::sample::Index>(), more in 1u32..800) {
        let before = rows(&minutes);
        let mut slower = minutes.clone();
        slower[at.index(minutes.len())] += more;
        let after = rows(&slower);
        let less = |a: Time, b: Time| a.get::<units::second>() <= b.get::<units::second>() + 1e-6;
        prop_assert!(less(before.likely, after.likely) && less(before.low, after.low) && less(before.high, after.high));
        prop_assert!(less(after.low, after.likely) && less(after.likely, after.high));
        prop_assert!(after.low.get::<units::second>() > 0.0);
    }

    /// One absurd sitting among sane ones counts as four times the middle one at most.
    #[test]
    fn one_absurd_sitting_is_drawn_in(sane in 20u32..60, count in 1usize..12, absurd in 1000u32..2880) {
        let mut minutes = vec![sane; count];
        minutes.push(absurd);
        let most = (3.0 * 35.0 + f64::from(sane) * count as f64 + 4.0 * f64::from(sane.max(35))) / (3.0 + count as f64 + 1.0);
        prop_assert!(likely(&minutes) <= most + 1e-9, "{} {}", likely(&minutes), most);
    }

    /// A total is the sum of its parts, in any order.
    #[test]
    fn a_total_is_the_sum_of_its_parts(picked in vec(0usize..6, 0..12), cut in any::<prop::sample::Index>()) {
        let some = ["block", "wash", "sew_weft sewn_as=row; length=23 cm", "dry dry_way=air", "refront", "dress minutes=33"];
        let works: Vec<Work> = picked.iter().map(|at| work(some[*at])).collect();
        let paces = Paces::default();
        let (first, second) = works.split_at(cut.index(works.len() + 1));
        let (whole, first, second) = (paces.total(&works), paces.total(first), paces.total(second));
        prop_assert_eq!(whole.unknown, first.unknown + second.unknown);
        let near = |a: Span, b: Span| (a.likely - b.likely).value.abs() < 1e-6 && (a.low - b.low).value.abs() < 1e-6 && (a.high - b.high).value.abs() < 1e-6;
        prop_assert!(near(whole.bench, first.bench + second.bench));
        prop_assert!(near(whole.waiting, first.waiting + second.waiting));
    }
}
