//! The bath: what keeps dye from fibre, and how warm it must be.
//!
//! What it is: checks of putting colour on. What it is not: which dye a fibre takes (see `colour`).

use measure::say::{Arg, Say};
use record::{
    trade::{
        dye::{Bath, Class, uptake},
        heat::Medium,
        sources::{JUDGED, PRACTICE},
    },
    wig::condition::ZoneCondition,
};

use super::heat::limit_of;
use crate::{
    care::{
        bench::{Case, Check, Told, check, choice, in_bath, list, of_fact, over},
        limit::{Part, glue_said},
    },
    working::Weight::{Care, Stop},
};

/// The family.
pub static CHECKS: &[Check] = &[
    check("bound_in_dye", "rule.bound_in_dye", Stop, &PRACTICE, bound),
    check("undyed_inside", "rule.undyed_inside", Care, &PRACTICE, undyed_inside),
    check("product_resists_dye", "rule.product_resists_dye", Care, &PRACTICE, product),
    check("glue_resists_dye", "rule.glue_resists_dye", Care, &PRACTICE, glue),
    check("dye_too_cool", "rule.dye_too_cool", Care, &PRACTICE, too_cool),
    check("dye_needs_more_heat", "rule.dye_needs_more_heat", Care, &JUDGED, needs_more_heat),
];

fn bound(case: &Case<'_>) -> Option<Told> {
    if case.kind != "dye" || case.work.choice("dye_way") == Some("marker") {
        return None;
    }
    let zones = case.zones_where(&|zone| zone.bound.is_some())?;
    let by = case.first(|zone| zone.bound)?;
    Some((Say::new("care.bound_in_dye", [zones, Arg::Key(choice(by))]), Say::key("care.bound_in_dye_do")))
}

fn undyed_inside(case: &Case<'_>) -> Option<Told> {
    if case.kind != "heat_set" {
        return None;
    }
    let zones = case.zones_where(&|zone| zone.undyed_inside)?;
    Some((Say::new("care.undyed_inside", [zones]), Say::key("care.undyed_inside_do")))
}

fn product(case: &Case<'_>) -> Option<Told> {
    if case.kind != "dye" {
        return None;
    }
    let zones = case.zones_where(&|zone: &ZoneCondition| !zone.products.is_empty())?;
    let mut products: Vec<&str> = Vec::new();
    for product in case.zones.iter().flat_map(|zone| &case.condition.zone(*zone).products) {
        if !products.contains(product) {
            products.push(product);
        }
    }
    let products = list(products.iter().map(|product| Arg::Key(choice(product))))?;
    Some((Say::new("care.product_resists_dye", [zones, products]), Say::key("care.product_resists_dye_do")))
}

fn glue(case: &Case<'_>) -> Option<Told> {
    if !in_bath(case.work) || case.zones.is_empty() {
        return None;
    }
    let glued = case.condition.glued.iter().find(|glued| glued.to != Some("skin"))?;
    let to = choice(glued.to.unwrap_or("cap"));
    Some((
        Say::new("care.glue_resists_dye", [glue_said(glued.glue), Arg::Key(to)]),
        Say::key("care.glue_resists_dye_do"),
    ))
}

/// The bath that the first fibre it meets needs, and what limits the heat.
fn needed(case: &Case<'_>) -> Option<(Bath, Option<Part>)> {
    if !in_bath(case.work) {
        return None;
    }
    let class = case.work.choice("dye_class").and_then(Class::read)?;
    let bath = uptake(case.met().first()?.fibre, class).bath?;
    let low = of_fact(&bath.temperature, bath.temperature.low);
    let lowest = limit_of(case, Medium::Water).lowest().cloned().filter(|part| over(low, part.most));
    Some((bath, lowest))
}

fn too_cool(case: &Case<'_>) -> Option<Told> {
    let (bath, limited) = needed(case)?;
    let heat = case.heating?.heat?;
    let low = of_fact(&bath.temperature, bath.temperature.low);
    if limited.is_some() || !over(low, heat) {
        return None;
    }
    let likely = of_fact(&bath.temperature, bath.temperature.likely);
    Some((
        Say::new("care.dye_too_cool", [Arg::Temperature(low), Arg::Temperature(heat)]),
        Say::new("care.dye_too_cool_do", [Arg::Temperature(likely)]),
    ))
}

fn needs_more_heat(case: &Case<'_>) -> Option<Told> {
    let (bath, limited) = needed(case)?;
    let limited = limited?;
    // A bath that is itself too hot is told by the limit.
    if case.heating?.heat.is_some_and(|heat| over(heat, limited.most)) {
        return None;
    }
    let low = of_fact(&bath.temperature, bath.temperature.low);
    Some((
        Say::new(
            "care.dye_needs_more_heat",
            [Arg::Temperature(low), Arg::Temperature(limited.most), limited.name.into()],
        ),
        Say::key("care.dye_needs_more_heat_do"),
    ))
}
