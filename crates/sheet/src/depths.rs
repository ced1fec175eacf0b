//! How full a zone is along its length: root, middle and ends; now, with the plan, wanted.
//!
//! What it is: a small chart, readable without colour. What it is not: the reckoning.

use measure::{
    quantity::{ArealNumberDensity, units::per_square_centimeter},
    say::{Arg, Say},
};
use plan::fullness::{Growth, ZoneFullness};
use record::wig::zone::Zone;

use crate::{
    cutting::{LINE, WORDS},
    drawing::{
        Anchor, Drawing, Shape, Voice,
        hatch::{Slant, hatch},
        rect,
    },
};

/// Fullness at one depth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Depth {
    /// As it is now.
    pub now: ArealNumberDensity,
    /// With the plan.
    pub plan: Option<ArealNumberDensity>,
    /// What the look wants, where it says.
    pub wanted: Option<ArealNumberDensity>,
}

/// Root, middle and ends of a zone; `more` is what the plan adds. The look says what it wants at the root only.
pub fn depths(zone: &ZoneFullness, more: Option<&[Growth]>) -> [Depth; 3] {
    let now = zone.depths(&[]);
    let plan = more.map(|more| zone.depths(more));
    [
        Depth { now: now.root, plan: plan.map(|plan| plan.root), wanted: Some(zone.target) },
        Depth { now: now.middle, plan: plan.map(|plan| plan.middle), wanted: None },
        Depth { now: now.ends, plan: plan.map(|plan| plan.ends), wanted: None },
    ]
}

const NAMES: [&str; 3] = ["sheet.depth_root", "sheet.depth_middle", "sheet.depth_ends"];
/// Height of a bar and free room between groups, mm.
const BAR: f64 = 4.2;
const BETWEEN: f64 = 3.0;
/// Least width, mm.
const NARROWEST: f64 = 70.0;

/// The chart of a zone, for a width in mm as it is read.
pub fn chart(zone: Zone, depths: &[Depth; 3], voice: &Voice<'_>, width_mm: f64) -> Drawing {
    let width = if width_mm.is_finite() { width_mm.max(NARROWEST) } else { NARROWEST };
    let strands = |fullness: ArealNumberDensity| fullness.get::<per_square_centimeter>().max(0.0);
    let bars = |depth: &Depth| {
        let mut bars = vec![("sheet.depth_now", depth.now)];
        if let Some(plan) = depth.plan {
            bars.push(("sheet.depth_plan", plan));
        }
        if let Some(wanted) = depth.wanted {
            bars.push(("sheet.depth_wanted", wanted));
        }
        bars
    };
    let say = |key, fullness| Say::new(key, [Arg::Fullness(fullness)]);
    // Bold letters are wider.
    let names = NAMES.iter().map(|name| 1.12 * voice.width(&Say::key(name), WORDS)).fold(0.0, f64::max) + 3.0;
    let (mut words, mut most) = (0.0_f64, 1.0_f64);
    for depth in depths {
        for (key, full) in bars(depth) {
            words = words.max(voice.width(&say(key, full), WORDS));
            most = most.max(strands(full));
        }
    }
    let room = (width - names - words - 4.0).max(10.0);
    let mut shapes = Vec::new();
    let mut said = Vec::new();
    let mut y = 1.0;
    for (depth, name) in depths.iter().zip(NAMES) {
        shapes.push(Shape::text("d-heading", [1.0, y + 0.78 * BAR], Say::key(name), Anchor::Start, WORDS));
        let top = y;
        for (key, full) in bars(depth) {
            let size = [room * strands(full) / most, BAR - 0.6];
            let body = rect([names, y], size);
            let (class, lines) = match key {
                "sheet.depth_now" => ("d-bar", hatch(&[body], Slant(45.0), 1.8)),
                "sheet.depth_plan" => ("d-bar", hatch(&[body], Slant(-45.0), 0.8)),
                _ => ("d-wanted", Vec::new()),
            };
            shapes.push(Shape::rect(class, [names, y], size).labelled(say(key, full)));
            if !lines.is_empty() {
                shapes.push(Shape::lines("d-fine", lines));
            }
            let at = [names + size[0] + 1.5, y + 0.72 * BAR];
            shapes.push(Shape::text("d-text", at, say(key, full), Anchor::Start, WORDS));
            said.push(Say::new("sheet.depth_said", [Arg::Key(name), say(key, full).into()]));
            y += BAR;
        }
        shapes.push(Shape::lines("d-fine", vec![vec![[names, top - 0.6], [names, y]]]));
        y += BETWEEN;
    }
    Drawing {
        view_box: [0.0, 0.0, width, y - BETWEEN + LINE / 4.0],
        shapes,
        title: Say::new("sheet.depths", [Arg::Key(zone.label())]),
        description: Say::new("sheet.depths_description", [Arg::List(said)]),
    }
}
