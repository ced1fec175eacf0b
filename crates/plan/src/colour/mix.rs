//! What comes out when dyes go onto a base.
//!
//! What it is: single-constant Kubelka-Munk as textile practice uses it: K/S of the base plus that of each dye by its depth.
//! What it is not: real uptake, which test locks tell.

use super::light::{Absorbs, Light};

/// A base after dyes: each by what one unit of depth absorbs, and its depth.
pub fn dyed(base: Light, dyes: &[(Absorbs, f64)]) -> Light {
    let mut sum = base.absorbs();
    for (dye, depth) in dyes {
        for (band, each) in sum.0.iter_mut().zip(dye.0) {
            *band += each * depth;
        }
    }
    sum.light()
}
