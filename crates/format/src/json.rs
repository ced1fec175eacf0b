//! Reading JSON that may be anything.
//!
//! What it is: small typed getters over values that were read, what to say of refused ones, the stable text.
//! What it is not: the grammar (see `scan`), or the meaning of any member.

use measure::say::{Arg, Say};
use sha2::{Digest, Sha256};

use crate::{
    limits::SHOWN_MOST,
    scan::{self, Cause, Fault, Json, Object},
};

impl Json {
    /// The text, when it is one.
    pub(crate) fn as_str(&self) -> Option<&str> {
        match self {
            Json::Text(text) => Some(text),
            _ => None,
        }
    }

    /// The whole number from zero, when it is one.
    pub(crate) fn as_u64(&self) -> Option<u64> {
        match self {
            Json::Number(text) => text.parse().ok(),
            _ => None,
        }
    }

    /// Compact, with sorted keys.
    fn write(&self, out: &mut String) {
        match self {
            Json::Null => out.push_str("null"),
            Json::Bool(true) => out.push_str("true"),
            Json::Bool(false) => out.push_str("false"),
            Json::Number(text) => out.push_str(text),
            Json::Text(text) => quote(out, text),
            Json::List(list) => {
                out.push('[');
                for (index, item) in list.iter().enumerate() {
                    if index > 0 {
                        out.push(',');
                    }
                    item.write(out);
                }
                out.push(']');
            }
            Json::Object(object) => {
                out.push('{');
                for (index, (name, member)) in object.iter().enumerate() {
                    if index > 0 {
                        out.push(',');
                    }
                    quote(out, name);
                    out.push(':');
                    member.write(out);
                }
                out.push('}');
            }
        }
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
pub(crate) fn refused(name: &str, found: Option<&Json>, want: &'static str) -> Say {
    let found = match found {
        None => return Say::new("format.missing", [Arg::from(name), Arg::Key(want)]),
        Some(Json::Text(text)) => shown(text),
        Some(other) => {
            let mut text = String::new();
            other.write(&mut text);
            shown(&text)
        }
    };
    Say::new("format.refused", [Arg::from(name), Arg::Text(found), Arg::Key(want)])
}

/// A text member.
pub(crate) fn text<'a>(object: &'a Object, name: &str, want: &'static str) -> Result<&'a str, Say> {
    let found = object.get(name);
    found.and_then(Json::as_str).ok_or_else(|| refused(name, found, want))
}

/// A text member, read.
pub(crate) fn read<T>(
    object: &Object,
    name: &str,
    want: &'static str,
    reader: impl FnOnce(&str) -> Option<T>,
) -> Result<T, Say> {
    reader(text(object, name, want)?).ok_or_else(|| refused(name, object.get(name), want))
}

/// What is wrong with a text as JSON.
pub(crate) fn not_json(text: &str, fault: Fault) -> Say {
    let before = text.as_bytes().get(..fault.at).unwrap_or_default();
    let line = before.iter().filter(|byte| **byte == b'\n').count() + 1;
    let column = before.iter().rev().take_while(|byte| **byte != b'\n').count();
    // The byte that does not fit, or the last one there is.
    let column = column + usize::from(fault.cause != Cause::CutOff);
    let key = match fault.cause {
        Cause::CutOff => "format.cut_off",
        Cause::Syntax => "format.not_json",
        Cause::Unexpected => "format.not_as_expected",
    };
    Say::new(key, [Arg::Count(line as i64), Arg::Count(column as i64)])
}

/// Compact JSON with sorted keys, numbers as they stand: equal values give equal texts. The store writes the same.
pub(crate) fn stable(raw: &str) -> Option<String> {
    let value = scan::json(raw).ok()?;
    let mut text = String::with_capacity(raw.len());
    value.write(&mut text);
    Some(text)
}

/// A text as a JSON string.
pub(crate) fn quoted(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    quote(&mut out, text);
    out
}

/// Writes a text as a JSON string, as browsers do.
pub(crate) fn quote(out: &mut String, text: &str) {
    out.push('"');
    for letter in text.chars() {
        let escape = match letter {
            '"' | '\\' => letter,
            '\u{8}' => 'b',
            '\u{c}' => 'f',
            '\n' => 'n',
            '\r' => 'r',
            '\t' => 't',
            '\0'..='\u{1f}' => {
                out.push_str(&format!("\\u{:04x}", u32::from(letter)));
                continue;
            }
            _ => {
                out.push(letter);
                continue;
            }
        };
        out.push('\\');
        out.push(escape);
    }
    out.push('"');
}

/// An object of members that are JSON already, in the order given.
pub(crate) fn object(members: &[(&str, String)]) -> String {
    let mut out = String::from("{");
    for (name, json) in members {
        if out.len() > 1 {
            out.push(',');
        }
        quote(&mut out, name);
        out.push(':');
        out.push_str(json);
    }
    out.push('}');
    out
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
    use crate::limits::ITEMS_MOST;

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
        assert!(scan::items(&zeros(ITEMS_MOST)).is_ok());
        assert_eq!(scan::items(&zeros(ITEMS_MOST + 1)).err().map(|fault| fault.cause), Some(Cause::Unexpected));
    }
}
