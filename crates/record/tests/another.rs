//! Another wig like this one: what carries over and what does not.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that fails says so")]

mod common;

use std::collections::BTreeSet;

use common::{WIG, entry, id, wild_history};
use measure::{prefs::Prefs, say::Words};
use proptest::prelude::*;
use record::{
    history::{
        another, desk,
        entry::{Body, Key, LogId, Of},
        fold::{State, fold},
        log::Log,
    },
    id::{LotId, StepId},
    wig::{
        slots::{Group, slot_named},
        steps::{self, Planned},
        work::{Work, cut, wash},
        zone::Zone,
    },
};

fn counter() -> impl FnMut() -> StepId {
    let mut next = 99;
    move || {
        next += 1;
        StepId(id(next))
    }
}

/// The state of a new log that says this.
fn begun(bodies: Vec<Body>) -> State {
    let count = bodies.len();
    let log = Log::of((0u8..).zip(bodies).map(|(at, body)| entry(at, u64::from(at), body)));
    assert_eq!(log.entries().count(), count);
    fold(&log)
}

fn told() -> State {
    let prefs = Prefs::default();
    let mut log = Log::default();
    let mut at = 0;
    let mut add = |body: Body| {
        at += 1;
        log.add(entry(at, u64::from(at), body));
    };
    for (slot, of, text) in [
        ("name", Of::Wig, "Copper bob"),
        ("character", Of::Wig, "The keeper’s daughter"),
        ("due", Of::Wig, "2027-03-15"),
        ("note", Of::Wig, "Paid in advance"),
        ("size", Of::Wig, "large"),
        ("girth", Of::Wig, "58 cm"),
        ("fibre", Of::Wig, "modacrylic"),
        ("base_price", Of::Wig, "35"),
        ("label_heat", Of::Wig, "80 °C"),
        ("longest", Of::Zone(Zone::Nape), "20 cm"),
        ("target", Of::Wig, "1.3"),
        ("use_lot", Of::Lot(LotId(id(70))), "yes"),
        ("minutes_per_row", Of::Wig, "28 min"),
    ] {
        add(desk::set(&State::default(), WIG(), slot, of, text, &prefs).expect(slot));
    }
    let work = |kind| Work::read(kind, [], &prefs).expect("nothing needed");
    let step = |number| StepId(id(number));
    let planned = |place, work, skipped: Option<&str>| Planned { place, work, skipped: skipped.map(str::to_owned) };
    add(desk::plan_step(&State::default(), step(80), planned(2048, work(&cut::KIND), None)));
    add(desk::plan_step(&State::default(), step(81), planned(1024, work(&wash::KIND), Some("new base"))));
    let done = Work::read(&cut::KIND, [("step", step(80).0.to_string().as_str())], &prefs).expect("a cut");
    add(Body::Work(done));
    fold(&log)
}

#[test]
fn the_plan_and_the_look_carry_over_and_the_history_does_not() {
    let state = told();
    let bodies = another::like(&state, "Copper bob (another)", false, &mut counter()).expect("a short name");
    let new = begun(bodies);
    let text = |slot, of| new.value(Key::new(WIG(), slot, of).expect(slot)).map(record::field::Value::text);
    for (slot, of, wanted) in [
        ("name", Of::Wig, Some("Copper bob (another)")),
        ("character", Of::Wig, None),
        ("due", Of::Wig, None),
        ("note", Of::Wig, None),
        ("size", Of::Wig, Some("large")),
        ("girth", Of::Wig, None),
        ("fibre", Of::Wig, Some("modacrylic")),
        ("base_price", Of::Wig, None),
        ("label_heat", Of::Wig, Some("80 °C")),
        ("longest", Of::Zone(Zone::Nape), Some("20 cm")),
        ("target", Of::Wig, Some("1.3 ×")),
        ("use_lot", Of::Lot(LotId(id(70))), Some("yes")),
        ("minutes_per_row", Of::Wig, Some("28 min")),
    ] {
        assert_eq!(text(slot, of).as_deref(), wanted, "{slot}");
    }
    assert!(new.works().is_empty());
    let plan: Vec<(&str, Option<&str>, bool)> = steps::steps(&new)
        .iter()
        .map(|step| (step.planned.work.kind().name, step.planned.skipped.as_deref(), step.done.is_empty()))
        .collect();
    assert_eq!(plan, [("wash", Some("new base"), true), ("cut", None, true)]);

    let with = begun(another::like(&state, "Twin", true, &mut counter()).expect("a short name"));
    let text = |slot| with.value(Key::new(WIG(), slot, Of::Wig).expect(slot)).map(record::field::Value::text);
    assert_eq!(text("girth").as_deref(), Some("58 cm"));
    assert_eq!(text("character").as_deref(), Some("The keeper’s daughter"));
    assert_eq!(text("due"), None);
}

#[test]
fn a_name_is_offered_and_refused_where_it_is_too_long() {
    let words = Words(&[record::words::ENGLISH]);
    assert_eq!(another::name(&told()).words(&words, &Prefs::default()), "Copper bob (another)");
    let refusal = another::like(&told(), &"x".repeat(81), false, &mut counter()).expect_err("81 characters");
    assert_eq!((refusal.field.as_str(), refusal.say.key), ("name", "record.text_too_long"));
}

proptest! {
    #[test]
    fn any_history_gives_another_that_opens(entries in wild_history(), wearer in any::<bool>()) {
        let state = fold(&Log::of(entries));
        let bodies = another::like(&state, "", wearer, &mut counter()).expect("no name");
        let mut keys = BTreeSet::new();
        for body in &bodies {
            let Body::Set(setting) = body else { panic!("work in {body:?}") };
            prop_assert!(keys.insert(setting.key), "{:?} twice", setting.key);
            prop_assert!(setting.over.is_empty() && setting.value.is_some());
            prop_assert!(Key::new(LogId::Wig(record::id::WigId(id(9))), setting.key.slot, setting.key.of).is_some());
            let slot = slot_named(setting.key.slot).expect("a slot");
            prop_assert!(wearer || slot.group != Group::Head || slot.field.name == "size");
        }
        let new = begun(bodies);
        prop_assert!(new.oddities().is_empty());
        prop_assert_eq!(steps::steps(&new).len(), steps::steps(&state).len());
    }
}
