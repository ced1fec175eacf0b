//! Burns, fire and fumes of a tool.
//!
//! What it is: what stands beside every hot step. What it is not: a rule that stops one.

use measure::say::{Arg, Say};
use record::{
    trade::{
        burns::{Surface, contact, scald},
        heat::{Medium, limit},
    },
    wig::figures::Wig,
};

use super::{
    of_wig::cap_heated,
    plan::lasts,
    tool::{Tool, celsius, of_fact},
};
use crate::working::{Caution, Weight};

/// Those of a tool on a wig.
pub fn of(wig: &Wig<'_>, tool: &Tool) -> Vec<Caution> {
    let shows = celsius(tool.shows);
    let heat = || Arg::Temperature(tool.shows);
    let most = limit(wig.fibre(), Medium::Dryer);
    let mut all = vec![Caution {
        weight: Weight::Care,
        what: Say::key("heat.never_worn"),
        remedy: Say::key("heat.never_worn_do"),
    }];
    let mut care = |weight, what, remedy| all.push(Caution { weight, what, remedy: Say::key(remedy) });
    match tool.medium {
        Medium::Water | Medium::Steam => {
            let remedy = if tool.medium == Medium::Steam { "heat.steam_burns_do" } else { "heat.scalds_do" };
            match scald(shows) {
                Some(time) if time < 0.5 => care(Weight::Care, Say::new("heat.scalds_at_once", [heat()]), remedy),
                Some(time) => care(Weight::Care, Say::new("heat.scalds", [heat(), lasts(time)]), remedy),
                None => {}
            }
            care(Weight::Consider, Say::key("heat.slow_bound"), "heat.slow_bound_do");
        }
        Medium::Iron => match contact(Surface::Metal, shows) {
            Some(time) if time < 0.5 => care(Weight::Care, Say::new("heat.burns_at_once", [heat()]), "heat.burns_do"),
            Some(time) => care(Weight::Care, Say::new("heat.burns", [heat(), lasts(time)]), "heat.burns_do"),
            None => {}
        },
        Medium::Dryer => {
            care(Weight::Care, Say::new("heat.dryer", [Arg::Temperature(of_fact(most, most.likely))]), "heat.dryer_do")
        }
    }
    if matches!(tool.medium, Medium::Iron | Medium::Dryer) {
        care(Weight::Care, Say::key("heat.fire"), "heat.fire_do");
    }
    if tool.medium != Medium::Iron && !cap_heated(wig) {
        care(Weight::Care, Say::key("heat.cap_out"), "heat.cap_out_do");
    }
    if matches!(wig.fibre().name, "modacrylic" | "chlorofibre" | "vinylidene" | "unknown") {
        care(Weight::Consider, Say::key("heat.fumes"), "heat.fumes_do");
    }
    all
}
