//! The English of this crate.
//!
//! What it is: one table. What it is not: code: another language is another such table.

use measure::say::Table;

/// Keys and sentences.
pub const ENGLISH: Table = &[
    ("format.missing", "“{0}” is not there: {1}."),
    ("format.refused", "“{0}” is “{1}”: {2}."),
    ("format.want_id", "it should be 32 digits 0 to 9 and a to f"),
    ("format.want_ids", "it should be identities of 32 digits each with one space between them, or empty"),
    ("format.want_place", "it should be a whole number from 0 to 4294967295"),
    ("format.want_log", "it should be “workshop”, or a wig's 32 digits 0 to 9 and a to f"),
    ("format.want_person", "it should be a person's 32 digits 0 to 9 and a to f, or empty"),
    ("format.want_lamport", "it should be a whole number from 0 to 9007199254740991"),
    (
        "format.want_lamport_of_file",
        "it is further ahead than any real record; in a file it should be a whole number from 0 to 4503599627370496",
    ),
    ("format.want_version", "it should be a whole number, 0 or more"),
    ("format.want_minute", "it should be a day and a time such as 2026-11-25T09:30"),
    ("format.want_moment", "it should be a moment such as 2026-11-25T09:31:02Z"),
    ("format.want_kind", "it should name the kind of entry"),
    ("format.want_original", "a correction should say work or a value, not another correction"),
    ("format.want_slot", "it should name what the value is"),
    ("format.want_of", "it should be empty for the wig, or the zone or lot that such a value belongs to"),
    ("format.want_text", "it should be a text"),
    ("format.want_list", "it should be a list"),
    ("format.want_object", "it should be an object with named members"),
    ("format.want_yes_no", "it should be true or false"),
    ("format.want_sha256", "it should be 64 digits 0 to 9 and a to f"),
    ("format.want_base64", "it should be base64"),
    ("format.field", "“{0}” is “{1}”: {2}"),
    ("format.refusal", "“{0}”: {1}"),
    ("format.work", "The work “{0}” is not complete. {1}"),
    ("format.not_json", "This cannot be read as JSON from line {0}, column {1} on."),
    ("format.cut_off", "This breaks off at line {0}, column {1}. Fetch or copy the file again."),
    (
        "format.not_as_expected",
        "From line {0}, column {1} on this is not what was expected: a member stands twice, a list is too long, or it is a thing of another kind.",
    ),
    ("format.list", "The list “{0}” cannot be read. {1}"),
    ("format.not_utf8", "This is not a text file: byte {0} is not UTF-8. Choose a file that Weftbook saved."),
    ("format.file_too_long", "This file would be {0} bytes long, and at most {1} can be read. Choose a smaller file."),
    ("format.row_too_long", "This entry would be {0} bytes long, and at most {1} can be kept. Shorten its words."),
    ("format.name_too_long", "This name has {0} characters, and at most {1} can be kept. Shorten it."),
    ("format.not_ours", "This is not a {0} file of Weftbook. Choose one that Weftbook saved."),
    (
        "format.other_kind",
        "This is a Weftbook file of the kind “{0}”, but a “{1}” file is wanted here. Choose another.",
    ),
    (
        "format.newer_file",
        "This file was made by a newer version ({0}): its form is {1}, and this version reads up to {2}. Load the newer version, then open it again.",
    ),
    (
        "format.newer_row",
        "This entry was made by a newer version: its form is {0}, and this version reads up to {1}. It is kept as it is.",
    ),
    ("format.newer_kind", "“{0}” is a kind of entry that only a newer version knows. It is kept as it is."),
    ("format.newer_body", "This “{0}” was written in the form of a newer version. It is kept as it is."),
    ("format.newer_slot", "“{0}” is a value that only a newer version knows. It is kept as it is."),
    ("format.newer_field", "“{0}” is a field that only a newer version knows. It is kept as it is."),
    ("format.newer_choice", "For “{0}” only a newer version knows “{1}”. It is kept as it is."),
    ("format.no_way_up", "This “{0}” has form {1}, which no version of Weftbook has shipped. It is kept as it is."),
    ("format.migrations_in_a_ring", "This entry's form leads back to itself. It is kept as it is."),
    ("format.other_log", "This entry belongs to {0}, not to {1}. It was left out."),
    (
        "format.mended",
        "The file is damaged here or breaks off. {0} could be read out whole; {1} damaged ones are kept as they are. If you have another copy, take that in too.",
    ),
    ("format.twice", "This stands here a second time. Once is enough."),
    ("format.unread_at_making", "Some rows could not be read when this backup was made. They are not in it."),
    ("format.unknown_member", "Nothing here knows this part of the file. It was left out."),
    ("format.report", "{0} entries read; {1} put right, {2} made by a newer version, {3} damaged, {4} left out."),
];
