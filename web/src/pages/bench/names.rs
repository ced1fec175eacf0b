//! Entries and planned steps in words.
//!
//! What it is: the one wording of work for log, plan and search. What it is not: the sheet's.

use record::{
    field::Value,
    history::entry::{Body, Of},
    wig::{steps, work::Work, zone::Zones},
    workshop::lots::Lot,
};

use crate::shell::talk::{choice, field, t};

/// What words of entries are taken from.
pub struct Names<'a> {
    /// The lots, for their names.
    pub lots: &'a [Lot],
}

/// What tells of the entry itself and is shown beside it, not in it.
const BESIDE: &[&str] = &["stock", "stock_2", "stock_3", "step", "more_to_come", "overruled", "judgement", "photo"];
/// What needs no name before it.
pub const BARE: &[&str] = &[
    "words",
    "sewn_as",
    "remark", // What follows repeats the name of its kind of work: "Put away: Put away: …".
    "accessory",
    "anchor",
    "block",
    "cut_way",
    "dressed_with",
    "dry_way",
    "dye_class",
    "edge",
    "front_made",
    "gathered",
    "glue",
    "handed_to",
    "measured",
    "product",
    "repaired",
    "reset_with",
    "rinsed_with",
    "stored",
    "unpicked",
    "washed_with",
];

/// A name and what is to say of it; the name alone where that is nothing.
fn joined(name: String, more: String) -> String {
    if more.is_empty() { name } else { format!("{name}: {more}") }
}

impl Names<'_> {
    /// A value.
    pub fn value(&self, value: &Value) -> String {
        match value {
            Value::Choice(name) => choice(name),
            Value::Zone(zone) => t(zone.label()),
            Value::Zones(zones) if *zones == Zones::ALL => t("web.whole_wig"),
            Value::Zones(zones) => {
                let all: Vec<String> = zones.each().map(|zone| t(zone.label())).collect();
                all.join(", ")
            }
            Value::YesNo(yes) => choice(if *yes { "yes" } else { "no" }),
            Value::Lot(id) => {
                self.lots.iter().find(|lot| lot.id == *id).map_or_else(|| t("web.lot_unknown"), |lot| lot.name.clone())
            }
            Value::Planned(planned) => self.step(&planned.work),
            other => other.text(),
        }
    }

    /// The name of a kind of work.
    pub fn kind(&self, work: &Work) -> String {
        t(&format!("work.{}", work.kind().name))
    }

    /// The name of a kind of work that is still to do.
    pub fn to_do(&self, work: &Work) -> String {
        t(&format!("todo.{}", work.kind().name))
    }

    /// What work that is still to do is planned with.
    pub fn plan(&self, work: &Work) -> String {
        self.parts(work, "web.planned_minutes")
    }

    /// Work that is still to do, with what it is planned with.
    pub fn step(&self, work: &Work) -> String {
        joined(self.to_do(work), self.plan(work))
    }

    /// What a piece of work was filled with.
    pub fn details(&self, work: &Work) -> String {
        self.parts(work, "field.minutes")
    }

    fn parts(&self, work: &Work, minutes: &str) -> String {
        let parts: Vec<String> = work
            .kind()
            .every_field()
            .filter(|of| !BESIDE.contains(&of.name))
            .filter_map(|of| work.get(of.name).map(|value| (of.name, value)))
            .map(|(name, value)| {
                let shown = self.value(value);
                match name {
                    name if BARE.contains(&name) => shown,
                    "minutes" => format!("{}: {shown}", t(minutes)),
                    name => format!("{}: {shown}", field(name)),
                }
            })
            .collect();
        parts.join("; ")
    }

    /// A piece of work.
    pub fn work(&self, work: &Work) -> String {
        let (name, details) = (self.kind(work), self.details(work));
        // "Bound: braids, ties, pins, rollers" lists what it may be; what it was follows.
        let short = name.split(':').next().filter(|_| !details.is_empty()).unwrap_or(&name).to_owned();
        joined(short, details)
    }

    /// What an entry says.
    pub fn body(&self, body: &Body) -> String {
        match body {
            Body::Work(work) => self.work(work),
            Body::Set(setting) => {
                let of = match setting.key.of {
                    Of::Wig => String::new(),
                    Of::Zone(zone) => format!("{}, ", t(zone.label())),
                    Of::Lot(lot) => format!("{}, ", self.value(&Value::Lot(lot))),
                    Of::Step(_) => String::new(),
                };
                let value = match &setting.value {
                    Some(value) => self.value(value),
                    None if setting.key.slot == steps::SLOT => t("web.step_gone"),
                    None => t("web.as_assumed"),
                };
                format!("{of}{}: {value}", field(setting.key.slot))
            }
            Body::Amend(_) => String::new(),
        }
    }
}
