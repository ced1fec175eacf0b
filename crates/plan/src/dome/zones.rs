//! The zones of the cap: which one a point lies in, and the lines between them.
//!
//! What it is: one decision tree, walked by points (rows) and by the mesh (areas, drawings). What it is not: row planning.

use super::edge::{CapEdge, distance_to_halves};
use super::mesh::Mesh;
use super::proportions as prop;
use super::solid::Solid;
use super::vector::Point;

pub use record::wig::zone::Zone;

/// Where the part zone lies on this dome, in mm.
#[derive(Debug, Clone, Copy)]
pub(super) struct PartBand {
    pub(super) from: f64,
    pub(super) to: f64,
    /// How far back it goes (y).
    pub(super) end: f64,
}

/// The lines that divide the cap.
#[derive(Debug, Clone)]
pub(super) struct Division {
    /// Height abreast of the ears of the plane under top and crown.
    pub(super) upper: f64,
    pub(super) tragus: f64,
    pub(super) side_end: f64,
    /// Right half of the front edge.
    front: Vec<Point>,
    pub(super) part: Option<PartBand>,
}

const STRIP: u16 = 1;
const FRONT_HALF: u16 = 1 << 1;
const UPPER: u16 = 1 << 2;
const AT_EAR: u16 = 1 << 3;
const ABOVE_TRAGUS: u16 = 1 << 4;
const PART_DEPTH: u16 = 1 << 5;
const PART_FROM: u16 = 1 << 6;
const PART_TO: u16 = 1 << 7;
const RIGHT: u16 = 1 << 8;

fn zone_of_mark(mark: u16) -> Zone {
    let has = |bits: u16| mark & bits == bits;
    if has(STRIP) {
        Zone::FrontHairline
    } else if has(UPPER | FRONT_HALF) {
        if has(PART_DEPTH | PART_FROM | PART_TO) { Zone::Part } else { Zone::Top }
    } else if has(UPPER) {
        Zone::Crown
    } else if has(AT_EAR) {
        if has(RIGHT) { Zone::RightSide } else { Zone::LeftSide }
    } else if has(ABOVE_TRAGUS) {
        Zone::Back
    } else {
        Zone::Nape
    }
}

impl Division {
    pub(super) fn new(edge: &CapEdge, scale: f64, tragus: f64, hairline: f64) -> Self {
        Self {
            upper: (prop::UPPER.0 * scale).min(hairline + prop::UPPER_OVER_HAIRLINE * scale),
            tragus,
            side_end: -prop::SIDE_BEHIND_TRAGUS * scale,
            front: edge.right_front(),
            part: None,
        }
    }

    fn in_strip(&self, p: Point) -> f64 {
        // A strip's depth from the front edge cannot reach this far back: saves the distance.
        if p[1] < -prop::HAIRLINE_STRIP {
            return -prop::HAIRLINE_STRIP;
        }
        prop::HAIRLINE_STRIP - distance_to_halves(p, &self.front)
    }

    /// How far a point lies above the plane under top and crown, mm.
    pub(super) fn over_upper(&self, p: Point) -> f64 {
        p[2] + prop::UPPER.1 * p[1] - self.upper
    }

    /// The zone of a point of the cap.
    pub(super) fn zone(&self, p: Point) -> Zone {
        let mut mark = 0;
        let mut set = |yes: bool, bit: u16| mark |= if yes { bit } else { 0 };
        set(self.in_strip(p) >= 0.0, STRIP);
        set(p[1] >= 0.0, FRONT_HALF);
        set(self.over_upper(p) >= 0.0, UPPER);
        set(p[1] >= self.side_end, AT_EAR);
        set(p[2] >= self.tragus, ABOVE_TRAGUS);
        set(p[0] >= 0.0, RIGHT);
        if let Some(part) = self.part {
            set(p[1] >= part.end, PART_DEPTH);
            set(p[0] >= part.from, PART_FROM);
            set(p[0] <= part.to, PART_TO);
        }
        zone_of_mark(mark)
    }

    /// Cuts a mesh of the cap so that each triangle lies in one zone.
    pub(super) fn divide(&self, solid: &Solid, mesh: &mut Mesh) {
        let (tragus, side_end) = (self.tragus, self.side_end);
        let rest = |m: u16| m & STRIP == 0;
        mesh.cut(solid, STRIP, &|_| true, &|p| self.in_strip(p));
        mesh.cut(solid, UPPER, &rest, &|p| self.over_upper(p));
        mesh.cut(solid, FRONT_HALF, &|m| rest(m) && m & UPPER != 0, &|p| p[1]);
        mesh.cut(solid, AT_EAR, &|m| rest(m) && m & UPPER == 0, &|p| p[1] - side_end);
        mesh.cut(solid, ABOVE_TRAGUS, &|m| rest(m) && m & (UPPER | AT_EAR) == 0, &|p| p[2] - tragus);
        mesh.cut(solid, RIGHT, &|m| rest(m) && m & UPPER == 0 && m & AT_EAR != 0, &|p| p[0]);
        for t in &mut mesh.triangles {
            t.mark = zone_of_mark(t.mark) as u16;
        }
        self.part_the_top(solid, mesh);
    }

    /// Cuts the part zone out of the top of a mesh that is divided but for it.
    pub(super) fn part_the_top(&self, solid: &Solid, mesh: &mut Mesh) {
        let Some(part) = self.part else { return };
        const LINES: u16 = PART_DEPTH | PART_FROM | PART_TO;
        let top = |m: u16| m & !LINES == Zone::Top as u16;
        mesh.cut(solid, PART_DEPTH, &top, &|p| p[1] - part.end);
        mesh.cut(solid, PART_FROM, &top, &|p| p[0] - part.from);
        mesh.cut(solid, PART_TO, &top, &|p| part.to - p[0]);
        for t in &mut mesh.triangles {
            t.mark = if t.mark & LINES == LINES { Zone::Part as u16 } else { t.mark & !LINES };
        }
    }
}

/// The zone a divided triangle carries.
pub(super) fn zone_of(mark: u16) -> Zone {
    Zone::ALL.get(usize::from(mark)).copied().unwrap_or(Zone::Back)
}
