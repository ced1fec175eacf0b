//! The English of the fibre drawer and of finding again.
//!
//! What it is: one table. What it is not: code: another language is another such table.

use measure::say::Table;

/// Keys and sentences.
pub const ENGLISH: Table = &[
    ("web.nav_fibres", "Fibres"),
    ("web.nav_find", "Find"),
    ("web.table", "A table that may be wider than the screen"),
    (
        "web.fibres_lead",
        "What each fibre bears and takes, where that comes from, and what you found out yourself. The maker’s label goes first.",
    ),
    (
        "web.fibre_lead",
        "Figures are a beginning: the maker’s label, then your own test lock, then these. Never heat a wig while it is worn.",
    ),
    ("web.fibre_heat", "Heat"),
    ("web.fibre_own", "Your own heat test locks"),
    ("web.fibre_dye", "Colour"),
    ("web.fibre_solvents", "Solvents that harm it"),
    ("web.fibre_worked", "What was done with it, and did it hold?"),
    ("web.medium", "Heated by"),
    ("web.window", "Good for"),
    ("web.never_above", "Never above"),
    ("web.ground_short", "{0}; {1}"),
    ("web.ground", "{0} ({1}; {2})"),
    ("web.never_above_it", "never above {0}"),
    ("web.release_below", "Let go below {0}, not before the middle is that cool."),
    ("web.must_dry", "After a wet set: cool and dry before it is let go."),
    (
        "web.window_note",
        "Iron figures are what the dial says; irons run 20 to 30 degrees hotter. The higher end is for after a test lock.",
    ),
    ("web.disagree", "Sources disagree:"),
    ("web.all_findings", "Everything published or said about its heat"),
    ("web.colour_class", "Kind of colour"),
    ("web.takes", "Takes it?"),
    ("web.bath", "The bath it needs"),
    ("web.flash", "Its vapour catches fire from {0} on."),
    ("web.no_solvent_known", "None is known to us; that does not make any of them safe. Test a hidden lock."),
    (
        "web.no_locks",
        "None yet. Try a hidden lock before a whole wig: the coolest first, and write down what it showed.",
    ),
    ("web.own_window", "held from {0} to {1}; {2} locks"),
    ("web.own_window_harm", "held from {0} to {1}, harmed from {2}; {3} locks"),
    ("web.own_harm", "harmed from {0}, nothing held below that; {1} locks"),
    ("web.own_nothing", "nothing held yet; {0} locks"),
    ("web.lock_heat", "Tried at"),
    ("web.lock_shown", "It showed"),
    ("web.lock_of", "Of"),
    ("web.lock_add", "Write down a test lock"),
    ("web.nothing_worked", "Nothing was recorded with it yet."),
    ("web.find_lead", "Every entry of every wig. Leave empty what does not matter."),
    ("web.find_words", "Words"),
    ("web.find_kind", "Work"),
    ("web.find_any", "any"),
    ("web.find_low", "Hotter than"),
    ("web.find_high", "Cooler than"),
    ("web.find_dye", "Dye"),
    ("web.find_from", "From"),
    ("web.find_to", "To"),
    ("web.found", "{0} found"),
    ("web.found_first", "{0} found; the newest {1} are shown"),
    ("web.found_none", "Nothing is like that. Leave something out."),
];
