//! How classes are painted: line widths here, colours by role.
//!
//! What it is: one table for files that stand alone and for the page's stylesheet. What it is not: shapes.

/// What a colour is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Nothing is painted.
    None,
    /// Painted, but seen through: what is only touched.
    Clear,
    /// Words and main lines.
    Ink,
    /// Lines that stand back.
    Soft,
    /// The ground.
    Paper,
    /// The figure under the cap.
    Figure,
    /// What is to be done.
    Todo,
    /// What is chosen.
    Chosen,
    /// A colour of its own, which the shape brings along.
    Own,
}

impl Role {
    /// Its colour in a file of its own.
    pub fn alone(self) -> &'static str {
        match self {
            Role::None | Role::Clear | Role::Own => "none",
            Role::Ink => "#1a1a1e",
            Role::Soft => "#62626a",
            Role::Paper => "#ffffff",
            Role::Figure => "#efebe4",
            Role::Todo => "#8a2f0b",
            Role::Chosen => "#0b4f9e",
        }
    }

    /// Its colour in the stylesheet.
    pub fn in_style(self) -> &'static str {
        match self {
            Role::None | Role::Own => "none",
            Role::Clear => "transparent",
            Role::Ink => "currentColor",
            Role::Soft => "var(--d-soft)",
            Role::Paper => "var(--d-paper)",
            Role::Figure => "var(--d-figure)",
            Role::Todo => "var(--d-todo)",
            Role::Chosen => "var(--d-chosen)",
        }
    }
}

/// How a class is painted.
#[derive(Clone, Copy, Debug)]
pub struct Paint {
    /// The class.
    pub class: &'static str,
    /// Colour inside.
    pub fill: Role,
    /// Colour of the line.
    pub stroke: Role,
    /// Attributes that are no colours.
    pub form: &'static [(&'static str, &'static str)],
}

const fn paint(class: &'static str, fill: Role, stroke: Role, form: &'static [(&'static str, &'static str)]) -> Paint {
    Paint { class, fill, stroke, form }
}

const ROUND: (&str, &str) = ("stroke-linejoin", "round");
const CAPS: (&str, &str) = ("stroke-linecap", "round");
const HALO: [(&str, &str); 3] = [("stroke-width", "2.4"), ("paint-order", "stroke"), ROUND];
const HALO_BOLD: [(&str, &str); 4] =
    [("stroke-width", "2.4"), ("paint-order", "stroke"), ROUND, ("font-weight", "bold")];

/// All classes.
#[rustfmt::skip]
pub const PAINTS: &[Paint] = &[
    // The cap.
    paint("d-figure", Role::Figure, Role::Soft, &[("stroke-width", "0.7"), ROUND]),
    paint("d-feature", Role::None, Role::Soft, &[("stroke-width", "0.7"), CAPS]),
    paint("d-zone", Role::Paper, Role::Soft, &[("stroke-width", "0.5"), ("stroke-dasharray", "2 1.4"), ROUND]),
    paint("d-chosen", Role::None, Role::Chosen, &[("stroke-width", "2.6"), ROUND, ("pointer-events", "none")]),
    paint("d-hatch", Role::None, Role::Ink, &[("stroke-width", "0.4"), ("pointer-events", "none")]),
    paint("d-edge", Role::None, Role::Ink, &[("stroke-width", "1.3"), ROUND, CAPS, ("pointer-events", "none")]),
    paint("d-parting", Role::None, Role::Ink, &[("stroke-width", "1"), ("stroke-dasharray", "6 2 1.2 2"), ("pointer-events", "none")]),
    paint("d-base", Role::None, Role::Soft, &[("stroke-width", "0.5"), ("pointer-events", "none")]),
    paint("d-sewn", Role::None, Role::Ink, &[("stroke-width", "1.6"), ("stroke-dasharray", "0.1 3"), CAPS, ("pointer-events", "none")]),
    paint("d-add", Role::None, Role::Todo, &[("stroke-width", "2.2"), CAPS, ROUND]),
    paint("d-add-core", Role::None, Role::Paper, &[("stroke-width", "1"), CAPS, ROUND, ("pointer-events", "none")]),
    paint("d-part", Role::Paper, Role::Todo, &[("stroke-width", "0.9"), ("pointer-events", "none")]),
    paint("d-hit", Role::None, Role::Clear, &[("stroke-width", "6"), ("pointer-events", "stroke")]),
    paint("d-lead", Role::None, Role::Ink, &[("stroke-width", "0.7"), ("pointer-events", "none")]),
    paint("d-dot", Role::Ink, Role::Paper, &[("stroke-width", "0.5"), ("pointer-events", "none")]),
    // Words.
    paint("d-heading", Role::Ink, Role::None, &[("font-weight", "bold")]),
    paint("d-text", Role::Ink, Role::None, &[]),
    paint("d-note", Role::Soft, Role::None, &[]),
    paint("d-name", Role::Ink, Role::Paper, &HALO),
    paint("d-name-strong", Role::Ink, Role::Paper, &HALO_BOLD),
    paint("d-number", Role::Todo, Role::Paper, &HALO_BOLD),
    // Weft laid out, and charts. These are drawn at the size they are read at.
    paint("d-bar", Role::Paper, Role::Ink, &[("stroke-width", "0.4")]),
    paint("d-have", Role::Ink, Role::None, &[]),
    paint("d-piece", Role::Paper, Role::Ink, &[("stroke-width", "0.3")]),
    paint("d-fine", Role::None, Role::Ink, &[("stroke-width", "0.2"), ("pointer-events", "none")]),
    paint("d-tick", Role::None, Role::Soft, &[("stroke-width", "0.2"), ("pointer-events", "none")]),
    paint("d-label", Role::Ink, Role::Paper, &[("stroke-width", "1"), ("paint-order", "stroke"), ROUND]),
    // Rods and curves.
    paint("d-rod", Role::Paper, Role::Ink, &[("stroke-width", "0.8"), ROUND]),
    paint("d-arrow", Role::Ink, Role::Paper, &[("stroke-width", "0.8"), ROUND]),
    paint("d-middle", Role::None, Role::Ink, &[("stroke-width", "0.9"), ROUND, CAPS]),
    paint("d-outside", Role::None, Role::Ink, &[("stroke-width", "0.5"), ("stroke-dasharray", "2.4 1.1"), ROUND]),
    paint("d-limit", Role::None, Role::Todo, &[("stroke-width", "0.7"), ("stroke-dasharray", "5 1.2 1 1.2")]),
    // Colours of hair.
    paint("d-curve", Role::None, Role::Ink, &[("stroke-width", "0.7"), ROUND, CAPS]),
    paint("d-strip", Role::Own, Role::None, &[]),
    paint("d-strand", Role::None, Role::Own, &[("stroke-width", "1.6"), ("stroke-linecap", "butt"), ROUND, ("pointer-events", "none")]),
    paint("d-strand-rim", Role::None, Role::Soft, &[("stroke-width", "2.2"), ROUND, ("pointer-events", "none")]),
    paint("d-water", Role::Clear, Role::Ink, &[("stroke-width", "0.8")]),
    paint("d-wanted", Role::None, Role::Ink, &[("stroke-width", "0.5"), ("stroke-dasharray", "1.4 0.9")]),
];

/// How a class is painted, if it is one of ours.
pub fn of(class: &str) -> Option<&'static Paint> {
    PAINTS.iter().find(|paint| paint.class == class)
}

/// The stylesheet for drawings within a page: light, dark, forced colours and print.
///
/// Ink is the page's own text colour. A page with a switch of its own sets the `--d-` colours on any element round the
/// drawing with `.d-drawing` inside.
pub const fn style() -> &'static str {
    include_str!("drawing.css")
}

/// The stylesheet as the table above has it; the file is checked against it.
pub fn written_style() -> String {
    let mut css = String::from(
        "/* Written from the table in paint.rs: UPDATE_EXPECT=1 cargo test -p weftbook-sheet */\n\
         .d-drawing{--d-soft:#62626a;--d-paper:#ffffff;--d-figure:#efebe4;--d-todo:#8a2f0b;--d-chosen:#0b4f9e;\
         max-width:100%;height:auto}\n\
         @media (prefers-color-scheme:dark){.d-drawing{--d-soft:#a3a3ad;--d-paper:#17181b;--d-figure:#2b2a29;\
         --d-todo:#ffb48f;--d-chosen:#9cc4ff}}\n\
         @media (forced-colors:active){.d-drawing{forced-color-adjust:none;color:CanvasText;--d-soft:CanvasText;\
         --d-paper:Canvas;--d-figure:Canvas;--d-todo:CanvasText;--d-chosen:Highlight}}\n\
         @media print{.d-drawing{color:#000000;--d-soft:#4a4a4a;--d-paper:#ffffff;--d-figure:#f2f2f2;--d-todo:#000000;\
         --d-chosen:#000000}}\n",
    );
    for paint in PAINTS {
        let (fill, stroke) = (paint.fill.in_style(), paint.stroke.in_style());
        // A rule of the stylesheet would win over the colour a shape brings along.
        let rule = match (paint.fill, paint.stroke) {
            (Role::Own, _) => format!("stroke:{stroke}"),
            (_, Role::Own) => format!("fill:{fill}"),
            _ => format!("fill:{fill};stroke:{stroke}"),
        };
        css.push_str(&format!(".{}{{{rule}}}\n", paint.class));
    }
    css
}
