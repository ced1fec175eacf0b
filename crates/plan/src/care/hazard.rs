//! The one hazard box of a hot or chemical step.
//!
//! What it is: which cautions stand beside a step. What it is not: a rule that speaks for or against it (see `before`).

use measure::quantity::ThermodynamicTemperature;
use record::{
    trade::{dye::Class, fact::Source, heat::Medium, sources::PRACTICE},
    wig::work::Work,
};
use uom::si::thermodynamic_temperature::degree_celsius;

use super::bench::{heating, in_bath};

/// The box.
#[derive(Clone, Debug, PartialEq)]
pub struct Hazard {
    /// Keys of its sentences, in order; the last one puts label, data sheet, local rules and licensed practice first.
    pub lines: Vec<&'static str>,
    /// Where its first caution comes from.
    pub source: &'static Source,
}

/// Water scalds from about here. Common practice, no source: hot taps are kept below it.
const SCALDS: f64 = 50.0;

fn scalds(heat: Option<ThermodynamicTemperature>) -> bool {
    heat.is_some_and(|heat| heat.get::<degree_celsius>() >= SCALDS)
}

/// The box of a piece of work; none where it is neither hot nor chemical.
pub fn hazard(work: &Work) -> Option<Hazard> {
    let mut lines: Vec<&'static str> = Vec::new();
    let mut source = &PRACTICE;
    match work.kind().name {
        "dye" => {
            let (line, from) = work.choice("dye_class").and_then(Class::read)?.hazard();
            lines.push(line);
            source = from;
        }
        "colour_lock" | "count_dye" => {
            let class = work.choice("dye_class").and_then(Class::read).unwrap_or(Class::Acid);
            let (line, from) = class.hazard();
            lines.push(line);
            source = from;
        }
        "glue" => lines.push(match work.choice("glue")? {
            "spirit_glue" => "hazard.spirit_glue",
            "hot_melt" => "hazard.hot_melt",
            _ if work.choice("glued_to") == Some("skin") => "hazard.skin",
            "water_glue" | "silicone_glue" => "hazard.glue",
            _ => return None,
        }),
        "product" if work.yes("flammable").unwrap_or(work.choice("product") == Some("hairspray")) => {
            lines.push("hazard.aerosol");
        }
        "disinfect" => match work.choice("disinfected_with") {
            Some("alcohol_spray") => lines.push("hazard.alcohol"),
            Some("disinfecting_wash") => lines.push("hazard.disinfectant"),
            _ => {}
        },
        "test_lock" => lines.push(work.choice("medium").and_then(Medium::read).map_or("hazard.hot", Medium::caution)),
        _ => {}
    }
    if let Some(heating) = heating(work) {
        // A lukewarm bath is no hazard, nor is a dryer without a figure any news.
        let hot = match work.kind().name {
            "heat_set" | "straighten" | "dress" | "reset" => true,
            "dye" => in_bath(work) && scalds(heating.heat),
            _ => scalds(heating.heat),
        };
        if hot {
            lines.push(heating.medium.caution());
        }
    }
    if work.choice("glue") == Some("spirit_glue") && work.choice("glued_to") == Some("skin") {
        lines.push("hazard.skin");
    }
    if lines.is_empty() {
        return None;
    }
    lines.push("hazard.first");
    Some(Hazard { lines, source })
}
