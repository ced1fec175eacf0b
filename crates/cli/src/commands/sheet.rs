//! `weftbook sheet WIG`: a sheet that a helper follows from paper; of a folder, one for each wig in it.
//!
//! What it is: the page's sheet, as text or as its HTML file. What it is not: the choice of pages.

use std::{
    ffi::OsStr,
    path::{Path, PathBuf},
    time::Instant,
};

use format::{
    handover::{code::code, handed::payload, link},
    wig_file::read_wig,
};
use measure::{
    civil::Date,
    say::{Arg, Say},
};
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
    paper::{self, Facts, Squares, Way},
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
    let today = match options.today {
        Some(today) => today,
        None => today()?,
    };
    if options.file != input::STDIN && Path::new(&options.file).is_dir() {
        return folder(options, today);
    }
    let Made { sheet, payload, clean: clean_file } = made(&options.file, options, today)?;
    let text = match &options.out {
        None => paper::text(&sheet).split('\n').map(clean).collect::<Vec<_>>().join("\n"),
        Some(path) => {
            out::file(path, &paper::file(&sheet, payload.as_deref()))?;
            let pages = Arg::Count(i64::try_from(sheet.pages.len()).unwrap_or(i64::MAX));
            let says = [Arg::Text(path.to_string_lossy().into_owned()), pages, Arg::from(sheet.paper.title())];
            let mut said = vec![Say::new("cli.sheet_done", says)];
            if let Some(payload) = &payload {
                let link = link::link(options.address.as_deref().unwrap_or_default(), payload);
                said.push(Say::new("cli.sheet_link", [Arg::Count(i64::try_from(link.len()).unwrap_or(i64::MAX))]));
            }
            said.iter().map(|say| clean(&say.words(&WORDS, &options.prefs)) + "\n").collect()
        }
    };
    Ok(Said { text, clean: clean_file })
}

/// Every wig file of a folder, one after another: a bad one is reported and the rest is done.
fn folder(options: &Options, today: Date) -> Result<Said, Fault> {
    let into = options.out.as_ref().ok_or_else(|| Fault::new("cli.folder_out", []))?;
    let unread = |folder: &Path, problem: std::io::Error| {
        let says = [Arg::Text(folder.to_string_lossy().into_owned()), Arg::Text(problem.to_string())];
        Fault::new("cli.unread", says)
    };
    let from = Path::new(&options.file);
    let mut files: Vec<PathBuf> = Vec::new();
    for entry in std::fs::read_dir(from).map_err(|problem| unread(from, problem))? {
        let path = entry.map_err(|problem| unread(from, problem))?.path();
        if path.extension().is_some_and(|end| end == "json") {
            files.push(path);
        }
    }
    files.sort();
    std::fs::create_dir_all(into).map_err(|problem| unread(Path::new(into), problem))?;
    let (mut text, mut done, mut bad) = (String::new(), 0_u32, 0_i64);
    #[expect(clippy::disallowed_methods, reason = "this is the rim: only the report of the run reads it")]
    let began = Instant::now();
    for path in &files {
        let stem = path.file_stem().unwrap_or_default().to_string_lossy();
        let stem = stem.strip_suffix(".wig").unwrap_or(&stem);
        let whole = made(path.as_os_str(), options, today).and_then(|Made { sheet, payload, clean: clean_file }| {
            let name = Path::new(into).join(format!("{stem}.html"));
            out::file(name.as_os_str(), &paper::file(&sheet, payload.as_deref())).map(|()| clean_file)
        });
        let said = match whole {
            Ok(true) => None,
            Ok(false) => Some(Say::new("cli.sheet_partly", [Arg::Text(path.to_string_lossy().into_owned())])),
            Err(fault) => {
                Some(Say::new("cli.sheet_bad", [Arg::Text(path.to_string_lossy().into_owned()), Arg::Text(fault.0)]))
            }
        };
        done += u32::from(said.as_ref().is_none_or(|say| say.key == "cli.sheet_partly"));
        if let Some(say) = said {
            bad += 1;
            text.push_str(&clean(&say.words(&WORDS, &options.prefs)));
            text.push('\n');
        }
    }
    let each = began.elapsed().as_secs_f64() * 1000.0 / f64::from(done.max(1));
    let says = [Arg::Count(i64::from(done)), Arg::Number(each, 1), Arg::Count(bad)];
    text.push_str(&Say::new("cli.sheets_done", says).words(&WORDS, &options.prefs));
    text.push('\n');
    Ok(Said { text, clean: bad == 0 })
}

/// A sheet that was made.
struct Made {
    sheet: paper::Sheet,
    payload: Option<String>,
    clean: bool,
}

/// What stands on paper of the way back: a code where an address is known and the link fits one.
fn way(payload: Option<&str>, address: Option<&str>) -> Way {
    let Some(payload) = payload else { return Way::None };
    match address.and_then(|address| code(&link::link(address, payload))) {
        Some(code) => Way::Code(Squares { side: code.side, dark: code.dark }),
        None => Way::File,
    }
}

/// The sheet of a file, what its file carries as data, and whether all of the wig file was read.
fn made(from: &OsStr, options: &Options, today: Date) -> Result<Made, Fault> {
    let text = input::text(from, format::limits::FILE_BYTES_MOST)?;
    let file = read_wig(&text).map_err(|say| Fault::of(&say))?;
    let (log, workshop) = (file.log(), fold(&file.workshop()));
    let state = fold(&log);
    let wig = Wig::new(&state);
    let lots = lots(&workshop, [&state]);
    let locks = locks(&workshop, [(file.wig, &state)]);
    let labels = labels(&workshop);
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
    let voice = Voice { words: &WORDS, prefs: &options.prefs };
    let lamport = log.all().map(|entry| entry.lamport).max().unwrap_or(0);
    let handed = paper::handed(&facts, &options.choices, file.wig, lamport, &voice);
    let payload = if handed.lines.is_empty() { None } else { payload(&handed).ok() };
    let way = way(payload.as_deref(), options.address.as_deref());
    let sheet = paper::sheet_with(&facts, &options.choices, &way, &voice);
    Ok(Made { sheet, payload, clean: file.report.is_clean() })
}
