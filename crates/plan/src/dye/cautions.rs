//! What speaks against a dye plan, and what to mind.
//!
//! What it is: what only the plan knows: reach, depth, pot, stock, cap. What it is not: the checks before a step of work (see
//! `care`), which run on each bath besides.

use measure::{
    order,
    quantity::{ThermodynamicTemperature, Volume, units},
    say::{Arg, Say},
};
use record::trade::{
    bath::{PHOTO_WITHIN, depth_named},
    dye::{Bath, Class, Takes, uptake},
    fibres::{self, Fibre},
};

use super::{
    amounts::Room,
    order::Way,
    plan::{Asked, Plan},
};
use crate::{
    care,
    colour::{Light, propose::DEEPEST, reach, reach::SEEN},
    working::{Caution, Weight},
};

fn caution(weight: Weight, what: Say, remedy: Say) -> Caution {
    Caution { weight, what, remedy }
}

/// Key of a fibre's label.
pub fn fibre_label(fibre: &Fibre) -> &'static str {
    match fibre.name {
        "modacrylic" => "choice.modacrylic",
        "polyester" => "choice.polyester",
        "human_hair" => "choice.human_hair",
        "chlorofibre" => "choice.chlorofibre",
        "polyamide" => "choice.polyamide",
        "polypropylene" => "choice.polypropylene",
        "vinylidene" => "choice.vinylidene",
        _ => "dye.unknown_fibre",
    }
}

/// Names with a comma between.
pub(super) fn list(says: impl IntoIterator<Item = Say>) -> Option<Say> {
    says.into_iter().reduce(|one, next| Say::new("dye.list", [Arg::from(one), next.into()]))
}

/// The classes a fibre takes in a bath.
fn taken(fibre: &Fibre) -> Option<Say> {
    let takes = Class::ALL.into_iter().filter(|class| uptake(fibre, *class).takes == Takes::Takes);
    list(takes.map(|class| Say::key(class.label())))
}

/// A fibre that no bath dyes.
pub fn no_bath(fibre: &Fibre) -> Caution {
    caution(Weight::Stop, Say::new("dye.no_bath", [Arg::Key(fibre_label(fibre))]), Say::key("dye.surface_only_do"))
}

/// A class that a fibre does not take in a bath.
pub fn refused(fibre: &Fibre, class: Class) -> Caution {
    let takes = uptake(fibre, class).takes;
    let what = Say::new("dye.takes", [Arg::Key(fibre_label(fibre)), Arg::Key(class.label()), Arg::Key(takes.label())]);
    let remedy = match (takes, taken(fibre)) {
        (Takes::RecordedOnly, _) => Say::key("dye.recorded_only_do"),
        (Takes::Surface, _) => Say::key("dye.surface_do"),
        (_, Some(classes)) => Say::new("dye.take_instead", [Arg::from(classes)]),
        (_, None) => Say::key("dye.surface_only_do"),
    };
    caution(Weight::Stop, what, remedy)
}

/// Everything, the heaviest first.
pub fn all(asked: &Asked<'_>, plan: &Plan, bath: &Bath) -> Vec<Caution> {
    let mut all = Vec::new();
    unreached(plan, &mut all);
    checked(asked, plan, &mut all);
    pressure(plan, bath, &mut all);
    for one in &plan.baths {
        room(asked, one, &mut all);
        dyes(one, &mut all);
        ways(one, &mut all);
    }
    cap(asked, plan, &mut all);
    if plan.baths.iter().any(|bath| bath.dyes.iter().any(|dye| dye.locks == 0)) {
        all.push(caution(Weight::Consider, Say::key("dye.untried"), Say::key("dye.untried_do")));
    }
    if plan.baths.is_empty() {
        all.push(caution(Weight::Consider, Say::key("dye.nothing_to_dye"), Say::key("dye.nothing_to_dye_do")));
    } else {
        let (hazard, _) = plan.class.hazard();
        all.push(caution(Weight::Care, Say::key(hazard), Say::key("dye.hazard_do")));
    }
    order::sort_by(&mut all, &|a, b| b.weight.cmp(&a.weight));
    all
}

/// Colours that this base cannot become.
fn unreached(plan: &Plan, all: &mut Vec<Caution>) {
    let mut seen: Vec<Light> = Vec::new();
    for (_, wanted) in plan.columns.iter().flat_map(|column| &column.bands) {
        if seen.contains(wanted) {
            continue;
        }
        seen.push(*wanted);
        let reach = reach(plan.base, *wanted);
        if let Some(why) = reach.why {
            let shade = |light: Light| Arg::Text(light.shade().to_string());
            let what = Say::new("dye.unreached", [shade(*wanted), shade(plan.base), Arg::from(why)]);
            let remedy = Say::new("dye.unreached_do", [shade(reach.nearest), Arg::from(reach.off.words)]);
            all.push(caution(Weight::Stop, what, remedy));
        }
    }
}

/// The checks before a step, run on each bath as it would be recorded.
fn checked(asked: &Asked<'_>, plan: &Plan, all: &mut Vec<Caution>) {
    for bath in &plan.baths {
        let Some(work) = bath.work(plan.class, asked.wig().pot_temperature()) else { continue };
        for finding in care::before(asked.bench, asked.condition, &work) {
            let one = caution(finding.rule.weight, finding.what, finding.remedy);
            if !all.contains(&one) {
                all.push(one);
            }
        }
    }
}

/// Full depth that needs pressure, which no kitchen has.
fn pressure(plan: &Plan, bath: &Bath, all: &mut Vec<Caution>) {
    let celsius = |degrees: f64| Arg::Temperature(ThermodynamicTemperature::new::<units::degree_celsius>(degrees));
    let Some(full) = bath.full_depth else { return };
    let deep = plan
        .baths
        .iter()
        .flat_map(|bath| &bath.dyes)
        .any(|dye| matches!(depth_named(plan.class, dye.percent[1] / 100.0).name, "deep" | "black"));
    let what = Say::new("dye.full_depth", [celsius(full.high), celsius(bath.temperature.likely)]);
    let (weight, remedy) =
        if deep { (Weight::Stop, "dye.full_depth_deep_do") } else { (Weight::Care, "dye.full_depth_do") };
    all.push(caution(weight, what, Say::key(remedy)));
}

fn room(asked: &Asked<'_>, bath: &super::BathPlan, all: &mut Vec<Caution>) {
    let pot = asked.wig().pot().likely;
    let number = Arg::Count(bath.number as i64);
    match bath.recipe.room {
        Room::Holds => {}
        Room::Tight => all.push(caution(
            Weight::Consider,
            Say::new("dye.pot_tight", [number, Arg::Volume(pot), Arg::Number(bath.recipe.ratio, 0)]),
            Say::key("dye.pot_tight_do"),
        )),
        Room::TooSmall { needs } => {
            let needs = Volume::new::<units::liter>(libm::ceil(needs.get::<units::liter>() * 2.0) / 2.0);
            all.push(caution(
                Weight::Stop,
                Say::new("dye.pot_small", [number, Arg::Volume(pot), Arg::Mass(bath.recipe.wet)]),
                Say::new("dye.pot_small_do", [Arg::Volume(needs)]),
            ));
        }
    }
}

fn dyes(bath: &super::BathPlan, all: &mut Vec<Caution>) {
    let number = || Arg::Count(bath.number as i64);
    for dye in &bath.dyes {
        if let Some(short) = dye.left().filter(|left| *left < 0.0) {
            let parts = dye.dose[1].parts();
            all.push(caution(
                Weight::Stop,
                Say::new(
                    "dye.stock_short",
                    [number(), Arg::Text(dye.name.clone()), Arg::Number(parts, 2), Arg::Number(parts + short, 2)],
                ),
                Say::key("dye.stock_short_do"),
            ));
        }
        if dye.percent[1] >= DEEPEST * 0.999 {
            all.push(caution(
                Weight::Care,
                Say::new("dye.deepest", [number(), Arg::Number(DEEPEST, 0)]),
                Say::key("dye.deepest_do"),
            ));
        }
    }
    // What no base could reach was told already.
    if bath.off.amount >= SEEN && bath.reach.amount < SEEN {
        all.push(caution(
            Weight::Care,
            Say::new("dye.hue_off", [number(), Arg::from(bath.off.words.clone())]),
            Say::key("dye.hue_off_do"),
        ));
    }
}

/// Levels further apart than this are not dipped in one go. Common practice, no source.
const APART_CM: f64 = 3.0;

fn ways(bath: &super::BathPlan, all: &mut Vec<Caution>) {
    let number = || Arg::Count(bath.number as i64);
    if bath.stretches.iter().any(|stretch| stretch.way == Way::Wrapped) {
        all.push(caution(Weight::Care, Say::new("dye.wrapped", [number()]), Say::key("dye.wrapped_do")));
    }
    if let Some(dipping) = &bath.dipping {
        let spread = dipping.spread();
        if spread.get::<units::centimeter>() > APART_CM {
            all.push(caution(
                Weight::Consider,
                Say::new("dye.levels_apart", [number(), Arg::Length(spread)]),
                Say::key("dye.levels_apart_do"),
            ));
        }
    }
}

/// The cap's own polyamide, where roots go in.
fn cap(asked: &Asked<'_>, plan: &Plan, all: &mut Vec<Caution>) {
    let roots = plan.baths.iter().any(|bath| bath.stretches.iter().any(|stretch| stretch.from <= 0.0));
    let takes = uptake(fibres::fibre("polyamide"), plan.class).takes;
    if roots && matches!(takes, Takes::Takes | Takes::Weak) {
        all.push(caution(
            Weight::Care,
            Say::new("dye.cap_takes", [Arg::Key(takes.label())]),
            Say::key(if takes == Takes::Takes { "dye.cap_takes_do" } else { "dye.cap_weak_do" }),
        ));
    }
    let own = asked.wig().fibre().name;
    if asked.locks.iter().any(|lock| lock.fibre.name == own && lock.seen_by != "typed") {
        let within = Arg::Number(PHOTO_WITHIN.likely, 0);
        all.push(caution(
            Weight::Consider,
            Say::new("dye.photo_is_photo", [within]),
            Say::key("dye.photo_is_photo_do"),
        ));
    }
}
