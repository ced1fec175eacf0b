//! Checks hold for any history and any work: they open, say the same twice, and an order offered is a better one.

#![allow(clippy::expect_used, reason = "a test")]

#[path = "../../record/tests/common/mod.rs"]
mod common;

use common::{id, wild_history, work};
use measure::{
    prefs::Prefs,
    say::{Say, Words},
};
use plan::{
    care::{self, Bench, Finding},
    working::Weight,
};
use proptest::{collection::vec, prelude::*};
use record::{
    history::{fold::fold, log::Log},
    id::{StepId, WigId},
    trade::{bears, heat::Medium},
    wig::{condition::Condition, figures::Wig, work::Work},
    workshop::{
        locks::{labels, locks},
        lots::lots,
    },
};

const WORDS: Words = Words(&[measure::words::ENGLISH, record::words::ENGLISH, plan::words::ENGLISH]);

/// Every sentence is one, with nothing missing in it; names that people gave may hold anything.
fn said(say: &Say) -> bool {
    WORDS.find(say.key).is_some() && !say.words(&WORDS, &Prefs::default()).contains("care.")
}

/// The work again with one name more among those overruled.
fn overruling(work: &Work, name: &str) -> Work {
    let mut texts: Vec<(String, String)> = work
        .values()
        .filter(|(field, _)| *field != "overruled")
        .map(|(field, value)| (field.to_owned(), value.text()))
        .collect();
    texts.push(("overruled".to_owned(), name.to_owned()));
    Work::read(work.kind(), texts.iter().map(|(a, b)| (a.as_str(), b.as_str())), &Prefs::default()).expect("readable")
}

fn score(findings: &[&Finding]) -> [usize; 3] {
    [Weight::Stop, Weight::Care, Weight::Consider]
        .map(|weight| findings.iter().filter(|finding| finding.rule.weight == weight).count())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn checks_open_for_any_history(
        wig_history in wild_history(),
        workshop_history in wild_history(),
        asked in work(),
        plan in vec(work(), 0..9),
    ) {
        let (wig_state, workshop) = (fold(&Log::of(wig_history)), fold(&Log::of(workshop_history)));
        let wig = Wig::new(&wig_state);
        let lots = lots(&workshop, [&wig_state]);
        let (locks, labels) = (locks(&workshop, [(WigId(id(200)), &wig_state)]), labels(&workshop));
        let bench = Bench { wig: &wig, lots: &lots, locks: &locks, labels: &labels };
        let condition = Condition::now(&wig);

        let found = care::before(&bench, &condition, &asked);
        prop_assert_eq!(&found, &care::before(&bench, &condition, &asked));
        for finding in &found {
            prop_assert!(said(&finding.what) && said(&finding.remedy));
            // Overruled, it is not told, and nothing else changes.
            let again = care::before(&bench, &condition, &overruling(&asked, finding.rule.name));
            let bare = overruling(&asked, "none_of_them");
            let others: Vec<Finding> = care::before(&bench, &condition, &bare)
                .into_iter()
                .filter(|other| other.rule != finding.rule)
                .collect();
            prop_assert_eq!(again, others);
        }

        let zones: Vec<_> = asked.zones().each().collect();
        for medium in Medium::ALL {
            let limit = care::limit(&bench, &condition, &zones, medium);
            prop_assert!(limit.parts.windows(2).all(|pair| pair[0].most <= pair[1].most));
            prop_assert!(limit.parts.len() <= 3 * (1 + lots.len()) + bears::BEARERS.len());
            prop_assert!(limit.lowest().is_some());
        }
        if let Some(hazard) = care::hazard(&asked) {
            prop_assert_eq!(hazard.lines.last(), Some(&"hazard.first"));
            prop_assert!(hazard.lines.len() > 1);
        }

        let steps: Vec<(StepId, &Work)> = plan.iter().zip(1..).map(|(work, at)| (StepId(id(at)), work)).collect();
        let order = care::order(&bench, &condition, &steps);
        if let Some(better) = &order.better {
            let mut sorted = better.clone();
            sorted.sort();
            prop_assert_eq!(sorted, steps.iter().map(|(id, _)| *id).collect::<Vec<_>>());
            let moved: Vec<(StepId, &Work)> = better
                .iter()
                .filter_map(|id| steps.iter().find(|(step, _)| step == id).copied())
                .collect();
            let again = care::order(&bench, &condition, &moved);
            let of = |order: &care::Order| score(&order.findings.iter().map(|(_, finding)| finding).collect::<Vec<_>>());
            prop_assert!(of(&again) < of(&order));
        }
    }
}
