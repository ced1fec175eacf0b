//! Payloads, slips and tables: what goes out comes back the same, whatever comes in is answered, a slip adds the same each time.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "a test")]

use format::{
    file::Head,
    handover::{code, entries, handed, link, payload, slip, slip_file},
    table,
};
use measure::{
    civil::{Date, Minute},
    prefs::Prefs,
};
use proptest::prelude::*;
use record::{
    field::Holds,
    handover::{
        handed::{Handed, Line},
        slip::{Answer, Photo, Slip},
        take::{self, Choice, Found},
    },
    history::{
        desk,
        entry::{Body, Entry, LogId, Written},
        fold::fold,
        log::Log,
    },
    id::{EntryId, Id, LotId, PhotoId, StepId, WigId},
    wig::{
        steps::{GAP, Planned, steps},
        work::{KINDS, Work, kind_named},
    },
};

const WIG: WigId = WigId(Id::from_bytes([7; 16]));
const LOG: LogId = LogId::Wig(WIG);

fn minute(text: &str) -> Minute {
    Minute::read(text).expect("a minute")
}

fn written() -> Written {
    Written::read("2026-11-25T09:31:02Z").expect("a moment")
}

/// What fills a field, with these words where it takes words.
fn text(holds: &Holds, words: &str) -> Option<String> {
    let middle =
        |limit: &measure::limit::Limit| format!("{} {}", ((limit.low + limit.high) / 2.0).ceil(), limit.unit.symbol());
    Some(match holds {
        Holds::Quantity(limit) => middle(limit),
        Holds::AnyOf(limits) => middle(limits.first()?),
        Holds::Money => "12.34".to_owned(),
        Holds::Count(low, _) => low.to_string(),
        Holds::Text(_) if words.trim().is_empty() => "x".to_owned(),
        Holds::Text(most) => words.chars().take(*most).collect(),
        Holds::Choice(choices) => (*choices.first()?).to_owned(),
        Holds::Date => "2029-04-14".to_owned(),
        Holds::Zone => "back".to_owned(),
        Holds::Lot => LotId(Id::from_bytes([0x4c; 16])).to_string(),
        Holds::YesNo => "yes".to_owned(),
        Holds::Zones => "back nape".to_owned(),
        Holds::Photo => "ab".repeat(32),
        Holds::Shade => "#c04a7a".to_owned(),
        Holds::Along => "#3b2a20 to 40, #c04a7a".to_owned(),
        Holds::Step | Holds::Planned => return None,
    })
}

fn full_work(kind: usize, words: &str) -> Work {
    let kinds: Vec<_> = KINDS.iter().filter(|kind| kind.field("step").is_some()).collect();
    let kind = kinds[kind % kinds.len()];
    let texts: Vec<(&str, String)> =
        kind.every_field().filter_map(|field| Some((field.name, text(&field.holds, words)?))).collect();
    Work::read(kind, texts.iter().map(|(name, text)| (*name, text.as_str())), &Prefs::default()).expect("work")
}

fn a_handed(words: &str, kinds: &[usize]) -> Handed {
    let lines = (1..).zip(kinds).map(|(number, kind)| {
        let work = full_work(*kind, words);
        Line {
            number,
            step: StepId(Id::from_bytes([number as u8; 16])),
            begun: number % 2 == 0,
            kind: work.kind(),
            values: work
                .kind()
                .every_field()
                .filter_map(|field| Some((field, work.get(field.name)?.clone())))
                .collect(),
            most: Some(words.to_owned()).filter(|words| !words.is_empty()),
            mind: vec!["too_hot".to_owned()],
        }
    });
    Handed {
        wig: WIG,
        name: words.to_owned(),
        ask: words.to_owned(),
        day: Date::read("2026-11-25").expect("a day"),
        lamport: 41,
        lots: vec![(LotId(Id::from_bytes([0x4c; 16])), words.to_owned())],
        lines: lines.collect(),
    }
}

fn a_slip(words: &str, kinds: &[usize]) -> Slip {
    let lines = (1..).zip(kinds).map(|(number, kind)| Answer {
        number,
        step: Some(StepId(Id::from_bytes([number as u8; 16]))),
        done: minute("2026-11-26T10:00"),
        as_planned: number % 2 == 0,
        work: full_work(*kind, words),
    });
    Slip {
        id: Id::from_bytes([9; 16]),
        wig: WIG,
        name: words.to_owned(),
        who: words.chars().take(100).collect(),
        lamport: 41,
        written: written(),
        lines: lines.collect(),
        photos: Vec::new(),
    }
}

fn words() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-z ]{0,20}",
        "\\PC{0,30}",
        Just("<script>alert(1)</script>".to_owned()),
        Just("=HYPERLINK(\"http://x.example\",\"y\")".to_owned()),
        Just("\"};'--</template>\u{202e}&#13;,\r\n@SUM(1)".to_owned()),
        Just("'quoted\n+1".to_owned()),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn what_is_handed_over_comes_back(words in words(), kinds in prop::collection::vec(0usize..40, 0..12)) {
        let handed = a_handed(&words, &kinds);
        let payload = handed::payload(&handed).unwrap();
        prop_assert!(payload.bytes().all(|byte| byte.is_ascii_alphanumeric() || b"-_".contains(&byte)));
        prop_assert_eq!(link::open(&link::link("https://example.org/w/#/wig/1", &payload)), Ok(link::Opened::Handed(handed.clone())));
        let html = format!("<!doctype html>\n<p>x</p><template class=\"s-payload\">{payload}</template>\n");
        prop_assert_eq!(link::open(&html), Ok(link::Opened::Handed(handed)));
    }

    #[test]
    fn a_slip_comes_back_and_its_entries_are_the_same_each_time(words in words(), kinds in prop::collection::vec(0usize..40, 0..12), photo in prop::collection::vec(any::<u8>(), 0..60)) {
        let mut slip = a_slip(&words, &kinds);
        let payload = slip::payload(&slip).unwrap();
        prop_assert_eq!(link::open(&payload), Ok(link::Opened::Slip(slip.clone())));
        let once = entries::entries(&slip).unwrap();
        prop_assert_eq!(&once, &entries::entries(&slip).unwrap());
        prop_assert!(take::all_of(&once, WIG));
        let id = format::handover::base64::from_plain("", 0).map(|_| sha(&photo)).unwrap();
        slip.photos.push(Photo { id, bytes: photo });
        let head = Head { producer: "weftbook test".to_owned(), made: "2026-11-25T09:31:02Z".to_owned() };
        let file = slip_file::write(&head, &slip).unwrap();
        prop_assert_eq!(slip_file::read_slip(&file), Ok(slip.clone()));
        prop_assert_eq!(link::open(&file), Ok(link::Opened::Slip(slip)));
    }

    #[test]
    fn a_link_cut_or_changed_anywhere_is_refused(words in "[a-z<>\" ]{0,30}", kinds in prop::collection::vec(0usize..40, 1..6), at in any::<prop::sample::Index>(), letter in "[A-Za-z0-9_-]") {
        let payload = handed::payload(&a_handed(&words, &kinds)).unwrap();
        let at = at.index(payload.len());
        prop_assert!(link::open(&payload[..at]).is_err());
        let mut changed = payload.clone();
        changed.replace_range(at..=at, &letter);
        if changed != payload {
            prop_assert!(link::open(&changed).is_err(), "letter {at} of {}", payload.len());
        }
    }

    #[test]
    fn any_text_is_answered(text in "\\PC{0,200}", bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        let kinds = ["0h", "0s", "1h", "", "{", "<template class=\"s-payload\">0h", "#/open/0s"];
        for start in kinds {
            drop(link::open(&format!("{start}{text}")));
            drop(link::open(&format!("{start}{}", format::handover::base64::to_url(&bytes))));
        }
        // A whole frame round bytes that are no JSON of ours.
        if let Ok(payload) = payload::fold(payload::Kind::Slip, &text) {
            prop_assert!(link::open(&payload).is_err());
            prop_assert_eq!(payload::unfold(&payload), Ok((payload::Kind::Slip, text.clone())));
        }
        drop(handed::from_json(&text));
        drop(slip::from_json(&text));
        drop(slip_file::read_slip(&text));
        drop(table::read(&text, LOG, &Log::default(), &written()));
        drop(table::read(&format!("kind,done\n{text}"), LOG, &Log::default(), &written()));
        drop(code::code(&text));
    }

    #[test]
    fn entries_come_back_from_a_table(words in words(), kinds in prop::collection::vec(0usize..40, 0..8)) {
        let log = Log::of(entries::entries(&a_slip(&words, &kinds)).unwrap());
        let all: Vec<Entry> = log.entries().cloned().collect();
        let text = table::write(&all);
        // No cell is a sum to a spreadsheet.
        for line in text.lines() {
            prop_assert!(!line.split(',').any(|cell| cell.trim_start_matches('"').starts_with(['=', '+', '@'])) || words.contains(['\n', ',', '"']), "{line}");
        }
        let back = table::read(&text, LOG, &Log::default(), &written()).unwrap();
        prop_assert_eq!(&back.problems, &Vec::new());
        prop_assert_eq!(Log::of(back.whole), log.clone());
        let again = table::read(&text, LOG, &log, &written()).unwrap();
        prop_assert_eq!((again.here, again.whole.len(), again.fresh.len(), again.problems.len()), (all.len(), 0, 0, 0));
    }
}

fn sha(bytes: &[u8]) -> PhotoId {
    use sha2::{Digest, Sha256};
    let text: String = Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect();
    PhotoId::read(&text).expect("a hash")
}

/// A wig with these steps planned: sew weft, each 20 cm.
fn planned(count: u8) -> Log {
    let mut log = Log::default();
    for step in 1..=count {
        let work =
            Work::read(kind_named("sew_weft").unwrap(), [("sewn_as", "row"), ("length", "20 cm")], &Prefs::default())
                .unwrap();
        let planned = Planned { place: u32::from(step) * GAP, work, skipped: None };
        let body = desk::plan_step(&fold(&log), StepId(Id::from_bytes([step; 16])), planned);
        log.add(Entry {
            lamport: u64::from(step),
            id: EntryId(Id::from_bytes([step; 16])),
            log: LOG,
            done: minute("2026-11-25T09:00"),
            written: written(),
            by: None,
            body,
        });
    }
    log
}

fn sewn(number: u8, length: &str) -> Answer {
    let work = Work::read(kind_named("sew_weft").unwrap(), [("sewn_as", "row"), ("length", length)], &Prefs::default())
        .unwrap();
    Answer {
        number: u32::from(number),
        step: Some(StepId(Id::from_bytes([number; 16]))),
        done: minute("2026-11-26T10:00"),
        as_planned: length == "20 cm",
        work,
    }
}

fn add(log: &mut Log, entries: &[Entry]) {
    entries.iter().cloned().for_each(|entry| {
        log.add(entry);
    });
}

#[test]
fn a_slip_is_taken_once_and_asks_where_a_step_was_recorded_here_too() {
    let mut log = planned(3);
    let mut slip = a_slip("", &[]);
    slip.lines = vec![sewn(1, "20 cm"), sewn(2, "18 cm")];
    let of_slip = entries::entries(&slip).unwrap();
    // Step 2 was recorded here in the meantime.
    let mine =
        entries::entries(&Slip { id: Id::from_bytes([1; 16]), lines: vec![sewn(2, "20 cm")], ..slip.clone() }).unwrap();
    add(&mut log, &mine);
    let found = take::look(&log, &fold(&log), &of_slip);
    assert_eq!(found, [Found::New { no_step: false, planned_otherwise: false }, Found::RecordedToo(vec![mine[0].id])]);
    // Unasked, nothing is counted twice.
    let (added, undone) = take::chosen(&log, &of_slip, &found, &[]);
    assert_eq!((added.len(), undone.len()), (1, 0));
    for (choice, adds, undoes, counted) in [(Choice::Here, 1, 0, 1), (Choice::Both, 2, 0, 2), (Choice::Slips, 2, 1, 1)]
    {
        let mut log = log.clone();
        let (added, undone) = take::chosen(&log, &of_slip, &found, &[(of_slip[1].id, choice)]);
        assert_eq!((added.len(), undone.len()), (adds, undoes), "{choice:?}");
        add(&mut log, &added);
        for body in undone {
            let id = EntryId(Id::from_bytes([0xee; 16]));
            log.add(Entry {
                lamport: 99,
                id,
                log: LOG,
                done: minute("2026-11-27T10:00"),
                written: written(),
                by: None,
                body,
            });
        }
        let state = fold(&log);
        assert_eq!(steps(&state)[1].recorded_done(), counted, "{choice:?}");
        // Both versions stay in the log, and the slip's own is there already the next time.
        assert!(log.get(mine[0].id).is_some());
        let again = take::look(&log, &fold(&log), &of_slip);
        assert_eq!(again[0], Found::Here, "{choice:?}");
        if choice != Choice::Here {
            assert_eq!(again[1], Found::Here, "{choice:?}");
            let (added, undone) = take::chosen(&log, &of_slip, &again, &[(of_slip[1].id, choice)]);
            assert_eq!((added.len(), undone.len()), (0, 0), "{choice:?}");
        }
    }
}

#[test]
fn a_step_dropped_or_planned_otherwise_since_is_said() {
    let mut slip = a_slip("", &[]);
    slip.lines = vec![sewn(1, "19 cm"), sewn(9, "20 cm")];
    let log = planned(1);
    let found = take::look(&log, &fold(&log), &entries::entries(&slip).unwrap());
    assert_eq!(
        found,
        [
            Found::New { no_step: false, planned_otherwise: true },
            Found::New { no_step: true, planned_otherwise: false }
        ]
    );
}

#[test]
fn slips_of_several_people_amount_to_the_same_in_any_order() {
    let slips: Vec<Vec<Entry>> = (1..=3u8)
        .map(|of| {
            entries::entries(&Slip {
                id: Id::from_bytes([of; 16]),
                lines: vec![sewn(of, "20 cm"), sewn(2, "18 cm")],
                ..a_slip("", &[])
            })
            .unwrap()
        })
        .collect();
    let log = |order: &[usize]| {
        let mut log = planned(3);
        order.iter().for_each(|at| add(&mut log, &slips[*at]));
        log
    };
    let first = log(&[0, 1, 2]);
    for order in [&[0, 2, 1][..], &[1, 0, 2], &[2, 1, 0], &[2, 0, 1, 1, 2, 0]] {
        assert_eq!(log(order), first);
    }
    let mut merged = log(&[0]);
    merged.merge(&log(&[1]));
    merged.merge(&log(&[2]));
    let mut right = log(&[1]);
    right.merge(&log(&[2]));
    let mut left = log(&[0]);
    left.merge(&right);
    assert_eq!((&merged, &left), (&first, &first));
    assert_eq!(first.clashes().count(), 0);
}

#[test]
fn a_slip_for_another_wig_or_from_a_newer_version_is_refused_in_plain_words() {
    let slip = a_slip("Storm mane", &[]);
    assert_eq!(take::check(&slip, WIG), Ok(()));
    let refused = take::check(&slip, WigId(Id::from_bytes([8; 16]))).unwrap_err();
    assert_eq!(refused.key, "handover.other_wig");
    let payload = slip::payload(&slip).unwrap();
    assert_eq!(link::open(&payload.replacen('0', "1", 1)).map_err(|say| say.key), Err("handover.newer"));
    let file = "{\"weftbook\":\"slip\",\"version\":1,\"producer\":\"weftbook 9\",\"made\":\"x\"}";
    assert_eq!(link::open(file).map_err(|say| say.key), Err("format.newer_file"));
    let newer = slip::to_json(&slip).replace(
        "\"lines\":[]",
        "\"lines\":[{\"n\":1,\"done\":\"2026-11-26T10:00\",\"work\":{\"kind\":\"knit\",\"v\":\"0\"}}]",
    );
    let newer = payload::fold(payload::Kind::Slip, &newer).unwrap();
    assert_eq!(link::open(&newer).map_err(|say| say.key), Err("format.newer_kind"));
    let count = slip::to_json(&slip).replace("\"lines\":[]", "\"lines\":[{\"n\":1,\"done\":\"2026-11-26T10:00\",\"work\":{\"kind\":\"count\",\"v\":\"0\",\"lot\":\"07070707070707070707070707070707\"}}]");
    let count = payload::fold(payload::Kind::Slip, &count).unwrap();
    assert_eq!(link::open(&count).map_err(|say| say.key), Err("format.refused"), "a stock count comes in with no slip");
}

#[test]
fn declared_sizes_are_checked_before_anything_is_unfolded() {
    // A megabyte more than allowed, declared honestly; then a bomb that declares little.
    let bytes = |length: u32, json: &[u8]| {
        let mut all = length.to_be_bytes().to_vec();
        all.extend([0; 4]);
        all.extend(miniz_oxide::deflate::compress_to_vec(json, 9));
        format!("0s{}", format::handover::base64::to_url(&all))
    };
    let zeros = vec![b' '; 40 << 20];
    assert_eq!(link::open(&bytes(40 << 20, &zeros)).map_err(|say| say.key), Err("handover.too_much"));
    assert_eq!(link::open(&bytes(10, &zeros)).map_err(|say| say.key), Err("handover.damaged"));
    assert_eq!(link::open(&"x".repeat(1 << 20)).map_err(|say| say.key), Err("handover.too_much"));
    let head = Head { producer: "x".to_owned(), made: "x".to_owned() };
    let mut slip = a_slip("", &[]);
    slip.photos.push(Photo { id: sha(b"abc"), bytes: b"abc".to_vec() });
    let file = slip_file::write(&head, &slip).unwrap();
    for (from, to, key) in [
        ("\"bytes\":3", "\"bytes\":999999999999", "handover.photo_too_large"),
        ("\"bytes\":3", "\"bytes\":4", "handover.photo_damaged"),
        ("\"bytes\":3", "\"bytes\":-1", "handover.photo_damaged"),
        ("YWJj", "YWJk", "handover.photo_damaged"),
        ("\"lamport\":41", "\"lamport\":42", "handover.damaged"),
    ] {
        assert_eq!(slip_file::read_slip(&file.replace(from, to)).map_err(|say| say.key), Err(key), "{to}");
    }
}

#[test]
fn a_table_that_somebody_wrote_is_looked_at_line_by_line() {
    let text = "kind,done,sewn_as,length,remark\r\n\
        sew_weft,2026-11-26T10:00,row,20 cm,\"two\nlines\"\r\n\
        sew_weft,2026-11-26T10:00,row,,\r\n\
        sew_weft,yesterday,row,20 cm,\r\n\
        knit,2026-11-26T10:00,,,\r\n\
        ,,,,\r\n\
        set,2026-11-26T10:00,,,\r\n";
    let table = table::read(text, LOG, &Log::default(), &written()).unwrap();
    assert_eq!((table.fresh.len(), table.whole.len(), table.here), (1, 0, 0));
    let Body::Work(work) = &table.fresh[0].body else { panic!("work") };
    assert_eq!(work.get("remark").map(|value| value.text()).as_deref(), Some("two\nlines"));
    let problems: Vec<(&str, &str)> = table.problems.iter().map(|one| (one.place.as_str(), one.why.key)).collect();
    assert_eq!(
        problems,
        [("4", "format.work"), ("5", "table.no_done"), ("6", "format.newer_kind"), ("8", "format.missing")]
    );
    // Read again when it is here, it adds nothing.
    let log = Log::of(table.fresh.into_iter().map(|entry| Entry { lamport: 12, ..entry }));
    let again = table::read(text, LOG, &log, &Written::epoch()).unwrap();
    assert_eq!((again.fresh.len(), again.here), (0, 1));
    for (text, key) in [("a,b\n1,2", "table.no_kind"), ("kind,kind\n", "table.twice"), ("kind\n\"x", "table.quote")] {
        assert_eq!(table::read(text, LOG, &log, &written()).map_err(|say| say.key), Err(key), "{text}");
    }
}

#[test]
fn a_code_holds_what_the_standard_says() {
    // ISO/IEC 18004: version 25 holds 997 bytes at level M and 1,273 at level L, as computed from the tables of the encoder.
    for (bytes, side) in [(997, Some(117)), (1273, Some(117)), (1274, None), (213, Some(57))] {
        assert_eq!(code::code(&"x".repeat(bytes)).map(|code| code.side), side, "{bytes}");
    }
}
