//! Sizes of everything the first visit loads, and the budget they must keep.
//!
//! What it is: bytes as they are and after brotli at its highest setting (quality 11, window 22).
//! What it is not: a measure of speed. Each file counts once, also where a browser fetches it twice.

use anyhow::{Context, Result, bail};

use super::assemble::Folder;

/// Brotli bytes that the first visit may cost, by what they buy: the main job alone kept the first; whatever was added
/// since says here what it may add.
const ALLOWED: [(&str, usize); 6] = [
    ("from a bare base to \"buy two packs\"", 300_000),
    ("the bench", 128_000),
    ("the printed sheet", 27_000),
    ("curl and heat", 36_000),
    ("colour and dye", 58_000),
    ("handing over and taking back", 76_000),
];

/// Brotli bytes that the first visit may cost in all.
pub const BUDGET: usize = budget();

const fn budget() -> usize {
    let (mut sum, mut at) = (0, 0);
    while at < ALLOWED.len() {
        sum += ALLOWED[at].1;
        at += 1;
    }
    sum
}

/// A size without these would measure something else than the app.
const MUST_HAVE: [&str; 11] = [
    "index.html",
    "sw.js",
    "manifest.webmanifest",
    "APP/boot.js",
    "APP/store.js",
    "APP/shell.js",
    "APP/crash.js",
    "APP/crash.css",
    "APP/style.css",
    "APP/weftbook.js",
    "APP/weftbook_bg.wasm",
];

pub fn print_raw(folder: &Folder) {
    let total: usize = folder.files().map(|(_, bytes)| bytes.len()).sum();
    println!("quick build: {total} bytes in all (uncompressed; the budget is for release builds)");
}

/// Prints the table and refuses a folder over budget or with something missing.
pub fn check(folder: &Folder) -> Result<()> {
    let app = folder.app().context("the build has no app folder")?;
    for name in MUST_HAVE {
        let name = name.replace("APP", app);
        if folder.get(&name).is_none_or(<[u8]>::is_empty) {
            bail!("{name} is missing or empty: what the first visit loads cannot be measured without it");
        }
    }
    println!("first visit, bytes: {:>10} {:>10}", "raw", "brotli-11");
    let (mut raw, mut packed) = (0, 0);
    for (name, bytes) in folder.files() {
        let small = brotli_size(bytes)?;
        println!("  {name:40} {:>10} {small:>10}", bytes.len());
        raw += bytes.len();
        packed += small;
    }
    println!("  {:40} {raw:>10} {packed:>10}", "sum");
    within(packed)
}

fn within(packed: usize) -> Result<()> {
    if packed > BUDGET {
        bail!("the first visit costs {packed} bytes after brotli; the budget is {BUDGET}: make the page smaller");
    }
    for (what, bytes) in ALLOWED {
        println!("  allowed {bytes:>9}  {what}");
    }
    println!("  budget {BUDGET}, {} left", BUDGET - packed);
    Ok(())
}

fn brotli_size(bytes: &[u8]) -> Result<usize> {
    let params = brotli::enc::BrotliEncoderParams { quality: 11, lgwin: 22, ..Default::default() };
    let mut packed = Vec::new();
    brotli::BrotliCompress(&mut &bytes[..], &mut packed, &params).context("compressing with brotli")?;
    Ok(packed.len())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn whole() -> Folder {
        let mut folder = Folder::default();
        for name in MUST_HAVE {
            folder.insert(name.replace("APP", "app-1"), "x");
        }
        folder
    }

    #[test]
    fn a_whole_small_folder_passes() {
        assert!(check(&whole()).is_ok());
    }

    #[test]
    fn a_missing_or_empty_file_fails() {
        let mut folder = whole();
        folder.insert("app-1/weftbook_bg.wasm", "");
        assert!(check(&folder).unwrap_err().to_string().contains("weftbook_bg.wasm"));
        assert!(check(&Folder::default()).is_err());
    }

    #[test]
    fn the_budget_is_a_limit() {
        assert!(within(BUDGET).is_ok());
        assert!(within(BUDGET + 1).is_err());
    }

    #[test]
    fn brotli_packs() {
        assert!(brotli_size(&[b'a'; 10_000]).unwrap() < 100);
    }
}
