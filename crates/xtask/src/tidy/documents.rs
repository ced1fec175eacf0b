//! Rule: a command or a path that a document names does exist.
//!
//! What it is: `cargo xtask` commands with their options, the terminal program's commands, and paths in backticks.
//! What it is not: a reader of prose.

use super::Texts;
use crate::commands::COMMANDS;

const NEEDED: [&str; 2] = ["README.md", "DEVELOPERS.md"];
const PLACES: [&str; 7] = ["crates/", "web/", "tests/", "demo-data/", "docs/", ".ci/", ".cargo/"];
const PHRASE: &str = "cargo xtask ";

pub fn check(texts: &Texts) -> Vec<String> {
    let mut findings = Vec::new();
    for name in NEEDED {
        match texts.get(name) {
            None => findings.push(format!("{name} is missing")),
            Some(text) if !text.contains(PHRASE) => findings.push(format!("{name} names no `{PHRASE}…` command")),
            Some(_) => {}
        }
    }
    for (name, text) in texts.iter().filter(|(name, _)| name.ends_with(".md")) {
        for (number, line) in text.lines().enumerate() {
            let wrong = commands(line).chain(terminal(line, texts)).chain(paths(line, texts));
            findings.extend(wrong.map(|what| format!("{name}:{}: {what}", number + 1)));
        }
    }
    findings
}

fn commands(line: &str) -> impl Iterator<Item = String> {
    line.match_indices(PHRASE).flat_map(|(at, _)| {
        let rest = &line[at + PHRASE.len()..];
        let typed = rest.split(['`', '#', '|', ')', ';', '&']).next().unwrap_or("");
        wrong_command(typed)
    })
}

fn wrong_command(typed: &str) -> Vec<String> {
    let plain = |c: char| !c.is_ascii_alphanumeric() && c != '-';
    let mut words = typed.split_whitespace().map(|word| word.trim_matches(plain));
    let Some(name) = words.next().filter(|name| !name.is_empty()) else { return Vec::new() };
    let Some(command) = COMMANDS.iter().find(|command| command.name == name) else {
        return vec![format!("there is no `{PHRASE}{name}`")];
    };
    let options = words.filter(|word| word.starts_with("--") && word.len() > 2);
    let unknown = options.filter(|option| !command.options.contains(option));
    unknown.map(|option| format!("`{PHRASE}{name}` has no option {option}")).collect()
}

/// Commands of the terminal program, which reads them as words in quotes somewhere in its code.
fn terminal(line: &str, texts: &Texts) -> impl Iterator<Item = String> {
    let word = |rest: &str| rest.split(|c: char| !c.is_ascii_lowercase()).next().unwrap_or("").to_owned();
    let known = |word: &str| {
        let quoted = format!("\"{word}\"");
        texts.iter().any(|(name, text)| name.starts_with("crates/cli/src/") && text.contains(&quoted))
    };
    let named = line.split("`weftbook ").skip(1).map(word).filter(|word| !word.is_empty());
    let gone: Vec<String> =
        named.filter(|word| !known(word)).map(|word| format!("there is no `weftbook {word}`")).collect();
    gone.into_iter()
}

fn paths(line: &str, texts: &Texts) -> impl Iterator<Item = String> {
    let spans = line.split('`').skip(1).step_by(2);
    let whole = |span: &&str| !span.contains(|c: char| c.is_whitespace() || "<>*…{}$".contains(c));
    let named = spans.filter(whole).filter(|span| PLACES.iter().any(|place| span.starts_with(place)));
    let known = |path: &str| {
        let path = path.trim_end_matches('/');
        texts.keys().any(|name| name == path || name.strip_prefix(path).is_some_and(|rest| rest.starts_with('/')))
    };
    let gone: Vec<String> = named.filter(|path| !known(path)).map(|path| format!("`{path}` does not exist")).collect();
    gone.into_iter()
}

#[cfg(test)]
mod tests {
    use super::super::texts;
    use super::*;

    fn found(readme: &str) -> Vec<String> {
        check(&texts(&[
            ("README.md", readme),
            ("DEVELOPERS.md", "cargo xtask check"),
            ("crates/plan/src/lib.rs", ""),
            ("crates/cli/src/main.rs", "\"plan\" => 1"),
        ]))
    }

    #[test]
    fn what_exists_passes() {
        for line in [
            "Run `cargo xtask serve --dev`, then `cargo xtask test --only browser --grep cap`.",
            "`cargo xtask check`, `weftbook plan WIG --json`, `weftbook --help`",
            "    cargo xtask release --verify   # twice",
            "`cargo xtask serve [--port N]` and `crates/plan`, `crates/plan/src/lib.rs`, `crates/<room>/src`",
        ] {
            assert_eq!(found(line), Vec::<String>::new(), "{line}");
        }
    }

    #[test]
    fn what_does_not_exist_is_named() {
        for line in [
            "`cargo xtask tset`",
            "`cargo xtask serve --prot 1`",
            "`cargo xtask check`, `weftbook paln`",
            "cargo xtask check: see `crates/attic/`",
        ] {
            assert_eq!(found(line).len(), 1, "{line}");
        }
    }

    #[test]
    fn a_missing_document_is_a_finding() {
        assert_eq!(check(&Texts::new()).len(), NEEDED.len());
        assert_eq!(found("no command").len(), 1);
    }
}
