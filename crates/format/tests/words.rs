//! Every sentence the crate says has its words, and no words lie idle.

use std::{collections::BTreeSet, fs, path::Path};

use format::words::ENGLISH;

/// How the crate's keys start.
const STARTS: [&str; 3] = ["format.", "handover.", "table."];

#[test]
fn keys_and_words_match() {
    let mut used = BTreeSet::new();
    let mut folders = vec![Path::new(env!("CARGO_MANIFEST_DIR")).join("src")];
    let mut files = Vec::new();
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).expect("the sources") {
            let path = entry.expect("an entry").path();
            if path.is_dir() { folders.push(path) } else { files.push(path) }
        }
    }
    for path in files {
        if path.ends_with("words.rs") {
            continue;
        }
        let source = fs::read_to_string(&path).expect("text");
        let keys = source.split('"').filter(|part| STARTS.iter().any(|start| part.starts_with(start)));
        used.extend(keys.map(str::to_owned));
    }
    let written: BTreeSet<String> = ENGLISH.iter().map(|(key, _)| (*key).to_owned()).collect();
    assert!(used.len() > 40, "the search found {} keys", used.len());
    assert_eq!(written.len(), ENGLISH.len(), "a key stands twice");
    assert_eq!(used.difference(&written).collect::<Vec<_>>(), Vec::<&String>::new(), "keys without words");
    assert_eq!(written.difference(&used).collect::<Vec<_>>(), Vec::<&String>::new(), "words without a key");
}
