//! The cap laid out: zones with their areas, base rows in their places, the gaps between them.
//!
//! What it is: a wig's head and base put on its dome at one corner of the inputs.
//! What it is not: a choice of rows to add (see `wefts`).

use measure::{
    quantity::{Area, Length, units},
    say::{Arg, Say},
};
use record::wig::{figures::Wig, zone::Zone};

use crate::{
    dome::{Dome, Fault, Field, HeadMeasures, Parting, Problem, RowCurve, Section, TapeFrom},
    inputs::{Base, Corner, End, Input},
};

/// A cap laid out.
#[derive(Clone, Debug)]
pub struct Layout {
    /// The head.
    pub dome: Dome,
    /// Area of each zone.
    pub areas: [Area; 8],
    /// The base's rows, nape upwards, then forwards over the top.
    pub rows: Vec<BaseRow>,
    /// The gaps between them.
    pub gaps: Vec<Gap>,
    /// Length of base row in each zone, sides corrected for rows counted there.
    pub row_length: [Length; 8],
}

/// A row of the base.
#[derive(Clone, Debug)]
pub struct BaseRow {
    /// Number in its section, from 1.
    pub number: usize,
    /// Its curve.
    pub curve: RowCurve,
}

/// Between two rows of the base.
#[derive(Clone, Debug)]
pub struct Gap {
    /// Number in its section, from 1: the gap above (before) the row of that number.
    pub number: usize,
    /// Which section.
    pub section: Section,
    /// Place of the row below.
    pub from: Length,
    /// Place of the row above.
    pub to: Length,
}

impl Gap {
    /// How wide it is.
    pub fn width(&self) -> Length {
        self.to - self.from
    }

    /// Half-way between its rows.
    pub fn middle(&self) -> Length {
        (self.from + self.to) / 2.0
    }
}

/// The head measures of a wig at a corner.
pub fn head(wig: &Wig<'_>, corner: &Corner) -> HeadMeasures {
    head_towards(wig, corner, 1.0)
}

/// The head measures so far from the likely head to a corner's.
fn head_towards(wig: &Wig<'_>, corner: &Corner, reach: f64) -> HeadMeasures {
    let pick = |slot| {
        let figure = wig.head(slot);
        figure.likely + (corner.pick(Input::Head, &figure) - figure.likely) * reach
    };
    HeadMeasures {
        circumference: pick("girth"),
        front_to_nape: pick("front_to_nape"),
        ear_to_ear_front: pick("ear_to_ear_front"),
        ear_to_ear_top: pick("ear_to_ear_top"),
        top_from: if wig.tape_from() == "tragus" { TapeFrom::Tragus } else { TapeFrom::AboveEar },
        temple_to_temple_back: pick("temple_to_temple_back"),
        nape_width: pick("nape_width"),
    }
}

/// How far from the middle a side parting lies: common practice, no source: over the arch of the brow.
const SIDE_PARTING_MM: f64 = 35.0;

/// Fits the head and puts the parting on it.
///
/// # Errors
/// What no head can have, measure by measure.
pub fn dome(wig: &Wig<'_>, corner: &Corner) -> Result<Dome, Vec<Problem>> {
    dome_towards(wig, corner, 1.0)
}

/// The same so far from the likely head to a corner's.
pub(crate) fn dome_towards(wig: &Wig<'_>, corner: &Corner, reach: f64) -> Result<Dome, Vec<Problem>> {
    let dome = Dome::fit(&head_towards(wig, corner, reach))?;
    let parting = wig.parting();
    if parting.kind == "none" {
        return Ok(dome);
    }
    let aside = match parting.place {
        "left" => -SIDE_PARTING_MM,
        "right" => SIDE_PARTING_MM,
        _ => 0.0,
    };
    let with = |length| {
        dome.with_parting(Parting { offset: Length::new::<units::millimeter>(aside), length, width: parting.width })
    };
    match with(parting.length.likely) {
        // An assumed length gives way to the head; a length that was said is refused, but for the bounds.
        Err(problems) if !parting.length.origin.is_said() || corner.end(Input::Head) != End::Likely => {
            match problems.as_slice() {
                [Problem { fault: Fault::OutOfRange { most, .. }, field: Field::PartingLength, .. }] => with(*most),
                _ => Err(problems),
            }
        }
        other => other,
    }
}

/// Lays a cap out on a head.
pub fn lay_out(dome: Dome, base: &Base) -> Layout {
    let areas = Zone::ALL.map(|zone| dome.zone_area(zone));
    let mut rows = Vec::new();
    let mut gaps = Vec::new();
    for section in [Section::BackAndSides, Section::Top] {
        let places = places(&dome, base, section);
        for (index, place) in places.iter().enumerate() {
            if let Some(curve) = dome.row(section, *place) {
                rows.push(BaseRow { number: index + 1, curve });
            }
        }
        gaps.extend(places.windows(2).enumerate().map(|(index, pair)| Gap {
            number: index + 1,
            section,
            from: pair[0],
            to: pair[1],
        }));
    }
    let row_length = Zone::ALL.map(|zone| {
        let drawn: Length = rows.iter().map(|row| row.curve.length_in(zone)).fold(none(), |sum, one| sum + one);
        drawn * side_factor(base, zone)
    });
    Layout { dome, areas, rows, gaps, row_length }
}

/// Rows on the sides lie in the same slices as those of the back; where they were measured closer or wider, they count so.
fn side_factor(base: &Base, zone: Zone) -> f64 {
    if !matches!(zone, Zone::LeftSide | Zone::RightSide) {
        return 1.0;
    }
    match (base.spacing[Zone::Back as usize], base.spacing[zone as usize]) {
        (Some(back), Some(side)) => (back / side).get::<units::ratio>(),
        _ => 1.0,
    }
}

/// Where the base's rows lie along a section's middle line.
fn places(dome: &Dome, base: &Base, section: Section) -> Vec<Length> {
    let whole = dome.section_length(section);
    let bands = bands(dome, section, whole);
    let mut places = Vec::new();
    let mut at: Option<Length> = None;
    for (zone, from, to) in bands {
        let spacing = match (base.rows_counted[zone as usize], base.spacing[zone as usize]) {
            (_, None) => {
                // No rows here; the next wefted band starts anew.
                at = None;
                continue;
            }
            (Some(count), Some(_)) => (to - from) / f64::from(count),
            (None, Some(spacing)) => spacing,
        };
        let mut next = at.map_or(from + spacing / 2.0, |last| (last + spacing).max(from));
        while next < to {
            places.push(next);
            at = Some(next);
            next += spacing;
        }
    }
    places
}

/// The zones along a section's middle line, in order, with where each begins and ends.
fn bands(dome: &Dome, section: Section, whole: Length) -> Vec<(Zone, Length, Length)> {
    let mut bands: Vec<(Zone, Length, Length)> = Vec::new();
    let steps = 96;
    for step in 0..steps {
        let from = whole * f64::from(step) / f64::from(steps);
        let to = whole * f64::from(step + 1) / f64::from(steps);
        let Some(middle) = dome.middle(section, (from + to) / 2.0) else { continue };
        let zone = dome.zone_at(middle);
        match bands.last_mut() {
            Some((last, _, end)) if *last == zone => *end = to,
            _ => bands.push((zone, from, to)),
        }
    }
    bands
}

pub(crate) fn none() -> Length {
    Length::new::<units::meter>(0.0)
}

/// The slot that a refused measure stands in.
pub fn slot_of(problem: &Problem) -> &'static str {
    match problem.field {
        Field::Circumference => "girth",
        Field::FrontToNape => "front_to_nape",
        Field::EarToEarFront => "ear_to_ear_front",
        Field::EarToEarTop => "ear_to_ear_top",
        Field::TempleToTempleBack => "temple_to_temple_back",
        Field::NapeWidth => "nape_width",
        Field::PartingOffset => "parting_place",
        Field::PartingLength => "parting_length",
        Field::PartingWidth => "parting_width",
    }
}

/// The words of a refused measure: value, reason and remedy.
pub fn refusal(problem: &Problem) -> Say {
    let value = Arg::Length(problem.value);
    match problem.fault {
        Fault::NotALength => Say::new("plan.head_not_a_length", [value]),
        Fault::OutOfRange { least, most } => {
            Say::new("plan.head_out_of_range", [value, Arg::Length(least), Arg::Length(most)])
        }
        Fault::LongerThanCircumference { circumference } => {
            Say::new("plan.head_longer_than_girth", [value, Arg::Length(circumference)])
        }
        Fault::OtherTapeStart { try_from: TapeFrom::AboveEar } => Say::new("plan.head_try_above_ear", [value]),
        Fault::OtherTapeStart { try_from: TapeFrom::Tragus } => Say::new("plan.head_try_tragus", [value]),
    }
}
