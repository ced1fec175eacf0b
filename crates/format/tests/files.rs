//! Backups and wig files: whole, damaged, of other kinds, from the future.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, reason = "a test")]

#[path = "../../record/tests/common/mod.rs"]
mod common;

use common::{WIG, any_entry, entry, id};
use format::{
    backup::{Rows, read_backup, read_rows, write_backup},
    file::{Checksum, Head, text_of},
    limits::{FILE_BYTES_MOST, LAMPORT_TAKEN_IN_MOST},
    people::encode_person,
    preview::{Counts, preview},
    row::{Decoded, Item},
    wig_file::{read_wig, write_wig},
};
use measure::say::Arg;
use proptest::{collection::vec, prelude::*, sample::Index};
use record::{
    field::Value,
    history::{
        entry::{Amendment, Body, Entry, Key, LogId, Of, Setting},
        log::Log,
        people::{People, Person},
    },
    id::{EntryId, LotId, PersonId, WigId},
};

fn head() -> Head {
    Head { producer: "a test \"🪡\"".to_owned(), made: "2026-11-25T09:31:02Z".to_owned() }
}

fn items(entries: &[Entry]) -> Vec<Item> {
    entries.iter().map(|entry| Item::of(entry).expect("short enough")).collect()
}

fn backup_of(entries: &[Entry]) -> String {
    let records = Rows { rows: items(entries), clashes: vec![] };
    let people = [(PersonId(id(230)), Person::Named { lamport: 1, name: "A. Bench".to_owned() })];
    write_backup(&head(), &records, &people, &[]).expect("short enough")
}

fn set(number: u8, lamport: u64, log: LogId, slot: &str, of: Of, text: &str) -> Entry {
    let key = Key::new(log, slot, of).expect("a slot");
    let value = match slot {
        "use_lot" => Value::YesNo(true),
        "main_lot" => Value::Lot(LotId::read(text).expect("a lot")),
        _ => Value::Text(text.to_owned()),
    };
    Entry { log, ..entry(number, lamport, Body::Set(Setting { key, value: Some(value), over: vec![] })) }
}

/// Any entry that a file may bring: not too far ahead of the clock.
fn filed() -> impl Strategy<Value = Entry> {
    any_entry().prop_map(|entry| Entry { lamport: entry.lamport.min(LAMPORT_TAKEN_IN_MOST), ..entry })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_backup_comes_back(entries in vec(filed(), 0..12)) {
        let text = backup_of(&entries);
        let backup = read_backup(&text).expect("it was just written");
        prop_assert!(backup.report.is_clean() && backup.report.checksum == Checksum::Match);
        prop_assert_eq!(&backup.head, &head());
        prop_assert_eq!(backup.records.log(), Log::of(entries.clone()));
        prop_assert_eq!(&backup.records.rows, &items(&entries));
        prop_assert_eq!(backup.people.all().count(), 1);
        // The checksum is over the list as a script's JSON writer would write it again.
        let json: serde_json::Value = serde_json::from_str(&text).expect("JSON");
        let rows = format!("\"rows\":{},\"clashes\":", json["rows"]);
        prop_assert!(text.contains(&rows));
    }

    #[test]
    fn a_damaged_file_is_answered(
        entries in vec(filed(), 0..5),
        wig in any::<bool>(), cut in any::<bool>(), at in any::<Index>(), flip in 1u8..=255,
    ) {
        let whole = if wig {
            write_wig(&head(), false, WigId(id(200)), &items(&entries), &items(&entries)).expect("short enough")
        } else {
            backup_of(&entries)
        };
        let mut bytes = whole.clone().into_bytes();
        let at = at.index(bytes.len());
        if cut { bytes.truncate(at) } else { bytes[at] ^= flip }
        let Ok(text) = text_of(&bytes) else { return Ok(()) };
        if wig {
            let _unread = read_wig(text);
        } else if let Ok(backup) = read_backup(text) {
            let rows_differ = read_backup(&whole).expect("whole").records != backup.records;
            prop_assert!(!rows_differ || !backup.report.is_clean(), "damage to a row is told");
        }
        let _unread = (read_rows(text), read_wig(text));
    }

    #[test]
    fn any_bytes_are_answered(bytes in vec(any::<u8>(), 0..200), json in "[\\[\\]{}\",:0-9a-z ]{0,120}") {
        for text in [text_of(&bytes).unwrap_or(""), &json] {
            let _unread = (read_rows(text), read_wig(text), read_backup(text));
        }
    }

    #[test]
    fn a_preview_counts_what_a_merge_does(theirs in vec(filed(), 0..12), ours in vec(filed(), 0..12)) {
        let backup = read_backup(&backup_of(&theirs)).expect("it was just written");
        let have = Rows { rows: items(&ours), clashes: vec![] };
        let seen = preview(&backup, &have, &People::default());
        let mut log = Log::of(ours);
        let mut added = record::history::log::Added::default();
        for entry in theirs {
            let one = log.add(entry);
            added.new += one.new;
            added.known += one.known;
            added.clashing += one.clashing;
        }
        let sum = seen.wigs.iter().map(|wig| wig.rows).chain([seen.workshop]).fold((0, 0, 0), |sum, rows| {
            (sum.0 + rows.new, sum.1 + rows.known, sum.2 + rows.clashing)
        });
        prop_assert_eq!(sum, (added.new, added.known, added.clashing));
    }
}

#[test]
fn a_preview_names_what_would_come() {
    let lot = LotId(id(220));
    let theirs = [
        set(1, 1, WIG(), "name", Of::Wig, "Copper bob"),
        set(2, 2, LogId::Workshop, "lot_name", Of::Lot(lot), "Copper weft"),
        set(3, 3, LogId::Wig(WigId(id(201))), "name", Of::Wig, "Second"),
    ];
    let ours = [theirs[0].clone(), set(2, 9, LogId::Workshop, "lot_name", Of::Lot(LotId(id(221))), "Other")];
    let mut people = People::default();
    people.add(PersonId(id(230)), Person::Forgotten);
    let seen =
        preview(&read_backup(&backup_of(&theirs)).unwrap(), &Rows { rows: items(&ours), clashes: vec![] }, &people);
    let wigs: Vec<_> = seen.wigs.iter().map(|wig| (wig.name.as_deref(), wig.new, wig.rows)).collect();
    let counts = |new, known, clashing| Counts { new, known, clashing };
    assert_eq!(wigs, [(Some("Copper bob"), false, counts(0, 1, 0)), (Some("Second"), true, counts(1, 0, 0))]);
    assert_eq!(seen.workshop, counts(0, 0, 1));
    // Both rows of the clash have the one identity; the name shown is of the entry that would count.
    assert_eq!(seen.lots_new.iter().map(|(lot, _)| *lot).collect::<Vec<_>>(), [lot]);
    assert_eq!((seen.people_new, seen.people_forgotten, seen.left_out), (0, 0, 0));
}

#[test]
fn what_is_no_such_file_is_said_plainly() {
    let good = backup_of(&[]);
    assert!(read_backup(&good).is_ok() && read_backup(&format!("\u{feff}{good}")).is_ok());
    for (from, to, key) in [
        ("\"backup\"", "\"wig\"", "format.other_kind"),
        ("\"weftbook\"", "\"other\"", "format.not_ours"),
        ("\"version\":0", "\"version\":1", "format.newer_file"),
        ("\"version\":0", "\"version\":\"0\"", "format.refused"),
        ("\"version\":0,", "", "format.missing"),
        ("\"rows\":[]", "\"rows\":{}", "format.list"),
        ("\"rows\":[],", "", "format.missing"),
        ("\"people\"", "\"rows\"", "format.not_as_expected"),
        ("\"made\":\"", "\"made\":", "format.not_json"),
        ("\"sha256\":\"", "\"sha256\":\"z", "format.refused"),
    ] {
        let text = good.replacen(from, to, 1);
        assert_eq!(read_backup(&text).map_err(|say| say.key).err(), Some(key), "{from} {to}");
    }
    assert_eq!(
        read_backup(&good[..good.find("\"rows\"").unwrap()]).map_err(|say| say.key).err(),
        Some("format.cut_off")
    );
    assert_eq!(read_backup("").map_err(|say| say.key).err(), Some("format.cut_off"));
    assert_eq!(read_backup(&"[".repeat(1_000_000)).map_err(|say| say.key).err(), Some("format.not_as_expected"));
    let newer = read_backup(&good.replacen("\"version\":0", "\"version\":12", 1)).unwrap_err();
    assert!(matches!(&newer.args[0], Arg::Text(by) if by.starts_with("a test")), "{newer:?}");
}

#[test]
fn size_is_refused_before_anything_is_built() {
    let spaces = " ".repeat(FILE_BYTES_MOST + 1);
    assert_eq!(read_backup(&spaces).map_err(|say| say.key).err(), Some("format.file_too_long"));
    assert_eq!(read_wig(&spaces).map_err(|say| say.key).err(), Some("format.file_too_long"));
    assert_eq!(text_of(spaces.as_bytes()).map_err(|say| say.key).err(), Some("format.file_too_long"));
    assert_eq!(text_of(&[b'{', 0xff]).map_err(|say| say.key).err(), Some("format.not_utf8"));
    let many = backup_of(&[]).replacen("\"rows\":[]", &format!("\"rows\":[{}0]", "0,".repeat(300_000)), 1);
    assert_eq!(read_backup(&many).map_err(|say| say.key).err(), Some("format.list"));
}

#[test]
fn every_row_is_kept_whatever_it_is() {
    let newer = r#"{"body":{"kind":"felt","v":"0"},"by":"","done":"2026-11-25T09:30","id":"000000000000000000000000000000ff","lamport":3,"log":"workshop","v":0,"written":"2026-11-25T09:31:02Z"}"#;
    let addressed = r#"{"body":7,"id":"000000000000000000000000000000fe","lamport":3,"log":"workshop"}"#;
    let ahead = newer.replace("\"lamport\":3", &format!("\"lamport\":{}", LAMPORT_TAKEN_IN_MOST + 1));
    let rows = [newer, addressed, "\"scrap\"", &ahead];
    let text = backup_of(&[]).replacen("\"rows\":[]", &format!("\"rows\":[{}]", rows.join(", ")), 1);
    let backup = read_backup(&text).unwrap();
    assert_eq!(backup.report.checksum, Checksum::Differs);
    assert_eq!((backup.report.kept, backup.report.newer.len(), backup.report.unreadable.len()), (0, 1, 3));
    assert_eq!(
        backup.report.unreadable.iter().map(|one| one.place.as_str()).collect::<Vec<_>>(),
        ["rows[1]", "rows[2]", "rows[3]"]
    );
    assert_eq!(backup.records.rows.iter().map(|item| item.raw.as_str()).collect::<Vec<_>>(), rows);
    assert_eq!(backup.records.taken_in(), format!("[{newer},{addressed}]"), "what says where it belongs can be stored");
    assert_eq!(preview(&backup, &Rows::default(), &People::default()).left_out, 2);
    let again = write_backup(&head(), &backup.records, &[], &[]).unwrap();
    assert_eq!(read_backup(&again).unwrap().records.rows.len(), rows.len());
    let null =
        text.replacen(&text[text.find("\"sha256\":").unwrap()..text.find(",\"rows\"").unwrap()], "\"sha256\":null", 1);
    assert_eq!(read_backup(&null).unwrap().report.checksum, Checksum::Absent);
}

#[test]
fn what_breaks_off_or_is_damaged_in_the_middle_costs_no_other_entry() {
    let entries: Vec<Entry> =
        (1..=9).map(|at| set(at, u64::from(at), WIG(), "note", Of::Wig, "},{\"body\":\"],\"clashes\":[{")).collect();
    let whole = backup_of(&entries);
    let read = |text: &str| {
        let backup = read_backup(text).expect("the head is whole");
        let damaged = backup.report.unreadable.len();
        assert!(!backup.report.is_clean(), "{text}");
        (backup.report.kept, damaged, backup.people.all().count())
    };
    let fifth = whole.find("\"id\":\"00000000000000000000000000000005\"").unwrap();
    assert_eq!(read(&whole[..fifth]), (4, 1, 0), "broken off within the fifth");
    assert_eq!(read(&whole.replacen("\"id\":\"00000000000000000000000000000005\"", "\"id\":\"5", 1)), (8, 1, 1));
    assert_eq!(read(whole.trim_end().trim_end_matches('}')), (9, 0, 1), "only the last brace is gone");
    assert_eq!(read(&whole.replacen("],\"clashes\":[", "],\"clash", 1)), (8, 1, 1), "a list's opening is gone");
    assert_eq!(read(&whole.replacen("],\"clashes\"", ",\"clashes\"", 1)), (9, 0, 1), "a list's end is gone");
    let backup = read_backup(&whole[..fifth]).unwrap();
    assert_eq!(backup.report.fixed[0].place, "rows");
    assert_eq!(backup.report.checksum, Checksum::Differs);

    let wig = write_wig(&head(), false, WigId(id(200)), &items(&entries), &[]).unwrap();
    let fifth = wig.find("\"id\":\"00000000000000000000000000000005\"").unwrap();
    assert_eq!(read_wig(&wig[..fifth]).unwrap().report.kept, 4);
    // However it is damaged, time goes with its length: this is nothing but seams.
    let seams = format!("{}{}", &whole[..whole.find("{\"body\"").unwrap()], "},{\"body\":".repeat(190_000));
    assert_eq!(read(&seams).0, 0);
}

#[test]
fn damaged_people_and_photos_are_left_out_and_named() {
    let forgotten = encode_person(PersonId(id(230)), &Person::Forgotten).unwrap();
    let named = encode_person(PersonId(id(230)), &Person::Named { lamport: 9, name: "A".to_owned() }).unwrap();
    let zero = "0".repeat(64);
    let text = backup_of(&[]);
    let start = text.find("\"people\"").unwrap();
    let text = format!(
        "{}\"people\":[{forgotten},{named},7],\"blobs\":[{{\"sha256\":\"{zero}\",\"forgotten\":true}},{{\"sha256\":\"{zero}\",\"forgotten\":true}},{{\"sha256\":\"{zero}\",\"type\":\"image/png\",\"base64\":\"a\",\"thumb\":\"\"}},null],\"unread\":[{{}}],\"mood\":1}}",
        &text[..start]
    );
    let backup = read_backup(&text).unwrap();
    assert_eq!(backup.people.all().collect::<Vec<_>>(), [(PersonId(id(230)), &Person::Forgotten)]);
    assert_eq!(backup.blobs.len(), 1);
    let places = |list: &[format::file::Problem]| list.iter().map(|one| one.place.clone()).collect::<Vec<_>>();
    assert_eq!(places(&backup.report.dropped), ["people[2]", "blobs[2]", "blobs[3]", "mood", "unread"]);
    assert_eq!(places(&backup.report.fixed), ["blobs[1]"]);
}

#[test]
fn a_wig_file_carries_the_cards_of_its_lots_and_never_adds_them() {
    let (used, other) = (LotId(id(220)), LotId(id(221)));
    let wig =
        [set(1, 1, WIG(), "name", Of::Wig, "Copper bob"), set(2, 2, WIG(), "main_lot", Of::Wig, &used.to_string())];
    let undone = Entry {
        log: LogId::Workshop,
        ..entry(6, 6, Body::Amend(Amendment { target: EntryId(id(4)), over: vec![], to: None }))
    };
    let workshop = [
        set(3, 3, LogId::Workshop, "lot_name", Of::Lot(used), "Copper weft"),
        set(4, 4, LogId::Workshop, "lot_colour", Of::Lot(used), "copper"),
        set(5, 5, LogId::Workshop, "lot_name", Of::Lot(other), "Other"),
        undone,
    ];
    let text = write_wig(&head(), true, WigId(id(200)), &items(&wig), &items(&workshop)).unwrap();
    let file = read_wig(&text).unwrap();
    assert!(
        file.demo && file.report.is_clean() && file.report.checksum == Checksum::Match && file.wig == WigId(id(200))
    );
    assert_eq!(file.log(), Log::of(wig.clone()));
    assert_eq!(file.workshop(), Log::of([0, 1, 3].map(|at| workshop[at].clone())));
    let taken: serde_json::Value = serde_json::from_str(&file.taken_in()).unwrap();
    assert_eq!(taken.as_array().map(Vec::len), Some(wig.len()));
    assert!(!file.taken_in().contains("workshop"));

    // Rows of another wig are not smuggled in, and a wig's rows are no cards.
    let other_wig = text.replacen(
        "\"wig\":\"000000000000000000000000000000c8\"",
        "\"wig\":\"000000000000000000000000000000c9\"",
        1,
    );
    let file = read_wig(&other_wig).unwrap();
    assert_eq!((file.rows.len(), file.report.dropped.len(), file.report.kept), (0, 2, 3));
    for (from, to, key) in [
        ("\"demo\":true", "\"demo\":1", "format.refused"),
        ("\"wig\":\"0", "\"wig\":\"x", "format.refused"),
        ("\"weftbook\":\"wig\"", "\"weftbook\":\"backup\"", "format.other_kind"),
    ] {
        assert_eq!(read_wig(&text.replacen(from, to, 1)).map_err(|say| say.key).err(), Some(key));
    }
}

#[test]
fn the_stores_own_answer_is_read() {
    let undo = Body::Amend(Amendment { target: EntryId(id(4)), over: vec![], to: None });
    let text = format!("{{\"rows\":[{}],\"clashes\":[]}}", items(&[entry(1, 1, undo)])[0].raw);
    let rows = read_rows(&text).unwrap();
    assert!(matches!(rows.rows[0].decoded, Decoded::Entry(_)) && rows.clashes.is_empty());
    assert_eq!(read_rows("{\"rows\":[]}").map_err(|say| say.key), Err("format.missing"));
}
