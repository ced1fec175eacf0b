//! What a line's work looks like: the same flat map as in a row.
//!
//! What it is: small helpers of `handed` and `slip`. What it is not: the map's meaning (see `body`).

use measure::say::Say;
use record::wig::work::Work;

use crate::{
    body::{self, Trouble},
    json::{object, quoted, refused},
    migrate::Flat,
    scan::{Json, Object},
};

pub(super) fn flat_json(flat: &Flat) -> String {
    let members: Vec<(&str, String)> = flat.iter().map(|(name, text)| (name.as_str(), quoted(text))).collect();
    object(&members)
}

pub(super) fn flat(object: &Object, name: &str) -> Result<Flat, Say> {
    let found = object.get(name);
    let Some(Json::Object(fields)) = found else { return Err(refused(name, found, "format.want_object")) };
    let mut flat = Flat::new_vec();
    for (name, value) in fields {
        let text = value.as_str().ok_or_else(|| refused(name, Some(value), "format.want_text"))?;
        flat.insert(name.clone(), text.to_owned());
    }
    Ok(flat)
}

pub(super) fn work_json(work: &Work) -> String {
    flat_json(&body::work_to_flat(work))
}

pub(super) fn work(object: &Object, name: &str) -> Result<Work, Say> {
    body::work_of(flat(object, name)?).map_err(said)
}

pub(super) fn said(trouble: Trouble) -> Say {
    match trouble {
        Trouble::Newer(say) | Trouble::Broken(say) => say,
    }
}

pub(super) fn list<'o>(object: &'o Object, name: &str) -> Result<&'o [Json], Say> {
    match object.get(name) {
        Some(Json::List(list)) => Ok(list),
        found => Err(refused(name, found, "format.want_list")),
    }
}

pub(super) fn yes(object: &Object, name: &str) -> Result<bool, Say> {
    match object.get(name) {
        None => Ok(false),
        Some(Json::Bool(yes)) => Ok(*yes),
        found => Err(refused(name, found, "format.want_yes_no")),
    }
}

pub(super) fn number(object: &Object, name: &str) -> Result<u64, Say> {
    object.get(name).and_then(Json::as_u64).ok_or_else(|| refused(name, object.get(name), "format.want_lamport"))
}

/// A text that may be left out, up to so many characters.
pub(super) fn words(object: &Object, name: &str, most: usize) -> Result<String, Say> {
    match object.get(name) {
        None => Ok(String::new()),
        Some(Json::Text(text)) if text.chars().count() <= most => Ok(text.clone()),
        found => Err(refused(name, found, "handover.want_short")),
    }
}

/// Members that are left out while they say nothing.
pub(super) fn some(members: &mut Vec<(&str, String)>, name: &'static str, text: &str) {
    if !text.is_empty() {
        members.push((name, quoted(text)));
    }
}
