//! Every relative address in the page's own files must lead to a file in the folder.
//!
//! What it is: a check of the finished folder, so that a file left out is noticed before a person does.
//! What it is not: a JavaScript parser; addresses made up at run time are beyond it.

use anyhow::{Result, bail};

use super::assemble::Folder;
use super::html;

/// wasm-bindgen calls the imports of the wasm file by this name; no file of that name exists or is asked for.
const IMPORT_NAME: &str = "./weftbook_bg.js";

pub fn check(folder: &Folder) -> Result<()> {
    let mut broken = Vec::new();
    for (name, bytes) in folder.files() {
        let text = || String::from_utf8_lossy(bytes);
        let links = if name.ends_with(".html") {
            html_links(&text())
        } else if name.ends_with(".js") {
            script_links(&text())
        } else {
            continue;
        };
        for link in links.into_iter().filter(|link| link != IMPORT_NAME) {
            if resolve(name, &link).is_none_or(|path| folder.get(&path).is_none()) {
                broken.push(format!("{name} asks for {link:?}"));
            }
        }
    }
    if broken.is_empty() { Ok(()) } else { bail!("not in the built folder:\n  {}", broken.join("\n  ")) }
}

fn html_links(text: &str) -> Vec<String> {
    html::elements(text)
        .iter()
        .flat_map(|element| ["href", "src"].iter().filter_map(|name| element.attributes.get(*name)))
        .filter(|link| !link.starts_with('#') && !link.starts_with("data:") && !link.is_empty())
        .cloned()
        .collect()
}

/// Quoted addresses that begin with `./` or `../` and name a file of ours.
fn script_links(text: &str) -> Vec<String> {
    const KINDS: [&str; 5] = [".js", ".css", ".wasm", ".svg", ".png"];
    let quote = |c: char| matches!(c, '"' | '\'' | '`');
    text.lines()
        .filter(|line| !line.trim_start().starts_with("//") && !line.trim_start().starts_with('*'))
        .flat_map(|line| line.split(quote).skip(1).step_by(2))
        .filter(|link| link.starts_with("./") || link.starts_with("../"))
        .filter(|link| KINDS.iter().any(|kind| link.ends_with(kind)))
        .map(str::to_owned)
        .collect()
}

/// The folder's name of what `link` means inside `file`; `None` where it leads outside.
fn resolve(file: &str, link: &str) -> Option<String> {
    let link = link.split(['?', '#']).next()?;
    let mut parts: Vec<&str> = file.split('/').collect();
    parts.pop();
    for part in link.split('/') {
        match part {
            "." | "" => {}
            ".." => {
                parts.pop()?;
            }
            name => parts.push(name),
        }
    }
    Some(parts.join("/"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn folder(index: &str, boot: &str) -> Folder {
        let mut folder = Folder::default();
        folder.insert("index.html", index);
        folder.insert("app-1/boot.js", boot);
        folder.insert("app-1/shell.js", "");
        folder
    }

    #[test]
    fn links_that_lead_somewhere_pass() {
        let good = folder("<script src='app-1/boot.js'></script><a href='#main'>", "import a from \"./shell.js\";");
        assert!(check(&good).is_ok());
    }

    #[test]
    fn links_that_lead_nowhere_are_named() {
        let bad = folder("<script src='app-1/boot.js'></script><link href='gone.css'>", "import('./gone.js')");
        let said = check(&bad).unwrap_err().to_string();
        assert!(said.contains("gone.css") && said.contains("gone.js"), "{said}");
        assert!(check(&folder("<img src='../up.png'>", "")).is_err());
        assert!(check(&folder("<img src='https://example.org/a.png'>", "")).is_err());
    }
}
