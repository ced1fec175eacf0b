//! A reader of JSON (RFC 8259) over text that may be anything.
//!
//! What it is: the grammar, in one pass, to values or to the text they stand in. What it is not: a general library's reader:
//! numbers stay the text they are, which saves the page tables for numbers that no file of ours holds.

use litemap::LiteMap;
use measure::order;

use crate::limits::{DEPTH_MOST, ITEMS_MOST, MEMBERS_MOST};

/// The members of an object by name, sorted.
pub(crate) type Object = LiteMap<String, Json>;

/// A value.
#[derive(Clone, PartialEq)]
pub(crate) enum Json {
    Null,
    Bool(bool),
    /// As it stands.
    Number(String),
    Text(String),
    List(Vec<Json>),
    Object(Object),
}

/// What is wrong with a text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Cause {
    /// It ends too soon.
    CutOff,
    /// It is no JSON.
    Syntax,
    /// It is JSON, but not what was asked for.
    Unexpected,
}

/// What is wrong, and at which byte.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Fault {
    pub cause: Cause,
    pub at: usize,
}

type Read<T> = Result<T, Fault>;

/// Reads a text that is one value.
pub(crate) fn json(text: &str) -> Read<Json> {
    let mut scan = Scan { text, at: 0 };
    let value = scan.value(0)?;
    scan.end()?;
    Ok(value)
}

/// Whether a text is one value.
pub(crate) fn is_json(text: &str) -> bool {
    let mut scan = Scan { text, at: 0 };
    scan.raw().and_then(|_| scan.end()).is_ok()
}

/// The items of a list, unread.
pub(crate) fn items(text: &str) -> Read<Vec<&str>> {
    let mut scan = Scan { text, at: 0 };
    let mut items = Vec::new();
    scan.open(b'[')?;
    while scan.more(b']', items.is_empty())? {
        if items.len() == ITEMS_MOST {
            return scan.fault(Cause::Unexpected);
        }
        items.push(scan.raw()?);
    }
    scan.end()?;
    Ok(items)
}

/// The members of an object, unread; one that stands twice is refused.
pub(crate) fn members(text: &str) -> Read<LiteMap<String, &str>> {
    let mut scan = Scan { text, at: 0 };
    let mut members = LiteMap::new_vec();
    scan.open(b'{')?;
    while scan.more(b'}', members.is_empty())? {
        let name = scan.name()?;
        let value = scan.raw()?;
        if members.len() == MEMBERS_MOST || members.insert(name, value).is_some() {
            return scan.fault(Cause::Unexpected);
        }
    }
    scan.end()?;
    Ok(members)
}

struct Scan<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Scan<'a> {
    fn fault<T>(&self, cause: Cause) -> Read<T> {
        Err(Fault { cause, at: self.at })
    }

    fn here(&self) -> Read<u8> {
        self.text.as_bytes().get(self.at).copied().map_or_else(|| self.fault(Cause::CutOff), Ok)
    }

    /// The next byte that is no space.
    fn next(&mut self) -> Read<u8> {
        loop {
            match self.here()? {
                b' ' | b'\n' | b'\r' | b'\t' => self.at += 1,
                byte => return Ok(byte),
            }
        }
    }

    fn take(&mut self, wanted: u8) -> Read<()> {
        if self.next()? == wanted {
            self.at += 1;
            Ok(())
        } else {
            self.fault(Cause::Syntax)
        }
    }

    fn end(&mut self) -> Read<()> {
        if self.next().is_ok() { self.fault(Cause::Syntax) } else { Ok(()) }
    }

    /// Enters a list or an object; another kind of value there is a value all the same.
    fn open(&mut self, bracket: u8) -> Read<()> {
        match self.next()? {
            byte if byte == bracket => self.take(bracket),
            b'[' | b'{' | b'"' | b'-' | b'0'..=b'9' | b't' | b'f' | b'n' => self.fault(Cause::Unexpected),
            _ => self.fault(Cause::Syntax),
        }
    }

    /// Whether another item comes, after its comma; takes the closing bracket where none does.
    fn more(&mut self, close: u8, first: bool) -> Read<bool> {
        if self.next()? == close {
            self.at += 1;
            return Ok(false);
        }
        if !first {
            self.take(b',')?;
        }
        Ok(true)
    }

    /// A member's name with its colon.
    fn name(&mut self) -> Read<String> {
        self.take(b'"')?;
        let name = self.text()?;
        self.take(b':')?;
        Ok(name)
    }

    fn value(&mut self, depth: usize) -> Read<Json> {
        let byte = self.next()?;
        if matches!(byte, b'[' | b'{' | b'"') {
            self.at += 1;
        }
        match byte {
            b'"' => self.text().map(Json::Text),
            b'[' | b'{' if depth == DEPTH_MOST => self.fault(Cause::Syntax),
            b'[' => {
                let mut list = Vec::new();
                while self.more(b']', list.is_empty())? {
                    list.push(self.value(depth + 1)?);
                }
                Ok(Json::List(list))
            }
            b'{' => {
                let mut members = Vec::new();
                while self.more(b'}', members.is_empty())? {
                    let name = self.name()?;
                    members.push((name, self.value(depth + 1)?));
                }
                // Of a name that stands twice the last counts; most objects come sorted.
                if !members.is_sorted_by(|a, b| a.0 < b.0) {
                    members.reverse();
                    order::sort_by(&mut members, &|a, b| a.0.cmp(&b.0));
                    members.dedup_by(|a, b| a.0 == b.0);
                }
                Ok(Json::Object(Object::from_sorted_store_unchecked(members)))
            }
            _ => Ok(match self.plain()? {
                "null" => Json::Null,
                "true" => Json::Bool(true),
                "false" => Json::Bool(false),
                number => Json::Number(number.to_owned()),
            }),
        }
    }

    /// Passes over a value, however deep, and gives the text it stands in.
    fn raw(&mut self) -> Read<&'a str> {
        self.next()?;
        let from = self.at;
        // The closing brackets still to come.
        let mut open: Vec<u8> = Vec::new();
        loop {
            let mut first = false;
            match self.next()? {
                bracket @ (b'[' | b'{') => {
                    self.at += 1;
                    open.push(bracket + 2);
                    first = true;
                }
                b'"' => {
                    self.at += 1;
                    self.pass_text()?;
                }
                _ => {
                    self.plain()?;
                }
            }
            // Out of all that ends here, up to the next value.
            loop {
                let Some(close) = open.last().copied() else { return Ok(&self.text[from..self.at]) };
                if self.more(close, first)? {
                    if close == b'}' {
                        self.take(b'"')?;
                        self.pass_text()?;
                        self.take(b':')?;
                    }
                    break;
                }
                first = false;
                open.pop();
            }
        }
    }

    /// A number or one of the three words.
    fn plain(&mut self) -> Read<&'a str> {
        let from = self.at;
        for word in ["null", "true", "false"] {
            if self.here()? == word.as_bytes()[0] {
                for byte in word.bytes() {
                    self.exactly(byte)?;
                }
                return Ok(word);
            }
        }
        if self.here()? == b'-' {
            self.at += 1;
        }
        if self.here()? == b'0' {
            self.at += 1;
        } else {
            self.digits()?;
        }
        if self.here() == Ok(b'.') {
            self.at += 1;
            self.digits()?;
        }
        if matches!(self.here(), Ok(b'e' | b'E')) {
            self.at += 1;
            if matches!(self.here(), Ok(b'+' | b'-')) {
                self.at += 1;
            }
            self.digits()?;
        }
        Ok(&self.text[from..self.at])
    }

    fn exactly(&mut self, wanted: u8) -> Read<()> {
        if self.here()? != wanted {
            return self.fault(Cause::Syntax);
        }
        self.at += 1;
        Ok(())
    }

    fn digits(&mut self) -> Read<()> {
        if !self.here()?.is_ascii_digit() {
            return self.fault(Cause::Syntax);
        }
        while self.here().is_ok_and(|byte| byte.is_ascii_digit()) {
            self.at += 1;
        }
        Ok(())
    }

    /// Passes over a text and its closing mark.
    fn pass_text(&mut self) -> Read<()> {
        loop {
            let byte = self.here()?;
            match byte {
                b'"' => break,
                b'\\' => {
                    self.at += 1;
                    if self.escaped()? == 'u' {
                        self.unit()?;
                    }
                }
                0..=0x1f => return self.fault(Cause::Syntax),
                _ => self.at += 1,
            }
        }
        self.at += 1;
        Ok(())
    }

    /// Reads a text up to its closing mark.
    fn text(&mut self) -> Read<String> {
        let mut out = String::new();
        loop {
            let from = self.at;
            while self.here().is_ok_and(|byte| byte >= 0x20 && byte != b'"' && byte != b'\\') {
                self.at += 1;
            }
            out.push_str(&self.text[from..self.at]);
            match self.here()? {
                b'"' => break,
                b'\\' => {
                    self.at += 1;
                    let escaped = match self.escaped()? {
                        'u' => self.scalar()?,
                        other => other,
                    };
                    out.push(escaped);
                }
                _ => return self.fault(Cause::Syntax),
            }
        }
        self.at += 1;
        Ok(out)
    }

    /// What an escape of one letter stands for; `u` where four digits follow.
    fn escaped(&mut self) -> Read<char> {
        let escaped = match self.here()? {
            byte @ (b'"' | b'\\' | b'/' | b'u') => char::from(byte),
            b'b' => '\u{8}',
            b'f' => '\u{c}',
            b'n' => '\n',
            b'r' => '\r',
            b't' => '\t',
            _ => return self.fault(Cause::Syntax),
        };
        self.at += 1;
        Ok(escaped)
    }

    /// The character of an escape in UTF-16, which may take two of them.
    fn scalar(&mut self) -> Read<char> {
        let mut unit = self.unit()?;
        if unit >> 10 == 0xd800 >> 10 {
            self.exactly(b'\\')?;
            self.exactly(b'u')?;
            let low = self.unit()?;
            if low >> 10 != 0xdc00 >> 10 {
                return self.fault(Cause::Syntax);
            }
            unit = 0x1_0000 + ((unit & 0x3ff) << 10 | (low & 0x3ff));
        }
        char::from_u32(unit).map_or_else(|| self.fault(Cause::Syntax), Ok)
    }

    fn unit(&mut self) -> Read<u32> {
        if self.text.len() < self.at + 4 {
            self.at = self.text.len();
        }
        let mut unit = 0;
        for _ in 0..4 {
            let Some(digit) = char::from(self.here()?).to_digit(16) else { return self.fault(Cause::Syntax) };
            unit = unit << 4 | digit;
            self.at += 1;
        }
        Ok(unit)
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use serde_json::value::RawValue;

    use super::*;

    fn theirs(value: &Json) -> serde_json::Value {
        match value {
            Json::Null => serde_json::Value::Null,
            Json::Bool(yes) => (*yes).into(),
            Json::Number(text) => serde_json::from_str(text).unwrap(),
            Json::Text(text) => text.as_str().into(),
            Json::List(list) => list.iter().map(theirs).collect(),
            Json::Object(object) => object.iter().map(|(name, value)| (name.clone(), theirs(value))).collect(),
        }
    }

    /// Against `serde_json`, which reads the same grammar: what is read, what is refused, and why.
    fn check(text: &str) -> Result<(), TestCaseError> {
        match (json(text), serde_json::from_str::<serde_json::Value>(text)) {
            (Ok(ours), Ok(want)) => prop_assert_eq!(theirs(&ours), want),
            (Err(fault), Err(want)) => {
                prop_assert_eq!(fault.cause == Cause::CutOff, want.is_eof(), "{:?} {:?} {}", text, fault, want);
            }
            // Numbers beyond what a float holds are only text here.
            (Ok(_), Err(want)) => prop_assert!(want.to_string().contains("out of range"), "{:?} {}", text, want),
            (Err(fault), Ok(_)) => prop_assert!(false, "{:?} {:?}", text, fault),
        }
        let raw = serde_json::from_str::<&RawValue>(text);
        prop_assert_eq!(is_json(text), raw.is_ok(), "{:?}", text);
        let want = serde_json::from_str::<Vec<&RawValue>>(text);
        match (items(text), want) {
            (Ok(ours), Ok(want)) => prop_assert_eq!(ours, want.iter().map(|raw| raw.get()).collect::<Vec<_>>()),
            (Err(_), Err(_)) => {}
            (ours, want) => prop_assert!(false, "{:?} {:?} {:?}", text, ours, want),
        }
        Ok(())
    }

    #[test]
    fn as_the_library_reads_it() {
        for text in include_str!("../tests/cases/json.txt").lines() {
            check(text).unwrap();
        }
        let deep = |count: usize| format!("{}{}", "[".repeat(count), "]".repeat(count));
        for count in [1, DEPTH_MOST - 1, DEPTH_MOST, DEPTH_MOST + 1, 100_000] {
            check(&deep(count)).unwrap();
        }
    }

    fn any_json() -> impl Strategy<Value = serde_json::Value> {
        let leaf = prop_oneof![
            Just(serde_json::Value::Null),
            any::<bool>().prop_map(serde_json::Value::from),
            any::<i64>().prop_map(serde_json::Value::from),
            "\\PC{0,6}|[\\x00-\\x1f\"\\\\]{0,3}".prop_map(serde_json::Value::from),
        ];
        leaf.prop_recursive(4, 24, 4, |inner| {
            prop_oneof![
                prop::collection::vec(inner.clone(), 0..4).prop_map(serde_json::Value::from),
                prop::collection::btree_map("[a-c\"]{0,2}", inner, 0..4)
                    .prop_map(|map| serde_json::Value::Object(map.into_iter().collect())),
            ]
        })
    }

    proptest! {
        #[test]
        fn json_and_what_is_left_of_it(value in any_json(), pretty: bool, cut in any::<prop::sample::Index>(), put in "[\\[\\]{},:\"\\\\u0-9eE.+tn \n-]{0,2}") {
            let text = if pretty { serde_json::to_string_pretty(&value) } else { serde_json::to_string(&value) }.unwrap();
            check(&text)?;
            prop_assert_eq!(crate::json::stable(&text), Some(value.to_string()));
            let at = cut.index(text.len() + 1);
            let at = (at..=text.len()).find(|at| text.is_char_boundary(*at)).unwrap();
            check(&text[..at])?;
            check(&format!("{}{put}{}", &text[..at], &text[at..]))?;
        }

        #[test]
        fn anything_is_answered(text in "\\PC{0,40}|[\\[\\]{},:\"\\\\u0-9eE.+a-f truefalsn\n-]{0,24}") {
            check(&text)?;
        }
    }
}
