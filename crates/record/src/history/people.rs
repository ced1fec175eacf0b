//! The people of a workshop, who can be forgotten.
//!
//! What it is: names by identity, outside entries. What it is not: accounts or rights.

use std::collections::BTreeMap;

use crate::id::PersonId;

/// What is known of a person. Greater wins a union: forgotten beats every name.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Person {
    /// Known by name.
    Named {
        /// When the name was given, on the logs' clock.
        lamport: u64,
        /// The name.
        name: String,
    },
    /// Forgotten for good.
    Forgotten,
}

/// The people by identity.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct People(BTreeMap<PersonId, Person>);

impl People {
    /// Learns of a person; a mark of forgetting is never undone.
    pub fn add(&mut self, id: PersonId, person: Person) {
        let known = self.0.entry(id).or_insert_with(|| person.clone());
        if person > *known {
            *known = person;
        }
    }

    /// Learns of all people of another set.
    pub fn merge(&mut self, other: &People) {
        for (id, person) in &other.0 {
            self.add(*id, person.clone());
        }
    }

    /// All of them.
    pub fn all(&self) -> impl Iterator<Item = (PersonId, &Person)> {
        self.0.iter().map(|(id, person)| (*id, person))
    }
}
