//! Rust sources, searched for the sentences they say.
//!
//! What it is: a search by the look of a call. What it is not: a parser: what it cannot count it leaves out.

use std::{
    fs,
    path::{Path, PathBuf},
};

/// A sentence that a source says.
#[derive(Debug, PartialEq, Eq)]
pub struct Said {
    /// Its key.
    pub key: String,
    /// The line it stands in.
    pub line: usize,
    /// How many arguments it is given, where that can be counted.
    pub args: Option<usize>,
}

/// Calls that take a key first.
const CALLS: &[&str] = &[
    "Say::new(",
    "Say::key(",
    "Arg::Key(",
    "Fault::new(",
    "t(",
    "ta(",
    "page.word(",
    "page.heading(",
    "page.fact(",
    "fact(",
];

/// Every Rust source below a folder, by path.
pub fn rust(folder: &Path) -> Vec<(PathBuf, String)> {
    let mut found = Vec::new();
    let mut open = vec![folder.to_owned()];
    while let Some(folder) = open.pop() {
        for entry in fs::read_dir(&folder).into_iter().flatten().flatten() {
            let path = entry.path();
            if path.is_dir() {
                open.push(path);
            } else if path.extension().is_some_and(|ext| ext == "rs")
                && let Ok(text) = fs::read_to_string(&path)
            {
                found.push((path, text));
            }
        }
    }
    found.sort();
    found
}

/// The sentences that a source says with a key written out.
pub fn said(source: &str) -> Vec<Said> {
    let mut found = Vec::new();
    for call in CALLS {
        for (at, _) in source.match_indices(call) {
            let before = source[..at].chars().next_back();
            // `assert(` ends in `t(` too.
            if before.is_some_and(|c| c.is_alphanumeric() || c == '_' || c == ':') {
                continue;
            }
            let rest = source[at + call.len()..].trim_start();
            let Some((key, after)) = rest.strip_prefix('"').and_then(|rest| rest.split_once('"')) else { continue };
            if !is_key(key) {
                continue;
            }
            let line = source[..at].matches('\n').count() + 1;
            let args = match *call {
                "Say::key(" | "t(" | "page.word(" | "page.heading(" => Some(0),
                "Say::new(" | "Fault::new(" | "ta(" => count(after),
                _ => None,
            };
            found.push(Said { key: key.to_owned(), line, args });
        }
    }
    found
}

/// Every text in a source that looks like a key beginning with one of these words, and its line.
pub fn like_keys(source: &str, starts: &std::collections::BTreeSet<&str>) -> Vec<(String, usize)> {
    // Inside quotation marks or between them: an escaped one must not hide the rest of the file.
    let texts = source.split('"');
    let mut found = Vec::new();
    let mut from = 0;
    for text in texts {
        if !is_key(text) || !text.split('.').next().is_some_and(|start| starts.contains(start)) {
            continue;
        }
        // The same text may stand in many places: search on from the last one.
        if let Some(at) = source[from..].find(&format!("\"{text}\"")) {
            from += at;
            found.push((text.to_owned(), source[..from].matches('\n').count() + 1));
            from += 1;
        }
    }
    found
}

/// A key is words of small letters with one dot at least.
fn is_key(text: &str) -> bool {
    text.contains('.')
        && text.chars().all(|c| c.is_ascii_alphanumeric() || c == '_' || c == '.')
        && !text.ends_with(".rs")
}

/// The arguments of `, [a, b])`; nothing where they are not written out as a list.
fn count(after: &str) -> Option<usize> {
    let list = after.trim_start().strip_prefix(',')?.trim_start().strip_prefix('[')?;
    let (mut depth, mut args, mut empty, mut text) = (0_i32, 0, true, false);
    let mut before = ' ';
    for c in list.chars() {
        match c {
            '"' if before != '\\' => text = !text,
            _ if text => {}
            '[' | '(' | '{' => depth += 1,
            ']' if depth == 0 => {
                // `[…].map(…)` changes values, not how many there are.
                return Some(args + usize::from(!empty));
            }
            ']' | ')' | '}' => depth -= 1,
            ',' if depth == 0 => {
                args += 1;
                empty = true;
                before = c;
                continue;
            }
            _ => {}
        }
        if !c.is_whitespace() {
            empty = false;
        }
        before = c;
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_what_looks_like_a_key() {
        let starts = ["web"].into_iter().collect();
        let source = "Some(\"web.a\")\n\"file.b\" \"web {}\"\n(\"web.a\", \"web.c\")";
        let found = like_keys(source, &starts);
        assert_eq!(found, [("web.a".to_owned(), 1), ("web.a".to_owned(), 3), ("web.c".to_owned(), 3)]);
    }

    #[test]
    fn finds_keys_and_counts_arguments() {
        let source = "let a = Say::new(\n  \"plan.x\",\n  [f(1, 2), Arg::Text(\"a, ]\".into()),],\n);\nt(\"web.y\") assert(\"no.key\") ta(\"web.z\", args)";
        let found: Vec<(String, usize, Option<usize>)> =
            said(source).into_iter().map(|one| (one.key, one.line, one.args)).collect();
        assert_eq!(
            found,
            [("plan.x".to_owned(), 1, Some(2)), ("web.y".to_owned(), 5, Some(0)), ("web.z".to_owned(), 5, None),]
        );
    }
}
