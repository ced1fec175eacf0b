//! The drawings of the sheet: the cap with its rows, the weft laid out, a ruler that is true; and photos.
//!
//! What it is: their size on paper and what they say in words. What it is not: how they are drawn (see `cap`, `cutting`).

use measure::{
    quantity::Length,
    say::{Arg, Say},
};
use plan::dome::{Section, View};
use record::{field::Value, wig::work::sew_weft::SewWeft};

use super::{
    Cap, Facts, fit,
    model::{Block, Line, Photo, Picture, Sort},
    scribe::{Scribe, line},
};
use crate::{
    cap::{self, Map, Show},
    cutting::{self, Bench},
    drawing::{
        Anchor, Drawing, Shape, Target,
        node::{Form, node, number},
        plain,
    },
};

/// Width of a view, two beside each other, mm.
const HALF: f64 = 87.0;
/// Highest a drawing of weft may be, mm: it shares a page with its heading.
const WEFT_HIGH: f64 = 190.0;
/// Length of the true ruler, mm.
const RULER: u32 = 100;

/// A drawing so many mm wide on paper.
fn picture(drawing: &Drawing, width: f64, said: Vec<String>, scribe: &Scribe<'_>) -> Picture {
    let scale = width / drawing.view_box[2].max(1.0);
    let size = [width, drawing.view_box[3] * scale];
    let mut node = node(drawing, &scribe.voice(), Form::Embedded);
    node.attributes.push(("width", format!("{}mm", number(size[0]))));
    node.attributes.push(("height", format!("{}mm", number(size[1]))));
    Picture { node, size, said }
}

/// The part.
pub(super) fn drawings(
    facts: &Facts<'_>,
    of: Cap<'_>,
    scribe: &Scribe<'_>,
    blocks: &mut Vec<Block>,
    drawn: &mut Vec<Drawing>,
) {
    let voice = scribe.voice();
    let to_sew = facts.answer.is_some_and(|answer| !answer.likely.prepared.placement.rows.is_empty());
    let (heading, how) =
        if to_sew { ("sheet.cap_rows", "sheet.cap_rows_how") } else { ("sheet.cap_only", "sheet.cap_only_how") };
    blocks.push(Block::Heading(scribe.key(heading)));
    blocks.push(Block::Lines(vec![line(Sort::Plain, scribe.key(how))]));
    let sewn = sewn(facts);
    let map = Map {
        layout: of.layout,
        fullness: of.fullness,
        placement: facts.answer.map(|answer| &answer.likely.prepared.placement),
        reached: facts.answer.map(|answer| &answer.reached),
        sewn: &sewn,
        show: Show::Rows,
        chosen: None,
    };
    let mut views = cap::views(&map, &voice);
    let scale = views.first().map_or(1.0, |(_, view)| HALF / view.view_box[2]);
    views.push((View::Top, cap::legend(&map, &voice)));
    let mut pair = Vec::new();
    for (_, drawing) in &views {
        let said = vec![scribe.say(&drawing.description)];
        pair.push(picture(drawing, (drawing.view_box[2] * scale).min(HALF), said, scribe));
        if pair.len() == 2 {
            blocks.push(Block::Pictures(core::mem::take(&mut pair)));
        }
    }
    drawn.push(cap::all(&map, &voice));

    if let Some(answer) = facts.answer.filter(|answer| !answer.laid.is_empty()) {
        blocks.push(Block::Heading(scribe.key("sheet.laid")));
        blocks.push(Block::Lines(vec![line(Sort::Plain, scribe.key("sheet.laid_how"))]));
        let bench = Bench { laid: &answer.laid, rows: &answer.likely.prepared.placement.rows, lots: facts.bench.lots };
        for drawing in cutting::drawings(&bench, &voice, fit::WIDTH, WEFT_HIGH) {
            let mut said = Vec::new();
            for shape in &drawing.shapes {
                let Some(label) = &shape.label else { continue };
                let words = scribe.say(label);
                said.push(if matches!(shape.target, Some(Target::Bar(_))) { words } else { format!("  {words}") });
            }
            blocks.push(Block::Pictures(vec![picture(&drawing, fit::WIDTH, said, scribe)]));
            drawn.push(drawing);
        }
        let mut cautions: Vec<_> = answer.cautions.iter().collect();
        measure::order::sort_by(&mut cautions, &|a, b| b.weight.cmp(&a.weight));
        let mut lines = Vec::new();
        for caution in cautions {
            let text = format!("{} {}", scribe.say(&caution.what), scribe.say(&caution.remedy));
            lines.push(Line { sort: Sort::Care, name: scribe.key("sheet.care"), text });
        }
        if !lines.is_empty() {
            blocks.push(Block::Lines(lines));
        }
    }
    blocks.push(Block::Heading(scribe.key("sheet.ruler")));
    blocks.push(Block::Lines(vec![line(Sort::Plain, scribe.key("sheet.ruler_how"))]));
    let ruler = ruler();
    blocks.push(Block::Pictures(vec![picture(&ruler, ruler.view_box[2], Vec::new(), scribe)]));
    drawn.push(ruler);
}

/// Rows sewn already, where their place was said.
fn sewn(facts: &Facts<'_>) -> Vec<(Section, Length)> {
    let mut rows = Vec::new();
    for done in facts.state().works() {
        let Some(weft) = SewWeft::of(&done.work) else { continue };
        if let ("row", Some(section), Some(place)) = (weft.sewn_as, weft.section, weft.place) {
            rows.push((if section == "top" { Section::Top } else { Section::BackAndSides }, place));
        }
    }
    rows
}

/// A ruler drawn in its own size: mm and cm above, inches below.
fn ruler() -> Drawing {
    let (left, middle) = (4.0, 10.0);
    let mut lines = vec![vec![[left, middle], [left + f64::from(RULER), middle]]];
    let mut shapes = Vec::new();
    for mm in 0..=RULER {
        let x = left + f64::from(mm);
        let high = if mm % 10 == 0 {
            5.0
        } else if mm % 5 == 0 {
            3.5
        } else {
            2.0
        };
        lines.push(vec![[x, middle], [x, middle - high]]);
        if mm % 10 == 0 {
            shapes.push(Shape::text("d-text", [x, middle - 6.0], plain((mm / 10).to_string()), Anchor::Middle, 3.2));
        }
    }
    for eighth in 0..=31_u32 {
        let x = left + f64::from(eighth) * 25.4 / 8.0;
        let high = if eighth % 8 == 0 {
            5.0
        } else if eighth % 4 == 0 {
            3.5
        } else {
            2.0
        };
        lines.push(vec![[x, middle], [x, middle + high]]);
        if eighth % 8 == 0 {
            shapes.push(Shape::text("d-text", [x, middle + 8.4], plain((eighth / 8).to_string()), Anchor::Middle, 3.2));
        }
    }
    shapes.push(Shape::lines("d-fine", lines));
    let unit =
        |text: &str, y| Shape::text("d-text", [left + f64::from(RULER) + 3.0, y], plain(text), Anchor::Start, 3.2);
    shapes.push(unit("cm", middle - 2.0));
    shapes.push(unit("in", middle + 4.6));
    Drawing {
        view_box: [0.0, 0.0, 120.0, 20.0],
        shapes,
        title: Say::key("sheet.ruler"),
        description: Say::key("sheet.ruler_how"),
    }
}

/// Photos whose bytes are here, two beside each other, in bench order.
pub(super) fn photos(facts: &Facts<'_>, scribe: &Scribe<'_>, blocks: &mut Vec<Block>) {
    let mut all = Vec::new();
    for done in facts.state().works() {
        let Some(Value::Photo(id)) = done.work.get("photo") else { continue };
        let Some((_, data)) = facts.photos.iter().find(|(one, _)| one == id) else { continue };
        let shows = done.work.choice("shows").map_or_else(String::new, |shows| scribe.choice(shows));
        let says = [Arg::Date(done.done.date()), Arg::Text(shows)];
        all.push(Photo { data: data.clone(), caption: scribe.with("sheet.noted", says) });
    }
    if all.is_empty() {
        return;
    }
    blocks.push(Block::Heading(scribe.key("sheet.photos")));
    while !all.is_empty() {
        let rest = all.split_off(all.len().min(2));
        blocks.push(Block::Photos(core::mem::replace(&mut all, rest)));
    }
}
