//! Every key that is said has its sentence, and every sentence is said.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that fails says so")]

use std::{collections::BTreeSet, fs, path::Path};

const OTHERS: [measure::say::Table; 2] = [measure::words::ENGLISH, record::words::ENGLISH];

/// Texts in quotes that look like keys: lower-case words joined by points.
fn keys(source: &str) -> BTreeSet<String> {
    let shape = |text: &str| {
        let mut parts = text.split('.');
        let word = |part: &str| !part.is_empty() && part.chars().all(|c| c.is_ascii_alphanumeric() || c == '_');
        text.contains('.') && parts.clone().count() == 2 && parts.all(word)
    };
    source.split('"').filter(|text| shape(text)).map(str::to_owned).collect()
}

fn sources(folder: &Path, out: &mut String) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sources(&path, out);
        } else if path.file_name().is_some_and(|name| name != "words.rs") {
            out.push_str(&fs::read_to_string(&path).unwrap());
            out.push('"');
        }
    }
}

#[test]
fn every_key_has_its_words_and_every_word_its_key() {
    let mut source = String::new();
    sources(Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/src")), &mut source);
    // A file with an odd number of quotes would shift the others: each is closed above and asked line by line here.
    let said: BTreeSet<String> = source.lines().flat_map(keys).collect();
    let own: BTreeSet<String> = plan::words::ENGLISH.iter().map(|(key, _)| (*key).to_owned()).collect();
    let rooms = ["plan", "line", "sum", "settle", "number", "care"];
    let ours = |key: &str| rooms.contains(&key.split('.').next().unwrap_or(""));
    let mute: Vec<&String> = said.iter().filter(|key| ours(key) && !own.contains(*key)).collect();
    assert!(mute.is_empty(), "no words for {mute:?}");
    let elsewhere = |key: &str| OTHERS.iter().any(|table| table.iter().any(|(one, _)| *one == key));
    let foreign: Vec<&String> = said
        .iter()
        .filter(|key| ["field", "zone"].iter().any(|room| key.starts_with(&format!("{room}."))))
        .filter(|key| !elsewhere(key))
        .collect();
    assert!(foreign.is_empty(), "no words for {foreign:?}");
    let unused: Vec<&String> = own.iter().filter(|key| !said.contains(*key)).collect();
    assert!(unused.is_empty(), "never said: {unused:?}");
    assert!(said.len() > 80, "{} keys found", said.len());
}

#[test]
fn sentences_are_plain() {
    let mut seen = BTreeSet::new();
    for (key, text) in plan::words::ENGLISH {
        assert!(seen.insert(key), "{key} stands twice");
        for word in ["color", "optimal", "optimize", "parameter", "algorithm", "corner", "input", "  ", "'"] {
            assert!(!text.to_lowercase().contains(word), "{key}: “{word}” in “{text}”");
        }
        let sentence = key.starts_with("plan.")
            && !["plan.just", "plan.likely_range", "plan.one_pack", "plan.packs", "plan.and", "plan.comma"]
                .contains(key);
        let ends = [".", "}", "assumed"].iter().any(|end| text.ends_with(end));
        assert!(!sentence || ends, "{key}: “{text}”");
    }
}
