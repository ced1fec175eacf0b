//! The data of a sheet as JSON.
//!
//! What it is: `{"wig","name","ask","day","lamport","lots":[{"id","name"}],"lines":[…]}`; a line is `{"n","step","begun","most",
//! "mind","work"}`, its work the same flat map as in a row (`kind`, `v` and the fields). Members that say nothing are left out.
//! What it is not: more than the sheet showed.

use measure::{
    civil::Date,
    say::{Arg, Say},
};
use record::{
    handover::handed::{Handed, LINES_MOST, Line},
    id::{LotId, StepId, WigId},
};

use super::{
    lines::{flat, flat_json, list, number, said, some, words, yes},
    payload::{Kind, fold},
};
use crate::{
    body,
    file::listed,
    json::{not_json, object, quoted, read, refused},
    limits::LAMPORT_TAKEN_IN_MOST,
    migrate::Flat,
    scan::{self, Json, Object},
};

/// Characters of a name or of words in the head of it.
const WORDS_MOST: usize = 400;

/// Writes it.
pub fn to_json(handed: &Handed) -> String {
    let mut members = vec![("wig", quoted(&handed.wig.to_string()))];
    some(&mut members, "name", &handed.name);
    some(&mut members, "ask", &handed.ask);
    members.push(("day", quoted(&handed.day.to_string())));
    members.push(("lamport", handed.lamport.to_string()));
    let lots: Vec<String> = handed
        .lots
        .iter()
        .map(|(id, name)| object(&[("id", quoted(&id.to_string())), ("name", quoted(name))]))
        .collect();
    members.push(("lots", listed(lots.iter().map(String::as_str))));
    let lines: Vec<String> = handed.lines.iter().map(line).collect();
    members.push(("lines", listed(lines.iter().map(String::as_str))));
    object(&members)
}

fn line(line: &Line) -> String {
    let mut members = vec![("n", line.number.to_string()), ("step", quoted(&line.step.to_string()))];
    if line.begun {
        members.push(("begun", "true".to_owned()));
    }
    some(&mut members, "most", line.most.as_deref().unwrap_or_default());
    some(&mut members, "mind", &line.mind.join(" "));
    let mut work = Flat::new();
    work.insert("kind".to_owned(), line.kind.name.to_owned());
    work.insert("v".to_owned(), line.kind.version.to_string());
    for (field, value) in &line.values {
        work.insert(field.name.to_owned(), value.text());
    }
    members.push(("work", flat_json(&work)));
    object(&members)
}

/// The payload of it.
///
/// # Errors
/// Where it is too long for any reader.
pub fn payload(handed: &Handed) -> Result<String, Say> {
    fold(Kind::Handed, &to_json(handed))
}

/// Reads it.
///
/// # Errors
/// The member that is refused.
pub fn from_json(text: &str) -> Result<Handed, Say> {
    let head = match scan::json(text).map_err(|fault| not_json(text, fault))? {
        Json::Object(head) => head,
        other => return Err(refused("sheet", Some(&other), "format.want_object")),
    };
    let mut lots = Vec::new();
    for lot in list(&head, "lots")? {
        let lot = as_object(lot, "lots")?;
        lots.push((read(lot, "id", "format.want_id", LotId::read)?, words(lot, "name", WORDS_MOST)?));
    }
    let all = list(&head, "lines")?;
    if all.len() > LINES_MOST {
        return Err(Say::new("handover.too_many_lines", [Arg::Count(all.len() as i64), Arg::Count(LINES_MOST as i64)]));
    }
    let mut lines: Vec<Line> = Vec::new();
    for one in all {
        let line = read_line(as_object(one, "lines")?)?;
        if lines.iter().any(|other| other.number == line.number || other.step == line.step) {
            return Err(Say::new("handover.line_twice", [Arg::Count(i64::from(line.number))]));
        }
        lines.push(line);
    }
    Ok(Handed {
        wig: read(&head, "wig", "format.want_id", WigId::read)?,
        name: words(&head, "name", WORDS_MOST)?,
        ask: words(&head, "ask", WORDS_MOST)?,
        day: read(&head, "day", "handover.want_day", Date::read)?,
        lamport: number(&head, "lamport")?.min(LAMPORT_TAKEN_IN_MOST - LINES_MOST as u64 * 2),
        lots,
        lines,
    })
}

fn as_object<'j>(json: &'j Json, name: &str) -> Result<&'j Object, Say> {
    match json {
        Json::Object(object) => Ok(object),
        other => Err(refused(name, Some(other), "format.want_object")),
    }
}

fn read_line(object: &Object) -> Result<Line, Say> {
    let (kind, values) = body::fields_of(flat(object, "work")?).map_err(said)?;
    let most = words(object, "most", WORDS_MOST)?;
    let mind = words(object, "mind", 4000)?;
    Ok(Line {
        number: line_number(object)?,
        step: read(object, "step", "format.want_id", StepId::read)?,
        begun: yes(object, "begun")?,
        kind,
        values,
        most: Some(most).filter(|most| !most.is_empty()),
        mind: mind.split(' ').filter(|name| !name.is_empty()).map(str::to_owned).collect(),
    })
}

pub(super) fn line_number(object: &Object) -> Result<u32, Say> {
    let found = object.get("n");
    found
        .and_then(Json::as_u64)
        .and_then(|number| u32::try_from(number).ok())
        .filter(|number| *number <= 1_000_000)
        .ok_or_else(|| refused("n", found, "handover.want_line"))
}
