//! Shows that the release does not depend on the folder it is built in.
//!
//! What it is: a second build from a copy of the sources elsewhere, with a target folder of its own, compared byte
//! by byte. What it is not: a comparison of two machines or two compilers.

use std::path::Path;

use anyhow::{Context, Result, bail};

use super::make;
use crate::page::assemble::Folder;
use crate::tidy::source_files;
use crate::workspace::Metadata;

pub fn build_elsewhere_and_compare(metadata: &Metadata, first: &Folder) -> Result<()> {
    let place = metadata.target_directory.join("verify");
    if place.exists() {
        std::fs::remove_dir_all(&place).with_context(|| format!("removing {}", place.display()))?;
    }
    let copy = place.join("a copy of the sources");
    println!("\nbuilding again in {}", copy.display());
    for name in source_files(&metadata.workspace_root)? {
        copy_file(&metadata.workspace_root.join(&name), &copy.join(&name))?;
    }
    let second = make(metadata, &copy, &place.join("another target folder"))?;
    let differing = differences(first, &second);
    if !differing.is_empty() {
        bail!("the second build differs from the first in: {}", differing.join(", "));
    }
    std::fs::remove_dir_all(&place).with_context(|| format!("removing {}", place.display()))?;
    println!("verified: {} files, the same bytes from two folders", first.files().count());
    Ok(())
}

fn copy_file(from: &Path, to: &Path) -> Result<()> {
    if let Some(parent) = to.parent() {
        std::fs::create_dir_all(parent)?;
    }
    std::fs::copy(from, to).with_context(|| format!("copying {}", from.display()))?;
    Ok(())
}

fn differences<'a>(first: &'a Folder, second: &'a Folder) -> Vec<&'a str> {
    let changed = first.files().filter(|(name, bytes)| second.get(name) != Some(bytes)).map(|(name, _)| name);
    let added = second.files().filter(|(name, _)| first.get(name).is_none()).map(|(name, _)| name);
    changed.chain(added).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_difference_of_any_kind_is_named() {
        let folder = |pairs: &[(&str, &str)]| {
            let mut folder = Folder::default();
            for (name, text) in pairs {
                folder.insert(*name, *text);
            }
            folder
        };
        let first = folder(&[("a", "1"), ("b", "2")]);
        assert!(differences(&first, &first).is_empty());
        assert_eq!(differences(&first, &folder(&[("a", "1"), ("b", "3")])), ["b"]);
        assert_eq!(differences(&first, &folder(&[("a", "1")])), ["b"]);
        assert_eq!(differences(&folder(&[("a", "1")]), &first), ["b"]);
    }
}
