//! Reading JSON that may be anything.
//!
//! What it is: capped lists and objects over borrowed text, small typed getters, the stable text.
//! What it is not: the meaning of any member.

use std::fmt;

use litemap::LiteMap;

use measure::say::{Arg, Say};
use serde::{
    Deserialize, Deserializer,
    de::{self, MapAccess, SeqAccess, Visitor},
};
use serde_json::{Map, Value, error::Category, value::RawValue};
use sha2::{Digest, Sha256};

use crate::limits::{ITEMS_MOST, MEMBERS_MOST, SHOWN_MOST};

/// A list whose items are left unread.
pub(crate) struct Items<'a>(pub Vec<&'a RawValue>);

/// An object whose members are left unread; a member that stands twice is refused.
#[derive(Default)]
pub(crate) struct Members<'a>(pub LiteMap<String, &'a RawValue>);

impl<'de> Deserialize<'de> for Items<'de> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        struct List;
        impl<'de> Visitor<'de> for List {
            type Value = Items<'de>;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "a list of at most {ITEMS_MOST}")
            }
            fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Items<'de>, A::Error> {
                let mut items = Vec::new();
                while let Some(item) = list.next_element::<&RawValue>()? {
                    if items.len() == ITEMS_MOST {
                        return Err(de::Error::invalid_length(ITEMS_MOST + 1, &self));
                    }
                    items.push(item);
                }
                Ok(Items(items))
            }
        }
        from.deserialize_seq(List)
    }
}

impl<'de> Deserialize<'de> for Members<'de> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        struct Object;
        impl<'de> Visitor<'de> for Object {
            type Value = Members<'de>;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "an object of at most {MEMBERS_MOST} members, each once")
            }
            fn visit_map<A: MapAccess<'de>>(self, mut object: A) -> Result<Members<'de>, A::Error> {
                let mut members = LiteMap::new_vec();
                while let Some((name, member)) = object.next_entry::<String, &RawValue>()? {
                    if members.len() == MEMBERS_MOST || members.insert(name, member).is_some() {
                        return Err(de::Error::invalid_length(MEMBERS_MOST + 1, &self));
                    }
                }
                Ok(Members(members))
            }
        }
        from.deserialize_map(Object)
    }
}

/// The start of a refused value, fit to be shown.
pub(crate) fn shown(text: &str) -> String {
    let mut start: String = text.chars().take(SHOWN_MOST).collect();
    if start.len() < text.len() {
        start.push('…');
    }
    start
}

/// A member that is not what it should be: its name, its value, and what should stand there.
pub(crate) fn refused(name: &str, found: Option<&Value>, want: &'static str) -> Say {
    let found = match found {
        None => return Say::new("format.missing", [Arg::from(name), Arg::Key(want)]),
        Some(Value::String(text)) => shown(text),
        Some(other) => shown(&other.to_string()),
    };
    Say::new("format.refused", [Arg::from(name), Arg::Text(found), Arg::Key(want)])
}

/// A text member.
pub(crate) fn text<'a>(object: &'a Map<String, Value>, name: &str, want: &'static str) -> Result<&'a str, Say> {
    let found = object.get(name);
    found.and_then(Value::as_str).ok_or_else(|| refused(name, found, want))
}

/// A text member, read.
pub(crate) fn read<T>(
    object: &Map<String, Value>,
    name: &str,
    want: &'static str,
    reader: impl FnOnce(&str) -> Option<T>,
) -> Result<T, Say> {
    reader(text(object, name, want)?).ok_or_else(|| refused(name, object.get(name), want))
}

/// What is wrong with a text as JSON.
pub(crate) fn not_json(problem: &serde_json::Error) -> Say {
    let at = [Arg::Count(problem.line() as i64), Arg::Count(problem.column() as i64)];
    match problem.classify() {
        Category::Eof => Say::new("format.cut_off", at),
        Category::Syntax | Category::Io => Say::new("format.not_json", at),
        Category::Data => Say::new("format.not_as_expected", at),
    }
}

/// Compact JSON with sorted keys: equal values give equal texts. The store writes the same.
pub(crate) fn stable(raw: &str) -> Option<String> {
    serde_json::from_str::<Value>(raw).ok().map(|value| value.to_string())
}

/// A text as a JSON string.
pub(crate) fn quoted(text: &str) -> String {
    Value::from(text).to_string()
}

/// SHA-256 (FIPS 180-4) in lower-case hex.
pub(crate) fn sha256(text: &str) -> String {
    Sha256::digest(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect()
}

/// Lower-case hex of a SHA-256.
pub(crate) fn is_sha256(text: &str) -> bool {
    text.len() == 64 && text.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sha256_of_the_standards_example() {
        // NIST, SHA-256 example values for FIPS 180-4: the one-block message "abc".
        assert_eq!(sha256("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    #[test]
    fn stable_text_sorts_and_escapes_as_the_store_does() {
        assert_eq!(
            stable("{ \"b\" : [1, \"\\u00e9\\/\\u2028\\u0001\"], \"a\":{} }").as_deref(),
            Some("{\"a\":{},\"b\":[1,\"é/\u{2028}\\u0001\"]}")
        );
    }

    #[test]
    fn more_items_than_allowed_are_refused_before_the_rest_is_read() {
        let zeros = |count: usize| format!("[{}]", vec!["0"; count].join(","));
        assert!(serde_json::from_str::<Items>(&zeros(ITEMS_MOST)).is_ok());
        let refused = serde_json::from_str::<Items>(&zeros(ITEMS_MOST + 1)).err().map(|problem| not_json(&problem).key);
        assert_eq!(refused, Some("format.not_as_expected"));
    }
}
