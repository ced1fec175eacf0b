//! The sheet across rooms: golden sheets of the demo, nothing on it but what was ticked, odd texts and their pages.
//!
//! What it is: whole sheets, as the terminal makes them. What it is not: how they look (see the browser's tests).

#![allow(clippy::expect_used, clippy::panic, reason = "a test")]

use std::{collections::BTreeSet, fs};

use format::wig_file::read_wig;
use measure::{civil::Date, prefs::Prefs, say::Words};
use plan::{care, shopping::Job};
use record::{
    field::{Field, Holds},
    history::{fold::fold, log::Log},
    id::PhotoId,
    wig::{figures::Wig, work::KINDS},
    workshop::{
        locks::{labels, locks},
        lots::lots,
    },
};
use sheet::{
    drawing::Voice,
    paper::{self, Block, Choices, Facts, Line, Paper, Part, Sheet},
};
use weftbook_tests::{
    full::{self, Full, Place},
    golden, places,
};

const WORDS: Words =
    Words(&[measure::words::ENGLISH, record::words::ENGLISH, plan::words::ENGLISH, sheet::words::ENGLISH]);

fn sheet_of(wig: &Log, workshop: &Log, choices: &Choices) -> Sheet {
    let (state, workshop) = (fold(wig), fold(workshop));
    let lots = lots(&workshop, [&state]);
    let locks = locks(&workshop, [(full::WIG, &state)]);
    let labels = labels(&workshop);
    let today = Date::read("2026-11-25").expect("a day");
    let answer = Job::new(state.clone(), lots.clone(), today).finish().ok();
    let wig_read = Wig::new(&state);
    let bench = care::Bench { wig: &wig_read, lots: &lots, locks: &locks, labels: &labels };
    let photo = PhotoId::read(&"ab".repeat(32)).expect("a hash");
    let photos = [(photo, "data:image/png;base64,UEhPVE8=".to_owned())];
    let facts = Facts {
        bench: &bench,
        answer: answer.as_ref(),
        photos: &photos,
        entries: wig.entries().count(),
        demo: true,
        today,
    };
    paper::sheet(&facts, choices, &Voice { words: &WORDS, prefs: &Prefs::default() })
}

fn everything() -> Choices {
    Part::ALL.into_iter().fold(Choices::default(), |choices, part| choices.with(part, true))
}

#[test]
fn the_demo_gives_the_golden_sheets() {
    let text = fs::read_to_string(places::demos().join("copper-bob.wig.json")).expect("the demo");
    let file = read_wig(&text).expect("reads");
    let expect = |name: &str, found: &str| {
        golden::check(&places::golden().join(name), found).unwrap_or_else(|reason| panic!("{reason}"));
    };
    for paper in Paper::ALL {
        let sheet = sheet_of(&file.log(), &file.workshop(), &Choices::default().on(paper));
        expect(&format!("copper-bob.sheet.{}.txt", paper.name()), &paper::text(&sheet));
        if paper == Paper::A4 {
            expect("copper-bob.sheet.a4.html.expected", &paper::file(&sheet, None));
        }
    }
    let all = sheet_of(&file.log(), &file.workshop(), &everything());
    expect("copper-bob.sheet.everything.txt", &paper::text(&all));
}

/// What is written into every field, and on which parts it may stand.
struct Mark {
    text: String,
    place: Place,
    field: &'static str,
    on: &'static [Part],
}

const ALWAYS: &[Part] = &Part::ALL;
const NEVER: &[Part] = &[];

/// Where a field may stand. Whatever is not named here may stand nowhere.
fn allowed(place: Place, field: &str) -> &'static [Part] {
    use Part::{Drawings, Notes, Prices, Steps, Wearer, Zones};
    match (place, field) {
        (Place::Slot, "name" | "base_colour" | "ask") => ALWAYS,
        (Place::Slot, "character") => &[Wearer],
        (Place::Slot, "note") => &[Notes],
        (Place::Slot, "base_price") => &[Prices],
        (
            Place::Slot,
            "girth" | "front_to_nape" | "ear_to_ear_front" | "ear_to_ear_top" | "temple_to_temple_back" | "nape_width",
        ) => &[Wearer],
        (Place::Lot, "lot_name") => &[Steps, Drawings, Prices],
        (Place::Lot, "dye_lot") => &[Steps],
        (Place::Lot, "pack_price") => &[Prices],
        (Place::Done(_), "words" | "remark" | "found" | "pull_points" | "hairline_seen") => &[Notes],
        (Place::Done(_), "judgement") => &[Steps],
        // How the wig is now.
        (Place::Done("dye"), "colour") => &[Steps, Zones],
        (Place::Done("dye"), "dye_batch") => &[Steps],
        // Rules look at what is planned with its own words.
        (Place::Planned(_), "handed_to") => &[Wearer],
        (Place::Planned(_), "pull_points" | "hairline_seen") => &[Notes],
        (Place::Planned(_), _) => &[Steps],
        (Place::Skipped, _) => &[Notes],
        _ => NEVER,
    }
}

fn marked() -> (Full, Vec<Mark>) {
    let mut marks: Vec<Mark> = Vec::new();
    let head = [
        ("girth", "57.83"),
        ("front_to_nape", "36.23"),
        ("ear_to_ear_front", "31.47"),
        ("ear_to_ear_top", "29.13"),
        ("temple_to_temple_back", "33.41"),
        ("nape_width", "11.29"),
    ];
    let mut fill = |place: Place, field: &Field| {
        let mut mark = |text: String| {
            marks.push(Mark { text: text.clone(), place, field: field.name, on: allowed(place, field.name) });
            Some(text)
        };
        match (&field.holds, field.name) {
            // A rule that is known, so that its reason is told.
            (Holds::Text(_), "overruled") => Some("too_hot".to_owned()),
            (Holds::Text(_), _) => {
                let number = marks.len();
                let text = format!("Zq{number:03}x");
                marks.push(Mark { text: text.clone(), place, field: field.name, on: allowed(place, field.name) });
                Some(text)
            }
            (Holds::Money, "pack_price") => mark("17.83".to_owned()),
            (Holds::Money, "stock_price") => mark("23.71".to_owned()),
            (Holds::Money, _) => mark("41.59".to_owned()),
            (Holds::Quantity(_), name) if place == Place::Slot => {
                let (_, figure) = head.iter().find(|(one, _)| *one == name)?;
                mark((*figure).to_owned())
            }
            (_, "tape_from" | "size" | "fibre" | "cap" | "due" | "use_lot" | "lot_fibre") => full::usual(field),
            (_, "target") => Some("1.3 x".to_owned()),
            _ if matches!(place, Place::Done(_) | Place::Planned(_)) => full::usual(field),
            _ => None,
        }
    };
    let full = full::full(&mut fill).expect("every field reads");
    (full, marks)
}

/// What stands in a file: tags left out of nothing, entities read back.
fn found_in(html: &str, mark: &str) -> bool {
    // A measure is looked for as typed and as it is shown rounded.
    html.contains(mark) || mark.parse::<f64>().is_ok_and(|figure| html.contains(&format!("{figure:.1} cm")))
}

#[test]
fn nothing_stands_on_it_but_what_was_ticked() {
    let (full, marks) = marked();
    assert!(marks.len() > 150, "only {} fields were marked", marks.len());
    let texts: BTreeSet<&str> = marks.iter().map(|mark| mark.text.as_str()).collect();
    assert!(texts.len() >= marks.len() - 1, "marks are told apart");
    let html = |choices: &Choices| paper::file(&sheet_of(&full.wig, &full.workshop, choices), None);
    let nothing = html(&Choices::none());
    let mut wrong = Vec::new();
    for mark in &marks {
        if found_in(&nothing, &mark.text) != (mark.on == ALWAYS) {
            wrong.push(format!("with nothing ticked: {:?} {} {}", mark.place, mark.field, mark.text));
        }
    }
    for part in Part::ALL {
        let with = html(&Choices::none().with(part, true));
        for mark in marks.iter().filter(|mark| !mark.on.contains(&part)) {
            if found_in(&with, &mark.text) {
                wrong.push(format!("with {part:?} alone: {:?} {} {}", mark.place, mark.field, mark.text));
            }
        }
        let without = html(&everything().with(part, false));
        for mark in marks.iter().filter(|mark| mark.on == [part]) {
            if found_in(&without, &mark.text) {
                wrong.push(format!("without {part:?}: {:?} {} {}", mark.place, mark.field, mark.text));
            }
        }
    }
    assert_eq!(wrong, Vec::<String>::new());
    // And what is ticked does stand there, or the search above could not fail.
    let all = html(&everything());
    let there: Vec<&Mark> = marks.iter().filter(|mark| found_in(&all, &mark.text)).collect();
    for (place, field) in [
        (Place::Slot, "character"),
        (Place::Slot, "girth"),
        (Place::Slot, "base_price"),
        (Place::Slot, "note"),
        (Place::Lot, "pack_price"),
        (Place::Lot, "lot_name"),
        (Place::Done("note"), "words"),
        (Place::Done("fitting"), "pull_points"),
        (Place::Done("dye"), "colour"),
        (Place::Done("wash"), "judgement"),
        (Place::Planned("wash"), "remark"),
        (Place::Planned("wash"), "judgement"),
        (Place::Planned("hand_over"), "handed_to"),
        (Place::Skipped, "why"),
    ] {
        assert!(there.iter().any(|mark| (mark.place, mark.field) == (place, field)), "{place:?} {field} is missing");
    }
    for never in marks.iter().filter(|mark| mark.on == NEVER) {
        assert!(!found_in(&all, &never.text), "{:?} {} stands on a sheet", never.place, never.field);
    }
    assert!(all.contains("data:image/png;base64,UEhPVE8=") && !nothing.contains("data:image"), "photos");
}

/// The longest and oddest that a text field takes.
fn odd(field: &Field, turn: usize) -> Option<String> {
    let Holds::Text(longest) = field.holds else { return full::usual(field) };
    let sorts = [
        "A very long remark about nothing in particular, which goes on and on. ",
        "Donaudampfschifffahrtsgesellschaftskapitänsmützenabzeichenhersteller",
        "</p><script>alert(1)</script><img src=x onerror=alert(2)> & \"'`{{0}} ]]>",
        "髪を染めてから編み込む長い長いかつら",
        "شعر مستعار طويل جدا \u{202e}txet desrever\u{202c} ",
        "W\u{301}\u{302}\u{303}\u{304}\u{305}M\u{301}\u{302}\u{303}",
        "👩‍🦰💇🏽‍♀️✂️🧵",
        "MWMWMWMW ",
        "one\ntwo\nthree\n",
        "\u{fdfd} \u{2e3b} ",
    ];
    let sort = sorts[turn % sorts.len()];
    let text: String = sort.chars().cycle().take(longest).collect();
    let text = text.trim();
    Some(if text.is_empty() { "x".to_owned() } else { text.to_owned() })
}

fn odd_wig() -> Full {
    let mut turn = 0;
    let mut fill = |place: Place, of: &Field| match (place, of.name) {
        (_, "overruled") => Some("too_hot dye_refused bound_in_dye set_undone iron_on_wet".to_owned()),
        (Place::Slot, "target") => Some("1.3 x".to_owned()),
        (Place::Slot, _) if matches!(of.holds, Holds::Quantity(_) | Holds::Count(..) | Holds::AnyOf(_)) => None,
        (Place::Lot, _) if matches!(of.holds, Holds::Quantity(_) | Holds::Count(..)) => None,
        (Place::Slot, "main_lot" | "hairline" | "parting" | "sewing") => None,
        _ => {
            turn += 1;
            odd(of, turn)
        }
    };
    full::full(&mut fill).expect("every field reads")
}

fn lines_of(block: &Block) -> &[Line] {
    match block {
        Block::Lines(lines) | Block::Item(_, lines) => lines,
        Block::Step(step) => &step.lines,
        _ => &[],
    }
}

#[test]
fn the_oddest_texts_lose_nothing_and_run_nothing() {
    let full = odd_wig();
    golden::check(&places::golden().join("odd.wig.json"), &full.file().expect("written"))
        .unwrap_or_else(|reason| panic!("{reason}"));
    let mut letters = BTreeSet::new();
    for paper in Paper::ALL {
        let sheet = sheet_of(&full.wig, &full.workshop, &everything().on(paper));
        let bare = |text: &str| text.chars().filter(|letter| !letter.is_whitespace()).count();
        let words: usize = sheet
            .pages
            .iter()
            .flat_map(|page| &page.blocks)
            .flat_map(lines_of)
            .map(|line| bare(&line.text) + bare(&line.name))
            .sum();
        letters.insert(words);
        let html = paper::file(&sheet, Some("</template><script>alert(3)</script>"));
        assert!(!html.contains("<script") && !html.contains(" style=") && !html.contains("onerror=alert(2)>"));
        assert!(!html.contains("\u{202e}"), "nothing turns the direction of what stands beside it");
        assert!(sheet.pages.len() > 20, "{} pages", sheet.pages.len());
        let numbers: Vec<usize> = sheet.numbers.iter().map(|(number, _)| *number).collect();
        assert!(
            numbers.windows(2).all(|pair| pair[0] < pair[1])
                && numbers.len() >= KINDS.iter().filter(|kind| kind.field("step").is_some()).count()
        );
    }
    assert_eq!(letters.len(), 1, "both papers say the same, wherever their pages break");
}

/// Steps with heat and dye: limits, hazards, what speaks against them, what was overruled, both scales.
const HOT: &str = "
    wig 9
    at 2026-10-01T10:00
    name = Hot
    fibre = modacrylic
    cap = open_wefted
    label_heat = 90 °C
    do base texture=straight
    do test_lock temperature=82 °C; medium=steam; hold=10 min; lock_result=held
    do test_lock temperature=88 °C; medium=steam; hold=10 min; lock_result=frizzed
    (dye) plan dye dye_class=acid; dye_way=bath; dye_name=Number 5; temperature=60 °C; hold=40 min; zones=back; overruled=dye_refused; judgement=Only a rinse of colour is wanted
    (set) plan heat_set medium=steam; temperature=95 °C; hold=15 min; diameter=20 mm; winding=from_points; cooled=yes; zones=back nape; minutes=60
    (dry) plan straighten medium=iron; temperature=60 °C; zones=top
    (glue) plan glue glue=spirit_glue; glued_to=skin
";

#[test]
fn hot_and_chemical_steps_carry_their_cautions() {
    let lines = weftbook_tests::lines::Lines::read(HOT).expect("reads");
    let text = paper::text(&sheet_of(lines.wig(), lines.workshop(), &Choices::none().with(Part::Steps, true)));
    golden::check(&places::golden().join("hot.sheet.txt"), &text).unwrap_or_else(|reason| panic!("{reason}"));
    // 95 °C is 203 °F by the scales’ fixed points; the lock that frizzed limits steam.
    for said in [
        "95 °C (203 °F)",
        "never above",
        "Steam burns",
        "patch test",
        "Only a rinse of colour is wanted",
        "Let it cool right through",
    ] {
        assert!(text.contains(said), "{said} is missing");
    }
}
