//! Where things lie in the workspace.
//!
//! What it is: paths from this package's own. What it is not: reading.

use std::path::{Path, PathBuf};

/// The workspace's folder.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// The folder of demo wigs.
pub fn demos() -> PathBuf {
    root().join("demo-data")
}

/// This package's expected texts.
pub fn golden() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("golden")
}
