//! The condition of a wig: a pure, total replay that a correction changes as if it had been entered right.

#![allow(clippy::expect_used, reason = "a test")]

mod common;

use common::{WIG, entry, id, wild_history, work};
use measure::{civil::Minute, prefs::Prefs};
use proptest::{collection::vec, prelude::*};
use record::{
    history::{
        desk,
        entry::{Amendment, Body, Corrected, Entry, Of, Says},
        fold::{State, fold},
        log::Log,
    },
    id::EntryId,
    wig::{
        condition::Condition,
        figures::Wig,
        work::{Work, kind_named},
        zone::Zone,
    },
};

fn now(state: &State) -> Condition {
    Condition::now(&Wig::new(state))
}

/// A wig's history of plain work, one entry each.
fn told(works: &[Work]) -> Vec<Entry> {
    works.iter().zip(1..).map(|(work, at)| entry(at, u64::from(at), Body::Work(work.clone()))).collect()
}

fn correction(number: u8, target: EntryId, to: Option<Work>) -> Entry {
    let done = Minute::read("2026-11-25T09:30").expect("a minute");
    let to = to.map(|work| Corrected { done, says: Says::Work(work) });
    entry(number, u64::from(number), Body::Amend(Amendment { target, over: Vec::new(), to }))
}

proptest! {
    /// Whatever was merged opens, and twice the same.
    #[test]
    fn replay_is_pure_and_total(history in wild_history()) {
        let state = fold(&Log::of(history.clone()));
        let condition = now(&state);
        prop_assert_eq!(&condition, &now(&state));
        let backwards = fold(&Log::of(history.into_iter().rev()));
        prop_assert_eq!(&condition, &now(&backwards));
        // What the parts say of each other holds in any history.
        for zone in Zone::ALL {
            let zone = condition.zone(zone);
            for sewn in &zone.sewn {
                prop_assert!(state.works().iter().any(|done| done.entry == sewn.by));
                prop_assert!(!sewn.lot_dyed || condition.dyed_lots.iter().any(|(lot, _)| Some(*lot) == sewn.lot));
            }
        }
    }

    /// Stepping back through the work: each moment is the one before it and one work more.
    #[test]
    fn every_moment_follows_from_the_one_before(works in vec(work(), 0..20)) {
        let state = fold(&Log::of(told(&works)));
        let wig = Wig::new(&state);
        let mut step_by_step = Condition::bought();
        for (at, done) in state.works().iter().enumerate() {
            prop_assert_eq!(&step_by_step, &Condition::after(&wig, &state.works()[..at]));
            step_by_step.apply(&wig, done);
            prop_assert_eq!(&step_by_step, &Condition::at(&wig, done.entry));
        }
        prop_assert_eq!(&step_by_step, &Condition::now(&wig));
        prop_assert_eq!(Condition::at(&wig, EntryId(id(250))), Condition::bought());
    }

    /// A correction equals having entered it right; an undo equals never having entered it.
    #[test]
    fn a_correction_equals_having_entered_it_right(
        works in vec(work(), 1..12),
        at in any::<prop::sample::Index>(),
        right in prop::option::of(work()),
    ) {
        let at = at.index(works.len());
        let mut history = told(&works);
        let mut entered_right = history.clone();
        match &right {
            Some(right) => entered_right[at].body = Body::Work(right.clone()),
            None => { entered_right.remove(at); }
        }
        history.push(correction(100, history[at].id, right));
        let (corrected, entered) = (fold(&Log::of(history)), fold(&Log::of(entered_right)));
        prop_assert_eq!(now(&corrected), now(&entered));
        // Every moment between is the same too.
        for done in entered.works() {
            prop_assert_eq!(
                Condition::at(&Wig::new(&corrected), done.entry),
                Condition::at(&Wig::new(&entered), done.entry)
            );
        }
    }

    /// Notes, photos and other wigs' strays change nothing about the fibre.
    #[test]
    fn looking_changes_nothing(works in vec(work(), 0..8)) {
        let state = fold(&Log::of(told(&works)));
        let mut more = told(&works);
        let note = Work::read(kind_named("note").expect("a kind"), [("words", "looked at it")], &Prefs::default())
            .expect("a note");
        more.push(entry(90, 90, Body::Work(note)));
        more.push(correction(91, EntryId(id(240)), None));
        let looked = fold(&Log::of(more));
        prop_assert_eq!(now(&state), now(&looked));
    }
}

/// A history in a few lines, and what holds in a zone after it.
const CASES: &[(&str, Zone, &str)] = &[
    ("gather gathered=braided; zones=back | release zones=back", Zone::Back, "loose dry"),
    ("gather gathered=braided; zones=back | release zones=nape", Zone::Back, "braided dry"),
    ("wash washed_with=mild_shampoo | dry dry_way=air; left=damp", Zone::Top, "loose wet"),
    ("heat_set medium=water; temperature=82 °C; winding=spiral; zones=top", Zone::Top, "rollers wet set"),
    (
        "heat_set medium=water; temperature=82 °C; cooled=yes; dried=yes | wash temperature=30 °C",
        Zone::Top,
        "loose wet set",
    ),
    (
        "heat_set medium=water; temperature=82 °C; cooled=yes; dried=yes | wash temperature=80 °C",
        Zone::Top,
        "loose wet",
    ),
    // Dyeing loose weft does nothing to the wig; naming a zone puts both in the bath.
    (
        "heat_set medium=water; temperature=82 °C; cooled=yes; dried=yes | dye dye_class=disperse; temperature=82 °C; lot=000000000000000000000000000000dc",
        Zone::Top,
        "loose dry set",
    ),
    (
        "dye dye_class=disperse; temperature=82 °C; zones=top; lot=000000000000000000000000000000dc",
        Zone::Top,
        "loose wet dyed",
    ),
    // Spirit burns until it has dried, and wets nothing.
    ("disinfect disinfected_with=alcohol_spray", Zone::Top, "loose dry flammable"),
    ("disinfect disinfected_with=alcohol_spray | dry dry_way=air", Zone::Top, "loose dry"),
    ("dye dye_class=pigment_spray; dye_way=sprayed_on; zones=top", Zone::Top, "loose dry dyed flammable"),
    ("glue glue=spirit_glue; glued_to=lace_edge; zones=front_hairline", Zone::FrontHairline, "loose dry flammable"),
    ("glue glue=spirit_glue; glued_to=lace_edge", Zone::Top, "loose dry"),
    ("glue glue=spirit_glue; glued_to=skin", Zone::FrontHairline, "loose dry"),
    ("product product=hairspray | worn times_worn=1", Zone::Top, "loose dry"),
    ("product product=hairspray | store stored=on_block", Zone::Top, "loose dry"),
    ("heat_set medium=water; temperature=82 °C; result=failed", Zone::Top, "loose wet"),
    // A reset binds, wets or undoes by what it is done with.
    ("reset reset_with=damp_pins; zones=top", Zone::Top, "pinned wet"),
    ("reset reset_with=rollers; zones=top", Zone::Top, "rollers dry"),
    (
        "heat_set medium=water; temperature=82 °C; cooled=yes; dried=yes | reset reset_with=dry_fingers",
        Zone::Top,
        "loose dry set",
    ),
    (
        "heat_set medium=water; temperature=82 °C; cooled=yes; dried=yes | reset reset_with=steam_off_head",
        Zone::Top,
        "loose dry",
    ),
    (
        "heat_set medium=water; temperature=82 °C; cooled=yes; dried=yes | reset reset_with=hot_iron; temperature=60 °C",
        Zone::Top,
        "loose dry set",
    ),
];

fn line(text: &str) -> Vec<Work> {
    text.split('|')
        .map(|work| {
            let work = work.trim();
            let (kind, fields) = work.split_once(' ').unwrap_or((work, ""));
            let texts = fields.split(';').filter_map(|pair| pair.trim().split_once('='));
            Work::read(kind_named(kind).expect("a kind"), texts, &Prefs::default()).expect("readable")
        })
        .collect()
}

#[test]
fn each_kind_does_to_a_wig_what_the_bench_sees() {
    for (history, zone, expected) in CASES {
        let mut log = Log::of(told(&line(history)));
        let fibre = desk::set(&fold(&log), WIG(), "fibre", Of::Wig, "modacrylic", &Prefs::default()).expect("a fibre");
        log.add(entry(99, 99, fibre));
        let condition = now(&fold(&log));
        let zone = condition.zone(*zone);
        let mut said = vec![zone.bound.unwrap_or("loose"), if zone.wet { "wet" } else { "dry" }];
        said.extend(zone.set.as_ref().map(|_| "set"));
        said.extend(zone.dyed.first().map(|_| "dyed"));
        said.extend(zone.flammable.then_some("flammable"));
        assert_eq!(said.join(" "), *expected, "{history}");
    }
}

#[test]
fn glue_of_the_skin_goes_with_the_wearer_and_glue_of_the_lace_stays() {
    for (history, left) in [
        ("glue glue=water_glue; glued_to=skin | worn times_worn=1", 0),
        ("glue glue=water_glue; glued_to=lace_edge | worn times_worn=1", 1),
        ("glue glue=water_glue; glued_to=lace_edge | refront front_made=new_lace", 0),
        ("glue glue=hot_melt; glued_to=accessory | unpick unpicked=hairline", 1),
        ("glue glue=hot_melt; glued_to=accessory | unpick unpicked=accessory", 0),
        ("glue glue=water_glue; glued_to=cap | unpick unpicked=glue", 0),
    ] {
        assert_eq!(now(&fold(&Log::of(told(&line(history))))).glued.len(), left, "{history}");
    }
}

#[test]
fn hair_holds_what_it_dries_in_and_a_row_without_a_place_lies_at_the_back() {
    for (history, set) in [
        ("wash washed_with=mild_shampoo | gather gathered=rollers | dry dry_way=wig_dryer | release cooled=yes", true),
        ("wash washed_with=mild_shampoo | gather gathered=rollers | dry dry_way=air; left=damp | release", false),
        ("wash washed_with=mild_shampoo | gather gathered=tied | dry dry_way=air | release", false),
        ("wash washed_with=mild_shampoo | gather gathered=rollers | dry dry_way=wig_dryer | release cooled=no", false),
    ] {
        let mut log = Log::of(told(&line(history)));
        let fibre = desk::set(&fold(&log), WIG(), "fibre", Of::Wig, "human_hair", &Prefs::default()).expect("a fibre");
        log.add(entry(99, 99, fibre));
        assert_eq!(now(&fold(&log)).zone(Zone::Top).set.is_some(), set, "{history}");
    }
    let sewn = now(&fold(&Log::of(told(&line("sew_weft sewn_as=row; length=20 cm")))));
    assert_eq!(sewn.zone(Zone::Back).sewn.len(), 1);
    assert!(sewn.zone(Zone::Top).sewn.is_empty() && sewn.zone(Zone::FrontHairline).sewn.is_empty());
}
