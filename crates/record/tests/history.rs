//! What must hold of any history: it opens, it merges, it can be put right.

#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic, reason = "a test")]

mod common;

use common::{WIG, corrected, entry, history_of_distinct, id, typed, valued, valued_twice, wild_history};
use measure::unit::Unit::{Centimetre, Inch};
use proptest::{collection::vec, prelude::*, sample::select};
use record::{
    history::{
        entry::{Amendment, Body, Corrected, Entry, Key, Of, Says, Setting},
        fold::{Done, Oddity, State, amendments_over, fold},
        log::Log,
        people::{People, Person},
    },
    id::{EntryId, PersonId},
    wig::zone::Zone,
};

/// Beyond every identity the generator draws.
const FRESH: u8 = 100;

/// What a state says, without how it came to say it.
fn told(state: &State) -> (Vec<(Key, record::history::fold::Held)>, Vec<Done>, Option<measure::civil::Minute>) {
    let values = state.values().map(|(key, held)| (key, held.clone())).collect();
    let works = state.works().iter().map(|done| Done { amended: false, ..done.clone() }).collect();
    (values, works, state.last_done())
}

fn merged(parts: &[&Log]) -> Log {
    let mut all = Log::default();
    for part in parts {
        all.merge(part);
    }
    all
}

fn amends(entry: &Entry, target: EntryId) -> bool {
    matches!(&entry.body, Body::Amend(amendment) if amendment.target == target)
}

/// An amendment made by somebody who has seen the whole log.
fn seen_all(log: &Log, target: EntryId, to: Option<Corrected>) -> Entry {
    let lamport = log.all().map(|entry| entry.lamport).max().unwrap_or(0) + 1;
    let over = amendments_over(log, target);
    entry(FRESH, lamport, Body::Amend(Amendment { target, over, to }))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_history_opens_the_same_in_any_order(
        (entries, shuffled) in wild_history().prop_flat_map(|entries| (Just(entries.clone()), Just(entries).prop_shuffle())),
    ) {
        let (one, other) = (Log::of(entries), Log::of(shuffled));
        prop_assert_eq!(&one, &other);
        prop_assert_eq!(fold(&one), fold(&other));
    }

    #[test]
    fn merging_takes_any_order_and_any_number_of_times(a in wild_history(), b in wild_history(), c in wild_history()) {
        let (a, b, c) = (Log::of(a), Log::of(b), Log::of(c));
        let all = merged(&[&a, &b, &c]);
        prop_assert_eq!(&merged(&[&a, &a]), &a, "idempotent");
        prop_assert_eq!(merged(&[&a, &b]), merged(&[&b, &a]), "commutative");
        prop_assert_eq!(&merged(&[&merged(&[&a, &b]), &c]), &all, "associative");
        prop_assert_eq!(&merged(&[&a, &merged(&[&b, &c])]), &all, "associative");
        prop_assert_eq!(&merged(&[&all, &a, &b, &c, &all]), &all, "again and again");
    }

    #[test]
    fn merging_counts_every_entry_and_drops_none(a in wild_history(), b in wild_history()) {
        let (mut one, other) = (Log::of(a), Log::of(b));
        let before = one.all().count();
        let added = one.merge(&other);
        prop_assert_eq!(added.new + added.known + added.clashing, other.all().count());
        prop_assert_eq!(one.all().count(), before + added.new + added.clashing);
        prop_assert!(other.all().all(|entry| one.all().any(|kept| kept == entry)));
    }

    #[test]
    fn works_stand_in_bench_order(entries in wild_history()) {
        let log = Log::of(entries);
        let order: Vec<_> = fold(&log).works().iter()
            .map(|done| (done.done, log.get(done.entry).map(|entry| entry.lamport), done.entry)).collect();
        prop_assert!(order.is_sorted(), "{:?}", order);
    }

    #[test]
    fn put_right_is_as_if_entered_right(
        entries in history_of_distinct(),
        at in any::<prop::sample::Index>(),
        to in corrected(WIG()),
        value in valued(WIG(), true),
    ) {
        let originals: Vec<&Entry> =
            entries.iter().filter(|entry| entry.log == WIG() && !matches!(entry.body, Body::Amend(_))).collect();
        prop_assume!(!originals.is_empty());
        let original = *at.get(&originals);
        let (says, body) = match (&original.body, to.says) {
            (Body::Work(_), Says::Work(work)) => (Says::Work(work.clone()), Body::Work(work)),
            (Body::Set(setting), _) => {
                let value = if value.0 == setting.key { value.1 } else { None };
                (Says::Value(setting.key, value.clone()), Body::Set(Setting { value, ..setting.clone() }))
            }
            _ => return Err(TestCaseError::reject("a value for work")),
        };
        let log = Log::of(entries.clone());
        let put_right = merged(&[&log, &Log::of([seen_all(&log, original.id, Some(Corrected { done: to.done, says }))])]);
        let right = Log::of(entries.iter().filter(|entry| !amends(entry, original.id)).map(|entry| {
            if entry.id == original.id { Entry { done: to.done, body: body.clone(), ..entry.clone() } } else { entry.clone() }
        }));
        prop_assert_eq!(told(&fold(&put_right)), told(&fold(&right)));
        if let Body::Work(_) = &original.body {
            let state = fold(&put_right);
            prop_assert!(state.works().iter().any(|done| done.entry == original.id && done.amended));
        }
    }

    #[test]
    fn undone_is_as_if_never_entered(entries in history_of_distinct(), at in any::<prop::sample::Index>()) {
        let originals: Vec<&Entry> =
            entries.iter().filter(|entry| entry.log == WIG() && !matches!(entry.body, Body::Amend(_))).collect();
        prop_assume!(!originals.is_empty());
        let undone = at.get(&originals).id;
        // What somebody replaced knowing the undone one stays replaced (see the test at the end).
        let known = |entry: &Entry| matches!(&entry.body, Body::Set(setting) if setting.over.contains(&undone));
        prop_assume!(!entries.iter().any(known));
        let log = Log::of(entries.clone());
        let after = merged(&[&log, &Log::of([seen_all(&log, undone, None)])]);
        let never = Log::of(entries.into_iter().filter(|entry| entry.id != undone && !amends(entry, undone)));
        prop_assert_eq!(told(&fold(&after)), told(&fold(&never)));
    }

    #[test]
    fn of_two_answers_the_higher_stands_on_both_sides_until_one_is_chosen(
        (entries, key, first, second) in valued_twice(WIG(), true).prop_flat_map(|(key, first, second)| {
            let others = common::any_entry().prop_filter("not a set of this value", move |entry| !sets(entry, key));
            (vec(others, 0..6), Just(key), Just(first), Just(second))
        }),
        lamports in (12u64..15, 12u64..15),
    ) {
        let base = Log::of(entries);
        let set = |number, lamport, value, over| entry(number, lamport, Body::Set(Setting { key, value, over }));
        let here = merged(&[&base, &Log::of([set(FRESH, lamports.0, first.clone(), vec![])])]);
        let there = merged(&[&base, &Log::of([set(FRESH + 1, lamports.1, second.clone(), vec![])])]);
        let (one, other) = (fold(&merged(&[&here, &there])), fold(&merged(&[&there, &here])));
        prop_assert_eq!(&one, &other);

        let (winner, answer) = if lamports.0 > lamports.1 { (FRESH, &first) } else { (FRESH + 1, &second) };
        let held = one.held(key).expect("two were set");
        prop_assert_eq!((held.by, &held.value), (EntryId(id(winner)), answer));
        let mut heads = held.heads.clone();
        heads.sort_unstable();
        prop_assert_eq!(heads, vec![EntryId(id(FRESH)), EntryId(id(FRESH + 1))]);
        prop_assert_eq!(held.two_answers, first != second);
        prop_assert_eq!(one.oddities().contains(&Oddity::TwoAnswers(held.by)), first != second);

        let chosen = set(FRESH + 2, 20, first.clone(), one.over(key));
        let after = fold(&merged(&[&here, &there, &Log::of([chosen])]));
        let held = after.held(key).expect("one was chosen");
        prop_assert_eq!((&held.value, &held.heads, held.two_answers), (&first, &vec![EntryId(id(FRESH + 2))], false));
        prop_assert!(!after.oddities().iter().any(|oddity| matches!(oddity, Oddity::TwoAnswers(of) if *of == held.by)));
    }

    #[test]
    fn of_two_corrections_the_higher_stands_until_one_is_chosen(
        works in [common::work(), common::work(), common::work()],
        undo in any::<bool>(),
        lamports in (12u64..15, 12u64..15),
    ) {
        let [work, first, second] = works;
        let original = entry(1, 1, Body::Work(work));
        let to = |work| Some(Corrected { done: original.done, says: Says::Work(work) });
        let (first, second) = (to(first), if undo { None } else { to(second) });
        let amend = |number, lamport, to: &Option<Corrected>, over| {
            entry(number, lamport, Body::Amend(Amendment { target: original.id, over, to: to.clone() }))
        };
        let stands = |log: &Log| fold(log).works().first().map(|done| done.work.clone());
        let work_of = |to: &Option<Corrected>| match to.as_ref().map(|to| &to.says) {
            Some(Says::Work(work)) => Some(work.clone()),
            _ => None,
        };
        let base = Log::of([original.clone()]);
        let here = merged(&[&base, &Log::of([amend(FRESH, lamports.0, &first, vec![])])]);
        let there = merged(&[&base, &Log::of([amend(FRESH + 1, lamports.1, &second, vec![])])]);
        let both = merged(&[&here, &there]);
        prop_assert_eq!(fold(&both), fold(&merged(&[&there, &here])));
        let winner = if lamports.0 > lamports.1 { &first } else { &second };
        prop_assert_eq!(stands(&both), work_of(winner));
        let told = |log: &Log| fold(log).oddities().contains(&Oddity::TwoCorrections(original.id));
        prop_assert_eq!(told(&both), first != second);

        let chosen = amend(FRESH + 2, 20, &first, amendments_over(&both, original.id));
        let after = merged(&[&both, &Log::of([chosen])]);
        prop_assert_eq!(stands(&after), work_of(&first));
        prop_assert!(!told(&after));
    }

    #[test]
    fn a_forget_mark_wins_every_union(a in people(), b in people(), c in people()) {
        let union = |parts: &[&People]| {
            let mut all = People::default();
            parts.iter().for_each(|part| all.merge(part));
            all
        };
        let all = union(&[&a, &b, &c]);
        prop_assert_eq!(&union(&[&c, &a, &b]), &all);
        prop_assert_eq!(&union(&[&union(&[&b, &c]), &a, &all]), &all);
        for part in [&a, &b, &c] {
            for (who, _) in part.all().filter(|(_, person)| **person == Person::Forgotten) {
                prop_assert!(all.all().any(|(one, person)| one == who && *person == Person::Forgotten));
            }
        }
    }
}

fn sets(entry: &Entry, key: Key) -> bool {
    matches!(&entry.body, Body::Set(setting) if setting.key == key)
}

fn people() -> BoxedStrategy<People> {
    let person = prop_oneof![
        3 => (0u64..4, select(vec!["A. Bench", "B. Needle", "C. Comb"]))
            .prop_map(|(lamport, name)| Person::Named { lamport, name: name.to_owned() }),
        1 => Just(Person::Forgotten),
    ];
    vec((0u8..5, person), 0..8)
        .prop_map(|all| {
            let mut people = People::default();
            all.into_iter().for_each(|(number, person)| people.add(PersonId(id(number)), person));
            people
        })
        .boxed()
}

#[test]
fn a_correction_of_another_value_changes_nothing() {
    let key = |slot, of| Key::new(WIG(), slot, of).expect("a slot");
    let girth = key("girth", Of::Wig);
    let rows = key("rows", Of::Zone(Zone::Nape));
    let set = entry(1, 1, Body::Set(Setting { key: girth, value: Some(typed(22.0, Inch)), over: vec![] }));
    let to = Corrected { done: set.done, says: Says::Value(rows, Some(record::field::Value::Count(3))) };
    let amend = entry(2, 2, Body::Amend(Amendment { target: set.id, over: vec![], to: Some(to) }));
    let state = fold(&Log::of([set.clone(), amend]));
    assert_eq!(state.value(girth), Some(&typed(22.0, Inch)));
    assert_eq!(state.value(rows), None);
    assert_eq!(state.oddities(), [Oddity::OtherKind(EntryId(id(2)))]);

    let to = Corrected { done: set.done, says: Says::Value(girth, Some(typed(57.0, Centimetre))) };
    let amend = entry(2, 2, Body::Amend(Amendment { target: set.id, over: vec![], to: Some(to) }));
    assert_eq!(fold(&Log::of([set, amend])).value(girth), Some(&typed(57.0, Centimetre)));
}

/// Three values, each seen by the next; the middle one is undone: the first stays replaced.
#[test]
fn undoing_a_value_in_the_middle_brings_no_old_one_back() {
    let key = Key::new(WIG(), "girth", Of::Wig).unwrap();
    let set = |number: u8, lamport, girth: f64, over: &[u8]| {
        let value = Some(typed(girth, Centimetre));
        let over = over.iter().map(|number| EntryId(id(*number))).collect();
        entry(number, lamport, Body::Set(Setting { key, value, over }))
    };
    let log = Log::of([set(1, 1, 55.0, &[]), set(2, 2, 56.0, &[1]), set(3, 3, 57.0, &[2])]);
    let undone = {
        let mut log = log.clone();
        log.add(seen_all(&log, EntryId(id(2)), None));
        log
    };
    let held = fold(&undone).held(key).cloned().unwrap();
    assert_eq!(held.heads, [EntryId(id(3))]);
    assert!(!held.two_answers);
}
