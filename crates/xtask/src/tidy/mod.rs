//! The house's own rules that no general tool knows: one small file each.
//!
//! What it is: checks over sources, manifests and documents. What it is not: anything clippy or rustfmt already say.

mod addresses;
mod arrows;
mod dependencies;
mod documents;
mod lengths;
mod markup;
mod openings;
mod purity;

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::process;
use crate::workspace::{Metadata, files_under};

/// The rooms that touch no clock, chance, file, network or browser.
pub const PURE_ROOMS: [&str; 5] =
    ["weftbook-measure", "weftbook-record", "weftbook-plan", "weftbook-sheet", "weftbook-format"];

/// The rooms that a package uses directly.
pub fn rooms_of(metadata: &Metadata, package: &str) -> BTreeSet<String> {
    arrows::edges(metadata).remove(package).unwrap_or_default()
}

/// The project's own text files: name relative to the root -> content.
pub type Texts = BTreeMap<String, String>;

/// Runs every rule and reports each finding with the rule it breaks.
pub fn run(metadata: &Metadata) -> Result<()> {
    let texts = read_texts(&metadata.workspace_root)?;
    let rules: [(&str, Vec<String>); 9] = [
        ("arrows between rooms run one way", arrows::check(&arrows::edges(metadata))),
        ("pure rooms depend on nothing impure", purity::check_dependencies(metadata)),
        ("pure rooms' code reaches for nothing impure", purity::check_sources(&texts)),
        ("every module opens with what it is", openings::check(&texts)),
        ("files stay short", lengths::check(&texts)),
        ("no inline script or style", markup::check(&texts)),
        ("no registry host, no machine path", addresses::check(&texts)),
        ("documents name what exists", documents::check(&texts)),
        ("each dependency is explained", dependencies::check(&dependencies::used(metadata, &texts)?, &texts)),
    ];
    let mut count = 0;
    for (rule, findings) in &rules {
        println!("{} {rule}", if findings.is_empty() { "ok    " } else { "BROKEN" });
        for finding in findings {
            println!("         {finding}");
        }
        count += findings.len();
    }
    if count == 0 { Ok(()) } else { bail!("{count} findings against the house's own rules") }
}

/// Files that belong to the project: what git tracks, and what it would track.
pub fn source_files(root: &Path) -> Result<Vec<String>> {
    let names: Vec<String> = if root.join(".git").exists() && process::find_program("git").is_some() {
        let mut git = Command::new("git");
        git.current_dir(root).args(["ls-files", "-z", "--cached", "--others", "--exclude-standard"]);
        process::read(&mut git)?.split('\0').map(str::to_owned).collect()
    } else {
        // A source archive without git: everything but what builds make.
        let made = ["target", "dist", "dist-debug", "node_modules", ".git"];
        files_under(root)?.into_iter().filter(|name| !name.split('/').any(|part| made.contains(&part))).collect()
    };
    let mut names: Vec<String> =
        names.into_iter().filter(|name| !name.is_empty() && root.join(name).is_file()).collect();
    names.sort();
    names.dedup();
    Ok(names)
}

/// Reads every file that is text; pictures and other binary files are left out.
fn read_texts(root: &Path) -> Result<Texts> {
    let mut texts = Texts::new();
    for name in source_files(root)? {
        let bytes = std::fs::read(root.join(&name)).with_context(|| format!("reading {name}"))?;
        if let Ok(text) = String::from_utf8(bytes) {
            texts.insert(name, text);
        }
    }
    Ok(texts)
}

/// Our Rust files under a folder of sources (not tests beside them).
fn is_rust_source(name: &str) -> bool {
    name.ends_with(".rs") && !name.starts_with("target/")
}

#[cfg(test)]
fn texts(pairs: &[(&str, &str)]) -> Texts {
    pairs.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect()
}
