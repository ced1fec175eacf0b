//! How long a search takes: 200 wigs of 200 entries, beside a bare scan of the same texts, in one run.
//!
//! `cargo run --release -p weftbook-record --example search_bench`. What it is: figures for a person to read.
//! What it is not: a test: nothing here can fail by being slow.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a bench"
)]

use std::{hint::black_box, time::Instant};

use measure::{
    civil::Minute,
    prefs::Prefs,
    quantity::{ThermodynamicTemperature, units},
    say::Words,
};
use record::{
    history::{
        desk,
        entry::{Entry, LogId, Of, Written},
        fold::{State, fold},
        log::Log,
    },
    id::{EntryId, Id, LotId, WigId},
    search::{Index, Query, fold as alike},
    wig::work::kind_named,
};

const WIGS: u32 = 200;
const ENTRIES: u32 = 200;
const ROUNDS: u32 = 41;

/// Invented remarks; a rare word stands in one of them.
const REMARKS: &[&str] = &[
    "held well, brushed out next morning",
    "a little loose at the nape: backstitch every 8 mm next time",
    "the thread broke twice, slow going",
    "colour deeper than the test lock, rinsed until clear",
    "pinned on the canvas block overnight, dry by noon",
    "crêpe at the roots pressed flat first",
    "second sitting, tired hands: check this row again",
    "the actress moves a lot, so two more clips",
    "quicksilver sheen in daylight",
];

const WORKS: &[(&str, &str)] = &[
    ("sew_weft", "sewn_as=row; length=21.5 cm; section=back_and_sides; place=66 mm; minutes=38; lot={L}"),
    ("heat_set", "medium=water; temperature={T} °C; hold=5 min; diameter=18 mm; zones=nape back; result={R}"),
    ("dye", "dye_class=disperse; dye_name=Rust; dye_batch=B7; temperature={T} °C; colour=fox red; result={R}; lot={L}"),
    ("wash", "washed_with=mild_shampoo; temperature=30 °C; zones=top crown"),
    ("dry", "dry_way=wig_dryer; temperature=50 °C; left=dry_through; hours=3"),
    ("cut", "cut_way=layers; hair_length=32 cm; zones=left_side right_side"),
    ("test_lock", "temperature={T} °C; lock_result=held; medium=water; lot={L}"),
    ("dress", "dressed_with=hairpins; minutes=40; result={R}"),
];

fn entry(log: LogId, number: u32, text: &str, kind: &str) -> Entry {
    let pairs = text.split(';').map(|pair| pair.trim().split_once('=').unwrap());
    let mut bytes = [0; 16];
    bytes[..4].copy_from_slice(&number.to_be_bytes());
    Entry {
        lamport: u64::from(number),
        id: EntryId(Id::from_bytes(bytes)),
        log,
        done: Minute::read(&format!("20{:02}-{:02}-{:02}T10:00", 20 + number % 7, 1 + number % 12, 1 + number % 28))
            .unwrap(),
        written: Written::read("2026-11-25T09:31:02Z").unwrap(),
        by: None,
        body: desk::work(kind_named(kind).unwrap(), pairs, &Prefs::default()).unwrap(),
    }
}

fn wig(number: u32) -> (LogId, State) {
    let mut bytes = [9; 16];
    bytes[..4].copy_from_slice(&number.to_be_bytes());
    let log = LogId::Wig(WigId(Id::from_bytes(bytes)));
    let mut entries = Vec::new();
    for at in 0..ENTRIES - 2 {
        let all = number * ENTRIES + at;
        let (kind, text) = WORKS[(all * 7 % WORKS.len() as u32) as usize];
        // The last remark is rare.
        let remark = if all.is_multiple_of(997) { REMARKS[8] } else { REMARKS[(all * 5 % 8) as usize] };
        let text = text
            .replace("{L}", &LotId(Id::from_bytes([1 + (all % 5) as u8; 16])).to_string())
            .replace("{T}", &(60 + all % 60).to_string())
            .replace("{R}", ["good", "partly", "failed"][(all % 3) as usize]);
        entries.push(entry(log, all, &format!("{text}; remark={remark}"), kind));
    }
    for (slot, text) in [
        ("name", format!("Wig {number}")),
        ("fibre", ["modacrylic", "polyester", "human_hair"][(number % 3) as usize].to_owned()),
    ] {
        let mut set = entry(log, number * ENTRIES + ENTRIES - 1 - u32::from(slot == "name"), "remark=x", "wash");
        set.body = desk::set(&State::default(), log, slot, Of::Wig, &text, &Prefs::default()).unwrap();
        entries.push(set);
    }
    (log, fold(&Log::of(entries)))
}

fn median(mut times: Vec<f64>) -> f64 {
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}

fn timed(mut run: impl FnMut()) -> f64 {
    let start = Instant::now();
    run();
    start.elapsed().as_secs_f64() * 1e3
}

fn main() {
    let words = Words(&[record::words::ENGLISH]);
    let label = |key: &str| words.get(key);
    let wigs: Vec<(LogId, State)> = (0..WIGS).map(wig).collect();
    let workshop = State::default();
    let make = || Index::of(wigs.iter().map(|(log, state)| (*log, state)), &workshop, &label);
    let made = timed(|| {
        black_box(make());
    });
    let index = make();
    // The same texts, made alike, an entry each: what a bare scan would walk.
    let texts: Vec<&str> = index.texts().collect();
    println!(
        "{} entries, {:.2} MB of text; index made in {made:.0} ms",
        index.len(),
        texts.iter().map(|text| text.len()).sum::<usize>() as f64 / 1e6
    );

    let heat = ThermodynamicTemperature::new::<units::degree_celsius>(90.0);
    let plain = |words: &str| Query { words: words.to_owned(), ..Query::default() };
    let queries: Vec<(&str, Query)> = vec![
        ("a rare word", plain("quicksilver")),
        ("a common word", plain("held")),
        ("one letter, as typed", plain("e")),
        ("two words", plain("rust fox")),
        ("a word nowhere", plain("zeppelin")),
        ("a word of the wig and one of the entry", plain("modacrylic crepe")),
        (
            "every set above 90 °C on modacrylic that held",
            Query {
                fibre: Some("modacrylic"),
                kind: Some("heat_set"),
                low: Some(heat),
                result: Some("good"),
                ..plain("")
            },
        ),
    ];
    for (name, query) in &queries {
        let asked: Vec<String> = alike(&query.words).split_whitespace().map(str::to_owned).collect();
        let (mut ours, mut bare, mut hits) = (Vec::new(), Vec::new(), 0);
        for _ in 0..ROUNDS {
            ours.push(timed(|| hits = black_box(index.search(query)).len()));
            bare.push(timed(|| {
                let found = texts.iter().filter(|text| asked.iter().all(|word| text.contains(word.as_str()))).count();
                black_box(found);
            }));
        }
        let (ours, bare) = (median(ours), median(bare));
        let ratio = if asked.is_empty() {
            "no words to scan for".to_owned()
        } else {
            format!("{:.2} times a bare scan", ours / bare)
        };
        println!("{name}: {hits} hits in {ours:.3} ms; {ratio} ({bare:.3} ms)");
    }
}
