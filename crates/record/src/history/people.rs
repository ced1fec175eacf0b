//! The people of a workshop, who can be forgotten.
//!
//! What it is: names by identity, outside entries. What it is not: accounts or rights.

use litemap::LiteMap;

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
pub struct People(LiteMap<PersonId, Person>);

impl People {
    /// Learns of a person; a mark of forgetting is never undone.
    pub fn add(&mut self, id: PersonId, person: Person) {
        match self.0.get_mut(&id) {
            Some(known) if person > *known => *known = person,
            Some(_) => {}
            None => {
                self.0.insert(id, person);
            }
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
