//! The temperature that meets the fibre: what was said of the tool, or the middle of the window.
//!
//! What it is: kettles, steam with air, boiling by height, what a fibre cannot bear at all. What it is not: whether it sets.

use measure::{
    quantity::{Length, Mass, Ratio, ThermodynamicTemperature, units},
    say::{Arg, Say},
};
use record::{
    history::entry::Of,
    trade::{
        damage::{self, Effect},
        fact::Fact,
        heat::{Medium, window},
        soaking::{self, Span},
    },
    wig::figures::Wig,
    workshop::locks::OwnWindow,
};
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

use super::water::{Pour, air_for, boils_at, moist_steam};
use crate::{
    lengths::said::{Problem, choice, said, typed},
    working::{Ground, Line, line},
};

/// The tool, ready to be put to a lock.
#[derive(Clone, Debug, PartialEq)]
pub struct Tool {
    /// How it heats.
    pub medium: Medium,
    /// What its thermometer or dial says, and what is recorded.
    pub shows: ThermodynamicTemperature,
    /// What meets the fibre at the beginning.
    pub meets: ThermodynamicTemperature,
    /// The hottest that may meet it: steam without air drawn in, a kettle with little water in the fibre.
    pub at_most: ThermodynamicTemperature,
    /// How fast it falls, K/s: slowest, likely, fastest.
    pub falls: [f64; 3],
    /// Whether it is a kettle poured over.
    pub poured: bool,
    /// Where water boils here.
    pub boils: ThermodynamicTemperature,
    /// The working.
    pub working: Vec<Line>,
}

pub(crate) fn celsius(heat: ThermodynamicTemperature) -> f64 {
    heat.get::<degree_celsius>()
}

pub(crate) fn of_celsius(amount: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(amount)
}

pub(crate) fn of_fact(fact: &Fact, amount: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(fact.unit.to_base(amount))
}

pub(crate) fn from_span(span: &Span) -> Ground {
    Ground::Assumed { source: span.source, sure: span.sure }
}

/// How a wig is to be heated: as said, else the first way that sets its fibre without a test.
pub fn medium(wig: &Wig<'_>) -> Medium {
    choice(wig, "set_medium", Of::Wig).and_then(Medium::read).unwrap_or(Medium::Water)
}

/// The tool of a wig.
///
/// # Errors
/// The field that cannot be: above boiling, above melting, no altitude of this atmosphere.
pub fn tool(wig: &Wig<'_>, medium: Medium, own: Option<&OwnWindow>) -> Result<Tool, Problem> {
    let fibre = wig.fibre();
    let window = window(fibre, medium);
    let height: Length = said(wig, "altitude", Of::Wig)
        .map_or(Length::new::<units::meter>(0.0), |height: record::wig::figure::Figure<Length>| height.likely);
    let boils = boils_at(height)
        .ok_or_else(|| Problem::new("altitude", Of::Wig, "heat.altitude_beyond", [Arg::Run(height)]))?;
    let mut working = Vec::new();
    if medium.wet() {
        working.push(Line {
            name: Say::key("heat.boils"),
            sum: Say::new("heat.boils_sum", [degrees(boils), Arg::Number(height.get::<units::meter>(), 0)]),
            ground: Ground::Assumed {
                source: &record::trade::sources::STEAM_TABLES,
                sure: record::trade::fact::Sure::High,
            },
        });
    }
    let typed = typed(wig, "set_temperature", Of::Wig).and_then(|typed| typed.temperature());
    let usual = window.range().map_or(of_fact(&window.limit, window.limit.likely), |range| {
        let likely = of_fact(range, range.likely);
        // What held on this bench is better than the table's middle.
        match own.and_then(|own| own.held_from.zip(own.held_to)) {
            Some((from, to)) => within(likely, from, to),
            None => likely,
        }
    });
    let shows = typed.unwrap_or_else(|| if medium.wet() { within(usual, of_celsius(0.0), boils) } else { usual });
    if let Some(typed) = typed {
        if let Some(harm) = ruin(fibre)
            && typed >= harm.0
        {
            return Err(Problem::new(
                "set_temperature",
                Of::Wig,
                "heat.above_melting",
                [Arg::Temperature(typed), Arg::Key(harm.1.label()), Arg::Temperature(harm.0)],
            ));
        }
        if medium.wet() && typed.value > boils.value + 0.5 {
            return Err(Problem::new(
                "set_temperature",
                Of::Wig,
                "heat.above_boiling",
                [Arg::Temperature(typed), degrees(boils), Arg::Number(height.get::<units::meter>(), 0)],
            ));
        }
    }
    let mut tool = Tool { medium, shows, meets: shows, at_most: shows, falls: [0.0; 3], poured: false, boils, working };
    match medium {
        Medium::Water if choice(wig, "water_way", Of::Wig) == Some("poured") => pour(wig, &mut tool),
        Medium::Steam => steam(wig, &mut tool, typed, window.range(), height),
        _ => {}
    }
    Ok(tool)
}

fn within(
    heat: ThermodynamicTemperature,
    low: ThermodynamicTemperature,
    high: ThermodynamicTemperature,
) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(measure::order::within(heat.value, low.value, high.value))
}

/// To a tenth where the scale is °C, for water's own figures.
fn degrees(heat: ThermodynamicTemperature) -> Arg {
    Arg::Temperature(heat)
}

/// Where a fibre melts or decomposes, at the lowest.
pub fn ruin(fibre: &record::trade::fibres::Fibre) -> Option<(ThermodynamicTemperature, Effect)> {
    damage::findings(fibre)
        .filter(|finding| matches!(finding.effect, Effect::Melts | Effect::Decomposes))
        .min_by(|one, other| one.figure.low.total_cmp(&other.figure.low))
        .map(|finding| (of_fact(&finding.figure, finding.figure.low), finding.effect))
}

/// Water poured over wet fibre mixes: judged by what it becomes.
fn pour(wig: &Wig<'_>, tool: &mut Tool) {
    let kilograms = |mass: Mass| mass.get::<units::kilogram>();
    let water = said::<Mass>(wig, "poured_water", Of::Wig).map_or(POURED_USUALLY, |water| kilograms(water.likely));
    let whole = wig.whole_weight().likely - wig.cap_weight().likely;
    let fibre =
        said::<Mass>(wig, "poured_fibre", Of::Wig).map_or(kilograms(whole).max(0.01), |fibre| kilograms(fibre.likely));
    let carries = &soaking::CARRIES;
    let pour = |carries| Pour {
        water,
        heat: celsius(tool.shows),
        fibre,
        specific_heat: soaking::stuff_of(wig.fibre().name).specific_heat,
        carries,
        cool: soaking::ROOM.likely,
    };
    tool.meets = of_celsius(pour(carries.likely).mixed());
    tool.at_most = of_celsius(pour(carries.low).mixed());
    let cools = &soaking::BOWL_COOLS;
    tool.falls = [cools.low / 60.0, cools.likely / 60.0, cools.high / 60.0];
    tool.poured = true;
    let mass = |kilograms| Arg::Mass(Mass::new::<units::kilogram>(kilograms));
    tool.working.push(Line {
        name: Say::key("heat.mixed"),
        sum: Say::new(
            "heat.mixed_sum",
            [
                mass(water),
                Arg::Temperature(tool.shows),
                mass(fibre),
                Arg::Number(carries.likely, 1),
                Arg::Temperature(tool.meets),
                Arg::Temperature(tool.at_most),
            ],
        ),
        ground: from_span(carries),
    });
    tool.working.push(Line {
        name: Say::key("heat.bowl"),
        sum: Say::new("heat.bowl_sum", [Arg::Number(cools.likely, 1)]),
        ground: from_span(cools),
    });
}

/// A kettle, kg. Our own judgement.
pub const POURED_USUALLY: f64 = 1.7;

/// Open steam: as hot at the lock as its dew point with the air it drew in.
fn steam(
    wig: &Wig<'_>,
    tool: &mut Tool,
    typed: Option<ThermodynamicTemperature>,
    range: Option<&'static Fact>,
    height: Length,
) {
    let share = said::<Ratio>(wig, "steam_air", Of::Wig).map(|air| air.likely.get::<units::ratio>());
    // A measured share of air goes before a window's middle, a measured temperature before both.
    if let (None, Some(share)) = (typed, share)
        && let Some(dew) = moist_steam(share, height)
    {
        tool.shows = dew;
        tool.meets = dew;
    }
    tool.at_most = tool.meets;
    let percent = |heat| air_for(heat, height).map(Arg::Percent);
    if let Some(now) = percent(tool.meets) {
        tool.working.push(Line {
            name: Say::key("heat.dew_point"),
            sum: Say::new("heat.dew_point_sum", [now, Arg::Temperature(tool.meets)]),
            ground: Ground::Reckoned,
        });
    }
    let wanted = range.map(|range| (percent(of_fact(range, range.high)), percent(of_fact(range, range.low))));
    if let Some((Some(least), Some(most))) = wanted {
        tool.working.push(line(Say::key("heat.air_wanted"), Say::new("heat.air_wanted_sum", [least, most])));
    }
}
