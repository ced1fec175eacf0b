//! The commands a person runs and CI runs: build, serve, check, test and release.
//!
//! What it is: orchestration of cargo, wasm-bindgen, npm and node, and checks of the house's own rules.
//! What it is not: part of the tool; nothing here is linked into the page or the terminal program.
#![allow(clippy::print_stdout, clippy::print_stderr, reason = "what a command prints is its purpose")]

mod check;
mod commands;
mod page;
mod process;
mod release;
mod serve;
mod stages;
mod testing;
mod tidy;
mod workspace;

use std::process::ExitCode;

fn main() -> ExitCode {
    match commands::dispatch() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("\nerror: {error:#}");
            ExitCode::FAILURE
        }
    }
}
