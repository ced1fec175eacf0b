//! Where the tables' figures come from.
//!
//! What it is: one row per source. What it is not: a claim that a source was read where it says recalled.

use super::fact::{Known, Source};

/// Common practice.
pub const PRACTICE: Source = Source { text: "common practice, no source", known: Known::Practice };

/// Our own judgement.
pub const JUDGED: Source = Source { text: "our own judgement, no source", known: Known::Judged };

/// Head measures by girth.
pub const MESH: Source = Source {
    text: "computed on the averaged scalp mesh that MNE-Python carries (fsaverage), scaled to the girth, hairline drawn by hand; ±8 %",
    known: Known::Computed,
};

/// Trade size charts.
pub const CHARTS: Source = Source {
    text: "wig makers' size charts compared (three charts and a workshop's averages), scaled to the girth",
    known: Known::Computed,
};

/// Doll-hair fineness.
pub const US5083967: Source = Source {
    text: "US patent 5083967 (10 to 100 denier for doll hair) and common practice for wigs",
    known: Known::Read,
};

/// Polyester fineness.
pub const JP202416312: Source = Source {
    text: "Japanese patent application 2024-16312 (20 dtex and up) and common practice for wigs",
    known: Known::Read,
};

/// Hair fineness.
pub const HAIR_DIAMETER: Source = Source {
    text: "computed from hair diameters of 57 to 86 µm (Erik 2008; Jeong 2011) and a density of 1.32 g/cm³",
    known: Known::Computed,
};

/// Wig weights by length.
pub const WEIGHT_TABLE: Source = Source {
    text: "computed from a trade table of whole-wig weight by length at 130 %: 8.27 g an inch and 30 g for the cap",
    known: Known::Computed,
};

/// Hairs on the root side of a knot or stitch.
pub const PUPIL: Source = Source { text: "ventilating practice: a root turn-over of about 1 in", known: Known::Read };
