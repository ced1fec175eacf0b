//! The English of the terminal.
//!
//! What it is: one table. What it is not: code: another language is another such table.

use measure::say::{Table, Words};

/// The tables of every room.
pub const WORDS: Words = Words(&[
    measure::words::ENGLISH,
    record::words::ENGLISH,
    plan::words::ENGLISH,
    plan::colour::words::ENGLISH,
    sheet::words::ENGLISH,
    format::words::ENGLISH,
    ENGLISH,
]);

/// Keys and sentences.
pub const ENGLISH: Table = &[
    (
        "cli.help",
        "weftbook: the wig maker’s record and arithmetic, from a terminal.\n\
         \n\
         weftbook plan WIG     how much weft to buy for a wig\n\
         weftbook cut CASE     cut any pieces from any packs at least cost\n\
         weftbook check FILE   look through a wig file or a backup\n\
         weftbook sheet WIG    a sheet that a helper follows from paper\n\
         weftbook merge A B    two files of one wig put together\n\
         \n\
         FILE is a file, or - for standard input.\n\
         --json          JSON instead of text\n\
         -h, --help      this, or after a command its own help\n\
         -V, --version   the version\n\
         \n\
         Exit status: 0 done; 1 there is something to see; 2 bad input, with one line on standard error.\n",
    ),
    (
        "cli.help_plan",
        "weftbook plan WIG: how much weft to buy for a wig, the answer first.\n\
         \n\
         WIG is a wig file that Weftbook saved, or - for standard input.\n\
         --json                   JSON instead of text\n\
         --today DAY              reckon as on this day, such as 2027-03-15 (else today, UTC)\n\
         --units metric|inches    lengths in the text\n\
         --weights grams|ounces   weights in the text\n\
         --currency SIGN          sign of your currency, up to four characters\n\
         \n\
         Exit status: 0 done; 1 no plan can be made of this wig yet, and why; 2 bad input.\n",
    ),
    (
        "cli.help_cut",
        "weftbook cut CASE: packs to buy and the weft laid out, at least cost.\n\
         \n\
         CASE is a JSON file, or - for standard input, such as\n\
         {\"packs\":[{\"name\":\"A\",\"length_mm\":1000,\"pieces\":1,\"price\":1899,\"owned\":0}],\n \
         \"pieces\":[{\"length_mm\":215,\"count\":4}],\"cut_loss_mm\":0}\n\
         price: of a pack, in the smallest money unit; pieces: lengths in a pack, 0 is not for sale;\n\
         owned: free single lengths; cut_loss_mm: lost between neighbours.\n\
         --json   JSON instead of text\n\
         \n\
         Exit status: 0 done; 2 bad input, or pieces that nothing holds.\n",
    ),
    (
        "cli.help_check",
        "weftbook check FILE: what is in a wig file or a backup, and what is odd about it.\n\
         \n\
         FILE is a file that Weftbook saved, or - for standard input.\n\
         --json                   JSON instead of text\n\
         --units metric|inches    lengths in the text\n\
         --weights grams|ounces   weights in the text\n\
         --currency SIGN          sign of your currency, up to four characters\n\
         \n\
         Exit status: 0 nothing to see; 1 there is something; 2 bad input.\n",
    ),
    (
        "cli.help_sheet",
        "weftbook sheet WIG: a sheet that a helper follows from paper.\n\
         \n\
         WIG is a wig file that Weftbook saved, - for standard input, or a folder of wig files.\n\
         -o, --out FILE           one HTML file that needs no script (else text to standard output);\n\
         \u{20}                        for a folder, the folder that the files go into\n\
         --paper a4|letter        the paper it is laid out for (else a4)\n\
         --with PARTS             parts to put on it, with commas between\n\
         --without PARTS          parts to leave out\n\
         --address ADDRESS        where Weftbook is hosted: puts a code on the sheet that leads there\n\
         --today DAY              made on this day, such as 2027-03-15 (else today, UTC)\n\
         --units metric|inches    lengths\n\
         --weights grams|ounces   weights\n\
         --currency SIGN          sign of your currency, up to four characters\n\
         \n\
         PARTS: steps, zones and drawings are on it unless left out; wearer, prices, notes, photos and\n\
         working only where asked for. A wig file carries no photos.\n\
         \n\
         Exit status: 0 done; 1 done, but part of the file could not be read; 2 bad input.\n",
    ),
    (
        "cli.help_merge",
        "weftbook merge A B: two files of one wig put together; nothing is overwritten.\n\
         \n\
         A is a wig file that Weftbook saved. B is another file of the same wig, or a return slip for it (a\n\
         file, or a text with its link). A step that a slip says is done and A has recorded too is left out\n\
         and named.\n\
         -o, --out FILE   where the wig file with both goes (else only what it would add is said)\n\
         \n\
         Exit status: 0 done; 1 done, and there is something to see; 2 bad input.\n",
    ),
    ("cli.merge_two", "merge needs two files. Name the other one too."),
    ("cli.merge_other", "the files are of two wigs: {0} and {1}. Choose two files of one wig."),
    ("cli.merge_sheet", "“{0}” is a sheet, nothing came back with it. Choose a slip or a wig file."),
    ("cli.merge_counts", "{0} new, {1} here already, {2} with one identity and two contents."),
    ("cli.merge_twice", "Step recorded as done twice: {0}."),
    ("cli.merge_answers", "Two answers that had not seen each other: {0}."),
    (
        "cli.merge_asked",
        "Line {0} of the slip is recorded here too; it was left out. Take the slip in on the page to decide.",
    ),
    ("cli.merge_written", "{0}: written."),
    ("cli.folder_out", "a folder needs a folder to write to. Say which with -o."),
    ("cli.sheet_link", "The steps as a link: {0} characters."),
    ("cli.sheet_bad", "{0}: {1}"),
    ("cli.sheet_partly", "{0}: done, but part of the file could not be read."),
    ("cli.sheets_done", "{0} sheets, {1} ms each; {2} to look at."),
    // Bad input.
    ("cli.no_command", "nothing is asked. Say plan, cut, check, sheet or merge; weftbook --help explains them."),
    (
        "cli.unknown_command",
        "“{0}” is no command. Say plan, cut, check, sheet or merge; weftbook --help explains them.",
    ),
    ("cli.no_file", "{0} needs a file. Name one, or - for standard input."),
    ("cli.one_file", "“{0}” is one word too many. One command and one file are taken."),
    ("cli.bad_option", "{0}. weftbook --help lists the options."),
    ("cli.not_of_command", "--{0} is no option of {1}. Leave it out."),
    ("cli.bad_value", "--{0} is “{1}”: {2}."),
    ("cli.want_day", "say a day such as 2027-03-15"),
    ("cli.want_units", "say metric or inches"),
    ("cli.want_weights", "say grams or ounces"),
    ("cli.want_address", "say where Weftbook is hosted: the whole address, from https on to the last slash"),
    ("cli.want_currency", "say a sign of one to four characters"),
    ("cli.unread", "“{0}” cannot be read: {1}."),
    ("cli.no_such_file", "there is no such file; check its name"),
    ("cli.not_allowed", "you are not allowed to; check its rights"),
    ("cli.a_folder", "it is a folder; name a file in it"),
    ("cli.too_long", "“{0}” is longer than {1} bytes, the most that is read. Choose a smaller file."),
    ("cli.in_file", "“{0}”: {1}"),
    ("cli.not_written", "the answer could not be written: {0}."),
    ("cli.no_clock", "the clock cannot be read. Say the day with --today."),
    ("cli.case_not_json", "the case is no JSON: {0}. weftbook cut --help shows one."),
    ("cli.case_refused", "{0} is {1}: {2}."),
    ("cli.case_missing", "{0} is missing: {1}."),
    ("cli.case_unknown", "{0} is unknown: leave it out; known there are {1}."),
    ("cli.case_twice", "{0} stands twice: leave one out."),
    ("cli.case_fault", "{0}."),
    ("cli.case_faults", "{0} (and {1} more)."),
    ("cli.want_whole", "give a whole number from {0} to {1}"),
    ("cli.want_name", "give a name in quotes"),
    ("cli.want_list", "give a list in square brackets"),
    ("cli.want_object", "give an object in curly brackets"),
    // Plan.
    ("cli.no_wefts", "No wefts on this cap: it is fully knotted. Hair is added to it knot by knot."),
    ("cli.no_lot", "No weft is chosen for this wig yet: add one to see how many packs it takes."),
    ("cli.head_refused", "These measures cannot be one head:"),
    ("cli.pieces_refused", "The pieces cannot be had:"),
    ("cli.of_field", "{0}: {1}"),
    ("cli.file", "The file"),
    ("cli.see_check", "“weftbook check” lists what was not read."),
    ("cli.facts", "In short"),
    ("cli.item", "  {0}"),
    ("cli.fact", "  {0}: {1}"),
    ("cli.three", "{0} (low) · {1} (likely) · {2} (high)"),
    ("cli.times", "{0} × {1}"),
    ("cli.fact_wig", "Wig"),
    ("cli.fact_packs", "Packs"),
    ("cli.fact_buy", "To buy"),
    ("cli.fact_cost", "Cost"),
    ("cli.fact_weft", "Weft in all"),
    ("cli.fact_hold", "Of it kept back"),
    ("cli.fact_hairline", "Of it for the hairline"),
    ("cli.fact_parting", "Of it along the parting"),
    ("cli.fact_left", "Left over"),
    ("cli.fact_weight", "Weight added"),
    ("cli.fact_time", "Sewing"),
    ("cli.fact_order", "Order by"),
    ("cli.order_day", "{0}"),
    ("cli.order_late", "{0}: that day is past"),
    ("cli.not_enough", "not enough to be had"),
    ("cli.no_price", "not known until each pack has its price"),
    ("cli.rows", "Rows to sew"),
    ("cli.row", "Row"),
    ("cli.section", "Section"),
    ("cli.gap", "Gap"),
    ("cli.place", "From the start"),
    ("cli.length", "Length"),
    ("cli.zones", "Zones"),
    ("cli.in_gap", "in gap {0}"),
    ("cli.on_row", "on the row at gap {0}"),
    ("cli.whole_row", "{0}"),
    ("cli.part_row", "{0}, part row"),
    ("cli.laid", "Weft laid out"),
    ("cli.fullness", "Fullness, strands at the root"),
    ("cli.zone", "Zone"),
    ("cli.now", "As it is now"),
    ("cli.wanted", "Wanted"),
    ("cli.with_plan", "With these rows"),
    ("cli.cautions", "Mind"),
    ("cli.caution", "  {0}: {1} {2}"),
    ("cli.stop", "Stop"),
    ("cli.care", "Take care"),
    ("cli.consider", "Consider"),
    ("cli.working", "Working"),
    ("cli.worked", "  {0}: {1} [{2}]"),
    ("cli.measured", "measured"),
    ("cli.reckoned", "reckoned"),
    ("cli.assumed", "assumed: {0}; {1}"),
    // Cut.
    ("cli.cut_nothing", "Nothing to buy: what is owned is enough."),
    ("cli.cut_buy", "Buy {0} for {1} in the smallest money unit."),
    ("cli.cut_proved", "Cannot be done cheaper: {0}."),
    ("cli.cut_open", "Best found: {0}. It cannot cost less than {1} in the smallest money unit."),
    ("cli.plan_proved", "Cannot be done cheaper: {0}."),
    ("cli.plan_open", "Best found; at most {0} above the cheapest there can be."),
    ("cli.plan_open_packs", "Best found; fewer packs might do."),
    ("cli.bar", "Bar"),
    ("cli.pack", "Pack"),
    ("cli.pieces_mm", "Pieces, mm"),
    ("cli.offcut_mm", "Left over, mm"),
    ("cli.of_owned", "{0} (owned)"),
    ("cli.of_bought", "{0}"),
    // Check.
    ("cli.clean", "Nothing to see: all of it was read, and nothing in it is odd."),
    ("cli.not_clean", "There is something to see."),
    ("cli.kind_wig", "A wig file"),
    ("cli.kind_backup", "A backup"),
    ("cli.made", "{0}, made {1} by {2}."),
    ("cli.checksum_match", "Its checksum matches."),
    ("cli.checksum_differs", "Its checksum does not match: the file was damaged or changed since it was made."),
    ("cli.checksum_absent", "It has no checksum."),
    ("cli.problem", "  {0}, {1}: {2}"),
    ("cli.fixed", "Put right"),
    ("cli.newer", "Newer"),
    ("cli.unreadable", "Damaged"),
    ("cli.dropped", "Left out"),
    ("cli.workshop", "The workshop"),
    ("cli.wig", "{0} ({1})"),
    ("cli.no_name", "A wig without a name"),
    ("cli.nothing_odd", "Nothing odd in its record."),
    ("cli.two_answers", "“{0}” has two answers; “{1}” counts until somebody chooses."),
    ("cli.two_answers_zone", "“{0}” of “{2}” has two answers; “{1}” counts until somebody chooses."),
    ("cli.target_missing", "Entry {0} puts right an entry that is not here."),
    ("cli.target_is_amendment", "Entry {0} puts right a correction; only originals can be put right."),
    ("cli.other_kind", "Entry {0} would turn work into a value, or one value into another; it is left aside."),
    ("cli.two_corrections", "Entry {0} was put right twice, differently; the later one counts."),
    ("cli.clash", "Entry {0} is here with two contents; both are kept."),
    // The sheet.
    ("cli.want_paper", "say a4 or letter"),
    (
        "cli.want_parts",
        "name parts with commas between: steps, zones, drawings, photos, wearer, prices, notes, working",
    ),
    ("cli.file_not_written", "“{0}” cannot be written: {1}. Name a file in a folder that you may write to."),
    ("cli.no_json", "a sheet is text, or HTML with -o FILE. Leave --json out."),
    ("cli.sheet_done", "{0}: {1} pages of {2}"),
];
