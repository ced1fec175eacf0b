//! The whole of it: from a wig, its look and the dye on the shelf to baths.
//!
//! What it is: the one pass that pages and the terminal ask. What it is not: the sums (see the other files of this room).

use measure::{
    quantity::{Length, Mass, ThermodynamicTemperature, Time, units},
    say::Say,
};
use record::{
    trade::{
        bath::LACE_SHARE,
        caps::Ground,
        dye::{Bath, Class, Takes, uptake},
        fibres::{self, Fibre},
        heat::Medium,
    },
    wig::{condition::Condition, figures::Wig, zone::Zone},
    workshop::{colour_locks::ColourLock, dyes::Dye},
};

use super::{
    amounts::recipe,
    bath::{self, BathPlan},
    cautions, curve,
    dips::{Dipping, dipping},
    hair::{Hair, hair, length_of},
    level,
    order::{Column, Dip, Stretch, Way, dips},
    steps,
};
use crate::{
    care::{self, Bench, Limits},
    colour::{Light, difference},
    fullness::Fullness,
    inputs::Corner,
    layout::Layout,
    working::Caution,
};

/// What a plan is asked from.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// The wig and what the workshop knows.
    pub bench: &'a Bench<'a>,
    /// As it is now.
    pub condition: &'a Condition,
    /// Its cap laid out.
    pub layout: &'a Layout,
    /// How full it is.
    pub fullness: &'a Fullness,
    /// All dye on the shelf.
    pub dyes: &'a [Dye],
    /// All colour test locks.
    pub locks: &'a [ColourLock],
}

impl<'a> Asked<'a> {
    /// The wig.
    pub fn wig(&self) -> &'a Wig<'a> {
        self.bench.wig
    }
}

/// A fibre that the bath meets, and how it takes the class.
#[derive(Clone, Debug, PartialEq)]
pub struct Met {
    /// The fibre.
    pub fibre: &'static Fibre,
    /// The weft it is, by name; none for the base's own.
    pub lot: Option<String>,
    /// How it takes the class.
    pub takes: Takes,
    /// How much of it there is on the wig.
    pub mass: Mass,
}

/// The plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The class of dye.
    pub class: Class,
    /// The fibres, the base's first.
    pub met: Vec<Met>,
    /// The colours wanted, zone by zone.
    pub columns: Vec<Column>,
    /// The colour it starts from.
    pub base: Light,
    /// The baths, light to dark.
    pub baths: Vec<BathPlan>,
    /// What speaks against it, and what to mind: the heaviest first.
    pub cautions: Vec<Caution>,
    /// All baths, one after another.
    pub time: Time,
}

/// Why there is no bath.
#[derive(Clone, Debug, PartialEq)]
pub enum Stop {
    /// No colours are wanted yet.
    NoLook,
    /// The colour it starts from is not told.
    NoBase,
    /// It cannot be dyed so: why, and what can be done.
    Refused(Caution),
}

impl Stop {
    /// The words, with what to do.
    pub fn say(&self) -> (Say, Say) {
        match self {
            Stop::NoLook => (Say::key("dye.no_look"), Say::key("dye.no_look_do")),
            Stop::NoBase => (Say::key("dye.no_base"), Say::key("dye.no_base_do")),
            Stop::Refused(caution) => (caution.what.clone(), caution.remedy.clone()),
        }
    }
}

/// The class of dye for a wig: as said, else that of the dye meant for it, else the first its fibre takes.
pub fn class_of(wig: &Wig<'_>, dyes: &[Dye]) -> Option<Class> {
    let of_dye = || dyes.iter().filter(|dye| wig.uses_dye(dye.id)).find_map(|dye| dye.class);
    let fibre = wig.fibre();
    let takes = |how: Takes| {
        Class::ALL.into_iter().find(|class| uptake(fibre, *class).takes == how && uptake(fibre, *class).bath.is_some())
    };
    wig.dye_with().or_else(of_dye).or_else(|| takes(Takes::Takes)).or_else(|| takes(Takes::Weak))
}

/// The baths.
///
/// # Errors
/// Why there is none, with what to do.
pub fn plan(asked: &Asked<'_>) -> Result<Plan, Stop> {
    let wig = asked.wig();
    let columns = columns(wig, asked.fullness);
    if columns.is_empty() {
        return Err(Stop::NoLook);
    }
    let base = Light::of(wig.base_shade().ok_or(Stop::NoBase)?);
    let fibre = wig.fibre();
    let class = class_of(wig, asked.dyes).ok_or_else(|| Stop::Refused(cautions::no_bath(fibre)))?;
    let bath = bath_of(fibre, class).map_err(Stop::Refused)?;
    let hair = hair(wig, asked.condition, asked.layout, asked.fullness, asked.bench.lots, &Corner::likely());
    let met = met(&hair, class);
    let rows = level::rows(asked.layout);
    let meant: Vec<&Dye> =
        asked.dyes.iter().filter(|dye| wig.uses_dye(dye.id) && dye.class.is_none_or(|its| its == class)).collect();
    let mut baths = Vec::new();
    for (index, dip) in dips(&columns, base).into_iter().enumerate() {
        let one = Pass { asked, class, bath: &bath, hair: &hair, rows: &rows, meant: &meant, base };
        baths.push(one.bath_plan(index + 1, dip));
    }
    let time = baths.iter().fold(Time::new::<units::minute>(0.0), |sum, bath| sum + curve::whole(&bath.legs));
    let mut plan = Plan { class, met, columns, base, baths, cautions: Vec::new(), time };
    plan.cautions = cautions::all(asked, &plan, &bath);
    Ok(plan)
}

/// The colours wanted, for each zone that is there and has any.
pub fn columns(wig: &Wig<'_>, fullness: &Fullness) -> Vec<Column> {
    let zones = fullness.there();
    let column = |zone: Zone| {
        let along = wig.colour_along(zone)?;
        let band = |index: usize, band: &record::wig::shade::Band| (along.span(index).1, Light::of(band.shade));
        Some(Column { zone, bands: along.bands().iter().enumerate().map(|(index, one)| band(index, one)).collect() })
    };
    zones.into_iter().filter_map(|zone| column(zone.zone)).collect()
}

/// The bath a fibre needs for a class, or why there is none.
fn bath_of(fibre: &'static Fibre, class: Class) -> Result<Bath, Caution> {
    let row = uptake(fibre, class);
    match (row.takes, row.bath) {
        (Takes::Refuses | Takes::RecordedOnly | Takes::Surface, _) => Err(cautions::refused(fibre, class)),
        (_, Some(bath)) => Ok(bath),
        // A class that takes weakly, or that nobody tried, is dyed as the fibre's own best class is.
        (_, None) => Class::ALL
            .into_iter()
            .find_map(|other| uptake(fibre, other).bath)
            .ok_or_else(|| cautions::refused(fibre, class)),
    }
}

fn met(hair: &[Hair], class: Class) -> Vec<Met> {
    let mut all: Vec<Met> = Vec::new();
    for one in hair {
        match all.iter_mut().find(|met| met.fibre.name == one.fibre.name && met.lot == one.lot) {
            Some(met) => met.mass += one.whole(),
            None => all.push(Met {
                fibre: one.fibre,
                lot: one.lot.clone(),
                takes: uptake(one.fibre, class).takes,
                mass: one.whole(),
            }),
        }
    }
    all
}

struct Pass<'a> {
    asked: &'a Asked<'a>,
    class: Class,
    bath: &'a Bath,
    hair: &'a [Hair],
    rows: &'a [level::RowLevel],
    meant: &'a [&'a Dye],
    base: Light,
}

impl Pass<'_> {
    fn bath_plan(&self, number: usize, dip: Dip) -> BathPlan {
        let wig = self.asked.wig();
        let own = wig.fibre();
        let lengths = |zone: Zone| length_of(self.hair, zone);
        let (mut wet, mut takes) = bath::fibre_in(self.hair, &lengths, &dip.stretches, self.class);
        let hair_mass = takes;
        let cap = cap_in(wig, self.class, &dip.stretches);
        wet += cap;
        takes += cap;
        // Spare and hairline fibre goes into every bath whose colour it may be needed in.
        let spare = wig.bath_spare().likely;
        wet += spare;
        takes += spare;
        let candidates = bath::candidates(self.meant, self.asked.locks, own.name, self.base, &dip);
        let (picked, proposal) = bath::choose(&candidates, dip.from, dip.aim);
        let dyes = bath::parts(&candidates, &picked, &proposal.percent, takes);
        let ratio = wig.liquor_ratio().likely.get::<units::ratio>();
        let recipe = recipe(wet, takes, ratio, wig.pot().likely, self.bath.ph);
        let zones: Vec<Zone> = dip.stretches.iter().map(|stretch| stretch.zone).collect();
        let bears = care::limit(self.asked.bench, self.asked.condition, &zones, Medium::Water);
        // What of the cap bears less is told by the checks; fibre that bears less is never heated more.
        let fibre = bears.lowest_of(&[Limits::Fibre, Limits::Label, Limits::Locks]);
        let most = fibre.map_or(BOILS, |part| part.most.get::<units::degree_celsius>().min(BOILS));
        let held = bath::held(self.bath, wig.pot_temperature(), Some(most));
        let legs = curve::curve(self.bath, held);
        let dipping = self.dipping(&dip.stretches);
        let mut bath = BathPlan {
            number,
            wanted: dip.wanted,
            aim: dip.aim,
            reach: difference(dip.wanted, dip.aim),
            from: dip.from,
            off: difference(dip.wanted, proposal.makes),
            makes: proposal.makes,
            stretches: dip.stretches,
            dyes,
            recipe,
            held: ThermodynamicTemperature::new::<units::degree_celsius>(held),
            legs,
            dipping,
            steps: Vec::new(),
            working: Vec::new(),
        };
        let smooth = bath.stretches.iter().any(|stretch| {
            wig.colour_along(stretch.zone).is_some_and(|along| along.smooth() && along.bands().len() > 1)
        });
        bath.steps = steps::steps(&bath, self.class, self.bath, smooth);
        bath.working = steps::working(&bath, self.bath, [hair_mass, cap, spare], ratio, wig);
        bath
    }

    fn dipping(&self, stretches: &[Stretch]) -> Option<Dipping> {
        let wanted: Vec<(Zone, Length, Length)> = stretches
            .iter()
            .filter(|stretch| stretch.way == Way::EndsDown)
            .map(|stretch| {
                let long = length_of(self.hair, stretch.zone);
                (stretch.zone, long * stretch.from, long)
            })
            .collect();
        dipping(self.rows, &wanted)
    }
}

/// An open pot gets no hotter, °C.
const BOILS: f64 = 100.0;

/// What of the cap takes the dye, where roots go in: its polyamide, for a class that polyamide takes.
fn cap_in(wig: &Wig<'_>, class: Class, stretches: &[Stretch]) -> Mass {
    let none = Mass::new::<units::gram>(0.0);
    if uptake(fibres::fibre("polyamide"), class).takes != Takes::Takes {
        return none;
    }
    let roots: Vec<Zone> = stretches.iter().filter(|stretch| stretch.from <= 0.0).map(|stretch| stretch.zone).collect();
    if roots.is_empty() {
        return none;
    }
    let laced = roots.iter().any(|zone| matches!(wig.cap().ground(*zone), Ground::Knotted { .. }));
    let share = if laced { LACE_SHARE.likely } else { LACE_SHARE.low };
    wig.cap_weight().likely * LACE_SHARE.unit.to_base(share)
}
