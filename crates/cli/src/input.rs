//! Files and standard input, read no further than a limit.
//!
//! What it is: bytes in. What it is not: what they mean.

use std::{
    ffi::OsStr,
    fs::File,
    io::{self, ErrorKind, Read},
};

use format::file::text_of;
use measure::say::{Arg, Say};

use crate::out::Fault;

/// The name that stands for standard input.
pub const STDIN: &str = "-";

/// The text of a file, or of standard input for `-`.
///
/// # Errors
/// Where it cannot be read, is longer than `most` bytes, or is no UTF-8.
pub fn text(file: &OsStr, most: usize) -> Result<String, Fault> {
    let name = file.to_string_lossy().into_owned();
    let unread = |problem: io::Error| {
        let why = match problem.kind() {
            ErrorKind::NotFound => Arg::Key("cli.no_such_file"),
            ErrorKind::PermissionDenied => Arg::Key("cli.not_allowed"),
            ErrorKind::IsADirectory => Arg::Key("cli.a_folder"),
            _ => Arg::Text(problem.to_string()),
        };
        Fault::new("cli.unread", [Arg::Text(name.clone()), why])
    };
    let mut bytes = Vec::new();
    let limit = u64::try_from(most).unwrap_or(u64::MAX).saturating_add(1);
    if file == STDIN {
        io::stdin().lock().take(limit).read_to_end(&mut bytes).map_err(unread)?;
    } else {
        File::open(file).map_err(unread)?.take(limit).read_to_end(&mut bytes).map_err(unread)?;
    }
    if bytes.len() > most {
        return Err(Fault::new(
            "cli.too_long",
            [Arg::Text(name.clone()), Arg::Count(i64::try_from(most).unwrap_or(i64::MAX))],
        ));
    }
    let no_text = |say: Say| Fault::new("cli.in_file", [Arg::Text(name.clone()), say.into()]);
    String::from_utf8(bytes).or_else(|problem| text_of(problem.as_bytes()).map(str::to_owned)).map_err(no_text)
}
