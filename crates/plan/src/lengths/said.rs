//! What was said of a slot, or what stands for it.
//!
//! What it is: a short reader for this folder and the heat planner. What it is not: a default.

use measure::{
    say::{Arg, Say},
    typed::Typed,
};
use record::{
    field::Value,
    history::entry::Of,
    trade::fact::Fact,
    wig::{
        figure::{Figure, FromBase},
        figures::Wig,
    },
};

/// Something that cannot be, told at its field.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// The slot's name.
    pub slot: &'static str,
    /// For what.
    pub of: Of,
    /// The reason with its remedy.
    pub say: Say,
}

impl Problem {
    pub(crate) fn new(slot: &'static str, of: Of, key: &'static str, args: impl Into<Vec<Arg>>) -> Problem {
        Problem { slot, of, say: Say::new(key, args) }
    }
}

/// The figure that was typed.
pub(crate) fn typed<'a>(wig: &Wig<'a>, slot: &str, of: Of) -> Option<&'a Typed> {
    wig.held(slot, of)?.value.as_ref()?.typed()
}

/// A choice that was made.
pub(crate) fn choice(wig: &Wig<'_>, slot: &str, of: Of) -> Option<&'static str> {
    wig.held(slot, of)?.value.as_ref().and_then(Value::choice)
}

/// A figure as said.
pub(crate) fn said<Q: FromBase>(wig: &Wig<'_>, slot: &str, of: Of) -> Option<Figure<Q>> {
    let entry = wig.held(slot, of)?.by;
    typed(wig, slot, of).map(|typed| Figure::said(typed, Some(entry), Q::from_base(0.0)))
}

/// A figure as said, or as the tables have it.
pub(crate) fn figure<Q: FromBase>(wig: &Wig<'_>, slot: &str, of: Of, fact: &Fact) -> Figure<Q> {
    said(wig, slot, of).unwrap_or_else(|| Figure::assumed(fact))
}
