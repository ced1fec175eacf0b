//! Kinds of work, a file each: a table of fields and a struct to read them by.
//!
//! What it is: the list of kinds and the generic `Work` that form, sheet line, file and search share.
//! What it is not: what a kind of work does to the wig's state.

use litemap::LiteMap;
use measure::{prefs::Prefs, say::Say};

use crate::field::{Field, Value};

pub mod count;
pub mod note;
pub mod sew_weft;

/// A kind of work.
#[derive(Debug)]
pub struct Kind {
    /// Its name in files; its label is the sentence `work.<name>`.
    pub name: &'static str,
    /// Version of its table; raised when a field changes its meaning.
    pub version: u32,
    /// Its fields.
    pub fields: &'static [Field],
}

/// All kinds.
pub const KINDS: &[&Kind] = &[&sew_weft::KIND, &note::KIND, &count::KIND];

/// The kind of a name.
pub fn kind_named(name: &str) -> Option<&'static Kind> {
    KINDS.iter().copied().find(|kind| kind.name == name)
}

impl Kind {
    /// The field of a name.
    pub fn field(&self, name: &str) -> Option<&'static Field> {
        self.fields.iter().find(|field| field.name == name)
    }
}

/// A piece of work, planned or done.
#[derive(Clone, Debug)]
pub struct Work {
    kind: &'static Kind,
    values: LiteMap<&'static str, Value>,
}

/// A field that could not be filled, and why.
#[derive(Clone, Debug, PartialEq)]
pub struct Refusal {
    /// The field's name.
    pub field: String,
    /// The reason with its remedy.
    pub say: Say,
}

impl Work {
    /// Fills a kind's fields from what was typed or stored; empty texts are left out.
    ///
    /// # Errors
    /// Every field that was refused, not only the first; unknown and missing fields too.
    pub fn read<'a>(
        kind: &'static Kind,
        texts: impl IntoIterator<Item = (&'a str, &'a str)>,
        prefs: &Prefs,
    ) -> Result<Work, Vec<Refusal>> {
        let mut values = LiteMap::new_vec();
        let mut refusals = Vec::new();
        for (name, text) in texts {
            if text.trim().is_empty() {
                continue;
            }
            match kind.field(name) {
                None => refusals.push(Refusal { field: name.to_owned(), say: Say::key("record.no_such_field") }),
                Some(field) => match field.holds.read(text, prefs) {
                    Ok(value) => {
                        values.insert(field.name, value);
                    }
                    Err(say) => refusals.push(Refusal { field: name.to_owned(), say }),
                },
            }
        }
        for field in kind.fields.iter().filter(|field| field.required) {
            if !values.contains_key(field.name) && refusals.iter().all(|refusal| refusal.field != field.name) {
                refusals.push(Refusal { field: field.name.to_owned(), say: Say::key("record.required") });
            }
        }
        if refusals.is_empty() { Ok(Work { kind, values }) } else { Err(refusals) }
    }

    /// Its kind.
    pub fn kind(&self) -> &'static Kind {
        self.kind
    }

    /// What a field was filled with.
    pub fn get(&self, field: &str) -> Option<&Value> {
        self.values.get(field)
    }

    /// All filled fields, by name.
    pub fn values(&self) -> impl Iterator<Item = (&'static str, &Value)> {
        self.values.iter().map(|(name, value)| (*name, value))
    }
}

impl PartialEq for Work {
    fn eq(&self, other: &Work) -> bool {
        self.cmp(other).is_eq()
    }
}

impl Eq for Work {}

impl PartialOrd for Work {
    fn partial_cmp(&self, other: &Work) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Work {
    fn cmp(&self, other: &Work) -> std::cmp::Ordering {
        (self.kind.name, &self.values).cmp(&(other.kind.name, &other.values))
    }
}
