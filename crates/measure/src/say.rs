//! What is said to people: a key with arguments, put into words at the rim.
//!
//! What it is: the carrier of every sentence of the core, and its English of this crate.
//! What it is not: layout, or a choice of language: another language is another set of tables.

use crate::{
    civil::Date,
    money::Money,
    prefs::Prefs,
    quantity::{
        ArealNumberDensity, Length, LinearMassDensity, LinearNumberDensity, Mass, ThermodynamicTemperature, Time,
        Volume,
    },
};

/// A table of words: key and sentence; `{0}`, `{1}`… stand for the arguments.
pub type Table = &'static [(&'static str, &'static str)];

/// One table after another, at compile time: words may stand with what they are of and still be one table of their crate.
pub const fn join<const N: usize>(first: Table, second: Table) -> [(&'static str, &'static str); N] {
    let mut all = [("", ""); N];
    let mut at = 0;
    while at < N {
        all[at] = if at < first.len() { first[at] } else { second[at - first.len()] };
        at += 1;
    }
    all
}

/// The tables of one language, one per crate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Words(pub &'static [Table]);

impl Words {
    /// The sentence of a key, if a table has it.
    pub fn find(&self, key: &str) -> Option<&'static str> {
        self.0.iter().flat_map(|table| table.iter()).find(|(name, _)| *name == key).map(|(_, text)| *text)
    }

    /// The sentence of a key without arguments; the key itself where no table has it.
    pub fn get(&self, key: &str) -> String {
        self.find(key).map_or_else(|| key.to_owned(), str::to_owned)
    }
}

/// A sentence to be said.
#[derive(Clone, Debug, PartialEq)]
pub struct Say {
    /// Which sentence.
    pub key: &'static str,
    /// What fills its places.
    pub args: Vec<Arg>,
}

/// An argument of a sentence, in its own quantity, so that units follow the person's choice.
#[derive(Clone, Debug, PartialEq)]
pub enum Arg {
    /// Words as they are: a name, what was typed.
    Text(String),
    /// Words looked up in the tables.
    Key(&'static str),
    /// A whole number.
    Count(i64),
    /// A plain number and its decimals.
    Number(f64, u8),
    /// A share, shown in percent.
    Percent(f64),
    /// A length as one measures a head or a row: cm or in.
    Length(Length),
    /// A small length as one measures a gap: mm or in.
    Gap(Length),
    /// A long length of weft: m or in.
    Run(Length),
    /// A weight.
    Mass(Mass),
    /// A small weight, as one weighs dye.
    Dose(Mass),
    /// A volume: mL or L.
    Volume(Volume),
    /// Hours and minutes.
    Time(Time),
    /// A temperature: °C or °F.
    Temperature(ThermodynamicTemperature),
    /// Fibre fineness.
    Fineness(LinearMassDensity),
    /// Strands per area.
    Fullness(ArealNumberDensity),
    /// Strands per length of weft.
    Strands(LinearNumberDensity),
    /// Money.
    Money(Money),
    /// A day.
    Date(Date),
    /// A sentence inside a sentence.
    Say(Box<Say>),
    /// Several sentences, one after another.
    List(Vec<Say>),
}

impl Say {
    /// A sentence without arguments.
    pub fn key(key: &'static str) -> Say {
        Say { key, args: Vec::new() }
    }

    /// A sentence with its arguments.
    pub fn new(key: &'static str, args: impl Into<Vec<Arg>>) -> Say {
        Say { key, args: args.into() }
    }

    /// The sentence in words.
    pub fn words(&self, words: &Words, prefs: &Prefs) -> String {
        let pattern = words.get(self.key);
        let mut out = String::with_capacity(pattern.len() + 16);
        let mut rest = pattern.as_str();
        while let Some(open) = rest.find('{') {
            out.push_str(&rest[..open]);
            let tail = &rest[open + 1..];
            let Some(close) = tail.find('}') else {
                out.push_str(&rest[open..]);
                return out;
            };
            match tail[..close].parse::<usize>().ok().and_then(|place| self.args.get(place)) {
                Some(arg) => out.push_str(&arg.words(words, prefs)),
                None => out.push_str(&rest[open..=open + 1 + close]),
            }
            rest = &tail[close + 1..];
        }
        out.push_str(rest);
        out
    }
}

impl Arg {
    /// The argument in words and in the person's units.
    pub fn words(&self, words: &Words, prefs: &Prefs) -> String {
        match self {
            Arg::Text(text) => text.clone(),
            Arg::Key(key) => words.get(key),
            Arg::Count(count) => count.to_string(),
            Arg::Number(number, decimals) => prefs.number(*number, usize::from(*decimals)),
            Arg::Percent(share) => format!("{} %", prefs.number(share * 100.0, 0)),
            Arg::Length(length) => prefs.length(*length),
            Arg::Gap(length) => prefs.gap(*length),
            Arg::Run(length) => prefs.run(*length),
            Arg::Mass(mass) => prefs.mass(*mass),
            Arg::Dose(mass) => prefs.dose(*mass),
            Arg::Volume(volume) => prefs.volume(*volume),
            Arg::Time(time) => prefs.time(*time),
            Arg::Temperature(heat) => prefs.temperature(*heat),
            Arg::Fineness(fineness) => prefs.fineness(*fineness),
            Arg::Fullness(fullness) => prefs.fullness(*fullness),
            Arg::Strands(strands) => prefs.strands(*strands),
            Arg::Money(money) => prefs.money(*money),
            Arg::Date(date) => date.to_string(),
            Arg::Say(say) => say.words(words, prefs),
            Arg::List(list) => {
                let parts: Vec<String> = list.iter().map(|say| say.words(words, prefs)).collect();
                parts.join(" ")
            }
        }
    }
}

impl From<Say> for Arg {
    fn from(say: Say) -> Arg {
        Arg::Say(Box::new(say))
    }
}

impl From<&str> for Arg {
    fn from(text: &str) -> Arg {
        Arg::Text(text.to_owned())
    }
}

impl From<String> for Arg {
    fn from(text: String) -> Arg {
        Arg::Text(text)
    }
}
