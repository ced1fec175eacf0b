//! Compiles the web crate to WebAssembly and makes its JavaScript side.
//!
//! What it is: cargo, then wasm-bindgen as a library, so that nothing needs installing and versions always fit.
//! What it is not: a judge of sizes, or the place where files get their final names.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, bail};
use serde::Deserialize;
use wasm_bindgen_cli_support::Bindgen;

use super::assemble::Folder;
use crate::process;
use crate::workspace::{WASM_TARGET, files_under};

pub const WEB_PACKAGE: &str = "weftbook-web";
const WEB_FILE: &str = "weftbook_web.wasm";

#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Profile {
    Quick,
    Release,
}

pub struct Built {
    /// What wasm-bindgen made: relative name -> bytes.
    pub files: BTreeMap<String, Vec<u8>>,
    /// Ids of the packages compiled for the page, as cargo reports them.
    pub linked: BTreeSet<String>,
}

/// Adds the wasm target when rustup is there; else says what to do.
pub fn ensure_wasm_target() -> Result<()> {
    let sysroot = process::read(Command::new("rustc").args(["--print", "sysroot"]))?;
    if Path::new(sysroot.trim()).join("lib/rustlib").join(WASM_TARGET).is_dir() {
        return Ok(());
    }
    if process::find_program("rustup").is_none() {
        bail!(
            "the Rust target {WASM_TARGET} is not installed and rustup is not here: install that target's standard library"
        );
    }
    process::run(Command::new("rustup").args(["target", "add", WASM_TARGET]))
}

/// A release compiles the standard library for size, with panics that end at once: 15 kB less for everyone's first visit.
/// These are unstable switches, which RUSTC_BOOTSTRAP lets a stable compiler take; see DEVELOPERS.md, "Decisions".
const SMALL_STD: &[&str] = &["-Zbuild-std=std,panic_abort", "-Zbuild-std-features=optimize_for_size"];
const SMALL_STD_FLAGS: &[&str] =
    &["-Zunstable-options", "-Cpanic=immediate-abort", "-Zlocation-detail=none", "-Zfmt-debug=none"];

/// Adds the standard library's sources when rustup is there; else says what to do.
fn ensure_std_sources() -> Result<()> {
    let sysroot = process::read(Command::new("rustc").args(["--print", "sysroot"]))?;
    if Path::new(sysroot.trim()).join("lib/rustlib/src/rust/library/std").is_dir() {
        return Ok(());
    }
    if process::find_program("rustup").is_none() {
        bail!("the standard library's sources (rust-src) are not installed and rustup is not here: install them");
    }
    process::run(Command::new("rustup").args(["component", "add", "rust-src"]))
}

/// The stylesheet of the sheet room's drawings.
const DRAWING_STYLE: &str = "crates/sheet/src/drawing/drawing.css";

/// Builds the web room and makes its JavaScript side.
pub fn build(root: &Path, target_dir: &Path, profile: Profile) -> Result<Built> {
    ensure_wasm_target()?;
    let mut cargo = process::cargo();
    cargo.current_dir(root).env("CARGO_TARGET_DIR", target_dir);
    cargo.args(["build", "--package", WEB_PACKAGE, "--lib", "--target", WASM_TARGET, "--locked"]);
    cargo.arg("--message-format=json-render-diagnostics");
    if profile == Profile::Release {
        ensure_std_sources()?;
        let mut flags = remap_flags(root, target_dir)?;
        flags.extend(SMALL_STD_FLAGS.iter().map(|flag| (*flag).to_owned()));
        cargo.arg("--release").args(SMALL_STD).env("CARGO_ENCODED_RUSTFLAGS", flags.join("\u{1f}"));
        cargo.env("RUSTC_BOOTSTRAP", "1");
    }
    println!("$ {}", process::show(&cargo));
    let (wasm, linked) = artifacts(&process::read(&mut cargo)?)?;

    let folder = if profile == Profile::Release { "page-release" } else { "page-quick" };
    let out = target_dir.join(folder);
    if out.exists() {
        std::fs::remove_dir_all(&out).with_context(|| format!("removing {}", out.display()))?;
    }
    let mut bindgen = Bindgen::new();
    bindgen.web(true)?.input_path(&wasm).out_name("weftbook").typescript(false).omit_default_module_path(true);
    let release = profile == Profile::Release;
    bindgen.remove_name_section(release).remove_producers_section(release);
    bindgen.generate(&out).with_context(|| format!("making the JavaScript side of {}", wasm.display()))?;
    let mut files = BTreeMap::new();
    for name in files_under(&out)? {
        let bytes = std::fs::read(out.join(&name))?;
        files.insert(name, bytes);
    }
    // The drawings' colours stand with the drawings, so that page and file agree.
    let colours = root.join(DRAWING_STYLE);
    let bytes = std::fs::read(&colours).with_context(|| format!("reading {}", colours.display()))?;
    files.insert("drawing.css".to_owned(), bytes);
    Ok(Built { files, linked })
}

/// Flags that keep this machine's folders out of the wasm, so that any folder gives the same bytes.
fn remap_flags(root: &Path, target_dir: &Path) -> Result<Vec<String>> {
    let sysroot = process::read(Command::new("rustc").args(["--print", "sysroot"]))?;
    let version = process::read(Command::new("rustc").arg("-vV"))?;
    let commit = version.lines().find_map(|line| line.strip_prefix("commit-hash: ")).unwrap_or("unknown");
    let cargo_home = cargo_home()?;
    // The last flag that fits wins: wide folders first.
    let mut pairs = vec![
        (cargo_home.clone(), "cargo".to_owned()),
        (root.to_owned(), "weftbook".to_owned()),
        (target_dir.to_owned(), "target".to_owned()),
        (Path::new(sysroot.trim()).join("lib/rustlib/src/rust"), format!("/rustc/{commit}")),
    ];
    // The folders in here are named after the registry's host.
    if let Ok(sources) = std::fs::read_dir(cargo_home.join("registry/src")) {
        let mut sources: Vec<PathBuf> = sources.flatten().map(|entry| entry.path()).collect();
        sources.sort();
        pairs.extend(sources.into_iter().map(|path| (path, "dep".to_owned())));
    }
    Ok(pairs.into_iter().map(|(from, to)| format!("--remap-path-prefix={}={to}", from.display())).collect())
}

fn cargo_home() -> Result<PathBuf> {
    if let Some(home) = std::env::var_os("CARGO_HOME") {
        return Ok(home.into());
    }
    let home = std::env::var_os("HOME").or_else(|| std::env::var_os("USERPROFILE"));
    Ok(PathBuf::from(home.context("neither CARGO_HOME nor HOME is set")?).join(".cargo"))
}

/// A release must not tell where it was built.
pub fn check_no_machine_path(folder: &Folder, root: &Path) -> Result<()> {
    // The last one also tells the registry's host, whatever the home is called.
    let places = [root.to_owned(), cargo_home()?, PathBuf::from("registry/src/")];
    for (name, bytes) in folder.files() {
        for place in &places {
            let place = place.to_string_lossy();
            if place.len() > 1 && contains(bytes, place.as_bytes()) {
                bail!("{name} holds the path {place} of this machine: remap it in page/build.rs");
            }
        }
    }
    Ok(())
}

fn contains(bytes: &[u8], part: &[u8]) -> bool {
    bytes.windows(part.len()).any(|window| window == part)
}

#[derive(Deserialize)]
struct Message {
    reason: String,
    package_id: Option<String>,
    #[serde(default)]
    filenames: Vec<PathBuf>,
}

/// The wasm file and the packages compiled for it; what was compiled for this machine (macros, build scripts) stays out.
fn artifacts(messages: &str) -> Result<(PathBuf, BTreeSet<String>)> {
    let mut wasm = None;
    let mut linked = BTreeSet::new();
    for line in messages.lines().filter(|line| line.starts_with('{')) {
        let message: Message = serde_json::from_str(line).context("reading cargo's messages")?;
        let for_wasm = |path: &Path| path.iter().any(|part| part == WASM_TARGET);
        if message.reason != "compiler-artifact" || !message.filenames.iter().any(|path| for_wasm(path)) {
            continue;
        }
        // The standard library is the compiler's own, not a dependency.
        linked.extend(message.package_id.filter(|id| !id.contains("/rustlib/src/rust/")));
        let found = message.filenames.into_iter().find(|path| path.file_name().is_some_and(|name| name == WEB_FILE));
        wasm = wasm.or(found);
    }
    let wasm =
        wasm.with_context(|| format!("cargo made no {WEB_FILE}: is {WEB_PACKAGE} still a cdylib of that name?"))?;
    Ok((wasm, linked))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_was_compiled_for_the_page_counts() {
        let line = |id: &str, file: &str| {
            format!(r#"{{"reason":"compiler-artifact","package_id":"{id}","filenames":["{file}"]}}"#)
        };
        let messages = [
            line("macro", "/t/release/libm.so"),
            line("lib", "/t/wasm32-unknown-unknown/release/liba.rlib"),
            line("web", "/t/wasm32-unknown-unknown/release/weftbook_web.wasm"),
            r#"{"reason":"build-finished","success":true}"#.to_owned(),
        ];
        let (wasm, linked) = artifacts(&messages.join("\n")).unwrap();
        assert!(wasm.ends_with(WEB_FILE));
        assert_eq!(linked.into_iter().collect::<Vec<_>>(), ["lib", "web"]);
        assert!(artifacts(&messages[..2].join("\n")).is_err());
    }

    #[test]
    fn a_machine_path_is_found() {
        assert!(contains(b"xx/a/b/yy", b"/a/b"));
        assert!(!contains(b"xx/a/c/yy", b"/a/b"));
    }
}
