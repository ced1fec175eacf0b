//! The index: every text of every entry made alike once, so that a search is one walk over them.
//!
//! What it is: the texts in one piece, newest first, with what else may be asked beside each.
//! What it is not: kept anywhere: it is made anew from the states.

use litemap::LiteMap;
use measure::{civil::Date, order, quantity::ThermodynamicTemperature};

use super::{
    letters::{fold, fold_onto},
    query::{Hit, Query},
};
use crate::{
    field::{Holds, Value},
    history::{
        entry::{Key, LogId, Of},
        fold::{Done, State},
    },
    id::LotId,
    trade::fibres,
    wig::{
        figures::Wig,
        work::{Kind, Work},
        zone::Zones,
    },
};

/// Thermometers, and degrees typed in another unit, are no closer than this, K.
const ALIKE: f64 = 0.05;

/// All work of all logs, ready to be asked; newest first, so that answers come in their order.
#[derive(Debug, Default)]
pub struct Index {
    /// What is true of all entries of a log, folded.
    about: Vec<String>,
    /// Where each entry's text stands, apart from the rest: a search for words walks over these alone.
    lines: Vec<Line>,
    entries: Vec<Indexed>,
    /// The entries' texts, folded, one after another.
    texts: String,
}

/// The text of an entry.
#[derive(Clone, Copy, Debug)]
struct Line {
    /// Its log among those there are.
    book: u32,
    /// Where it ends in all texts; it begins where the one before ends.
    end: u32,
}

/// What may be asked of an entry beside its words.
#[derive(Debug)]
pub(super) struct Indexed {
    pub(super) hit: Hit,
    pub(super) kind: &'static Kind,
    pub(super) fibre: &'static str,
    pub(super) heat: Option<ThermodynamicTemperature>,
    pub(super) lot: Option<LotId>,
    pub(super) zones: Option<Zones>,
    pub(super) result: Option<&'static str>,
    pub(super) with: Option<&'static str>,
    /// What is said of its dye, folded; empty where it has none.
    dye: String,
}

/// Fields that say with what it was done, the first that is filled counts.
const WITH: &[&str] = &[
    "medium",
    "dye_class",
    "washed_with",
    "disinfected_with",
    "rinsed_with",
    "reset_with",
    "product",
    "dry_way",
    "glue",
];
/// Fields that speak of a dye.
const DYE: &[&str] = &["dye_class", "dye_name", "dye_batch", "colour"];

/// Labels looked up once.
struct Labels<'a> {
    label: &'a dyn Fn(&str) -> String,
    known: LiteMap<(&'static str, &'static str), String>,
}

impl Labels<'_> {
    /// Adds the folded label of a name of a room, such as `choice`.
    fn add(&mut self, room: &'static str, name: &'static str, text: &mut String) {
        if let Some(known) = self.known.get(&(room, name)) {
            text.push_str(known);
        } else {
            let folded = fold(&(self.label)(&format!("{room}.{name}")));
            text.push_str(&folded);
            self.known.insert((room, name), folded);
        }
        text.push(' ');
    }
}

/// What the workshop says of a lot.
struct LotText {
    fibre: &'static str,
    text: String,
}

impl Index {
    /// Reads the states of all wigs and the workshop's; `label` gives the words of a key such as `choice.water`.
    pub fn of<'a>(
        wigs: impl IntoIterator<Item = (LogId, &'a State)>,
        workshop: &'a State,
        label: &dyn Fn(&str) -> String,
    ) -> Index {
        let mut making = Making { labels: Labels { label, known: LiteMap::new_vec() }, lots: lots(workshop) };
        let mut index = Index::default();
        let mut read: Vec<Option<(u32, Indexed, String)>> = Vec::new();
        let mut places: Vec<(Hit, usize)> = Vec::new();
        for (log, state) in core::iter::once((LogId::Workshop, workshop)).chain(wigs) {
            let book = index.about.len() as u32;
            index.about.push(making.about(log, state));
            let base = match log {
                LogId::Wig(_) => Wig::new(state).fibre().name,
                LogId::Workshop => fibres::fibre("").name,
            };
            for done in state.works() {
                let (entry, text) = making.read(log, base, done);
                places.push((entry.hit, read.len()));
                read.push(Some((book, entry, text)));
            }
        }
        order::sort_by(&mut places, &|a, b| b.cmp(a));
        for (_, at) in places {
            let Some((book, entry, text)) = read.get_mut(at).and_then(Option::take) else { continue };
            index.texts.push_str(&text);
            index.lines.push(Line { book, end: index.texts.len() as u32 });
            index.entries.push(entry);
        }
        index
    }

    /// How many entries it holds.
    pub fn len(&self) -> usize {
        self.entries.len()
    }

    /// Whether it holds none.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// The text of each entry as it is searched, newest first.
    pub fn texts(&self) -> impl Iterator<Item = &str> {
        self.each_line().map(|(_, text)| text)
    }

    fn each_line(&self) -> impl Iterator<Item = (Line, &str)> {
        let mut rest = self.texts.as_str();
        let mut from = 0;
        self.lines.iter().map(move |line| {
            let (text, after) = rest.split_at_checked((line.end - from) as usize).unwrap_or((rest, ""));
            (rest, from) = (after, line.end);
            (*line, text)
        })
    }

    /// Every entry, newest first.
    pub(super) fn each(&self) -> impl Iterator<Item = &Indexed> {
        self.entries.iter()
    }

    /// Entries that answer, newest first.
    pub fn search(&self, query: &Query) -> Vec<Hit> {
        let (words, dye) = (words(&query.words), words(&query.dye));
        if words.is_empty() {
            return self.entries.iter().filter(|entry| entry.answers(query, &dye)).map(|entry| entry.hit).collect();
        }
        // The words that each log leaves to be found in its entries.
        let left: Vec<Vec<&str>> = self
            .about
            .iter()
            .map(|about| words.iter().map(String::as_str).filter(|word| !about.contains(word)).collect())
            .collect();
        let mut hits = Vec::new();
        for ((line, text), entry) in self.each_line().zip(&self.entries) {
            let words = left.get(line.book as usize).map_or(&[][..], Vec::as_slice);
            if words.iter().all(|word| text.contains(word)) && entry.answers(query, &dye) {
                hits.push(entry.hit);
            }
        }
        hits
    }
}

/// The words of a query, folded, the longest first: it is in fewest entries.
fn words(text: &str) -> Vec<String> {
    let mut words: Vec<String> = fold(text).split(' ').filter(|word| !word.is_empty()).map(str::to_owned).collect();
    order::sort_by(&mut words, &|a, b| b.len().cmp(&a.len()));
    words
}

impl Indexed {
    fn answers(&self, query: &Query, dye: &[String]) -> bool {
        let heat = |wanted: Option<ThermodynamicTemperature>, holds: fn(f64, f64) -> bool| {
            wanted.is_none_or(|wanted| self.heat.is_some_and(|heat| holds(heat.value, wanted.value)))
        };
        let day = self.hit.done.date();
        query.kind.is_none_or(|kind| kind == self.kind.name)
            && query.fibre.is_none_or(|fibre| fibre == self.fibre)
            && query.result.is_none_or(|result| Some(result) == self.result)
            && heat(query.low, |heat, low| heat >= low - ALIKE)
            && heat(query.high, |heat, high| heat <= high + ALIKE)
            && query.lot.is_none_or(|lot| Some(lot) == self.lot)
            && query.zone.is_none_or(|zone| self.zones.is_some_and(|zones| zones.has(zone)))
            && query.from.is_none_or(|from: Date| day >= from)
            && query.to.is_none_or(|to: Date| day <= to)
            && dye.iter().all(|word| self.dye.contains(word.as_str()))
    }
}

fn lots(workshop: &State) -> LiteMap<LotId, LotText> {
    let mut lots: LiteMap<LotId, LotText> = LiteMap::new_vec();
    for (key, held) in workshop.values() {
        let (Of::Lot(lot), Some(value)) = (key.of, &held.value) else { continue };
        if lots.get(&lot).is_none() {
            lots.insert(lot, LotText { fibre: "", text: String::new() });
        }
        let Some(known) = lots.get_mut(&lot) else { continue };
        match (key.slot, value) {
            ("lot_fibre", Value::Choice(fibre)) => known.fibre = fibre,
            ("lot_name" | "lot_colour" | "dye_lot", Value::Text(text)) => {
                fold_onto(text, &mut known.text);
                known.text.push(' ');
            }
            _ => {}
        }
    }
    lots
}

/// What is needed to make an index.
struct Making<'a> {
    labels: Labels<'a>,
    lots: LiteMap<LotId, LotText>,
}

impl Making<'_> {
    fn about(&mut self, log: LogId, state: &State) -> String {
        let mut about = String::new();
        let wig = Wig::new(state);
        if let LogId::Wig(_) = log {
            for text in [wig.name(), wig.character()] {
                fold_onto(text, &mut about);
                about.push(' ');
            }
            for slot in ["fibre", "cap"] {
                if let Some(Value::Choice(choice)) = state.value(Key { slot, of: Of::Wig }) {
                    self.labels.add("choice", choice, &mut about);
                }
            }
        }
        about
    }

    fn read(&mut self, log: LogId, base: &'static str, done: &Done) -> (Indexed, String) {
        let work = &done.work;
        let mut text = String::with_capacity(128);
        self.labels.add("work", work.kind().name, &mut text);
        for (_, value) in work.values() {
            self.write(value, &mut text);
        }
        let mut dye = String::new();
        for field in DYE {
            if let Some(value) = work.get(field) {
                self.write(value, &mut dye);
            }
        }
        let lot = match work.get("lot") {
            Some(Value::Lot(lot)) => Some(*lot),
            _ => None,
        };
        let indexed = Indexed {
            hit: Hit { done: done.done, lamport: done.lamport, log, entry: done.entry },
            kind: work.kind(),
            fibre: fibre(work, base, log, lot.and_then(|lot| self.lots.get(&lot))),
            heat: work.temperature(),
            lot,
            zones: has_zones(work.kind()).then(|| work.zones()),
            result: work.choice("result").or(work.choice("lock_result")),
            with: WITH.iter().find_map(|field| work.choice(field)),
            dye,
        };
        (indexed, text)
    }

    /// Adds a value's words. Identities, hashes and plain yes or no are nothing one would look for.
    fn write(&mut self, value: &Value, text: &mut String) {
        match value {
            Value::Text(words) => fold_onto(words, text),
            Value::Quantity(typed) => fold_onto(typed.text(), text),
            Value::Choice(choice) => self.labels.add("choice", choice, text),
            Value::Zone(zone) => self.labels.add("zone", zone.name(), text),
            Value::Zones(some) => some.each().for_each(|zone| self.labels.add("zone", zone.name(), text)),
            Value::Lot(lot) => text.push_str(self.lots.get(lot).map_or("", |lot| lot.text.as_str())),
            Value::Count(_) | Value::Date(_) | Value::Money(_) | Value::Shade(_) | Value::Along(_) => {
                fold_onto(&value.text(), text)
            }
            Value::YesNo(_) | Value::Photo(_) | Value::Step(_) | Value::Planned(_) => return,
        }
        text.push(' ');
    }
}

/// The fibre work was done to: the one it names, else its lot's where the lot itself was treated, else the base's.
fn fibre(work: &Work, base: &'static str, log: LogId, lot: Option<&LotText>) -> &'static str {
    let treated = matches!(work.kind().name, "test_lock" | "dye") || log == LogId::Workshop;
    let of_lot = lot.map(|lot| lot.fibre).filter(|fibre| treated && !fibre.is_empty());
    work.choice("fibre").or(of_lot).unwrap_or(base)
}

fn has_zones(kind: &Kind) -> bool {
    kind.fields.iter().any(|field| matches!(field.holds, Holds::Zone | Holds::Zones))
}
