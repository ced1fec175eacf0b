//! Words of all rooms: no key twice, every key that is said has its sentence, every name its label, places filled.

#![allow(clippy::expect_used, clippy::panic, reason = "a test")]

use std::collections::{BTreeMap, BTreeSet};

use measure::say::Table;
use record::{
    field::{Field, Holds},
    trade::{caps, fibres, sizes},
    wig::{slots, work, zone::Zone},
    workshop,
};
use weftbook_tests::{
    places,
    sources::{self, Said},
};

// Formatted with their own rooms.
#[path = "../../web/src/words.rs"]
#[rustfmt::skip]
mod web_words;

#[path = "../../web/src/pages/bench/words.rs"]
#[rustfmt::skip]
mod bench_words;

#[path = "../../web/src/pages/colour/words.rs"]
#[rustfmt::skip]
mod colour_words;

#[path = "../../web/src/pages/drawer/words.rs"]
#[rustfmt::skip]
mod drawer_words;

#[path = "../../web/src/pages/handover/words.rs"]
mod handover_words;
#[path = "../../web/src/pages/paper/words.rs"]
#[rustfmt::skip]
mod paper_words;
#[path = "../../web/src/pages/heat/words.rs"]
#[rustfmt::skip]
mod heat_words;

#[path = "../../crates/cli/src/words.rs"]
#[allow(dead_code, reason = "of its two tables only its own is wanted here")]
#[rustfmt::skip]
mod cli_words;

const TABLES: &[(&str, Table)] = &[
    ("measure", measure::words::ENGLISH),
    ("record", record::words::ENGLISH),
    ("plan", plan::words::ENGLISH),
    ("plan", plan::colour::words::ENGLISH),
    ("sheet", sheet::words::ENGLISH),
    ("format", format::words::ENGLISH),
    ("cli", cli_words::ENGLISH),
    ("web", web_words::ENGLISH),
    ("web", bench_words::ENGLISH),
    ("web", drawer_words::ENGLISH),
    ("web", paper_words::ENGLISH),
    ("web", heat_words::ENGLISH),
    ("web", colour_words::ENGLISH),
    ("web", handover_words::ENGLISH),
];

/// Which tables a room may take sentences from: its own and those of the rooms it stands on.
const SEES: &[(&str, &[&str])] = &[
    ("crates/measure/src", &["measure"]),
    ("crates/record/src", &["measure", "record"]),
    ("crates/plan/src", &["measure", "record", "plan"]),
    ("crates/sheet/src", &["measure", "record", "plan", "sheet"]),
    ("crates/format/src", &["measure", "record", "format"]),
    ("crates/cli/src", &["measure", "record", "plan", "sheet", "format", "cli"]),
    ("web/src", &["measure", "record", "plan", "sheet", "format", "web"]),
];

fn sentences(of: &[&str]) -> BTreeMap<&'static str, &'static str> {
    TABLES.iter().filter(|(room, _)| of.contains(room)).flat_map(|(_, table)| table.iter().copied()).collect()
}

fn all() -> BTreeMap<&'static str, &'static str> {
    TABLES.iter().flat_map(|(_, table)| table.iter().copied()).collect()
}

#[test]
fn no_key_stands_twice() {
    let mut seen: BTreeMap<&str, &str> = BTreeMap::new();
    let mut twice = Vec::new();
    for (room, table) in TABLES {
        for (key, sentence) in table.iter() {
            assert!(!sentence.trim().is_empty(), "{key} says nothing");
            if let Some(before) = seen.insert(key, room) {
                twice.push(format!("{key}: {before} and {room}"));
            }
        }
    }
    assert!(seen.len() > 400, "only {} keys", seen.len());
    assert_eq!(twice, Vec::<String>::new());
}

#[test]
fn every_key_that_is_said_has_its_sentence() {
    let mut missing = Vec::new();
    let mut found = 0;
    for (folder, rooms) in SEES {
        let sentences = sentences(rooms);
        for (file, source) in sources::rust(&places::root().join(folder)) {
            for Said { key, line, .. } in sources::said(&source) {
                found += 1;
                if !sentences.contains_key(key.as_str()) {
                    missing.push(format!("{}:{line}: {key}", file.display()));
                }
            }
        }
    }
    assert!(found > 300, "the search found only {found} keys");
    assert_eq!(missing, Vec::<String>::new());
}

#[test]
fn whatever_looks_like_a_key_is_one() {
    let everything = all();
    let starts: BTreeSet<&str> = everything.keys().filter_map(|key| key.split('.').next()).collect();
    let mut missing = Vec::new();
    let mut found = 0;
    for (folder, rooms) in SEES {
        let sentences = sentences(rooms);
        for (file, source) in sources::rust(&places::root().join(folder)) {
            if file.file_name().is_some_and(|name| name == "words.rs") {
                continue;
            }
            for (key, line) in sources::like_keys(&source, &starts) {
                found += 1;
                if !sentences.contains_key(key.as_str()) {
                    missing.push(format!("{}:{line}: {key}", file.display()));
                }
            }
        }
    }
    assert!(found > 600, "the search found only {found} texts");
    assert_eq!(missing, Vec::<String>::new());
}

#[test]
fn places_and_arguments_match_where_they_can_be_counted() {
    let sentences = all();
    let mut wrong = Vec::new();
    let mut counted = 0;
    for (folder, _) in SEES {
        for (file, source) in sources::rust(&places::root().join(folder)) {
            for Said { key, line, args } in sources::said(&source) {
                let (Some(args), Some(sentence)) = (args, sentences.get(key.as_str())) else { continue };
                counted += 1;
                let places = places_of(sentence);
                let needed = places.iter().max().map_or(0, |last| last + 1);
                // An argument without a place may be left for another language; a place without an argument never.
                if needed > args {
                    wrong.push(format!("{}:{line}: {key} has {args} arguments for {sentence:?}", file.display()));
                }
            }
        }
    }
    assert!(counted > 150, "only {counted} could be counted");
    assert_eq!(wrong, Vec::<String>::new());
}

/// The numbers in `{0}`, `{1}`…; whatever else stands in braces is a mistake.
fn places_of(sentence: &str) -> BTreeSet<usize> {
    sentence
        .split('{')
        .skip(1)
        .filter_map(|tail| tail.split_once('}'))
        .filter_map(|(inside, _)| inside.parse().ok())
        .collect()
}

#[test]
fn braces_hold_places_only() {
    let help = ["cli.help_cut"];
    let mut skipping = Vec::new();
    for (key, sentence) in all() {
        if help.contains(&key) {
            continue;
        }
        let opened = sentence.matches('{').count();
        let places: Vec<&str> =
            sentence.split('{').skip(1).filter_map(|tail| tail.split_once('}')).map(|(inside, _)| inside).collect();
        assert_eq!(places.len(), opened, "{key}: {sentence}");
        assert!(places.iter().all(|inside| inside.parse::<usize>().is_ok()), "{key}: {sentence}");
        // A place that is skipped is an argument forgotten.
        let numbers = places_of(sentence);
        let last = numbers.last().copied().map_or(0, |last| last + 1);
        if numbers.len() != last && !LEAVE_OUT.contains(&key) {
            skipping.push(key);
        }
    }
    assert_eq!(skipping, Vec::<&str>::new(), "sentences that leave a place out");
}

/// Sentences that share their arguments with a sister and leave some out.
const LEAVE_OUT: &[&str] =
    &["sum.hairline", "sum.hairline_singles", "sum.parting", "sum.parting_singles", "sum.row", "web.reach_lacks"];

#[test]
fn every_name_has_its_label() {
    let sentences = all();
    let mut keys: BTreeSet<String> = BTreeSet::new();
    let mut field = |field: &Field| {
        keys.insert(format!("field.{}", field.name));
        match &field.holds {
            Holds::Choice(choices) => keys.extend(choices.iter().map(|choice| format!("choice.{choice}"))),
            Holds::YesNo => keys.extend(["choice.yes".to_owned(), "choice.no".to_owned()]),
            Holds::Quantity(limit) => {
                keys.insert(limit.why.to_owned());
            }
            Holds::AnyOf(limits) => keys.extend(limits.iter().map(|limit| limit.why.to_owned())),
            _ => {}
        }
        keys.extend(field.caution.map(str::to_owned));
    };
    slots::SLOTS.iter().for_each(|slot| field(&slot.field));
    workshop::slots::SLOTS.iter().for_each(&mut field);
    work::KINDS.iter().flat_map(|kind| kind.every_field()).for_each(&mut field);
    keys.extend(work::KINDS.iter().filter(|kind| kind.name != "count").map(|kind| format!("todo.{}", kind.name)));
    keys.extend(work::Group::ALL.map(|group| group.label().to_owned()));
    keys.extend(work::KINDS.iter().map(|kind| format!("work.{}", kind.name)));
    keys.extend(Zone::ALL.map(|zone| zone.label().to_owned()));
    keys.extend(fibres::NAMES.iter().chain(caps::NAMES).chain(sizes::NAMES).map(|name| format!("choice.{name}")));
    keys.extend(plan::inputs::Input::ALL.map(|input| input.settle().to_owned()));
    keys.extend(caps::NAMES.iter().map(|cap| format!("web.cap_{cap}")));
    assert!(keys.len() > 150, "only {} names", keys.len());
    let without: Vec<&String> = keys.iter().filter(|key| !sentences.contains_key(key.as_str())).collect();
    assert_eq!(without, Vec::<&String>::new(), "names without a label");
}

#[test]
fn no_sentence_lies_idle() {
    // Keys put together from names are not seen in the sources; the test above walks those.
    let built = [
        "field.", "choice.", "work.", "zone.", "limit.", "settle.", "tab.", "web.cap_", "group.", "todo.", "sheet.f_",
        "sheet.y_",
    ];
    let mut text = String::new();
    for (folder, _) in SEES {
        for (path, source) in sources::rust(&places::root().join(folder)) {
            if path.file_name().is_none_or(|name| name != "words.rs") {
                text.push_str(&source);
            }
        }
    }
    let idle: Vec<&str> = all()
        .into_keys()
        .filter(|key| !built.iter().any(|start| key.starts_with(start)) && !text.contains(&format!("\"{key}\"")))
        .collect();
    assert_eq!(idle, Vec::<&str>::new(), "sentences nobody says");
}

#[test]
fn sentences_name_no_product_and_no_address() {
    // Marks that follow a name, and addresses.
    for (key, sentence) in all() {
        for part in ["™", "®", "©", "http:", "https:", "www.", ".com", ".net", ".org", "C:\\"] {
            assert!(!sentence.contains(part), "{key}: {sentence}");
        }
    }
    // A product would be a word with a capital inside a sentence: each such word is looked at once, by a person.
    let mut unknown = Vec::new();
    for (key, sentence) in all() {
        for word in capitalised_inside(sentence) {
            if !KNOWN.contains(&word.as_str()) {
                unknown.push(format!("{key} names “{word}”: {sentence}"));
            }
        }
    }
    assert_eq!(unknown, Vec::<String>::new());
}

/// Words with a capital inside a sentence: ours, abbreviations of the trade and of open standards, words on buttons.
const KNOWN: &[&str] = &[
    "Weftbook", "JSON", "UTF8", "UTC", "WIG", "CASE", "FILE", "DAY", "SIGN", "Enter", "Weft", "HTML", "SVG", "PARTS",
    "A", "B", "ADDRESS", "CSV", "Schema",
];

/// Words with a capital that do not begin a sentence or a quotation.
fn capitalised_inside(sentence: &str) -> Vec<String> {
    sentence.lines().flat_map(capitalised_in_line).collect()
}

fn capitalised_in_line(line: &str) -> Vec<String> {
    let words: Vec<&str> = line.split_whitespace().collect();
    words
        .windows(2)
        .filter(|pair| !pair[0].ends_with(['.', ':', '?', '!', '…', '}']))
        .filter_map(|pair| {
            let bare: String = pair[1].chars().filter(|c| c.is_alphanumeric()).collect();
            let starts_itself = pair[1].starts_with(['“', '(']);
            (bare.starts_with(char::is_uppercase) && !starts_itself).then_some(bare)
        })
        .collect()
}
