//! Rule: a source file has one subject and stays short.
//!
//! What it is: a limit in bytes on files with code. What it is not: a limit on data tables or documents.

use super::Texts;

const LIMIT: usize = 24_000;
const KINDS: [&str; 6] = [".rs", ".js", ".mjs", ".css", ".html", ".sh"];

pub fn check(texts: &Texts) -> Vec<String> {
    let code = texts.iter().filter(|(name, _)| KINDS.iter().any(|kind| name.ends_with(kind)));
    code.filter(|(_, text)| text.len() > LIMIT)
        .map(|(name, text)| format!("{name} has {} bytes; divide it by subject (limit {LIMIT})", text.len()))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::texts;
    use super::*;

    #[test]
    fn a_long_file_is_named() {
        let (long, just) = ("x".repeat(LIMIT + 1), "x".repeat(LIMIT));
        let found = check(&texts(&[("a.rs", &long), ("b.js", &just), ("c.json", &long)]));
        assert_eq!(found.len(), 1);
        assert!(found[0].starts_with("a.rs"));
    }
}
