//! From a demo wig's lines to its wig file.
//!
//! What it is: the only writer of the files in `demo-data`. What it is not: a way to make a person's own wig.

use format::{file::Head, row::Item, wig_file::write_wig};
use measure::{prefs::Prefs, say::Words};
use record::history::log::Log;

use crate::lines::Lines;

/// The word tables a refusal may need.
pub const WORDS: Words =
    Words(&[measure::words::ENGLISH, record::words::ENGLISH, plan::words::ENGLISH, format::words::ENGLISH]);

/// The wig file of some lines; the same lines give the same bytes.
///
/// # Errors
/// The line that does not read, or why the file cannot be written.
pub fn wig_file(text: &str) -> Result<String, String> {
    let lines = Lines::read(text)?;
    let words = |say: measure::say::Say| say.words(&WORDS, &Prefs::default());
    let items = |log: &Log| {
        let mut entries: Vec<_> = log.all().collect();
        entries.sort_by_key(|entry| (entry.lamport, entry.id));
        entries.into_iter().map(Item::of).collect::<Result<Vec<Item>, _>>()
    };
    let head = Head { producer: "Weftbook demo data".to_owned(), made: lines.last_day() };
    let (rows, workshop) = (items(lines.wig()).map_err(words)?, items(lines.workshop()).map_err(words)?);
    write_wig(&head, true, lines.wig_id(), &rows, &workshop).map_err(words)
}
