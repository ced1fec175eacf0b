//! One entry as the store keeps it, format version 0.
//!
//! What it is: the envelope `{"by","body","done","id","lamport","log","v","written"}` and its three answers.
//! What it is not: a file of many rows (see `backup`, `wig_file`).
//!
//! Keys are sorted and nothing is spaced, so the same entry always has the same bytes.

use measure::{
    civil::Minute,
    say::{Arg, Say},
};
use record::{
    history::entry::{Entry, LogId, Written},
    id::{EntryId, PersonId},
};

use crate::{
    body::{self, Trouble},
    json::{not_json, object, quoted, read, refused},
    limits::{LAMPORT_MOST, ROW_BYTES_MOST},
    migrate::Flat,
    scan::{self, Json, Object},
};

/// Version of the envelope.
pub const VERSION: u64 = 0;

/// The members of an envelope, sorted.
const MEMBERS: &[&str] = &["body", "by", "done", "id", "lamport", "log", "v", "written"];

/// What a row turned out to be.
#[derive(Clone, Debug, PartialEq)]
pub enum Decoded {
    /// An entry.
    Entry(Entry),
    /// Made by a newer version: its wig can be looked at but not written to here, and the row stays as it is.
    Newer {
        /// The entry's identity.
        id: EntryId,
        /// Whose log.
        log: LogId,
        /// What is not known here.
        what: Say,
    },
    /// Damaged: kept to the letter.
    Unreadable {
        /// What is wrong with it.
        reason: Say,
        /// The row as it was found.
        raw: String,
    },
}

/// What a store needs to know of a row, readable or not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Address {
    /// The entry's identity.
    pub id: EntryId,
    /// Whose log.
    pub log: LogId,
    /// Its place on the logs' clock.
    pub lamport: u64,
}

/// A row with all that could be made of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// As it was found.
    pub raw: String,
    /// Where it belongs, if that much can be read.
    pub address: Option<Address>,
    /// What it says.
    pub decoded: Decoded,
}

impl Item {
    /// Reads a row.
    pub fn read(raw: &str) -> Item {
        let (address, answer) = decode(raw);
        let decoded = match (answer, address) {
            (Ok(entry), _) => Decoded::Entry(entry),
            (Err(Trouble::Newer(what)), Some(Address { id, log, .. })) => Decoded::Newer { id, log, what },
            (Err(Trouble::Newer(reason) | Trouble::Broken(reason)), _) => {
                Decoded::Unreadable { reason, raw: raw.to_owned() }
            }
        };
        Item { raw: raw.to_owned(), address, decoded }
    }

    /// A row for an entry.
    ///
    /// # Errors
    /// As [`encode_row`].
    pub fn of(entry: &Entry) -> Result<Item, Say> {
        let address = Some(Address { id: entry.id, log: entry.log, lamport: entry.lamport });
        Ok(Item { raw: encode_row(entry)?, address, decoded: Decoded::Entry(entry.clone()) })
    }

    /// The entry, if it is one.
    pub fn entry(&self) -> Option<&Entry> {
        match &self.decoded {
            Decoded::Entry(entry) => Some(entry),
            _ => None,
        }
    }
}

/// Reads a row; never fails, never forgets.
pub fn decode_row(text: &str) -> Decoded {
    Item::read(text).decoded
}

/// Writes a row; the same entry gives the same bytes.
///
/// # Errors
/// Where the row would be longer than any reader takes, or its lamport beyond what JSON keeps exactly.
pub fn encode_row(entry: &Entry) -> Result<String, Say> {
    if entry.lamport > LAMPORT_MOST {
        return Err(refused("lamport", Some(&Json::Number(entry.lamport.to_string())), "format.want_lamport"));
    }
    let body = body::to_flat(&entry.body);
    let body: Vec<(&str, String)> = body.iter().map(|(name, text)| (name.as_str(), quoted(text))).collect();
    let text = object(&[
        ("body", object(&body)),
        ("by", quoted(&entry.by.map_or_else(String::new, |by| by.to_string()))),
        ("done", quoted(&entry.done.to_string())),
        ("id", quoted(&entry.id.to_string())),
        ("lamport", entry.lamport.to_string()),
        ("log", quoted(&entry.log.to_string())),
        ("v", VERSION.to_string()),
        ("written", quoted(entry.written.text())),
    ]);
    if text.len() > ROW_BYTES_MOST { Err(too_long(text.len())) } else { Ok(text) }
}

fn too_long(bytes: usize) -> Say {
    Say::new("format.row_too_long", [Arg::Count(bytes as i64), Arg::Count(ROW_BYTES_MOST as i64)])
}

fn decode(raw: &str) -> (Option<Address>, Result<Entry, Trouble>) {
    if raw.len() > ROW_BYTES_MOST {
        return (None, Err(Trouble::Broken(too_long(raw.len()))));
    }
    let row = match scan::json(raw) {
        Ok(Json::Object(row)) => row,
        Ok(other) => return (None, Err(Trouble::Broken(refused("entry", Some(&other), "format.want_object")))),
        Err(problem) => return (None, Err(Trouble::Broken(not_json(raw, problem)))),
    };
    match address(&row) {
        Err(reason) => (None, Err(Trouble::Broken(reason))),
        Ok(address) => (Some(address), entry(&row, address)),
    }
}

fn address(row: &Object) -> Result<Address, Say> {
    let id = read(row, "id", "format.want_id", EntryId::read)?;
    let log = read(row, "log", "format.want_log", LogId::read)?;
    let lamport = whole(row, "lamport", "format.want_lamport").and_then(|lamport| {
        if lamport > LAMPORT_MOST {
            Err(refused("lamport", row.get("lamport"), "format.want_lamport"))
        } else {
            Ok(lamport)
        }
    })?;
    Ok(Address { id, log, lamport })
}

fn whole(row: &Object, name: &str, want: &'static str) -> Result<u64, Say> {
    let found = row.get(name);
    found.and_then(Json::as_u64).ok_or_else(|| refused(name, found, want))
}

fn entry(row: &Object, at: Address) -> Result<Entry, Trouble> {
    let version = whole(row, "v", "format.want_version").map_err(Trouble::Broken)?;
    if version > VERSION {
        let versions = [version, VERSION].map(|version| Arg::Text(version.to_string()));
        return Err(Trouble::Newer(Say::new("format.newer_row", versions)));
    }
    if let Some(name) = row.keys().find(|name| !MEMBERS.contains(&name.as_str())) {
        return Err(Trouble::Newer(Say::new("format.newer_field", [Arg::Text(crate::json::shown(name))])));
    }
    let body = match row.get("body") {
        Some(Json::Object(fields)) => flat(fields).map_err(Trouble::Broken)?,
        other => return Err(Trouble::Broken(refused("body", other, "format.want_object"))),
    };
    let done = read(row, "done", "format.want_minute", Minute::read).map_err(Trouble::Broken)?;
    let written = read(row, "written", "format.want_moment", Written::read).map_err(Trouble::Broken)?;
    let by = read(row, "by", "format.want_person", |text| {
        if text.is_empty() { Some(None) } else { PersonId::read(text).map(Some) }
    });
    let by = by.map_err(Trouble::Broken)?;
    let body = body::from_flat(at.log, body)?;
    Ok(Entry { lamport: at.lamport, id: at.id, log: at.log, done, written, by, body })
}

fn flat(fields: &Object) -> Result<Flat, Say> {
    let mut flat = Flat::new_vec();
    for (name, value) in fields {
        let text = value.as_str().ok_or_else(|| refused(&format!("body.{name}"), Some(value), "format.want_text"))?;
        flat.insert(name.clone(), text.to_owned());
    }
    Ok(flat)
}
