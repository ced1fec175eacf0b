//! Words of the sheet: sentences in the person's units, temperatures in both, what was typed made safe to print.
//!
//! What it is: the one way from a key or a value to text. What it is not: layout.

use measure::{
    prefs::{Degrees, Lengths, Prefs},
    say::{Arg, Say},
    typed::Typed,
    unit::{Kind, Unit},
};
use record::{
    field::Value,
    id::LotId,
    wig::zone::{Zone, Zones},
    workshop::lots::Lot,
};

use super::model::{Line, Sort};
use crate::drawing::{Voice, turns};

/// What writes.
pub(super) struct Scribe<'a> {
    pub words: &'a measure::say::Words,
    pub prefs: Prefs,
    pub lots: &'a [Lot],
}

impl<'a> Scribe<'a> {
    pub fn new(voice: &Voice<'a>, lots: &'a [Lot]) -> Scribe<'a> {
        let prefs = Prefs { degrees: Degrees::Both, ..voice.prefs.clone() };
        Scribe { words: voice.words, prefs, lots }
    }

    /// The voice of drawings.
    pub fn voice(&self) -> Voice<'_> {
        Voice { words: self.words, prefs: &self.prefs }
    }

    /// A sentence.
    pub fn say(&self, say: &Say) -> String {
        clean(&say.words(self.words, &self.prefs))
    }

    /// A sentence without arguments.
    pub fn key(&self, key: &'static str) -> String {
        self.say(&Say::key(key))
    }

    /// A sentence with arguments.
    pub fn with(&self, key: &'static str, args: impl Into<Vec<Arg>>) -> String {
        self.say(&Say::new(key, args))
    }

    /// A yes as something to do, if it is one.
    pub fn yes(&self, name: &str) -> Option<String> {
        self.words.find(&format!("sheet.y_{name}")).map(str::to_owned)
    }

    /// A choice's label.
    pub fn choice(&self, name: &str) -> String {
        self.words.get(&format!("choice.{name}"))
    }

    /// What a field is called before the work is done.
    pub fn field(&self, name: &str) -> String {
        let own = self.words.find(&format!("sheet.f_{name}"));
        own.map_or_else(|| self.words.get(&format!("field.{name}")), str::to_owned)
    }

    /// What is to be done, by its kind.
    pub fn to_do(&self, kind: &str) -> String {
        self.words.get(&format!("todo.{kind}"))
    }

    /// A lot's name.
    pub fn lot(&self, id: LotId) -> String {
        match self.lots.iter().find(|lot| lot.id == id) {
            Some(lot) if !lot.name.trim().is_empty() => clean(&lot.name),
            Some(_) => self.key("sheet.bar_lot_unnamed"),
            None => self.key("sheet.bar_lot_unknown"),
        }
    }

    /// Zones, those of the whole wig in one word.
    pub fn zones(&self, zones: &[Zone]) -> String {
        if zones.len() == Zone::ALL.len() {
            return self.key("sheet.whole_wig");
        }
        let mut names: Vec<String> = Vec::new();
        for zone in zones {
            names.push(self.key(zone.label()));
        }
        names.join(", ")
    }

    /// A figure as typed; in the person's unit too, and every temperature in both.
    pub fn typed(&self, typed: &Typed) -> String {
        let other = match typed.unit().kind() {
            Kind::Temperature => {
                return typed.temperature().map_or_else(String::new, |heat| self.prefs.temperature(heat));
            }
            // A length in the other system is told in the person's own too.
            Kind::Length if (typed.unit() == Unit::Inch) != (self.prefs.lengths == Lengths::Inches) => {
                typed.length().map(|length| self.prefs.length(length))
            }
            _ => None,
        };
        match other {
            Some(other) if other != typed.text() => clean(&format!("{} ({other})", typed.text())),
            _ => clean(typed.text()),
        }
    }

    /// A value.
    pub fn value(&self, value: &Value) -> String {
        match value {
            Value::Quantity(typed) => self.typed(typed),
            Value::Choice(name) => self.choice(name),
            Value::Zone(zone) => self.key(zone.label()),
            Value::Zones(zones) => self.zones(&each(*zones)),
            Value::YesNo(yes) => self.choice(if *yes { "yes" } else { "no" }),
            Value::Lot(id) => self.lot(*id),
            Value::Money(money) => self.prefs.money(*money),
            other => clean(&other.text()),
        }
    }
}

/// Zones in a list.
pub(super) fn each(zones: Zones) -> Vec<Zone> {
    zones.each().collect()
}

/// Text that cannot steer what stands round it: turns of direction and control characters are taken out, lines kept.
pub(super) fn clean(text: &str) -> String {
    let steers = |letter: char| (letter.is_control() && letter != '\n') || turns(letter);
    text.chars().map(|letter| if steers(letter) { '\u{fffd}' } else { letter }).collect()
}

/// A line without a name.
pub(super) fn line(sort: Sort, text: String) -> Line {
    Line { sort, name: String::new(), text }
}

/// A figure with its name.
pub(super) fn figure(name: String, text: String) -> Line {
    Line { sort: Sort::Figure, name, text }
}
