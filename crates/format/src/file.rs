//! What every file of ours has in common: its first members, its checksum, its repair report.
//!
//! What it is: the outside of a file. What it is not: the contents of any kind of file, or the reading of disks.

use litemap::LiteMap;
use measure::say::{Arg, Say};

use crate::{
    json::{is_sha256, not_json, quoted, refused, sha256, shown},
    limits::{FILE_BYTES_MOST, LAMPORT_TAKEN_IN_MOST},
    mend::mend,
    row::{Decoded, Item},
    scan::{self, Json},
};

/// Version of every kind of file.
pub const VERSION: u64 = 0;

/// Who made a file, and when.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Head {
    /// The program and its version.
    pub producer: String,
    /// When, as the device's clock said, in ISO 8601.
    pub made: String,
}

/// Whether a file's rows are the ones its maker wrote.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Checksum {
    /// They are.
    Match,
    /// They are not: damaged or edited since.
    Differs,
    /// The file does not say.
    Absent,
}

/// Something in a file, and what is to be said of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// Where: `rows[3]`.
    pub place: String,
    /// What.
    pub why: Say,
}

/// What became of a file's contents.
#[derive(Clone, Debug, PartialEq)]
pub struct Report {
    /// The checksum over its rows.
    pub checksum: Checksum,
    /// How many entries were read.
    pub kept: usize,
    /// Put right while reading.
    pub fixed: Vec<Problem>,
    /// Made by a newer version: kept to the letter.
    pub newer: Vec<Problem>,
    /// Damaged: kept to the letter, but nothing to work with.
    pub unreadable: Vec<Problem>,
    /// Left out.
    pub dropped: Vec<Problem>,
}

impl Report {
    pub(crate) fn new(checksum: Checksum) -> Report {
        Report { checksum, kept: 0, fixed: vec![], newer: vec![], unreadable: vec![], dropped: vec![] }
    }

    /// Whether there is nothing to tell.
    pub fn is_clean(&self) -> bool {
        self.checksum != Checksum::Differs
            && [&self.fixed, &self.newer, &self.unreadable, &self.dropped].iter().all(|list| list.is_empty())
    }

    pub(crate) fn drop(&mut self, place: String, why: Say) {
        self.dropped.push(Problem { place, why });
    }

    /// Reads the rows of a list, all of which are kept.
    pub(crate) fn rows(&mut self, name: &str, list: &[&str]) -> Vec<Item> {
        let mut rows = Vec::with_capacity(list.len());
        for (index, raw) in list.iter().enumerate() {
            let item = within_the_clock(Item::read(raw));
            let place = || format!("{name}[{index}]");
            match &item.decoded {
                Decoded::Entry(_) => self.kept += 1,
                Decoded::Newer { what, .. } => self.newer.push(Problem { place: place(), why: what.clone() }),
                Decoded::Unreadable { reason, .. } => {
                    self.unreadable.push(Problem { place: place(), why: reason.clone() });
                }
            }
            rows.push(item);
        }
        rows
    }
}

/// A row far ahead of any real clock is not taken in: every later entry would have to go beyond it.
fn within_the_clock(item: Item) -> Item {
    match item.address {
        Some(at) if at.lamport > LAMPORT_TAKEN_IN_MOST => {
            let reason = refused("lamport", Some(&Json::Number(at.lamport.to_string())), "format.want_lamport_of_file");
            let decoded = Decoded::Unreadable { reason, raw: item.raw.clone() };
            Item { raw: item.raw, address: None, decoded }
        }
        _ => item,
    }
}

/// The text of a file's bytes.
///
/// # Errors
/// Where it is too long, or no UTF-8.
pub fn text_of(bytes: &[u8]) -> Result<&str, Say> {
    check_length(bytes.len())?;
    core::str::from_utf8(bytes)
        .map_err(|problem| Say::new("format.not_utf8", [Arg::Count(problem.valid_up_to() as i64)]))
}

pub(crate) fn check_length(bytes: usize) -> Result<(), Say> {
    if bytes > FILE_BYTES_MOST {
        return Err(Say::new("format.file_too_long", [Arg::Count(bytes as i64), Arg::Count(FILE_BYTES_MOST as i64)]));
    }
    Ok(())
}

/// A file opened: its head, and the members not yet taken.
pub(crate) struct Opened<'a> {
    pub head: Head,
    members: LiteMap<String, &'a str>,
}

/// Opens a file that should be of a kind.
pub(crate) fn open<'a>(text: &'a str, kind: &'static str) -> Result<Opened<'a>, Say> {
    check_length(text.len())?;
    // Some editors put a byte order mark before the text.
    let bare = text.strip_prefix('\u{feff}').unwrap_or(text);
    let members = scan::members(bare).map_err(|fault| not_json(bare, fault))?;
    let mut opened = Opened { head: Head { producer: String::new(), made: String::new() }, members };
    match opened.value("weftbook") {
        Some(Json::Text(found)) if found == kind => {}
        Some(Json::Text(found)) => {
            return Err(Say::new("format.other_kind", [Arg::Text(shown(&found)), Arg::from(kind)]));
        }
        _ => return Err(Say::new("format.not_ours", [Arg::from(kind)])),
    }
    opened.head.producer = opened.text("producer")?;
    let version = opened.value("version");
    let number = version.as_ref().and_then(Json::as_u64);
    let number = number.ok_or_else(|| refused("version", version.as_ref(), "format.want_version"))?;
    if number > VERSION {
        let says =
            [Arg::Text(shown(&opened.head.producer)), Arg::Text(number.to_string()), Arg::Text(VERSION.to_string())];
        return Err(Say::new("format.newer_file", says));
    }
    opened.head.made = opened.text("made")?;
    Ok(opened)
}

impl<'a> Opened<'a> {
    /// Takes a small member; a broken or huge one is as good as none.
    pub fn value(&mut self, name: &str) -> Option<Json> {
        let raw = self.members.remove(name)?;
        if raw.len() > crate::limits::ROW_BYTES_MOST { None } else { scan::json(raw).ok() }
    }

    /// Takes a text.
    pub fn text(&mut self, name: &str) -> Result<String, Say> {
        match self.value(name) {
            Some(Json::Text(text)) => Ok(text),
            other => Err(refused(name, other.as_ref(), "format.want_text")),
        }
    }

    /// Takes a list, with its text exactly as it stands.
    pub fn list(&mut self, name: &str) -> Result<(Vec<&'a str>, &'a str), Say> {
        let raw = self.members.remove(name).ok_or_else(|| refused(name, None, "format.want_list"))?;
        let items = scan::items(raw)
            .map_err(|fault| Say::new("format.list", [Arg::from(name), Arg::from(not_json(raw, fault))]))?;
        Ok((items, raw))
    }

    /// Takes the checksum and holds it against the text it was taken over.
    pub fn checksum(&mut self, over: &str) -> Result<Checksum, Say> {
        match self.value("sha256") {
            None | Some(Json::Null) => Ok(Checksum::Absent),
            Some(Json::Text(text)) if is_sha256(&text) => {
                Ok(if sha256(over) == text { Checksum::Match } else { Checksum::Differs })
            }
            Some(other) => Err(refused("sha256", Some(&other), "format.want_sha256")),
        }
    }

    /// What nobody took.
    pub fn rest(self) -> impl Iterator<Item = (String, &'a str)> {
        self.members.into_iter()
    }
}

/// The start of a file, up to its first list, without the closing brace.
pub(crate) fn start(kind: &str, head: &Head, members: &[(&str, String)]) -> String {
    let mut text = format!(
        "{{\"weftbook\":{},\"version\":{VERSION},\"producer\":{},\"made\":{}",
        quoted(kind),
        quoted(&head.producer),
        quoted(&head.made)
    );
    for (name, json) in members {
        text.push_str(&format!(",{}:{json}", quoted(name)));
    }
    text
}

/// A list of JSON texts.
pub(crate) fn listed<'t>(texts: impl IntoIterator<Item = &'t str>) -> String {
    let mut list = String::from("[");
    for text in texts {
        if list.len() > 1 {
            list.push(',');
        }
        list.push_str(text);
    }
    list.push(']');
    list
}

/// Reads a file, and where it is no JSON any more, what can be saved of its lists.
pub(crate) fn read_or_mend<T>(
    text: &str,
    lists: &[&str],
    reader: impl Fn(&str) -> Result<T, Say>,
    report: impl Fn(&mut T) -> &mut Report,
) -> Result<T, Say> {
    let problem = match reader(text) {
        Err(say) if ["format.cut_off", "format.not_json"].contains(&say.key) => say,
        other => return other,
    };
    let Some((mended, fixed)) = mend(text, lists) else { return Err(problem) };
    match reader(&mended) {
        Ok(mut read) => {
            report(&mut read).fixed.extend(fixed);
            Ok(read)
        }
        // The damage lies before the lists: what is wrong with the file itself says more.
        Err(say) if ["format.cut_off", "format.not_json"].contains(&say.key) => Err(problem),
        Err(say) => Err(say),
    }
}
