//! Whether a base can become a colour at all.
//!
//! What it is: dye only adds absorption, so that a base goes darker in each band and never lighter; where the wanted colour
//! is lighter in some band, the nearest that can be reached is shown. What it is not: bleaching, which is not planned here.

use measure::say::{Arg, Say};

use super::{
    differ::{Difference, difference},
    light::{Absorbs, Light},
};

/// What a base can reach.
#[derive(Clone, Debug, PartialEq)]
pub struct Reach {
    /// The nearest colour that dye can make of it.
    pub nearest: Light,
    /// How that differs from what is wanted.
    pub off: Difference,
    /// The bands in which the base is darker already: red, green, blue.
    pub blocked: [bool; 3],
    /// Why, where it cannot be reached.
    pub why: Option<Say>,
}

impl Reach {
    /// Whether it can be reached so that the eye is content.
    pub fn reached(&self) -> bool {
        self.why.is_none()
    }
}

/// From here on a base is said not to reach a colour: anybody sees the difference.
pub const SEEN: f64 = 5.0;

const PARTS: [&str; 3] = ["colour.part_red", "colour.part_green", "colour.part_blue"];

/// What a base can reach of a wanted colour.
pub fn reach(base: Light, wanted: Light) -> Reach {
    let (has, wants) = (base.absorbs(), wanted.absorbs());
    let mut nearest = Absorbs([0.0; 3]);
    let mut blocked = [false; 3];
    for (band, blocked) in blocked.iter_mut().enumerate() {
        *blocked = has.0[band] > wants.0[band];
        nearest.0[band] = has.0[band].max(wants.0[band]);
    }
    let nearest = nearest.light();
    let off = difference(wanted, nearest);
    let why = (off.amount >= SEEN).then(|| {
        let parts: Vec<Say> =
            PARTS.iter().zip(blocked).filter(|(_, blocked)| *blocked).map(|(key, _)| Say::key(key)).collect();
        let parts = parts
            .into_iter()
            .reduce(|one, next| Say::new("colour.and", [Arg::from(one), next.into()]))
            .unwrap_or_else(|| Say::key("colour.part_all"));
        Say::new("colour.base_darker", [Arg::from(parts)])
    });
    Reach { nearest, off, blocked, why }
}

/// Whether `over` can be dyed on top of `under` without missing it by more than the eye sees.
pub fn nests(under: Light, over: Light) -> bool {
    reach(under, over).off.amount < 2.5
}
