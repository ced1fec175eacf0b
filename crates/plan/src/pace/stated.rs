//! Stated practice: how long work takes somebody who does it for the first times.
//!
//! What it is: a row per kind of work that is timed. What it is not: anybody's own pace.

use measure::{
    quantity::{Length, Time},
    unit::Unit::{Hour, Minute, Times},
};
use record::{
    field::Value,
    trade::{
        defaults,
        fact::{Fact, Known, Source, Sure, fact},
        sources::{JUDGED, PRACTICE},
    },
    wig::{
        figure::{Figure, FromBase},
        work::Work,
    },
};

/// What a time is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Per {
    /// So much weft as [`defaults::PACE_ROW`] says, sewn.
    Row,
    /// A hundred knots.
    HundredKnots,
    /// A dye bath.
    Bath,
    /// A wig's rollers, wound.
    Rollers,
    /// A set, wound, heated and left to cool as far as somebody stands by it.
    Set,
    /// A whole piece of work of its kind.
    Piece,
}

impl Per {
    /// Key of the words for it.
    pub fn label(self) -> &'static str {
        match self {
            Per::Row => "pace.row",
            Per::HundredKnots => "pace.hundred_knots",
            Per::Bath => "pace.bath",
            Per::Rollers => "pace.rollers",
            Per::Set => "pace.set",
            Per::Piece => "pace.piece",
        }
    }
}

/// Which field holds the time, and whether hands are busy.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Clock {
    /// Time at the bench, in the field `minutes`.
    Bench,
    /// Waiting, in the field `hours`.
    Waiting,
}

impl Clock {
    pub(super) fn field(self) -> &'static str {
        match self {
            Clock::Bench => "minutes",
            Clock::Waiting => "hours",
        }
    }
}

/// A row of the table.
#[derive(Debug)]
pub(super) struct Stated {
    pub(super) kind: &'static str,
    /// Only work whose choice in a field is one of these; all of its kind where none.
    pub(super) only: Option<(&'static str, &'static [&'static str])>,
    pub(super) clock: Clock,
    pub(super) per: Per,
    /// None where a default of the bench says it: a fact is not told twice.
    pub(super) time: Option<Fact>,
}

impl Stated {
    /// Whether a piece of work goes by this row.
    pub(super) fn is_for(&self, work: &Work) -> bool {
        self.kind == work.kind().name
            && self
                .only
                .is_none_or(|(field, choices)| work.choice(field).is_some_and(|choice| choices.contains(&choice)))
    }

    /// How many units of the row a piece of work is; unknown where it does not say.
    pub(super) fn amount(&self, work: &Work) -> Option<f64> {
        match self.per {
            Per::Row => {
                let length: Length = work.get("length").and_then(Value::typed)?.length()?;
                Some(length.base() / defaults::PACE_ROW.unit.to_base(defaults::PACE_ROW.likely))
            }
            Per::HundredKnots => work.get("knots").and_then(Value::count).map(|knots| f64::from(knots) / 100.0),
            Per::Bath | Per::Rollers | Per::Set | Per::Piece => Some(1.0),
        }
        .filter(|amount| *amount > 0.0)
    }

    /// Stated practice as a figure.
    pub(super) fn figure(&self) -> Figure<Time> {
        // The bench has that default: a test asks for it.
        Figure::assumed(self.time.as_ref().or(defaults::default_for(ROW_DEFAULT)).unwrap_or(&defaults::PACE_ROW))
    }
}

/// The default of a row of weft.
const ROW_DEFAULT: &str = "minutes_per_row";

/// How many of a person's own sittings stated practice counts as.
///
/// What people's usual paces differ by (about 30 %) against what one person's sittings differ by (about 50 %): the square of
/// their ratio, (50 ÷ 30)² ≈ 3, is the weight that makes the mixture's error least if both spreads are right.
pub const STATED_COUNTS_AS: Fact = fact(2.0, 3.0, 5.0, Times, &JUDGED, Sure::Low);

/// A sitting further than so many times from the middle one counts as just so far: a timer that ran overnight, or a slip of
/// the keys, is no pace.
pub const ABSURD: Fact = fact(3.0, 4.0, 5.0, Times, &JUDGED, Sure::Low);

/// The ground of a pace that own sittings are in.
pub const OWN: Source =
    Source { text: "your own timed sittings, with stated practice counted as three of them", known: Known::Computed };

const fn bench(kind: &'static str, per: Per, time: Fact) -> Stated {
    Stated { kind, only: None, clock: Clock::Bench, per, time: Some(time) }
}

const fn only(stated: Stated, field: &'static str, choices: &'static [&'static str]) -> Stated {
    Stated { only: Some((field, choices)), ..stated }
}

const fn waiting(choices: &'static [&'static str], time: Fact) -> Stated {
    Stated { kind: "dry", only: Some(("dry_way", choices)), clock: Clock::Waiting, per: Per::Piece, time: Some(time) }
}

const fn judged(low: f64, likely: f64, high: f64) -> Fact {
    fact(low, likely, high, Minute, &JUDGED, Sure::Low)
}

const fn practice(low: f64, likely: f64, high: f64) -> Fact {
    fact(low, likely, high, Minute, &PRACTICE, Sure::Low)
}

const fn hours(low: f64, likely: f64, high: f64) -> Fact {
    fact(low, likely, high, Hour, &PRACTICE, Sure::Low)
}

/// The table. Of several rows for a kind the first that fits counts.
#[rustfmt::skip]
pub(super) const TABLE: &[Stated] = &[
    bench("base", Per::Piece, judged(5.0, 10.0, 20.0)),
    bench("measure", Per::Piece, judged(5.0, 10.0, 20.0)),
    bench("block", Per::Piece, judged(5.0, 10.0, 15.0)),
    bench("wash", Per::Piece, judged(20.0, 30.0, 45.0)),
    bench("straighten", Per::Piece, judged(60.0, 120.0, 240.0)),
    Stated { kind: "sew_weft", only: None, clock: Clock::Bench, per: Per::Row, time: None },
    bench("unpick", Per::Piece, judged(10.0, 20.0, 40.0)),
    only(bench("edge", Per::Piece, judged(600.0, 1500.0, 2400.0)), "edge_way", &["knotted"]),
    only(bench("edge", Per::Piece, judged(10.0, 20.0, 30.0)), "edge_way", &["lace_trimmed"]),
    bench("edge", Per::Piece, judged(45.0, 90.0, 180.0)),
    bench("glue", Per::Piece, judged(10.0, 20.0, 30.0)),
    // 100 to 150 knots an hour on a first lace front.
    bench("refront", Per::HundredKnots, practice(40.0, 48.0, 60.0)),
    only(bench("gather", Per::Rollers, practice(60.0, 90.0, 120.0)), "gathered", &["rollers"]),
    bench("gather", Per::Piece, judged(15.0, 30.0, 60.0)),
    bench("release", Per::Piece, judged(10.0, 15.0, 30.0)),
    bench("rinse", Per::Piece, judged(10.0, 15.0, 30.0)),
    bench("dry", Per::Piece, judged(5.0, 10.0, 20.0)),
    waiting(&["wig_dryer", "hair_dryer"], hours(2.0, 3.0, 4.0)),
    waiting(&["air", "towel"], hours(8.0, 12.0, 48.0)),
    // Rolling and heating; the cooling is a wait.
    bench("heat_set", Per::Set, practice(60.0, 90.0, 120.0)),
    bench("dye", Per::Bath, judged(60.0, 120.0, 180.0)),
    bench("cut", Per::Piece, judged(30.0, 60.0, 120.0)),
    bench("product", Per::Piece, judged(5.0, 10.0, 20.0)),
    bench("dress", Per::Piece, judged(30.0, 60.0, 120.0)),
    bench("accessory", Per::Piece, judged(15.0, 30.0, 60.0)),
    bench("anchor", Per::Piece, judged(15.0, 30.0, 60.0)),
    bench("wig_prep", Per::Piece, judged(15.0, 20.0, 30.0)),
    bench("fitting", Per::Piece, judged(20.0, 30.0, 60.0)),
    bench("reset", Per::Piece, judged(15.0, 30.0, 60.0)),
    bench("disinfect", Per::Piece, judged(20.0, 30.0, 45.0)),
    bench("repair", Per::Piece, judged(20.0, 45.0, 120.0)),
];
