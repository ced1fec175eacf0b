//! Whole answers: a wig said in lines, and what the plan says of it.
//!
//! Each file under `cases/shopping` and `cases/wefts` is a wig, a line `---`, and expectations `name = value`, where a value is a text, a
//! number, or a range `a..b`; `#` begins a comment, which names sources.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that fails says so")]

mod common;

use common::{Bench, today};
use measure::{
    prefs::Prefs,
    quantity::{Length, units},
    say::Words,
};
use plan::shopping::{Answer, Job};
use record::wig::zone::Zone;

const WORDS: Words = Words(&[measure::words::ENGLISH, record::words::ENGLISH, plan::words::ENGLISH]);

#[test]
fn cases() {
    let (mut told, mut failed) = (0, String::new());
    let folders = ["shopping", "wefts"].map(|name| format!("{}/tests/cases/{name}", env!("CARGO_MANIFEST_DIR")));
    let mut files: Vec<_> = folders
        .iter()
        .flat_map(|folder| std::fs::read_dir(folder).unwrap())
        .map(|entry| entry.unwrap().path())
        .collect();
    files.sort();
    for file in files {
        failed += &check(&file.file_stem().unwrap().to_string_lossy(), &std::fs::read_to_string(&file).unwrap());
        told += 1;
    }
    assert!(failed.is_empty(), "{failed}");
    assert!(told >= 40, "{told} cases found");
}

fn check(name: &str, text: &str) -> String {
    let mut failed = String::new();
    let (wig, wanted) = text.split_once("---").unwrap_or_else(|| panic!("{name}: no line ---"));
    let bench = Bench::read(wig);
    let answer = Job::new(bench.state(), bench.lots(), today()).finish();
    let lines: Vec<&str> =
        wanted.lines().map(str::trim).filter(|line| !line.is_empty() && !line.starts_with('#')).collect();
    assert!(!lines.is_empty(), "{name}: nothing expected");
    for line in lines {
        let (what, value) = line.split_once('=').unwrap_or_else(|| panic!("{name}: {line}"));
        let (what, value) = (what.trim(), value.trim());
        let found = match &answer {
            Err(stop) => format!("{stop:?}"),
            Ok(answer) => figure(answer, &bench, what),
        };
        let holds = match (value.split_once(".."), found.parse::<f64>()) {
            (Some((least, most)), Ok(found)) => {
                found >= least.parse::<f64>().unwrap() && found <= most.parse::<f64>().unwrap()
            }
            (None, Ok(found)) if value.parse::<f64>().is_ok() => (found - value.parse::<f64>().unwrap()).abs() < 1e-9,
            _ => found == value || (answer.is_err() && found.contains(value)),
        };
        if !holds {
            failed += &format!("{name}: {what} is {found}, not {value}\n");
        }
    }
    if failed.is_empty() { failed } else { failed + &told(&answer) }
}

fn told(answer: &Result<Answer, plan::shopping::Stop>) -> String {
    let Ok(answer) = answer else { return format!("{answer:?}") };
    let prefs = Prefs::default();
    let mut out = format!("{}\n", answer.headline.words(&WORDS, &prefs));
    for line in &answer.lines {
        out += &format!("  {}: {}\n", line.name.words(&WORDS, &prefs), line.sum.words(&WORDS, &prefs));
    }
    for caution in &answer.cautions {
        out += &format!("! {} {}\n", caution.what.words(&WORDS, &prefs), caution.remedy.words(&WORDS, &prefs));
    }
    for row in &answer.likely.prepared.placement.rows {
        out += &format!(
            "  {:?} gap {} at {} {:?} {} {:?}\n",
            row.section,
            row.gap,
            prefs.length(row.at),
            row.mount,
            prefs.length(row.length),
            row.zones.iter().map(|(zone, _)| zone.name()).collect::<Vec<_>>()
        );
    }
    for reach in &answer.reach {
        out += &format!("  {} packs: {:.2} times, lacking {}\n", reach.packs, reach.times, prefs.run(reach.lacking));
    }
    out
}

/// A figure of the answer by name.
fn figure(answer: &Answer, bench: &Bench, what: &str) -> String {
    let prepared = &answer.likely.prepared;
    let cm = |length: Length| length.get::<units::centimeter>().to_string();
    let placed = prepared.placement.rows.iter().fold(Length::new::<units::meter>(0.0), |sum, row| sum + row.length);
    let summary = answer.summary(&bench.lots());
    let number = |count: Option<u32>| count.map_or("none".to_owned(), |count| count.to_string());
    let caution = |key: &str| answer.cautions.iter().any(|caution| caution.what.key == key);
    match what {
        "headline" => answer.headline.words(&WORDS, &Prefs::default()),
        "outcome" => summary.outcome.to_owned(),
        "packs" => number(answer.packs.likely),
        "packs.low" => number(answer.packs.low),
        "packs.high" => number(answer.packs.high),
        "buy" => {
            summary.buy.iter().map(|bought| format!("{} {}", bought.packs, bought.lot)).collect::<Vec<_>>().join(", ")
        }
        "cost" => answer.cost.map_or("none".to_owned(), |cost| cost.plain()),
        "proved" => summary.proved.to_string(),
        "order_by" => summary.order_by.unwrap_or("none".to_owned()),
        "order_late" => answer.order_by.map_or("none".to_owned(), |(_, late)| late.to_string()),
        "rows" => prepared.placement.rows.len().to_string(),
        "rows.part" => prepared.placement.rows.iter().filter(|row| row.part).count().to_string(),
        "rows.cm" => cm(placed),
        "rows.share" => (placed / prepared.wanted).get::<units::ratio>().to_string(),
        // How many times as full the zones become that take rows, all together.
        "rows.times" => {
            let rows = |zone: &&plan::fullness::ZoneFullness| {
                prepared.layout.row_length[zone.zone as usize] > Length::new::<units::meter>(0.0)
                    && !matches!(zone.zone, Zone::FrontHairline | Zone::Part)
            };
            let hair = |of: &dyn Fn(&plan::fullness::ZoneFullness) -> f64| {
                prepared.fullness.zones.iter().filter(rows).map(of).sum::<f64>()
            };
            let reached = hair(&|zone| (answer.reached[zone.zone as usize] * zone.area).get::<units::ratio>());
            (reached / hair(&|zone| (zone.bought * zone.area).get::<units::ratio>())).to_string()
        }
        // By how much of what it wants the worst zone is missed, over zones that take rows and want at least 1 cm of weft.
        "rows.worst_miss" => {
            let rows = prepared.placement.rows.iter().flat_map(|row| &row.zones);
            let placed = |zone: Zone| {
                rows.clone()
                    .filter(|(one, _)| *one == zone)
                    .map(|(_, length)| length.get::<units::centimeter>())
                    .sum::<f64>()
            };
            let strands = prepared.weft.strands.get::<units::per_centimeter>();
            let body =
                prepared.fullness.zones.iter().filter(|zone| !matches!(zone.zone, Zone::FrontHairline | Zone::Part));
            let misses = body.map(|zone| (zone.zone, zone.wanting() / strands)).filter(|(_, wanted)| *wanted >= 1.0);
            misses.map(|(zone, wanted)| (placed(zone) - wanted).abs() / wanted).fold(0.0, f64::max).to_string()
        }
        "rows.ear_to_ear" => {
            let across = |row: &&plan::wefts::PlannedRow| {
                let lies = |zone| row.zones.iter().any(|(one, _)| *one == zone);
                lies(Zone::LeftSide) && lies(Zone::RightSide) && (lies(Zone::Back) || lies(Zone::Crown))
            };
            prepared.placement.rows.iter().filter(across).count().to_string()
        }
        "rows.off_middle.mm" => {
            // Left and right alike: the middle of each row that crosses the mid plane lies on it.
            let off = prepared.placement.rows.iter().filter_map(|row| {
                let (first, last) = (row.points.first()?, row.points.last()?);
                (first[0] * last[0] < 0.0).then_some((first[0] + last[0]).abs() / 2.0)
            });
            off.fold(0.0, f64::max).to_string()
        }
        "total.cm" => cm(prepared.amounts.total()),
        "hairline.cm" => cm(prepared.amounts.hairline),
        "parting.cm" => cm(prepared.amounts.parting),
        "left_over.cm" => (summary.left_over_mm as f64 / 10.0).to_string(),
        "hanging.g" => prepared.fullness.hanging_mass.get::<units::gram>().to_string(),
        "row_strands" => prepared.fullness.row_strands.get::<units::per_centimeter>().to_string(),
        "weft_strands" => prepared.weft.strands.get::<units::per_centimeter>().to_string(),
        "weight_added.g" => answer.weight_added.get::<units::gram>().to_string(),
        "settle" => answer
            .settle
            .iter()
            .map(|one| one.input.settle().trim_start_matches("settle."))
            .collect::<Vec<_>>()
            .join(", "),
        "laid.bars" => answer.laid.len().to_string(),
        "laid.owned" => answer.laid.iter().filter(|weft| weft.owned && !weft.pieces.is_empty()).count().to_string(),
        "used.cm" => cm(bench.lots()[0].left.used_since),
        "left_out" => prepared.left_out.len().to_string(),
        "closed" => prepared.placement.closed.iter().map(|zone| zone.name()).collect::<Vec<_>>().join(", "),
        "shortfalls" => prepared.placement.shortfalls.len().to_string(),
        "area.cm2" => {
            let areas = prepared.layout.areas.iter().map(|area| area.get::<units::square_centimeter>());
            areas.sum::<f64>().to_string()
        }
        _ => match what.split_once(' ') {
            Some(("caution", key)) => caution(key).to_string(),
            Some(("rows_in", zone)) => {
                let zone = Zone::read(zone).unwrap();
                let rows = &prepared.placement.rows;
                rows.iter().filter(|row| row.zones.iter().any(|(one, _)| *one == zone)).count().to_string()
            }
            Some(("reached", zone)) => {
                answer.reached[Zone::read(zone).unwrap() as usize].get::<units::per_square_centimeter>().to_string()
            }
            Some(("bought", zone)) => prepared.fullness.zones[Zone::read(zone).unwrap() as usize]
                .bought
                .get::<units::per_square_centimeter>()
                .to_string(),
            Some(("sewn_strands", zone)) => {
                let zone = &prepared.fullness.zones[Zone::read(zone).unwrap() as usize];
                ((zone.now() - zone.bought) * zone.area).get::<units::ratio>().round().to_string()
            }
            Some(("now", zone)) => prepared.fullness.zones[Zone::read(zone).unwrap() as usize]
                .now()
                .get::<units::per_square_centimeter>()
                .to_string(),
            Some(("times_with", packs)) => answer.reach[packs.parse::<usize>().unwrap()].times.to_string(),
            Some(("lacking_with.cm", packs)) => cm(answer.reach[packs.parse::<usize>().unwrap()].lacking),
            _ => panic!("{what}: no such figure"),
        },
    }
}
