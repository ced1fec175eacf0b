//! Expected texts in files: compared, or written anew where a person asks for it.
//!
//! What it is: one comparison. What it is not: a judgement whether the new text is right: read the difference.

use std::{fs, path::Path};

/// Compares a text with a file; with `UPDATE_EXPECT=1` in the environment the file is written instead.
///
/// # Errors
/// The first line that differs, or why the file cannot be read or written.
pub fn check(path: &Path, found: &str) -> Result<(), String> {
    let name = path.display();
    if std::env::var_os("UPDATE_EXPECT").is_some() {
        return fs::write(path, found).map_err(|problem| format!("{name}: {problem}"));
    }
    let expected =
        fs::read_to_string(path).map_err(|problem| format!("{name}: {problem}; UPDATE_EXPECT=1 writes it"))?;
    if expected == found {
        return Ok(());
    }
    let same = expected.lines().zip(found.lines()).take_while(|(a, b)| a == b).count();
    let line = |text: &str| text.lines().nth(same).unwrap_or("(end)").chars().take(400).collect::<String>();
    Err(format!(
        "{name}, line {}:\n  expected {}\n  found    {}\nUPDATE_EXPECT=1 writes it anew",
        same + 1,
        line(&expected),
        line(found)
    ))
}
