//! Weftbook from a terminal: `weftbook plan WIG`, `weftbook cut CASE`, `weftbook check WIG`,
//! `weftbook sheet WIG`, `weftbook merge A B`.
//!
//! What it is: the same core as in the browser, with options in and text or JSON out.
//! What it is not: a place for logic: what it says is reckoned elsewhere.
//!
//! Exit status: 0 done (`check`: nothing to see), 1 there is something to see (`check`: in the file; `plan`: no plan can
//! be made of this wig yet), 2 bad input, with one line on standard error that says what, where and the remedy.

mod args;
mod commands;
mod input;
mod out;
mod rows;
mod today;
mod words;

use std::process::ExitCode;

use args::Asked;
use out::{Fault, Said};

fn main() -> ExitCode {
    match args::read(lexopt::Parser::from_env()).and_then(answer) {
        Ok(said) => out::print(&said),
        Err(fault) => out::complain(&fault),
    }
}

fn answer(asked: Asked) -> Result<Said, Fault> {
    match asked {
        Asked::Words(text) => Ok(Said { text, clean: true }),
        Asked::Plan(options) => commands::plan::run(&options),
        Asked::Cut(options) => commands::cut::run(&options),
        Asked::Check(options) => commands::check::run(&options),
        Asked::Sheet(options) => commands::sheet::run(&options),
        Asked::Merge(options) => commands::merge::run(&options),
    }
}
