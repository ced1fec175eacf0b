//! Handing over across rooms: what leaves is what the sheet shows, hostile words in every field run nowhere, the demo's links
//! are as long as said, and the wigs that ship keep to the schema.
//!
//! What it is: whole ways from a record and back. What it is not: single decoders (see the `format` room).

#![allow(clippy::expect_used, clippy::panic, clippy::print_stdout, reason = "a test that tells link lengths")]

use std::{collections::BTreeSet, fs};

use format::{
    file::Head,
    handover::{code, entries, handed, link, slip, slip_file},
    schema, table,
    wig_file::{WigFile, read_wig},
};
use measure::{
    civil::{Date, Minute},
    prefs::Prefs,
    say::Words,
};
use plan::care;
use record::{
    field::{Field, Holds},
    handover::{
        handed::Handed,
        slip::{Answer, Slip},
        take::{self, Found},
    },
    history::{
        entry::{LogId, Written},
        fold::fold,
        log::Log,
    },
    id::Id,
    wig::{figures::Wig, work::Work},
    workshop::{
        locks::{labels, locks},
        lots::lots,
    },
};
use sheet::{
    drawing::Voice,
    paper::{self, Choices, Facts, Part},
};
use weftbook_tests::{full, places};

const WORDS: Words =
    Words(&[measure::words::ENGLISH, record::words::ENGLISH, plan::words::ENGLISH, sheet::words::ENGLISH]);
const DEMOS: [&str; 3] = ["copper-bob", "storm-mane", "evening-dressing"];

fn demo(name: &str) -> WigFile {
    let text = fs::read_to_string(places::demos().join(format!("{name}.wig.json"))).expect("the demo");
    read_wig(&text).expect("reads")
}

/// The data of a wig's sheet, and the sheet's file that carries it.
fn handed_of(wig: &Log, workshop: &Log, choices: &Choices) -> (Handed, String) {
    let (state, workshop) = (fold(wig), fold(workshop));
    let (lots, locks, labels) = (lots(&workshop, [&state]), locks(&workshop, [(full::WIG, &state)]), labels(&workshop));
    let today = Date::read("2026-11-25").expect("a day");
    let read = Wig::new(&state);
    let bench = care::Bench { wig: &read, lots: &lots, locks: &locks, labels: &labels };
    let facts = Facts { bench: &bench, answer: None, photos: &[], entries: wig.entries().count(), demo: false, today };
    let voice = Voice { words: &WORDS, prefs: &Prefs::default() };
    let handed = paper::handed(&facts, choices, full::WIG, 40, &voice);
    let payload = handed::payload(&handed).expect("a payload");
    (handed, paper::file(&paper::sheet(&facts, choices, &voice), Some(&payload)))
}

fn everything() -> Choices {
    Part::ALL.into_iter().fold(Choices::default(), |choices, part| choices.with(part, true))
}

/// What was done, from what was planned: each line that reads as it is.
fn answered(handed: &Handed) -> Slip {
    let done = Minute::read("2026-11-26T10:00").expect("a minute");
    let answer = |line: &record::handover::handed::Line| {
        let texts = line.texts();
        let work = Work::read(line.kind, texts.iter().map(|(name, text)| (*name, text.as_str())), &Prefs::default());
        Some(Answer { number: line.number, step: Some(line.step), done, as_planned: true, work: work.ok()? })
    };
    Slip {
        id: Id::from_bytes([9; 16]),
        wig: handed.wig,
        name: handed.name.clone(),
        who: handed.name.chars().take(100).collect(),
        lamport: handed.lamport,
        written: Written::read("2026-11-26T10:00:00Z").expect("a moment"),
        lines: handed.lines.iter().filter_map(answer).collect(),
        photos: Vec::new(),
    }
}

#[test]
fn the_demos_links_and_the_way_back() {
    for name in DEMOS {
        let file = demo(name);
        let (handed, html) = handed_of(&file.log(), &file.workshop(), &Choices::default());
        let payload = handed::payload(&handed).expect("a payload");
        let link = link::link("https://example.org/weftbook/", &payload);
        println!(
            "{name}: {} lines, a link of {} characters, code: {}",
            handed.lines.len(),
            link.len(),
            code::code(&link).is_some()
        );
        assert_eq!(link::reach(&link), link::Reach::Everywhere, "{name}: {} characters", link.len());
        assert!(code::code(&link).is_some(), "{name}");
        assert_eq!(link::open(&html), Ok(link::Opened::Handed(handed.clone())), "{name}: from the file");
        assert_eq!(link::open(&link), Ok(link::Opened::Handed(handed.clone())), "{name}: from the link");
        let slip = answered(&handed);
        // To whom it is handed is the wearer's: not ticked, that line has to be filled in.
        let asks = handed.lines.iter().filter(|line| line.kind.name == "hand_over").count();
        assert_eq!(slip.lines.len() + asks, handed.lines.len(), "{name}: each line can be ticked");
        let added = entries::entries(&slip).expect("entries");
        let found = take::look(&file.log(), &fold(&file.log()), &added);
        let new = Found::New { no_step: false, planned_otherwise: false };
        assert!(found.iter().all(|one| *one == new), "{name}: {found:?}");
    }
    let steps = |name| handed_of(&demo(name).log(), &demo(name).workshop(), &Choices::default()).0.lines.len();
    assert!(steps("copper-bob") > 10, "the demo has steps to hand over");
}

#[test]
fn the_data_holds_nothing_that_its_sheet_does_not_show() {
    let mut marks = Vec::new();
    let full = full::full(&mut |_, field| match field.holds {
        Holds::Text(_) if field.name != "overruled" => {
            marks.push(format!("Zq{:03}x", marks.len()));
            marks.last().cloned()
        }
        Holds::Text(_) => None,
        _ => full::usual(field),
    })
    .expect("a wig");
    let mut seen = 0;
    let one = |part| Choices::none().with(part, true);
    let both = |part| one(Part::Steps).with(part, true);
    let choices = [Choices::default(), Choices::none(), everything()];
    for choices in choices.into_iter().chain(Part::ALL.map(one)).chain(Part::ALL.map(both)) {
        let (handed, html) = handed_of(&full.wig, &full.workshop, &choices);
        let json = handed::to_json(&handed);
        for mark in marks.iter().filter(|mark| json.contains(mark.as_str())) {
            assert!(html.contains(mark.as_str()), "{mark} is in the data alone: {choices:?}");
            seen += 1;
        }
        assert_eq!(handed.lines.is_empty(), !choices.has(Part::Steps));
    }
    assert!(seen > 100, "{seen}");
}

/// How each cell of a table begins, its quotation mark taken off.
fn beginnings(text: &str) -> Vec<Option<char>> {
    let (mut begins, mut within, mut fresh) = (Vec::new(), false, true);
    for letter in text.chars() {
        if letter == '"' {
            within = !within;
            continue;
        }
        if core::mem::take(&mut fresh) {
            begins.push((!matches!(letter, ',' | '\r') || within).then_some(letter));
        }
        fresh = !within && matches!(letter, ',' | '\n');
    }
    begins
}

const HOSTILE: [&str; 6] = [
    "<script>alert(1)</script>",
    "\"><img src=x onerror=alert(1)>",
    "</template><script>alert(1)</script>",
    "=cmd|' /C calc'!A1",
    "javascript:alert(1)//\u{202e}\u{0}\r\n&#60;script&#62;",
    "@SUM(1+1)*',\"{{constructor}}",
];

/// Elements that a text opens, by name.
fn elements(html: &str) -> BTreeSet<String> {
    html.split('<')
        .skip(1)
        .map(|rest| rest.chars().take_while(char::is_ascii_alphanumeric).collect::<String>().to_lowercase())
        .filter(|name| !name.is_empty())
        .collect()
}

#[test]
fn hostile_words_in_every_field_run_nowhere() {
    for hostile in HOSTILE {
        let mut fill = |_, field: &Field| match field.holds {
            Holds::Text(most) => Some(hostile.chars().take(most).collect()),
            _ => full::usual(field),
        };
        let full = full::full(&mut fill).expect("a wig");
        let (handed, html) = handed_of(&full.wig, &full.workshop, &everything());
        // Print and file: no element but ours, none of them a script; the words are there as text.
        let known = elements(&handed_of(&demo("copper-bob").log(), &demo("copper-bob").workshop(), &everything()).1);
        let strange: Vec<String> = elements(&html).difference(&known).cloned().collect();
        assert!(
            strange.iter().all(|name| ["figure", "figcaption", "img"].contains(&name.as_str())),
            "{hostile}: {strange:?}"
        );
        assert!(!elements(&html).contains("script"), "{hostile}");
        assert_eq!(html.matches("<template").count(), 1, "{hostile}");
        // Link and file bring back the same words.
        let payload = handed::payload(&handed).expect("a payload");
        assert!(payload.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-' || byte == b'_'));
        assert_eq!(link::open(&html), Ok(link::Opened::Handed(handed.clone())), "{hostile}");
        // Slip by link and by file.
        let slip = answered(&handed);
        assert!(slip.lines.len() > 20, "{}", slip.lines.len());
        assert_eq!(
            link::open(&slip::payload(&slip).expect("a payload")),
            Ok(link::Opened::Slip(slip.clone())),
            "{hostile}"
        );
        let head = Head { producer: hostile.to_owned(), made: hostile.to_owned() };
        assert_eq!(
            slip_file::read_slip(&slip_file::write(&head, &slip).expect("a file")),
            Ok(slip.clone()),
            "{hostile}"
        );
        // Table: no cell begins as a sum, and all of it comes back.
        let mut log = full.wig;
        for entry in entries::entries(&slip).expect("entries") {
            log.add(entry);
        }
        let all: Vec<_> = log.entries().cloned().collect();
        let text = table::write(&all);
        let sums = beginnings(&text).into_iter().flatten().filter(|letter| "=+-@\t\r".contains(*letter));
        assert_eq!(sums.collect::<String>(), "", "{hostile}");
        assert!(beginnings("=1,\"+2\"\r\n").into_iter().flatten().eq("=+".chars()), "the check sees them");
        let back = table::read(&text, LogId::Wig(full::WIG), &log, &Written::epoch()).expect("a table");
        assert_eq!((back.here, back.problems.len()), (all.len(), 0), "{hostile}: {:?}", back.problems.first());
    }
}

#[test]
fn the_wigs_that_ship_keep_to_the_schema() {
    let schema: serde_json::Value = serde_json::from_str(&schema::wig(&WORDS)).expect("JSON");
    let judge = jsonschema::draft202012::new(&schema).expect("a schema");
    let mut rows = 0;
    for name in DEMOS {
        let text = fs::read_to_string(places::demos().join(format!("{name}.wig.json"))).expect("the demo");
        let wig: serde_json::Value = serde_json::from_str(&text).expect("JSON");
        let first = judge.iter_errors(&wig).next().map(|error| format!("{} at {}", error, error.instance_path()));
        assert_eq!(first, None, "{name}");
        rows += wig["rows"].as_array().map_or(0, Vec::len);
        // A schema that takes anything would be none.
        for (path, odd) in
            [("/rows/0/id", "x"), ("/rows/1/body/kind", "knit"), ("/rows/0/v", "0"), ("/weftbook", "backup")]
        {
            let mut changed = wig.clone();
            *changed.pointer_mut(path).expect("a member") = odd.into();
            assert!(!judge.is_valid(&changed), "{name}: {path}");
        }
    }
    assert!(rows > 100);
    let full = full::full(&mut |_, field| full::usual(field)).expect("a wig");
    let whole: serde_json::Value = serde_json::from_str(&full.file().expect("a file")).expect("JSON");
    let first = judge.iter_errors(&whole).next().map(|error| format!("{} at {}", error, error.instance_path()));
    assert_eq!(first, None, "every kind and every slot");
}
