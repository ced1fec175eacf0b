//! Checks before a step: three cases for every rule, limits, orders, hazards; the cases stand in `care/*.cases`.

#![allow(clippy::unwrap_used, clippy::panic, clippy::expect_used, reason = "a test that fails says so")]

mod care_bench;

use std::collections::BTreeMap;

use care_bench::{Told, cases, file, works};
use measure::{
    prefs::Prefs,
    say::{Say, Words},
};
use plan::{
    care::{self, Limits},
    working::Weight,
};
use record::trade::heat::Medium;

const WORDS: Words = Words(&[measure::words::ENGLISH, record::words::ENGLISH, plan::words::ENGLISH]);

const FAMILIES: &[&str] = &["heat", "set", "dye", "colour", "glue", "sequence", "lots", "wear"];

fn words(say: &Say) -> String {
    let words = say.words(&WORDS, &Prefs::default());
    assert!(!words.contains('{') && !words.contains("care."), "{words}");
    words
}

/// The three cases that each rule must have.
const SORTS: [&str; 3] = ["fires", "quiet", "overruled"];

#[test]
fn every_rule_fires_keeps_quiet_and_is_overruled() {
    let mut seen: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for family in FAMILIES {
        for case in cases(family) {
            let (rule, sort) = (case.head[0].as_str(), case.head[1].as_str());
            assert!(care::rules().any(|one| one.name == rule), "{}: no such rule", case.name());
            let told = Told::read(&case);
            let found = told.before(&told.work);
            let names: Vec<&str> = found.iter().map(|finding| finding.rule.name).collect();
            assert_eq!(names, case.expected, "{}", case.name());
            assert!(found.windows(2).all(|pair| pair[0].rule.weight >= pair[1].rule.weight), "{}", case.name());
            for finding in &found {
                let (what, remedy) = (words(&finding.what), words(&finding.remedy));
                assert!(what.ends_with('.') && remedy.ends_with('.'), "{what} {remedy}");
            }
            match sort {
                "fires" => assert!(names.contains(&rule), "{}", case.name()),
                "quiet" => {
                    assert!(!names.contains(&rule), "{}", case.name());
                    assert!(care::overruled(&told.work).is_empty(), "{}: quiet by itself", case.name());
                }
                "overruled" => {
                    let overruled: Vec<&str> = care::overruled(&told.work).iter().map(|rule| rule.name).collect();
                    assert!(!names.contains(&rule) && overruled.contains(&rule), "{}", case.name());
                    assert!(told.work.get("judgement").is_some(), "{}: a reason belongs to it", case.name());
                    // Without the judgement it would have spoken.
                    let bare = told.before(&told.bare);
                    assert!(bare.iter().any(|finding| finding.rule.name == rule), "{}", case.name());
                }
                other => panic!("{}: {other} is no sort of case", case.name()),
            }
            if let Some(says) = &case.says {
                let told: Vec<String> =
                    found.iter().map(|one| format!("{} {}", words(&one.what), words(&one.remedy))).collect();
                assert!(told.iter().any(|one| one == says), "{}: {told:?}", case.name());
            }
            seen.entry(rule.to_owned()).or_default().push(sort.to_owned());
        }
    }
    for rule in care::rules() {
        let has = seen.get(rule.name).cloned().unwrap_or_default();
        for sort in SORTS {
            assert!(has.iter().any(|one| one == sort), "{} lacks the case: {sort}", rule.name);
        }
    }
}

#[test]
fn rules_are_named_once_and_named_in_words() {
    let names: Vec<&str> = care::rules().map(|rule| rule.name).collect();
    let mut once = names.clone();
    once.sort_unstable();
    once.dedup();
    assert_eq!(once.len(), names.len());
    for rule in care::rules() {
        assert_eq!(rule.label, format!("rule.{}", rule.name));
        assert!(!rule.source.text.is_empty());
    }
    for weight in [Weight::Stop, Weight::Care, Weight::Consider] {
        assert!(care::rules().any(|rule| rule.weight == weight));
    }
    // All names together must fit the field that holds them, in two halves at least.
    assert!(names.iter().map(|name| name.len() + 1).sum::<usize>() < 2 * 400);
}

#[test]
fn limits() {
    for case in cases("limits") {
        let told = Told::read(&case);
        let bench = told.bench();
        let (medium, zones) = (Medium::read(&case.head[1]).unwrap(), told.work.zones());
        let zones: Vec<_> = zones.each().collect();
        let limit = care::limit(&bench.bench(), &bench.condition(), &zones, medium);
        let parts: Vec<String> = limit
            .parts
            .iter()
            .map(|part| {
                format!("{} {}", words(&Say::new("plan.just", [part.name.clone().into()])), {
                    Prefs::default().temperature(part.most)
                })
            })
            .collect();
        assert_eq!(parts, case.expected_lines, "{}", case.name());
        assert!(limit.parts.windows(2).all(|pair| pair[0].most <= pair[1].most));
        assert_eq!(limit.lowest(), limit.parts.first());
        assert!(limit.lowest_of(&[Limits::Fibre]).is_some());
    }
}

#[test]
fn orders() {
    for case in cases("orders") {
        let told = Told::read(&case);
        let bench = told.bench();
        let steps = works(&case.steps);
        let steps: Vec<_> = steps.iter().map(|(id, work)| (*id, work)).collect();
        let order = care::order(&bench.bench(), &bench.condition(), &steps);
        let name = |id| steps.iter().position(|(step, _)| *step == id).map(|at| (at + 1).to_string()).unwrap();
        let mut said: Vec<String> =
            order.findings.iter().map(|(id, finding)| format!("{} {}", name(*id), finding.rule.name)).collect();
        if let Some(better) = &order.better {
            let better: Vec<String> = better.iter().map(|id| name(*id)).collect();
            said.push(format!("better {}", better.join(" ")));
        }
        assert_eq!(said, case.expected_lines, "{}", case.name());
        // The better order is one of the same steps, and is really better.
        if let Some(better) = order.better {
            let mut sorted = better.clone();
            sorted.sort();
            let mut all: Vec<_> = steps.iter().map(|(id, _)| *id).collect();
            all.sort();
            assert_eq!(sorted, all);
            let again: Vec<_> = better.iter().map(|id| *steps.iter().find(|(step, _)| step == id).unwrap()).collect();
            let again = care::order(&bench.bench(), &bench.condition(), &again);
            let score = |findings: &[(record::id::StepId, care::Finding)]| {
                [Weight::Stop, Weight::Care, Weight::Consider]
                    .map(|weight| findings.iter().filter(|(_, finding)| finding.rule.weight == weight).count())
            };
            assert!(score(&again.findings) < score(&order.findings), "{}", case.name());
            assert_eq!(again.better, None, "{}: better still", case.name());
        }
    }
}

#[test]
fn hazards() {
    for case in cases("hazards") {
        let told = Told::read(&case);
        let lines = care::hazard(&told.work).map(|hazard| hazard.lines).unwrap_or_default();
        assert_eq!(lines, case.expected, "{}", case.name());
        for line in lines {
            assert!(WORDS.find(line).is_some(), "{line}");
        }
    }
    // Every kind of work stands in the file, hot and chemical or not.
    for kind in record::wig::work::KINDS.iter().filter(|kind| kind.name != "count") {
        let case = cases("hazards").into_iter().any(|case| case.head[0] == kind.name);
        assert!(case, "no case for {} in {}", kind.name, file("hazards").display());
    }
}
