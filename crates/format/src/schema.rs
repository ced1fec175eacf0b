//! The JSON Schema (draft 2020-12) of a wig file, made from the field tables.
//!
//! What it is: for other programs: what each kind of entry holds, in which unit, from where to where.
//! What it is not: what reads our files: that is the tables themselves.

use measure::say::Words;
use record::{
    field::{Field, Holds},
    wig::{
        slots::{Per, SLOTS},
        work::{Group, KINDS, Kind},
        zone::Zone,
    },
    workshop,
};

use crate::{
    file::{VERSION, listed},
    json::{object, quoted},
    wig_file::KIND,
};

const ID: &str = "{\"type\":\"string\",\"pattern\":\"^[0-9a-f]{32}$\"}";
const IDS: &str = "{\"type\":\"string\",\"pattern\":\"^([0-9a-f]{32}( [0-9a-f]{32})*)?$\"}";
const MINUTE: &str = "{\"type\":\"string\",\"pattern\":\"^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}$\"}";
const TEXT: &str = "{\"type\":\"string\"}";

fn constant(text: &str) -> String {
    object(&[("const", quoted(text))])
}

fn choices<'a>(all: impl IntoIterator<Item = &'a str>) -> String {
    let all: Vec<String> = all.into_iter().map(quoted).collect();
    listed(all.iter().map(String::as_str))
}

fn described(label: &str, more: &str, rest: &[(&str, String)]) -> String {
    let words = if more.is_empty() { label.to_owned() } else { format!("{label}: {more}") };
    let mut members = vec![("type", quoted("string")), ("description", quoted(&words))];
    members.extend(rest.iter().cloned());
    object(&members)
}

/// What a field's text may be.
fn field(field: &Field, words: &Words) -> String {
    let label = words.get(&format!("field.{}", field.name));
    let pattern = |pattern: &str| [("pattern", quoted(pattern))];
    let limits = |limits: &[&measure::limit::Limit]| {
        let each: Vec<String> =
            limits.iter().map(|limit| format!("{} to {} {}", limit.low, limit.high, limit.unit.symbol())).collect();
        format!("a figure as typed, with its unit; {}", each.join(", or "))
    };
    match &field.holds {
        Holds::Quantity(limit) => described(&label, &limits(&[limit]), &[]),
        Holds::AnyOf(all) => described(&label, &limits(all), &[]),
        Holds::Money => described(&label, "money, two decimals, any currency", &pattern("^[0-9]+([.][0-9]{1,2})?$")),
        Holds::Count(low, high) => described(&label, &format!("a whole number, {low} to {high}"), &pattern("^[0-9]+$")),
        Holds::Text(most) => described(&label, "", &[("maxLength", most.to_string())]),
        Holds::Choice(names) => described(&label, "", &[("enum", choices(names.iter().copied()))]),
        Holds::Date => described(&label, "a day", &pattern("^[0-9]{4}-[0-9]{2}-[0-9]{2}$")),
        Holds::Zone => described(&label, "", &[("enum", choices(Zone::ALL.iter().map(|zone| zone.name())))]),
        Holds::Zones => described(&label, "names of zones, a space between; all where it is left out", &[]),
        Holds::YesNo => described(&label, "", &[("enum", choices(["yes", "no"]))]),
        Holds::Photo => described(&label, "SHA-256 of a photo’s bytes", &pattern("^[0-9a-f]{64}$")),
        Holds::Lot | Holds::Step => described(&label, "an identity", &pattern("^[0-9a-f]{32}$")),
        Holds::Shade => described(&label, "a colour in eight-bit sRGB", &pattern("^#[0-9a-f]{6}$")),
        Holds::Along => described(
            &label,
            "colours from root to ends, each to so many percent of the length, such as #3b2a20 to 40, #c04a7a",
            &[],
        ),
        Holds::Planned => described(&label, "", &[]),
    }
}

/// An object with these members, those required, and no others.
fn closed(members: &[(&str, String)], required: &[&str]) -> String {
    object(&[
        ("type", quoted("object")),
        ("properties", object(members)),
        ("required", choices(required.iter().copied())),
        ("additionalProperties", "false".to_owned()),
    ])
}

fn work(kind: &Kind, words: &Words) -> String {
    let mut members = vec![("kind", constant(kind.name)), ("v", constant(&kind.version.to_string()))];
    let mut required = vec!["kind", "v"];
    for one in kind.every_field() {
        members.push((one.name, field(one, words)));
        if one.required {
            required.push(one.name);
        }
    }
    closed(&members, &required)
}

fn set(slot: &Field, of: String, words: &Words) -> String {
    let mut members = vec![
        ("kind", constant("set")),
        ("v", constant("0")),
        ("what", constant(slot.name)),
        ("of", of),
        ("over", IDS.to_owned()),
    ];
    if slot.holds != Holds::Planned {
        members.push(("value", field(slot, words)));
        return closed(&members, &["kind", "v", "what", "of", "over"]);
    }
    members.push(("place", described("place in the plan", "smaller is earlier", &[("pattern", quoted("^[0-9]+$"))])));
    members.push(("skipped", TEXT.to_owned()));
    object(&[
        ("type", quoted("object")),
        ("properties", object(&members)),
        ("required", choices(["kind", "v", "what", "of", "over"])),
        ("description", quoted("a step; the planned work has the names of its kind, each after “step.”")),
        ("patternProperties", object(&[("^step[.]", TEXT.to_owned())])),
        ("additionalProperties", "false".to_owned()),
    ])
}

fn amend() -> String {
    let members = [
        ("kind", constant("amend")),
        ("v", constant("0")),
        ("target", ID.to_owned()),
        ("over", IDS.to_owned()),
        ("done", MINUTE.to_owned()),
    ];
    object(&[
        ("type", quoted("object")),
        ("properties", object(&members)),
        ("required", choices(["kind", "v", "target", "over"])),
        (
            "description",
            quoted("an entry put right: what it should have said, each name after “to.”; without those, undone"),
        ),
        ("patternProperties", object(&[("^to[.]", TEXT.to_owned())])),
        ("additionalProperties", "false".to_owned()),
    ])
}

fn row(log: String, bodies: &[String]) -> String {
    let body = object(&[("oneOf", listed(bodies.iter().map(String::as_str)))]);
    let members = [
        ("v", "{\"const\":0}".to_owned()),
        ("id", ID.to_owned()),
        ("log", log),
        ("lamport", "{\"type\":\"integer\",\"minimum\":0}".to_owned()),
        ("done", MINUTE.to_owned()),
        ("written", TEXT.to_owned()),
        ("by", "{\"type\":\"string\",\"pattern\":\"^([0-9a-f]{32})?$\"}".to_owned()),
        ("body", body),
    ];
    closed(&members, &["v", "id", "log", "lamport", "done", "written", "by", "body"])
}

fn list(of: &str) -> String {
    object(&[("type", quoted("array")), ("items", object(&[("$ref", quoted(of))]))])
}

/// The schema, with the labels of these words.
pub fn wig(words: &Words) -> String {
    let mut of_wig: Vec<String> =
        KINDS.iter().filter(|kind| kind.group != Group::Workshop).map(|kind| work(kind, words)).collect();
    for slot in SLOTS {
        let of = match slot.per {
            Per::Wig => constant(""),
            Per::Zone => object(&[("enum", choices(Zone::ALL.iter().map(|zone| zone.name())))]),
            Per::Lot | Per::Step => ID.to_owned(),
        };
        of_wig.push(set(&slot.field, of, words));
    }
    of_wig.push(amend());
    let mut of_workshop: Vec<String> = KINDS.iter().map(|kind| work(kind, words)).collect();
    of_workshop.extend(workshop::slots::SLOTS.iter().map(|slot| set(slot, ID.to_owned(), words)));
    of_workshop.push(amend());
    let members = [
        ("weftbook", constant(KIND)),
        ("version", object(&[("const", VERSION.to_string())])),
        ("producer", TEXT.to_owned()),
        ("made", TEXT.to_owned()),
        ("sha256", "{\"type\":[\"string\",\"null\"],\"pattern\":\"^[0-9a-f]{64}$\"}".to_owned()),
        ("demo", "{\"type\":\"boolean\"}".to_owned()),
        ("wig", ID.to_owned()),
        ("rows", list("#/$defs/row")),
        ("lots", list("#/$defs/card")),
    ];
    let defs = object(&[("row", row(ID.to_owned(), &of_wig)), ("card", row(constant("workshop"), &of_workshop))]);
    object(&[
        ("$schema", quoted("https://json-schema.org/draft/2020-12/schema")),
        ("title", quoted("Weftbook wig file")),
        ("type", quoted("object")),
        ("properties", object(&members)),
        ("required", choices(["weftbook", "version", "producer", "made", "wig", "rows", "lots"])),
        ("$defs", defs),
    ]) + "\n"
}
