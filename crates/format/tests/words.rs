//! Every sentence the crate says has its words, and no words lie idle.

use std::{collections::BTreeSet, fs, path::Path};

use format::words::ENGLISH;

#[test]
fn keys_and_words_match() {
    let mut used = BTreeSet::new();
    for file in fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("src")).expect("the sources") {
        let path = file.expect("a file").path();
        if path.ends_with("words.rs") {
            continue;
        }
        let source = fs::read_to_string(&path).expect("text");
        let keys = source.split('"').filter(|part| part.starts_with("format."));
        used.extend(keys.map(str::to_owned));
    }
    let written: BTreeSet<String> = ENGLISH.iter().map(|(key, _)| (*key).to_owned()).collect();
    assert!(used.len() > 40, "the search found {} keys", used.len());
    assert_eq!(written.len(), ENGLISH.len(), "a key stands twice");
    assert_eq!(used.difference(&written).collect::<Vec<_>>(), Vec::<&String>::new(), "keys without words");
    assert_eq!(written.difference(&used).collect::<Vec<_>>(), Vec::<&String>::new(), "words without a key");
}
