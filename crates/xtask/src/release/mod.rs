//! The release: the page's folder with licences, third-party notices and checksums.
//!
//! What it is: `dist/`, the same bytes from the same sources wherever it is built with the same compiler.
//! What it is not: signing or publishing.

mod notices;
mod verify;

use std::path::Path;

use anyhow::{Context, Result};

use crate::page::assemble::Folder;
use crate::page::{self, digest};
use crate::workspace::Metadata;

const LICENCES: [&str; 2] = ["LICENSE-MIT", "LICENSE-APACHE"];

/// `cargo xtask release`.
pub fn run(verify: bool) -> Result<()> {
    let metadata = Metadata::load()?;
    let folder = make(&metadata, &metadata.workspace_root, &metadata.target_directory)?;
    page::write(&folder, &metadata.workspace_root.join("dist"))?;
    if verify {
        verify::build_elsewhere_and_compare(&metadata, &folder)?;
    }
    Ok(())
}

/// The whole release in memory, from the sources under `root`.
fn make(metadata: &Metadata, root: &Path, target_dir: &Path) -> Result<Folder> {
    let (mut folder, built) = page::release_folder(root, target_dir)?;
    let notices = notices::write(metadata, &built.linked)?;
    folder.insert("THIRD-PARTY-NOTICES.txt", notices);
    for name in LICENCES {
        let text = std::fs::read(root.join(name)).with_context(|| format!("reading {name}"))?;
        folder.insert(format!("{name}.txt"), text);
    }
    let sums = sums(&folder);
    folder.insert("SHA256SUMS", sums);
    Ok(folder)
}

/// Lines as `sha256sum --check` reads them.
fn sums(folder: &Folder) -> String {
    folder.files().map(|(name, bytes)| format!("{}  {name}\n", digest::sha256_hex(bytes))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_file_has_its_line() {
        let mut folder = Folder::default();
        folder.insert("b.js", "x");
        folder.insert("a/c.js", "");
        let sums = sums(&folder);
        let names: Vec<_> = sums.lines().filter_map(|line| line.split_once("  ")).map(|(_, name)| name).collect();
        assert_eq!(names, ["a/c.js", "b.js"]);
        // FIPS 180-4 leaves the digest of nothing to its definition; `sha256sum </dev/null` prints this one.
        assert!(sums.starts_with("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855  a/c.js"));
    }
}
