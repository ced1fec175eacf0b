//! Finding again: told by hand, and against a plain filter over the same works.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that fails says so")]

mod common;

use std::collections::BTreeMap;

use common::{id, wild_history};
use measure::{
    civil::{Date, Minute},
    prefs::Prefs,
    quantity::{ThermodynamicTemperature, units},
    say::Words,
};
use proptest::{collection::vec, option, prelude::*, sample::select};
use record::{
    field::{Holds, Value},
    history::{
        desk,
        entry::{Body, Entry, LogId, Of, Written},
        fold::{Done, State, fold},
        log::Log,
    },
    id::{EntryId, LotId, WigId},
    search::{self, Hit, Index, Query},
    trade::fibres,
    wig::{
        figures::Wig,
        work::{KINDS, LOCK_RESULTS, RESULTS, kind_named},
        zone::Zone,
    },
};

fn label(key: &str) -> String {
    Words(&[record::words::ENGLISH]).get(key)
}

fn celsius(degrees: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<units::degree_celsius>(degrees)
}

/// A bench of several wigs, said in lines: `wig 1 name = Copper bob`, `lot 5 lot_name = Fox`, `2026-03-01 1 heat_set …`.
const BENCH: &str = "
    wig 1 name = Copper bob
    wig 1 character = The keeper’s daughter
    wig 1 fibre = modacrylic
    wig 2 name = Grey mane
    wig 2 fibre = polyester
    wig 3 name = Dressing of the nineties
    wig 3 fibre = human_hair
    lot 5 lot_name = Müller’s fox
    lot 5 lot_fibre = modacrylic
    2026-03-01 1 heat_set medium=water; temperature=92 °C; result=good; zones=nape back; remark=tight crêpe
    2026-03-02 1 heat_set medium=water; temperature=180 °F; result=good
    2026-03-03 1 heat_set medium=steam; temperature=96 °C; result=failed; zones=top
    2026-03-04 2 heat_set medium=iron; temperature=130 °C; result=good; remark=brushed-out waves
    2026-03-05 2 test_lock temperature=95 °C; lock_result=held; lot=5
    2026-03-06 2 test_lock temperature=120 °C; lock_result=frizzed; medium=iron
    2026-03-07 1 dye dye_class=disperse; dye_name=Rust №4; colour=Fuchsrot; zones=nape; lot=5; result=partly
    2026-03-08 3 heat_set medium=dryer; temperature=60 °C; result=good
    2026-03-09 1 sew_weft sewn_as=row; length=20 cm; lot=5
    2026-03-10 3 note words=Crêpe held by drying
    2026-03-11 2 fitting fit=fits
";

fn bench(text: &str) -> (BTreeMap<u8, State>, State) {
    let mut wigs: BTreeMap<u8, Log> = BTreeMap::new();
    let mut workshop = Log::default();
    let prefs = Prefs::default();
    let mut count = 0;
    for line in text.lines().map(str::trim).filter(|line| !line.is_empty()) {
        count += 1;
        let words: Vec<&str> = line.splitn(4, ' ').collect();
        let number: u8 = words[1].parse().unwrap();
        let (done, log, body) = match words[0] {
            "wig" | "lot" => {
                let (log, of) = match words[0] {
                    "wig" => (LogId::Wig(WigId(id(number))), Of::Wig),
                    _ => (LogId::Workshop, Of::Lot(LotId(id(number)))),
                };
                let value = words[3].trim_start_matches("= ");
                ("2026-02-01", log, desk::set(&State::default(), log, words[2], of, value, &prefs).expect(line))
            }
            day => {
                let kind = kind_named(words[2]).expect(line);
                let pairs: Vec<(&str, String)> = words[3]
                    .split(';')
                    .map(|pair| pair.trim().split_once('=').expect(line))
                    .map(|(name, value)| {
                        (name, if name == "lot" { id(value.parse().unwrap()).to_string() } else { value.to_owned() })
                    })
                    .collect();
                let texts = pairs.iter().map(|(name, value)| (*name, value.as_str()));
                (day, LogId::Wig(WigId(id(number))), desk::work(kind, texts, &prefs).expect(line))
            }
        };
        let entry = Entry {
            lamport: count,
            id: EntryId(id(count as u8)),
            log,
            done: Minute::read(&format!("{done}T10:00")).unwrap(),
            written: Written::read("2026-11-25T09:31:02Z").unwrap(),
            by: None,
            body,
        };
        match log {
            LogId::Workshop => workshop.add(entry),
            LogId::Wig(_) => wigs.entry(number).or_default().add(entry),
        };
    }
    (wigs.into_iter().map(|(number, log)| (number, fold(&log))).collect(), fold(&workshop))
}

fn index(wigs: &BTreeMap<u8, State>, workshop: &State) -> Index {
    Index::of(wigs.iter().map(|(number, state)| (LogId::Wig(WigId(id(*number))), state)), workshop, &label)
}

/// Days of March on which something was done that answers, newest first.
fn days(hits: &[Hit]) -> Vec<u8> {
    hits.iter().map(|hit| hit.done.date().to_string()[8..].parse().unwrap()).collect()
}

#[test]
fn cases() {
    let (wigs, workshop) = bench(BENCH);
    let index = index(&wigs, &workshop);
    let all = Query::default;
    let cases: Vec<(&str, Query, &[u8])> = vec![
        ("nothing asked", all(), &[11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1]),
        (
            "every set above 90 °C on modacrylic that held",
            Query {
                fibre: Some("modacrylic"),
                kind: Some("heat_set"),
                low: Some(celsius(90.0)),
                result: Some("good"),
                ..all()
            },
            &[1],
        ),
        (
            "exactly as hot, typed in another unit",
            Query { high: Some(celsius(82.22)), low: Some(celsius(82.22)), ..all() },
            &[2],
        ),
        ("without accent and case", Query { words: "CREPE".into(), ..all() }, &[10, 1]),
        ("two words, in any order", Query { words: "drying crepe".into(), ..all() }, &[10]),
        ("a word nowhere", Query { words: "crepe zebra".into(), ..all() }, &[]),
        ("the wig's own words with the entry's", Query { words: "keepers set".into(), ..all() }, &[3, 2, 1]),
        ("the same with its apostrophe", Query { words: "keeper's set steam".into(), ..all() }, &[3]),
        ("a choice by its label", Query { words: "frizz".into(), ..all() }, &[6]),
        ("a lot by its name", Query { words: "muller".into(), ..all() }, &[9, 7, 5]),
        ("a figure as typed", Query { words: "180".into(), ..all() }, &[2]),
        ("a dye's colour", Query { dye: "fuchs".into(), ..all() }, &[7]),
        ("a dye by class and name", Query { dye: "rust disperse".into(), ..all() }, &[7]),
        ("a remark is no dye", Query { dye: "crepe".into(), ..all() }, &[]),
        ("a lot", Query { lot: Some(LotId(id(5))), ..all() }, &[9, 7, 5]),
        (
            "a test lock of a lot counts for the lot's fibre",
            Query { fibre: Some("modacrylic"), kind: Some("test_lock"), ..all() },
            &[5],
        ),
        (
            "sewing counts for the base's fibre",
            Query { fibre: Some("modacrylic"), kind: Some("sew_weft"), ..all() },
            &[9],
        ),
        (
            "a zone; whole-wig work is done there too",
            Query { zone: Some(Zone::Nape), kind: Some("heat_set"), ..all() },
            &[8, 4, 2, 1],
        ),
        ("work without zones is in none", Query { zone: Some(Zone::Nape), kind: Some("fitting"), ..all() }, &[]),
        ("what a lock showed", Query { result: Some("held"), ..all() }, &[5]),
        (
            "days, both counted",
            Query { from: Date::read("2026-03-03"), to: Date::read("2026-03-05"), ..all() },
            &[5, 4, 3],
        ),
        (
            "a combining mark alone is nothing asked",
            Query { words: "\u{301}".into(), kind: Some("note"), ..all() },
            &[10],
        ),
    ];
    for (name, query, wanted) in cases {
        assert_eq!(days(&index.search(&query)), wanted, "{name}");
    }
}

#[test]
fn what_worked_on_modacrylic() {
    let (wigs, workshop) = bench(BENCH);
    let worked = index(&wigs, &workshop).worked("modacrylic");
    let told: Vec<String> = worked
        .iter()
        .flat_map(|kind| kind.outcomes.iter().map(move |outcome| (kind.kind, outcome)))
        .map(|(kind, outcome)| {
            let tried = outcome.tried.iter().map(|one| {
                let heat = one.temperature.map_or(0.0, |heat| heat.get::<units::degree_celsius>());
                format!(" {:.0} {}", heat, one.with.unwrap_or("-"))
            });
            format!("{kind} {}:{}", outcome.result, tried.collect::<String>())
        })
        .collect();
    assert_eq!(
        told,
        [
            "heat_set good: 82 water 92 water",
            "heat_set failed: 96 steam",
            "dye partly: 0 disperse",
            "test_lock held: 95 -"
        ]
    );
}

/// Every text of a piece of work that words may be found in.
fn texts(done: &Done, workshop: &State) -> Vec<String> {
    let mut texts = vec![label(&format!("work.{}", done.work.kind().name))];
    for (_, value) in done.work.values() {
        texts.extend(words_of(value, workshop));
    }
    texts
}

fn words_of(value: &Value, workshop: &State) -> Vec<String> {
    match value {
        Value::Choice(choice) => vec![label(&format!("choice.{choice}"))],
        Value::Zone(zone) => vec![label(zone.label())],
        Value::Zones(zones) => zones.each().map(|zone| label(zone.label())).collect(),
        Value::Lot(lot) => workshop
            .values()
            .filter(|(key, _)| key.of == Of::Lot(*lot) && ["lot_name", "lot_colour", "dye_lot"].contains(&key.slot))
            .filter_map(|(_, held)| held.value.as_ref().map(Value::text))
            .collect(),
        Value::YesNo(_) | Value::Photo(_) | Value::Step(_) | Value::Planned(_) => Vec::new(),
        other => vec![other.text()],
    }
}

fn holds(query: &Query, log: LogId, state: &State, done: &Done, workshop: &State) -> bool {
    let work = &done.work;
    let wig = Wig::new(state);
    let has = |word: &str, texts: &[String]| texts.iter().any(|text| search::fold(text).contains(word));
    let each =
        |words: &str| search::fold(words).split(' ').filter(|w| !w.is_empty()).map(str::to_owned).collect::<Vec<_>>();
    let mut everything = texts(done, workshop);
    if log != LogId::Workshop {
        everything.extend([wig.name().to_owned(), wig.character().to_owned()]);
        everything.extend(["fibre", "cap"].iter().filter_map(|slot| {
            wig.held(slot, Of::Wig)?.value.as_ref()?.choice().map(|choice| label(&format!("choice.{choice}")))
        }));
    }
    let dye: Vec<String> = ["dye_class", "dye_name", "dye_batch", "colour"]
        .iter()
        .filter_map(|field| work.get(field))
        .flat_map(|value| words_of(value, workshop))
        .collect();
    let lot_fibre = |lot: &LotId| {
        let (_, held) = workshop.values().find(|(key, _)| key.of == Of::Lot(*lot) && key.slot == "lot_fibre")?;
        held.value.as_ref()?.choice()
    };
    let of_lot = match work.get("lot") {
        Some(Value::Lot(lot)) if log == LogId::Workshop || ["test_lock", "dye"].contains(&work.kind().name) => {
            lot_fibre(lot)
        }
        _ => None,
    };
    let wigs = if log == LogId::Workshop { "unknown" } else { wig.fibre().name };
    let fibre = work.get("fibre").and_then(Value::choice).or(of_lot).unwrap_or(wigs);
    let result = ["result", "lock_result"].iter().find_map(|field| work.get(field).and_then(Value::choice));
    let heat = work.get("temperature").and_then(Value::typed).and_then(|typed| typed.temperature());
    let zoned = work.kind().fields.iter().any(|field| matches!(field.holds, Holds::Zone | Holds::Zones));
    let day = done.done.date();
    each(&query.words).iter().all(|word| has(word, &everything))
        && each(&query.dye).iter().all(|word| has(word, &dye))
        && query.fibre.is_none_or(|one| one == fibre)
        && query.kind.is_none_or(|one| one == work.kind().name)
        && query.result.is_none_or(|one| result == Some(one))
        && query.low.is_none_or(|low| heat.is_some_and(|heat| heat.value >= low.value - 0.05))
        && query.high.is_none_or(|high| heat.is_some_and(|heat| heat.value <= high.value + 0.05))
        && query.lot.is_none_or(|lot| work.get("lot") == Some(&Value::Lot(lot)))
        && query.zone.is_none_or(|zone| zoned && work.zones().has(zone))
        && query.from.is_none_or(|from| day >= from)
        && query.to.is_none_or(|to| day <= to)
}

fn queries() -> impl Strategy<Value = Query> {
    let words = || {
        prop_oneof![
            4 => Just(String::new()),
            3 => select(vec!["e", "ROW", "weft a", "°c", "nape", "é", "heat s", "o'hara", "unknown", "none of all this"]).prop_map(str::to_owned),
            2 => "\\PC{1,2}",
        ]
    };
    let kind = select(KINDS.to_vec()).prop_map(|kind| kind.name);
    let results: Vec<&'static str> = RESULTS.iter().chain(LOCK_RESULTS).copied().collect();
    let heat = || option::weighted(0.15, (0.0..260.0f64).prop_map(celsius));
    let day = || option::weighted(0.2, (1u8..4).prop_map(|day| Date::read(&format!("2026-11-0{day}")).unwrap()));
    let dye = prop_oneof![6 => Just(String::new()), 1 => words()];
    (
        (words(), option::weighted(0.2, select(fibres::NAMES.to_vec())), option::weighted(0.1, kind)),
        (heat(), heat(), dye, option::weighted(0.1, (220u8..223).prop_map(|n| LotId(id(n))))),
        (option::weighted(0.2, select(Zone::ALL.to_vec())), option::weighted(0.2, select(results)), day(), day()),
    )
        .prop_map(|((words, fibre, kind), (low, high, dye, lot), (zone, result, from, to))| Query {
            words,
            fibre,
            kind,
            low,
            high,
            dye,
            lot,
            zone,
            result,
            from,
            to,
        })
}

/// Any entries at all, taken as one log's.
fn states() -> impl Strategy<Value = Vec<State>> {
    let one = prop_oneof![
        wild_history(),
        vec(common::work(), 0..12).prop_map(|works| {
            (0u8..).zip(works).map(|(at, work)| common::entry(at, u64::from(at), Body::Work(work))).collect()
        }),
        vec(common::any_entry(), 0..20),
    ];
    vec(one.prop_map(|entries| fold(&Log::of(entries))), 1..4)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    #[test]
    fn a_search_is_a_plain_filter(states in states(), workshop in vec(common::any_entry(), 0..20), query in queries()) {
        let workshop = fold(&Log::of(workshop));
        let logs: Vec<LogId> = (0u8..).zip(&states).map(|(at, _)| LogId::Wig(WigId(id(at)))).collect();
        let index = Index::of(logs.iter().copied().zip(&states), &workshop, &label);
        let mut wanted: Vec<Hit> = logs
            .iter()
            .copied()
            .zip(&states)
            .chain([(LogId::Workshop, &workshop)])
            .flat_map(|(log, state)| state.works().iter().map(move |done| (log, state, done)))
            .filter(|(log, state, done)| holds(&query, *log, state, done, &workshop))
            .map(|(log, _, done)| Hit { done: done.done, lamport: done.lamport, log, entry: done.entry })
            .collect();
        wanted.sort();
        wanted.reverse();
        prop_assert_eq!(index.search(&query), wanted);
        let total: usize = states.iter().chain([&workshop]).map(|state| state.works().len()).sum();
        prop_assert_eq!(index.len(), total);
    }
}

#[test]
fn the_property_meets_words_that_are_there() {
    // The generator would prove nothing if no word were ever found: ask for a piece of every text there is.
    let (wigs, workshop) = bench(BENCH);
    let index = index(&wigs, &workshop);
    let mut asked = 0;
    for state in wigs.values() {
        for done in state.works() {
            for text in texts(done, &workshop) {
                for word in text.split_whitespace() {
                    asked += 1;
                    let found = index.search(&Query { words: word.to_owned(), ..Query::default() });
                    assert!(found.iter().any(|hit| hit.entry == done.entry), "{word}");
                }
            }
        }
    }
    assert!(asked > 60, "{asked}");
}
