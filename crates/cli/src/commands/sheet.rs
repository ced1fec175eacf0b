//! `weftbook sheet WIG`: a sheet that a helper follows from paper.
//!
//! What it is: the page's sheet, as text or as its HTML file. What it is not: the choice of pages.

use format::wig_file::read_wig;
use measure::say::Arg;
use plan::{care, pace::Paces, shopping::Job};
use record::{
    history::fold::fold,
    wig::figures::Wig,
    workshop::{
        locks::{labels, locks},
        lots::lots,
    },
};
use sheet::{
    drawing::Voice,
    paper::{self, Facts},
};

use crate::{
    args::Options,
    input,
    out::{self, Fault, Said, clean},
    today::today,
    words::WORDS,
};

/// Runs it.
pub fn run(options: &Options) -> Result<Said, Fault> {
    if options.json {
        return Err(Fault::new("cli.no_json", []));
    }
    let text = input::text(&options.file, format::limits::FILE_BYTES_MOST)?;
    let file = read_wig(&text).map_err(|say| Fault::of(&say))?;
    let (log, workshop) = (file.log(), fold(&file.workshop()));
    let state = fold(&log);
    let wig = Wig::new(&state);
    let lots = lots(&workshop, [&state]);
    let locks = locks(&workshop, [(file.wig, &state)]);
    let labels = labels(&workshop);
    let today = match options.today {
        Some(today) => today,
        None => today()?,
    };
    let answer = Job::new(state.clone(), lots.clone(), today).at_pace(Paces::learn([&state])).finish().ok();
    let bench = care::Bench { wig: &wig, lots: &lots, locks: &locks, labels: &labels };
    let facts = Facts {
        bench: &bench,
        answer: answer.as_ref(),
        photos: &[],
        entries: log.entries().count(),
        demo: file.demo,
        today,
    };
    let sheet = paper::sheet(&facts, &options.choices, &Voice { words: &WORDS, prefs: &options.prefs });
    let text = match &options.out {
        None => paper::text(&sheet).split('\n').map(clean).collect::<Vec<_>>().join("\n"),
        Some(path) => {
            out::file(path, &paper::file(&sheet, None))?;
            let pages = Arg::Count(i64::try_from(sheet.pages.len()).unwrap_or(i64::MAX));
            let says = [Arg::Text(path.to_string_lossy().into_owned()), pages, Arg::from(sheet.paper.title())];
            clean(&measure::say::Say::new("cli.sheet_done", says).words(&WORDS, &options.prefs)) + "\n"
        }
    };
    Ok(Said { text, clean: file.report.is_clean() })
}
