//! The page: from the web crate to a folder that any web server can host.
//!
//! What it is: build, assemble, check the links, measure. What it is not: serving, checksums or notices.

pub mod assemble;
pub mod build;
mod demo_links;
pub mod digest;
pub mod html;
pub mod links;
pub mod shorten;
mod sizes;

use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::workspace::Metadata;
use assemble::Folder;
use build::{Built, Profile};

/// `cargo xtask build`.
pub fn run(release: bool, service_worker: bool) -> Result<()> {
    let metadata = Metadata::load()?;
    if release {
        let (folder, _) = release_folder(&metadata.workspace_root, &metadata.target_directory)?;
        write(&folder, &metadata.workspace_root.join("dist"))?;
        demo_links::print(&metadata.workspace_root, &metadata.target_directory)?;
    } else {
        quick(&metadata, service_worker)?;
    }
    Ok(())
}

/// The quick build in `dist-debug/`; gives back where it stands.
pub fn quick(metadata: &Metadata, service_worker: bool) -> Result<PathBuf> {
    let root = &metadata.workspace_root;
    let built = build::build(root, &metadata.target_directory, Profile::Quick)?;
    let folder = assemble::assemble(&root.join("web/static"), &built.files, service_worker, false)?;
    links::check(&folder)?;
    sizes::print_raw(&folder);
    let dist = root.join("dist-debug");
    write(&folder, &dist)?;
    Ok(dist)
}

/// The release build, checked and measured, in memory.
pub fn release_folder(root: &Path, target_dir: &Path) -> Result<(Folder, Built)> {
    let built = build::build(root, target_dir, Profile::Release)?;
    let folder = assemble::assemble(&root.join("web/static"), &built.files, true, true)?;
    links::check(&folder)?;
    build::check_no_machine_path(&folder, root)?;
    sizes::check(&folder)?;
    Ok((folder, built))
}

/// Writes the folder anew; what stood there before goes.
pub fn write(folder: &Folder, dist: &Path) -> Result<()> {
    if dist.exists() {
        std::fs::remove_dir_all(dist).with_context(|| format!("removing the old {}", dist.display()))?;
    }
    for (name, bytes) in folder.files() {
        let path = dist.join(name);
        if let Some(parent) = path.parent() {
            std::fs::create_dir_all(parent).with_context(|| format!("making {}", parent.display()))?;
        }
        std::fs::write(&path, bytes).with_context(|| format!("writing {}", path.display()))?;
    }
    println!("wrote {} files to {}", folder.files().count(), dist.display());
    Ok(())
}
