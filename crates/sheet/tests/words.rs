//! Each key used stands in the table once, each in the table is used; colours can be told from their ground.

use std::{collections::BTreeSet, fs, path::Path};

fn sources(folder: &Path, into: &mut String) {
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let path = entry.path();
        if path.is_dir() {
            sources(&path, into);
        } else if path.extension().is_some_and(|ext| ext == "rs")
            && path.file_name().is_some_and(|name| name != "words.rs")
        {
            into.push_str(&fs::read_to_string(&path).unwrap_or_default());
        }
    }
}

#[test]
fn keys_and_table_agree() {
    let mut text = String::new();
    sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"), &mut text);
    let said: BTreeSet<&str> =
        text.split('"').filter(|part| part.starts_with("sheet.") && !part.contains(' ')).collect();
    // A key put together from a name: its start; `paper` walks the names.
    let (built, used): (BTreeSet<&str>, BTreeSet<&str>) = said.iter().partition(|key| key.contains('{'));
    let starts: Vec<&str> = built.iter().filter_map(|key| key.split('{').next()).collect();
    let all: BTreeSet<&str> = sheet::words::ENGLISH.iter().map(|(key, _)| *key).collect();
    assert_eq!(all.len(), sheet::words::ENGLISH.len(), "a key stands twice");
    let there: BTreeSet<&str> =
        all.into_iter().filter(|key| !starts.iter().any(|start| key.starts_with(start))).collect();
    assert!(used.len() > 40);
    assert_eq!(used.difference(&there).collect::<Vec<_>>(), Vec::<&&str>::new(), "used, not in the table");
    assert_eq!(there.difference(&used).collect::<Vec<_>>(), Vec::<&&str>::new(), "in the table, not used");
}

/// Relative luminance and contrast as WCAG 2.2 defines them (https://www.w3.org/TR/WCAG22/#dfn-relative-luminance).
fn luminance(hex: &str) -> f64 {
    let channel = |at: usize| {
        let value = f64::from(u8::from_str_radix(&hex[at..at + 2], 16).unwrap_or_default()) / 255.0;
        if value <= 0.04045 { value / 12.92 } else { libm::pow((value + 0.055) / 1.055, 2.4) }
    };
    0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
}

fn contrast(a: &str, b: &str) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[test]
fn colours_can_be_told_from_their_ground() {
    assert!((contrast("#ffffff", "#000000") - 21.0).abs() < 1e-9);
    let css = sheet::style();
    let mut checked = 0;
    for block in css.lines().filter(|line| line.contains("--d-paper:#")) {
        let of = |name: &str| block.split(&format!("--d-{name}:")).nth(1).map(|rest| rest[..7].to_owned());
        let (Some(paper), Some(figure)) = (of("paper"), of("figure")) else { panic!("{block}") };
        for name in ["soft", "todo", "chosen"] {
            let colour = of(name).expect("colour");
            // Words are written in all three: 4.5 on every ground.
            assert!(contrast(&colour, &paper) >= 4.5, "{name} on paper: {}", contrast(&colour, &paper));
            assert!(contrast(&colour, &figure) >= 4.5, "{name} on the figure: {}", contrast(&colour, &figure));
            checked += 1;
        }
    }
    assert_eq!(checked, 9, "light, dark and print");
}
