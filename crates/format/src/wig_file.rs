//! The wig file: one wig to hand on, with read-only cards of the lots it uses.
//!
//! What it is: `{"weftbook":"wig","version":0,"producer","made","sha256","demo","wig","rows","lots"}`.
//! What it is not: stock: taking it in takes the wig's rows only, never the lots.
//!
//! `sha256` is over the list after `"rows":` as it stands, as in a backup; absent or null where nobody took it.

use measure::{
    order,
    say::{Arg, Say},
};
use record::{
    field::Value as Field,
    history::{
        entry::{Body, Entry, LogId, Of, Says},
        log::Log,
    },
    id::{EntryId, LotId, WigId},
    wig::work::Work,
};

use crate::{
    backup::{Rows, stable_all},
    file::{Head, Report, check_length, listed, open, read_or_mend, start},
    json::{quoted, refused, sha256},
    preview::lot_of,
    row::Item,
    scan::Json,
};

/// Kind of the file.
pub const KIND: &str = "wig";

/// A wig file that was read.
#[derive(Clone, Debug, PartialEq)]
pub struct WigFile {
    /// Who made it, and when.
    pub head: Head,
    /// Whether the wig is invented, to show what a record looks like.
    pub demo: bool,
    /// Which wig.
    pub wig: WigId,
    /// The wig's rows.
    pub rows: Vec<Item>,
    /// Rows of the maker's workshop about the lots this wig uses: to read, never to add.
    pub lots: Vec<Item>,
    /// What became of its contents.
    pub report: Report,
}

impl WigFile {
    /// The wig's log.
    pub fn log(&self) -> Log {
        Log::of(self.rows.iter().filter_map(Item::entry).cloned())
    }

    /// The log of the maker's workshop, as far as this wig needs it.
    pub fn workshop(&self) -> Log {
        Log::of(self.lots.iter().filter_map(Item::entry).cloned())
    }

    /// The rows for a store to take in: the wig's alone.
    pub fn taken_in(&self) -> String {
        Rows { rows: self.rows.clone(), clashes: Vec::new() }.taken_in()
    }
}

/// Reads a wig file.
///
/// # Errors
/// Where it is no wig file, was made by a newer version, or is damaged before its first list; rows that belong
/// elsewhere are left out and stand in the report, and so does what was lost of a file that breaks off.
pub fn read_wig(text: &str) -> Result<WigFile, Say> {
    read_or_mend(text, &["rows", "lots"], read_whole, |file| &mut file.report)
}

fn read_whole(text: &str) -> Result<WigFile, Say> {
    let mut file = open(text, KIND)?;
    let demo = match file.value("demo") {
        None => false,
        Some(Json::Bool(demo)) => demo,
        other => return Err(refused("demo", other.as_ref(), "format.want_yes_no")),
    };
    let wig = file.text("wig")?;
    let wig = WigId::read(&wig).ok_or_else(|| refused("wig", Some(&Json::Text(wig)), "format.want_id"))?;
    let (rows, rows_text) = file.list("rows")?;
    let mut report = Report::new(file.checksum(rows_text)?);
    let rows = report.rows("rows", &rows);
    let rows = only(&mut report, "rows", rows, LogId::Wig(wig));
    let lots = report.rows("lots", &file.list("lots")?.0);
    let lots = only(&mut report, "lots", lots, LogId::Workshop);
    let head = file.head.clone();
    for (name, _) in file.rest() {
        report.drop(name, Say::key("format.unknown_member"));
    }
    Ok(WigFile { head, demo, wig, rows, lots, report })
}

fn only(report: &mut Report, name: &str, items: Vec<Item>, log: LogId) -> Vec<Item> {
    let mut kept = Vec::with_capacity(items.len());
    for (index, item) in items.into_iter().enumerate() {
        match item.address {
            Some(at) if at.log != log => {
                report.kept -= usize::from(item.entry().is_some());
                let says = [Arg::Text(at.log.to_string()), Arg::Text(log.to_string())];
                report.drop(format!("{name}[{index}]"), Say::new("format.other_log", says));
            }
            _ => kept.push(item),
        }
    }
    kept
}

/// Writes a wig file, with what the workshop's rows say of the lots this wig uses.
///
/// # Errors
/// Where it would be longer than any reader takes.
pub fn write_wig(head: &Head, demo: bool, wig: WigId, rows: &[Item], workshop: &[Item]) -> Result<String, Say> {
    let used = lots_used(rows.iter().filter_map(Item::entry));
    let cards = cards(workshop, &used);
    let rows = listed(stable_all(rows).iter().map(String::as_str));
    let lots = listed(stable_all(&cards).iter().map(String::as_str));
    let demo = if demo { "true" } else { "false" }.to_owned();
    let mut text =
        start(KIND, head, &[("sha256", quoted(&sha256(&rows))), ("demo", demo), ("wig", quoted(&wig.to_string()))]);
    text.push_str(&format!(",\"rows\":{rows},\"lots\":{lots}}}\n"));
    check_length(text.len())?;
    Ok(text)
}

/// Every lot that a wig's entries speak of, each once, sorted.
pub fn lots_used<'a>(entries: impl Iterator<Item = &'a Entry>) -> Vec<LotId> {
    let mut lots = Vec::new();
    for entry in entries {
        let (work, key, value) = match &entry.body {
            Body::Work(work) => (Some(work), None, None),
            Body::Set(setting) => (None, Some(setting.key), setting.value.as_ref()),
            Body::Amend(amendment) => match amendment.to.as_ref().map(|to| &to.says) {
                Some(Says::Work(work)) => (Some(work), None, None),
                Some(Says::Value(key, value)) => (None, Some(*key), value.as_ref()),
                None => (None, None, None),
            },
        };
        lots.extend(work.and_then(lot_in));
        lots.extend(value.and_then(as_lot));
        if let Some(Of::Lot(lot)) = key.map(|key| key.of) {
            lots.push(lot);
        }
    }
    order::sort_unique(&mut lots);
    lots
}

fn as_lot(value: &Field) -> Option<LotId> {
    match value {
        Field::Lot(lot) => Some(*lot),
        _ => None,
    }
}

fn lot_in(work: &Work) -> Option<LotId> {
    work.values().find_map(|(_, value)| as_lot(value))
}

/// The workshop's rows about some lots: what they are, how they were counted, and what was put right of that.
fn cards(workshop: &[Item], lots: &[LotId]) -> Vec<Item> {
    let about = |entry: &Entry| match &entry.body {
        Body::Work(work) => lot_in(work),
        _ => lot_of(entry),
    };
    let mut originals: Vec<EntryId> = workshop
        .iter()
        .filter_map(Item::entry)
        .filter(|entry| about(entry).is_some_and(|lot| lots.binary_search(&lot).is_ok()))
        .map(|entry| entry.id)
        .collect();
    order::sort(&mut originals);
    let wanted = |entry: &Entry| match &entry.body {
        Body::Amend(amendment) => originals.binary_search(&amendment.target).is_ok(),
        _ => originals.binary_search(&entry.id).is_ok(),
    };
    workshop.iter().filter(|item| item.entry().is_some_and(wanted)).cloned().collect()
}
