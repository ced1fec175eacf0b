//! Comments and spaces out of the page's own scripts and stylesheets, for releases.
//!
//! What it is: the same program in fewer bytes; the browser tests run on its output.
//! What it is not: a renamer, or anything for code that a build made (which leaves out semicolons).

use anyhow::{Result, anyhow};

/// A file as a release ships it.
pub fn file(name: &str, bytes: Vec<u8>) -> Result<Vec<u8>> {
    let shorter: fn(&str) -> Result<String, String> = match name.rsplit_once('.') {
        Some((_, "js")) => |text| minifier::js::minify(text).map(|short| short.to_string()).map_err(str::to_owned),
        Some((_, "css")) => |text| minifier::css::minify(text).map(|short| short.to_string()).map_err(str::to_owned),
        _ => return Ok(bytes),
    };
    let text = String::from_utf8(bytes)?;
    shorter(&text).map(String::into_bytes).map_err(|reason| anyhow!("shortening {name}: {reason}"))
}

/// Code that wasm-bindgen made, without indents and whole-line comments; its line ends stand for semicolons and stay.
pub fn made(text: &str) -> String {
    let mut short = String::with_capacity(text.len());
    let mut in_comment = false;
    for line in text.lines().map(str::trim) {
        in_comment |= line.starts_with("/*");
        if !(line.is_empty() || in_comment || line.starts_with("//")) {
            short.push_str(line);
            short.push('\n');
        }
        in_comment &= !line.ends_with("*/");
    }
    short
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn made_code_keeps_its_lines() {
        let code = "/* a\n * b */\nlet a = 1\n\n  // c\n  a = `x // y`\n";
        assert_eq!(made(code), "let a = 1\na = `x // y`\n");
    }

    #[test]
    fn comments_go_and_texts_stay() {
        let short = |name: &str, text: &str| String::from_utf8(file(name, text.into()).unwrap()).unwrap();
        let script =
            "// why\nconst words = `a  // b`; /* more */\nexport const reg = /\\s+\\/\\/ x/;\nconst a = \"// c\";\n";
        let made = short("a.js", script);
        assert!(made.contains("`a  // b`") && made.contains("/\\s+\\/\\/ x/") && made.contains("\"// c\""), "{made}");
        assert!(!made.contains("why") && !made.contains("more"), "{made}");
        assert_eq!(short("a.css", "/* why */\na { color : red; }\n").trim(), "a{color:red;}");
        assert_eq!(short("a.svg", "<!-- why -->"), "<!-- why -->");
    }
}
