//! From six tapes to a solid and the marks of its cap edge.
//!
//! What it is: one measure settles one unknown, in an order in which none disturbs an earlier one. What it is not: a
//! reconstruction of a face or of a skull; the shape between the tapes is assumed (see `proportions`).
//!
//! | tape | settles | met |
//! |---|---|---|
//! | circumference | size of the girth section | exactly |
//! | over the top | rise of the dome | exactly |
//! | across the forehead | height of the front hairline | within what 99 % of heads have, else as near as that allows |
//! | front to nape | depth of the nape edge | between behind the ear and the neck, else as near |
//! | temple to temple | place of the temple corners | between temple and forehead, else as near |
//! | nape width | nape corners (and how fast the neck narrows) | up to behind the ears, else as near |

use super::curve::{Tape, length, smooth_length, stepped, zero_between};
use super::edge::{Marks, azimuth_of, nape_line};
use super::measures::{Field, HeadMeasures, TapeFrom};
use super::proportions as prop;
use super::solid::{Powers, Solid};
use super::vector::{Point, norm, scale, sub};
use core::f64::consts::{FRAC_PI_2, TAU};
use measure::{
    order::within,
    quantity::{Length, units::millimeter},
};

const RIGHT: Point = [1.0, 0.0, 0.0];
const FORWARD: Point = [0.0, 1.0, 0.0];
const UP: Point = [0.0, 0.0, 1.0];
const MIDDLE: Point = [0.0; 3];

/// One measure: what was given, what the dome's own tape says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Residual {
    /// The measure.
    pub field: Field,
    /// As given.
    pub given: Length,
    /// As measured on the fitted dome.
    pub reproduced: Length,
}

impl Residual {
    /// Reproduced less given.
    pub fn difference(&self) -> Length {
        self.reproduced - self.given
    }

    /// Whether the dome meets the measure (to 0.1 mm); otherwise it is as near as the allowed shapes come.
    pub fn met(&self) -> bool {
        libm::fabs(self.difference().get::<millimeter>()) <= 0.1
    }
}

/// The fitted solid and marks.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fitted {
    pub(super) solid: Solid,
    pub(super) marks: Marks,
}

/// Fits measures that have passed their check.
pub(super) fn fit(measures: &HeadMeasures) -> Fitted {
    let girth = measures.circumference.get::<millimeter>();
    let k = girth / prop::REFERENCE_GIRTH;
    let tragus = -prop::GIRTH_ABOVE_TRAGUS * k;

    let nape_width = measures.nape_width.get::<millimeter>();
    let fullness = 1.0 + prop::NAPE_TO_GIRTH.1 * (nape_width / girth / prop::NAPE_TO_GIRTH.0 - 1.0);
    let mut solid = Solid {
        half_breadth: prop::BREADTH_TO_LENGTH,
        taper: prop::TAPER,
        half_length: 1.0,
        rise: 1.0,
        drop: prop::NECK_DROP * k * fullness,
        powers: Powers { around: 5, above: 5, below: 3 },
    };
    solid.half_length = girth / solid.girth();
    solid.half_breadth = prop::BREADTH_TO_LENGTH * solid.half_length;

    let over_top = measures.ear_to_ear_top.get::<millimeter>();
    let start = tape_start(measures.top_from, tragus, k);
    solid.rise = zero_between(0.3 * solid.half_breadth, 2.5 * solid.half_breadth, &|rise| {
        over_the_top(&Solid { rise, ..solid }, start) - over_top
    });

    let (mean, sd) = prop::HAIRLINE_BELOW_TOP;
    let below = |sds: f64| solid.rise - (mean + sds * sd) * k;
    let least = below(prop::HAIRLINE_REACH).max(prop::HAIRLINE_LEAST * k);
    let most = below(-prop::HAIRLINE_REACH).max(least);
    let across = measures.ear_to_ear_front.get::<millimeter>();
    let hairline = zero_between(least, most, &|z| across_forehead(&solid, tragus, z) - across);

    let behind = back_of_head(&solid);
    let to_top = front_to_top(&solid, hairline);
    let deepest = -prop::NAPE_DEPTH.1 * solid.drop;
    let nape = behind.at(measures.front_to_nape.get::<millimeter>() - to_top)[2];
    let nape = within(nape, deepest, -prop::NAPE_DEPTH.0 * k);

    let below_temple = &prop::EAR_EDGE[0];
    let below_temple = azimuth_of(&solid, below_temple.forward * k, tragus + below_temple.above * k);
    let round_back = measures.temple_to_temple_back.get::<millimeter>();
    let temple_height = hairline + prop::RECESSION * k;
    let temple = azimuth_at(&level_from_back(&solid, temple_height), round_back / 2.0);
    let temple = within(temple, below_temple + 0.1, 1.3);

    let behind_ear = &prop::EAR_EDGE[prop::EAR_EDGE.len() - 1];
    let behind_ear = azimuth_of(&solid, behind_ear.forward * k, tragus + behind_ear.above * k);
    let nape_corner = zero_between(0.1 - FRAC_PI_2, behind_ear - 0.03, &|corner| {
        2.0 * length(&nape_line(&solid, nape, corner, k)) - nape_width
    });

    Fitted { solid, marks: Marks { scale: k, tragus, hairline, temple, temple_height, nape, nape_corner } }
}

/// Lays each tape on the fitted dome.
pub(super) fn residuals(measures: &HeadMeasures, fitted: &Fitted) -> [Residual; 6] {
    let Fitted { solid, marks } = fitted;
    let start = tape_start(measures.top_from, marks.tragus, marks.scale);
    let level = |azimuth: f64, z: f64| {
        2.0 * smooth_length(&stepped(256, &|i| solid.at(-FRAC_PI_2 + (azimuth + FRAC_PI_2) * i / 256.0, z)))
    };
    let nape = [0.0, -solid.half_length * solid.shrink(marks.nape), marks.nape];
    let down_back = solid.section(MIDDLE, UP, [0.0, -1.0, 0.0], 0.0, libm::atan2(-nape[1], nape[2]), 256);
    let tapes = [
        solid.girth(),
        front_to_top(solid, marks.hairline) + smooth_length(&down_back),
        across_forehead(solid, marks.tragus, marks.hairline),
        over_the_top(solid, start),
        level(marks.temple, marks.temple_height),
        2.0 * length(&nape_line(solid, marks.nape, marks.nape_corner, marks.scale)),
    ];
    let mut tapes = tapes.into_iter();
    measures.fields().map(|(field, given)| {
        let reproduced = tapes.next().map_or(given, Length::new::<millimeter>);
        Residual { field, given, reproduced }
    })
}

fn tape_start(from: TapeFrom, tragus: f64, k: f64) -> f64 {
    match from {
        TapeFrom::Tragus => tragus,
        TapeFrom::AboveEar => tragus + prop::EAR_ABOVE_TRAGUS * k,
    }
}

/// Ear to ear over the top, the tape starting at height `start`.
fn over_the_top(solid: &Solid, start: f64) -> f64 {
    let angle = libm::atan2(start, solid.half_breadth_at(0.0, start));
    2.0 * smooth_length(&solid.section(MIDDLE, RIGHT, UP, angle, FRAC_PI_2, 64))
}

/// Tragus to tragus in the plane through the middle of the front hairline: the way a taut tape lies.
pub(super) fn across_forehead(solid: &Solid, tragus: f64, hairline: f64) -> f64 {
    let front = [0.0, solid.half_length * solid.shrink(hairline), hairline];
    let reach = sub(front, [0.0, 0.0, tragus]);
    let length = norm(reach);
    let along = scale(reach, 1.0 / length);
    let from = [0.0, reach[1] / 2.0, tragus + reach[2] / 2.0];
    let start = libm::atan2(-length / 2.0, solid.half_breadth_at(0.0, tragus));
    2.0 * smooth_length(&solid.section(from, RIGHT, along, start, FRAC_PI_2, 64))
}

/// Middle of the front hairline to the top, along the mid plane.
fn front_to_top(solid: &Solid, hairline: f64) -> f64 {
    let angle = libm::atan2(hairline, solid.half_length * solid.shrink(hairline));
    smooth_length(&solid.section(MIDDLE, FORWARD, UP, angle, FRAC_PI_2, 64))
}

/// The mid line from the top down the back.
pub(super) fn back_of_head(solid: &Solid) -> Tape {
    Tape::along(solid.section(MIDDLE, UP, [0.0, -1.0, 0.0], 0.0, 0.48 * TAU, 360))
}

/// The mid line from the top down the forehead to the hairline.
pub(super) fn front_of_head(solid: &Solid, hairline: f64) -> Tape {
    let angle = libm::atan2(hairline, solid.half_length * solid.shrink(hairline));
    Tape::along(solid.section(MIDDLE, UP, FORWARD, 0.0, FRAC_PI_2 - angle, 240))
}

fn level_from_back(solid: &Solid, z: f64) -> Tape {
    Tape::along((0..=360).map(|i| solid.at(-FRAC_PI_2 + f64::from(i) / 360.0 * TAU / 2.0, z)).collect())
}

fn azimuth_at(level: &Tape, mark: f64) -> f64 {
    let p = level.at(mark);
    libm::atan2(p[1], libm::fabs(p[0]))
}
