//! The label of what is left of a packet of dye: name, class, batch, grams left, day, cautions.
//!
//! What it is: a drawing of 70 mm to print and stick on. What it is not: the maker's label, which goes first.

use measure::{
    civil::Date,
    say::{Arg, Say},
};
use record::workshop::dyes::{Dose, Dye};

use crate::{
    cutting::{LINE, WORDS},
    drawing::{Anchor, Drawing, Shape, Voice, plain},
};

/// Width, mm.
const WIDTH: f64 = 70.0;
const EDGE: f64 = 3.0;
/// Size of the name.
const NAME: f64 = 5.0;

/// The label of a dye as it is left on a day.
pub fn drawing(dye: &Dye, today: Option<Date>, voice: &Voice<'_>) -> Drawing {
    let mut shapes = Vec::new();
    let mut y = EDGE;
    let room = WIDTH - 2.0 * EDGE;
    let mut put = |say: &Say, class: &'static str, size: f64, y: &mut f64| {
        for line in voice.wrap(say, room, size) {
            *y += size * 1.28;
            shapes.push(Shape::text(class, [EDGE, *y], plain(line), Anchor::Start, size));
        }
    };
    put(&Say::new("sheet.label_name", [Arg::Text(dye.name.clone())]), "d-heading", NAME, &mut y);
    let class = dye.class.map_or("sheet.label_unknown_class", |class| class.label());
    let batch = dye.batch.trim();
    let key = if batch.is_empty() { "sheet.label_no_batch" } else { "sheet.label_class" };
    put(&Say::new(key, [Arg::Key(class), Arg::from(batch)]), "d-text", WORDS, &mut y);
    let left = match dye.left {
        Some(left) => match Dose::new(dye.liquid, left.parts) {
            Dose::Weighed(mass) => Say::new("sheet.label_left", [Arg::Dose(mass)]),
            Dose::Measured(volume) => Say::new("sheet.label_left", [Arg::Volume(volume)]),
        },
        None => Say::key("sheet.label_not_weighed"),
    };
    put(&left, "d-heading", NAME, &mut y);
    if let Some(today) = today {
        put(&Say::new("sheet.label_day", [Arg::Date(today)]), "d-text", WORDS, &mut y);
    }
    y += LINE / 3.0;
    put(&Say::key(dye.class.map_or("dye.hazard_powder", |class| class.hazard().0)), "d-text", WORDS, &mut y);
    put(&Say::key("sheet.label_keep"), "d-text", WORDS, &mut y);
    let height = y + EDGE;
    shapes.insert(0, Shape::rect("d-bar", [0.5, 0.5], [WIDTH - 1.0, height - 1.0]));
    Drawing {
        view_box: [0.0, 0.0, WIDTH, height],
        shapes,
        title: Say::new("sheet.label", [Arg::Text(dye.name.clone())]),
        description: Say::key("sheet.label_description"),
    }
}
