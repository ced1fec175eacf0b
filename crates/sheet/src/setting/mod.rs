//! The setting pattern on the cap: each rod where it lies, how it sits on its base, which way it is rolled.
//!
//! What it is: marks of our own over the zones, readable in black and white. What it is not: planning.

mod rod;

use measure::say::{Arg, Say};
use plan::{
    fullness::Fullness,
    layout::Layout,
    lengths::pattern::{Base, Pattern},
};
use record::wig::zone::Zone;

use crate::{
    cap::{self, Map, Show},
    drawing::{Anchor, Drawing, Place, Shape, Voice},
};

/// Size of words and from line to line in the legend, mm: as on the cap map.
const LINE: f64 = 13.0;

/// The pattern from all sides, its legend last. Views in which no rod is seen are left out.
pub fn views(layout: &Layout, fullness: &Fullness, pattern: &Pattern, voice: &Voice<'_>) -> Vec<Drawing> {
    let mut bare = layout.clone();
    bare.rows.clear();
    let map =
        Map { layout: &bare, fullness, placement: None, reached: None, sewn: &[], show: Show::Rows, chosen: None };
    let mut drawn = Vec::new();
    for (view, mut drawing) in cap::views(&map, voice) {
        let mut rods = Vec::new();
        rod::draw(layout, view, &pattern.rods, &mut rods);
        if rods.is_empty() {
            continue;
        }
        // Names stay above the rods.
        let words = drawing.shapes.iter().position(|shape| matches!(shape.kind, crate::drawing::Kind::Text { .. }));
        let at = words.unwrap_or(drawing.shapes.len());
        drawing.shapes.splice(at..at, rods);
        drawing.title = Say::new("sheet.setting_view", [cap::title(view).into()]);
        drawing.description = Say::new("sheet.setting_description", [Arg::List(zones(pattern))]);
        drawn.push(drawing);
    }
    if !drawn.is_empty() {
        drawn.push(legend(pattern, voice));
    }
    drawn
}

/// One sentence for each zone that has rods.
fn zones(pattern: &Pattern) -> Vec<Say> {
    Zone::ALL
        .into_iter()
        .filter_map(|zone| {
            let first = pattern.rods.iter().find(|rod| rod.zone == zone)?;
            let count = i64::try_from(pattern.count(zone)).unwrap_or(i64::MAX);
            let args = [Arg::Key(zone.label()), Arg::Count(count), Arg::Gap(first.rod), Arg::Key(name(first.base))];
            Some(Say::new("sheet.setting_zone", args))
        })
        .collect()
}

fn name(base: Base) -> &'static str {
    match base {
        Base::On => "choice.on_base",
        Base::Half => "choice.half_base",
        Base::Off => "choice.off_base",
    }
}

fn legend(pattern: &Pattern, voice: &Voice<'_>) -> Drawing {
    let mut shapes = Vec::new();
    let mut y = 0.0;
    let text = |say: Say, at: Place, shapes: &mut Vec<Shape>| {
        shapes.push(Shape::text("d-text", [at[0], at[1] + 3.0], say, Anchor::Start, cap::WORDS));
    };
    for base in [Base::On, Base::Half, Base::Off] {
        if pattern.rods.iter().any(|rod| rod.base == base) {
            rod::sample([0.0, y], base, &mut shapes);
            text(Say::new("sheet.setting_base", [Arg::Key(name(base))]), [40.0, y], &mut shapes);
            y += 1.35 * LINE;
        }
    }
    text(Say::key("sheet.setting_arrow"), [0.0, y], &mut shapes);
    y += LINE;
    for zone in zones(pattern) {
        text(zone, [0.0, y], &mut shapes);
        y += LINE;
    }
    Drawing::framed(shapes, Say::key("sheet.legend"), Say::key("sheet.legend_description"), 3.0, voice)
}
