//! Puts the static files and the built ones into the folder's layout.
//!
//! What it is: names, placeholders and the service worker's list. What it is not: reading or writing `dist/`.
//!
//! On top stand the files whose address must not change between versions; all others lie in one folder
//! named after its content, so that a cache can never mix two versions and names inside it stay fixed.

use std::collections::BTreeMap;
use std::path::Path;

use anyhow::{Context, Result, bail};

use super::{digest::content_name, shorten};
use crate::workspace::files_under;

/// A finished folder in memory: relative name -> bytes, in name order.
#[derive(Clone, Default)]
pub struct Folder(BTreeMap<String, Vec<u8>>);

impl Folder {
    pub fn files(&self) -> impl Iterator<Item = (&str, &[u8])> {
        self.0.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice()))
    }

    pub fn get(&self, name: &str) -> Option<&[u8]> {
        self.0.get(name).map(Vec::as_slice)
    }

    pub fn insert(&mut self, name: impl Into<String>, bytes: impl Into<Vec<u8>>) {
        self.0.insert(name.into(), bytes.into());
    }

    /// The name of the one folder inside.
    pub fn app(&self) -> Option<&str> {
        self.0.keys().find_map(|name| name.split_once('/').map(|(folder, _)| folder).filter(|f| f.starts_with("app-")))
    }
}

fn stands_on_top(name: &str) -> bool {
    matches!(name, "index.html" | "sw.js" | "manifest.webmanifest") || (name.starts_with("icon") && !name.contains('/'))
}

/// Assembles from the folder of static files and what wasm-bindgen made; `short`: without comments and spaces.
pub fn assemble(
    statics: &Path,
    built: &BTreeMap<String, Vec<u8>>,
    service_worker: bool,
    short: bool,
) -> Result<Folder> {
    let mut top = BTreeMap::new();
    let mut app = built.clone();
    if let Some(code) = app.get_mut("weftbook.js").filter(|_| short) {
        *code = shorten::made(std::str::from_utf8(code)?).into_bytes();
    }
    if let Some(style) = app.get_mut("drawing.css").filter(|_| short) {
        *style = shorten::file("drawing.css", std::mem::take(style))?;
    }
    for name in files_under(statics)? {
        if name.split('/').any(|part| part.starts_with('.')) {
            continue;
        }
        let bytes = std::fs::read(statics.join(&name)).with_context(|| format!("reading {name}"))?;
        let bytes = if short { shorten::file(&name, bytes)? } else { bytes };
        if stands_on_top(&name) {
            top.insert(name, bytes);
        } else if app.insert(name.clone(), bytes).is_some() {
            bail!("{}/{name} has the name of a file that the build makes: rename it", statics.display());
        }
    }
    put_together(top, app, service_worker)
}

fn put_together(
    mut top: BTreeMap<String, Vec<u8>>,
    app: BTreeMap<String, Vec<u8>>,
    service_worker: bool,
) -> Result<Folder> {
    let app_name = format!("app-{}", content_name(app.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice()))));
    let index = take_text(&mut top, "index.html")?;
    let worker = take_text(&mut top, "sw.js")?;
    let mut folder = Folder::default();
    for (name, bytes) in app {
        folder.insert(format!("{app_name}/{name}"), bytes);
    }
    for (name, bytes) in top {
        folder.insert(name, bytes);
    }
    let on = if service_worker { "on" } else { "off" };
    folder.insert("index.html", fill("index.html", &index, &[("app", &app_name), ("service_worker", on)])?);
    // The list is made last: it names everything, and the version follows every byte of it.
    let list: Vec<&str> = folder.files().map(|(name, _)| name).collect();
    let list = serde_json::to_string(&list)?;
    let version = content_name(folder.files());
    let worker = fill("sw.js", &worker, &[("version", &version), ("files", &list)])?;
    folder.insert("sw.js", worker);
    Ok(folder)
}

fn take_text(top: &mut BTreeMap<String, Vec<u8>>, name: &str) -> Result<String> {
    let bytes = top.remove(name).with_context(|| format!("web/static/{name} is missing"))?;
    String::from_utf8(bytes).with_context(|| format!("web/static/{name} is not UTF-8"))
}

/// Fills each `{{name}}`; one that is missing from the text or unknown to us is an error.
fn fill(file: &str, text: &str, values: &[(&str, &str)]) -> Result<String> {
    let mut text = text.to_owned();
    for (name, value) in values {
        let placeholder = format!("{{{{{name}}}}}");
        if !text.contains(&placeholder) {
            bail!("web/static/{file} has no {placeholder}: the build has nowhere to put it");
        }
        text = text.replace(&placeholder, value);
    }
    let unknown = text.split("{{").skip(1).find_map(|rest| rest.split_once("}}"));
    if let Some((name, _)) = unknown.filter(|(name, _)| name.chars().all(|c| c.is_ascii_alphanumeric() || c == '_')) {
        bail!("web/static/{file} asks for {{{{{name}}}}}, which the build does not know");
    }
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parts(shell: &str) -> (BTreeMap<String, Vec<u8>>, BTreeMap<String, Vec<u8>>) {
        let map = |pairs: &[(&str, &str)]| {
            pairs.iter().map(|(name, text)| ((*name).to_owned(), text.as_bytes().to_vec())).collect()
        };
        let top = [
            ("index.html", "<html data-service-worker='{{service_worker}}'><script src='{{app}}/boot.js'>"),
            ("sw.js", "const V='{{version}}', F={{files}};"),
            ("icon.svg", "<svg/>"),
        ];
        (map(&top), map(&[("boot.js", ""), ("shell.js", shell)]))
    }

    fn text(folder: &Folder, name: &str) -> String {
        String::from_utf8(folder.get(name).unwrap().to_vec()).unwrap()
    }

    #[test]
    fn placeholders_are_filled_and_the_worker_lists_all_but_itself() {
        let (top, app) = parts("1");
        let folder = put_together(top, app, true).unwrap();
        let name = folder.app().unwrap().to_owned();
        assert!(text(&folder, "index.html").contains(&format!("src='{name}/boot.js'")));
        assert!(text(&folder, "index.html").contains("data-service-worker='on'"));
        let worker = text(&folder, "sw.js");
        assert!(
            worker.contains(&format!(r#"["{name}/boot.js","{name}/shell.js","icon.svg","index.html"]"#)),
            "{worker}"
        );
    }

    #[test]
    fn names_follow_content_and_nothing_else() {
        let make = |shell: &str| {
            let (top, app) = parts(shell);
            put_together(top, app, false).unwrap()
        };
        assert_eq!(make("1").0, make("1").0);
        assert_ne!(make("1").app(), make("2").app());
        assert_ne!(text(&make("1"), "sw.js"), text(&make("2"), "sw.js"));
        assert!(text(&make("1"), "index.html").contains("data-service-worker='off'"));
    }

    #[test]
    fn a_missing_or_unknown_placeholder_is_refused() {
        assert!(fill("f", "no place", &[("app", "x")]).is_err());
        assert!(fill("f", "{{app}} {{other}}", &[("app", "x")]).unwrap_err().to_string().contains("{{other}}"));
        assert!(fill("f", "{{app}} ${{ a: 1 }}", &[("app", "x")]).is_ok());
        let (mut top, app) = parts("1");
        top.remove("sw.js");
        assert!(put_together(top, app, true).is_err());
    }

    #[test]
    fn what_stands_on_top_keeps_its_address() {
        assert!(
            ["index.html", "sw.js", "manifest.webmanifest", "icon.svg", "icon-512.png"]
                .iter()
                .all(|n| stands_on_top(n))
        );
        assert!(!["boot.js", "icons/a.svg", "style.css"].iter().any(|n| stands_on_top(n)));
    }
}
