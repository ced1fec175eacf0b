//! Suggested steps: told by hand, and what holds of any plan of them.
//!
//! Each file under `cases/steps` is a wig in lines, a line `---`, and the steps that are missing, one a line, in their order.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that fails says so")]

use std::cell::OnceCell;

use measure::{
    civil::{Date, Minute},
    prefs::Prefs,
    quantity::units,
};
use plan::{
    pace::Paces,
    shopping::{Answer, Job},
    steps::{self, guide, missing, suggest},
};
use proptest::{collection::vec, prelude::*, sample::Index};
use record::{
    history::{
        desk,
        entry::{Body, Entry, LogId, Of, Written},
        fold::{State, fold},
        log::Log,
    },
    id::{EntryId, Id, LotId, StepId, WigId},
    wig::{
        figures::Wig,
        steps::{self as planned, Planned, Progress},
        work::{KINDS, Work, kind_named},
        zone::Zone,
    },
    workshop::lots::{Lot, lots},
};

const WIG: LogId = LogId::Wig(WigId(Id::from_bytes([7; 16])));

/// A wig and its workshop.
#[derive(Clone, Default)]
struct Bench {
    wig: Log,
    workshop: Log,
    next: u32,
    steps: u32,
    /// The answer, where no work changes it and a test asks often.
    kept: Option<Answer>,
}

fn lot(name: &str) -> LotId {
    LotId(Id::from_bytes([name.as_bytes()[0]; 16]))
}

fn numbered(number: u32, of: u8) -> Id {
    let mut bytes = [of; 16];
    bytes[..4].copy_from_slice(&number.to_be_bytes());
    Id::from_bytes(bytes)
}

impl Bench {
    /// Reads lines: `girth = 57 cm`, `back.longest = 40 cm`, `lot A.pack_width = 1 m`, `do wash washed_with=vinegar; …`,
    /// `plan` (all that is missing), `done 3` (the third step as planned), `skip 2`, `move 5 before 1`.
    fn read(text: &str) -> Bench {
        let mut bench = Bench::default();
        for line in text.lines().map(str::trim).filter(|line| !line.is_empty() && !line.starts_with('#')) {
            bench.say(line);
        }
        bench
    }

    fn say(&mut self, line: &str) {
        let prefs = Prefs::default();
        if let Some((name, value)) = line.split_once(" = ") {
            let (log, slot, of) = match (name.strip_prefix("lot "), name.split_once('.')) {
                (Some(_), Some((lot_name, "use_lot"))) => (WIG, "use_lot", Of::Lot(lot(&lot_name[4..]))),
                (Some(_), Some((lot_name, slot))) => (LogId::Workshop, slot, Of::Lot(lot(&lot_name[4..]))),
                (None, Some((zone, slot))) => (WIG, slot, Of::Zone(Zone::read(zone).expect(line))),
                _ => (WIG, name, Of::Wig),
            };
            let state = fold(if log == WIG { &self.wig } else { &self.workshop });
            self.add(
                log,
                desk::set(&state, log, slot, of, value, &prefs).unwrap_or_else(|why| panic!("{line}: {why:?}")),
            );
            return;
        }
        match line.split_whitespace().collect::<Vec<_>>().as_slice() {
            ["plan"] => self.plan(),
            ["done", number] => self.done(number.parse().expect(line)),
            ["skip", number] => {
                let state = self.state();
                let step = &planned::steps(&state)[number.parse::<usize>().expect(line) - 1];
                let skipped = Planned { skipped: Some("not on this one".to_owned()), ..step.planned.clone() };
                self.add(WIG, desk::plan_step(&state, step.id, skipped));
            }
            ["move", from, "before", to] => self.shift(from.parse().expect(line), to.parse().expect(line)),
            ["do", kind, ..] => {
                let texts = line.splitn(3, ' ').nth(2).unwrap_or("");
                let pairs = texts.split(';').filter_map(|pair| pair.trim().split_once('='));
                let lots: Vec<(&str, String)> = pairs
                    .map(|(name, text)| (name, if name == "lot" { lot(text).to_string() } else { text.to_owned() }))
                    .collect();
                let texts = lots.iter().map(|(name, text)| (*name, text.as_str()));
                self.add(WIG, desk::work(kind_named(kind).expect(line), texts, &prefs).expect(line));
            }
            _ => panic!("{line}"),
        }
    }

    fn plan(&mut self) {
        let state = self.state();
        let works = missing(&state, self.suggested());
        let mut next = self.steps;
        let bodies = steps::plan(&state, works, &mut || {
            next += 1;
            StepId(numbered(next, 3))
        });
        self.steps = next;
        bodies.into_iter().for_each(|body| self.add(WIG, body));
    }

    /// Records a step as it is planned.
    fn done(&mut self, number: usize) {
        let state = self.state();
        let step = &planned::steps(&state)[number - 1];
        let mut texts: Vec<(&str, String)> =
            step.planned.work.values().map(|(name, value)| (name, value.text())).collect();
        texts.push(("step", step.id.to_string()));
        let texts = texts.iter().map(|(name, text)| (*name, text.as_str()));
        let body = desk::work(step.planned.work.kind(), texts, &Prefs::default()).expect("as planned");
        self.add(WIG, body);
    }

    fn shift(&mut self, from: usize, before: usize) {
        let state = self.state();
        let steps = planned::steps(&state);
        desk::move_step(&state, steps[from - 1].id, steps.get(before - 1).map(|step| step.id))
            .into_iter()
            .for_each(|body| self.add(WIG, body));
    }

    fn add(&mut self, log: LogId, body: Body) {
        self.next += 1;
        let entry = Entry {
            lamport: u64::from(self.next),
            id: EntryId(numbered(self.next, 1)),
            log,
            done: Minute::read("2026-10-01T10:00").unwrap(),
            written: Written::read("2026-10-01T10:00:00Z").unwrap(),
            by: None,
            body,
        };
        match log {
            LogId::Workshop => self.workshop.add(entry),
            LogId::Wig(_) => self.wig.add(entry),
        };
    }

    fn state(&self) -> State {
        fold(&self.wig)
    }

    fn lots(&self) -> Vec<Lot> {
        lots(&fold(&self.workshop), [&self.state()])
    }

    fn answer(&self) -> Option<Answer> {
        if self.kept.is_some() {
            return self.kept.clone();
        }
        Job::new(self.state(), self.lots(), Date::read("2026-10-01").unwrap()).finish().ok()
    }

    fn suggested(&self) -> Vec<Work> {
        suggest(&Wig::new(&self.state()), self.answer().as_ref(), None)
    }

    fn missing(&self) -> Vec<Work> {
        missing(&self.state(), self.suggested())
    }

    fn planned(&self) -> Vec<Work> {
        planned::steps(&self.state()).iter().map(|step| step.planned.work.clone()).collect()
    }
}

/// A step in a line: its kind and what tells it from others. Rows that follow one another are one line with their number.
fn told(works: &[Work]) -> Vec<String> {
    let mut lines: Vec<(String, usize)> = Vec::new();
    for work in works {
        let mut line = work.kind().name.to_owned();
        for field in [
            "sewn_as",
            "section",
            "edge",
            "edge_way",
            "medium",
            "temperature",
            "hair_length",
            "zones",
            "anchor",
            "handed_to",
        ] {
            if let Some(value) = work.get(field) {
                line += &format!(" {}", value.text());
            }
        }
        match lines.last_mut() {
            Some((last, count)) if *last == line => *count += 1,
            _ => lines.push((line, 1)),
        }
    }
    lines.into_iter().map(|(line, count)| if count == 1 { line } else { format!("{line} x{count}") }).collect()
}

#[test]
fn cases() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases/steps");
    let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    let mut failed = String::new();
    for file in &files {
        let text = std::fs::read_to_string(file).unwrap();
        let (wig, wanted) = text.split_once("---").expect("a line ---");
        let wanted: Vec<&str> = wanted.lines().map(str::trim).filter(|line| !line.is_empty()).collect();
        let found = told(&Bench::read(wig).missing());
        if found != wanted {
            failed += &format!("{}:\n  {}\n", file.display(), found.join("\n  "));
        }
    }
    assert!(failed.is_empty(), "{failed}");
    assert!(files.len() >= 10, "{} cases", files.len());
}

/// A bob that takes rows, a sewn hairline and a parting.
const BOB: &str = "
    name = Bob
    fibre = modacrylic
    target = 1.3
    hairline = sewn_edge
    hairline_layers = 2
    parting = weft_sides
    lot A.lot_name = Fox
    lot A.pack_width = 2 m
    lot A.use_lot = yes
    do base texture=wavy; condition=worn_before
    nape.look_length = 15 cm
";

#[test]
fn weft_steps_are_the_answers_weft() {
    let bench = Bench::read(BOB);
    let answer = bench.answer().expect("an answer");
    let rows: Vec<Work> = bench.suggested().into_iter().filter(|work| work.choice("sewn_as") == Some("row")).collect();
    let placed = &answer.likely.prepared.placement.rows;
    assert_eq!(rows.len(), placed.len());
    assert!(rows.len() >= 3, "{}", rows.len());
    let metres = |work: &Work| work.get("length").unwrap().typed().unwrap().length().unwrap().get::<units::meter>();
    let amounts = &answer.likely.prepared.amounts;
    let on_cap: f64 = placed.iter().map(|row| row.length.get::<units::meter>()).sum();
    let wanted = on_cap + amounts.folds.get::<units::meter>();
    // Each row is rounded to a millimetre.
    assert!((rows.iter().map(metres).sum::<f64>() - wanted).abs() < 0.001 * rows.len() as f64);
    let edges = |purpose: &str| -> (usize, f64) {
        let pieces: Vec<Work> =
            bench.suggested().into_iter().filter(|work| work.choice("sewn_as") == Some(purpose)).collect();
        (pieces.len(), pieces.iter().map(metres).sum())
    };
    let (layers, hairline) = edges("hairline");
    assert_eq!(layers, 2);
    assert!((hairline - amounts.hairline.get::<units::meter>()).abs() < 0.002);
    let (along, parting) = edges("parting");
    assert_eq!(along, 5);
    assert!((parting - amounts.parting.get::<units::meter>()).abs() < 0.005);
    for work in rows {
        assert_eq!(work.get("lot").map(record::field::Value::text), Some(lot("A").to_string()));
        assert!(plan::care::may_do(&bench.state(), &work).is_ok(), "{work:?}");
    }
}

#[test]
fn a_row_sewn_from_the_weft_plan_is_its_step() {
    let mut bench = Bench::read(BOB);
    let (state, answer) = (bench.state(), bench.answer().expect("an answer"));
    let sewing = plan::steps::sewing(&Wig::new(&state), &answer);
    let rows = || sewing.iter().filter(|work| work.choice("sewn_as") == Some("row"));
    assert_eq!(rows().count(), answer.likely.prepared.placement.rows.len());
    assert!(rows().all(|work| plan::steps::open_step(&state, work).is_none()), "nothing is planned yet");
    bench.say("plan");
    let state = bench.state();
    for work in rows() {
        let step = plan::steps::open_step(&state, work).expect("its step");
        let found = planned::steps(&state).into_iter().find(|one| one.id == step).expect("a step");
        assert_eq!(found.planned.work, *work);
        assert_eq!(found.progress(), Progress::Open);
    }
    // A row somewhere else is nobody's step.
    let elsewhere = Work::read(
        kind_named("sew_weft").unwrap(),
        [("sewn_as", "row"), ("length", "10 cm"), ("section", "top"), ("place", "1 mm")],
        &Prefs::default(),
    );
    assert_eq!(plan::steps::open_step(&state, &elsewhere.unwrap()), None);
}

#[test]
fn minutes_come_with_paces_only() {
    let bench = Bench::read(BOB);
    let (state, answer, paces) = (bench.state(), bench.answer(), Paces::default());
    let with = suggest(&Wig::new(&state), answer.as_ref(), Some(&paces));
    let without = suggest(&Wig::new(&state), answer.as_ref(), None);
    assert_eq!(with.len(), without.len());
    for (with, without) in with.iter().zip(&without) {
        assert_eq!(without.get("minutes"), None);
        let minutes = |work: &Work| paces.time(work).map(|span| libm::round(span.likely.get::<units::minute>()));
        assert_eq!(with.get("minutes").is_some(), paces.time(without).is_some(), "{with:?}");
        assert_eq!(minutes(with), minutes(without));
    }
}

#[test]
fn a_plan_that_is_done_as_planned_asks_for_nothing_more() {
    let mut bench = Bench::read(BOB);
    bench.plan();
    assert_eq!(told(&bench.missing()), Vec::<String>::new());
    let count = bench.planned().len();
    assert_eq!(count, planned::steps(&bench.state()).len());
    for number in 1..=count {
        bench.done(number);
        // Weft that was sewn as planned is not asked for again; some may be left over by rounding, but no row of it.
        assert_eq!(told(&bench.missing()), Vec::<String>::new(), "after step {number} of {count}");
    }
    assert!(planned::steps(&bench.state()).iter().all(|step| step.progress() == Progress::Done));
}

#[test]
fn what_is_new_goes_where_the_fewest_steps_are_out_of_order_with_it() {
    let mut bench = Bench::read("plan");
    bench.say("move 3 before 1");
    bench.say("do base condition=needs_care; texture=straight");
    bench.plan();
    assert_eq!(told(&bench.planned()), ["fitting", "base", "block", "wash", "dry", "dress", "anchor clips", "store"]);
    // No room is left between two: all are placed anew, in the same order.
    for _ in 0..14 {
        bench.say("move 8 before 2");
    }
    let order = told(&bench.planned());
    bench.say("nape.look_length = 10 cm");
    bench.plan();
    let with: Vec<String> = told(&bench.planned()).into_iter().filter(|line| !line.starts_with("cut")).collect();
    assert_eq!(with, order);
}

#[test]
fn every_kind_has_its_guide() {
    let said = |key: &str| plan::words::ENGLISH.iter().find(|(one, _)| *one == key).map(|(_, text)| *text);
    for kind in KINDS {
        let guide = guide(kind.name);
        assert_eq!(guide.kind, kind.name);
        assert!(said(guide.right_when).is_some_and(|text| text.starts_with("Right when ")), "{}", kind.name);
        assert!(said(guide.stop_if).is_some_and(|text| text.starts_with("Stop and ask if ")), "{}", kind.name);
    }
    assert_eq!(guide("knitting").kind, "note");
}

thread_local! {
    static KEPT: OnceCell<Option<Answer>> = const { OnceCell::new() };
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

    /// However a person orders the plan, takes steps out and plans again: what was out comes back, once, what stands keeps
    /// its order, and then nothing is missing.
    #[test]
    fn planning_again_keeps_the_order_and_completes_the_plan(
        moves in vec((any::<Index>(), any::<Index>()), 0..6),
        dropped in vec(any::<Index>(), 0..6),
    ) {
        let mut bench = Bench::read("target = 1.2\nfibre = polyester\nlot A.pack_width = 2 m\nlot A.use_lot = yes\ndo base texture=crimped; condition=needs_care");
        bench.kept = KEPT.with(|kept| kept.get_or_init(|| bench.answer()).clone());
        prop_assert!(bench.kept.is_some());
        bench.plan();
        let full = bench.planned().len();
        for (from, to) in moves {
            let count = bench.planned().len();
            bench.shift(from.index(count) + 1, to.index(count) + 1);
        }
        let mut out = 0;
        for one in dropped {
            let state = bench.state();
            let steps = planned::steps(&state);
            let id = steps[one.index(steps.len())].id;
            bench.add(WIG, desk::drop_step(&state, id));
            out += 1;
        }
        let stood: Vec<StepId> = planned::steps(&bench.state()).iter().map(|step| step.id).collect();
        prop_assert_eq!(stood.len() + out, full);
        prop_assert_eq!(bench.missing().len(), out);
        bench.plan();
        let state = bench.state();
        let after: Vec<StepId> = planned::steps(&state).iter().map(|step| step.id).collect();
        prop_assert_eq!(after.len(), full);
        let kept: Vec<StepId> = after.iter().copied().filter(|id| stood.contains(id)).collect();
        prop_assert_eq!(kept, stood);
        prop_assert!(bench.missing().is_empty());
    }
}
