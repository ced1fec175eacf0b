//! The backup file: everything a store holds, as one JSON text.
//!
//! What it is: `{"weftbook":"backup","version":0,"producer","made","sha256","rows","clashes","people","blobs"}`,
//! written and read to the byte as the store's own script writes it. What it is not: the merge into a store.
//!
//! `sha256` is over the UTF-8 bytes of the list after `"rows":` exactly as they stand in the file, from `[` to
//! `]`; null where its maker could not compute one. A writer puts rows in their stable text, without spaces.

use measure::{
    order,
    say::{Arg, Say},
};
use record::{
    history::{
        log::Log,
        people::{People, Person},
    },
    id::PersonId,
};

use crate::{
    file::{Head, Problem, Report, check_length, listed, open, read_or_mend, start},
    json::{is_sha256, not_json, quoted, refused, sha256, stable},
    people::decode_person,
    row::Item,
    scan::{self, Json},
};

/// Kind of the file.
pub const KIND: &str = "backup";

/// Everything a store holds of the record: its rows, and beside them those that clash.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Rows {
    /// One row for each identity.
    pub rows: Vec<Item>,
    /// Rows whose identity stands already, with other contents.
    pub clashes: Vec<Item>,
}

/// A photo's place in a backup; its bytes stay text until somebody stores them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Blob {
    /// SHA-256 of its bytes.
    pub sha256: String,
    /// The item as it stands in the file.
    pub raw: String,
    /// Whether it is only the mark that this photo was forgotten.
    pub forgotten: bool,
}

/// A backup that was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Backup {
    /// Who made it, and when.
    pub head: Head,
    /// Its rows.
    pub records: Rows,
    /// Its people.
    pub people: People,
    /// Its photos.
    pub blobs: Vec<Blob>,
    /// What became of its contents.
    pub report: Report,
}

impl Rows {
    /// All rows, clashing ones last.
    pub fn all(&self) -> impl Iterator<Item = &Item> {
        self.rows.iter().chain(&self.clashes)
    }

    /// The log of all entries that could be read.
    pub fn log(&self) -> Log {
        Log::of(self.all().filter_map(Item::entry).cloned())
    }

    /// The rows for a store to take in, as a JSON list: all that say where they belong, readable here or not.
    pub fn taken_in(&self) -> String {
        listed(self.all().filter(|item| item.address.is_some()).map(|item| item.raw.as_str()))
    }
}

/// Reads what a store answers for all its rows: `{"rows":[…],"clashes":[…]}`.
///
/// # Errors
/// Where it is not such an object; a row that cannot be read is an item like any other.
pub fn read_rows(text: &str) -> Result<Rows, Say> {
    let members = scan::members(text).map_err(|fault| not_json(text, fault))?;
    let list = |name: &str| {
        let raw = *members.get(name).ok_or_else(|| refused(name, None, "format.want_list"))?;
        let items = scan::items(raw).map_err(|fault| not_json(raw, fault))?;
        Ok(items.into_iter().map(Item::read).collect())
    };
    Ok(Rows { rows: list("rows")?, clashes: list("clashes")? })
}

/// Reads a backup.
///
/// # Errors
/// Where it is no backup, was made by a newer version, or is damaged before its first list; whatever is wrong
/// with single items stands in the report, and so does what was lost of a file that breaks off.
pub fn read_backup(text: &str) -> Result<Backup, Say> {
    read_or_mend(text, &["rows", "clashes", "people", "blobs"], read_whole, |backup| &mut backup.report)
}

fn read_whole(text: &str) -> Result<Backup, Say> {
    let mut file = open(text, KIND)?;
    let (rows, rows_text) = file.list("rows")?;
    let mut report = Report::new(file.checksum(rows_text)?);
    let records = Rows { rows: report.rows("rows", &rows), clashes: report.rows("clashes", &file.list("clashes")?.0) };
    let people = people(&mut report, &file.list("people")?.0);
    let blobs = blobs(&mut report, &file.list("blobs")?.0);
    let head = file.head.clone();
    for (name, _) in file.rest() {
        // What the maker itself could not read is no fault of this file.
        let key = if name == "unread" { "format.unread_at_making" } else { "format.unknown_member" };
        report.drop(name, Say::key(key));
    }
    Ok(Backup { head, records, people, blobs, report })
}

fn people(report: &mut Report, list: &[&str]) -> People {
    let mut people = People::default();
    for (index, raw) in list.iter().enumerate() {
        match decode_person(raw) {
            Ok((id, person)) => people.add(id, person),
            Err(why) => report.drop(format!("people[{index}]"), why),
        }
    }
    people
}

fn blobs(report: &mut Report, list: &[&str]) -> Vec<Blob> {
    let mut blobs: Vec<Blob> = Vec::new();
    let mut seen: Vec<String> = Vec::new();
    for (index, raw) in list.iter().enumerate() {
        let place = format!("blobs[{index}]");
        match blob(raw) {
            Ok(blob) if !order::add_new(&mut seen, blob.sha256.clone()) => {
                report.fixed.push(Problem { place, why: Say::key("format.twice") });
            }
            Ok(blob) => blobs.push(blob),
            Err(why) => report.drop(place, why),
        }
    }
    blobs
}

fn blob(raw: &str) -> Result<Blob, Say> {
    let members = scan::members(raw).map_err(|fault| not_json(raw, fault))?;
    let text = |name: &str| members.get(name).copied();
    // Photos are not parsed into values: a text is checked where it stands.
    let bare = |name: &str| text(name).and_then(|json| json.strip_prefix('"')?.strip_suffix('"'));
    let want = |name: &str, key| refused(name, text(name).map(|text| Json::Text(text.to_owned())).as_ref(), key);
    let sha256 = bare("sha256").filter(|text| is_sha256(text)).ok_or_else(|| want("sha256", "format.want_sha256"))?;
    let forgotten = text("forgotten") == Some("true");
    if !forgotten {
        bare("type").ok_or_else(|| want("type", "format.want_text"))?;
        for name in ["base64", "thumb"] {
            bare(name).filter(|text| is_base64(text)).ok_or_else(|| want(name, "format.want_base64"))?;
        }
    }
    Ok(Blob { sha256: sha256.to_owned(), raw: raw.to_owned(), forgotten })
}

/// Base64 with padding (RFC 4648 section 4).
fn is_base64(text: &str) -> bool {
    let digits = text.strip_suffix("==").or_else(|| text.strip_suffix('=')).unwrap_or(text);
    text.len().is_multiple_of(4)
        && digits.bytes().all(|byte| byte.is_ascii_alphanumeric() || matches!(byte, b'+' | b'/'))
}

/// Writes a backup.
///
/// # Errors
/// Where it would be longer than any reader takes.
pub fn write_backup(head: &Head, records: &Rows, people: &[(PersonId, Person)], blobs: &[Blob]) -> Result<String, Say> {
    let rows = listed(stable_all(&records.rows).iter().map(String::as_str));
    let clashes = listed(stable_all(&records.clashes).iter().map(String::as_str));
    let people: Vec<String> =
        people.iter().map(|(id, person)| crate::people::encode_person(*id, person)).collect::<Result<_, _>>()?;
    let people = listed(people.iter().map(String::as_str));
    let blobs = listed(blobs.iter().map(|blob| blob.raw.as_str()));
    let mut text = start(KIND, head, &[("sha256", quoted(&sha256(&rows)))]);
    for (name, list) in [("rows", rows), ("clashes", clashes), ("people", people), ("blobs", blobs)] {
        text.push_str(&format!(",\"{name}\":{list}"));
    }
    text.push_str("}\n");
    check_length(text.len())?;
    Ok(text)
}

/// Rows in their stable text; one that is no JSON at all is carried as a string, so that the file stays whole.
pub(crate) fn stable_all(items: &[Item]) -> Vec<String> {
    items.iter().map(|item| stable(&item.raw).unwrap_or_else(|| quoted(&item.raw))).collect()
}

impl Report {
    /// What a person reads first of it.
    pub fn summary(&self) -> Say {
        let counts = [self.kept, self.fixed.len(), self.newer.len(), self.unreadable.len(), self.dropped.len()];
        Say::new("format.report", counts.map(|count| Arg::Count(count as i64)))
    }
}
