//! What a person lets onto the sheet, and on which paper.
//!
//! What it is: parts to tick and sizes of paper. What it is not: what stands in a part.

/// A part of the sheet that may be left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// How the wig is now, what to lay out, the steps.
    Steps,
    /// Each zone: how full, how long, how it is.
    Zones,
    /// Cap, weft laid out, ruler.
    Drawings,
    /// Photos; a face may be on them.
    Photos,
    /// For whom it is, and the head's measures.
    Wearer,
    /// What things cost.
    Prices,
    /// Notes and remarks of the record.
    Notes,
    /// How the figures were reckoned.
    Working,
}

impl Part {
    /// All parts, in the order in which they are asked.
    pub const ALL: [Part; 8] = [
        Part::Steps,
        Part::Zones,
        Part::Drawings,
        Part::Photos,
        Part::Wearer,
        Part::Prices,
        Part::Notes,
        Part::Working,
    ];

    /// Its name, as the terminal takes it.
    pub fn name(self) -> &'static str {
        match self {
            Part::Steps => "steps",
            Part::Zones => "zones",
            Part::Drawings => "drawings",
            Part::Photos => "photos",
            Part::Wearer => "wearer",
            Part::Prices => "prices",
            Part::Notes => "notes",
            Part::Working => "working",
        }
    }

    /// Key of its label.
    pub fn label(self) -> &'static str {
        match self {
            Part::Steps => "sheet.part_steps",
            Part::Zones => "sheet.part_zones",
            Part::Drawings => "sheet.part_drawings",
            Part::Photos => "sheet.part_photos",
            Part::Wearer => "sheet.part_wearer",
            Part::Prices => "sheet.part_prices",
            Part::Notes => "sheet.part_notes",
            Part::Working => "sheet.part_working",
        }
    }

    /// The part of a name.
    pub fn read(name: &str) -> Option<Part> {
        Part::ALL.into_iter().find(|part| part.name() == name)
    }
}

/// A size of paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Paper {
    /// ISO 216: 210 mm by 297 mm.
    #[default]
    A4,
    /// ANSI/ASME Y14.1 size A: 8 1/2 in by 11 in.
    Letter,
}

impl Paper {
    /// Both.
    pub const ALL: [Paper; 2] = [Paper::A4, Paper::Letter];

    /// Its name, as the terminal and the stylesheet take it.
    pub fn name(self) -> &'static str {
        match self {
            Paper::A4 => "a4",
            Paper::Letter => "letter",
        }
    }

    /// What people call it; a name in every language.
    pub fn title(self) -> &'static str {
        match self {
            Paper::A4 => "A4",
            Paper::Letter => "Letter",
        }
    }

    /// The paper of a name.
    pub fn read(name: &str) -> Option<Paper> {
        Paper::ALL.into_iter().find(|paper| paper.name() == name)
    }

    /// Height of the whole page, mm.
    pub fn height_mm(self) -> f64 {
        match self {
            Paper::A4 => 297.0,
            Paper::Letter => 279.4,
        }
    }
}

/// What goes onto the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choices {
    parts: [bool; Part::ALL.len()],
    /// On which paper.
    pub paper: Paper,
}

impl Default for Choices {
    /// Steps, zones and drawings; nothing of the wearer, of money, no notes, no photos.
    fn default() -> Choices {
        Choices::none().with(Part::Steps, true).with(Part::Zones, true).with(Part::Drawings, true)
    }
}

impl Choices {
    /// No part at all: only what the wig is.
    pub fn none() -> Choices {
        Choices { parts: [false; Part::ALL.len()], paper: Paper::A4 }
    }

    /// The same with a part on it, or not.
    #[must_use]
    pub fn with(mut self, part: Part, on: bool) -> Choices {
        self.parts[part as usize] = on;
        self
    }

    /// The same on a paper.
    #[must_use]
    pub fn on(mut self, paper: Paper) -> Choices {
        self.paper = paper;
        self
    }

    /// Whether a part is on it.
    pub fn has(&self, part: Part) -> bool {
        self.parts[part as usize]
    }
}
