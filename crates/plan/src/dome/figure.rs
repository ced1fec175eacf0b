//! The plain figure under the cap: outline of head and neck, ears, a nose and a chin, so that a person sees which way the
//! head looks.
//!
//! What it is: a few curves of ours, scaled with the girth and joined to the fitted dome. What it is not: a likeness, or
//! anything that is measured.

use super::edge::Marks;
use super::solid::Solid;
use super::view::View;
use core::f64::consts::{FRAC_PI_2, TAU};

/// Curves of a view, mm, y down.
pub(super) struct Figure {
    pub(super) outline: Vec<[f64; 2]>,
    pub(super) ears: Vec<Vec<[f64; 2]>>,
    pub(super) features: Vec<Vec<[f64; 2]>>,
}

/// Face and throat from brow to neck: mm in front of the half length, mm over the girth plane, at the reference girth.
const PROFILE: [[f64; 2]; 14] = [
    [-4.0, -27.0],
    [4.0, -42.0],
    [15.0, -57.0],
    [11.0, -63.0],
    [0.0, -66.0],
    [3.0, -74.0],
    [-1.0, -79.0],
    [1.0, -85.0],
    [-5.0, -92.0],
    [-3.0, -103.0],
    [-12.0, -112.0],
    [-38.0, -112.0],
    [-58.0, -120.0],
    [-63.0, -165.0],
];

/// Cheek, jaw and neck from the ear down: half width as a share of the half breadth, mm over the girth plane.
const JAW: [[f64; 2]; 5] = [[0.92, -58.0], [0.84, -84.0], [0.68, -106.0], [0.62, -125.0], [0.66, -165.0]];

/// Half of the chin seen from the front: share of the half breadth, mm over the girth plane.
const CHIN: [[f64; 2]; 4] = [[0.72, -102.0], [0.50, -114.0], [0.26, -121.0], [0.0, -123.0]];

/// Half of the nose seen from the front.
const NOSE: [[f64; 2]; 3] = [[0.16, -58.0], [0.12, -64.0], [0.0, -66.0]];

/// Depth of the neck's cut below the girth plane, mm.
const NECK: f64 = -165.0;

pub(super) fn figure(solid: &Solid, marks: &Marks, view: View) -> Figure {
    match view {
        View::Front => face_on(solid, marks, true),
        View::Back => face_on(solid, marks, false),
        View::Right => side(solid, marks, 1.0),
        View::Left => side(solid, marks, -1.0),
        View::Top => from_above(solid, marks),
    }
}

fn side(solid: &Solid, marks: &Marks, forward: f64) -> Figure {
    let k = marks.scale;
    let half = |z: f64| solid.half_length * solid.shrink(z);
    let place = |y: f64, z: f64| [forward * y, -z];
    let brow = -14.0 * k;
    // Up the back from the nape, over the top, down the forehead.
    let nape = marks.nape.max(-120.0 * k);
    let mut rim: Vec<[f64; 2]> = Vec::new();
    let from = libm::atan2(-half(nape), nape);
    let to = libm::atan2(half(brow), brow);
    for i in 0..=64 {
        let angle = from + (to - from) * f64::from(i) / 64.0;
        let p = solid.hit([0.0; 3], [0.0, libm::sin(angle), libm::cos(angle)]);
        rim.push(place(p[1], p[2]));
    }
    let mut below = vec![place(half(brow), brow)];
    for p in PROFILE {
        below.push(place(solid.half_length + p[0] * k, p[1] * k));
    }
    let behind = half(nape) - 3.0 * k;
    let neck = [place(-behind + 2.0 * k, NECK * k), place(-behind, nape - 18.0 * k), place(-half(nape), nape)];
    let mut outline = rim;
    outline.extend_from_slice(&smooth(&below)[1..]);
    let neck = smooth(&neck);
    outline.extend_from_slice(&neck[..neck.len() - 1]);
    let ear = oval(place(-10.0 * k, marks.tragus - 2.0 * k), 15.0 * k, 30.0 * k);
    Figure { outline, ears: vec![ear], features: Vec::new() }
}

fn face_on(solid: &Solid, marks: &Marks, face: bool) -> Figure {
    let (k, a) = (marks.scale, solid.half_breadth);
    let ear_level = marks.tragus;
    let to = libm::atan2(ear_level, a * solid.shrink(ear_level));
    let mut half: Vec<[f64; 2]> = Vec::new();
    for i in 0..=48 {
        let angle = FRAC_PI_2 + (to - FRAC_PI_2) * f64::from(i) / 48.0;
        let p = solid.hit([0.0; 3], [libm::cos(angle), 0.0, libm::sin(angle)]);
        half.push([p[0], -p[2]]);
    }
    half[0][0] = 0.0;
    let mut jaw = vec![[a * solid.shrink(ear_level), -ear_level]];
    for p in JAW {
        jaw.push([p[0] * a, -p[1] * k]);
    }
    half.extend_from_slice(&smooth(&jaw)[1..]);
    let outline = with_mirrored(&half);
    let side = a * solid.shrink(ear_level) + 4.0 * k;
    let ears = [1.0, -1.0].map(|s| oval([s * side, -ear_level + 2.0 * k], 7.0 * k, 29.0 * k)).to_vec();
    let mirrored = |line: &[[f64; 2]]| {
        let mut whole: Vec<[f64; 2]> = Vec::new();
        for p in line {
            whole.push([p[0] * a, -p[1] * k]);
        }
        for p in line[..line.len() - 1].iter().rev() {
            whole.push([-p[0] * a, -p[1] * k]);
        }
        smooth(&whole)
    };
    let features = if face { vec![mirrored(&CHIN), mirrored(&NOSE)] } else { Vec::new() };
    Figure { outline, ears, features }
}

/// The right half of an outline from the middle on, and the left half back to it.
fn with_mirrored(half: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let mut whole = half.to_vec();
    for p in half[1..].iter().rev() {
        whole.push([-p[0], p[1]]);
    }
    whole
}

fn from_above(solid: &Solid, marks: &Marks) -> Figure {
    let k = marks.scale;
    let mut outline = Vec::new();
    for i in 0..96 {
        let p = solid.at(TAU * f64::from(i) / 96.0, 0.0);
        outline.push([p[0], -p[1]]);
    }
    let ears = [1.0, -1.0].map(|s| oval([s * (solid.half_breadth + 3.0 * k), 12.0 * k], 7.0 * k, 17.0 * k)).to_vec();
    let front = -solid.half_length;
    let nose = smooth(&[[-9.0 * k, front + 1.0 * k], [0.0, front - 16.0 * k], [9.0 * k, front + 1.0 * k]]);
    Figure { outline, ears, features: vec![nose] }
}

fn oval(centre: [f64; 2], half_width: f64, half_height: f64) -> Vec<[f64; 2]> {
    let mut line = Vec::new();
    for i in 0..32 {
        let angle = TAU * f64::from(i) / 32.0;
        line.push([centre[0] + half_width * libm::cos(angle), centre[1] + half_height * libm::sin(angle)]);
    }
    line
}

/// A smooth line through points (Catmull–Rom), six steps between neighbours.
fn smooth(points: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let at = |i: usize| points[i.min(points.len() - 1)];
    let mut out = vec![points[0]];
    for i in 1..points.len() {
        let (p0, p1, p2, p3) = (at(i.saturating_sub(2)), at(i - 1), at(i), at(i + 1));
        for step in 1..=6 {
            let t = f64::from(step) / 6.0;
            let (t2, t3) = (t * t, t * t * t);
            out.push([0, 1].map(|c| {
                0.5 * (2.0 * p1[c]
                    + (p2[c] - p0[c]) * t
                    + (2.0 * p0[c] - 5.0 * p1[c] + 4.0 * p2[c] - p3[c]) * t2
                    + (3.0 * p1[c] - p0[c] - 3.0 * p2[c] + p3[c]) * t3)
            }));
        }
    }
    out
}
