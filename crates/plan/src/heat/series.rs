//! The series solution of a cylinder or a plane wall that is suddenly put into another temperature.
//!
//! What it is: exact answers to hold the stepped solver against, and the quick answer for a full lock.
//! What it is not: layers on a rod, or surroundings that change.

/// The body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Body {
    /// A long cylinder; its length is the radius.
    Cylinder,
    /// A wide wall, heated alike on both sides; its length is half the thickness.
    Wall,
}

/// How much of the first difference is left, 1 at the start.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Left {
    /// In the middle.
    pub middle: f64,
    /// At the surface.
    pub surface: f64,
    /// In the mean.
    pub mean: f64,
}

/// Terms summed; for Fourier numbers from 0.01 the last one is below 1e-30.
const TERMS: usize = 60;

/// The roots of the body's equation: z J1(z) = Bi J0(z), or z tan z = Bi, lowest first.
pub fn roots(body: Body, biot: f64, count: usize) -> Vec<f64> {
    let pi = core::f64::consts::PI;
    let mut roots = Vec::with_capacity(count);
    let below = |z: f64| match body {
        Body::Cylinder => z * libm::j1(z) - biot * libm::j0(z),
        Body::Wall => z * libm::sin(z) - biot * libm::cos(z),
    };
    let mut low = 0.0;
    for at in 0..count {
        let high = match body {
            // Zeros of J0 and J1 part the roots.
            Body::Cylinder => zero_of_j0(at),
            Body::Wall => pi * (at as f64 + 0.5),
        };
        let (mut left, mut right) = (low, high);
        let sign = below(right) > 0.0;
        for _ in 0..200 {
            let middle = 0.5 * (left + right);
            if (below(middle) > 0.0) == sign {
                right = middle;
            } else {
                left = middle;
            }
        }
        roots.push(0.5 * (left + right));
        low = match body {
            Body::Cylinder => zero_of_j1(at),
            Body::Wall => pi * (at as f64 + 1.0),
        };
    }
    roots
}

fn bisect(mut low: f64, mut high: f64, f: impl Fn(f64) -> f64) -> f64 {
    let sign = f(high) > 0.0;
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        if (f(middle) > 0.0) == sign {
            high = middle;
        } else {
            low = middle;
        }
    }
    0.5 * (low + high)
}

/// The zeros lie near (n + ¾)π and (n + 5/4)π (McMahon), never a quarter of π away.
fn zero_of_j0(at: usize) -> f64 {
    let near = (at as f64 + 0.75) * core::f64::consts::PI;
    bisect(near - 0.5, near + 0.5, libm::j0)
}

fn zero_of_j1(at: usize) -> f64 {
    let near = (at as f64 + 1.25) * core::f64::consts::PI;
    bisect(near - 0.5, near + 0.5, libm::j1)
}

/// The coefficient of a root in the middle.
pub fn coefficient(body: Body, z: f64) -> f64 {
    match body {
        Body::Cylinder => {
            let (j0, j1) = (libm::j0(z), libm::j1(z));
            2.0 * j1 / (z * (j0 * j0 + j1 * j1))
        }
        Body::Wall => 4.0 * libm::sin(z) / (2.0 * z + libm::sin(2.0 * z)),
    }
}

/// How much is left at a Fourier number (diffusivity × time / length²) and a Biot number (transfer × length /
/// conductivity). Nothing where one is not above zero.
pub fn left(body: Body, biot: f64, fourier: f64) -> Option<Left> {
    if !(biot.is_finite() && fourier.is_finite() && biot > 0.0 && fourier > 0.0) {
        return None;
    }
    let mut sum = Left { middle: 0.0, surface: 0.0, mean: 0.0 };
    for z in roots(body, biot, TERMS) {
        let term = coefficient(body, z) * libm::exp(-z * z * fourier);
        let (surface, mean) = match body {
            Body::Cylinder => (libm::j0(z), 2.0 * libm::j1(z) / z),
            Body::Wall => (libm::cos(z), libm::sin(z) / z),
        };
        sum.middle += term;
        sum.surface += term * surface;
        sum.mean += term * mean;
    }
    Some(sum)
}
