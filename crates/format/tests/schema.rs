//! The names and ranges that files are made of, against the committed list of them.
//!
//! What was once written must stay readable: a name that goes, or a range that narrows, fails. What is new is
//! written down with `UPDATE_EXPECT=1`. A name in `retired-names.txt` may go, and may never come back.

use std::{collections::BTreeMap, env, fs, path::Path};

use measure::limit::Limit;
use record::{
    field::{Field, Holds},
    wig::{slots, work::KINDS, zone::Zone},
    workshop,
};

type Schema = BTreeMap<String, String>;

fn put(schema: &mut Schema, name: String, value: impl ToString) {
    let name = name.trim().to_owned();
    assert!(
        !value.to_string().contains('\n') && schema.insert(name.clone(), value.to_string()).is_none(),
        "{name} twice"
    );
}

fn limit(schema: &mut Schema, name: &str, limit: &Limit) {
    // In the unit of the table: a limit that changes its unit shows as a name that went.
    let unit = limit.unit.symbol();
    put(schema, format!("{name} {unit} low"), limit.low);
    put(schema, format!("{name} {unit} high"), limit.high);
}

fn holds(schema: &mut Schema, name: &str, holds: &Holds) {
    let what = match holds {
        Holds::Quantity(one) => {
            limit(schema, name, one);
            "quantity"
        }
        Holds::AnyOf(limits) => {
            limits.iter().for_each(|one| limit(schema, name, one));
            "one of several quantities"
        }
        Holds::Count(low, high) => {
            put(schema, format!("{name} low"), low);
            put(schema, format!("{name} high"), high);
            "count"
        }
        Holds::Text(longest) => {
            put(schema, format!("{name} high"), longest);
            "text"
        }
        Holds::Choice(choices) => {
            choices.iter().for_each(|choice| put(schema, format!("{name} choice {choice}"), ""));
            "choice"
        }
        Holds::Money => "money",
        Holds::Date => "date",
        Holds::Zone => "zone",
        Holds::Lot => "lot",
        Holds::YesNo => "yes or no",
        Holds::Zones => "zones",
        Holds::Photo => "photo",
        Holds::Shade => "colour",
        Holds::Along => "colours along the length",
        Holds::Step => "step",
        Holds::Planned => "planned work",
    };
    put(schema, name.to_owned(), what);
}

fn field(schema: &mut Schema, name: &str, field: &Field) {
    let name = format!("{name} {}", field.name);
    holds(schema, &name, &field.holds);
    if field.required {
        put(schema, format!("{name} required"), "");
    }
}

fn today() -> Schema {
    let mut schema = Schema::new();
    put(&mut schema, "envelope".to_owned(), format::row::VERSION);
    put(&mut schema, "file".to_owned(), format::file::VERSION);
    Zone::ALL.iter().for_each(|zone| put(&mut schema, format!("zone {}", zone.name()), ""));
    for kind in KINDS {
        let name = format!("work {}", kind.name);
        put(&mut schema, name.clone(), kind.version);
        kind.every_field().for_each(|one| field(&mut schema, &name, one));
    }
    for slot in slots::SLOTS {
        field(&mut schema, "slot", &slot.field);
        put(&mut schema, format!("slot {} per", slot.field.name), format!("{:?}", slot.per).to_lowercase());
    }
    workshop::slots::SLOTS.iter().for_each(|one| field(&mut schema, "lot", one));
    schema
}

/// What old files would no longer be read for.
fn breaks(old: &Schema, new: &Schema, retired: &[&str]) -> Vec<String> {
    let mut broken = Vec::new();
    // `slot girth` retires everything that starts so.
    let is_retired = |name: &str| retired.iter().any(|gone| name == *gone || name.starts_with(&format!("{gone} ")));
    for (name, was) in old {
        let ended = |end| name.ends_with(end);
        let number = |text: &str| text.parse::<f64>().unwrap_or(f64::NAN);
        match new.get(name) {
            None if ended(" required") || is_retired(name) => {}
            None => broken.push(format!("{name}: gone")),
            Some(now) if ended(" low") && number(now) <= number(was) => {}
            Some(now) if ended(" high") && number(now) >= number(was) => {}
            // A kind's version may rise: the way up is guarded beside the table of migrations.
            Some(now) if name.starts_with("work ") && number(now) > number(was) => {}
            Some(now) if now == was => {}
            Some(now) => broken.push(format!("{name}: {was} became {now}")),
        }
    }
    for name in new.keys().filter(|name| !old.contains_key(*name)) {
        let owner = name.strip_suffix(" required").and_then(|field| field.rsplit_once(' ')).map(|(owner, _)| owner);
        if owner.is_some_and(|owner| old.contains_key(owner)) {
            broken.push(format!("{name}: old entries do not have it"));
        }
    }
    broken.extend(new.keys().filter(|name| is_retired(name)).map(|name| format!("{name}: retired, yet here")));
    broken
}

fn parse(text: &str) -> Schema {
    let cells = |line: &str| line.split_once(" = ").map(|(name, value)| (name.to_owned(), value.to_owned()));
    text.lines()
        .map(|line| cells(line).unwrap_or_else(|| (line.trim_end_matches(" =").to_owned(), String::new())))
        .collect()
}

fn print(schema: &Schema) -> String {
    let line = |(name, value): (&String, &String)| {
        if value.is_empty() { format!("{name}\n") } else { format!("{name} = {value}\n") }
    };
    schema.iter().map(line).collect()
}

fn retired() -> Vec<&'static str> {
    include_str!("schema/retired-names.txt").lines().filter(|line| !line.is_empty() && !line.starts_with('#')).collect()
}

#[test]
fn what_was_written_stays_readable() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/schema/names.txt");
    let old = parse(&fs::read_to_string(&path).unwrap_or_default());
    let new = today();
    assert_eq!(breaks(&old, &new, &retired()), Vec::<String>::new(), "old files would not be read any more");
    if old != new && env::var_os("UPDATE_EXPECT").is_some() {
        fs::write(&path, print(&new)).expect("the list is written");
        return;
    }
    let added: Vec<_> = new.iter().filter(|(name, value)| old.get(*name) != Some(value)).collect();
    assert_eq!(old, new, "new names or ranges; run this test with UPDATE_EXPECT=1 to write them down: {added:?}");
}

#[test]
fn names_leave_room_for_the_envelope_of_a_body() {
    for kind in KINDS {
        assert!(!["set", "amend"].contains(&kind.name), "{}", kind.name);
        for field in kind.every_field() {
            let taken = ["kind", "v", "place_in_plan"].contains(&field.name) || field.name.starts_with("to.");
            assert!(!taken && !field.name.is_empty(), "{} {}", kind.name, field.name);
        }
    }
    // The subject of a value is empty, a zone or 32 hex digits: no zone may look like the others.
    assert!(Zone::ALL.iter().all(|zone| record::id::Id::read(zone.name()).is_none() && !zone.name().is_empty()));
}

#[test]
fn the_guard_guards() {
    let old = parse(
        "slot a = quantity\nslot a cm low = 1\nslot a cm high = 9\nwork w = 0\nwork w f = text\nwork w f required\nslot b = text\n",
    );
    let check = |change: &dyn Fn(&mut Schema), retired: &[&str], want: usize| {
        let mut new = old.clone();
        change(&mut new);
        assert_eq!(breaks(&old, &new, retired).len(), want, "{:?}", breaks(&old, &new, retired));
    };
    let set = |name: &'static str, value: &'static str| {
        move |new: &mut Schema| drop(new.insert(name.to_owned(), value.to_owned()))
    };
    check(&|_| (), &[], 0);
    check(&set("slot a cm low", "0.5"), &[], 0);
    check(&set("slot a cm high", "10"), &[], 0);
    check(&set("slot c", "text"), &[], 0);
    check(&|new| drop(new.remove("work w f required")), &[], 0);
    check(&|new| drop(new.remove("slot b")), &["slot b"], 0);
    check(&set("slot a cm low", "2"), &[], 1);
    check(&set("slot a cm high", "8"), &[], 1);
    check(&set("slot a", "text"), &[], 1);
    check(&set("work w", "1"), &[], 0);
    check(&set("work w", "-1"), &[], 1);
    check(&set("work w f", "count"), &[], 1);
    check(&|new| drop(new.remove("slot b")), &[], 1);
    check(&set("work w g required", ""), &[], 1);
    check(&set("slot b", "text"), &["slot b"], 1);
    assert_eq!(parse(&print(&old)), old);
}
