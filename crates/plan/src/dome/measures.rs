//! The six tape measures of a head, and what a tape cannot have said.
//!
//! What it is: the measures, their plausible ranges in one table, and problems that name field, value and remedy.
//! What it is not: parsing of what was typed, or the geometry (see `fit`).

use measure::quantity::{Length, units::millimeter};

/// Where a tape from ear to ear starts: the trap of this measure, about 6 cm apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum TapeFrom {
    /// At the tragus, the small flap in front of the ear hole.
    Tragus,
    /// At the hairline above the ear.
    AboveEar,
}

/// The six measures of a head, taken over the wearer's pinned-up hair and wig cap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeadMeasures {
    /// Greatest horizontal girth above the ears.
    pub circumference: Length,
    /// Middle of the front hairline over the top to the nape edge.
    pub front_to_nape: Length,
    /// Tragus to tragus across the front hairline.
    pub ear_to_ear_front: Length,
    /// Ear to ear over the top, from `top_from`.
    pub ear_to_ear_top: Length,
    /// Where the tape over the top starts.
    pub top_from: TapeFrom,
    /// Temple to temple round the back: corner to corner of the front hairline, the tape level.
    pub temple_to_temple_back: Length,
    /// Width of the nape edge, corner to corner along it.
    pub nape_width: Length,
}

/// A field a problem or residual speaks of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Field {
    /// [`HeadMeasures::circumference`].
    Circumference,
    /// [`HeadMeasures::front_to_nape`].
    FrontToNape,
    /// [`HeadMeasures::ear_to_ear_front`].
    EarToEarFront,
    /// [`HeadMeasures::ear_to_ear_top`].
    EarToEarTop,
    /// [`HeadMeasures::temple_to_temple_back`].
    TempleToTempleBack,
    /// [`HeadMeasures::nape_width`].
    NapeWidth,
    /// `Parting::offset`.
    PartingOffset,
    /// `Parting::length`.
    PartingLength,
    /// `Parting::width`.
    PartingWidth,
}

/// What is wrong with a value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Fault {
    /// Not a finite number above zero.
    NotALength,
    /// Outside the range a head (or this head) can have.
    OutOfRange {
        /// Least length accepted.
        least: Length,
        /// Greatest length accepted.
        most: Length,
    },
    /// Longer than the circumference, which it never is.
    LongerThanCircumference {
        /// The circumference given.
        circumference: Length,
    },
    /// Fits a tape that starts at the other ear point.
    OtherTapeStart {
        /// The start that would make the value plausible.
        try_from: TapeFrom,
    },
}

/// One refused value: which, how much, what is wrong. Its words are in [`Problem::remedy_key`]'s table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Problem {
    /// The field refused.
    pub field: Field,
    /// The value refused.
    pub value: Length,
    /// Why.
    pub fault: Fault,
}

/// Range of a measure as a share of the circumference.
struct Share {
    field: Field,
    least: f64,
    most: f64,
}

/// Girth in mm. EN 960:2006 names its headforms over this range, as quoted in its foreword.
const GIRTH_RANGE: (f64, f64) = (445.0, 645.0);

/// A limit is shown in whole mm: what is shown is accepted.
const SLACK: f64 = 0.5;

/// Ranges wide enough for every printed wig chart known to us (0.61–0.68, 0.52–0.62, 0.64–0.68, 0.23–0.26 in this order;
/// charts are common practice, no source) with a margin of ours.
const SHARES: [Share; 4] = [
    Share { field: Field::FrontToNape, least: 0.55, most: 0.72 },
    Share { field: Field::EarToEarFront, least: 0.48, most: 0.66 },
    Share { field: Field::TempleToTempleBack, least: 0.56, most: 0.78 },
    Share { field: Field::NapeWidth, least: 0.16, most: 0.32 },
];

/// Over the top from tragus: ANSUR 1988 women 336.4 (SD 12.9) at girth 546.2, USAF 1967 men 357.6 (12.6) at 575.2: means
/// 0.616 and 0.622, four standard deviations each way. From above the ear: the same less two ears of 30 mm.
fn top_share(from: TapeFrom) -> Share {
    let (least, most) = match from {
        TapeFrom::Tragus => (0.53, 0.72),
        TapeFrom::AboveEar => (0.42, 0.61),
    };
    Share { field: Field::EarToEarTop, least, most }
}

impl HeadMeasures {
    /// The measures with the field each stands in.
    pub fn fields(&self) -> [(Field, Length); 6] {
        [
            (Field::Circumference, self.circumference),
            (Field::FrontToNape, self.front_to_nape),
            (Field::EarToEarFront, self.ear_to_ear_front),
            (Field::EarToEarTop, self.ear_to_ear_top),
            (Field::TempleToTempleBack, self.temple_to_temple_back),
            (Field::NapeWidth, self.nape_width),
        ]
    }

    /// Everything that no head can have, in the order of the fields; empty when the measures can be used.
    ///
    /// While the circumference itself is refused, the others are only asked to be lengths.
    pub fn check(&self) -> Vec<Problem> {
        let girth = self.circumference.get::<millimeter>();
        let girth_holds = girth >= GIRTH_RANGE.0 - SLACK && girth <= GIRTH_RANGE.1 + SLACK;
        let mut problems = Vec::new();
        for (field, value) in self.fields() {
            let mm = value.get::<millimeter>();
            let fault = if !(mm.is_finite() && mm > 0.0) {
                Some(Fault::NotALength)
            } else if field == Field::Circumference {
                (!girth_holds).then(|| range(GIRTH_RANGE.0, GIRTH_RANGE.1))
            } else if girth_holds {
                self.fault_of(field, mm / girth)
            } else {
                None
            };
            if let Some(fault) = fault {
                problems.push(Problem { field, value, fault });
            }
        }
        problems
    }

    fn fault_of(&self, field: Field, share: f64) -> Option<Fault> {
        if share > 1.0 {
            return Some(Fault::LongerThanCircumference { circumference: self.circumference });
        }
        let top = top_share(self.top_from);
        let limits = if field == Field::EarToEarTop { &top } else { SHARES.iter().find(|s| s.field == field)? };
        let slack = SLACK / self.circumference.get::<millimeter>();
        if share >= limits.least - slack && share <= limits.most + slack {
            return None;
        }
        if field == Field::EarToEarTop {
            let other = match self.top_from {
                TapeFrom::Tragus => TapeFrom::AboveEar,
                TapeFrom::AboveEar => TapeFrom::Tragus,
            };
            let there = top_share(other);
            if share >= there.least && share <= there.most {
                return Some(Fault::OtherTapeStart { try_from: other });
            }
        }
        let girth = self.circumference.get::<millimeter>();
        Some(range(limits.least * girth, limits.most * girth))
    }
}

pub(super) fn range(least: f64, most: f64) -> Fault {
    Fault::OutOfRange { least: Length::new::<millimeter>(least), most: Length::new::<millimeter>(most) }
}
