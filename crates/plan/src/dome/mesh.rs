//! Triangles on a solid that can be cut along any line and integrated exactly enough.
//!
//! What it is: a polar grid from the top to an edge, cut by scalar fields so that every triangle lies wholly on one side of
//! each. What it is not: a drawing; flatness of the triangles is corrected in the area.

use super::solid::Solid;
use super::vector::{Point, add, cross, dot, mix, norm, scale};
use core::f64::consts::TAU;
use measure::order;

/// A triangle, outward, with a mark the cuts write to.
#[derive(Debug, Clone, Copy)]
pub(super) struct Triangle {
    pub(super) corners: [u32; 3],
    pub(super) mark: u16,
}

/// A triangulated patch of a solid's surface.
#[derive(Debug, Clone)]
pub struct Mesh {
    pub(super) points: Vec<Point>,
    pub(super) triangles: Vec<Triangle>,
}

impl Mesh {
    /// A patch round the top of `solid`: one column per edge point of the closed, anticlockwise (seen from above) `edge`,
    /// `rows` rows in equal angles from the top down to it.
    pub fn cap(solid: &Solid, edge: &[Point], rows: u32) -> Self {
        let columns: Vec<(f64, f64)> =
            edge.iter().map(|p| (libm::atan2(p[1], p[0]), libm::atan2(libm::hypot(p[0], p[1]), p[2]))).collect();
        Self::polar(solid, &columns, rows)
    }

    /// The part of a solid within the polar angle `reach` (radians) from its top, `columns` by `rows`: what the integrator is
    /// checked with.
    pub fn round_the_top(solid: &Solid, reach: f64, columns: u32, rows: u32) -> Self {
        let columns: Vec<(f64, f64)> = (0..columns).map(|i| (TAU * f64::from(i) / f64::from(columns), reach)).collect();
        Self::polar(solid, &columns, rows)
    }

    fn polar(solid: &Solid, columns: &[(f64, f64)], rows: u32) -> Self {
        let count = columns.len() as u32;
        let mut points = vec![[0.0, 0.0, solid.rise]];
        for row in 1..=rows {
            for (azimuth, reach) in columns {
                let polar = reach * f64::from(row) / f64::from(rows);
                let (s, c) = (libm::sin(polar), libm::cos(polar));
                points.push(solid.hit([0.0; 3], [s * libm::cos(*azimuth), s * libm::sin(*azimuth), c]));
            }
        }
        let at = |row: u32, column: u32| {
            if row == 0 { 0 } else { 1 + (row - 1) * count + column % count }
        };
        let mut triangles = Vec::new();
        let mut push = |corners| triangles.push(Triangle { corners, mark: 0 });
        for row in 0..rows {
            for column in 0..count {
                let (a, b) = (at(row, column), at(row, column + 1));
                let (c, d) = (at(row + 1, column), at(row + 1, column + 1));
                // Mirrored diagonals keep left and right alike.
                if column * 2 < count {
                    push([a, c, d]);
                    if row > 0 {
                        push([a, d, b]);
                    }
                } else {
                    push([b, c, d]);
                    if row > 0 {
                        push([a, c, b]);
                    }
                }
            }
        }
        Self { points, triangles }
    }

    fn corners(&self, t: &Triangle) -> [Point; 3] {
        t.corners.map(|i| self.points[i as usize])
    }

    /// Area in mm² of the solid's surface above one triangle.
    ///
    /// Seen from the origin both fill the same solid angle, so dA = (r/ρ)² (N·û)/(n·û) dA' with ρ, N of the triangle and r, n
    /// of the surface; three inner points integrate the bulge to fourth order in the triangle's size.
    pub(super) fn area_over(&self, solid: &Solid, t: &Triangle) -> f64 {
        let [a, b, c] = self.corners(t);
        let flat = cross(add(b, scale(a, -1.0)), add(c, scale(a, -1.0)));
        let size = norm(flat);
        if size < 1e-9 {
            return 0.0;
        }
        let mut sum = 0.0;
        for weights in [[4.0, 1.0, 1.0], [1.0, 4.0, 1.0], [1.0, 1.0, 4.0]] {
            let p = scale(add(add(scale(a, weights[0]), scale(b, weights[1])), scale(c, weights[2])), 1.0 / 6.0);
            let s = solid.project(p);
            let grow = dot(s, s) / dot(p, p);
            let slant = dot(solid.normal(s), p);
            if slant > 0.0 {
                sum += grow * dot(flat, p) / slant;
            }
        }
        sum / 6.0
    }

    /// Area in mm² of the solid's surface above the patch.
    pub fn area(&self, solid: &Solid) -> f64 {
        self.triangles.iter().map(|t| self.area_over(solid, t)).sum()
    }

    /// Cuts every triangle that `applies` along the zero line of `field`; those on its positive side get `bit` set.
    ///
    /// New points lie on the surface and are shared by both neighbours, so no gap opens.
    pub(super) fn cut(&mut self, solid: &Solid, bit: u16, applies: &dyn Fn(u16) -> bool, field: &dyn Fn(Point) -> f64) {
        let mut values: Vec<Option<f64>> = vec![None; self.points.len()];
        let mut between: Vec<((u32, u32), u32)> = Vec::new();
        let mut out = Vec::with_capacity(self.triangles.len() + 64);
        let triangles = core::mem::take(&mut self.triangles);
        for t in triangles {
            if !applies(t.mark) {
                out.push(t);
                continue;
            }
            let value = t.corners.map(|i| *values[i as usize].get_or_insert_with(|| field(self.points[i as usize])));
            let inside = value.map(|v| v >= 0.0);
            let mark = |yes: bool| if yes { t.mark | bit } else { t.mark };
            let lone = match inside {
                [a, b, c] if a == b && b == c => {
                    out.push(Triangle { mark: mark(a), ..t });
                    continue;
                }
                [a, b, c] if b == c && a != b => 0,
                [a, b, c] if a == c && b != a => 1,
                _ => 2,
            };
            let [i, j, k] = [lone, (lone + 1) % 3, (lone + 2) % 3];
            let ends = [t.corners[i], t.corners[j], t.corners[k]];
            let mut crossing = |from: u32, to: u32, v_from: f64, v_to: f64| {
                let (low, high, v_low, v_high) =
                    if from < to { (from, to, v_from, v_to) } else { (to, from, v_to, v_from) };
                let place = match between.binary_search_by_key(&(low, high), |one| one.0) {
                    Ok(place) => return between[place].1,
                    Err(place) => place,
                };
                let ends = (self.points[low as usize], self.points[high as usize]);
                self.points.push(crossing_point(solid, ends, (v_low, v_high), field));
                let point = (self.points.len() - 1) as u32;
                between.insert(place, ((low, high), point));
                point
            };
            let ij = crossing(ends[0], ends[1], value[i], value[j]);
            let ik = crossing(ends[0], ends[2], value[i], value[k]);
            out.push(Triangle { corners: [ends[0], ij, ik], mark: mark(inside[i]) });
            out.push(Triangle { corners: [ij, ends[1], ends[2]], mark: mark(inside[j]) });
            out.push(Triangle { corners: [ij, ends[2], ik], mark: mark(inside[j]) });
        }
        self.triangles = out;
    }

    /// Closed outlines of the triangles chosen: the edges that only one of them has, chained.
    pub(super) fn outlines(&self, chosen: &dyn Fn(&Triangle) -> bool) -> Vec<Vec<Point>> {
        let mut edges: Vec<(u32, u32)> = Vec::new();
        for t in self.triangles.iter().filter(|t| chosen(t)) {
            let [a, b, c] = t.corners;
            for edge in [(a, b), (b, c), (c, a)] {
                if edge.0 != edge.1 {
                    edges.push(edge);
                }
            }
        }
        let place = |e: &(u32, u32)| (e.0.min(e.1), e.0.max(e.1), e.0);
        order::sort_by(&mut edges, &|a, b| place(a).cmp(&place(b)));
        let mut border: Vec<(u32, u32)> = Vec::new();
        for same in edges.chunk_by(|a, b| a.0.min(a.1) == b.0.min(b.1) && a.0.max(a.1) == b.0.max(b.1)) {
            let forward = same.iter().filter(|e| e.0 < e.1).count();
            let backward = same.len() - forward;
            let (low, high) = (same[0].0.min(same[0].1), same[0].0.max(same[0].1));
            let edge = if forward > backward { (low, high) } else { (high, low) };
            for _ in 0..forward.abs_diff(backward) {
                border.push(edge);
            }
        }
        order::sort(&mut border);
        let mut used = vec![false; border.len()];
        let mut loops = Vec::new();
        for first in 0..border.len() {
            if used[first] {
                continue;
            }
            let mut line = Vec::new();
            let mut here = first;
            loop {
                used[here] = true;
                line.push(self.points[border[here].0 as usize]);
                let next = border[here].1;
                let start = border.partition_point(|e| e.0 < next);
                let Some(step) = (start..border.len()).take_while(|i| border[*i].0 == next).find(|i| !used[*i]) else {
                    break;
                };
                here = step;
            }
            if line.len() > 2 {
                loops.push(line);
            }
        }
        loops
    }
}

fn crossing_point(solid: &Solid, ends: (Point, Point), values: (f64, f64), field: &dyn Fn(Point) -> f64) -> Point {
    let (mut a, mut b) = (0.0, 1.0);
    let (mut va, mut vb) = values;
    let mut point = ends.0;
    let mut kept = 0;
    for _ in 0..12 {
        let part = if va == vb { 0.5 } else { (a * vb - b * va) / (vb - va) };
        point = solid.project(mix(ends.0, ends.1, part));
        let v = field(point);
        if libm::fabs(v) < 1e-8 {
            break;
        }
        // Illinois: the end that stays twice running counts half.
        if (v >= 0.0) == (va >= 0.0) {
            (a, va) = (part, v);
            if kept == 1 {
                vb *= 0.5;
            }
            kept = 1;
        } else {
            (b, vb) = (part, v);
            if kept == -1 {
                va *= 0.5;
            }
            kept = -1;
        }
    }
    point
}
