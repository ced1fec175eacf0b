//! Rows on a view: the base's, those to sew, those sewn, and their numbers.
//!
//! What it is: visible pieces of lines on the dome. What it is not: their planning.

use measure::{
    order,
    say::{Arg, Say},
};
use plan::{
    dome::{Section, View},
    wefts::{Mount, PlannedRow},
};

use super::{
    Map,
    beside::{CallOut, LINE, Side},
};
use crate::drawing::{Kind, Place, Shape, Target, plain, thin};

/// How far a drawn line may leave the row, mm.
const FLAT: f64 = 0.1;
/// A row of which less is seen gets no number on this view.
const NUMBERED_FROM: f64 = 14.0;
/// Room for numbers, from the highest to the lowest, mm.
const ROOM: f64 = 190.0;

/// Key of a section's name.
pub(crate) fn section_name(section: Section) -> &'static str {
    match section {
        Section::BackAndSides => "sheet.back_and_sides",
        Section::Top => "sheet.top",
    }
}

/// Draws all rows.
pub(super) fn rows(map: &Map<'_>, view: View, shapes: &mut Vec<Shape>) {
    let dome = &map.layout.dome;
    let base: Vec<Vec<Place>> = map
        .layout
        .rows
        .iter()
        .flat_map(|row| dome.project_row(view, &row.curve))
        .map(|line| thin(&line, FLAT))
        .collect();
    if !base.is_empty() {
        shapes.push(Shape::lines("d-base", base).labelled(Say::key("sheet.row_base")));
    }
    for (section, at) in map.sewn {
        let lines: Vec<Vec<Place>> = dome
            .row(*section, *at)
            .iter()
            .flat_map(|row| dome.project_row(view, row))
            .map(|line| thin(&line, FLAT))
            .collect();
        if !lines.is_empty() {
            shapes.push(Shape::lines("d-sewn", lines).labelled(Say::key("sheet.row_sewn")));
        }
    }
    for (index, row) in planned(map).iter().enumerate() {
        let lines: Vec<Vec<Place>> = dome.project_line(view, &row.points).iter().map(|line| thin(line, FLAT)).collect();
        if lines.is_empty() {
            continue;
        }
        shapes.push(Shape::lines("d-hit", lines.clone()).to(target(row, index)));
        shapes.push(Shape::lines("d-add", lines.clone()).labelled(label(row, index)).to(target(row, index)));
        if row.mount == Mount::OnRow {
            shapes.push(Shape::lines("d-add-core", lines));
        }
        if row.part {
            let seen = |place: &Place| visible_end(map, view, row, *place);
            let ends = row.points.first().into_iter().chain(row.points.last()).map(|point| view.project(*point));
            for at in ends.filter(seen) {
                shapes.push(Shape::new("d-part", Kind::Circle { at, radius: 1.9 }));
            }
        }
    }
}

fn visible_end(map: &Map<'_>, view: View, row: &PlannedRow, end: Place) -> bool {
    let pieces = map.layout.dome.project_line(view, &row.points);
    pieces.iter().flat_map(|piece| piece.first().into_iter().chain(piece.last())).any(|place| *place == end)
}

/// Numbers of the rows to sew, for one side of the head.
pub(super) fn numbers(map: &Map<'_>, view: View, side: Side) -> Vec<CallOut> {
    let mut groups: Vec<(Vec<usize>, Place)> = Vec::new();
    for (index, row) in planned(map).iter().enumerate() {
        let pieces = map.layout.dome.project_line(view, &row.points);
        let length: f64 = pieces
            .iter()
            .flat_map(|line| line.windows(2))
            .map(|w| libm::hypot(w[1][0] - w[0][0], w[1][1] - w[0][1]))
            .sum();
        let outer = pieces.iter().flatten().copied().reduce(|a, b| {
            let b_is_outer = if side == Side::Left { b[0] < a[0] } else { b[0] > a[0] };
            if b_is_outer { b } else { a }
        });
        if let Some(at) = outer
            && length >= NUMBERED_FROM
        {
            groups.push((vec![index], at));
        }
    }
    order::sort_by(&mut groups, &|a, b| a.1[1].total_cmp(&b.1[1]));
    // Where numbers would need more room than there is, nearest neighbours share one.
    while groups.len() > 1 && groups.len() as f64 * LINE > ROOM {
        let apart = |at: &usize| groups[*at + 1].1[1] - groups[*at].1[1];
        let nearest = (0..groups.len() - 1).min_by(|a, b| apart(a).total_cmp(&apart(b)));
        let Some(at) = nearest else { break };
        let (more, place) = groups.remove(at + 1);
        groups[at].0.extend(more);
        groups[at].1[1] = (groups[at].1[1] + place[1]) / 2.0;
    }
    groups
        .into_iter()
        .filter_map(|(mut indices, at)| {
            order::sort(&mut indices);
            let first = *indices.first()?;
            let row = planned(map).get(first)?;
            let text = number_list(&indices);
            Some(CallOut {
                lines: vec![plain(text)],
                at,
                class: "d-number",
                target: Some(target(row, first)),
                dot: false,
            })
        })
        .collect()
}

/// Row numbers from indices, neighbours drawn together: `3–5, 8`.
pub(crate) fn number_list(indices: &[usize]) -> String {
    let mut parts: Vec<String> = Vec::new();
    for run in indices.chunk_by(|a, b| *b == *a + 1) {
        match run {
            [] => {}
            [one] => parts.push((one + 1).to_string()),
            [first, .., last] => parts.push(format!("{}–{}", first + 1, last + 1)),
        }
    }
    parts.join(", ")
}

fn planned<'a>(map: &Map<'a>) -> &'a [PlannedRow] {
    map.placement.map_or(&[], |placement| placement.rows.as_slice())
}

fn target(row: &PlannedRow, index: usize) -> Target {
    Target::Row { section: row.section, gap: row.gap, index }
}

fn label(row: &PlannedRow, index: usize) -> Say {
    let count = |many: usize| Arg::Count(i64::try_from(many).unwrap_or(i64::MAX));
    let key = match row.mount {
        Mount::Gap => "sheet.row_in_gap",
        Mount::OnRow => "sheet.row_on_row",
    };
    let whole =
        Say::new(key, [count(index + 1), Arg::Key(section_name(row.section)), count(row.gap), Arg::Length(row.length)]);
    if row.part { Say::new("sheet.row_part", [whole.into()]) } else { whole }
}
