//! The whole page in browsers: the release folder under every `tests/browser/*.test.mjs`.
//!
//! What it is: installing, building and starting node's test runner. What it is not: the scripts themselves.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, bail};

use super::counts::Counts;
use super::{finish, install};
use crate::process::{self, cargo};
use crate::release;
use crate::workspace::Metadata;

pub fn run(metadata: &Metadata, grep: Option<&str>, counts: &mut Counts) -> Result<()> {
    let root = &metadata.workspace_root;
    let dir = root.join("tests/browser");
    let scripts = scripts(&dir)?;
    install::packages(&[
        install::CHROMIUM,
        install::FIREFOX,
        install::FONTS,
        install::POPPLER,
        install::NODE,
        install::NPM,
    ])?;
    install::npm_packages(&dir)?;
    release::run(false)?;
    // The scripts hold the page's answers against the terminal program's. With the whole workspace chosen, cargo
    // takes up what the native stage has compiled.
    process::run(cargo().args(["build", "--locked", "--workspace", "--bin", "weftbook"]))?;

    let mut node = Command::new("node");
    node.current_dir(&dir)
        .env("WEFTBOOK_DIST", root.join("dist"))
        .env("WEFTBOOK_CLI", metadata.target_directory.join("debug/weftbook"))
        .args(["--test", "--test-reporter=spec"]);
    for (variable, program) in [("WEFTBOOK_CHROMIUM", "chromium"), ("WEFTBOOK_FIREFOX", "firefox-esr")] {
        if let (None, Some(path)) = (std::env::var_os(variable), process::find_program(program)) {
            node.env(variable, path);
        }
    }
    let (chosen, by_name) = choose(&scripts, grep);
    if let Some(text) = by_name {
        node.arg(format!("--test-name-pattern={}", literal(text)));
    }
    node.args(chosen);
    finish(process::tee(&mut node, |line| counts.read_line(line))?, "browser tests failed")
}

fn scripts(dir: &Path) -> Result<Vec<String>> {
    let entries = std::fs::read_dir(dir).with_context(|| format!("reading {}", dir.display()))?;
    let mut names: Vec<String> = entries
        .flatten()
        .map(|entry| entry.file_name().to_string_lossy().into_owned())
        .filter(|name| name.ends_with(".test.mjs"))
        .collect();
    names.sort();
    if names.is_empty() {
        bail!("there is no *.test.mjs in {}: the page would go untested", dir.display());
    }
    Ok(names)
}

/// Files whose name has the text run whole; else tests whose name has it, in all files.
fn choose<'a>(scripts: &'a [String], grep: Option<&'a str>) -> (Vec<&'a str>, Option<&'a str>) {
    let all = || scripts.iter().map(String::as_str);
    let Some(text) = grep else { return (all().collect(), None) };
    let by_file: Vec<&str> = all().filter(|name| name.contains(text)).collect();
    if by_file.is_empty() { (all().collect(), Some(text)) } else { (by_file, None) }
}

/// node reads a pattern; a person types a text.
fn literal(text: &str) -> String {
    text.chars().flat_map(|c| (!c.is_alphanumeric() && c != ' ').then_some('\\').into_iter().chain([c])).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_chooses_files_or_names() {
        let scripts = ["store.test.mjs".to_owned(), "way.test.mjs".to_owned()];
        assert_eq!(choose(&scripts, None), (vec!["store.test.mjs", "way.test.mjs"], None));
        assert_eq!(choose(&scripts, Some("store")), (vec!["store.test.mjs"], None));
        assert_eq!(choose(&scripts, Some("lamport")), (vec!["store.test.mjs", "way.test.mjs"], Some("lamport")));
    }

    #[test]
    fn a_text_with_marks_is_taken_as_it_is() {
        assert_eq!(literal("1.5 (x)"), "1\\.5 \\(x\\)");
    }
}
