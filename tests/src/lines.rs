//! A wig's history said in lines that a person can read and change.
//!
//! What it is: a reader of `demo-data/*.lines` (see the README there) that makes entries the way the pages do, checks
//! before a step included. What it is not: a file format of the application.

use std::collections::BTreeMap;

use measure::{civil::Minute, prefs::Prefs, say::Say};
use plan::care;
use record::{
    history::{
        desk,
        entry::{Body, Entry, LogId, Of, Says, Written},
        fold::fold,
        log::Log,
    },
    id::{EntryId, Id, LotId, StepId, WigId},
    wig::{
        steps::{self, GAP, Planned},
        work::{self, Kind, Refusal, Work},
        zone::Zone,
    },
};

use crate::{demo::WORDS, heed::heed};

/// First bytes of every identity in demo data, so that it can be told from a person's own.
const PREFIX: [u8; 2] = [0xde, 0x30];

/// What the lines say.
#[derive(Debug)]
pub struct Lines {
    number: u8,
    wig: Log,
    workshop: Log,
    now: Option<Minute>,
    count: u32,
    labels: BTreeMap<String, EntryId>,
    steps: BTreeMap<String, StepId>,
}

impl Lines {
    /// Reads lines.
    ///
    /// # Errors
    /// The first line that does not read, with the reason.
    pub fn read(text: &str) -> Result<Lines, String> {
        let mut lines = Lines {
            number: 0,
            wig: Log::default(),
            workshop: Log::default(),
            now: None,
            count: 0,
            labels: BTreeMap::new(),
            steps: BTreeMap::new(),
        };
        for (index, line) in text.lines().enumerate() {
            let bare = line.trim();
            if !bare.is_empty() && !bare.starts_with('#') {
                lines.say(bare).map_err(|reason| format!("line {}: {bare}: {reason}", index + 1))?;
            }
        }
        Ok(lines)
    }

    /// The wig's log.
    pub fn wig(&self) -> &Log {
        &self.wig
    }

    /// The workshop's log.
    pub fn workshop(&self) -> &Log {
        &self.workshop
    }

    /// The wig's identity.
    pub fn wig_id(&self) -> WigId {
        WigId(self.id(1, 0))
    }

    /// The day of the last entry.
    pub fn last_day(&self) -> String {
        self.now.map_or_else(String::new, |now| now.date().to_string())
    }

    fn id(&self, what: u8, count: u32) -> Id {
        let mut bytes = [0; 16];
        bytes[..2].copy_from_slice(&PREFIX);
        (bytes[2], bytes[3]) = (self.number, what);
        bytes[12..].copy_from_slice(&count.to_be_bytes());
        Id::from_bytes(bytes)
    }

    fn lot(&self, letter: &str) -> Result<LotId, String> {
        match letter.as_bytes() {
            [one] if one.is_ascii_uppercase() => Ok(LotId(self.id(2, u32::from(*one)))),
            _ => Err(format!("“{letter}” is no lot: one capital letter")),
        }
    }

    fn wig_log(&self) -> LogId {
        LogId::Wig(self.wig_id())
    }

    fn say(&mut self, line: &str) -> Result<(), String> {
        if let Some(number) = line.strip_prefix("wig ") {
            self.number = number.parse().map_err(|_| "a number from 0 to 255 is wanted".to_owned())?;
            return Ok(());
        }
        if let Some(minute) = line.strip_prefix("at ") {
            self.now = Some(Minute::read(minute).ok_or("a minute such as 2026-09-05T18:30 is wanted")?);
            return Ok(());
        }
        let (label, line) = labelled(line);
        if let Some(rest) = line.strip_prefix("undo ") {
            let target = self.target(rest)?;
            let body = desk::undo(&self.wig, target);
            return self.add(self.wig_log(), body, label);
        }
        if let Some(rest) = line.strip_prefix("correct ") {
            let (target, rest) = rest.split_once(" to ").ok_or("“correct (name) to …” is wanted")?;
            let target = self.target(target)?;
            let done = self.wig.get(target).map(|entry| entry.done).ok_or("it is not in the wig's log")?;
            let Body::Work(work) = self.work(rest, Some(target))? else {
                return Err("only work can be corrected here".to_owned());
            };
            let body = desk::correct(&self.wig, target, done, Says::Work(work));
            return self.add(self.wig_log(), body, label);
        }
        if let Some(rest) = line.strip_prefix("plan ") {
            return self.plan(rest, label);
        }
        if let Some(rest) = line.strip_prefix("skip ") {
            return self.skip(rest);
        }
        if let Some(rest) = line.strip_prefix("shop ") {
            let body = self.any_kind(rest)?;
            return self.add(LogId::Workshop, body, label);
        }
        if ["do ", "sew ", "jot "].iter().any(|word| line.starts_with(word)) {
            let body = self.work(line, None)?;
            return self.add(self.wig_log(), body, label);
        }
        self.set(line, label)
    }

    fn target(&self, text: &str) -> Result<EntryId, String> {
        let name = text.trim().trim_start_matches('(').trim_end_matches(')');
        self.labels.get(name).copied().ok_or_else(|| format!("no entry is named ({name})"))
    }

    fn step(&self, text: &str) -> Result<StepId, String> {
        let name = text.trim().trim_start_matches('(').trim_end_matches(')');
        self.steps.get(name).copied().ok_or_else(|| format!("no step is named ({name})"))
    }

    /// Plans a step behind all others.
    fn plan(&mut self, line: &str, label: Option<&str>) -> Result<(), String> {
        let label = label.ok_or("a step needs a name: (name) plan kind field=value")?;
        let Body::Work(work) = self.any_kind(line)? else { return Err("only work can be planned".to_owned()) };
        let number = self.steps.len() as u32 + 1;
        let step = StepId(self.id(4, number));
        if self.steps.insert(label.to_owned(), step).is_some() {
            return Err(format!("two steps are named ({label})"));
        }
        let planned = Planned { place: number * GAP, work, skipped: None };
        let body = desk::plan_step(&fold(&self.wig), step, planned);
        self.add(self.wig_log(), body, None)
    }

    /// Leaves a step out.
    fn skip(&mut self, line: &str) -> Result<(), String> {
        let (step, why) = line.split_once(" because ").ok_or("“skip (name) because …” is wanted")?;
        let step = self.step(step)?;
        let state = fold(&self.wig);
        let standing = steps::steps(&state).into_iter().find(|one| one.id == step).ok_or("this step was taken out")?;
        let planned = Planned { skipped: Some(why.trim().to_owned()), ..standing.planned.clone() };
        self.add(self.wig_log(), desk::plan_step(&state, step, planned), None)
    }

    /// Work, after what speaks against it; `corrects` is the entry it stands for.
    fn work(&self, line: &str, corrects: Option<EntryId>) -> Result<Body, String> {
        let sewn = line.strip_prefix("sew ").map(|rest| format!("sew_weft {rest}"));
        if let Some(rest) = sewn.as_deref().or(line.strip_prefix("do ")) {
            let body = self.any_kind(rest)?;
            if let Body::Work(work) = &body {
                care::may_do(&fold(&self.wig), work).map_err(|refusal| refused(&refusal))?;
                let unruled: Vec<&str> =
                    rest.split(';').filter(|pair| !pair.trim_start().starts_with("overruled=")).collect();
                let Body::Work(unruled) = self.any_kind(&unruled.join(";"))? else { return Ok(body) };
                heed((self.wig_id(), &self.wig), &self.workshop, work, &unruled, corrects)?;
            }
            Ok(body)
        } else if let Some(rest) = line.strip_prefix("jot ") {
            // Words may hold any mark, so the zone comes first.
            let (zone, words) =
                rest.split_once(": ").ok_or("“jot zone: words” is wanted, “jot wig: words” for no zone")?;
            let zone = if zone == "wig" { "" } else { zone };
            read(&work::note::KIND, [("zone", zone), ("words", words)])
        } else {
            Err("“do …”, “sew …” or “jot …” is wanted".to_owned())
        }
    }

    /// “kind field=value; field=value”.
    fn any_kind(&self, line: &str) -> Result<Body, String> {
        let (name, fields) = line.split_once(' ').unwrap_or((line, ""));
        let kind = work::kind_named(name).ok_or_else(|| format!("“{name}” is no kind of work"))?;
        self.kind(kind, fields)
    }

    fn kind(&self, kind: &'static Kind, line: &str) -> Result<Body, String> {
        let mut texts: Vec<(&str, String)> = Vec::new();
        for pair in line.split(';').filter(|pair| !pair.trim().is_empty()) {
            let (name, value) = pair.split_once('=').ok_or_else(|| format!("“{pair}” has no ="))?;
            let (name, value) = (name.trim(), value.trim());
            if texts.iter().any(|(known, _)| *known == name) {
                return Err(format!("“{name}” stands twice"));
            }
            let text = match name {
                "lot" => self.lot(value)?.to_string(),
                "step" => self.step(value)?.to_string(),
                _ => value.to_owned(),
            };
            texts.push((name, text));
        }
        read(kind, texts.iter().map(|(name, value)| (*name, value.as_str())))
    }

    fn set(&mut self, line: &str, label: Option<&str>) -> Result<(), String> {
        let (name, value) = line.split_once('=').ok_or("nothing here starts like this")?;
        let (name, value) = (name.trim(), value.trim());
        let (log, slot, of) = match (name.strip_prefix("lot "), name.split_once('.')) {
            (Some(rest), _) => {
                let (letter, slot) = rest.split_once('.').ok_or("“lot A.field = …” is wanted")?;
                let log = if slot == "use_lot" { self.wig_log() } else { LogId::Workshop };
                (log, slot, Of::Lot(self.lot(letter)?))
            }
            (None, Some((zone, slot))) => {
                (self.wig_log(), slot, Of::Zone(Zone::read(zone).ok_or_else(|| format!("“{zone}” is no zone"))?))
            }
            (None, None) => (self.wig_log(), name, Of::Wig),
        };
        let value = if slot == "main_lot" { self.lot(value)?.to_string() } else { value.to_owned() };
        let here = if log == LogId::Workshop { &self.workshop } else { &self.wig };
        let body =
            desk::set(&fold(here), log, slot, of, &value, &Prefs::default()).map_err(|refusal| refused(&refusal))?;
        if log != LogId::Workshop {
            plan::care::may_set(here, &body).map_err(|reason| words(&reason))?;
        }
        self.add(log, body, label)
    }

    fn add(&mut self, log: LogId, body: Body, label: Option<&str>) -> Result<(), String> {
        let done = self.now.ok_or("say first when: at 2026-09-05T18:30")?;
        self.count += 1;
        let id = EntryId(self.id(3, self.count));
        let written = Written::read(&format!("{done}:00Z")).ok_or("this minute does not read")?;
        let entry = Entry { lamport: u64::from(self.count), id, log, done, written, by: None, body };
        match log {
            LogId::Workshop => self.workshop.add(entry),
            LogId::Wig(_) => self.wig.add(entry),
        };
        if let Some(label) = label
            && self.labels.insert(label.to_owned(), id).is_some()
        {
            return Err(format!("two entries are named ({label})"));
        }
        Ok(())
    }
}

/// A line's name in brackets, and the rest of it.
fn labelled(line: &str) -> (Option<&str>, &str) {
    match line.strip_prefix('(').and_then(|rest| rest.split_once(')')) {
        Some((label, rest)) => (Some(label), rest.trim()),
        None => (None, line),
    }
}

fn read<'t>(kind: &'static Kind, texts: impl IntoIterator<Item = (&'t str, &'t str)>) -> Result<Body, String> {
    Work::read(kind, texts, &Prefs::default())
        .map(Body::Work)
        .map_err(|refusals| refusals.iter().map(refused).collect::<Vec<_>>().join(" "))
}

fn refused(refusal: &Refusal) -> String {
    format!("{}: {}", refusal.field, words(&refusal.say))
}

fn words(say: &Say) -> String {
    say.words(&WORDS, &Prefs::default())
}
