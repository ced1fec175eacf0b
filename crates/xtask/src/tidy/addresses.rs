//! Rule: no file names a package registry's host or a folder of somebody's machine.
//!
//! What it is: a search of every text file. What it is not: a search for names of people or shops.
//! The words are put together from halves here, so that this file passes its own rule.

use super::Texts;

const HOSTS: [&str; 7] = [
    concat!("crates", ".io"),
    concat!("npmjs", ".org"),
    concat!("npmjs", ".com"),
    concat!("pypi", ".org"),
    concat!("pythonhosted", ".org"),
    concat!("deb.", "debian", ".org"),
    concat!("proxy.golang", ".org"),
];
const FOLDERS: [&str; 5] = [
    concat!("/ro", "ot/"),
    concat!("/ho", "me/"),
    concat!("/wo", "rk/"),
    concat!("/Us", "ers/"),
    concat!(":\\Us", "ers\\"),
];

/// Cargo writes this into its lock file by itself.
const CARGO_SOURCE: &str = concat!("source = \"registry+https://github.com/rust-lang/crates", ".io-index\"");

pub fn check(texts: &Texts) -> Vec<String> {
    let mut findings = Vec::new();
    for (name, text) in texts {
        for (number, line) in text.lines().enumerate() {
            if name == "Cargo.lock" && line == CARGO_SOURCE {
                continue;
            }
            let host = HOSTS.iter().find(|host| line.contains(**host));
            let folder = FOLDERS.iter().find(|folder| names_folder(line, folder));
            if let Some(found) = host.or(folder) {
                findings.push(format!("{name}:{} names {found}", number + 1));
            }
        }
    }
    findings
}

/// Whether the line has the folder as the start of a path, not in the middle of a longer one.
fn names_folder(line: &str, folder: &str) -> bool {
    line.match_indices(folder).any(|(at, _)| {
        let before = line[..at].chars().next_back();
        folder.starts_with(':')
            || before.is_none_or(|c| !c.is_alphanumeric() && !matches!(c, '.' | '_' | '-' | '}' | '/' | '*'))
    })
}

#[cfg(test)]
mod tests {
    use super::super::texts;
    use super::*;

    #[test]
    fn hosts_and_folders_are_found() {
        let bad = [
            format!("see https://{}/crates/x", HOSTS[0]),
            format!("\"resolved\": \"https://registry.{}/a\"", HOSTS[1]),
            format!("path = \"{}me/project\"", FOLDERS[0]),
            format!("cd {}project", FOLDERS[2]),
        ];
        for line in &bad {
            assert_eq!(check(&texts(&[("a.md", line)])).len(), 1, "{line}");
        }
        assert_eq!(check(&texts(&[("b.lock", CARGO_SOURCE)])).len(), 1);
    }

    #[test]
    fn our_own_paths_pass() {
        for line in [
            concat!("crates/record/src/wo", "rk/mod.rs"),
            concat!("../wo", "rk/a"),
            "crates are io-free",
            "src/home/page.rs",
        ] {
            assert_eq!(check(&texts(&[("a.md", line)])), Vec::<String>::new(), "{line}");
        }
        assert_eq!(check(&texts(&[("Cargo.lock", CARGO_SOURCE)])), Vec::<String>::new());
    }
}
