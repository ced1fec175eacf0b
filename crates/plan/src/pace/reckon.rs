//! The time that planned work takes, and the time of a plan.
//!
//! What it is: paces times amounts, added up. What it is not: a calendar: days and waits in between are another question.

use core::ops::Add;

use measure::quantity::{Length, Time, units};
use record::{
    field::Value,
    trade::defaults,
    wig::{
        figure::{Figure, FromBase},
        figures::Wig,
        work::Work,
    },
};

use super::{
    learn::{Pace, Paces},
    stated::Clock,
};

/// A time with its range.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Span {
    /// When all goes quickly.
    pub low: Time,
    /// Most likely.
    pub likely: Time,
    /// When all goes slowly.
    pub high: Time,
}

impl Add for Span {
    type Output = Span;

    fn add(self, other: Span) -> Span {
        Span { low: self.low + other.low, likely: self.likely + other.likely, high: self.high + other.high }
    }
}

/// The time of several pieces of work.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Total {
    /// At the bench.
    pub bench: Span,
    /// Waiting for things to dry.
    pub waiting: Span,
    /// Pieces of work whose time nobody can tell: they do not say how much they are.
    pub unknown: usize,
}

impl Paces {
    /// How long a piece of work takes at the bench: the minutes it says, else by its pace; nothing where it is not timed or
    /// does not say how much it is.
    pub fn time(&self, work: &Work) -> Option<Span> {
        self.span(work, Clock::Bench)
    }

    /// How long one waits for it.
    pub fn wait(&self, work: &Work) -> Option<Span> {
        self.span(work, Clock::Waiting)
    }

    /// The time of several pieces of work; lows and highs are added up as if all went quickly, or all slowly.
    pub fn total<'a>(&self, works: impl IntoIterator<Item = &'a Work>) -> Total {
        let mut total = Total::default();
        for work in works {
            match self.time(work) {
                Some(span) => total.bench = total.bench + span,
                None if work.kind().field(Clock::Bench.field()).is_some() => total.unknown += 1,
                None => {}
            }
            total.waiting = total.waiting + self.wait(work).unwrap_or_default();
        }
        total
    }

    fn span(&self, work: &Work, clock: Clock) -> Option<Span> {
        let found = self.found(work, clock);
        let said = work.get(clock.field()).and_then(Value::typed).and_then(|typed| typed.time());
        // Hours of wearing are no wait.
        match (said, found) {
            (Some(said), Some((pace, _))) => Some(spread(said, pace)),
            (Some(said), None) if clock == Clock::Bench => Some(Span { low: said, likely: said, high: said }),
            (None, Some((pace, Some(amount)))) => Some(spread(pace.likely * amount, pace)),
            _ => None,
        }
    }
}

/// A time with the range that its pace has.
fn spread(likely: Time, pace: &Pace) -> Span {
    let share = |end: Time| (end / pace.likely).get::<units::ratio>();
    Span { low: likely * share(pace.low), likely, high: likely * share(pace.high) }
}

/// The time of a row of [`defaults::PACE_ROW`] for a wig: as said for this wig, else own pace.
pub fn row(wig: &Wig<'_>, paces: &Paces) -> Figure<Time> {
    let said = wig.time_per_row();
    match paces.row() {
        Some(pace) if !said.origin.is_said() => pace.figure(),
        _ => said,
    }
}

/// The time of sewing a length of weft on a wig.
pub fn sewing(wig: &Wig<'_>, paces: &Paces, length: Length) -> Span {
    let rows = length.base() / defaults::PACE_ROW.unit.to_base(defaults::PACE_ROW.likely);
    let row = row(wig, paces);
    Span { low: row.low * rows, likely: row.likely * rows, high: row.high * rows }
}
