//! How long the demo wigs' links are: said by every release build.
//!
//! What it is: the terminal asked for each demo's sheet. What it is not: a limit: that is a test.

use std::path::Path;

use anyhow::{Context, Result};

use crate::process::{self, cargo};

/// Prints pages and link of each demo wig.
pub fn print(root: &Path, target_dir: &Path) -> Result<()> {
    let into = target_dir.join("demo-sheets");
    std::fs::create_dir_all(&into).with_context(|| format!("making {}", into.display()))?;
    for name in crate::workspace::files_under(&root.join("demo-data"))? {
        let Some(stem) = name.strip_suffix(".wig.json") else { continue };
        let mut terminal = cargo();
        terminal.args(["run", "--quiet", "--locked", "--package", "weftbook-cli", "--", "sheet"]);
        terminal.arg(root.join("demo-data").join(&name)).arg("--out").arg(into.join(format!("{stem}.html")));
        print!("{}", process::read(&mut terminal)?);
    }
    Ok(())
}
