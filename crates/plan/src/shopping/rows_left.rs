//! The rows still to sew.
//!
//! What it is: the plan of a wig with nothing sewn, less what was sewn of it, so that rows stay where they were planned; laid
//! anew only where something was sewn that no plan asked for. What it is not: the laying (see `wefts`).

use measure::quantity::{Length, units};
use record::wig::{figures::Wig, sewn::sewn, work::sew_weft::SewWeft, zone::Zone};

use super::prepare::wanting;
use crate::{
    dome::Section,
    fullness::Fullness,
    inputs::Weft,
    layout::{Layout, none},
    wefts::{Placement, PlannedRow, Rules, place},
};

/// A sewn row is the planned one when it lies this near to it, mm,
const NEAR_MM: f64 = 1.5;
/// and is no more than so much longer or shorter, as a share; its end folds may have been measured with it or not.
const AS_LONG: f64 = 0.1;

/// The rows still to sew.
pub(super) fn rows_left(wig: &Wig<'_>, layout: &Layout, rules: &Rules, full: &Fullness, weft: &Weft) -> Placement {
    let here: Vec<SewWeft> = rows(wig).collect();
    if !here.is_empty() {
        let at_first = Zone::ALL.map(|zone| full.zones.get(zone as usize).map_or(0.0, |zone| zone.wanted_at_first()));
        let planned = place(layout, rules, &at_first, weft.strands, &[]);
        let folds = wig.bench_length("end_fold").high * 2.0;
        if let Some(rows) = without(planned.rows, &here, folds) {
            return Placement { rows, ..planned };
        }
    }
    place(layout, rules, &wanting(full), weft.strands, &places(wig))
}

/// The rows that were not sewn; none where something else was.
fn without(mut planned: Vec<PlannedRow>, sewn: &[SewWeft], folds: Length) -> Option<Vec<PlannedRow>> {
    for weft in sewn {
        let (section, place) = sewn_place(weft)?;
        let off = |row: &PlannedRow| {
            let beyond = if weft.length > row.length + folds {
                weft.length - row.length - folds
            } else {
                (row.length - weft.length).max(none())
            };
            (beyond / row.length).get::<units::ratio>()
        };
        let miss = |row: &PlannedRow| (off(row), (weft.length - row.length).abs());
        let near = Length::new::<units::millimeter>(NEAR_MM);
        let like = (0..planned.len()).filter(|at| {
            planned.get(*at).is_some_and(|row| {
                let in_it = |zone: Zone| row.zones.iter().all(|(one, _)| *one == zone);
                row.section == section
                    && (row.at - place).abs() < near
                    && off(row) <= AS_LONG
                    && weft.zone.is_none_or(in_it)
            })
        });
        // Two rows in one gap, on either side of a parting, are told apart by zone and length.
        let at = like.min_by(|a, b| {
            let ((one, by), (other, than)) = (miss(&planned[*a]), miss(&planned[*b]));
            one.total_cmp(&other).then(by.get::<units::meter>().total_cmp(&than.get::<units::meter>())).then(a.cmp(b))
        })?;
        planned.remove(at);
    }
    Some(planned)
}

fn rows(wig: &Wig<'_>) -> impl Iterator<Item = SewWeft> + use<> {
    sewn(wig.state()).into_iter().filter(|weft| weft.sewn_as == "row")
}

/// Rows already sewn, by section and place.
pub(super) fn places(wig: &Wig<'_>) -> Vec<(Section, Length)> {
    rows(wig).filter_map(|weft| sewn_place(&weft)).collect()
}

fn sewn_place(weft: &SewWeft) -> Option<(Section, Length)> {
    let section = match weft.section? {
        "top" => Section::Top,
        _ => Section::BackAndSides,
    };
    Some((section, weft.place?))
}
