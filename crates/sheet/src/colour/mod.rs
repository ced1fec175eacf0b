//! Colour in pictures: along the length, hanging from the head with its water line, the bath over time, the label of a packet.
//!
//! What it is: drawings that stay readable in black and white: every colour has its number beside it.
//! What it is not: a promise of how a screen or a printer shows a colour.

pub mod bath;
pub mod fall;
pub mod label;
pub mod strip;

use plan::{colour::Light, dye::Column};
use record::wig::shade::Shade;

/// The colour of a column at a share of its length; soft edges melt between the middles of bands.
pub fn at(column: &Column, smooth: bool, share: f64) -> Shade {
    let Some((_, last)) = column.bands.last() else { return Shade([0; 3]) };
    let mut from = 0.0;
    let mut before: Option<(f64, Light)> = None;
    for (to, light) in &column.bands {
        let middle = (from + to) / 2.0;
        if smooth && share < middle {
            return match before {
                Some((at, other)) => other.towards(*light, (share - at) / (middle - at)).shade(),
                None => light.shade(),
            };
        }
        if !smooth && share <= *to {
            return light.shade();
        }
        before = Some((middle, *light));
        from = *to;
    }
    last.shade()
}
