//! Kinds of work, a file each: a table of fields and a struct to read them by.
//!
//! What it is: the list of kinds and the generic `Work` that form, sheet line, file and search share.
//! What it is not: what a kind of work does to the wig's state.

use litemap::LiteMap;
use measure::{prefs::Prefs, say::Say};

use crate::field::{Field, Holds, Value, field};

pub mod accessory;
pub mod anchor;
pub mod base;
pub mod block;
pub mod colour_lock;
pub mod count;
pub mod count_dye;
pub mod cut;
pub mod disinfect;
pub mod dress;
pub mod dry;
pub mod dye;
pub mod edge;
pub mod fitting;
pub mod gather;
pub mod glue;
pub mod hand_over;
pub mod heat_set;
pub mod measured;
pub mod note;
pub mod photo;
pub mod product;
pub mod refront;
pub mod release;
pub mod repair;
pub mod reset;
pub mod rinse;
pub mod sew_weft;
pub mod store;
pub mod straighten;
pub mod test_lock;
pub mod unpick;
pub mod wash;
pub mod wig_prep;
pub(crate) mod words;
pub mod worn;

/// A kind of work.
#[derive(Debug)]
pub struct Kind {
    /// Its name in files; its label is the sentence `work.<name>`.
    pub name: &'static str,
    /// Version of its table; raised when a field changes its meaning.
    pub version: u32,
    /// Where it stands among the others.
    pub group: Group,
    /// Its fields.
    pub fields: &'static [Field],
    /// Fields it shares with other kinds.
    pub common: &'static [Field],
}

impl PartialEq for Kind {
    /// A kind is its name: each stands in the table once.
    fn eq(&self, other: &Kind) -> bool {
        self.name == other.name
    }
}

/// Which kinds stand together when one is picked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// Getting ready.
    Prepare,
    /// Washing, rinsing, drying.
    Clean,
    /// Weft, edges, what holds.
    Weft,
    /// Heat.
    Heat,
    /// Colour.
    Colour,
    /// Binding, loosening, cutting.
    Shape,
    /// Dressing.
    Finish,
    /// On the wearer and after.
    Wear,
    /// Photos and notes.
    Look,
    /// The workshop's own.
    Workshop,
}

impl Group {
    /// All that a wig's page offers, in the order of the bench.
    pub const ALL: [Group; 9] = [
        Group::Prepare,
        Group::Clean,
        Group::Weft,
        Group::Heat,
        Group::Colour,
        Group::Shape,
        Group::Finish,
        Group::Wear,
        Group::Look,
    ];

    /// Key of its label.
    pub fn label(self) -> &'static str {
        match self {
            Group::Prepare => "group.prepare",
            Group::Clean => "group.clean",
            Group::Weft => "group.weft",
            Group::Heat => "group.heat",
            Group::Colour => "group.colour",
            Group::Shape => "group.shape",
            Group::Finish => "group.finish",
            Group::Wear => "group.wear",
            Group::Look => "group.look",
            Group::Workshop => "group.workshop",
        }
    }
}

/// How a piece of work turned out.
pub const RESULTS: &[&str] = &["good", "partly", "failed"];

/// What every kind of work on a wig may carry: the step it was done for, how it turned out, checks that were overruled.
pub const COMMON: &[Field] = &[
    field("result", Holds::Choice(RESULTS)),
    field("more_to_come", Holds::YesNo),
    field("step", Holds::Step),
    field("overruled", Holds::Text(400)),
    field("judgement", Holds::Text(1000)),
];

/// How fibre is heated.
pub const MEDIA: &[&str] = &["water", "steam", "dryer", "iron"];
/// Classes of dye and other colour.
pub const DYE_CLASSES: &[&str] =
    &["acid", "disperse", "cationic", "direct", "reactive", "ink", "pigment_spray", "oxidation"];
/// What a heat test lock showed.
pub const LOCK_RESULTS: &[&str] = &["no_set", "held", "too_tight", "frizzed", "shiny", "stuck", "melted"];

/// All kinds, in the order of the bench.
pub const KINDS: &[&Kind] = &[
    &base::KIND,
    &measured::KIND,
    &block::KIND,
    &wash::KIND,
    &straighten::KIND,
    &sew_weft::KIND,
    &unpick::KIND,
    &edge::KIND,
    &glue::KIND,
    &refront::KIND,
    &gather::KIND,
    &release::KIND,
    &rinse::KIND,
    &dry::KIND,
    &heat_set::KIND,
    &dye::KIND,
    &test_lock::KIND,
    &colour_lock::KIND,
    &cut::KIND,
    &product::KIND,
    &dress::KIND,
    &accessory::KIND,
    &anchor::KIND,
    &wig_prep::KIND,
    &fitting::KIND,
    &worn::KIND,
    &reset::KIND,
    &disinfect::KIND,
    &repair::KIND,
    &store::KIND,
    &hand_over::KIND,
    &photo::KIND,
    &note::KIND,
    &count::KIND,
    &count_dye::KIND,
];

/// The kind of a name.
pub fn kind_named(name: &str) -> Option<&'static Kind> {
    KINDS.iter().copied().find(|kind| kind.name == name)
}

impl Kind {
    /// The field of a name.
    pub fn field(&self, name: &str) -> Option<&'static Field> {
        self.every_field().find(|field| field.name == name)
    }

    /// Its own fields, then those it shares.
    pub fn every_field(&self) -> impl Iterator<Item = &'static Field> {
        self.fields.iter().chain(self.common)
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
