//! A wig with a history, said in a few lines, for the checks.
//!
//! A case is a block of lines: a head (`# rule sort: words`), then `slot = value`, `lot A.slot = value`,
//! `elsewhere kind field=value; …` for the workshop's own log, `kind field=value; …` for work done, `plan kind …` for a
//! step of the plan, `> kind …` for the work asked about, `= names` for what is expected, `" words` for a sentence in full.

use std::path::{Path, PathBuf};

use measure::{civil::Minute, prefs::Prefs};
use plan::care::{self, Bench, Finding};
use record::{
    field::Holds,
    history::{
        desk,
        entry::{Body, Entry, LogId, Of, Written},
        fold::{State, fold},
        log::Log,
    },
    id::{EntryId, Id, LotId, StepId, WigId},
    wig::{
        condition::Condition,
        figures::Wig,
        steps::{GAP, Planned},
        work::{self, Work},
        zone::Zone,
    },
    workshop::{
        locks::{self, TestLock},
        lots::{Lot, lots},
    },
};

/// A case as it stands in its file.
pub struct Case {
    /// The words of its head before the colon.
    pub head: Vec<String>,
    /// What it is about.
    about: String,
    lines: Vec<String>,
    asked: String,
    /// Steps of a plan that is asked about.
    pub steps: Vec<String>,
    /// Names expected, in order.
    pub expected: Vec<String>,
    /// Lines expected, in order.
    pub expected_lines: Vec<String>,
    /// A sentence in full.
    pub says: Option<String>,
}

impl Case {
    pub fn name(&self) -> String {
        format!("{}: {}", self.head.join(" "), self.about)
    }
}

pub fn file(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/care").join(format!("{name}.cases"))
}

pub fn cases(name: &str) -> Vec<Case> {
    let text = std::fs::read_to_string(file(name)).expect("a file of cases");
    let mut cases: Vec<Case> = Vec::new();
    for line in text.lines().map(str::trim).filter(|line| !line.is_empty() && !line.starts_with("//")) {
        if let Some(head) = line.strip_prefix("# ") {
            let (head, about) = head.split_once(':').unwrap_or_else(|| panic!("{line}"));
            cases.push(Case {
                head: head.split_whitespace().map(str::to_owned).collect(),
                about: about.trim().to_owned(),
                lines: Vec::new(),
                asked: "note words=nothing".to_owned(),
                steps: Vec::new(),
                expected: Vec::new(),
                expected_lines: Vec::new(),
                says: None,
            });
            continue;
        }
        let case = cases.last_mut().expect("a head first");
        match (line.strip_prefix("> "), line.strip_prefix('='), line.strip_prefix("\" "), line.strip_prefix("step ")) {
            (Some(asked), ..) => case.asked = asked.to_owned(),
            (_, Some(expected), ..) => {
                case.expected.extend(expected.split_whitespace().map(str::to_owned));
                case.expected_lines.push(expected.trim().to_owned());
            }
            (_, _, Some(says), _) => case.says = Some(says.to_owned()),
            (.., Some(step)) => case.steps.push(step.to_owned()),
            _ => case.lines.push(line.to_owned()),
        }
    }
    assert!(!cases.is_empty(), "{name} is empty");
    cases
}

/// Work from `kind field=value; field=value`.
fn read(line: &str, but: &[&str]) -> Work {
    let (kind, rest) = line.split_once(' ').unwrap_or((line, ""));
    let kind = work::kind_named(kind).unwrap_or_else(|| panic!("{line}: no such kind"));
    let pairs: Vec<(String, String)> = rest
        .split(';')
        .filter(|pair| !pair.trim().is_empty())
        .map(|pair| {
            let (name, value) = pair.split_once('=').unwrap_or_else(|| panic!("{line}: {pair}"));
            let (name, value) = (name.trim(), value.trim());
            let is_lot = kind.field(name).is_some_and(|field| field.holds == Holds::Lot);
            (name.to_owned(), if is_lot { lot(value).to_string() } else { value.to_owned() })
        })
        .filter(|(name, _)| !but.contains(&name.as_str()))
        .collect();
    Work::read(kind, pairs.iter().map(|(a, b)| (a.as_str(), b.as_str())), &Prefs::default())
        .unwrap_or_else(|refusals| panic!("{line}: {refusals:?}"))
}

/// Steps of a plan, numbered from one.
pub fn works(steps: &[String]) -> Vec<(StepId, Work)> {
    let id = |at: usize| StepId(Id::from_bytes([at as u8 + 1; 16]));
    steps.iter().enumerate().map(|(at, line)| (id(at), read(line, &[]))).collect()
}

fn lot(name: &str) -> LotId {
    LotId(Id::from_bytes([name.as_bytes()[0]; 16]))
}

/// A case read: what stands before it, and the work asked about.
pub struct Told {
    wig: State,
    workshop: State,
    elsewhere: State,
    /// The work asked about.
    pub work: Work,
    /// The same without the judgement.
    pub bare: Work,
}

/// Everything a bench borrows.
pub struct Held<'a> {
    wig: Wig<'a>,
    lots: Vec<Lot>,
    locks: Vec<TestLock>,
    labels: Vec<(LotId, measure::quantity::ThermodynamicTemperature)>,
}

impl Held<'_> {
    pub fn bench(&self) -> Bench<'_> {
        Bench { wig: &self.wig, lots: &self.lots, locks: &self.locks, labels: &self.labels }
    }

    pub fn condition(&self) -> Condition {
        Condition::now(&self.wig)
    }
}

const WIG: fn(u8) -> WigId = |number| WigId(Id::from_bytes([number; 16]));

impl Told {
    pub fn read(case: &Case) -> Told {
        let (wig, elsewhere) = (LogId::Wig(WIG(7)), LogId::Wig(WIG(8)));
        let mut logs = [(wig, Log::default()), (LogId::Workshop, Log::default()), (elsewhere, Log::default())];
        let mut next = 0;
        for line in &case.lines {
            next += 1;
            let (log, body) = said(&logs, line, next);
            let (_, of) = logs.iter_mut().find(|(id, _)| *id == log).unwrap();
            of.add(entry(next, log, body));
        }
        let [wig, workshop, elsewhere] = logs.map(|(_, log)| fold(&log));
        let (work, bare) = (read(&case.asked, &[]), read(&case.asked, &["overruled", "judgement"]));
        Told { wig, workshop, elsewhere, work, bare }
    }

    pub fn bench(&self) -> Held<'_> {
        Held {
            wig: Wig::new(&self.wig),
            lots: lots(&self.workshop, [&self.wig, &self.elsewhere]),
            locks: locks::locks(&self.workshop, [(WIG(7), &self.wig), (WIG(8), &self.elsewhere)]),
            labels: locks::labels(&self.workshop),
        }
    }

    pub fn before(&self, work: &Work) -> Vec<Finding> {
        let held = self.bench();
        care::before(&held.bench(), &held.condition(), work)
    }
}

fn entry(next: u8, log: LogId, body: Body) -> Entry {
    Entry {
        lamport: u64::from(next),
        id: EntryId(Id::from_bytes([next; 16])),
        log,
        done: Minute::read("2026-10-01T10:00").unwrap(),
        written: Written::read("2026-10-01T10:00:00Z").unwrap(),
        by: None,
        body,
    }
}

/// What a line says, and to which log.
fn said(logs: &[(LogId, Log); 3], line: &str, next: u8) -> (LogId, Body) {
    let prefs = Prefs::default();
    let (wig, workshop, elsewhere) = (logs[0].0, logs[1].0, logs[2].0);
    if let Some(rest) = line.strip_prefix("elsewhere ") {
        return match rest.split_once(" = ") {
            Some((slot, value)) => {
                (elsewhere, desk::set(&fold(&logs[2].1), elsewhere, slot.trim(), Of::Wig, value, &prefs).unwrap())
            }
            None => (elsewhere, Body::Work(read(rest, &[]))),
        };
    }
    if let Some(rest) = line.strip_prefix("workshop ") {
        return (workshop, Body::Work(read(rest, &[])));
    }
    if let Some(rest) = line.strip_prefix("plan ") {
        let planned = Planned { place: u32::from(next) * GAP, work: read(rest, &[]), skipped: None };
        return (wig, desk::plan_step(&fold(&logs[0].1), StepId(Id::from_bytes([next; 16])), planned));
    }
    let Some((name, value)) = line.split_once(" = ") else { return (wig, Body::Work(read(line, &[]))) };
    let (log, slot, of) = match name.strip_prefix("lot ") {
        Some(rest) => {
            let (id, slot) = rest.split_once('.').unwrap();
            (workshop, slot, Of::Lot(lot(id)))
        }
        None => match name.split_once('.') {
            Some((zone, slot)) => (wig, slot, Of::Zone(Zone::read(zone).unwrap())),
            None => (wig, name, Of::Wig),
        },
    };
    let state = fold(&logs.iter().find(|(id, _)| *id == log).unwrap().1);
    (
        log,
        desk::set(&state, log, slot.trim(), of, value, &prefs).unwrap_or_else(|refusal| panic!("{line}: {refusal:?}")),
    )
}
