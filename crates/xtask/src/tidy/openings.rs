//! Rule: every module opens with `//!`, saying what it is and what it is not.
//!
//! What it is: a look at the first line of each Rust file. What it is not: a judge of the words.

use super::{Texts, is_rust_source};

pub fn check(texts: &Texts) -> Vec<String> {
    let sources: Vec<_> = texts.iter().filter(|(name, _)| is_rust_source(name)).collect();
    if sources.is_empty() {
        return vec!["no Rust file was found: is this the project's folder?".to_owned()];
    }
    let opens = |text: &str| {
        text.lines().next().and_then(|line| line.strip_prefix("//!")).is_some_and(|words| !words.trim().is_empty())
    };
    let silent = sources.into_iter().filter(|(_, text)| !opens(text));
    silent.map(|(name, _)| format!("{name} does not open with a `//!` line")).collect()
}

#[cfg(test)]
mod tests {
    use super::super::texts;
    use super::*;

    #[test]
    fn a_silent_module_is_named() {
        let texts =
            texts(&[("a.rs", "//! What it is.\n"), ("b.rs", "fn f() {}"), ("c.rs", "//!\nfn f() {}"), ("d.js", "")]);
        let found = check(&texts);
        assert_eq!(found.len(), 2);
        assert!(found[0].starts_with("b.rs") && found[1].starts_with("c.rs"));
    }

    #[test]
    fn nothing_read_is_a_finding() {
        assert_eq!(check(&Texts::new()).len(), 1);
    }
}
