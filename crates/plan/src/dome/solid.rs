//! The convex body the dome is cut from: an egg-shaped superellipsoid with its own power above, below and around the girth.
//!
//! What it is: the level function `|x/A(y)|^n + |y/b|^n + V(z) = 1` with `A(y) = a (1 - taper y/b)`, its normals, ray hits and
//! plane sections. What it is not: a head; nothing here knows of ears, hairlines or tapes.
//!
//! Convex for the tapers used here (tested): what faces the viewer is what the viewer sees. Tangents are continuous across
//! the girth plane because every power is above 1. Powers are whole or half numbers, so that they cost multiplications and
//! one square root.

use super::curve::stepped;
use super::vector::{Point, add, dot, scale, unit};

/// Powers of the level function, each stored doubled (5 means 2.5).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Powers {
    /// Around the girth (x and y), doubled; at least 3.
    pub around: u8,
    /// Above the girth plane, doubled; at least 3.
    pub above: u8,
    /// Below the girth plane, doubled; at least 3.
    pub below: u8,
}

/// A convex body; lengths in mm, all positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Solid {
    /// Half breadth at the girth, abreast of the ears (y = 0).
    pub half_breadth: f64,
    /// How much narrower the front end is, and broader the back end, as a share of the half breadth; 0 for none.
    pub taper: f64,
    /// Half length at the girth.
    pub half_length: f64,
    /// Height of the top above the girth plane.
    pub rise: f64,
    /// Depth below the girth plane at which the body would close.
    pub drop: f64,
    /// Roundness of the three parts.
    pub powers: Powers,
}

fn raise(value: f64, doubled: u8) -> f64 {
    let mut power = 1.0;
    for _ in 0..doubled / 2 {
        power *= value;
    }
    if doubled % 2 == 1 { power * libm::sqrt(value) } else { power }
}

/// Value and slope of `|t / axis|^power`.
fn term(t: f64, axis: f64, doubled: u8) -> (f64, f64) {
    let u = libm::fabs(t) / axis;
    let lower = raise(u, doubled - 2);
    let slope = f64::from(doubled) / 2.0 * lower / axis;
    (lower * u, if t < 0.0 { -slope } else { slope })
}

impl Solid {
    /// A true ellipsoid with semi-axes in mm: what the integrator is checked on.
    pub fn ellipsoid(x: f64, y: f64, z: f64) -> Self {
        Self {
            half_breadth: x,
            taper: 0.0,
            half_length: y,
            rise: z,
            drop: z,
            powers: Powers { around: 4, above: 4, below: 4 },
        }
    }

    fn vertical(&self, z: f64) -> (f64, f64) {
        if z >= 0.0 { term(z, self.rise, self.powers.above) } else { term(z, self.drop, self.powers.below) }
    }

    /// Breadth at `y` over breadth abreast of the ears, before rounding.
    fn narrow(&self, y: f64) -> f64 {
        1.0 - self.taper * y / self.half_length
    }

    /// Level and gradient at a point: below 1 inside, 1 on the surface.
    pub fn level(&self, p: Point) -> (f64, Point) {
        let narrow = self.narrow(p[1]);
        let (x, dx) = term(p[0], self.half_breadth * narrow, self.powers.around);
        let (y, dy) = term(p[1], self.half_length, self.powers.around);
        let (z, dz) = self.vertical(p[2]);
        let power = f64::from(self.powers.around) / 2.0;
        let narrowing = self.taper / self.half_length;
        (x + y + z, [dx, dy + power * x * narrowing / narrow, dz])
    }

    /// Outward unit normal of the level surface through a point.
    pub fn normal(&self, p: Point) -> Point {
        unit(self.level(p).1)
    }

    /// Where the ray from the inner point `from` along `direction` leaves the body, as a multiple of `direction`.
    ///
    /// The level is convex along the ray, so Newton from beyond the surface falls onto it without overshooting.
    fn reach(&self, from: Point, direction: Point, guess: f64) -> f64 {
        let mut t = guess;
        for _ in 0..60 {
            let (level, gradient) = self.level(add(from, scale(direction, t)));
            let slope = dot(gradient, direction);
            if slope <= 0.0 {
                t = t * 2.0 + 1.0;
                continue;
            }
            let step = (level - 1.0) / slope;
            t -= step;
            // Newton doubles the digits: what is left after such a step is below rounding.
            if libm::fabs(step) <= 1e-8 * (1.0 + libm::fabs(t)) {
                break;
            }
        }
        t
    }

    /// The surface point on the ray from an inner point along a unit direction.
    pub fn hit(&self, from: Point, direction: Point) -> Point {
        // The box round the body bounds the ray from outside.
        let broad = self.half_breadth * (1.0 + libm::fabs(self.taper));
        let box_ends = [
            if direction[0] > 0.0 { broad } else { -broad },
            if direction[1] > 0.0 { self.half_length } else { -self.half_length },
            if direction[2] > 0.0 { self.rise } else { -self.drop },
        ];
        let mut guess = f64::INFINITY;
        for i in 0..3 {
            if direction[i] != 0.0 {
                guess = guess.min((box_ends[i] - from[i]) / direction[i]);
            }
        }
        add(from, scale(direction, self.reach(from, direction, guess)))
    }

    /// The surface point straight outward (from the origin) of a point near the surface.
    pub fn project(&self, p: Point) -> Point {
        scale(p, self.reach([0.0; 3], p, 1.003))
    }

    /// How much a level section shrinks at height `z`: 1 at the girth, 0 at the top.
    pub fn shrink(&self, z: f64) -> f64 {
        let rest = 1.0 - self.vertical(z).0;
        if rest <= 0.0 { 0.0 } else { libm::pow(rest, 2.0 / f64::from(self.powers.around)) }
    }

    /// The surface point at azimuth `phi` (from the wearer's right towards the front, radians) and height `z`.
    pub fn at(&self, phi: f64, z: f64) -> Point {
        self.at_on(phi, z, 0.0)
    }

    /// The surface point at azimuth `phi` on the plane that crosses the z axis at `z` and sinks by `slope` towards the front.
    pub fn at_on(&self, phi: f64, z: f64, slope: f64) -> Point {
        let (s, c) = (libm::sin(phi), libm::cos(phi));
        self.hit([0.0, 0.0, z], unit([c, s, -slope * s]))
    }

    /// Half breadth (x ≥ 0) of the body at `y`, `z`; zero outside.
    pub fn half_breadth_at(&self, y: f64, z: f64) -> f64 {
        let rest = 1.0 - self.vertical(z).0 - term(y, self.half_length, self.powers.around).0;
        if rest <= 0.0 {
            0.0
        } else {
            self.half_breadth * self.narrow(y) * libm::pow(rest, 2.0 / f64::from(self.powers.around))
        }
    }

    /// Points where the plane through the inner point `from`, spanned by unit `u` and `v`, cuts the surface, from angle
    /// `start` to `end` (radians from `u` towards `v`), in `steps` equal steps.
    pub fn section(&self, from: Point, u: Point, v: Point, start: f64, end: f64, steps: usize) -> Vec<Point> {
        stepped(steps, &|i| {
            let angle = start + (end - start) * i / steps as f64;
            let direction = add(scale(u, libm::cos(angle)), scale(v, libm::sin(angle)));
            self.hit(from, direction)
        })
    }

    /// Length of the level section at the girth plane, mm.
    pub fn girth(&self) -> f64 {
        let half = core::f64::consts::FRAC_PI_2;
        let points = self.section([0.0; 3], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0], -half, half, 512);
        2.0 * super::curve::smooth_length(&points)
    }

    /// Greatest breadth at the girth plane, mm.
    pub fn breadth(&self) -> f64 {
        let at = |i: i32| self.half_breadth_at(f64::from(i) / 400.0 * self.half_length, 0.0);
        2.0 * (-400..=400).map(at).fold(0.0, f64::max)
    }
}
