//! `weftbook check FILE`: what became of a wig file or a backup, and what is odd in it.
//!
//! What it is: the reader's report, the fold's oddities, heads that cannot be. What it is not: advice on the plan: cautions
//! are told too, but only those that say stop count as something to see.
//!
//! JSON out: `kind` (`wig` or `backup`), `producer`, `made`, `checksum` (`match`, `differs`, `absent`), `kept`; `fixed`,
//! `newer`, `unreadable`, `dropped` (each with `place` and `why`); `workshop` (oddities of the workshop's log); `wigs` (each
//! with `wig`, `name`, `oddities`, `head`, `cautions`); `clean`.

use format::{
    backup::{self, read_backup},
    file::{Checksum, Head, Problem, Report},
    wig_file::{self, read_wig},
};
use measure::say::{Arg, Say};
use plan::{
    inputs::Corner,
    layout,
    shopping::Job,
    working::{Caution, Weight},
};
use record::{
    history::{
        entry::{LogId, Of},
        fold::{Oddity, State, fold},
        log::Log,
    },
    wig::figures::Wig,
    workshop::lots::{Lot, lots},
};
use serde::Serialize;

use super::plan::{cautions, of_field, weight};
use crate::{
    args::Options,
    input,
    out::{Fault, Said, json},
    rows::Page,
    today::today,
    words::WORDS,
};

/// A file that was read.
struct Read {
    kind: &'static str,
    head: Head,
    report: Report,
    /// All its entries.
    log: Log,
}

/// What there is to say of a wig.
struct Looked {
    id: LogId,
    name: String,
    oddities: Vec<Say>,
    head: Vec<Say>,
    cautions: Vec<Caution>,
}

impl Looked {
    fn is_clean(&self) -> bool {
        let stops = self.cautions.iter().any(|caution| caution.weight == Weight::Stop);
        self.oddities.is_empty() && self.head.is_empty() && !stops
    }
}

/// Runs it.
pub fn run(options: &Options) -> Result<Said, Fault> {
    let text = input::text(&options.file, format::limits::FILE_BYTES_MOST)?;
    let read = read(&text).map_err(|say| Fault::of(&say))?;
    let logs = logs(&read.log);
    let states: Vec<(LogId, State)> = logs.iter().map(|(id, log)| (*id, fold(log))).collect();
    let workshop =
        states.iter().find(|(id, _)| *id == LogId::Workshop).map(|(_, state)| state.clone()).unwrap_or_default();
    let wigs: Vec<&(LogId, State)> = states.iter().filter(|(id, _)| *id != LogId::Workshop).collect();
    let lots = lots(&workshop, wigs.iter().map(|(_, state)| state));
    let looked = wigs.iter().map(|(id, state)| look(*id, state, &lots)).collect::<Result<Vec<Looked>, Fault>>()?;
    let odd: Vec<Say> = oddities(&workshop);
    let clean = read.report.is_clean() && odd.is_empty() && looked.iter().all(Looked::is_clean);
    let text = if options.json {
        json(&answer(&read, &odd, &looked, clean, options))?
    } else {
        page(&read, &odd, &looked, clean, options)
    };
    Ok(Said { text, clean })
}

/// A wig file or a backup, whichever it says it is.
fn read(text: &str) -> Result<Read, Say> {
    match read_wig(text) {
        Ok(file) => {
            let mut log = file.log();
            log.merge(&file.workshop());
            Ok(Read { kind: wig_file::KIND, head: file.head, report: file.report, log })
        }
        Err(wig) if wig.key == "format.other_kind" => match read_backup(text) {
            Ok(file) => Ok(Read { kind: backup::KIND, log: file.records.log(), head: file.head, report: file.report }),
            // Neither of the two.
            Err(backup) if backup.key == "format.other_kind" => Err(wig),
            Err(backup) => Err(backup),
        },
        Err(wig) => Err(wig),
    }
}

/// The logs of a file, the workshop's first.
fn logs(all: &Log) -> Vec<(LogId, Log)> {
    let mut logs = std::collections::BTreeMap::<LogId, Log>::new();
    for entry in all.all() {
        logs.entry(entry.log).or_default().add(entry.clone());
    }
    logs.into_iter().collect()
}

fn look(id: LogId, state: &State, lots: &[Lot]) -> Result<Looked, Fault> {
    let wig = Wig::new(state);
    let head = match layout::dome(&wig, &Corner::likely()) {
        Ok(_) => Vec::new(),
        Err(problems) => {
            problems.iter().map(|problem| of_field(&(layout::slot_of(problem), layout::refusal(problem)))).collect()
        }
    };
    let used: Vec<Lot> = lots.iter().filter(|lot| wig.uses_lot(lot.id)).cloned().collect();
    let cautions = if head.is_empty() && !used.is_empty() {
        // The day decides about the order-by day only, which is not told here.
        Job::new(state.clone(), used, today()?).finish().map_or_else(|_| Vec::new(), |answer| answer.cautions)
    } else {
        Vec::new()
    };
    Ok(Looked { id, name: wig.name().to_owned(), oddities: oddities(state), head, cautions })
}

/// What a merged history holds that no single bench would.
fn oddities(state: &State) -> Vec<Say> {
    let two = state.values().filter(|(_, held)| held.two_answers).map(|(key, held)| {
        let label = Arg::Text(WORDS.get(&format!("field.{}", key.slot)));
        let value = Arg::Text(held.value.as_ref().map_or_else(String::new, record::field::Value::text));
        match key.of {
            Of::Zone(zone) => Say::new("cli.two_answers_zone", [label, value, Arg::Key(zone.label())]),
            Of::Wig | Of::Lot(_) | Of::Step(_) => Say::new("cli.two_answers", [label, value]),
        }
    });
    let others = state.oddities().iter().filter_map(|oddity| match oddity {
        Oddity::TargetMissing(id) => Some(Say::new("cli.target_missing", [Arg::Text(id.to_string())])),
        Oddity::TargetIsAmendment(id) => Some(Say::new("cli.target_is_amendment", [Arg::Text(id.to_string())])),
        Oddity::OtherKind(id) => Some(Say::new("cli.other_kind", [Arg::Text(id.to_string())])),
        Oddity::TwoCorrections(id) => Some(Say::new("cli.two_corrections", [Arg::Text(id.to_string())])),
        Oddity::Clash(id) => Some(Say::new("cli.clash", [Arg::Text(id.to_string())])),
        // Told above, with its field.
        Oddity::TwoAnswers(_) => None,
    });
    two.chain(others).collect()
}

fn checksum(checksum: Checksum) -> (&'static str, &'static str) {
    match checksum {
        Checksum::Match => ("match", "cli.checksum_match"),
        Checksum::Differs => ("differs", "cli.checksum_differs"),
        Checksum::Absent => ("absent", "cli.checksum_absent"),
    }
}

fn page(read: &Read, odd: &[Say], looked: &[Looked], clean: bool, options: &Options) -> String {
    let mut page = Page::new(&options.prefs);
    page.line(&Say::key(if clean { "cli.clean" } else { "cli.not_clean" }));
    page.heading("cli.file");
    let kind = if read.kind == backup::KIND { "cli.kind_backup" } else { "cli.kind_wig" };
    page.line(&Say::new(
        "cli.made",
        [Arg::Key(kind), Arg::from(read.head.made.as_str()), Arg::from(read.head.producer.as_str())],
    ));
    page.line(&Say::key(checksum(read.report.checksum).1));
    page.line(&read.report.summary());
    let report = &read.report;
    for (key, problems) in [
        ("cli.fixed", &report.fixed),
        ("cli.newer", &report.newer),
        ("cli.unreadable", &report.unreadable),
        ("cli.dropped", &report.dropped),
    ] {
        for Problem { place, why } in problems {
            page.line(&Say::new("cli.problem", [Arg::Key(key), Arg::from(place.as_str()), why.clone().into()]));
        }
    }
    if !odd.is_empty() {
        page.heading("cli.workshop");
        odd.iter().for_each(|say| page.item(say));
    }
    for wig in looked {
        page.put("");
        let name = if wig.name.is_empty() { Arg::Key("cli.no_name") } else { Arg::from(wig.name.as_str()) };
        page.line(&Say::new("cli.wig", [name, Arg::Text(wig.id.to_string())]));
        wig.oddities.iter().chain(&wig.head).for_each(|say| page.item(say));
        if wig.oddities.is_empty() && wig.head.is_empty() {
            page.item(&Say::key("cli.nothing_odd"));
        }
        cautions(&mut page, &wig.cautions);
    }
    page.done()
}

#[derive(Serialize)]
struct Answer<'a> {
    kind: &'static str,
    producer: &'a str,
    made: &'a str,
    checksum: &'static str,
    kept: usize,
    fixed: Vec<Placed<'a>>,
    newer: Vec<Placed<'a>>,
    unreadable: Vec<Placed<'a>>,
    dropped: Vec<Placed<'a>>,
    workshop: Vec<String>,
    wigs: Vec<OfWig<'a>>,
    clean: bool,
}

#[derive(Serialize)]
struct Placed<'a> {
    place: &'a str,
    why: String,
}

#[derive(Serialize)]
struct OfWig<'a> {
    wig: String,
    name: &'a str,
    oddities: Vec<String>,
    head: Vec<String>,
    cautions: Vec<Cautioned>,
}

#[derive(Serialize)]
struct Cautioned {
    weight: String,
    what: String,
    remedy: String,
}

fn answer<'a>(read: &'a Read, odd: &[Say], looked: &'a [Looked], clean: bool, options: &Options) -> Answer<'a> {
    let words = |say: &Say| say.words(&WORDS, &options.prefs);
    let all = |says: &[Say]| says.iter().map(words).collect::<Vec<String>>();
    let placed = |problems: &'a [Problem]| {
        problems.iter().map(|problem| Placed { place: &problem.place, why: words(&problem.why) }).collect::<Vec<_>>()
    };
    let report = &read.report;
    Answer {
        kind: read.kind,
        producer: &read.head.producer,
        made: &read.head.made,
        checksum: checksum(report.checksum).0,
        kept: report.kept,
        fixed: placed(&report.fixed),
        newer: placed(&report.newer),
        unreadable: placed(&report.unreadable),
        dropped: placed(&report.dropped),
        workshop: all(odd),
        wigs: looked
            .iter()
            .map(|wig| OfWig {
                wig: wig.id.to_string(),
                name: &wig.name,
                oddities: all(&wig.oddities),
                head: all(&wig.head),
                cautions: wig
                    .cautions
                    .iter()
                    .map(|caution| Cautioned {
                        weight: WORDS.get(weight(caution.weight)),
                        what: words(&caution.what),
                        remedy: words(&caution.remedy),
                    })
                    .collect(),
            })
            .collect(),
        clean,
    }
}
