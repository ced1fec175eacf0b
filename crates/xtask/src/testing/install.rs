//! What the browser tests need on the machine, and how it gets there.
//!
//! What it is: Debian packages through apt-get where we may, else the exact command to type; npm packages by lock file.
//! What it is not: a download of browsers or tools by any other way.

use std::path::Path;
use std::process::Command;

use anyhow::{Result, bail};

use crate::process::{self, find_program};

/// A Debian package and how to see that what it brings is there.
#[derive(Clone, Copy)]
pub struct Need {
    pub package: &'static str,
    present: fn() -> bool,
}

pub const CHROMIUM: Need = Need { package: "chromium", present: || given("WEFTBOOK_CHROMIUM") || found("chromium") };
pub const DRIVER: Need = Need { package: "chromium-driver", present: || found("chromedriver") };
pub const FIREFOX: Need =
    Need { package: "firefox-esr", present: || given("WEFTBOOK_FIREFOX") || found("firefox-esr") };
pub const FONTS: Need = Need {
    package: "fonts-dejavu-core",
    present: || Path::new("/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf").is_file(),
};
pub const POPPLER: Need = Need { package: "poppler-utils", present: || found("pdftotext") && found("pdftoppm") };
pub const NODE: Need = Need { package: "nodejs", present: || found("node") };
pub const NPM: Need = Need { package: "npm", present: || found("npm") };

fn given(variable: &str) -> bool {
    std::env::var_os(variable).is_some_and(|path| Path::new(&path).is_file())
}

fn found(program: &str) -> bool {
    find_program(program).is_some()
}

/// Installs what is missing, or stops with the command that would.
pub fn packages(needs: &[Need]) -> Result<()> {
    let missing: Vec<&str> = needs.iter().filter(|need| !(need.present)()).map(|need| need.package).collect();
    if missing.is_empty() {
        return Ok(());
    }
    println!("missing: {}", missing.join(", "));
    if !found("apt-get") {
        bail!(
            "the tests need these Debian packages or the same from your system: {}. Browsers elsewhere can be named in \
             WEFTBOOK_CHROMIUM and WEFTBOOK_FIREFOX",
            missing.join(" ")
        );
    }
    let Some(sudo) = how_to_be_root() else {
        bail!(
            "not allowed to install; run this, then try again:\n  sudo apt-get update && sudo apt-get install -y \
             --no-install-recommends {}",
            missing.join(" ")
        );
    };
    process::run(apt(sudo).arg("update").arg("-qq"))?;
    process::run(apt(sudo).args(["install", "-y", "-qq", "--no-install-recommends"]).args(&missing))?;
    let still: Vec<&str> = needs.iter().filter(|need| !(need.present)()).map(|need| need.package).collect();
    if still.is_empty() { Ok(()) } else { bail!("installed, but not found afterwards: {}", still.join(" ")) }
}

/// Root already (`false`), through sudo without a question (`true`), or not at all.
fn how_to_be_root() -> Option<bool> {
    let id = process::read(Command::new("id").arg("-u")).unwrap_or_default();
    if id.trim() == "0" {
        return Some(false);
    }
    let may = Command::new("sudo").args(["-n", "true"]).output();
    may.is_ok_and(|output| output.status.success()).then_some(true)
}

fn apt(sudo: bool) -> Command {
    let mut command = Command::new(if sudo { "sudo" } else { "env" });
    if sudo {
        command.args(["-n", "env"]);
    }
    command.args(["DEBIAN_FRONTEND=noninteractive", "apt-get"]);
    command
}

/// The npm packages of the lock file, unless they are there already.
pub fn npm_packages(dir: &Path) -> Result<()> {
    let lock = dir.join("package-lock.json");
    if !lock.is_file() {
        bail!("{} is missing: npm installs only what a lock file names", lock.display());
    }
    let changed = |path: &Path| path.metadata().and_then(|data| data.modified()).ok();
    // npm writes this file last, after all packages.
    if changed(&dir.join("node_modules/.package-lock.json")) >= changed(&lock) {
        return Ok(());
    }
    process::run(Command::new("npm").args(["ci", "--no-audit", "--no-fund"]).current_dir(dir))
}
