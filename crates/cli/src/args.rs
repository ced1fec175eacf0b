//! From a command line to what is asked.
//!
//! What it is: commands and their options. What it is not: their work.

use std::ffi::OsString;

use lexopt::{Arg as Word, Parser, ValueExt};
use measure::{
    civil::Date,
    prefs::{Lengths, Prefs, Weights},
    say::Arg,
};
use sheet::paper::{Choices, Paper, Part};

use crate::{out::Fault, words::WORDS};

/// What is asked.
pub enum Asked {
    /// Only these words: help, or the version.
    Words(String),
    /// A plan.
    Plan(Options),
    /// A cutting case.
    Cut(Options),
    /// A look at a file.
    Check(Options),
    /// A sheet to print.
    Sheet(Options),
    /// Two files of one wig to put together.
    Merge(Options),
}

/// How it is asked.
pub struct Options {
    /// The file; `-` is standard input.
    pub file: OsString,
    /// The other file, where two are wanted.
    pub other: Option<OsString>,
    /// JSON instead of text.
    pub json: bool,
    /// The day that counts as today.
    pub today: Option<Date>,
    /// Units.
    pub prefs: Prefs,
    /// What goes onto a sheet.
    pub choices: Choices,
    /// Where Weftbook is hosted, for the code on a sheet.
    pub address: Option<String>,
    /// Where a sheet's HTML goes.
    pub out: Option<OsString>,
}

/// A command.
struct Command {
    name: &'static str,
    make: fn(Options) -> Asked,
    help: &'static str,
    /// Options besides `--json` and `--help`.
    takes: &'static [&'static str],
}

const COMMANDS: &[Command] = &[
    Command {
        name: "plan",
        make: Asked::Plan,
        help: "cli.help_plan",
        takes: &["today", "units", "weights", "currency"],
    },
    Command { name: "cut", make: Asked::Cut, help: "cli.help_cut", takes: &[] },
    Command { name: "check", make: Asked::Check, help: "cli.help_check", takes: &["units", "weights", "currency"] },
    Command {
        name: "sheet",
        make: Asked::Sheet,
        help: "cli.help_sheet",
        takes: &["today", "units", "weights", "currency", "paper", "with", "without", "address", "out"],
    },
    Command { name: "merge", make: Asked::Merge, help: "cli.help_merge", takes: &["out"] },
];

/// Reads a command line.
///
/// # Errors
/// The first word that is not understood, with the remedy.
pub fn read(mut words: Parser) -> Result<Asked, Fault> {
    let mut command: Option<&Command> = None;
    let (mut file, mut other, mut out) = (None, None, None);
    let mut given: Vec<(String, String)> = Vec::new();
    let (mut json, mut help) = (false, false);
    while let Some(word) = words.next().map_err(|problem| unread(&problem))? {
        match word {
            Word::Short('h') | Word::Long("help") => help = true,
            Word::Short('V') | Word::Long("version") => {
                return Ok(Asked::Words(format!("weftbook {}\n", env!("CARGO_PKG_VERSION"))));
            }
            Word::Long("json") => json = true,
            Word::Short('o') | Word::Long("out") => {
                given.push(("out".to_owned(), String::new()));
                out = Some(words.value().map_err(|problem| unread(&problem))?);
            }
            Word::Long(
                name @ ("today" | "units" | "weights" | "currency" | "paper" | "with" | "without" | "address"),
            ) => {
                let name = name.to_owned();
                let value = words.value().map_err(|problem| unread(&problem))?;
                given.push((name, value.string().map_err(|problem| unread(&problem))?));
            }
            Word::Value(value) if command.is_none() => command = Some(named(&value)?),
            Word::Value(value) if file.is_none() => file = Some(value),
            Word::Value(value) if other.is_none() && command.is_some_and(|command| command.name == "merge") => {
                other = Some(value);
            }
            Word::Value(value) => {
                return Err(Fault::new("cli.one_file", [Arg::Text(value.to_string_lossy().into_owned())]));
            }
            odd => return Err(unread(&odd.unexpected())),
        }
    }
    if help {
        return Ok(Asked::Words(WORDS.get(command.map_or("cli.help", |command| command.help))));
    }
    let command = command.ok_or_else(|| Fault::new("cli.no_command", []))?;
    let mut options = Options {
        file: file.ok_or_else(|| missing_file(command))?,
        other,
        json,
        today: None,
        prefs: Prefs::default(),
        choices: Choices::default(),
        address: None,
        out,
    };
    for (name, value) in given {
        if !command.takes.contains(&name.as_str()) {
            return Err(Fault::new("cli.not_of_command", [Arg::Text(name), Arg::from(command.name)]));
        }
        option(&mut options, &name, &value)?;
    }
    Ok((command.make)(options))
}

fn named(word: &OsString) -> Result<&'static Command, Fault> {
    COMMANDS
        .iter()
        .find(|command| word == command.name)
        .ok_or_else(|| Fault::new("cli.unknown_command", [Arg::Text(word.to_string_lossy().into_owned())]))
}

fn missing_file(command: &Command) -> Fault {
    Fault::new("cli.no_file", [Arg::from(command.name)])
}

fn unread(problem: &lexopt::Error) -> Fault {
    Fault::new("cli.bad_option", [Arg::Text(problem.to_string())])
}

fn option(options: &mut Options, name: &str, value: &str) -> Result<(), Fault> {
    let refused = |want| Fault::new("cli.bad_value", [Arg::from(name), Arg::from(value), Arg::Key(want)]);
    match (name, value) {
        ("today", day) => options.today = Some(Date::read(day).ok_or_else(|| refused("cli.want_day"))?),
        ("units", "metric") => options.prefs.lengths = Lengths::Metric,
        ("units", "inches") => options.prefs.lengths = Lengths::Inches,
        ("units", _) => return Err(refused("cli.want_units")),
        ("weights", "grams") => options.prefs.weights = Weights::Grams,
        ("weights", "ounces") => options.prefs.weights = Weights::Ounces,
        ("weights", _) => return Err(refused("cli.want_weights")),
        ("paper", paper) => {
            options.choices = options.choices.on(Paper::read(paper).ok_or_else(|| refused("cli.want_paper"))?);
        }
        ("with" | "without", parts) => {
            for part in parts.split(',') {
                let part = Part::read(part.trim()).ok_or_else(|| refused("cli.want_parts"))?;
                options.choices = options.choices.with(part, name == "with");
            }
        }
        ("address", address) if address.starts_with("http") && address.len() <= 500 => {
            options.address = Some(address.to_owned());
        }
        ("address", _) => return Err(refused("cli.want_address")),
        ("out", _) => {}
        ("currency", sign) if (1..=4).contains(&sign.chars().count()) => options.prefs.currency = sign.to_owned(),
        _ => return Err(refused("cli.want_currency")),
    }
    Ok(())
}
