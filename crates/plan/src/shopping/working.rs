//! The working of the weft answer, line by line.
//!
//! What it is: every figure with this person's numbers. What it is not: the figures.

use measure::{
    quantity::{Length, units},
    say::{Arg, Say},
};
use record::{
    wig::{figures::Wig, zone::Zone},
    workshop::lots::Lot,
};

use super::{answer::Solved, spread::Spread};
use crate::{
    hairline::Purpose,
    layout::none,
    working::{Line, figure_line, line},
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
                        if prepared.parted { "sum.weft_strands_parted" } else { "sum.weft_strands" },
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
    let strands = prepared.wanted * weft.strands;
    lines.push(line(
        label("line.wanted"),
        Say::new(
            "sum.wanted",
            [
                Arg::Count(libm::round(strands.get::<units::ratio>()) as i64),
                Arg::Strands(weft.strands),
                weft_length(prepared.wanted),
            ],
        ),
    ));
    if prepared.wanted > none() {
        lines.push(line(label("line.rows"), rows_sum(wig, prepared)));
    }
    edges(wig, prepared, &mut lines);
    lines.push(figure_line(label("field.hold_back"), &wig.bench_share("hold_back"), |share| {
        Arg::Percent(share.get::<units::ratio>())
    }));
    lines.push(line(
        label("line.total"),
        Say::new(
            "sum.total",
            [
                weft_length(amounts.rows),
                weft_length(amounts.folds),
                weft_length(amounts.hairline),
                weft_length(amounts.parting),
                weft_length(amounts.hold_back),
                weft_length(amounts.total()),
            ],
        ),
    ));
    lines.push(line(label("line.bounds"), Say::new("sum.bounds", [weft_length(spread.low), weft_length(spread.high)])));
    let told = Length::new::<units::millimeter>(1.0);
    for input in spread.by_swing().into_iter().filter(|input| spread.swing(*input) > told).take(6) {
        if let Some((_, low, high)) = spread.swings.iter().find(|(one, _, _)| *one == input) {
            lines.push(line(
                Say::new("line.swing", [Arg::Key(input.settle())]),
                Say::new("sum.swing", [weft_length((*low).min(*high)), weft_length((*low).max(*high))]),
            ));
        }
    }
    lines
}

/// Short lengths of weft are said in cm, so that a sum of them comes out; long ones in m.
pub(super) fn weft_length(length: Length) -> Arg {
    if length < Length::new::<units::meter>(10.0) { Arg::Length(length) } else { Arg::Run(length) }
}

/// The rows chosen, and the folds allowed for.
fn rows_sum(wig: &Wig<'_>, prepared: &super::prepare::Prepared) -> Say {
    let placed = prepared.placement.rows.iter().fold(none(), |sum, row| sum + row.length);
    Say::new(
        if prepared.placement.rows.len() == 1 { "sum.row" } else { "sum.rows" },
        [
            Arg::Count(prepared.placement.rows.len() as i64),
            weft_length(placed),
            weft_length(prepared.amounts.folds),
            Arg::Gap(wig.bench_length("end_fold").likely),
        ],
    )
}

/// Front edge and parting, with what becomes of double weft there.
fn edges(wig: &Wig<'_>, prepared: &super::prepare::Prepared, lines: &mut Vec<Line>) {
    let amounts = &prepared.amounts;
    let pieces = |purpose| prepared.edge.iter().filter(move |piece| piece.purpose == purpose);
    for (purpose, name, plain, halved, length, total) in [
        (
            Purpose::Hairline,
            "line.hairline",
            "sum.hairline",
            "sum.hairline_singles",
            prepared.layout.dome.front_edge_length(),
            amounts.hairline,
        ),
        (
            Purpose::Parting,
            "line.parting",
            "sum.parting",
            "sum.parting_singles",
            prepared.layout.dome.part_length(),
            amounts.parting,
        ),
    ] {
        if total <= none() {
            continue;
        }
        let rows: usize = pieces(purpose).map(|piece| piece.serves).sum();
        let on_cap = pieces(purpose).fold(none(), |sum, piece| sum + piece.on_cap);
        // Parted weft goes twice as far: what is taken off the pack is shorter than what lies on the cap.
        let singles = prepared.edge_singles;
        let mut args = vec![
            Arg::Count(rows as i64),
            Arg::Length(length),
            Arg::Count(pieces(purpose).count() as i64),
            weft_length(on_cap),
            weft_length(total - on_cap),
            weft_length(total),
        ];
        if purpose == Purpose::Hairline {
            args.push(Arg::Percent(wig.bench_share("hairline_spare").likely.get::<units::ratio>()));
        }
        lines.push(line(Say::key(name), Say::new(if singles { halved } else { plain }, args)));
    }
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
