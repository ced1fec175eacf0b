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
use crate::drawing::{Kind, Place, Shape, Target, plain, thinned};

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
    let mut base = Vec::new();
    for row in &map.layout.rows {
        base.append(&mut thinned(&dome.project_row(view, &row.curve), FLAT));
    }
    if !base.is_empty() {
        shapes.push(Shape::lines("d-base", base).labelled(Say::key("sheet.row_base")));
    }
    for (section, at) in map.sewn {
        let Some(row) = dome.row(*section, *at) else { continue };
        let lines = thinned(&dome.project_row(view, &row), FLAT);
        if !lines.is_empty() {
            shapes.push(Shape::lines("d-sewn", lines).labelled(Say::key("sheet.row_sewn")));
        }
    }
    for (index, row) in planned(map).iter().enumerate() {
        let lines = thinned(&dome.project_line(view, &row.points), FLAT);
        if lines.is_empty() {
            continue;
        }
        shapes.push(Shape::lines("d-hit", lines.clone()).to(target(row, index)));
        shapes.push(Shape::lines("d-add", lines.clone()).labelled(label(row, index)).to(target(row, index)));
        if row.mount == Mount::OnRow {
            shapes.push(Shape::lines("d-add-core", lines));
        }
        if row.part {
            for end in [row.points.first(), row.points.last()] {
                let Some(at) = end.map(|point| view.project(*point)) else { continue };
                if visible_end(map, view, row, at) {
                    shapes.push(Shape::new("d-part", Kind::Circle { at, radius: 1.9 }));
                }
            }
        }
    }
}

fn visible_end(map: &Map<'_>, view: View, row: &PlannedRow, end: Place) -> bool {
    let pieces = map.layout.dome.project_line(view, &row.points);
    pieces.iter().any(|piece| piece.first() == Some(&end) || piece.last() == Some(&end))
}

/// Numbers of the rows to sew, for one side of the head.
pub(super) fn numbers(map: &Map<'_>, view: View, side: Side) -> Vec<CallOut> {
    let mut groups: Vec<(Vec<usize>, Place)> = Vec::new();
    for (index, row) in planned(map).iter().enumerate() {
        let pieces = map.layout.dome.project_line(view, &row.points);
        let mut length = 0.0;
        let mut outer: Option<Place> = None;
        for line in &pieces {
            for (at, place) in line.iter().enumerate() {
                if let Some(before) = at.checked_sub(1).and_then(|before| line.get(before)) {
                    length += libm::hypot(place[0] - before[0], place[1] - before[1]);
                }
                let further = |far: Place| if side == Side::Left { place[0] < far[0] } else { place[0] > far[0] };
                if outer.is_none_or(further) {
                    outer = Some(*place);
                }
            }
        }
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
    let mut calls = Vec::new();
    for (mut indices, at) in groups {
        order::sort(&mut indices);
        let Some(first) = indices.first().copied() else { continue };
        let Some(row) = planned(map).get(first) else { continue };
        let lines = vec![plain(number_list(&indices))];
        calls.push(CallOut { lines, at, class: "d-number", target: Some(target(row, first)), dot: false });
    }
    calls
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
