//! Named stages with the time each took.
//!
//! What it is: a stopwatch for reports. What it is not: a limit or a test of speed.

use std::time::{Duration, Instant};

use anyhow::Result;

#[derive(Default)]
pub struct Stages(Vec<(String, Duration, bool)>);

impl Stages {
    /// Runs one stage under a heading and remembers how long it took and whether it went well.
    pub fn run<T>(&mut self, name: &str, work: impl FnOnce() -> Result<T>) -> Result<T> {
        println!("\n== {name}");
        let start = now();
        let result = work();
        self.0.push((name.to_owned(), start.elapsed(), result.is_ok()));
        result
    }

    pub fn print(&self) {
        println!("\nTime per stage:");
        for (name, took, ok) in &self.0 {
            println!("  {:>7.1} s  {name}{}", took.as_secs_f64(), if *ok { "" } else { "  (failed)" });
        }
        let total: Duration = self.0.iter().map(|(_, took, _)| *took).sum();
        println!("  {:>7.1} s  in all", total.as_secs_f64());
    }
}

#[expect(clippy::disallowed_methods, reason = "this is the rim: only reports read it")]
fn now() -> Instant {
    Instant::now()
}
