//! The English of the sheet's page.
//!
//! What it is: one table. What it is not: the words on the sheet (see the `sheet` room).

use measure::say::Table;

/// Keys and sentences.
pub const ENGLISH: Table = &[
    ("tab.sheet", "Sheet"),
    ("web.sheet_lead", "Everything a helper needs to do the work from paper. Nothing goes onto it but what you tick."),
    ("web.sheet_parts", "What goes onto it"),
    ("web.sheet_paper", "Paper"),
    (
        "web.sheet_ask_hint",
        "A name and how to reach it. It stands on the first page; left empty, there is a line to write it on.",
    ),
    ("web.sheet_print", "Print"),
    ("web.sheet_save", "Save as a file"),
    ("web.sheet_save_svg", "{0} as SVG"),
    ("web.sheet_preview", "What leaves this device"),
    (
        "web.sheet_pages",
        "{0} pages, exactly as they are printed and saved. The file needs no script and loads nothing.",
    ),
];
