//! One file with everything in it for each version that was shipped; it must be read for ever.
//!
//! What it is: every slot, kind, field and choice, every unit, emoji, the longest texts, zeros, corrections, two
//! answers, a clash, a row from the future and a broken one. Invented throughout.
//! While the format is version 0, `UPDATE_EXPECT=1` adds what the record has learnt to say to the fixture.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, reason = "a test")]

#[path = "../../record/tests/common/mod.rs"]
mod common;

use std::{collections::BTreeSet, env, fs, path::PathBuf};

use common::{WIG, id};
use format::{
    backup::{Backup, Blob, Rows, read_backup, write_backup},
    file::{Checksum, Head},
    row::{Item, encode_row},
};
use measure::{prefs::Prefs, unit::Unit};
use record::{
    field::{Field, Holds, Value},
    history::{
        entry::{Amendment, Body, Corrected, Entry, Key, LogId, Of, Says, Setting},
        fold::{Oddity, fold},
        log::Log,
        people::Person,
    },
    id::{EntryId, Id, LotId, PersonId, StepId},
    wig::{
        slots::{self, Per},
        steps::{self, Planned},
        work::{KINDS, Kind, Work},
        zone::{Zone, Zones},
    },
    workshop,
};

const LOT: u8 = 220;
const STEP: u8 = 210;

/// Texts that together show all a field can hold.
fn texts(holds: &Holds) -> Vec<String> {
    let ends = |limit: &measure::limit::Limit| {
        let number = |amount: f64, unit: Unit| format!("{} {}", (amount * 100.0).round() / 100.0, unit.symbol());
        let middle = limit.unit.to_base((limit.low + limit.high) / 2.0);
        let middles = Unit::of(limit.kind()).map(move |unit| number(unit.from_base(middle), unit));
        [number(limit.low, limit.unit), number(limit.high, limit.unit)].into_iter().chain(middles).collect::<Vec<_>>()
    };
    match holds {
        Holds::Quantity(limit) => ends(limit),
        Holds::AnyOf(limits) => limits.iter().flat_map(|limit| ends(limit)).collect(),
        Holds::Money => ["0", "0,01", "€ 18.99", "10000000"].map(str::to_owned).to_vec(),
        Holds::Count(low, high) => vec![low.to_string(), high.to_string()],
        Holds::Text(longest) => {
            vec!["x".to_owned(), "🪡 née \"O'Hara\" \\ \u{1}\u{7f} \u{2028}.".to_owned(), "é".repeat(*longest)]
        }
        Holds::Choice(choices) => choices.iter().map(|choice| (*choice).to_owned()).collect(),
        Holds::Date => ["0001-01-01", "2024-02-29", "9999-12-31"].map(str::to_owned).to_vec(),
        Holds::Zone => Zone::ALL.map(|zone| zone.name().to_owned()).to_vec(),
        Holds::Lot => vec![LotId(id(LOT)).to_string()],
        Holds::YesNo => ["yes", "no"].map(str::to_owned).to_vec(),
        Holds::Zones => vec!["nape".to_owned(), Zones::ALL.to_string()],
        Holds::Photo => vec![format!("{}{}", id(1), id(2))],
        Holds::Shade => vec!["#000000".to_owned(), "#c04a7a".to_owned()],
        Holds::Along => vec!["#3b2a20".to_owned(), "#3b2a20 to 40, #c04a7a to 70, #f0a0c8 smooth".to_owned()],
        Holds::Step => vec![StepId(id(STEP)).to_string()],
        Holds::Planned => vec![],
    }
}

/// Entries with identities and lamports in their order.
#[derive(Default)]
struct Told(Vec<Entry>);

impl Told {
    fn say(&mut self, log: LogId, body: Body) -> EntryId {
        let lamport = self.0.len() as u64;
        let mut bytes = [0; 16];
        bytes[..8].copy_from_slice(&(lamport + 1).to_be_bytes());
        let by = lamport.is_multiple_of(3).then_some(PersonId(id(230)));
        let id = EntryId(Id::from_bytes(bytes));
        self.0.push(Entry { lamport, id, log, by, ..common::entry(0, 0, body) });
        id
    }

    fn set(&mut self, log: LogId, key: Key, text: Option<&str>, holds: &Holds, over: &[EntryId]) -> EntryId {
        let value = text.map(|text| read(holds, text));
        self.say(log, Body::Set(Setting { key, value, over: over.to_vec() }))
    }

    fn every_value(&mut self, log: LogId, field: &Field, of: Of) -> (Key, EntryId) {
        let key = Key::new(log, field.name, of).expect("the table has it");
        let mut over = vec![];
        for text in texts(&field.holds) {
            over = vec![self.set(log, key, Some(&text), &field.holds, &over)];
        }
        (key, over[0])
    }

    fn every_field(&mut self, log: LogId, kind: &'static Kind) {
        let most = kind.every_field().map(|field| texts(&field.holds).len()).max().unwrap_or(0);
        for turn in 0..most {
            let all: Vec<(&str, String)> = kind
                .every_field()
                .map(|field| {
                    let texts = texts(&field.holds);
                    (field.name, texts[turn % texts.len()].clone())
                })
                .collect();
            self.say(log, Body::Work(work(kind, &all)));
        }
        let required: Vec<(&str, String)> = kind
            .fields
            .iter()
            .filter(|field| field.required)
            .map(|field| (field.name, texts(&field.holds).remove(0)))
            .collect();
        let bare = self.say(log, Body::Work(work(kind, &required)));
        let done = self.0[0].done;
        let says = Says::Work(work(kind, &required));
        let put_right = Body::Amend(Amendment { target: bare, over: vec![], to: Some(Corrected { done, says }) });
        let over = vec![self.say(log, put_right)];
        self.say(log, Body::Amend(Amendment { target: bare, over, to: None }));
    }
}

impl Told {
    /// Planned, moved, left out, taken out of the plan.
    fn steps(&mut self) {
        let key = Key::new(WIG(), steps::SLOT, Of::Step(StepId(id(STEP)))).expect("a slot");
        let mut over = vec![];
        for kind in KINDS.iter().filter(|kind| kind.name != "count") {
            let texts: Vec<(&str, String)> = kind
                .every_field()
                .filter(|field| field.required || field.name == "remark")
                .map(|field| (field.name, texts(&field.holds).remove(0)))
                .collect();
            let planned =
                Planned { place: self.0.len() as u32, work: work(kind, &texts), skipped: Some("no time".to_owned()) };
            let value = Some(Value::Planned(Box::new(planned)));
            over = vec![self.say(WIG(), Body::Set(Setting { key, value, over }))];
        }
        self.say(WIG(), Body::Set(Setting { key, value: None, over }));
    }
}

fn read(holds: &Holds, text: &str) -> Value {
    holds.read(text, &Prefs::default()).unwrap_or_else(|say| panic!("{text}: {say:?}"))
}

fn work(kind: &'static Kind, texts: &[(&str, String)]) -> Work {
    let texts = texts.iter().map(|(name, text)| (*name, text.as_str()));
    Work::read(kind, texts, &Prefs::default()).expect("each text is readable")
}

fn exemplar() -> Vec<Entry> {
    let mut told = Told::default();
    for slot in slots::SLOTS.iter().filter(|slot| slot.per != Per::Step) {
        let subjects: Vec<Of> = match slot.per {
            Per::Wig => vec![Of::Wig],
            Per::Zone => Zone::ALL.map(Of::Zone).to_vec(),
            Per::Lot => vec![Of::Lot(LotId(id(LOT)))],
            Per::Step => vec![],
        };
        let (key, last) = told.every_value(WIG(), &slot.field, subjects[0]);
        let first = texts(&slot.field.holds).remove(0);
        for of in &subjects[1..] {
            told.set(
                WIG(),
                Key::new(WIG(), slot.field.name, *of).expect("a slot"),
                Some(&first),
                &slot.field.holds,
                &[],
            );
        }
        let done = told.0[0].done;
        let to = |value| Some(Corrected { done, says: Says::Value(key, value) });
        let value = Some(read(&slot.field.holds, &first));
        told.say(WIG(), Body::Amend(Amendment { target: last, over: vec![], to: to(value) }));
        told.say(WIG(), Body::Amend(Amendment { target: last, over: vec![], to: to(None) }));
    }
    let name = &slots::slot_named("name").expect("a slot").field;
    let key = Key::new(WIG(), "name", Of::Wig).expect("a slot");
    told.set(WIG(), key, None, &name.holds, &[]);
    told.set(WIG(), key, Some("one answer"), &name.holds, &[]);
    told.set(WIG(), key, Some("another"), &name.holds, &[]);
    for field in workshop::slots::SLOTS {
        told.every_value(LogId::Workshop, field, Of::Lot(LotId(id(LOT))));
    }
    for kind in KINDS {
        told.every_field(if kind.name == "count" { LogId::Workshop } else { WIG() }, kind);
    }
    told.steps();
    told.0
}

const NEWER: &str = r#"{"body":{"kind":"from_the_future","v":"0"},"by":"","done":"2026-11-25T09:30","id":"ff000000000000000000000000000001","lamport":7,"log":"000000000000000000000000000000c8","v":0,"written":"2026-11-25T09:31:02Z"}"#;
const BROKEN: &str =
    r#"{"body":null,"id":"ff000000000000000000000000000002","lamport":7,"log":"000000000000000000000000000000c8"}"#;

fn made() -> String {
    let entries = exemplar();
    let clash = Entry { lamport: 9000, ..entries[0].clone() };
    let item = |entry: &Entry| Item::of(entry).expect("short enough");
    let mut rows: Vec<Item> = entries.iter().map(item).collect();
    rows.extend([NEWER, BROKEN].map(Item::read));
    let records = Rows { rows, clashes: vec![item(&clash)] };
    let people = [
        (PersonId(id(230)), Person::Named { lamport: 0, name: "🪡 Née".to_owned() }),
        (PersonId(id(231)), Person::Forgotten),
    ];
    let blob = |sha256: String, rest: &str| Blob {
        raw: format!("{{{rest}}}").replacen("SUM", &sha256, 1),
        sha256,
        forgotten: rest.starts_with("\"f"),
    };
    let blobs = [
        // SHA-256 of "abc" (FIPS 180-4 example), whose base64 this is.
        blob(
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad".to_owned(),
            r#""base64":"YWJj","sha256":"SUM","thumb":"YQ==","type":"image/jpeg""#,
        ),
        blob("0".repeat(64), r#""forgotten":true,"sha256":"SUM""#),
    ];
    let head = Head { producer: "Weftbook's own tests".to_owned(), made: "2026-11-25T09:31:02Z".to_owned() };
    write_backup(&head, &records, &people, &blobs).expect("short enough")
}

fn fixture(version: u64) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(format!("tests/fixtures/backup-v{version}.json"))
}

fn opened(text: &str) -> Backup {
    let backup = read_backup(text).expect("the fixture opens");
    let report = &backup.report;
    assert_eq!((report.newer.len(), report.unreadable.len()), (1, 1), "{:?} {:?}", report.newer, report.unreadable);
    assert!(report.dropped.is_empty() && report.fixed.is_empty() && report.checksum == Checksum::Match);
    assert_eq!(report.kept + 2, backup.records.all().count());
    assert_eq!((backup.people.all().count(), backup.blobs.len()), (2, 2));
    backup
}

/// Every name and choice that a backup's rows use.
fn spoken(backup: &Backup) -> BTreeSet<String> {
    let mut spoken = BTreeSet::new();
    let mut value = |name: String, value: &Value| {
        if let Some(choice) = value.choice() {
            spoken.insert(format!("{name} {choice}"));
        }
        spoken.insert(name);
    };
    for entry in backup.records.all().filter_map(Item::entry) {
        match &entry.body {
            Body::Work(work) => {
                work.values().for_each(|(name, one)| value(format!("{} {name}", work.kind().name), one))
            }
            Body::Set(Setting { key, value: Some(one), .. }) => value(format!("slot {}", key.slot), one),
            _ => {}
        }
    }
    spoken
}

#[test]
fn every_shipped_version_is_still_read() {
    for version in 0..=format::file::VERSION {
        let text =
            fs::read_to_string(fixture(version)).unwrap_or_else(|problem| panic!("version {version}: {problem}"));
        let backup = opened(&text);
        let state = fold(&backup.records.log());
        assert!(state.oddities().iter().any(|oddity| matches!(oddity, Oddity::TwoAnswers(_))));
        assert!(state.oddities().iter().any(|oddity| matches!(oddity, Oddity::TwoCorrections(_))));
        assert!(state.oddities().iter().any(|oddity| matches!(oddity, Oddity::Clash(_))));
        if version == format::file::VERSION {
            for item in backup.records.all() {
                if let Some(entry) = item.entry() {
                    assert_eq!(
                        encode_row(entry).as_deref(),
                        Ok(item.raw.as_str()),
                        "the same entry has the same bytes"
                    );
                }
            }
        }
    }
}

#[test]
fn the_newest_fixture_says_all_that_can_be_said() {
    let path = fixture(format::file::VERSION);
    let new = spoken(&opened(&made()));
    let missing = |text: &str| new.difference(&spoken(&opened(text))).cloned().collect::<Vec<_>>();
    let old = fs::read_to_string(&path).ok();
    if old.as_deref().is_none_or(|old| !missing(old).is_empty()) && env::var_os("UPDATE_EXPECT").is_some() {
        fs::write(&path, made()).expect("the fixture is written");
    }
    let text = fs::read_to_string(&path).expect("the fixture");
    let missing = missing(&text);
    assert!(missing.is_empty(), "run this test with UPDATE_EXPECT=1 to add to the fixture: {missing:?}");
}

#[test]
fn the_exemplar_survives_a_second_writing() {
    let backup = opened(&made());
    let people: Vec<_> = backup.people.all().map(|(id, person)| (id, person.clone())).collect();
    assert_eq!(write_backup(&backup.head, &backup.records, &people, &backup.blobs).as_deref(), Ok(made().as_str()));
    let told = exemplar();
    assert_eq!(Log::of(told.clone()).all().count(), told.len());
}
