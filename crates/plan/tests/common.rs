//! A wig said in a few lines, for tests.

#![allow(dead_code, reason = "each test binary uses its part")]
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test that fails says so")]

use measure::{
    civil::{Date, Minute},
    prefs::Prefs,
};
use record::{
    history::{
        desk,
        entry::{Entry, LogId, Of, Written},
        fold::{State, fold},
        log::Log,
    },
    id::{EntryId, Id, LotId, WigId},
    wig::{work, zone::Zone},
    workshop::lots::{Lot, lots},
};

/// What a test says: the wig's log, the workshop's log.
pub struct Bench {
    wig: Log,
    workshop: Log,
    next: u8,
}

impl Bench {
    /// Reads lines such as `girth = 57 cm`, `back.longest = 40 cm`, `lot A.pack_width = 1 m`, `sew row length=20 cm; lot=A`.
    pub fn read(text: &str) -> Bench {
        let mut bench = Bench { wig: Log::default(), workshop: Log::default(), next: 0 };
        for line in text.lines().map(str::trim).filter(|line| !line.is_empty() && !line.starts_with('#')) {
            bench.say(line);
        }
        bench
    }

    /// Says one line more.
    pub fn say(&mut self, line: &str) {
        let prefs = Prefs::default();
        if let Some(rest) = line.strip_prefix("sew ") {
            let pairs: Vec<(String, String)> = rest
                .split(';')
                .map(|pair| {
                    let (name, value) = pair.split_once('=').unwrap();
                    let value = value.trim();
                    (
                        name.trim().to_owned(),
                        if name.trim() == "lot" { lot(value).to_string() } else { value.to_owned() },
                    )
                })
                .collect();
            let texts = pairs.iter().map(|(a, b)| (a.as_str(), b.as_str()));
            let body = desk::work(&work::sew_weft::KIND, texts, &prefs)
                .unwrap_or_else(|refusals| panic!("{line}: {refusals:?}"));
            return self.add(wig_log(), body);
        }
        if let Some(rest) = line.strip_prefix("count ") {
            let (name, rest) = rest.split_once(' ').unwrap();
            let id = lot(name).to_string();
            let mut texts = vec![("lot", id.as_str())];
            texts.extend(rest.split(';').map(|pair| pair.split_once('=').unwrap()).map(|(a, b)| (a.trim(), b.trim())));
            let body =
                desk::work(&work::count::KIND, texts, &prefs).unwrap_or_else(|refusals| panic!("{line}: {refusals:?}"));
            return self.add(LogId::Workshop, body);
        }
        if let Some(rest) = line.strip_prefix("work ") {
            return self.work(wig_log(), rest, line);
        }
        if let Some(rest) = line.strip_prefix("shop ") {
            return self.work(LogId::Workshop, rest, line);
        }
        let (name, value) = line.split_once('=').unwrap();
        let (name, value) = (name.trim(), value.trim());
        let (log, slot, of) = match name.strip_prefix("lot ") {
            Some(rest) => {
                let (id, slot) = rest.split_once('.').unwrap();
                if slot == "use_lot" || slot == "use_dye" {
                    (wig_log(), slot, Of::Lot(lot(id)))
                } else {
                    (LogId::Workshop, slot, Of::Lot(lot(id)))
                }
            }
            None => match name.split_once('.') {
                Some((zone, slot)) => (wig_log(), slot, Of::Zone(Zone::read(zone).unwrap())),
                None => (wig_log(), name, Of::Wig),
            },
        };
        let state = match log {
            LogId::Workshop => fold(&self.workshop),
            LogId::Wig(_) => fold(&self.wig),
        };
        let value = if slot == "main_lot" { lot(value).to_string() } else { value.to_owned() };
        let body =
            desk::set(&state, log, slot, of, &value, &prefs).unwrap_or_else(|refusal| panic!("{line}: {refusal:?}"));
        self.add(log, body);
    }

    /// Work of any kind: `colour_lock stock=D; depth=1 %`.
    fn work(&mut self, log: LogId, rest: &str, line: &str) {
        let (kind, rest) = rest.split_once(' ').unwrap();
        let pairs: Vec<(String, String)> = rest
            .split(';')
            .map(|pair| pair.split_once('=').unwrap())
            .map(|(name, value)| {
                let (name, value) = (name.trim(), value.trim());
                let is_lot = name == "lot" || name.starts_with("stock");
                (name.to_owned(), if is_lot { lot(value).to_string() } else { value.to_owned() })
            })
            .collect();
        let texts = pairs.iter().map(|(a, b)| (a.as_str(), b.as_str()));
        let body = desk::work(work::kind_named(kind).unwrap(), texts, &Prefs::default())
            .unwrap_or_else(|refusals| panic!("{line}: {refusals:?}"));
        self.add(log, body);
    }

    fn add(&mut self, log: LogId, body: record::history::entry::Body) {
        self.next += 1;
        let entry = Entry {
            lamport: u64::from(self.next),
            id: EntryId(Id::from_bytes([self.next; 16])),
            log,
            done: Minute::read("2026-10-01T10:00").unwrap(),
            written: Written::read("2026-10-01T10:00:00Z").unwrap(),
            by: None,
            body,
        };
        match log {
            LogId::Workshop => self.workshop.add(entry),
            LogId::Wig(_) => self.wig.add(entry),
        };
    }

    /// The wig as it stands.
    pub fn state(&self) -> State {
        fold(&self.wig)
    }

    /// The workshop as it stands.
    pub fn workshop(&self) -> State {
        fold(&self.workshop)
    }

    /// The wig's identity.
    pub fn wig_id() -> WigId {
        WigId(Id::from_bytes([7; 16]))
    }

    /// The workshop's lots.
    pub fn lots(&self) -> Vec<Lot> {
        lots(&fold(&self.workshop), [&self.state()])
    }
}

/// The log of the only wig.
pub fn wig_log() -> LogId {
    LogId::Wig(WigId(Id::from_bytes([7; 16])))
}

/// The lot a test calls by a letter.
pub fn lot(name: &str) -> LotId {
    LotId(Id::from_bytes([name.as_bytes()[0]; 16]))
}

/// The day every test is asked on.
pub fn today() -> Date {
    Date::read("2026-10-01").unwrap()
}
