//! Rule: each dependency stands in the table of DEVELOPERS.md with why, bytes and licence; nothing else stands there.
//!
//! What it is: both directions of that comparison, for crates and for npm packages.
//! What it is not: a check of advisories, whose databases are not reachable.

use std::collections::BTreeSet;

use anyhow::{Context, Result};
use serde::Deserialize;

use super::Texts;
use crate::workspace::Metadata;

const DOCUMENT: &str = "DEVELOPERS.md";
const NPM: &str = "tests/browser/package.json";
/// Name, why, bytes, licence.
const CELLS: usize = 4;

#[derive(Deserialize)]
struct NpmPackage {
    #[serde(default)]
    dependencies: std::collections::BTreeMap<String, String>,
    #[serde(default, rename = "devDependencies")]
    dev_dependencies: std::collections::BTreeMap<String, String>,
}

/// What the manifests ask for by name, from outside the workspace.
pub fn used(metadata: &Metadata, texts: &Texts) -> Result<BTreeSet<String>> {
    let crates = metadata.members().flat_map(|package| &package.dependencies).filter(|dep| dep.path.is_none());
    let mut used: BTreeSet<String> = crates.map(|dep| dep.name.clone()).collect();
    if let Some(text) = texts.get(NPM) {
        let npm: NpmPackage = serde_json::from_str(text).with_context(|| format!("reading {NPM}"))?;
        used.extend(npm.dependencies.into_keys().chain(npm.dev_dependencies.into_keys()));
    }
    Ok(used)
}

pub fn check(used: &BTreeSet<String>, texts: &Texts) -> Vec<String> {
    let Some(text) = texts.get(DOCUMENT) else { return vec![format!("{DOCUMENT} is missing")] };
    let rows = rows(text);
    let mut findings = Vec::new();
    for name in used {
        match rows.iter().find(|(row, _)| row == name) {
            None => findings.push(format!("{name} has no row in the table of dependencies in {DOCUMENT}")),
            Some((_, cells)) if *cells < CELLS => {
                findings.push(format!("the row of {name} in {DOCUMENT} has empty cells (name, why, bytes, licence)"));
            }
            Some(_) => {}
        }
    }
    let unused = rows.iter().filter(|(row, _)| !used.contains(row));
    findings.extend(unused.map(|(row, _)| format!("{DOCUMENT} explains {row}, which nothing uses")));
    findings
}

/// Rows under the heading with "Dependencies": the name in backticks and the count of cells that say something.
fn rows(text: &str) -> Vec<(String, usize)> {
    let mut here = false;
    let mut rows = Vec::new();
    for line in text.lines() {
        if line.starts_with('#') {
            here = line.contains("Dependencies");
        }
        let name = line.strip_prefix("| `").and_then(|rest| rest.split_once('`')).map(|(name, _)| name);
        if let (true, Some(name)) = (here, name) {
            let cells = line.trim_matches('|').split('|').filter(|cell| !cell.trim().is_empty()).count();
            rows.push((name.to_owned(), cells));
        }
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::super::texts;
    use super::*;

    const TABLE: &str =
        "# Dependencies\n| name | why | bytes | licence |\n|---|---|---|---|\n| `libm` | one maths | 4 kB | MIT |\n";

    fn found(used: &[&str], text: &str) -> Vec<String> {
        check(&used.iter().map(|name| (*name).to_owned()).collect(), &texts(&[(DOCUMENT, text)]))
    }

    #[test]
    fn an_explained_dependency_passes() {
        assert_eq!(found(&["libm"], TABLE), Vec::<String>::new());
    }

    #[test]
    fn each_gap_is_named() {
        assert_eq!(found(&["libm", "time"], TABLE).len(), 1);
        assert_eq!(found(&[], TABLE).len(), 1);
        assert_eq!(found(&["libm"], &TABLE.replace("4 kB", " ")).len(), 1);
        assert_eq!(found(&["libm"], &TABLE.replace("# Dep", "# Other dep")).len(), 1);
        assert_eq!(check(&BTreeSet::new(), &Texts::new()).len(), 1);
    }

    #[test]
    fn npm_packages_count_too() {
        let npm: NpmPackage = serde_json::from_str(r#"{"devDependencies":{"a":"1"}}"#).unwrap();
        assert_eq!(npm.dev_dependencies.len(), 1);
    }
}
