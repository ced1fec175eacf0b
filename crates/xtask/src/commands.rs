//! The command line: which commands exist, which options each takes, and what is said about them.
//!
//! What it is: parsing into one options type per command. What it is not: the work of any command.
//! The table `COMMANDS` is also what the tidy checks hold the documents against.

use std::path::PathBuf;

use anyhow::{Context, Result, bail};
use lexopt::{Arg, Parser, ValueExt};

use crate::serve::{Headers, ServeOptions};
use crate::testing::{Stage, TestOptions};
use crate::{check, page, release, serve, testing};

/// One command: its name, its options as typed, what it does.
pub struct Command {
    pub name: &'static str,
    pub options: &'static [&'static str],
    pub does: &'static str,
}

pub const COMMANDS: &[Command] = &[
    Command {
        name: "serve",
        options: &["--port", "--dev", "--dir", "--prefix", "--bare-headers"],
        does: "build quickly and serve the app on this machine (--dev: without service worker, at a port of its own)",
    },
    Command {
        name: "build",
        options: &["--release", "--dev"],
        does: "build the page into dist-debug/, or into dist/ with --release, and print its sizes",
    },
    Command {
        name: "check",
        options: &["--tidy"],
        does: "formatting, lints and the house's own rules (--tidy: the house's own rules only)",
    },
    Command {
        name: "test",
        options: &["--only", "--grep"],
        does: "all tests; --only native|wasm|browser, --grep TEXT for some of them",
    },
    Command {
        name: "release",
        options: &["--verify"],
        does: "dist/ with checksums and third-party notices (--verify: build it twice and compare)",
    },
];

/// Reads the command line and runs what it asks for.
pub fn dispatch() -> Result<()> {
    let mut parser = Parser::from_env();
    let name = match parser.next().context("reading the command line")? {
        Some(Arg::Value(name)) => name.string()?,
        Some(Arg::Long("help") | Arg::Short('h')) | None => {
            print!("{}", usage());
            return Ok(());
        }
        Some(other) => return Err(other.unexpected().into()),
    };
    match name.as_str() {
        "serve" => serve::run(&serve_options(&mut parser)?),
        "build" => {
            let flags = flags(&mut parser, &["release", "dev"])?;
            let (release, dev) = (flags.contains(&"release"), flags.contains(&"dev"));
            if release && dev {
                bail!("--release and --dev do not go together: a release has its service worker");
            }
            page::run(release, !dev)
        }
        "check" => check::run(flags(&mut parser, &["tidy"])?.contains(&"tidy")),
        "test" => testing::run(&test_options(&mut parser)?),
        "release" => release::run(flags(&mut parser, &["verify"])?.contains(&"verify")),
        "help" => {
            print!("{}", usage());
            Ok(())
        }
        unknown => bail!("there is no command {unknown:?}\n\n{}", usage()),
    }
}

fn usage() -> String {
    let mut text = String::from("cargo xtask COMMAND [OPTIONS]\n\n");
    for command in COMMANDS {
        text.push_str(&format!("  {:8} {}\n           {}\n", command.name, command.does, command.options.join(" ")));
    }
    text
}

fn flags(parser: &mut Parser, known: &[&'static str]) -> Result<Vec<&'static str>> {
    let mut given = Vec::new();
    while let Some(arg) = parser.next()? {
        let Arg::Long(name) = arg else { return Err(arg.unexpected().into()) };
        match known.iter().find(|flag| **flag == name) {
            Some(flag) => given.push(*flag),
            None => return Err(arg.unexpected().into()),
        }
    }
    Ok(given)
}

fn serve_options(parser: &mut Parser) -> Result<ServeOptions> {
    let mut options = ServeOptions::default();
    while let Some(arg) = parser.next()? {
        match arg {
            Arg::Long("port") => {
                let text = parser.value()?.string()?;
                let port = text.parse();
                options.port = Some(
                    port.with_context(|| format!("--port {text:?}: give a number from 0 (any free port) to 65535"))?,
                );
            }
            Arg::Long("dev") => options.service_worker = false,
            Arg::Long("dir") => options.dir = Some(PathBuf::from(parser.value()?)),
            Arg::Long("prefix") => options.prefix = serve::parse_prefix(&parser.value()?.string()?)?,
            Arg::Long("bare-headers") => options.headers = Headers::Bare,
            other => return Err(other.unexpected().into()),
        }
    }
    Ok(options)
}

fn test_options(parser: &mut Parser) -> Result<TestOptions> {
    let mut options = TestOptions::default();
    while let Some(arg) = parser.next()? {
        match arg {
            Arg::Long("only") => options.only = Some(Stage::parse(&parser.value()?.string()?)?),
            Arg::Long("grep") => options.grep = Some(parser.value()?.string()?),
            other => return Err(other.unexpected().into()),
        }
    }
    Ok(options)
}
