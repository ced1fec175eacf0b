//! `cargo xtask check`: formatting, lints on both platforms, and the house's own rules.
//!
//! What it is: the gate that needs no browser. What it is not: the tests.

use anyhow::{Result, bail};

use crate::page::build::{WEB_PACKAGE, ensure_wasm_target};
use crate::process::{self, cargo};
use crate::stages::Stages;
use crate::tidy;
use crate::workspace::{Metadata, WASM_TARGET};

/// Runs every stage even when one fails, so that one run tells all.
pub fn run(tidy_only: bool) -> Result<()> {
    let mut stages = Stages::default();
    let mut failed = Vec::new();
    let mut stage = |name: &str, work: &dyn Fn() -> Result<()>| {
        if let Err(error) = stages.run(name, work) {
            eprintln!("error: {error:#}");
            failed.push(name.to_owned());
        }
    };
    if !tidy_only {
        stage("formatting", &|| {
            component("rustfmt", "fmt")?;
            process::run(cargo().args(["fmt", "--all", "--check"]))
        });
        stage("lints, this machine", &|| {
            component("clippy", "clippy")?;
            process::run(cargo().args(["clippy", "--workspace", "--all-targets", "--locked", "--", "-D", "warnings"]))
        });
        stage("lints, WebAssembly", &|| lint_wasm(&Metadata::load()?));
    }
    stage("house rules", &|| tidy::run(&Metadata::load()?));
    stages.print();
    println!("  advisory databases: not checked (not reachable)");
    if failed.is_empty() { Ok(()) } else { bail!("check failed in: {}", failed.join("; ")) }
}

/// Lints for the browser's platform. Clippy reads the rooms under the page too, so that this also shows that every
/// pure room compiles for it.
fn lint_wasm(metadata: &Metadata) -> Result<()> {
    ensure_wasm_target()?;
    let used = tidy::rooms_of(metadata, WEB_PACKAGE);
    if let Some(room) = tidy::PURE_ROOMS.iter().find(|room| !used.contains(**room)) {
        bail!("{WEB_PACKAGE} does not use {room}, so nothing shows that it compiles for {WASM_TARGET}");
    }
    let mut clippy = cargo();
    clippy.args(["clippy", "--locked", "--all-targets", "--package", WEB_PACKAGE, "--target", WASM_TARGET]);
    process::run(clippy.args(["--", "-D", "warnings"]))
}

fn component(name: &str, command: &str) -> Result<()> {
    if process::cargo().args([command, "--version"]).output().is_ok_and(|output| output.status.success()) {
        return Ok(());
    }
    if process::find_program("rustup").is_none() {
        bail!("`cargo {command}` is not installed and rustup is not here: install {name}");
    }
    process::run(std::process::Command::new("rustup").args(["component", "add", name]))
}
