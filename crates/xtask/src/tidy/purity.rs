//! Rule: pure rooms reach for no time, chance, file, network or browser, neither themselves nor through others.
//!
//! What it is: a look at what is under each pure room, and at the words of its own code outside tests.
//! What it is not: proof about what a dependency does inside `std`; that is what choosing dependencies is for.

use std::collections::BTreeSet;

use proc_macro2::{Delimiter, TokenStream, TokenTree};

use super::{PURE_ROOMS, Texts, is_rust_source};
use crate::workspace::Metadata;

const IMPURE_CRATES: [&str; 14] = [
    "web-sys",
    "js-sys",
    "wasm-bindgen",
    "gloo",
    "yew",
    "rand",
    "rand_core",
    "getrandom",
    "fastrand",
    "chrono",
    "tokio",
    "reqwest",
    "tempfile",
    "instant",
];
const IMPURE_MODULES: [&str; 6] = ["time", "fs", "net", "env", "process", "thread"];

pub fn check_dependencies(metadata: &Metadata) -> Vec<String> {
    let graph = metadata.normal_edges();
    let mut findings = Vec::new();
    for room in PURE_ROOMS {
        let Some(package) = metadata.members().find(|package| package.name == room) else {
            findings.push(format!("{room} is not in the workspace: is the list of pure rooms right?"));
            continue;
        };
        let mut seen = BTreeSet::new();
        let mut left = vec![package.id.as_str()];
        while let Some(id) = left.pop() {
            if seen.insert(id) {
                left.extend(graph.get(id).into_iter().flatten());
            }
        }
        let under = seen.iter().filter_map(|id| metadata.package(id)).map(|package| package.name.as_str());
        findings.extend(impure(under).into_iter().map(|name| format!("{room} brings in {name}")));
    }
    findings
}

fn impure<'a>(names: impl Iterator<Item = &'a str>) -> Vec<&'a str> {
    names.filter(|name| IMPURE_CRATES.contains(name) || name.starts_with("gloo-") || name.starts_with("yew-")).collect()
}

pub fn check_sources(texts: &Texts) -> Vec<String> {
    let mut findings = Vec::new();
    let mut read = 0;
    for room in PURE_ROOMS {
        let folder = format!("crates/{}/src/", room.trim_start_matches("weftbook-"));
        for (name, text) in texts.iter().filter(|(name, _)| name.starts_with(&folder) && is_rust_source(name)) {
            if name.ends_with("/tests.rs") || name.contains("/tests/") {
                continue;
            }
            read += 1;
            match text.parse::<TokenStream>() {
                Ok(tokens) => findings.extend(reaches(tokens).into_iter().map(|what| format!("{name} uses {what}"))),
                Err(error) => findings.push(format!("{name} cannot be read: {error}")),
            }
        }
    }
    if read == 0 {
        findings.push("no source file of a pure room was found: has the tree moved?".to_owned());
    }
    findings
}

/// Impure modules of `std` named in the tokens, test items left out.
fn reaches(tokens: TokenStream) -> Vec<String> {
    let mut found = Vec::new();
    let tokens: Vec<TokenTree> = tokens.into_iter().collect();
    let mut at = 0;
    while let Some(token) = tokens.get(at) {
        if is_test_attribute(&tokens, at) {
            at = after_item(&tokens, at + 2);
            continue;
        }
        match token {
            TokenTree::Ident(name) if name == "std" => found.extend(after_std(&tokens, at + 1)),
            TokenTree::Group(group) => found.extend(reaches(group.stream())),
            _ => {}
        }
        at += 1;
    }
    found
}

fn is_test_attribute(tokens: &[TokenTree], at: usize) -> bool {
    let hash = matches!(tokens.get(at), Some(TokenTree::Punct(mark)) if mark.as_char() == '#');
    hash && matches!(tokens.get(at + 1), Some(TokenTree::Group(group))
        if group.stream().to_string().split_whitespace().collect::<String>() == "cfg(test)")
}

/// The place after the item that starts here: past its `;` or its braces.
fn after_item(tokens: &[TokenTree], start: usize) -> usize {
    let ends = |token: &TokenTree| match token {
        TokenTree::Punct(mark) => mark.as_char() == ';',
        TokenTree::Group(group) => group.delimiter() == Delimiter::Brace,
        _ => false,
    };
    tokens.iter().skip(start).position(ends).map_or(tokens.len(), |length| start + length + 1)
}

fn after_std(tokens: &[TokenTree], at: usize) -> Vec<String> {
    let colon = |token: Option<&TokenTree>| matches!(token, Some(TokenTree::Punct(mark)) if mark.as_char() == ':');
    if matches!(tokens.get(at), Some(TokenTree::Ident(word)) if word == "as") {
        return vec!["std under another name".to_owned()];
    }
    if !(colon(tokens.get(at)) && colon(tokens.get(at + 1))) {
        return Vec::new();
    }
    match tokens.get(at + 2) {
        Some(TokenTree::Group(group)) => {
            let inner: Vec<TokenTree> = group.stream().into_iter().collect();
            let comma = |token: &TokenTree| matches!(token, TokenTree::Punct(mark) if mark.as_char() == ',');
            inner.split(comma).filter_map(|path| named(path.first())).collect()
        }
        token => named(token).into_iter().collect(),
    }
}

fn named(token: Option<&TokenTree>) -> Option<String> {
    match token {
        Some(TokenTree::Ident(name)) if IMPURE_MODULES.iter().any(|module| name == module) => {
            Some(format!("std::{name}"))
        }
        Some(TokenTree::Punct(mark)) if mark.as_char() == '*' => Some("std::*".to_owned()),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::super::texts;
    use super::*;

    fn found(source: &str) -> Vec<String> {
        check_sources(&texts(&[("crates/plan/src/a.rs", source)]))
    }

    #[test]
    fn every_spelling_is_found() {
        for source in [
            "use std::time::Instant;",
            "use std::{fmt, fs};",
            "use std::{fmt::{self, Write}, net::TcpStream};",
            "fn f() { let _x = ::std::env::var(\"A\"); }",
            "use std as s;",
            "use std::*;",
            "mod a { fn f() { vec![std::fs::read(\"x\")]; } }",
            "#[cfg(test)] mod t { } fn f() { std::process::abort() }",
        ] {
            assert_eq!(found(source).len(), 1, "{source}");
        }
    }

    #[test]
    fn words_in_comments_texts_and_tests_are_free() {
        for source in [
            "//! No std::time here.\nuse std::fmt;",
            "const A: &str = \"std::fs\";",
            "#[cfg(test)]\nmod tests { use std::fs; }",
            "#[cfg(test)] use std::fs; use core::time::Duration;",
            "fn time() { measure::time() }",
        ] {
            assert_eq!(found(source), Vec::<String>::new(), "{source}");
        }
    }

    #[test]
    fn a_moved_tree_does_not_pass_for_a_clean_one() {
        assert_eq!(check_sources(&texts(&[("elsewhere/a.rs", "")])).len(), 1);
    }

    #[test]
    fn impure_crates_are_named() {
        assert_eq!(impure(["serde", "gloo-storage", "rand"].into_iter()), ["gloo-storage", "rand"]);
    }
}
