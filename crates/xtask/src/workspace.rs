//! What cargo says about the workspace: members, dependencies, folders.
//!
//! What it is: the few fields of `cargo metadata` we use, typed. What it is not: a model of cargo.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use serde::Deserialize;

use crate::process;

pub const WASM_TARGET: &str = "wasm32-unknown-unknown";

#[derive(Deserialize)]
pub struct Metadata {
    pub packages: Vec<Package>,
    pub workspace_members: Vec<String>,
    pub workspace_root: PathBuf,
    pub target_directory: PathBuf,
    resolve: Resolve,
}

#[derive(Deserialize)]
pub struct Package {
    pub id: String,
    pub name: String,
    pub version: String,
    pub license: Option<String>,
    pub authors: Vec<String>,
    pub repository: Option<String>,
    pub manifest_path: PathBuf,
    pub dependencies: Vec<Dependency>,
    pub targets: Vec<Target>,
}

/// A dependency as written in a manifest.
#[derive(Deserialize)]
pub struct Dependency {
    pub name: String,
    pub path: Option<PathBuf>,
}

#[derive(Deserialize)]
pub struct Target {
    pub name: String,
    pub kind: Vec<String>,
}

#[derive(Deserialize)]
struct Resolve {
    nodes: Vec<Node>,
}

#[derive(Deserialize)]
struct Node {
    id: String,
    deps: Vec<NodeDep>,
}

#[derive(Deserialize)]
struct NodeDep {
    pkg: String,
    dep_kinds: Vec<DepKind>,
}

#[derive(Deserialize)]
struct DepKind {
    kind: Option<String>,
}

impl Metadata {
    /// Asks cargo about the workspace that holds the current folder, for every platform.
    pub fn load() -> Result<Self> {
        Self::parse(&process::read(process::cargo().args(["metadata", "--format-version", "1"]))?)
    }

    pub fn parse(json: &str) -> Result<Self> {
        serde_json::from_str(json).context("cargo metadata answered in a form this xtask does not know")
    }

    pub fn members(&self) -> impl Iterator<Item = &Package> {
        self.packages.iter().filter(|package| self.workspace_members.contains(&package.id))
    }

    /// Package id -> ids of what its own code uses (normal dependencies only, every platform).
    pub fn normal_edges(&self) -> BTreeMap<&str, Vec<&str>> {
        let normal = |dep: &NodeDep| dep.dep_kinds.iter().any(|kind| kind.kind.is_none());
        self.resolve
            .nodes
            .iter()
            .map(|node| {
                let used = node.deps.iter().filter(|dep| normal(dep)).map(|dep| dep.pkg.as_str()).collect();
                (node.id.as_str(), used)
            })
            .collect()
    }

    pub fn package(&self, id: &str) -> Option<&Package> {
        self.packages.iter().find(|package| package.id == id)
    }
}

/// The files under `dir`, as sorted paths relative to it with `/`.
pub fn files_under(dir: &Path) -> Result<Vec<String>> {
    fn walk(root: &Path, dir: &Path, found: &mut Vec<String>) -> Result<()> {
        for entry in std::fs::read_dir(dir).with_context(|| format!("reading the folder {}", dir.display()))? {
            let path = entry?.path();
            if path.is_dir() {
                walk(root, &path, found)?;
            } else if let Ok(relative) = path.strip_prefix(root) {
                let parts: Vec<_> = relative.iter().map(|part| part.to_string_lossy()).collect();
                found.push(parts.join("/"));
            }
        }
        Ok(())
    }
    let mut found = Vec::new();
    walk(dir, dir, &mut found)?;
    found.sort();
    Ok(found)
}
