//! Which dye a fibre takes.
//!
//! What it is: checks of the class of colour. What it is not: how it comes out.

use measure::say::{Arg, Say};
use record::trade::{
    dye::{Class, Takes, uptake},
    fibres::Fibre,
    sources::{JUDGED, PRACTICE},
};

use crate::{
    care::bench::{Case, Check, Met, Told, check, list},
    working::Weight::{Care, Consider, Stop},
};

/// The family.
pub static CHECKS: &[Check] = &[
    check("dye_refused", "rule.dye_refused", Stop, &PRACTICE, refused),
    check("dye_weak", "rule.dye_weak", Consider, &JUDGED, weak),
    check("weft_takes_otherwise", "rule.weft_takes_otherwise", Care, &PRACTICE, weft_otherwise),
];

fn class(case: &Case<'_>) -> Option<Class> {
    if case.kind == "dye" { case.work.choice("dye_class").and_then(Class::read) } else { None }
}

/// The classes a fibre takes in a bath.
fn takes(fibre: &Fibre) -> Option<Arg> {
    let takes = Class::ALL.into_iter().filter(|class| uptake(fibre, *class).takes == Takes::Takes);
    list(takes.map(|class| Arg::Key(class.label())))
}

fn told(met: &Met<'_>, class: Class, key: &'static str) -> Told {
    let takes_it = uptake(met.fibre, class).takes;
    let remedy = match takes(met.fibre) {
        Some(classes) if takes_it == Takes::Refuses => Say::new("care.dye_refused_do", [classes]),
        None if takes_it == Takes::Refuses => Say::key("care.dye_never_do"),
        _ => Say::key("care.dye_weak_do"),
    };
    if takes_it == Takes::Refuses {
        return (Say::new("care.dye_refused", [met.name(), Arg::Key(class.label())]), remedy);
    }
    (Say::new(key, [met.name(), Arg::Key(class.label()), Arg::Key(takes_it.label())]), remedy)
}

fn refused(case: &Case<'_>) -> Option<Told> {
    let class = class(case)?;
    let met = case.met();
    let first = met.first().filter(|met| uptake(met.fibre, class).takes == Takes::Refuses)?;
    Some(told(first, class, "care.dye_takes"))
}

fn weak(case: &Case<'_>) -> Option<Told> {
    let class = class(case)?;
    let met = case.met();
    let first = met.first().filter(|met| matches!(uptake(met.fibre, class).takes, Takes::Weak | Takes::Untested))?;
    Some(told(first, class, "care.dye_takes"))
}

/// Weft of another fibre in the same bath: what takes it otherwise comes out otherwise.
fn weft_otherwise(case: &Case<'_>) -> Option<Told> {
    let class = class(case)?;
    let met = case.met();
    let (first, others) = met.split_first()?;
    let other = others.iter().find(|met| {
        met.fibre.name != first.fibre.name && uptake(met.fibre, class).takes != uptake(first.fibre, class).takes
    })?;
    Some((told(other, class, "care.dye_takes").0, Say::key("care.weft_takes_otherwise_do")))
}
