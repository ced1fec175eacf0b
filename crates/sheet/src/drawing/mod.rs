//! A drawing of our own kind: shapes with a class, a label and what a touch on them means.
//!
//! What it is: a plain list that a writer or a page can walk. What it is not: SVG (see `svg`) or colours (see `paint`).

pub mod hatch;
mod line;
pub mod node;
pub mod paint;
mod spot;
mod spread;
pub mod svg;
mod voice;

use measure::say::{Arg, Say};
use plan::dome::Section;
use record::wig::{shade::Shade, zone::Zone};

pub(crate) use line::{rect, thin, thinned};
pub(crate) use spot::{fits, fits_near, innermost};
pub(crate) use spread::spread;
pub use voice::Voice;
pub(crate) use voice::{turns, wrap};

/// A place on a drawing: mm to the right, mm down.
pub type Place = [f64; 2];

/// What a touch on a shape means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Target {
    /// A zone of the cap.
    Zone(Zone),
    /// A row to sew.
    Row {
        /// Its section.
        section: Section,
        /// Its gap's number in the section.
        gap: usize,
        /// Its index in the placement.
        index: usize,
    },
    /// A length of weft, by index.
    Bar(usize),
    /// A piece on a length of weft: index of the length, index of the piece.
    Piece(usize, usize),
}

/// Which end of a text its place is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// It begins there.
    Start,
    /// It is centred there.
    Middle,
    /// It ends there.
    End,
}

/// A shape's form.
#[derive(Clone, Debug, PartialEq)]
pub enum Kind {
    /// Lines; closed ones enclose an area by the even-odd rule.
    Path {
        /// The lines.
        lines: Vec<Vec<Place>>,
        /// Whether each returns to its first point.
        closed: bool,
    },
    /// An upright rectangle.
    Rect {
        /// Upper left corner.
        at: Place,
        /// Width and height.
        size: Place,
    },
    /// A circle.
    Circle {
        /// Its middle.
        at: Place,
        /// Its radius.
        radius: f64,
    },
    /// One line of text.
    Text {
        /// On its base line.
        at: Place,
        /// What it says.
        say: Say,
        /// Which end `at` is.
        anchor: Anchor,
        /// Height of the letters' square, mm.
        size: f64,
    },
}

/// A shape.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// Its form.
    pub kind: Kind,
    /// How it is painted: a class of `paint`.
    pub class: &'static str,
    /// What it is, said on asking.
    pub label: Option<Say>,
    /// What a touch on it means.
    pub target: Option<Target>,
    /// A colour of its own.
    pub own: Option<Shade>,
}

impl Shape {
    /// A shape that is only looked at.
    pub fn new(class: &'static str, kind: Kind) -> Shape {
        Shape { kind, class, label: None, target: None, own: None }
    }

    /// Open lines.
    pub fn lines(class: &'static str, lines: Vec<Vec<Place>>) -> Shape {
        Shape::new(class, Kind::Path { lines, closed: false })
    }

    /// Closed lines.
    pub fn area(class: &'static str, lines: Vec<Vec<Place>>) -> Shape {
        Shape::new(class, Kind::Path { lines, closed: true })
    }

    /// A rectangle.
    pub fn rect(class: &'static str, at: Place, size: Place) -> Shape {
        Shape::new(class, Kind::Rect { at, size })
    }

    /// A text.
    pub fn text(class: &'static str, at: Place, say: Say, anchor: Anchor, size: f64) -> Shape {
        Shape::new(class, Kind::Text { at, say, anchor, size })
    }

    /// The same with a label.
    #[must_use]
    pub fn labelled(mut self, label: Say) -> Shape {
        self.label = Some(label);
        self
    }

    /// The same in a colour of its own.
    #[must_use]
    pub fn tinted(mut self, shade: Shade) -> Shape {
        self.own = Some(shade);
        self
    }

    /// The same with a target.
    #[must_use]
    pub fn to(mut self, target: Target) -> Shape {
        self.target = Some(target);
        self
    }

    /// Its smallest x, y and largest x, y, if there is anything of it; text by its estimated width.
    pub fn bounds(&self, voice: &Voice<'_>) -> Option<[f64; 4]> {
        let mut bounds = Bounds::default();
        match &self.kind {
            Kind::Path { lines, .. } => lines.iter().flatten().for_each(|place| bounds.take(*place)),
            Kind::Rect { at, size } => {
                bounds.take(*at);
                bounds.take([at[0] + size[0], at[1] + size[1]]);
            }
            Kind::Circle { at, radius } => {
                bounds.take([at[0] - radius, at[1] - radius]);
                bounds.take([at[0] + radius, at[1] + radius]);
            }
            Kind::Text { at, say, anchor, size } => {
                let width = voice.width(say, *size);
                let left = match anchor {
                    Anchor::Start => at[0],
                    Anchor::Middle => at[0] - width / 2.0,
                    Anchor::End => at[0] - width,
                };
                bounds.take([left, at[1] - 0.8 * size]);
                bounds.take([left + width, at[1] + 0.25 * size]);
            }
        }
        (bounds.0[0] <= bounds.0[2]).then_some(bounds.0)
    }

    fn shift(&mut self, by: Place) {
        let move_by = |place: &mut Place| *place = [place[0] + by[0], place[1] + by[1]];
        match &mut self.kind {
            Kind::Path { lines, .. } => lines.iter_mut().flatten().for_each(move_by),
            Kind::Rect { at, .. } | Kind::Circle { at, .. } | Kind::Text { at, .. } => move_by(at),
        }
    }
}

/// A drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// Left, top, width and height, mm.
    pub view_box: [f64; 4],
    /// What is drawn, from back to front.
    pub shapes: Vec<Shape>,
    /// Its name.
    pub title: Say,
    /// What it shows, for those who do not see it.
    pub description: Say,
}

impl Drawing {
    /// Frames shapes with an edge of so many mm round them.
    pub fn framed(shapes: Vec<Shape>, title: Say, description: Say, edge: f64, voice: &Voice<'_>) -> Drawing {
        let mut bounds = Bounds::default();
        for [left, top, right, bottom] in shapes.iter().filter_map(|shape| shape.bounds(voice)) {
            bounds.take([left, top]);
            bounds.take([right, bottom]);
        }
        let [left, top, right, bottom] = bounds.0;
        let view_box = if left <= right {
            [left - edge, top - edge, right - left + 2.0 * edge, bottom - top + 2.0 * edge]
        } else {
            [0.0, 0.0, 2.0 * edge, 2.0 * edge]
        };
        Drawing { view_box, shapes, title, description }
    }

    /// The same, moved so that its upper left corner lies at a place.
    #[must_use]
    pub fn moved_to(mut self, at: Place) -> Drawing {
        let by = [at[0] - self.view_box[0], at[1] - self.view_box[1]];
        self.shapes.iter_mut().for_each(|shape| shape.shift(by));
        self.view_box = [at[0], at[1], self.view_box[2], self.view_box[3]];
        self
    }
}

/// Words that are in no table: a name, a number.
pub(crate) fn plain(text: impl Into<String>) -> Say {
    Say::new("sheet.plain", [Arg::Text(text.into())])
}

struct Bounds([f64; 4]);

impl Default for Bounds {
    fn default() -> Bounds {
        Bounds([f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY])
    }
}

impl Bounds {
    fn take(&mut self, place: Place) {
        let [left, top, right, bottom] = self.0;
        self.0 = [left.min(place[0]), top.min(place[1]), right.max(place[0]), bottom.max(place[1])];
    }
}
