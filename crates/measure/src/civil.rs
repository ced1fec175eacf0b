//! Days and minutes on the wall, as a person at the bench means them.
//!
//! What it is: a civil day and a civil minute without a time zone, read and written as ISO 8601.
//! What it is not: a clock: callers pass the time.

use core::fmt;

/// A day of the calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date(time::Date);

impl Date {
    /// Reads `2026-11-25`; nothing else is a day, and 31 November is none.
    pub fn read(text: &str) -> Option<Date> {
        let mut parts = text.trim().splitn(3, '-');
        let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
        if year.len() != 4 || month.len() != 2 || day.len() != 2 {
            return None;
        }
        let digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
        if !(digits(year) && digits(month) && digits(day)) {
            return None;
        }
        let month = time::Month::try_from(month.parse::<u8>().ok()?).ok()?;
        time::Date::from_calendar_date(year.parse().ok()?, month, day.parse().ok()?).ok().map(Date)
    }

    /// This many days later (or earlier, when negative); stops at the calendar's ends.
    pub fn plus_days(self, days: i64) -> Date {
        Date(self.0.saturating_add(time::Duration::days(days)))
    }

    /// How many days from this day to the other.
    pub fn days_until(self, other: Date) -> i64 {
        (other.0 - self.0).whole_days()
    }
}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.0.year(), u8::from(self.0.month()), self.0.day())
    }
}

/// A minute of a day, as the clock on the wall shows it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Minute {
    date: Date,
    minute: u16,
}

impl Minute {
    /// Reads `2026-11-25T09:30`.
    pub fn read(text: &str) -> Option<Minute> {
        let (date, clock) = text.trim().split_once('T')?;
        let (hour, minute) = clock.split_once(':')?;
        let two = |text: &str| -> Option<u16> {
            (text.len() == 2 && text.bytes().all(|byte| byte.is_ascii_digit())).then(|| text.parse().ok())?
        };
        let (hour, minute) = (two(hour)?, two(minute)?);
        (hour < 24 && minute < 60).then_some(Minute { date: Date::read(date)?, minute: hour * 60 + minute })
    }

    /// Its day.
    pub fn date(self) -> Date {
        self.date
    }
}

impl fmt::Display for Minute {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}T{:02}:{:02}", self.date, self.minute / 60, self.minute % 60)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_and_writes_the_same() {
        for text in ["2026-11-25", "2024-02-29", "0001-01-01"] {
            assert_eq!(Date::read(text).map(|date| date.to_string()).as_deref(), Some(text));
        }
        for text in ["2026-11-31", "2026-2-1", "26-01-01", "2026-+1-01", "", "2026-13-01", "2026-01-01-01"] {
            assert_eq!(Date::read(text), None, "{text}");
        }
        for text in ["2026-11-25T00:00", "2026-11-25T23:59"] {
            assert_eq!(Minute::read(text).map(|minute| minute.to_string()).as_deref(), Some(text));
        }
        for text in ["2026-11-25T24:00", "2026-11-25", "2026-11-25T9:00", "2026-11-25T09:60"] {
            assert_eq!(Minute::read(text), None, "{text}");
        }
    }

    #[test]
    fn counts_over_a_leap_day() {
        let before = Date::read("2024-02-28").unwrap();
        let after = Date::read("2024-03-01").unwrap();
        assert_eq!(before.days_until(after), 2);
        assert_eq!(before.plus_days(2), after);
        assert_eq!(after.plus_days(-2), before);
    }
}
