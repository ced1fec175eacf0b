//! Words on the screen: the tables of every room, and the person's units.
//!
//! What it is: the one place a key becomes a sentence. What it is not: the sentences.

use measure::{
    prefs::{Degrees, Lengths, Prefs, Weights},
    say::{Arg, Say, Words},
};

use crate::store::local;

/// The English of every room.
pub const WORDS: Words = Words(&[
    measure::words::ENGLISH,
    record::words::ENGLISH,
    plan::words::ENGLISH,
    plan::colour::words::ENGLISH,
    sheet::words::ENGLISH,
    format::words::ENGLISH,
    crate::words::ENGLISH,
    crate::pages::bench::words::ENGLISH,
    crate::pages::drawer::words::ENGLISH,
    crate::pages::paper::words::ENGLISH,
    crate::pages::heat::words::ENGLISH,
    crate::pages::colour::words::ENGLISH,
    crate::pages::handover::words::ENGLISH,
]);

/// The sentence of a key.
pub fn t(key: &str) -> String {
    WORDS.get(key)
}

/// The sentence of a key with arguments, units as usual (for sentences without quantities).
pub fn ta(key: &'static str, args: impl Into<Vec<Arg>>) -> String {
    Say::new(key, args).words(&WORDS, &Prefs::default())
}

/// A sentence in the person's units.
pub fn say(say: &Say, prefs: &Prefs) -> String {
    say.words(&WORDS, prefs)
}

/// The label of a field.
pub fn field(name: &str) -> String {
    t(&format!("field.{name}"))
}

/// The label of a choice.
pub fn choice(name: &str) -> String {
    t(&format!("choice.{name}"))
}

const LENGTHS: &str = "weftbook.units.lengths";
const WEIGHTS: &str = "weftbook.units.weights";
const DEGREES: &str = "weftbook.units.degrees";
const CURRENCY: &str = "weftbook.units.currency";

/// The units chosen in this browser; the usual ones where nothing was, or nothing can be read.
pub fn prefs() -> Prefs {
    let read = |key: &str| local::get(key).unwrap_or_default();
    let usual = Prefs::default();
    let currency = read(CURRENCY);
    Prefs {
        lengths: if read(LENGTHS) == "inches" { Lengths::Inches } else { usual.lengths },
        weights: if read(WEIGHTS) == "ounces" { Weights::Ounces } else { usual.weights },
        degrees: if read(DEGREES) == "fahrenheit" { Degrees::Fahrenheit } else { usual.degrees },
        currency: if currency.is_empty() { usual.currency } else { currency.chars().take(4).collect() },
    }
}

/// Keeps the units; says whether this browser took them.
pub fn keep_prefs(prefs: &Prefs) -> bool {
    let lengths = if prefs.lengths == Lengths::Inches { "inches" } else { "metric" };
    let weights = if prefs.weights == Weights::Ounces { "ounces" } else { "grams" };
    let degrees = if prefs.degrees == Degrees::Fahrenheit { "fahrenheit" } else { "celsius" };
    [(LENGTHS, lengths), (WEIGHTS, weights), (DEGREES, degrees), (CURRENCY, prefs.currency.as_str())]
        .into_iter()
        .all(|(key, value)| local::set(key, value))
}
