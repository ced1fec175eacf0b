//! A cutting case as JSON: `{"packs":[…],"pieces":[…],"cut_loss_mm":0}`.
//!
//! What it is: a strict reader that names the member it refuses. What it is not: the rules of a case (see `plan::cutting`),
//! or a kind of file the application saves.
//!
//! | member | holds |
//! |---|---|
//! | `packs[].name` | text, each its own |
//! | `packs[].length_mm` | each length in a pack, whole mm |
//! | `packs[].pieces` | lengths that a bought pack brings; 0 is not for sale |
//! | `packs[].price` | of a pack, in the smallest money unit |
//! | `packs[].owned` | free single lengths at hand |
//! | `pieces[].length_mm`, `pieces[].count` | what is wanted |
//! | `cut_loss_mm` | lost between neighbours on a length |
//!
//! Every member is needed, and no other is allowed.

use std::fmt;

use measure::say::{Arg, Say};
use plan::cutting::{Case, Demand, Pack, limit};
use serde::{
    Deserialize, Deserializer,
    de::{MapAccess, SeqAccess, Visitor},
};

use crate::out::Fault;

/// JSON with its members in order, twice where they stand twice.
enum Json {
    Whole(u64),
    Text(String),
    List(Vec<Json>),
    Object(Vec<(String, Json)>),
    /// Anything a case has no use for, as it is shown back.
    Other(String),
}

impl<'de> Deserialize<'de> for Json {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Json, D::Error> {
        struct Any;
        impl<'de> Visitor<'de> for Any {
            type Value = Json;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("JSON")
            }
            fn visit_u64<E>(self, whole: u64) -> Result<Json, E> {
                Ok(Json::Whole(whole))
            }
            fn visit_i64<E>(self, number: i64) -> Result<Json, E> {
                Ok(Json::Other(number.to_string()))
            }
            fn visit_f64<E>(self, number: f64) -> Result<Json, E> {
                Ok(Json::Other(format!("{number:?}")))
            }
            fn visit_bool<E>(self, yes: bool) -> Result<Json, E> {
                Ok(Json::Other(yes.to_string()))
            }
            fn visit_unit<E>(self) -> Result<Json, E> {
                Ok(Json::Other("null".to_owned()))
            }
            fn visit_str<E>(self, text: &str) -> Result<Json, E> {
                Ok(Json::Text(text.to_owned()))
            }
            fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Json, A::Error> {
                let mut items = Vec::new();
                while let Some(item) = list.next_element()? {
                    items.push(item);
                }
                Ok(Json::List(items))
            }
            fn visit_map<A: MapAccess<'de>>(self, mut object: A) -> Result<Json, A::Error> {
                let mut members = Vec::new();
                while let Some(member) = object.next_entry()? {
                    members.push(member);
                }
                Ok(Json::Object(members))
            }
        }
        from.deserialize_any(Any)
    }
}

impl Json {
    /// As it is shown back.
    fn shown(&self) -> String {
        match self {
            Json::Whole(whole) => whole.to_string(),
            Json::Text(text) => {
                let start: String = text.chars().take(60).collect();
                format!("\"{start}{}\"", if start.len() < text.len() { "…" } else { "" })
            }
            Json::List(_) => "a list".to_owned(),
            Json::Object(_) => "an object".to_owned(),
            Json::Other(text) => text.clone(),
        }
    }
}

/// The members of an object, each taken once.
struct Members {
    path: String,
    members: Vec<(String, Json)>,
}

fn refused(field: &str, value: &str, want: Arg) -> Fault {
    Fault::new("cli.case_refused", [Arg::from(field), Arg::from(value), want])
}

impl Members {
    fn of(path: &str, json: Json, names: &[&str]) -> Result<Members, Fault> {
        let Json::Object(members) = json else {
            return Err(refused(path, &json.shown(), Arg::Key("cli.want_object")));
        };
        let path = if path == WHOLE { String::new() } else { format!("{path}.") };
        for (at, (name, _)) in members.iter().enumerate() {
            let full = format!("{path}{}", shown_name(name));
            if !names.contains(&name.as_str()) {
                return Err(Fault::new("cli.case_unknown", [Arg::Text(full), Arg::Text(names.join(", "))]));
            }
            if members.iter().take(at).any(|(before, _)| before == name) {
                return Err(Fault::new("cli.case_twice", [Arg::Text(full)]));
            }
        }
        Ok(Members { path, members })
    }

    fn take(&mut self, name: &str, want: Arg) -> Result<(String, Json), Fault> {
        let full = format!("{}{name}", self.path);
        match self.members.iter().position(|(there, _)| there == name) {
            Some(at) => Ok((full, self.members.swap_remove(at).1)),
            None => Err(Fault::new("cli.case_missing", [Arg::Text(full), want])),
        }
    }

    fn whole(&mut self, name: &str, least: u64, most: u64) -> Result<u64, Fault> {
        let ends = || [least, most].map(|end| Arg::Text(end.to_string()));
        let want = || Arg::from(Say::new("cli.want_whole", ends()));
        let (full, json) = self.take(name, want())?;
        match json {
            Json::Whole(whole) if (least..=most).contains(&whole) => Ok(whole),
            other => Err(refused(&full, &other.shown(), want())),
        }
    }

    fn small(&mut self, name: &str, least: u32, most: u32) -> Result<u32, Fault> {
        let whole = self.whole(name, u64::from(least), u64::from(most))?;
        // Not above `most`, which is a u32.
        Ok(u32::try_from(whole).unwrap_or(most))
    }

    fn text(&mut self, name: &str) -> Result<String, Fault> {
        match self.take(name, Arg::Key("cli.want_name"))? {
            (_, Json::Text(text)) => Ok(text),
            (full, other) => Err(refused(&full, &other.shown(), Arg::Key("cli.want_name"))),
        }
    }

    fn list(&mut self, name: &str) -> Result<Vec<(String, Json)>, Fault> {
        match self.take(name, Arg::Key("cli.want_list"))? {
            (full, Json::List(items)) => {
                Ok(items.into_iter().enumerate().map(|(at, item)| (format!("{full}[{at}]"), item)).collect())
            }
            (full, other) => Err(refused(&full, &other.shown(), Arg::Key("cli.want_list"))),
        }
    }
}

fn shown_name(name: &str) -> String {
    name.chars().take(60).collect()
}

/// What the whole text is called in a refusal.
const WHOLE: &str = "the case";

/// Reads a case.
///
/// # Errors
/// The first member that is refused, with its value and the remedy.
pub fn read(text: &str) -> Result<Case, Fault> {
    let json: Json = serde_json::from_str(text.strip_prefix('\u{feff}').unwrap_or(text))
        .map_err(|problem| Fault::new("cli.case_not_json", [Arg::Text(problem.to_string())]))?;
    let mut case = Members::of(WHOLE, json, &["packs", "pieces", "cut_loss_mm"])?;
    let mut packs = Vec::new();
    for (path, pack) in case.list("packs")? {
        let mut pack = Members::of(&path, pack, &["name", "length_mm", "pieces", "price", "owned"])?;
        packs.push(Pack {
            name: pack.text("name")?,
            length_mm: pack.small("length_mm", 1, limit::LENGTH_MM)?,
            pieces: pack.small("pieces", 0, limit::PACK_PIECES)?,
            price: pack.whole("price", 0, limit::PRICE)?,
            owned: pack.small("owned", 0, limit::OWNED)?,
        });
    }
    let mut pieces = Vec::new();
    for (path, piece) in case.list("pieces")? {
        let mut piece = Members::of(&path, piece, &["length_mm", "count"])?;
        pieces.push(Demand {
            length_mm: piece.small("length_mm", 1, limit::LENGTH_MM)?,
            count: piece.small("count", 1, limit::PIECES)?,
        });
    }
    let cut_loss_mm = case.small("cut_loss_mm", 0, limit::CUT_LOSS_MM)?;
    Case::new(packs, pieces, cut_loss_mm).map_err(|faults| {
        let first = faults.first().map_or_else(String::new, ToString::to_string);
        match faults.len() {
            0 | 1 => Fault::new("cli.case_fault", [Arg::Text(first)]),
            more => Fault::new("cli.case_faults", [Arg::Text(first), Arg::Count(more as i64 - 1)]),
        }
    })
}
