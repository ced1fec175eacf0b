//! Third-party notices: who wrote what is inside the wasm, and under which terms.
//!
//! What it is: the packages that cargo compiled for the page, their licences held against an allow list, and the
//! licence texts from their own sources. What it is not: legal advice, or notices for tools that only build it.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use anyhow::{Context, Result, bail};

use crate::workspace::{Metadata, Package};

const ALLOWED: &str = include_str!("../../data/licences-allowed.txt");
const APACHE: &str = include_str!("../../../../LICENSE-APACHE");
const NAMES: [&str; 6] = ["LICENSE", "LICENCE", "COPYING", "COPYRIGHT", "NOTICE", "UNLICENSE"];

/// The text of `THIRD-PARTY-NOTICES.txt`; an error names every package whose terms do not fit.
pub fn write(metadata: &Metadata, linked: &BTreeSet<String>) -> Result<String> {
    let mut packages = Vec::new();
    // What this workspace does not depend on was compiled for the standard library, which brings its own lock file.
    let mut of_std = Vec::new();
    for id in linked.iter().filter(|id| !id.starts_with("path+")) {
        match metadata.package(id) {
            Some(package) => packages.push(package),
            None => of_std.push(id.rsplit_once('#').map_or(id.as_str(), |(_, name)| name).replace('@', " ")),
        }
    }
    if packages.is_empty() {
        bail!("the page links no package at all: the list of what was compiled must be wrong");
    }
    packages.sort_by(|a, b| (&a.name, &a.version).cmp(&(&b.name, &b.version)));
    let refused: Vec<String> = packages.iter().filter_map(|package| refuse(package)).collect();
    if !refused.is_empty() {
        bail!("licences not on the allow list (crates/xtask/data/licences-allowed.txt):\n  {}", refused.join("\n  "));
    }
    let mut list = String::new();
    // By their words alone, so that one text in two layouts stands once.
    let mut texts: BTreeMap<Vec<String>, (Vec<String>, String)> = BTreeMap::new();
    for package in &packages {
        let label = format!("{} {}", package.name, package.version);
        let licence = package.license.as_deref().unwrap_or_default();
        list.push_str(&format!("{label}\n    {licence}\n"));
        if !package.authors.is_empty() {
            list.push_str(&format!("    by {}\n", package.authors.join(", ")));
        }
        if let Some(repository) = &package.repository {
            list.push_str(&format!("    {repository}\n"));
        }
        let mut found = licence_texts(package.manifest_path.parent().unwrap_or(Path::new(".")))?;
        if found.is_empty() {
            if !allows(licence, &["Apache-2.0"]) {
                bail!("{label} ({licence}) brings no licence text and does not offer Apache-2.0: replace it");
            }
            list.push_str("    (brings no licence text; used under Apache-2.0, whose text is below)\n");
            found.push(tidy_text(APACHE));
        }
        for text in found {
            let words = text.split_whitespace().map(str::to_owned).collect();
            texts.entry(words).or_insert_with(|| (Vec::new(), text)).0.push(label.clone());
        }
    }
    let mut out = String::from(
        "Third-party notices\n\nThe WebAssembly file of this page holds code from these packages, and from the Rust standard library\n(MIT OR Apache-2.0, by the Rust Project contributors).\n\n",
    );
    out.push_str(&list);
    if !of_std.is_empty() {
        out.push_str(&format!("\nWithin the standard library, as the Rust Project ships it: {}.\n", of_std.join(", ")));
    }
    // Ordered by who uses them, so that the order does not depend on a text's first letter.
    let mut texts: Vec<_> = texts.into_values().collect();
    texts.sort();
    for (users, text) in texts {
        out.push_str(&format!("\n{}\nFor: {}\n\n{text}", "-".repeat(78), users.join(", ")));
    }
    Ok(out)
}

/// Why a package may not be linked, if so.
fn refuse(package: &Package) -> Option<String> {
    let label = format!("{} {}", package.name, package.version);
    let Some(licence) = package.license.as_deref() else { return Some(format!("{label}: states no licence")) };
    let allowed: Vec<&str> = ALLOWED.lines().filter(|line| !line.starts_with('#') && !line.is_empty()).collect();
    (!allows(licence, &allowed)).then(|| format!("{label}: {licence}"))
}

/// Whether the SPDX expression can be met with these licences alone. An exception only adds permissions.
fn allows(expression: &str, allowed: &[&str]) -> bool {
    spdx::Expression::parse_mode(expression, spdx::ParseMode::LAX).is_ok_and(|expression| {
        expression.evaluate(|asked| asked.license.id().is_some_and(|id| allowed.contains(&id.name)))
    })
}

fn licence_texts(dir: &Path) -> Result<Vec<String>> {
    let mut found = BTreeMap::new();
    for entry in std::fs::read_dir(dir).with_context(|| format!("reading {}", dir.display()))? {
        let path = entry?.path();
        let name = path.file_name().map(|name| name.to_string_lossy().to_uppercase()).unwrap_or_default();
        if path.is_file() && NAMES.iter().any(|start| name.starts_with(start)) {
            let bytes = std::fs::read(&path).with_context(|| format!("reading {}", path.display()))?;
            found.insert(name, tidy_text(&String::from_utf8_lossy(&bytes)));
        }
    }
    Ok(found.into_values().collect())
}

/// Line ends and trailing spaces alike, so that one text in two spellings stands once.
fn tidy_text(text: &str) -> String {
    let lines: Vec<&str> = text.lines().map(str::trim_end).collect();
    let text = lines.join("\n");
    format!("{}\n", text.trim_matches('\n'))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn package(licence: Option<&str>) -> Package {
        Package {
            id: String::new(),
            name: "thing".to_owned(),
            version: "1.0.0".to_owned(),
            license: licence.map(str::to_owned),
            authors: Vec::new(),
            repository: None,
            manifest_path: "Cargo.toml".into(),
            dependencies: Vec::new(),
            targets: Vec::new(),
        }
    }

    #[test]
    fn permissive_terms_pass() {
        for licence in ["MIT", "MIT OR Apache-2.0", "MIT/Apache-2.0", "(MIT OR GPL-3.0-only) AND Unicode-3.0"] {
            assert_eq!(refuse(&package(Some(licence))), None, "{licence}");
        }
    }

    #[test]
    fn other_terms_are_named() {
        for licence in ["GPL-3.0-only", "MIT AND MPL-2.0", "LicenseRef-own", "nonsense terms"] {
            assert_eq!(refuse(&package(Some(licence))), Some(format!("thing 1.0.0: {licence}")));
        }
        assert!(refuse(&package(None)).is_some());
    }

    #[test]
    fn spellings_of_one_text_are_one() {
        assert_eq!(tidy_text("\r\nA  \r\nb\r\n\r\n"), tidy_text("A\nb"));
        assert_ne!(tidy_text("A\nb"), tidy_text("A\nc"));
    }
}
