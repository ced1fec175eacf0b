//! Arbitrary entries, drawn from the record's own tables.
//!
//! What it is: the one generator that the history's and the file format's tests share.
//! What it is not: likely histories: identities come from a small pool, so that they meet and clash.

#![allow(dead_code, reason = "each test binary uses a part of it")]
#![allow(clippy::expect_used, reason = "a test")]

use std::collections::BTreeSet;

use measure::{civil::Minute, limit::Limit, money::Money, prefs::Prefs, typed::Typed, unit::Unit};
use proptest::{
    collection::vec,
    option,
    prelude::*,
    sample::{select, subsequence},
};
use record::{
    field::{Field, Holds, Value},
    history::entry::{Amendment, Body, Corrected, Entry, Key, LogId, Of, Says, Setting, Written},
    id::{EntryId, Id, LotId, PersonId, StepId, WigId},
    wig::{
        shade::{Along, Band, Shade},
        slots::{self, Per},
        steps::Planned,
        work::{KINDS, Kind, Work},
        zone::Zone,
    },
    workshop,
};

/// An identity with one telling byte.
pub fn id(number: u8) -> Id {
    let mut bytes = [0; 16];
    bytes[15] = number;
    Id::from_bytes(bytes)
}

/// The wig whose history is told.
pub const WIG: fn() -> LogId = || LogId::Wig(WigId(id(200)));

pub fn entry_id() -> impl Strategy<Value = EntryId> {
    (0u8..14).prop_map(|number| EntryId(id(number)))
}

pub fn minute() -> impl Strategy<Value = Minute> {
    (1u8..4, 0u8..3, prop_oneof![Just(0u8), Just(30), Just(59)]).prop_map(|(day, hour, minute)| {
        Minute::read(&format!("2026-11-{day:02}T{:02}:{minute:02}", hour * 11)).expect("a minute")
    })
}

fn written() -> impl Strategy<Value = Written> {
    (0u8..24, 0u8..60)
        .prop_map(|(hour, second)| Written::read(&format!("2026-11-25T{hour:02}:31:{second:02}Z")).expect("a moment"))
}

/// A number with a unit within a limit, in any unit of its kind, or bare.
fn within(limit: &'static Limit) -> BoxedStrategy<String> {
    let units: Vec<Unit> = Unit::of(limit.kind()).collect();
    let usual = Prefs::default().usual(limit.kind());
    (select(units), 0.0..=1.0f64, any::<bool>(), any::<bool>())
        .prop_map(move |(unit, share, bare, comma)| {
            let unit = if bare { usual } else { unit };
            let base = limit.unit.to_base(limit.low + (limit.high - limit.low) * share);
            let number = format!("{:.2}", unit.from_base(base));
            let number = if comma { number.replace('.', ",") } else { number };
            if bare { number } else { format!("{number} {}", unit.symbol()) }
        })
        .boxed()
}

fn words(longest: usize) -> BoxedStrategy<String> {
    prop_oneof![
        4 => "[ -~]{1,12}",
        2 => "\\PC{1,12}",
        2 => vec(any::<char>(), 1..12).prop_map(|chars| chars.into_iter().collect()),
        1 => select(vec!["🪡💇‍♀️ née \"O'Hara\" \\ \u{2028}", "0", "null", "to.kind", "\u{1}\u{7f}\t\n.", "\u{10ffff}"])
            .prop_map(str::to_owned),
        1 => select(vec!["🪡", "x", "é"]).prop_map(move |one| one.repeat(longest)),
    ]
    .prop_map(move |text| text.chars().take(longest).collect())
    .boxed()
}

/// Something a field will read.
pub fn text_for(holds: &'static Holds) -> BoxedStrategy<String> {
    let text = match holds {
        Holds::Quantity(limit) => within(limit),
        Holds::AnyOf(limits) => select(limits.to_vec()).prop_flat_map(within).boxed(),
        Holds::Money => (0..=Money::MOST.hundredths()).prop_map(|most| Money::from_hundredths(most).plain()).boxed(),
        Holds::Count(low, high) => (*low..=*high).prop_map(|count| count.to_string()).boxed(),
        Holds::Text(longest) => words(*longest),
        Holds::Choice(choices) => select(choices.to_vec()).prop_map(str::to_owned).boxed(),
        Holds::Date => (1900..2200, 1..=12, 1..=28).prop_map(|(y, m, d)| format!("{y:04}-{m:02}-{d:02}")).boxed(),
        Holds::Zone => select(Zone::ALL.to_vec()).prop_map(|zone| zone.name().to_owned()).boxed(),
        Holds::Lot => lot().prop_map(|lot| lot.to_string()).boxed(),
        Holds::YesNo => select(vec!["yes", "no"]).prop_map(str::to_owned).boxed(),
        Holds::Zones => subsequence(Zone::ALL.to_vec(), 1..=8)
            .prop_map(|zones| zones.iter().map(|zone| zone.name()).collect::<Vec<_>>().join(" "))
            .boxed(),
        Holds::Photo => (0u8..4).prop_map(|number| format!("{}{}", id(number), id(9))).boxed(),
        Holds::Shade => any::<[u8; 3]>().prop_map(|shade| Shade(shade).to_string()).boxed(),
        Holds::Along => (vec(any::<[u8; 3]>(), 1..=6), any::<bool>())
            .prop_map(|(shades, smooth)| {
                let step = 100 / shades.len() as u8;
                let last = shades.len() - 1;
                let bands = shades.into_iter().enumerate().map(|(index, shade)| Band {
                    shade: Shade(shade),
                    to: if index == last { 100 } else { step * (index as u8 + 1) },
                });
                Along::new(bands.collect(), smooth).expect("rises").to_string()
            })
            .boxed(),
        Holds::Step => step().prop_map(|step| step.to_string()).boxed(),
        // Never typed; see `value_for`.
        Holds::Planned => Just(String::new()).boxed(),
    };
    text.prop_filter("readable", |text| holds.read(text, &Prefs::default()).is_ok()).boxed()
}

fn value_for(holds: &'static Holds) -> BoxedStrategy<Value> {
    if *holds == Holds::Planned {
        return (any::<u32>(), work(), option::of(words(40)))
            .prop_map(|(place, work, skipped)| Value::Planned(Box::new(Planned { place, work, skipped })))
            .boxed();
    }
    text_for(holds).prop_map(|text| holds.read(&text, &Prefs::default()).expect("filtered")).boxed()
}

fn step() -> impl Strategy<Value = StepId> {
    (210u8..213).prop_map(|number| StepId(id(number)))
}

fn lot() -> impl Strategy<Value = LotId> {
    (220u8..223).prop_map(|number| LotId(id(number)))
}

fn of_kind(kind: &'static Kind) -> BoxedStrategy<Work> {
    let field = |field: &'static Field| {
        let text = text_for(&field.holds);
        let text = if field.required { text.prop_map(Some).boxed() } else { option::of(text).boxed() };
        text.prop_map(|text| text.map(|text| (field.name, text))).boxed()
    };
    let fields: Vec<BoxedStrategy<Option<(&'static str, String)>>> = kind.every_field().map(field).collect();
    fields
        .prop_map(move |fields| {
            let texts = fields.iter().flatten().map(|(name, text)| (*name, text.as_str()));
            Work::read(kind, texts, &Prefs::default()).expect("each field is readable")
        })
        .boxed()
}

/// Work of any kind.
pub fn work() -> BoxedStrategy<Work> {
    select(KINDS.to_vec()).prop_flat_map(of_kind).boxed()
}

/// The address of a value and what it holds, for every slot of the wig's or the workshop's table.
fn address(log: LogId) -> BoxedStrategy<(Key, &'static Holds)> {
    let slot: BoxedStrategy<(&'static Field, Per)> = match log {
        LogId::Workshop => {
            (0..workshop::slots::SLOTS.len()).prop_map(|at| (&workshop::slots::SLOTS[at], Per::Lot)).boxed()
        }
        LogId::Wig(_) => (0..slots::SLOTS.len()).prop_map(|at| (&slots::SLOTS[at].field, slots::SLOTS[at].per)).boxed(),
    };
    (slot, select(Zone::ALL.to_vec()), lot(), step())
        .prop_map(move |((field, per), zone, lot, step)| {
            let of = match per {
                Per::Wig => Of::Wig,
                Per::Zone => Of::Zone(zone),
                Per::Lot => Of::Lot(lot),
                Per::Step => Of::Step(step),
            };
            (Key::new(log, field.name, of).expect("the table has it"), &field.holds)
        })
        .boxed()
}

/// A value for some slot of a log; of few slots only where histories should contend.
pub fn valued(log: LogId, contend: bool) -> BoxedStrategy<(Key, Option<Value>)> {
    valued_twice(log, contend).prop_map(|(key, value, _)| (key, value)).boxed()
}

/// Two values for one slot of a log.
pub fn valued_twice(log: LogId, contend: bool) -> BoxedStrategy<(Key, Option<Value>, Option<Value>)> {
    let values = |holds| option::weighted(0.9, value_for(holds));
    let anywhere = address(log).prop_flat_map(move |(key, holds)| (Just(key), values(holds), values(holds))).boxed();
    if !contend || log == LogId::Workshop {
        return anywhere;
    }
    let few =
        select(vec![("rows", Of::Zone(Zone::Nape)), ("hairline_layers", Of::Wig)]).prop_flat_map(move |(slot, of)| {
            let holds = &slots::slot_named(slot).expect("a slot").field.holds;
            (Just(Key::new(log, slot, of).expect("a slot")), values(holds), values(holds))
        });
    prop_oneof![4 => few, 1 => anywhere].boxed()
}

fn says(log: LogId, contend: bool) -> BoxedStrategy<Says> {
    prop_oneof![work().prop_map(Says::Work), valued(log, contend).prop_map(|(key, value)| Says::Value(key, value)),]
        .boxed()
}

/// A correction to anything.
pub fn corrected(log: LogId) -> BoxedStrategy<Corrected> {
    (minute(), says(log, true)).prop_map(|(done, says)| Corrected { done, says }).boxed()
}

fn body(log: LogId, contend: bool) -> BoxedStrategy<Body> {
    let over = || vec(entry_id(), 0..4);
    let to = option::of((minute(), says(log, contend)).prop_map(|(done, says)| Corrected { done, says }));
    prop_oneof![
        2 => work().prop_map(Body::Work),
        3 => (valued(log, contend), over()).prop_map(|((key, value), over)| Body::Set(Setting { key, value, over })),
        3 => (entry_id(), over(), to).prop_map(|(target, over, to)| Body::Amend(Amendment { target, over, to })),
    ]
    .boxed()
}

fn in_log(log: LogId, contend: bool) -> BoxedStrategy<Entry> {
    let by = option::of((230u8..233).prop_map(|number| PersonId(id(number))));
    let lamport = prop_oneof![20 => 0u64..12, 1 => Just((1 << 53) - 1)];
    (lamport, entry_id(), minute(), written(), by, body(log, contend))
        .prop_map(move |(lamport, id, done, written, by, body)| Entry { lamport, id, log, done, written, by, body })
        .boxed()
}

/// Any entry at all.
pub fn any_entry() -> BoxedStrategy<Entry> {
    select(vec![LogId::Workshop, WIG(), LogId::Wig(WigId(id(201)))]).prop_flat_map(|log| in_log(log, false)).boxed()
}

/// Entries of one wig, contending for few values and identities: mostly impossible histories, and a
/// stray from another log now and then.
pub fn wild_history() -> BoxedStrategy<Vec<Entry>> {
    vec(prop_oneof![12 => in_log(WIG(), true), 1 => any_entry()], 0..24).boxed()
}

/// A wild history in which each identity stands once.
pub fn history_of_distinct() -> BoxedStrategy<Vec<Entry>> {
    wild_history()
        .prop_map(|entries| {
            let mut seen = BTreeSet::new();
            entries.into_iter().filter(|entry| seen.insert(entry.id)).collect()
        })
        .boxed()
}

/// A plain entry for cases told by hand.
pub fn entry(number: u8, lamport: u64, body: Body) -> Entry {
    Entry {
        lamport,
        id: EntryId(id(number)),
        log: WIG(),
        done: Minute::read("2026-11-25T09:30").expect("a minute"),
        written: Written::read("2026-11-25T09:31:02Z").expect("a moment"),
        by: None,
        body,
    }
}

/// A length for cases told by hand.
pub fn typed(amount: f64, unit: Unit) -> Value {
    Value::Quantity(Typed::plain(amount, unit))
}
