//! Glue and solvents: what lets go in heat, and what harms fibre.
//!
//! What it is: checks of adhesives and spirit. What it is not: dye near glue (see `dye`).

use measure::say::{Arg, Say};
use record::{
    trade::{
        heat::Medium,
        solvent::{harm_to, solvent},
        sources::{JUDGED, PRACTICE},
    },
    wig::work::Work,
};

use super::heat::limit_of;
use crate::{
    care::{
        before::overruled,
        bench::{Case, Check, Told, check, choice, over},
        limit::Limits,
    },
    working::Weight::{Consider, Stop},
};

/// The family.
pub static CHECKS: &[Check] = &[
    check("glue_meets_heat", "rule.glue_meets_heat", Stop, &JUDGED, glue_meets_heat),
    check("solvent_near_fibre", "rule.solvent_near_fibre", Consider, &PRACTICE, solvent_near_fibre),
];

fn glue_meets_heat(case: &Case<'_>) -> Option<Told> {
    let heating = case.heating.filter(|heating| heating.medium != Medium::Iron)?;
    let heat = heating.heat?;
    let limit = limit_of(case, heating.medium);
    let glue = limit.lowest_of(&[Limits::Glue]).filter(|part| over(heat, part.most))?;
    Some((
        Say::new(
            "care.glue_meets_heat",
            [glue.name.clone().into(), Arg::Temperature(glue.most), Arg::Temperature(heat)],
        ),
        Say::new("care.glue_meets_heat_do", [Arg::Temperature(glue.most)]),
    ))
}

/// What brings solvent to the wig; recalled: spirit is made unfit to drink with ketones or esters at times, and removers
/// for spirit glue hold them.
fn brings_solvent(work: &Work) -> Option<&'static str> {
    match work.kind().name {
        "glue" => work.choice("glue").filter(|glue| *glue == "spirit_glue"),
        "disinfect" => work.choice("disinfected_with").filter(|with| *with == "alcohol_spray"),
        "dye" => work.choice("dye_class").filter(|class| *class == "ink"),
        _ => None,
    }
}

fn solvent_near_fibre(case: &Case<'_>) -> Option<Told> {
    let brings = brings_solvent(case.work)?;
    // Judged once on this wig, it is not told again for the same thing.
    let judged = |done: &record::history::fold::Done| {
        brings_solvent(&done.work) == Some(brings)
            && overruled(&done.work).iter().any(|rule| rule.name == "solvent_near_fibre")
    };
    if case.bench.wig.state().works().iter().any(judged) {
        return None;
    }
    let told = case.met().into_iter().find_map(|met| {
        let harms = ["acetone", "ethyl_acetate"].into_iter().filter_map(solvent);
        // Hair that is only dried out is no ruin.
        let (by, harm) = harms
            .filter_map(|solvent| harm_to(met.fibre, solvent).map(|harm| (solvent, harm)))
            .find(|(_, harm)| harm.does != "solvent.dries_out")?;
        Some(Say::new(
            "care.solvent_near_fibre",
            [Arg::Key(choice(brings)), Arg::Key(by.label), met.name(), Arg::Key(harm.does)],
        ))
    })?;
    Some((told, Say::key("care.solvent_near_fibre_do")))
}
