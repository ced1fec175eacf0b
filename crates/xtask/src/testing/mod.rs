//! `cargo xtask test`: every test there is, after installing what they need.
//!
//! What it is: three stages (this machine, WebAssembly in a browser, the whole page in browsers) and their totals.
//! What it is not: where tests live; those stand beside what they test and in `tests/`.

mod browser;
mod counts;
mod install;

use anyhow::{Result, bail};

use crate::page::build::{WEB_PACKAGE, ensure_wasm_target};
use crate::process::{self, cargo};
use crate::stages::Stages;
use crate::workspace::{Metadata, WASM_TARGET};
use counts::Counts;

#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Stage {
    Native,
    Wasm,
    Browser,
}

impl Stage {
    const ALL: [Self; 3] = [Self::Native, Self::Wasm, Self::Browser];

    pub fn parse(text: &str) -> Result<Self> {
        match Self::ALL.into_iter().find(|stage| stage.name() == text) {
            Some(stage) => Ok(stage),
            None => bail!("--only {text:?}: choose native, wasm or browser"),
        }
    }

    fn name(self) -> &'static str {
        match self {
            Self::Native => "native",
            Self::Wasm => "wasm",
            Self::Browser => "browser",
        }
    }
}

#[derive(Default)]
pub struct TestOptions {
    pub only: Option<Stage>,
    pub grep: Option<String>,
}

pub fn run(options: &TestOptions) -> Result<()> {
    let metadata = Metadata::load()?;
    let wanted: Vec<Stage> =
        Stage::ALL.into_iter().filter(|stage| options.only.is_none_or(|only| only == *stage)).collect();
    let mut stages = Stages::default();
    let mut counts = Counts::default();
    let mut failed: Vec<&str> = Vec::new();
    let grep = options.grep.as_deref();
    for stage in wanted {
        let before = counts;
        let result = stages.run(stage.name(), || match stage {
            Stage::Native => native(grep, &mut counts),
            Stage::Wasm => wasm(&metadata, grep, &mut counts),
            Stage::Browser => browser::run(&metadata, grep, &mut counts),
        });
        if let Err(error) = result {
            eprintln!("error: {error:#}");
            failed.push(stage.name());
            if counts.failed == before.failed {
                eprintln!("(the {} stage stopped before its failure could be counted as a test)", stage.name());
            }
        }
    }
    stages.print();
    if !failed.is_empty() {
        println!("failed: {}", failed.join(", "));
    } else if counts == Counts::default() {
        bail!("no test ran{}", grep.map(|text| format!(": nothing matches {text:?}")).unwrap_or_default());
    }
    // A failure that no runner counted must not end on a line that reads like success.
    if failed.is_empty() || counts.failed > 0 {
        println!("{} passed, {} failed", counts.passed, counts.failed);
    }
    if failed.is_empty() { Ok(()) } else { bail!("tests failed in: {}", failed.join(", ")) }
}

fn native(grep: Option<&str>, counts: &mut Counts) -> Result<()> {
    let mut command = cargo();
    command.args(["test", "--workspace", "--locked", "--no-fail-fast"]);
    if let Some(text) = grep {
        command.args(["--", text]);
    }
    finish(process::tee(&mut command, |line| counts.read_line(line))?, "native tests failed")
}

/// One binary, so that one browser starts once.
fn wasm(metadata: &Metadata, grep: Option<&str>, counts: &mut Counts) -> Result<()> {
    let web = metadata.members().find(|package| package.name == WEB_PACKAGE);
    let has_tests = web.is_some_and(|web| {
        web.targets.iter().any(|target| target.name == "wasm" && target.kind.iter().any(|kind| kind == "test"))
    });
    if !has_tests {
        println!("none: {WEB_PACKAGE} has no test target named wasm (web/tests/wasm.rs)");
        return Ok(());
    }
    ensure_wasm_target()?;
    install::packages(&[install::CHROMIUM, install::DRIVER])?;
    let mut command = cargo();
    command.args(["test", "--locked", "--package", WEB_PACKAGE, "--target", WASM_TARGET, "--test", "wasm"]);
    // Seconds for the whole binary; the runner's own 20 are tight on a busy machine.
    command.env("WASM_BINDGEN_TEST_TIMEOUT", "120").env("WASM_BINDGEN_TEST_DRIVER_TIMEOUT", "30");
    if let Some(text) = grep {
        command.args(["--", text]);
    }
    finish(process::tee(&mut command, |line| counts.read_line(line))?, "wasm tests failed")
}

fn finish(ok: bool, what: &str) -> Result<()> {
    if ok { Ok(()) } else { bail!("{what}") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stages_are_named_or_refused() {
        assert_eq!(Stage::parse("wasm").unwrap(), Stage::Wasm);
        assert!(Stage::parse("all").unwrap_err().to_string().contains("native, wasm or browser"));
    }
}
