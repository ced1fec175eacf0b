//! A return slip as JSON.
//!
//! What it is: `{"id","wig","name","who","lamport","written","lines":[{"n","step","done","ticked","work"}]}`, its work as in a row.
//! Photos stand beside it in a slip's file only. What it is not: entries (see `entries`).

use measure::{
    civil::Minute,
    say::{Arg, Say},
};
use record::{
    handover::{
        handed::LINES_MOST,
        slip::{Answer, Slip},
    },
    history::entry::Written,
    id::{Id, StepId, WigId},
};

use super::{
    handed::line_number,
    lines::{list, number, some, words, work, work_json, yes},
    payload::{Kind, fold},
};
use crate::{
    file::listed,
    json::{not_json, object, quoted, read, refused},
    limits::{LAMPORT_TAKEN_IN_MOST, PERSON_NAME_MOST},
    scan::{self, Json},
};

/// Answers of a slip at most: each line, its photo, and some of the sheet.
pub const ANSWERS_MOST: usize = LINES_MOST * 2;

/// Writes it, without photos.
pub fn to_json(slip: &Slip) -> String {
    let mut members = vec![("id", quoted(&slip.id.to_string())), ("wig", quoted(&slip.wig.to_string()))];
    some(&mut members, "name", &slip.name);
    some(&mut members, "who", &slip.who);
    members.push(("lamport", slip.lamport.to_string()));
    members.push(("written", quoted(slip.written.text())));
    let lines: Vec<String> = slip.lines.iter().map(answer).collect();
    members.push(("lines", listed(lines.iter().map(String::as_str))));
    object(&members)
}

fn answer(answer: &Answer) -> String {
    let mut members = vec![("n", answer.number.to_string())];
    if let Some(step) = answer.step {
        members.push(("step", quoted(&step.to_string())));
    }
    members.push(("done", quoted(&answer.done.to_string())));
    if answer.as_planned {
        members.push(("ticked", "true".to_owned()));
    }
    members.push(("work", work_json(&answer.work)));
    object(&members)
}

/// The payload of it, without photos.
///
/// # Errors
/// Where it is too long for any reader.
pub fn payload(slip: &Slip) -> Result<String, Say> {
    fold(Kind::Slip, &to_json(slip))
}

/// Reads it.
///
/// # Errors
/// The member that is refused.
pub fn from_json(text: &str) -> Result<Slip, Say> {
    let head = match scan::json(text).map_err(|fault| not_json(text, fault))? {
        Json::Object(head) => head,
        other => return Err(refused("slip", Some(&other), "format.want_object")),
    };
    let all = list(&head, "lines")?;
    if all.len() > ANSWERS_MOST {
        return Err(Say::new(
            "handover.too_many_lines",
            [Arg::Count(all.len() as i64), Arg::Count(ANSWERS_MOST as i64)],
        ));
    }
    let mut lines = Vec::with_capacity(all.len());
    for one in all {
        let Json::Object(line) = one else { return Err(refused("lines", Some(one), "format.want_object")) };
        let step = match line.get("step") {
            None => None,
            Some(_) => Some(read(line, "step", "format.want_id", StepId::read)?),
        };
        let work = work(line, "work")?;
        // What is done to a wig can name a step; the workshop's own work cannot come in with a slip.
        if work.kind().field("step").is_none() {
            return Err(refused("kind", Some(&Json::Text(work.kind().name.to_owned())), "handover.want_work"));
        }
        lines.push(Answer {
            number: line_number(line)?,
            step,
            done: read(line, "done", "format.want_minute", Minute::read)?,
            as_planned: yes(line, "ticked")?,
            work,
        });
    }
    Ok(Slip {
        id: read(&head, "id", "format.want_id", Id::read)?,
        wig: read(&head, "wig", "format.want_id", WigId::read)?,
        name: words(&head, "name", 400)?,
        who: words(&head, "who", PERSON_NAME_MOST)?,
        lamport: number(&head, "lamport")?.min(LAMPORT_TAKEN_IN_MOST - ANSWERS_MOST as u64),
        written: read(&head, "written", "format.want_moment", Written::read)?,
        lines,
        photos: Vec::new(),
    })
}
