//! Child processes: run, stream what they print, say clearly what failed.
//!
//! What it is: a thin layer over `std::process`. What it is not: a shell; no command line is parsed here.

use std::ffi::OsStr;
use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};

/// The cargo that started us, so that toolchains never mix.
pub fn cargo() -> Command {
    Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
}

/// A command as a person would type it.
pub fn show(command: &Command) -> String {
    let program = Path::new(command.get_program()).file_name().unwrap_or(command.get_program());
    std::iter::once(program).chain(command.get_args()).map(OsStr::to_string_lossy).collect::<Vec<_>>().join(" ")
}

/// Runs with the output straight to the screen; a failure is an error that names the command.
pub fn run(command: &mut Command) -> Result<()> {
    println!("$ {}", show(command));
    let status = command.status().with_context(|| cannot_start(command))?;
    if !status.success() {
        bail!("`{}` failed ({status})", show(command));
    }
    Ok(())
}

/// Runs quietly and gives back what was printed; the error output still streams.
pub fn read(command: &mut Command) -> Result<String> {
    let output = command.stderr(Stdio::inherit()).output().with_context(|| cannot_start(command))?;
    if !output.status.success() {
        bail!("`{}` failed ({})", show(command), output.status);
    }
    String::from_utf8(output.stdout).with_context(|| format!("`{}` printed something that is not UTF-8", show(command)))
}

/// Runs, shows each line as it comes and hands it to `seen` too. Gives back whether the command succeeded.
pub fn tee(command: &mut Command, mut seen: impl FnMut(&str)) -> Result<bool> {
    println!("$ {}", show(command));
    let mut child = command.stdout(Stdio::piped()).spawn().with_context(|| cannot_start(command))?;
    if let Some(stdout) = child.stdout.take() {
        let mut out = std::io::stdout().lock();
        for line in BufReader::new(stdout).split(b'\n') {
            let line = line?;
            out.write_all(&line)?;
            out.write_all(b"\n")?;
            seen(&String::from_utf8_lossy(&line));
        }
    }
    Ok(child.wait()?.success())
}

/// Where a program is found on the search path.
pub fn find_program(name: &str) -> Option<PathBuf> {
    std::env::split_paths(&std::env::var_os("PATH")?).map(|dir| dir.join(name)).find(|path| path.is_file())
}

fn cannot_start(command: &Command) -> String {
    format!("cannot start {:?}: is it installed and on the search path?", command.get_program())
}
