//! Entries as a table for other programs: comma-separated values (RFC 4180), one line an entry.
//!
//! What it is: columns `id`, `log`, `lamport`, `done`, `written`, `by`, `kind`, `v`, then whatever fields the entries fill, as in a
//! row. What it is not: a way to change entries: reading adds work that is not there, and says so of everything else.
//!
//! Spreadsheets take a text that begins with `=`, `+`, `-` or `@` for a sum to be reckoned. Such a text, and one that begins with
//! an apostrophe, is written with an apostrophe before it, which reading takes off.

use measure::{
    civil::Minute,
    order,
    say::{Arg, Say},
};
use record::{
    history::{
        entry::{Body, Entry, LogId, Written},
        log::Log,
    },
    id::{EntryId, PersonId},
};

use crate::{
    body,
    file::Problem,
    handover::entries::derived,
    json::shown,
    limits::{FILE_BYTES_MOST, ITEMS_MOST, LAMPORT_TAKEN_IN_MOST, ROW_BYTES_MOST},
    migrate::Flat,
    row::encode_row,
};

/// Columns of every table, in order; those of the bodies follow.
const HEAD: [&str; 8] = ["id", "log", "lamport", "done", "written", "by", "kind", "v"];
/// Columns at most: far more than all fields of all kinds.
const COLUMNS_MOST: usize = 2000;

/// What a table would add.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// Entries of a record like this one, with identity and clock: taken as they are.
    pub whole: Vec<Entry>,
    /// Work that somebody wrote into the table: its place on the logs' clock is still to be given.
    pub fresh: Vec<Entry>,
    /// Lines that are here already.
    pub here: usize,
    /// Lines that are left out, and why.
    pub problems: Vec<Problem>,
}

/// Writes entries, in the order given.
pub fn write<'a>(entries: impl IntoIterator<Item = &'a Entry>) -> String {
    let rows: Vec<(&Entry, Flat)> = entries.into_iter().map(|entry| (entry, body::to_flat(&entry.body))).collect();
    let mut names: Vec<&str> = Vec::new();
    for (_, flat) in &rows {
        names.extend(flat.keys().map(String::as_str).filter(|name| !HEAD.contains(name)));
    }
    order::sort_unique(&mut names);
    let mut out = String::new();
    let columns: Vec<String> = HEAD.iter().chain(&names).map(|name| (*name).to_owned()).collect();
    line(&mut out, &columns);
    for (entry, flat) in &rows {
        let of_flat = |name: &str| flat.get(name).cloned().unwrap_or_default();
        let mut cells = vec![
            entry.id.to_string(),
            entry.log.to_string(),
            entry.lamport.to_string(),
            entry.done.to_string(),
            entry.written.text().to_owned(),
            entry.by.map(|by| by.to_string()).unwrap_or_default(),
            of_flat("kind"),
            of_flat("v"),
        ];
        cells.extend(names.iter().map(|name| of_flat(name)));
        line(&mut out, &cells);
    }
    out
}

fn line(out: &mut String, cells: &[String]) {
    for (index, cell) in cells.iter().enumerate() {
        if index > 0 {
            out.push(',');
        }
        let guarded = cell.starts_with(['=', '+', '-', '@', '\t', '\r', '\'']);
        if guarded || cell.contains([',', '"', '\n', '\r']) {
            out.push('"');
            if guarded {
                out.push('\'');
            }
            out.push_str(&cell.replace('"', "\"\""));
            out.push('"');
        } else {
            out.push_str(cell);
        }
    }
    out.push_str("\r\n");
}

/// Reads the lines of a table, each with its number as an editor counts them.
fn lines(text: &str) -> Result<Vec<(usize, Vec<String>)>, Say> {
    let mut lines = Vec::new();
    let (mut cells, mut cell): (Vec<String>, String) = (Vec::new(), String::new());
    let (mut at, mut began) = (1, 1);
    let mut quoted = None;
    let mut letters = text.strip_prefix('\u{feff}').unwrap_or(text).chars().peekable();
    while let Some(letter) = letters.next() {
        at += usize::from(letter == '\n');
        match letter {
            '"' if quoted.is_some() => {
                if letters.next_if_eq(&'"').is_some() {
                    cell.push('"');
                } else {
                    quoted = None;
                }
            }
            letter if quoted.is_some() => cell.push(letter),
            '"' if cell.is_empty() => quoted = Some(at),
            ',' => cells.push(core::mem::take(&mut cell)),
            '\r' if letters.peek() == Some(&'\n') => {}
            '\n' => {
                cells.push(core::mem::take(&mut cell));
                put(&mut lines, began, core::mem::take(&mut cells))?;
                began = at;
            }
            letter => cell.push(letter),
        }
    }
    if let Some(opened) = quoted {
        return Err(Say::new("table.quote", [Arg::Count(opened as i64)]));
    }
    if !cells.is_empty() || !cell.is_empty() {
        cells.push(cell);
        put(&mut lines, began, cells)?;
    }
    Ok(lines)
}

fn put(lines: &mut Vec<(usize, Vec<String>)>, began: usize, cells: Vec<String>) -> Result<(), Say> {
    if lines.len() > ITEMS_MOST || cells.len() > COLUMNS_MOST {
        return Err(Say::new("format.file_too_long", [Arg::Count(lines.len() as i64), Arg::Count(ITEMS_MOST as i64)]));
    }
    if cells.iter().any(|cell| !cell.trim().is_empty()) {
        lines.push((began, cells));
    }
    Ok(())
}

/// Looks at a table: what it would add to a log. `written` is now.
///
/// # Errors
/// Where it is no table of ours as a whole; lines that are not taken stand in the answer, each with its reason.
pub fn read(text: &str, log: LogId, have: &Log, written: &Written) -> Result<Table, Say> {
    if text.len() > FILE_BYTES_MOST {
        return Err(Say::new(
            "format.file_too_long",
            [text.len(), FILE_BYTES_MOST].map(|bytes| Arg::Count(bytes as i64)),
        ));
    }
    let mut lines = lines(text)?.into_iter();
    let columns: Vec<String> = lines
        .next()
        .map(|(_, cells)| cells.iter().map(|cell| bare(cell.trim()).to_owned()).collect())
        .unwrap_or_default();
    if !columns.iter().any(|name| name == "kind") {
        return Err(Say::key("table.no_kind"));
    }
    for (index, name) in columns.iter().enumerate() {
        if !name.is_empty() && columns.iter().take(index).any(|other| other == name) {
            return Err(Say::new("table.twice", [Arg::Text(shown(name))]));
        }
    }
    let mut table = Table::default();
    for (number, cells) in lines {
        let mut flat = Flat::new_vec();
        for (name, cell) in columns.iter().zip(&cells) {
            let text = bare(cell);
            if !name.is_empty() && !text.is_empty() {
                flat.insert(name.clone(), text.to_owned());
            }
        }
        if let Err(why) = one(flat, log, have, written, &mut table) {
            table.problems.push(Problem { place: number.to_string(), why });
        }
    }
    Ok(table)
}

/// A cell without the apostrophe that keeps spreadsheets from reckoning.
fn bare(cell: &str) -> &str {
    cell.strip_prefix('\'').unwrap_or(cell)
}

fn one(mut flat: Flat, log: LogId, have: &Log, written: &Written, table: &mut Table) -> Result<(), Say> {
    let bytes: usize = flat.iter().map(|(name, text)| name.len() + text.len()).sum();
    if bytes > ROW_BYTES_MOST {
        return Err(Say::new("format.row_too_long", [bytes, ROW_BYTES_MOST].map(|bytes| Arg::Count(bytes as i64))));
    }
    if flat.remove("log").is_some_and(|of| of != log.to_string()) {
        return Err(Say::key("table.other_log"));
    }
    let member = |name: &'static str, text: &str, want| {
        Say::new("format.refused", [Arg::from(name), Arg::Text(shown(text)), Arg::Key(want)])
    };
    let id = flat.remove("id");
    let id = id.map(|text| EntryId::read(&text).ok_or_else(|| member("id", &text, "format.want_id"))).transpose()?;
    let lamport = flat.remove("lamport").and_then(|text| text.parse().ok()).filter(|at| *at <= LAMPORT_TAKEN_IN_MOST);
    let done = flat.remove("done").and_then(|text| Minute::read(&text)).ok_or_else(|| Say::key("table.no_done"))?;
    let said = flat.remove("written").and_then(|text| Written::read(&text));
    let by = flat.remove("by").and_then(|text| PersonId::read(&text));
    let kind = flat.get("kind").cloned().unwrap_or_default();
    if flat.get("v").is_none() {
        flat.insert("v".to_owned(), "0".to_owned());
    }
    if kind == body::SET && flat.get("of").is_none() {
        flat.insert("of".to_owned(), String::new());
    }
    if [body::SET, body::AMEND].contains(&kind.as_str()) && flat.get("over").is_none() {
        flat.insert("over".to_owned(), String::new());
    }
    let body = body::from_flat(log, flat).map_err(|trouble| match trouble {
        body::Trouble::Newer(say) | body::Trouble::Broken(say) => say,
    })?;
    // Work of the workshop, such as a count, belongs to its log.
    let is_work = matches!(&body, Body::Work(work) if work.kind().field("step").is_some());
    let mut entry = Entry {
        lamport: lamport.unwrap_or(0),
        id: id.unwrap_or_else(|| derived("")),
        log,
        done,
        written: said.clone().unwrap_or_else(|| written.clone()),
        by,
        body,
    };
    if id.is_none() {
        // The same line gives the same entry, whenever the table is read.
        let same = Entry { lamport: 0, written: Written::epoch(), ..entry.clone() };
        entry.id = derived(&format!("table {}", encode_row(&same)?));
    }
    match have.get(entry.id) {
        Some(here) if here.body == entry.body && here.done == entry.done => table.here += 1,
        Some(_) => return Err(Say::key("table.changed")),
        None if id.is_some() && lamport.is_some() && said.is_some() => {
            encode_row(&entry)?;
            table.whole.push(entry);
        }
        None if is_work => {
            if table.fresh.iter().any(|one| one.id == entry.id) {
                return Err(Say::key("format.twice"));
            }
            encode_row(&entry)?;
            table.fresh.push(entry);
        }
        None => return Err(Say::key("table.only_work")),
    }
    Ok(())
}
