//! `weftbook merge A B`: two files of one wig, or a wig and a return slip, put together.
//!
//! What it is: the record's own union, with what is to be seen of it. What it is not: a decision: conflicts are kept and named.

use format::{
    file::Head,
    handover::{
        entries::entries,
        link::{self, Opened},
    },
    row::Item,
    wig_file::{WigFile, read_wig, write_wig},
};
use measure::say::{Arg, Say};
use record::{
    handover::take::{self, Found},
    history::{
        entry::Entry,
        fold::{Oddity, fold},
        log::{Added, Log},
    },
    wig::steps::steps,
};

use crate::{
    args::Options,
    input,
    out::{self, Fault, Said, clean},
    words::WORDS,
};

/// Runs it.
pub fn run(options: &Options) -> Result<Said, Fault> {
    if options.json {
        return Err(Fault::new("cli.no_json", []));
    }
    let other = options.other.as_ref().ok_or_else(|| Fault::new("cli.merge_two", []))?;
    let most = format::limits::FILE_BYTES_MOST;
    let (text, text_of_other) = (input::text(&options.file, most)?, input::text(other, most)?);
    let file = read_wig(&text).map_err(|say| Fault::of(&say))?;
    let mut says: Vec<Say> = Vec::new();
    let (mut log, mut workshop) = (file.log(), file.workshop());
    let mut whole = file.report.is_clean();
    let mut beside = unread(&file);
    let added = if let Ok(second) = read_wig(&text_of_other) {
        if second.wig != file.wig {
            let names = [&file, &second].map(|file| Arg::Text(file.wig.to_string()));
            return Err(Fault::new("cli.merge_other", names));
        }
        whole &= second.report.is_clean();
        beside.extend(unread(&second));
        workshop.merge(&second.workshop());
        log.merge(&second.log())
    } else {
        slip(&text_of_other, other, &file, &mut log, &mut says)?
    };
    let state = fold(&log);
    for step in steps(&state).iter().filter(|step| step.recorded_done() > 1) {
        says.push(Say::new("cli.merge_twice", [Arg::Text(step.id.to_string())]));
    }
    for oddity in state.oddities() {
        if let Oddity::TwoAnswers(id) | Oddity::TwoCorrections(id) = oddity {
            says.push(Say::new("cli.merge_answers", [Arg::Text(id.to_string())]));
        }
    }
    let all_well = says.is_empty() && added.clashing == 0 && whole;
    let counts =
        [added.new, added.known, added.clashing].map(|count| Arg::Count(i64::try_from(count).unwrap_or(i64::MAX)));
    says.insert(0, Say::new("cli.merge_counts", counts));
    if let Some(path) = &options.out {
        let items = |log: &Log| log.all().map(Item::of).collect::<Result<Vec<Item>, Say>>();
        let mut rows = items(&log).map_err(|say| Fault::of(&say))?;
        rows.extend(beside);
        let cards = items(&workshop).map_err(|say| Fault::of(&say))?;
        let head = Head { producer: format!("weftbook {}", env!("CARGO_PKG_VERSION")), made: file.head.made.clone() };
        let text = write_wig(&head, file.demo, file.wig, &rows, &cards).map_err(|say| Fault::of(&say))?;
        out::file(path, &text)?;
        says.push(Say::new("cli.merge_written", [Arg::Text(path.to_string_lossy().into_owned())]));
    }
    let mut text = String::new();
    for say in &says {
        text.push_str(&clean(&say.words(&WORDS, &options.prefs)));
        text.push('\n');
    }
    Ok(Said { text, clean: all_well })
}

/// Rows that are kept to the letter.
fn unread(file: &WigFile) -> Vec<Item> {
    file.rows.iter().filter(|item| item.entry().is_none()).cloned().collect()
}

/// Adds what a slip says, but for what is to be asked about.
fn slip(
    text: &str,
    name: &std::ffi::OsStr,
    file: &WigFile,
    log: &mut Log,
    says: &mut Vec<Say>,
) -> Result<Added, Fault> {
    let slip = match link::open(text).map_err(|say| Fault::of(&say))? {
        Opened::Slip(slip) => slip,
        Opened::Handed(_) => {
            return Err(Fault::new("cli.merge_sheet", [Arg::Text(name.to_string_lossy().into_owned())]));
        }
    };
    take::check(&slip, file.wig).map_err(|say| Fault::of(&say))?;
    let all = entries(&slip).map_err(|say| Fault::of(&say))?;
    let found = take::look(log, &fold(log), &all);
    for (answer, found) in slip.lines.iter().zip(&found) {
        if matches!(found, Found::RecordedToo(_)) {
            says.push(Say::new("cli.merge_asked", [Arg::Count(i64::from(answer.number))]));
        }
    }
    let (add, _) = take::chosen(log, &all, &found, &[]);
    let mut added = Added { known: found.iter().filter(|found| **found == Found::Here).count(), ..Added::default() };
    for entry in add {
        let one: Added = log.add(Entry::clone(&entry));
        added.new += one.new;
        added.known += one.known;
        added.clashing += one.clashing;
    }
    Ok(added)
}
