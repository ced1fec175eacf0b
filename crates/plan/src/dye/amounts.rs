//! Dye, water, vinegar and wetting agent of one bath.
//!
//! What it is: depth of shade and liquor ratio as textile practice reckons them. What it is not: which depth (see the colour
//! room) or how strong a dye is.

use measure::quantity::{Mass, Volume, units};
use record::{
    id::LotId,
    trade::bath::{FILLED, LIQUOR, VINEGAR, WETTING, acetic},
    workshop::dyes::Dose,
};

/// One dye of a bath.
#[derive(Clone, Debug, PartialEq)]
pub struct DyePart {
    /// The lot, where it is one on the shelf.
    pub lot: Option<LotId>,
    /// As its label calls it.
    pub name: String,
    /// On the weight of fibre, percent: low, likely, high.
    pub percent: [f64; 3],
    /// How much: low, likely, high.
    pub dose: [Dose; 3],
    /// Caps of the bottle, where it is a liquid.
    pub caps: Option<f64>,
    /// Of a solution of 1 g in 100 mL, where so little powder is better measured than weighed.
    pub solution: Option<Volume>,
    /// What is left on the shelf before, g or mL.
    pub on_shelf: Option<f64>,
    /// On how many own test locks it rests.
    pub locks: usize,
}

impl DyePart {
    /// What is left after the bath, g or mL; below nothing where there is too little.
    pub fn left(&self) -> Option<f64> {
        self.on_shelf.map(|parts| parts - self.dose[1].parts())
    }
}

/// Less powder than this is measured as a solution rather than weighed, g: a kitchen scale shows whole or tenth grams.
const WEIGHED_FROM: f64 = 5.0;
/// The solution, g in 100 mL.
pub const SOLUTION: f64 = 1.0;

/// Dye for so much fibre at a depth in percent: g, or mL of a liquid.
pub fn dye(fibre: Mass, percent: f64) -> f64 {
    fibre.get::<units::gram>() * percent / 100.0
}

/// The solution that holds so many grams, at so many g in 100 mL.
pub fn solution(grams: f64, strength: f64) -> Volume {
    Volume::new::<units::milliliter>(grams / strength * 100.0)
}

/// Whether so little is measured as a solution.
pub fn as_solution(grams: f64) -> Option<Volume> {
    (grams > 0.0 && grams < WEIGHED_FROM).then(|| solution(grams, SOLUTION))
}

/// Concentration in the bath, g/L, of a depth in percent at a liquor ratio.
pub fn concentration(percent: f64, ratio: f64) -> f64 {
    10.0 * percent / ratio
}

/// Whether a pot holds the bath.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Room {
    /// It holds what is wanted.
    Holds,
    /// It holds less than wanted, but locks still float.
    Tight,
    /// Locks press together.
    TooSmall {
        /// The smallest pot that would do.
        needs: Volume,
    },
}

/// What a bath takes besides dye.
#[derive(Clone, Debug, PartialEq)]
pub struct Recipe {
    /// All fibre that gets wet, with what of the cap does.
    pub wet: Mass,
    /// That of it which takes the dye.
    pub takes: Mass,
    /// The bath.
    pub bath: Volume,
    /// Litres for a kilogram of fibre, as it comes out.
    pub ratio: f64,
    /// Whether the pot holds it.
    pub room: Room,
    /// Vinegar of 5 %, where acid is needed; the label goes first, pH paper decides.
    pub vinegar: Option<Volume>,
    /// Wetting agent.
    pub wetting: Volume,
}

/// The least that hides the thermometer's bulb and lets a lock swim, L. Common practice, no source.
const LEAST: f64 = 1.0;

/// The bath for so much fibre in a pot.
pub fn recipe(wet: Mass, takes: Mass, ratio: f64, pot: Volume, ph: &str) -> Recipe {
    let kilograms = wet.get::<units::kilogram>();
    let filled = FILLED.unit.to_base(FILLED.high);
    let holds = pot.get::<units::liter>() * filled;
    let wanted = (kilograms * ratio).max(LEAST);
    let least = (kilograms * LIQUOR.low.min(ratio)).max(LEAST);
    let (litres, room) = if wanted <= holds {
        (wanted, Room::Holds)
    } else if least <= holds {
        (holds, Room::Tight)
    } else {
        (wanted, Room::TooSmall { needs: Volume::new::<units::liter>(least / filled) })
    };
    let bath = Volume::new::<units::liter>(litres);
    let vinegar = acetic(ph).map(|share| {
        let acid = takes.get::<units::gram>() * share.unit.to_base(share.likely);
        Volume::new::<units::milliliter>(acid / VINEGAR.unit.to_base(VINEGAR.likely))
    });
    Recipe {
        wet,
        takes,
        bath,
        ratio: if kilograms > 0.0 { litres / kilograms } else { ratio },
        room,
        vinegar,
        wetting: Volume::new::<units::milliliter>(litres * WETTING.likely),
    }
}
