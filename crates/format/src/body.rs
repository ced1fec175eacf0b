//! What an entry says, as a flat map of texts.
//!
//! What it is: both directions between bodies and maps, by the record's own tables.
//! What it is not: the envelope (see `row`), or bodies of earlier versions (see `migrate`).
//!
//! Work is `kind`, `v` and its fields. A value is kind `set` with `what`, `of`, `over` and `value`, which is
//! absent where the value was taken back. An amendment is kind `amend` with `target` and `over`; with `done`
//! and what the entry should have said, every name of that prefixed `to.`; without them it undoes.

use measure::{
    civil::Minute,
    prefs::Prefs,
    say::{Arg, Say},
};
use record::{
    field::{Field, Holds, Value},
    history::entry::{Amendment, Body, Corrected, Key, LogId, Of, Says, Setting},
    id::{EntryId, LotId, StepId},
    wig::{
        slots,
        steps::Planned,
        work::{Kind, Work, kind_named},
        zone::Zone,
    },
    workshop,
};

use crate::{
    json::shown,
    migrate::{Flat, STEPS, raise, version},
};

/// Kind of a value that was set.
pub(crate) const SET: &str = "set";
/// Kind of an amendment.
pub(crate) const AMEND: &str = "amend";
/// Version of both.
const VERSION: u32 = 0;
/// Before every name of the work planned for a step.
pub(crate) const STEP: &str = "step.";
/// Before every name of what an amended entry should have said.
pub(crate) const TO: &str = "to.";

/// Why a body was not read.
pub(crate) enum Trouble {
    /// A newer version made it.
    Newer(Say),
    /// It is damaged.
    Broken(Say),
}

fn broken(name: &str, found: Option<&str>, want: &'static str) -> Trouble {
    let name = Arg::Text(format!("body.{name}"));
    Trouble::Broken(match found {
        None => Say::new("format.missing", [name, Arg::Key(want)]),
        Some(found) => Say::new("format.refused", [name, Arg::Text(shown(found)), Arg::Key(want)]),
    })
}

fn newer(key: &'static str, name: &str) -> Trouble {
    Trouble::Newer(Say::new(key, [Arg::Text(shown(name))]))
}

// ---- writing ---------------------------------------------------------------------------------

fn put(flat: &mut Flat, name: &str, text: impl Into<String>) {
    flat.insert(name.to_owned(), text.into());
}

fn headed(kind: &str, version: u32) -> Flat {
    let mut flat = Flat::new();
    put(&mut flat, "kind", kind);
    put(&mut flat, "v", version.to_string());
    flat
}

fn ids(over: &[EntryId]) -> String {
    let all: Vec<String> = over.iter().map(EntryId::to_string).collect();
    all.join(" ")
}

pub(crate) fn work_to_flat(work: &Work) -> Flat {
    let mut flat = headed(work.kind().name, work.kind().version);
    for (name, value) in work.values() {
        put(&mut flat, name, value.text());
    }
    flat
}

fn value_to_flat(key: Key, value: Option<&Value>) -> Flat {
    let mut flat = headed(SET, VERSION);
    put(&mut flat, "what", key.slot);
    put(
        &mut flat,
        "of",
        match key.of {
            Of::Wig => String::new(),
            Of::Zone(zone) => zone.name().to_owned(),
            Of::Lot(lot) => lot.to_string(),
            Of::Step(step) => step.to_string(),
        },
    );
    match value {
        None => {}
        Some(Value::Planned(planned)) => {
            put(&mut flat, "place", planned.place.to_string());
            if let Some(why) = &planned.skipped {
                put(&mut flat, "skipped", why);
            }
            for (name, text) in work_to_flat(&planned.work) {
                flat.insert(format!("{STEP}{name}"), text);
            }
        }
        Some(value) => put(&mut flat, "value", value.text()),
    }
    flat
}

/// A body as a map.
pub(crate) fn to_flat(body: &Body) -> Flat {
    match body {
        Body::Work(work) => work_to_flat(work),
        Body::Set(setting) => {
            let mut flat = value_to_flat(setting.key, setting.value.as_ref());
            put(&mut flat, "over", ids(&setting.over));
            flat
        }
        Body::Amend(amendment) => {
            let mut flat = headed(AMEND, VERSION);
            put(&mut flat, "target", amendment.target.to_string());
            put(&mut flat, "over", ids(&amendment.over));
            if let Some(to) = &amendment.to {
                put(&mut flat, "done", to.done.to_string());
                let says = match &to.says {
                    Says::Work(work) => work_to_flat(work),
                    Says::Value(key, value) => value_to_flat(*key, value.as_ref()),
                };
                for (name, text) in says {
                    flat.insert(format!("{TO}{name}"), text);
                }
            }
            flat
        }
    }
}

// ---- reading ---------------------------------------------------------------------------------

/// Today's version of a kind.
fn today(kind: &str) -> Option<u32> {
    if kind == SET || kind == AMEND { Some(VERSION) } else { kind_named(kind).map(|kind| kind.version) }
}

/// Raises a body to today's version and takes its kind off it.
fn opened(flat: Flat) -> Result<(String, Flat), Trouble> {
    let mut flat = raise(flat, STEPS, today).map_err(Trouble::Broken)?;
    let version = version(&flat).map_err(Trouble::Broken)?;
    let kind = flat.remove("kind").ok_or_else(|| broken("kind", None, "format.want_kind"))?;
    flat.remove("v");
    match today(&kind) {
        None => Err(newer("format.newer_kind", &kind)),
        Some(today) if version > today => Err(newer("format.newer_body", &kind)),
        Some(_) => Ok((kind, flat)),
    }
}

fn take(flat: &mut Flat, name: &str, want: &'static str) -> Result<String, Trouble> {
    flat.remove(name).ok_or_else(|| broken(name, None, want))
}

fn take_over(flat: &mut Flat) -> Result<Vec<EntryId>, Trouble> {
    let text = take(flat, "over", "format.want_ids")?;
    let mut over = Vec::new();
    if !text.is_empty() {
        for one in text.split(' ') {
            over.push(EntryId::read(one).ok_or_else(|| broken("over", Some(one), "format.want_ids"))?);
        }
    }
    Ok(over)
}

/// Names that nothing here knows come from a newer version.
fn emptied(flat: &Flat) -> Result<(), Trouble> {
    flat.keys().next().map_or(Ok(()), |name| Err(newer("format.newer_field", name)))
}

/// Reads a field's text; words that only a table can refuse come from a newer table.
fn filled(name: &str, holds: &Holds, text: &str) -> Result<Value, Trouble> {
    // Stored figures carry their units, so nobody's usual unit matters here.
    holds.read(text, &Prefs::default()).map_err(|reason| match holds {
        Holds::Choice(_) | Holds::Zone => {
            Trouble::Newer(Say::new("format.newer_choice", [Arg::from(name), Arg::Text(shown(text))]))
        }
        _ => Trouble::Broken(Say::new("format.field", [Arg::from(name), Arg::Text(shown(text)), Arg::from(reason)])),
    })
}

fn work(kind: &str, flat: &Flat) -> Result<Work, Trouble> {
    let kind = kind_named(kind).ok_or_else(|| newer("format.newer_kind", kind))?;
    for (name, text) in flat {
        let field = kind.field(name).ok_or_else(|| newer("format.newer_field", name))?;
        filled(name, &field.holds, text)?;
    }
    let texts = flat.iter().map(|(name, text)| (name.as_str(), text.as_str()));
    Work::read(kind, texts, &Prefs::default()).map_err(|refusals| {
        let mut all = Vec::new();
        for refusal in refusals {
            all.push(Say::new("format.refusal", [Arg::Text(refusal.field), Arg::from(refusal.say)]));
        }
        Trouble::Broken(Say::new("format.work", [Arg::from(kind.name), Arg::List(all)]))
    })
}

/// Reads work that stands alone.
pub(crate) fn work_of(flat: Flat) -> Result<Work, Trouble> {
    let (kind, flat) = opened(flat)?;
    work(&kind, &flat)
}

/// Fields with what fills them.
pub(crate) type Filled = Vec<(&'static Field, Value)>;

/// Reads the fields of work of which some are left out.
pub(crate) fn fields_of(flat: Flat) -> Result<(&'static Kind, Filled), Trouble> {
    let (name, flat) = opened(flat)?;
    let kind = kind_named(&name).ok_or_else(|| newer("format.newer_kind", &name))?;
    let mut values = Vec::new();
    if let Some(name) = flat.keys().find(|name| kind.field(name).is_none()) {
        return Err(newer("format.newer_field", name));
    }
    for field in kind.every_field() {
        if let Some(text) = flat.get(field.name) {
            values.push((field, filled(field.name, &field.holds, text)?));
        }
    }
    Ok((kind, values))
}

/// What the slot at an address holds.
fn holds_of(log: LogId, slot: &str) -> Option<&'static Holds> {
    match log {
        LogId::Workshop => workshop::slots::slot_named(slot).map(|field| &field.holds),
        LogId::Wig(_) => slots::slot_named(slot).map(|slot| &slot.field.holds),
    }
}

fn value(log: LogId, flat: &mut Flat) -> Result<(Key, Option<Value>), Trouble> {
    let what = take(flat, "what", "format.want_slot")?;
    let of = take(flat, "of", "format.want_of")?;
    let text = flat.remove("value");
    let holds = holds_of(log, &what).ok_or_else(|| newer("format.newer_slot", &what))?;
    if *holds == Holds::Planned {
        let step = StepId::read(&of).ok_or_else(|| broken("of", Some(&of), "format.want_of"))?;
        let key = Key::new(log, &what, Of::Step(step)).ok_or_else(|| broken("of", Some(&of), "format.want_of"))?;
        return Ok((key, planned(flat)?.map(|planned| Value::Planned(Box::new(planned)))));
    }
    let subject = if of.is_empty() {
        Of::Wig
    } else if let Some(zone) = Zone::read(&of) {
        Of::Zone(zone)
    } else if let Some(lot) = LotId::read(&of) {
        Of::Lot(lot)
    } else {
        return Err(Trouble::Newer(Say::new("format.newer_choice", [Arg::from("of"), Arg::Text(shown(&of))])));
    };
    let key = Key::new(log, &what, subject).ok_or_else(|| broken("of", Some(&of), "format.want_of"))?;
    let value = text.map(|text| filled(&what, holds, &text)).transpose()?;
    Ok((key, value))
}

/// Takes the names that start so out of a map, the start taken off them.
fn prefixed(flat: &mut Flat, prefix: &str) -> Flat {
    let mut found = Flat::new_vec();
    flat.retain(|name, text| match name.strip_prefix(prefix) {
        Some(rest) => {
            found.insert(rest.to_owned(), text.clone());
            false
        }
        None => true,
    });
    found
}

/// What is planned for a step; nothing where it was taken out of the plan.
fn planned(flat: &mut Flat) -> Result<Option<Planned>, Trouble> {
    let Some(place) = flat.remove("place") else { return Ok(None) };
    let place = place.parse().map_err(|_| broken("place", Some(&place), "format.want_place"))?;
    let skipped = flat.remove("skipped");
    let (kind, says) = opened(prefixed(flat, STEP))?;
    Ok(Some(Planned { place, work: work(&kind, &says)?, skipped }))
}

/// Reads a body of a log.
pub(crate) fn from_flat(log: LogId, flat: Flat) -> Result<Body, Trouble> {
    let (kind, mut flat) = opened(flat)?;
    match kind.as_str() {
        SET => {
            let (key, value) = value(log, &mut flat)?;
            let over = take_over(&mut flat)?;
            emptied(&flat)?;
            Ok(Body::Set(Setting { key, value, over }))
        }
        AMEND => {
            let target = take(&mut flat, "target", "format.want_id")?;
            let target = EntryId::read(&target).ok_or_else(|| broken("target", Some(&target), "format.want_id"))?;
            let over = take_over(&mut flat)?;
            let done = flat.remove("done");
            let says = prefixed(&mut flat, TO);
            emptied(&flat)?;
            let to = match (done, says.is_empty()) {
                (None, true) => None,
                (None, false) => return Err(broken("done", None, "format.want_minute")),
                (Some(done), _) => Some(corrected(log, &done, says)?),
            };
            Ok(Body::Amend(Amendment { target, over, to }))
        }
        kind => work(kind, &flat).map(Body::Work),
    }
}

fn corrected(log: LogId, done: &str, says: Flat) -> Result<Corrected, Trouble> {
    let done = Minute::read(done).ok_or_else(|| broken("done", Some(done), "format.want_minute"))?;
    let (kind, mut flat) = opened(says)?;
    let says = match kind.as_str() {
        SET => {
            let (key, value) = value(log, &mut flat)?;
            emptied(&flat)?;
            Says::Value(key, value)
        }
        AMEND => return Err(broken("to.kind", Some(AMEND), "format.want_original")),
        kind => Says::Work(work(kind, &flat)?),
    };
    Ok(Corrected { done, says })
}
