//! The English of curl and heat.
//!
//! What it is: one table. What it is not: code: another language is another such table.

use measure::say::Table;

/// Keys and sentences.
pub const ENGLISH: Table = &[
    ("tab.heat", "Curl and heat"),
    ("web.heat_for", "For: {0}"),
    (
        "web.heat_none_curled",
        "No zone is to be curled or waved yet: say so below. Until then this is for straightening hanging locks.",
    ),
    ("web.heat_reach", "Will it reach, and which rod"),
    ("web.heat_reach_hint", "Say how each zone is to fall. Length is asked as it hangs when it is finished."),
    ("web.heat_pattern", "Setting pattern"),
    ("web.heat_rods", "Winding and sections"),
    ("web.heat_by_rod", "by the rod"),
    ("web.heat_test_curl", "A test curl"),
    (
        "web.heat_test_curl_hint",
        "Set one hidden lock, let it cool and dry, and measure it: it goes before all reckoning of curls and rods.",
    ),
    ("web.heat_tool", "How it is heated"),
    ("web.heat_lock", "Heat test lock"),
    (
        "web.heat_lock_hint",
        "Hidden locks, one for each temperature, coolest first ({0}). Wind, heat, cool and dry as you would the wig; stop at the first harm.",
    ),
    ("web.heat_untried", "not tried"),
    ("web.heat_lock_record", "Record what it showed"),
    ("web.heat_cut", "cut to {0} first"),
    ("web.heat_reaches", "reaches"),
    ("web.heat_by_weft", "only the weft reaches"),
    ("web.heat_short", "too short"),
    ("web.heat_rod", "{0} rods of {1}: the curl comes out {2} wide, may be {3} to {4}."),
    ("web.heat_rod_larger", "The next size, {0}, would give {1}."),
    ("web.heat_at_root", "at the root"),
    ("web.heat_rolled_usual", "top to the back, else down"),
    ("web.heat_span", "{0} ({1} to {2})"),
    ("web.heat_hold", "At heat, in all"),
    ("web.heat_cool", "Cooling"),
    ("web.heat_dry", "Drying"),
    ("web.heat_dry_long", "2 to 4 h warm, or overnight; days where it is damp"),
    ("web.heat_hold_usual", "as is usual"),
    ("web.heat_plan_it", "Put it into the plan of work"),
    ("web.heat_planned", "This set stands in the plan of work."),
    ("web.heat_record", "Record it as done"),
];
