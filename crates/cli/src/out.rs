//! What leaves the program: text, one line of complaint, an exit status.
//!
//! What it is: the only writer. What it is not: words.

use std::{
    ffi::OsStr,
    io::{self, ErrorKind, Write},
    process::ExitCode,
};

use measure::{prefs::Prefs, say::Say};
use serde::Serialize;

use crate::words::WORDS;

/// What is printed, and whether all is well.
pub struct Said {
    /// The text, with its last line end.
    pub text: String,
    /// Exit status 0, or 1.
    pub clean: bool,
}

/// What is wrong with the input, in a sentence.
pub struct Fault(pub String);

impl Fault {
    /// From a sentence.
    pub fn of(say: &Say) -> Fault {
        Fault(say.words(&WORDS, &Prefs::default()))
    }

    /// From a sentence of this crate.
    pub fn new(key: &'static str, args: impl Into<Vec<measure::say::Arg>>) -> Fault {
        Fault::of(&Say::new(key, args))
    }
}

/// Prints, and says how to end.
pub fn print(said: &Said) -> ExitCode {
    let mut out = io::stdout().lock();
    match out.write_all(said.text.as_bytes()).and_then(|()| out.flush()) {
        Ok(()) => ExitCode::from(u8::from(!said.clean)),
        // Whoever reads has read enough.
        Err(problem) if problem.kind() == ErrorKind::BrokenPipe => ExitCode::from(u8::from(!said.clean)),
        Err(problem) => complain(&Fault::new("cli.not_written", [problem.to_string().into()])),
    }
}

/// Writes a file, in place of one that is there.
///
/// # Errors
/// Where it cannot be written, in a sentence.
pub fn file(path: &OsStr, text: &str) -> Result<(), Fault> {
    std::fs::write(path, text).map_err(|problem| {
        let name = path.to_string_lossy().into_owned();
        Fault::new("cli.file_not_written", [name.into(), problem.to_string().into()])
    })
}

/// One line on standard error; status 2.
pub fn complain(fault: &Fault) -> ExitCode {
    let line = format!("weftbook: {}\n", clean(&fault.0));
    // Where not even this can be written, the exit status still speaks.
    match io::stderr().lock().write_all(line.as_bytes()) {
        Ok(()) | Err(_) => ExitCode::from(2),
    }
}

/// A text without line ends, control characters and turns of direction: what a file says cannot steer a terminal.
pub fn clean(text: &str) -> String {
    let steers = |c: char| {
        c.is_control() || matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
    };
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        if steers(c) { out.extend(c.escape_default()) } else { out.push(c) }
    }
    out
}

/// A value as JSON with line ends, for people to read too.
pub fn json(value: &impl Serialize) -> Result<String, Fault> {
    match serde_json::to_string_pretty(value) {
        Ok(text) => Ok(text + "\n"),
        Err(problem) => Err(Fault::new("cli.not_written", [problem.to_string().into()])),
    }
}
