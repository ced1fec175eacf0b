//! The working of the weft answer, line by line, and its cautions.
//!
//! What it is: every figure with this person's numbers. What it is not: the figures.

use measure::{
    quantity::{Length, units},
    say::{Arg, Say},
};
use record::{
    trade::caps::Ground,
    wig::{figures::Wig, zone::Zone},
    workshop::lots::Lot,
};

use super::{
    answer::{Packs, Solved},
    pieces::Way,
    prepare::wanted_in_rows,
    spread::Spread,
};
use crate::{
    layout::none,
    wefts::rules,
    working::{Caution, Line, Weight, figure_line, line},
};

pub(super) fn lines(wig: &Wig<'_>, lots: &[Lot], likely: &Solved, spread: &Spread) -> Vec<Line> {
    let prepared = &likely.prepared;
    let (full, amounts, weft) = (&prepared.fullness, &prepared.amounts, &prepared.weft);
    let label = |key| Say::key(key);
    let mut lines = vec![
        figure_line(label("field.whole_weight"), &wig.whole_weight(), Arg::Mass),
        figure_line(label("field.cap_weight"), &wig.cap_weight(), Arg::Mass),
        figure_line(label("field.crimped_share"), &wig.crimped_share(), |share| {
            Arg::Percent(share.get::<units::ratio>())
        }),
        line(
            label("line.hanging_mass"),
            Say::new(
                "sum.hanging_mass",
                [
                    Arg::Mass(wig.whole_weight().likely),
                    Arg::Mass(wig.cap_weight().likely),
                    Arg::Percent(wig.crimped_share().likely.get::<units::ratio>()),
                    Arg::Mass(full.hanging_mass),
                ],
            ),
        ),
        figure_line(label("field.fineness"), &wig.fineness(), Arg::Fineness),
        figure_line(label("field.fibre_return"), &wig.fibre_return(), Arg::Gap),
    ];
    let row_length = prepared.layout.row_length.iter().fold(none(), |sum, one| sum + *one);
    if row_length > none() {
        lines.push(line(
            label("line.row_strands"),
            Say::new(
                "sum.row_strands",
                [
                    Arg::Mass(full.hanging_mass),
                    Arg::Run(row_length),
                    Arg::Length(mean_length(prepared)),
                    Arg::Gap(wig.fibre_return().likely),
                    Arg::Fineness(full.fineness),
                    Arg::Strands(full.row_strands),
                ],
            ),
        ));
    }
    if let Some(main) = lots.iter().find(|lot| lot.id == prepared.main) {
        lines.push(figure_line(label("field.pack_weight"), &main.weight, Arg::Mass));
        lines.push(figure_line(label("field.pack_width"), &main.width, Arg::Run));
        lines.push(figure_line(label("field.weft_length"), &main.hanging, Arg::Length));
        match &main.strands {
            Some(counted) => lines.push(figure_line(label("field.strands"), counted, Arg::Strands)),
            None => {
                lines.push(figure_line(label("field.lot_fineness"), &main.fineness, Arg::Fineness));
                lines.push(line(
                    label("line.weft_strands"),
                    Say::new(
                        "sum.weft_strands",
                        [
                            Arg::Mass(main.weight.likely),
                            Arg::Run(main.width.likely),
                            Arg::Length(main.hanging.likely),
                            Arg::Gap(wig.fibre_return().likely),
                            Arg::Fineness(main.fineness.likely),
                            Arg::Strands(weft.strands),
                        ],
                    ),
                ));
            }
        }
    }
    let hand_tied = lots.iter().any(|lot| lot.id == prepared.main && !lot.may_be_cut());
    let wanted = wanted_in_rows(full, &rules(wig, hand_tied));
    lines.push(line(
        label("line.wanted"),
        Say::new("sum.wanted", [Arg::Count(wanted as i64), Arg::Strands(weft.strands), Arg::Run(amounts.rows)]),
    ));
    lines.push(line(
        label("line.rows"),
        Say::new(
            "sum.rows",
            [Arg::Count(prepared.placement.rows.len() as i64), Arg::Run(amounts.rows), Arg::Run(amounts.folds)],
        ),
    ));
    if amounts.hairline > none() {
        lines.push(line(
            label("line.hairline"),
            Say::new(
                "sum.hairline",
                [
                    Arg::Count(i64::from(wig.hairline_layers())),
                    Arg::Length(prepared.layout.dome.front_edge_length()),
                    Arg::Percent(wig.bench_share("hairline_spare").likely.get::<units::ratio>()),
                    Arg::Run(amounts.hairline),
                ],
            ),
        ));
    }
    if amounts.parting > none() {
        lines.push(line(
            label("line.parting"),
            Say::new(
                "sum.parting",
                [
                    Arg::Count(i64::from(wig.parting().rows)),
                    Arg::Length(wig.parting().length.likely),
                    Arg::Run(amounts.parting),
                ],
            ),
        ));
    }
    lines.push(figure_line(label("field.hold_back"), &wig.bench_share("hold_back"), |share| {
        Arg::Percent(share.get::<units::ratio>())
    }));
    lines.push(line(
        label("line.total"),
        Say::new(
            "sum.total",
            [
                Arg::Run(amounts.rows),
                Arg::Run(amounts.folds),
                Arg::Run(amounts.hairline),
                Arg::Run(amounts.parting),
                Arg::Run(amounts.hold_back),
                Arg::Run(amounts.total()),
            ],
        ),
    ));
    for input in spread.by_swing().into_iter().take(6) {
        if let Some((_, low, high)) = spread.swings.iter().find(|(one, _, _)| *one == input) {
            lines.push(line(
                Say::new("line.swing", [Arg::Key(input.settle())]),
                Say::new("sum.swing", [Arg::Run((*low).min(*high)), Arg::Run((*low).max(*high))]),
            ));
        }
    }
    lines
}

/// Mean hanging length over the base's rows.
fn mean_length(prepared: &super::prepare::Prepared) -> Length {
    let whole = prepared.layout.row_length.iter().fold(none(), |sum, one| sum + *one);
    let mut mean = none();
    for zone in Zone::ALL {
        let Some(full) = prepared.fullness.zones.get(zone as usize) else { continue };
        let Some(base) = full.growth.first() else { continue };
        let share = (prepared.layout.row_length[zone as usize] / whole).get::<units::ratio>();
        mean += (base.shortest + base.longest) / 2.0 * share;
    }
    mean
}

pub(super) fn cautions(wig: &Wig<'_>, lots: &[Lot], likely: &Solved, packs: Packs) -> Vec<Caution> {
    let prepared = &likely.prepared;
    let mut cautions = prepared.fullness.cautions.clone();
    let mut say = |weight, what: Say, remedy: &'static str| {
        cautions.push(Caution { weight, what, remedy: Say::key(remedy) });
    };
    let base = prepared.fullness.row_strands;
    let ratio = (prepared.weft.strands / base).get::<units::ratio>();
    let shelf = wig.shelf_ratio().likely.get::<units::ratio>();
    if !prepared.placement.rows.is_empty() && base.get::<units::per_meter>() > 0.0 && ratio > shelf {
        let what = Say::new(
            "plan.shelf",
            [Arg::Strands(prepared.weft.strands), Arg::Strands(base), Arg::Number(ratio, 1), Arg::Number(shelf, 1)],
        );
        say(Weight::Care, what, if wig.parts_double_weft() { "plan.shelf_parted" } else { "plan.shelf_remedy" });
    }
    for shortfall in &prepared.placement.shortfalls {
        let zones = shortfall.zones.iter().map(|zone| Say::key(zone.label())).collect();
        let what =
            Say::new("plan.shortfall", [Arg::List(zones), Arg::Run(shortfall.placed), Arg::Run(shortfall.wanted)]);
        say(Weight::Care, what, "plan.shortfall_remedy");
    }
    for zone in &prepared.placement.closed {
        let key = match wig.ground(*zone) {
            Ground::Closed { .. } => "plan.closed_zone",
            _ => "plan.knotted_zone",
        };
        say(Weight::Care, Say::new(key, [Arg::Key(zone.label())]), "plan.closed_remedy");
    }
    if wig.hairline() == "lace" {
        say(Weight::Consider, Say::key("plan.lace_hairline"), "plan.lace_hairline_remedy");
    }
    if wig.hairline() == "glued_strip" {
        say(Weight::Care, Say::key("plan.glue"), "plan.glue_remedy");
    }
    if wig.worn() != "down" {
        say(Weight::Consider, Say::key("plan.worn_up"), "plan.worn_up_remedy");
    }
    if let (Some(likely), high) = (packs.likely, packs.high)
        && likely > 0
        && high.is_none_or(|high| high > likely)
    {
        say(Weight::Care, Say::key("plan.dye_lot"), "plan.dye_lot_remedy");
    }
    for id in &prepared.left_out {
        let name = lots.iter().find(|lot| lot.id == *id).map_or("", |lot| lot.name.as_str());
        say(Weight::Consider, Say::new("plan.left_out", [Arg::from(name)]), "plan.left_out_remedy");
    }
    thin_ends(prepared, &mut say);
    if prepared.way == Way::Whole {
        say(Weight::Consider, Say::key("plan.hand_tied"), "plan.hand_tied_remedy");
    }
    cautions
}

/// A weft shorter than the look thins out before the ends.
fn thin_ends(prepared: &super::prepare::Prepared, say: &mut impl FnMut(Weight, Say, &'static str)) {
    let longest = prepared
        .fullness
        .zones
        .iter()
        .filter(|zone| zone.wanting() > 1.0)
        .map(|zone| zone.look_length)
        .fold(none(), |most, one| if one > most { one } else { most });
    if longest > prepared.weft.hanging * 1.02 {
        say(
            Weight::Care,
            Say::new("plan.thin_ends", [Arg::Length(prepared.weft.hanging), Arg::Length(longest)]),
            "plan.thin_ends_remedy",
        );
    }
}
