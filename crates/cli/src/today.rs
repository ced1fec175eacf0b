//! Today, by the system clock.
//!
//! What it is: the only use of a clock. What it is not: used where `--today` says the day.

use std::time::{SystemTime, UNIX_EPOCH};

use measure::civil::Date;

use crate::out::Fault;

/// Today in UTC; a bench just before or after midnight may say its own day with `--today`.
pub fn today() -> Result<Date, Fault> {
    #[expect(clippy::disallowed_methods, reason = "the terminal is the rim: here the time comes in")]
    let now = SystemTime::now();
    let seconds = now.duration_since(UNIX_EPOCH).map_or(0, |since| since.as_secs());
    let days = i64::try_from(seconds / 86_400).unwrap_or(0);
    Date::read("1970-01-01").map(|epoch| epoch.plus_days(days)).ok_or_else(|| Fault::new("cli.no_clock", []))
}
