//! Zones on a view: areas to touch, hatching, names.
//!
//! What it is: visible outlines from the dome with what is known of each zone. What it is not: rows.

use measure::{
    order::within,
    quantity::{
        ArealNumberDensity,
        units::{per_square_centimeter, per_square_meter, square_millimeter},
    },
    say::{Arg, Say},
    unit::Kind,
};
use plan::{
    dome::{ViewShape, ZoneShape},
    fullness::ZoneFullness,
};
use record::wig::zone::Zone;

use super::{
    Map, Show, WORDS,
    beside::{CallOut, LINE},
};
use crate::drawing::{Anchor, Kind as Form, Place, Shape, Target, Voice, fits, fits_near, hatch, innermost, rect};

/// A zone of which less than this share of its area is seen gets no name: another view shows it better.
const NAMED_FROM: f64 = 0.2;
/// How far from its zone a name may stand on the bare figure, mm.
const NEAR: f64 = 75.0;

/// Areas and hatching.
pub(super) fn areas(map: &Map<'_>, zones: &[ZoneShape], shapes: &mut Vec<Shape>) {
    for shape in zones {
        let mut area = Shape::area("d-zone", shape.polygons.clone()).to(Target::Zone(shape.zone));
        area.label = of(map, shape.zone).map(|zone| label(map, zone));
        shapes.push(area);
        let spacing = of(map, shape.zone).and_then(|zone| hatch::spacing(zone.now()));
        if let (Show::Fullness, Some(spacing)) = (map.show, spacing) {
            let lines = hatch::hatch(&shape.polygons, hatch::FULLNESS, spacing);
            if !lines.is_empty() {
                shapes.push(Shape::lines("d-hatch", lines));
            }
        }
    }
}

/// The outline of the chosen zone.
pub(super) fn chosen(map: &Map<'_>, zones: &[ZoneShape], shapes: &mut Vec<Shape>) {
    let chosen = zones.iter().filter(|shape| Some(shape.zone) == map.chosen);
    for shape in chosen {
        shapes.push(Shape::area("d-chosen", shape.polygons.clone()));
    }
}

/// Names inside zones with room for them, else on the face or neck near by; the others come back as call-outs.
pub(super) fn names(map: &Map<'_>, seen: &ViewShape, voice: &Voice<'_>, shapes: &mut Vec<Shape>) -> Vec<CallOut> {
    // The figure less the cap and the ears: by the even-odd rule what lies inside another outline is left out.
    let mut bare: Vec<Vec<Place>> = vec![seen.outline.clone()];
    for shape in &seen.zones {
        bare.extend_from_slice(&shape.polygons);
    }
    bare.extend_from_slice(&seen.ears);
    let mut outside = Vec::new();
    for shape in &seen.zones {
        let whole = map.layout.areas[shape.zone as usize].get::<square_millimeter>();
        if area(shape) < NAMED_FROM * whole {
            continue;
        }
        let lines = lines(map, shape.zone, voice);
        let class = if map.chosen == Some(shape.zone) { "d-name-strong" } else { "d-name" };
        let width = lines.iter().map(|line| voice.width(line, WORDS)).fold(0.0, f64::max);
        let size = [width + 1.0, LINE * lines.len() as f64];
        if let Some(middle) = fits(&shape.polygons, size) {
            name(shape.zone, lines, class, middle, shapes);
            continue;
        }
        let Some(at) = innermost(&shape.polygons) else { continue };
        let target = Some(Target::Zone(shape.zone));
        match fits_near(&bare, [size[0] + 4.0, size[1] + 4.0], at, NEAR) {
            Some(middle) => {
                let corner = [middle[0] - size[0] / 2.0, middle[1] - size[1] / 2.0];
                bare.push(rect(corner, size));
                let held = |axis: usize| within(at[axis], corner[axis], corner[axis] + size[axis]);
                shapes.push(Shape::lines("d-lead", vec![vec![[held(0), held(1)], at]]));
                shapes.push(Shape::new("d-dot", Form::Circle { at, radius: 1.4 }));
                name(shape.zone, lines, class, middle, shapes);
            }
            None => outside.push(CallOut { lines, at, class, target, dot: true }),
        }
    }
    outside
}

fn name(zone: Zone, lines: Vec<Say>, class: &'static str, [x, y]: Place, shapes: &mut Vec<Shape>) {
    let top = y - LINE * lines.len() as f64 / 2.0;
    for (index, line) in lines.into_iter().enumerate() {
        let base = top + LINE * (index as f64 + 0.5) + 0.36 * WORDS;
        shapes.push(Shape::text(class, [x, base], line, Anchor::Middle, WORDS).to(Target::Zone(zone)));
    }
}

fn lines(map: &Map<'_>, zone: Zone, voice: &Voice<'_>) -> Vec<Say> {
    let mut lines = vec![Say::key(zone.label())];
    if map.show == Show::Fullness
        && let Some(full) = of(map, zone)
    {
        // Without the unit, which stands in the legend: short enough to stand inside.
        let unit = voice.prefs.usual(Kind::StrandsPerArea);
        let number = |fullness: ArealNumberDensity| {
            Arg::Number(libm::round(unit.from_base(fullness.get::<per_square_meter>())), 0)
        };
        lines.push(match reached(map, full) {
            Some(reached) => Say::new("sheet.fullness_then", [number(full.now()), number(reached)]),
            None => Say::new("sheet.fullness", [number(full.now())]),
        });
    }
    lines
}

fn label(map: &Map<'_>, full: &ZoneFullness) -> Say {
    let (name, now) = (Arg::Key(full.zone.label()), Arg::Fullness(full.now()));
    match reached(map, full) {
        Some(reached) => Say::new("sheet.zone_now_then", [name, now, Arg::Fullness(reached)]),
        None => Say::new("sheet.zone_now", [name, now]),
    }
}

/// What the plan reaches, where it changes anything one would see.
fn reached(map: &Map<'_>, full: &ZoneFullness) -> Option<ArealNumberDensity> {
    let reached = map.reached.map(|reached| reached[full.zone as usize])?;
    ((reached - full.now()).get::<per_square_centimeter>() > 0.5).then_some(reached)
}

fn of<'a>(map: &Map<'a>, zone: Zone) -> Option<&'a ZoneFullness> {
    map.fullness.zones.iter().find(|full| full.zone == zone)
}

fn area(shape: &ZoneShape) -> f64 {
    let mut twice = 0.0;
    for ring in &shape.polygons {
        for (at, a) in ring.iter().enumerate() {
            let b = ring[(at + 1) % ring.len()];
            twice += a[0] * b[1] - b[0] * a[1];
        }
    }
    0.5 * libm::fabs(twice)
}
