//! The cases in `cases/cutting`, each a file with its source and what is expected.
//!
//! What it is: reading and comparing. What it is not: a file format of the application.

use std::fs;
use std::path::Path;

use plan::cutting::{Case, Demand, Pack, solve};
use serde::Deserialize;

use crate::certificate::{can_be_cut, nothing_cheaper};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    source: String,
    packs: Vec<FilePack>,
    pieces: Vec<FilePiece>,
    cut_loss_mm: u32,
    expect: Expect,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct FilePack {
    name: String,
    length_mm: u32,
    pieces: u32,
    price: u64,
    owned: u32,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct FilePiece {
    length_mm: u32,
    count: u32,
}

/// What is not named is not compared, except that a case without `faults` must be valid and one without `short_mm` solvable.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, default)]
#[derive(Default)]
struct Expect {
    total_price: Option<u64>,
    proved: Option<bool>,
    bars: Option<usize>,
    owned: Option<u32>,
    longest_offcut_mm: Option<u32>,
    short_mm: Option<u32>,
    faults: Vec<String>,
}

/// Checks every file.
pub fn check_all() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases/cutting");
    let mut paths: Vec<_> =
        fs::read_dir(folder).expect("the folder is there").map(|e| e.expect("readable").path()).collect();
    paths.sort();
    assert!(paths.len() >= 25, "only {} cases", paths.len());
    for path in paths {
        let name = path.file_stem().expect("a name").to_string_lossy().into_owned();
        let text = fs::read_to_string(&path).expect("readable");
        let file: File = serde_json::from_str(&text).unwrap_or_else(|e| panic!("{name}: {e}"));
        assert!(file.source.len() > 20, "{name}: where do its numbers come from?");
        check(&name, file);
    }
}

fn check(name: &str, file: File) {
    let pack =
        |p: FilePack| Pack { name: p.name, length_mm: p.length_mm, pieces: p.pieces, price: p.price, owned: p.owned };
    let packs = file.packs.into_iter().map(pack).collect();
    let pieces = file.pieces.into_iter().map(|d| Demand { length_mm: d.length_mm, count: d.count }).collect();
    let expect = file.expect;
    let case = match Case::new(packs, pieces, file.cut_loss_mm) {
        Ok(case) => case,
        Err(faults) => {
            let fields: Vec<String> = faults.iter().map(|fault| fault.field.clone()).collect();
            assert_eq!(fields, expect.faults, "{name}");
            assert!(faults.iter().all(|f| !f.value.is_empty() && f.remedy.len() > 5), "{name}: {faults:?}");
            return;
        }
    };
    assert!(expect.faults.is_empty(), "{name}: was accepted");
    let plan = match solve(case.clone()) {
        Ok(plan) => plan,
        Err(short) => {
            assert!(short.proved, "{name}: {short}");
            assert_eq!(Some(short.piece_mm), expect.short_mm, "{name}: {short}");
            assert!(short.to_string().contains(&short.piece_mm.to_string()), "{name}: {short}");
            return;
        }
    };
    assert_eq!(expect.short_mm, None, "{name}: was solved");
    assert_eq!(can_be_cut(&case, &plan), Ok(()), "{name}");
    if let Err(fault) = nothing_cheaper(&case, &plan, plan.lower_bound) {
        panic!("{name}: {fault}");
    }
    same(name, "total_price", expect.total_price, plan.total_price);
    same(name, "proved", expect.proved, plan.proved);
    same(name, "bars", expect.bars, plan.bars.len());
    same(name, "owned", expect.owned, plan.owned_used.iter().sum());
    same(name, "longest_offcut_mm", expect.longest_offcut_mm, plan.longest_offcut_mm());
}

fn same<T: PartialEq + std::fmt::Debug>(name: &str, what: &str, expected: Option<T>, got: T) {
    if let Some(expected) = expected {
        assert_eq!(got, expected, "{name}: {what}");
    }
}
