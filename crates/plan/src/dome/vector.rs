//! Points and directions in the head's own frame.
//!
//! What it is: the few vector sums the dome needs. What it is not: a linear algebra library.
//!
//! Frame: millimetres; x to the wearer's right, y forward, z up; the origin is the middle of the head at the level of the
//! girth tape.

/// A point or direction in the head's frame, in mm: `[right, forward, up]`.
pub type Point = [f64; 3];

pub(super) fn add(a: Point, b: Point) -> Point {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

pub(super) fn sub(a: Point, b: Point) -> Point {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

pub(super) fn scale(a: Point, by: f64) -> Point {
    [a[0] * by, a[1] * by, a[2] * by]
}

pub(super) fn dot(a: Point, b: Point) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(super) fn cross(a: Point, b: Point) -> Point {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

pub(super) fn norm(a: Point) -> f64 {
    libm::sqrt(dot(a, a))
}

pub(super) fn unit(a: Point) -> Point {
    let n = norm(a);
    if n > 0.0 { scale(a, 1.0 / n) } else { a }
}

pub(super) fn mix(a: Point, b: Point, part: f64) -> Point {
    add(scale(a, 1.0 - part), scale(b, part))
}

pub(super) fn distance(a: Point, b: Point) -> f64 {
    norm(sub(a, b))
}

/// Square of the shortest distance from `p` to the segment `a`–`b`.
pub(super) fn square_to_segment(p: Point, a: Point, b: Point) -> f64 {
    let along = sub(b, a);
    let length2 = dot(along, along);
    let part = if length2 > 0.0 { (dot(sub(p, a), along) / length2).clamp(0.0, 1.0) } else { 0.0 };
    let off = sub(p, mix(a, b, part));
    dot(off, off)
}
