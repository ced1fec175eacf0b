//! People as the store and a backup keep them.
//!
//! What it is: `{"id","lamport","name"}`, or `{"forgotten":true,"id"}` for good. What it is not: who wins a
//! union (see the record's `history::people`).

use measure::say::{Arg, Say};
use record::{history::people::Person, id::PersonId};

use crate::{
    json::{not_json, object, quoted, read, refused, text},
    limits::{LAMPORT_MOST, PERSON_NAME_MOST, ROW_BYTES_MOST},
    scan::{self, Json},
};

/// Writes a person.
///
/// # Errors
/// Where the name is longer than any reader takes.
pub fn encode_person(id: PersonId, person: &Person) -> Result<String, Say> {
    let id = quoted(&id.to_string());
    match person {
        Person::Forgotten => Ok(object(&[("forgotten", "true".to_owned()), ("id", id)])),
        Person::Named { lamport, name } => {
            check_name(name)?;
            Ok(object(&[("id", id), ("lamport", lamport.to_string()), ("name", quoted(name))]))
        }
    }
}

/// Reads a person; a row without a lamport is older than any with one.
///
/// # Errors
/// Says what is wrong with the row.
pub fn decode_person(raw: &str) -> Result<(PersonId, Person), Say> {
    if raw.len() > ROW_BYTES_MOST {
        return Err(Say::new("format.row_too_long", [Arg::Count(raw.len() as i64), Arg::Count(ROW_BYTES_MOST as i64)]));
    }
    let row = match scan::json(raw).map_err(|fault| not_json(raw, fault))? {
        Json::Object(row) => row,
        other => return Err(refused("person", Some(&other), "format.want_object")),
    };
    let id = read(&row, "id", "format.want_id", PersonId::read)?;
    match row.get("forgotten") {
        None | Some(Json::Bool(false)) => {}
        Some(Json::Bool(true)) => return Ok((id, Person::Forgotten)),
        other => return Err(refused("forgotten", other, "format.want_yes_no")),
    }
    let lamport = match row.get("lamport") {
        None => 0,
        some => some
            .and_then(Json::as_u64)
            .filter(|lamport| *lamport <= LAMPORT_MOST)
            .ok_or_else(|| refused("lamport", some, "format.want_lamport"))?,
    };
    let name = text(&row, "name", "format.want_text")?;
    check_name(name)?;
    Ok((id, Person::Named { lamport, name: name.to_owned() }))
}

fn check_name(name: &str) -> Result<(), Say> {
    let length = name.chars().count();
    if length > PERSON_NAME_MOST {
        return Err(Say::new("format.name_too_long", [Arg::Count(length as i64), Arg::Count(PERSON_NAME_MOST as i64)]));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use record::id::Id;

    use super::*;

    #[test]
    fn people_come_back() {
        let id = PersonId(Id::from_bytes([7; 16]));
        for person in [
            Person::Forgotten,
            Person::Named { lamport: 0, name: String::new() },
            Person::Named { lamport: LAMPORT_MOST, name: "🪡".repeat(PERSON_NAME_MOST) },
        ] {
            let text = encode_person(id, &person).unwrap();
            assert_eq!(decode_person(&text), Ok((id, person)));
        }
        let long = Person::Named { lamport: 0, name: "x".repeat(PERSON_NAME_MOST + 1) };
        assert_eq!(encode_person(id, &long).map_err(|say| say.key), Err("format.name_too_long"));
        let id = id.to_string();
        for (row, key) in [
            ("[]".to_owned(), "format.refused"),
            ("{}".to_owned(), "format.missing"),
            (format!("{{\"id\":\"{id}\"}}"), "format.missing"),
            (format!("{{\"id\":\"{id}\",\"forgotten\":1}}"), "format.refused"),
            (format!("{{\"id\":\"{id}\",\"name\":\"A\",\"lamport\":-1}}"), "format.refused"),
            (format!("{{\"id\":\"{id}\",\"name\":\"A\""), "format.cut_off"),
        ] {
            assert_eq!(decode_person(&row).map_err(|say| say.key), Err(key), "{row}");
        }
    }
}
