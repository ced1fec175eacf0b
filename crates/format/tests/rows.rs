//! Rows: what is written is read again, and whatever comes instead is answered.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, reason = "a test")]

#[path = "../../record/tests/common/mod.rs"]
mod common;

use common::any_entry;
use format::{
    limits::{LAMPORT_MOST, ROW_BYTES_MOST},
    row::{Decoded, Item, decode_row, encode_row},
};
use measure::say::Say;
use proptest::{collection::vec, prelude::*, sample::Index};
use record::history::{
    entry::{Body, Entry},
    log::Log,
};

/// Whatever a row says, reading it again from what was kept gives the same answer.
fn check_total(text: &str) {
    let item = Item::read(text);
    assert_eq!(item.raw, text);
    match &item.decoded {
        Decoded::Entry(entry) => {
            let again = encode_row(entry).expect("what was read can be written");
            assert_eq!(decode_row(&again), item.decoded);
        }
        Decoded::Newer { id, log, .. } => {
            let at = item.address.expect("it has an identity");
            assert_eq!((at.id, at.log), (*id, *log));
        }
        Decoded::Unreadable { raw, .. } => assert_eq!(raw, text),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn an_entry_comes_back_and_its_bytes_are_its_own(entry in any_entry()) {
        let text = encode_row(&entry).expect("short enough");
        prop_assert_eq!(decode_row(&text), Decoded::Entry(entry));
        // Sorted and without spaces: what a JSON library makes of it is the same text.
        let value: serde_json::Value = serde_json::from_str(&text).expect("JSON");
        prop_assert_eq!(value.to_string(), text);
    }

    #[test]
    fn two_entries_have_one_text_only_if_they_are_one(a in any_entry(), b in any_entry()) {
        prop_assert_eq!(encode_row(&a) == encode_row(&b), a == b);
    }

    #[test]
    fn whatever_text_comes_is_answered(text in "\\PC{0,80}", json in "[\\[\\]{}\",:0-9a-f ]{0,80}") {
        check_total(&text);
        check_total(&json);
    }

    #[test]
    fn a_damaged_row_is_answered(entry in any_entry(), at in any::<Index>(), flip in 1u8..=255, cut in any::<bool>()) {
        let mut bytes = encode_row(&entry).expect("short enough").into_bytes();
        let at = at.index(bytes.len());
        if cut { bytes.truncate(at) } else { bytes[at] ^= flip }
        check_total(&String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn a_row_with_parts_exchanged_is_answered(
        entry in any_entry(),
        changes in vec((any::<Index>(), any::<bool>(), prop_oneof![
            Just("null"), Just("0"), Just("\"\""), Just("\"a\""), Just("{}"), Just("[]"), Just("-1"), Just("1e999"), Just("true"),
        ]), 1..3),
    ) {
        let mut row: serde_json::Map<String, serde_json::Value> =
            serde_json::from_str(&encode_row(&entry).expect("short enough")).expect("JSON");
        for (at, inner, json) in changes {
            let object = match row.get_mut("body") {
                Some(serde_json::Value::Object(body)) if inner => body,
                _ => &mut row,
            };
            let names: Vec<String> = object.keys().cloned().collect();
            let value = serde_json::from_str(json).unwrap_or(serde_json::Value::from(f64::MAX));
            if !names.is_empty() {
                object.insert(at.get(&names).clone(), value);
            }
        }
        check_total(&serde_json::Value::Object(row).to_string());
    }

    #[test]
    fn a_log_comes_back_whole(entries in common::wild_history()) {
        let log = Log::of(entries);
        let texts: Vec<String> = log.all().map(|entry| encode_row(entry).expect("short enough")).collect();
        let back = Log::of(texts.iter().filter_map(|text| Item::read(text).entry().cloned()));
        prop_assert_eq!(back, log);
    }
}

const HEAD: &str = r#""by":"","done":"2026-11-25T09:30","id":"000000000000000000000000000000ff","lamport":3,"log":"000000000000000000000000000000aa","written":"2026-11-25T09:31:02Z""#;

/// The key of what is said of a row, with how it was taken.
fn answer(row: &str) -> (&'static str, &'static str) {
    let key = |say: &Say| say.key;
    match &decode_row(row) {
        Decoded::Entry(_) => ("entry", ""),
        Decoded::Newer { what, .. } => ("newer", key(what)),
        Decoded::Unreadable { reason, .. } => ("unreadable", key(reason)),
    }
}

#[test]
fn each_case_of_the_table_is_answered_as_it_says() {
    let cases = include_str!("cases/bodies.txt");
    let mut count = 0;
    for line in cases.lines().filter(|line| !line.is_empty() && !line.starts_with('#')) {
        let cells: Vec<&str> = line.splitn(3, " | ").collect();
        let [taken, key, body] = cells[..] else { panic!("three cells: {line}") };
        let row = format!("{{{HEAD},\"v\":0,\"body\":{body}}}");
        assert_eq!(answer(&row), (taken, if key == "-" { "" } else { key }), "{line}");
        count += 1;
    }
    assert!(count > 30, "{count}");
}

#[test]
fn envelopes_are_answered() {
    let body = r#"{"kind":"note","v":"0","words":"x"}"#;
    let good = format!("{{{HEAD},\"v\":0,\"body\":{body}}}");
    assert_eq!(answer(&good), ("entry", ""));
    for (from, to, want) in [
        ("\"v\":0", "\"v\":1", ("newer", "format.newer_row")),
        ("\"v\":0", "\"v\":99999999999999999999", ("unreadable", "format.refused")),
        ("\"v\":0,", "", ("unreadable", "format.missing")),
        ("\"v\":0", "\"v\":0,\"mood\":\"good\"", ("newer", "format.newer_field")),
        ("\"lamport\":3", "\"lamport\":3.5", ("unreadable", "format.refused")),
        ("\"lamport\":3", "\"lamport\":9007199254740991", ("entry", "")),
        ("\"lamport\":3", "\"lamport\":9007199254740992", ("unreadable", "format.refused")),
        ("2026-11-25T09:30", "2026-11-31T09:30", ("unreadable", "format.refused")),
        ("09:31:02Z", "09:31:02", ("unreadable", "format.refused")),
        ("\"by\":\"\"", "\"by\":\"me\"", ("unreadable", "format.refused")),
        ("00ff", "00FF", ("unreadable", "format.refused")),
        ("00aa", "00a", ("unreadable", "format.refused")),
        ("}}", "}", ("unreadable", "format.cut_off")),
        ("}}", "}}}", ("unreadable", "format.not_json")),
        (body, "[]", ("unreadable", "format.refused")),
        (body, "{\"kind\":\"note\",\"v\":0}", ("unreadable", "format.refused")),
    ] {
        let row = good.replacen(from, to, 1);
        assert_ne!(row, good, "{from}");
        assert_eq!(answer(&row), want, "{row}");
    }
    assert_eq!(answer(&"[".repeat(ROW_BYTES_MOST)).0, "unreadable");
    assert_eq!(answer(&" ".repeat(ROW_BYTES_MOST + 1)), ("unreadable", "format.row_too_long"));
}

#[test]
fn a_row_nobody_could_read_is_not_written() {
    let note = |over: usize| {
        let body = Body::Amend(record::history::entry::Amendment {
            target: record::id::EntryId(common::id(1)),
            over: vec![record::id::EntryId(common::id(2)); over],
            to: None,
        });
        common::entry(3, 4, body)
    };
    assert!(encode_row(&note(1900)).is_ok());
    assert_eq!(encode_row(&note(2000)).map_err(|say| say.key), Err("format.row_too_long"));
    let late = Entry { lamport: LAMPORT_MOST + 1, ..note(0) };
    assert_eq!(encode_row(&late).map_err(|say| say.key), Err("format.refused"));
}
