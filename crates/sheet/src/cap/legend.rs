//! What the marks on the cap map mean.
//!
//! What it is: a sample and its words, line by line. What it is not: a view.

use measure::{
    quantity::{ArealNumberDensity, units::per_square_centimeter},
    say::{Arg, Say},
    unit::Kind as MeasureKind,
};

use super::{Map, Show, WORDS};
use crate::drawing::{Anchor, Drawing, Kind, Place, Shape, Voice, hatch, plain, rect};

/// Width of a sample and from line to line, mm.
const SAMPLE: f64 = 34.0;
const LINE: f64 = 13.0;

/// The legend that goes with a map, to the scale of its views.
pub fn legend(map: &Map<'_>, voice: &Voice<'_>) -> Drawing {
    let mut shapes = Vec::new();
    match map.show {
        Show::Fullness => fullness(map, voice, &mut shapes),
        Show::Rows => rows(map, &mut shapes),
    }
    Drawing::framed(shapes, Say::key("sheet.legend"), Say::key("sheet.legend_description"), 3.0, voice)
}

fn fullness(map: &Map<'_>, voice: &Voice<'_>, shapes: &mut Vec<Shape>) {
    for (index, strands) in hatch::SAMPLES.into_iter().enumerate() {
        let y = LINE * index as f64;
        let box_of = rect([0.0, y - 4.5], [SAMPLE, 10.0]);
        let fullness = ArealNumberDensity::new::<per_square_centimeter>(strands);
        shapes.push(Shape::area("d-zone", vec![box_of.clone()]));
        if let Some(spacing) = hatch::spacing(fullness) {
            shapes.push(Shape::lines("d-hatch", hatch::hatch(&[box_of], hatch::FULLNESS, spacing)));
        }
        words(Say::new("sheet.fullness", [Arg::Fullness(fullness)]), y, shapes);
    }
    let y = LINE * hatch::SAMPLES.len() as f64;
    words_at(Say::key("sheet.legend_hatch"), [0.0, y], shapes);
    let unit = Arg::Text(voice.prefs.usual(MeasureKind::StrandsPerArea).symbol().to_owned());
    let key = if map.reached.is_some() { "sheet.legend_then" } else { "sheet.legend_now" };
    words_at(Say::new(key, [unit]), [0.0, y + LINE], shapes);
}

fn rows(map: &Map<'_>, shapes: &mut Vec<Shape>) {
    let mut next = 0.0;
    let mut line =
        |classes: &[&'static str], key: &'static str, ends: bool, numbered: bool, shapes: &mut Vec<Shape>| {
            let y = next;
            next += LINE;
            for class in classes {
                shapes.push(Shape::lines(class, vec![vec![[0.0, y], [SAMPLE - 10.0, y]]]));
            }
            if ends {
                for x in [0.0, SAMPLE - 10.0] {
                    shapes.push(Shape::new("d-part", Kind::Circle { at: [x, y], radius: 1.9 }));
                }
            }
            if numbered {
                shapes.push(Shape::text("d-number", [SAMPLE - 6.0, y + 3.0], plain("1"), Anchor::Start, WORDS));
            }
            words(Say::key(key), y, shapes);
        };
    line(&["d-base"], "sheet.row_base", false, false, shapes);
    let planned = map.placement.map_or(&[][..], |placement| placement.rows.as_slice());
    if !planned.is_empty() {
        line(&["d-add"], "sheet.legend_add", false, true, shapes);
    }
    if planned.iter().any(|row| row.mount == plan::wefts::Mount::OnRow) {
        line(&["d-add", "d-add-core"], "sheet.legend_on_row", false, true, shapes);
    }
    if planned.iter().any(|row| row.part) {
        line(&["d-add"], "sheet.legend_part", true, true, shapes);
    }
    if !map.sewn.is_empty() {
        line(&["d-sewn"], "sheet.row_sewn", false, false, shapes);
    }
    line(&["d-edge"], "sheet.legend_edge", false, false, shapes);
    if map.layout.dome.parting().is_some() {
        line(&["d-parting"], "sheet.legend_parting", false, false, shapes);
    }
}

fn words(say: Say, y: f64, shapes: &mut Vec<Shape>) {
    words_at(say, [SAMPLE + 5.0, y], shapes);
}

fn words_at(say: Say, at: Place, shapes: &mut Vec<Shape>) {
    shapes.push(Shape::text("d-text", [at[0], at[1] + 3.0], say, Anchor::Start, WORDS));
}
