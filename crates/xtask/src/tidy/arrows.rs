//! Rule: a room uses only the rooms below it.
//!
//! What it is: the house's plan held against the real dependency graph (normal dependencies, every platform).
//! What it is not: a rule about tests, which may use any room.

use std::collections::{BTreeMap, BTreeSet};

use crate::workspace::Metadata;

pub type Edges = BTreeMap<String, BTreeSet<String>>;

/// Each room with the rooms it may use. Every member of the workspace stands here.
const ROOMS: [(&str, &[&str]); 9] = [
    ("weftbook-measure", &[]),
    ("weftbook-record", &["weftbook-measure"]),
    ("weftbook-plan", &["weftbook-record", "weftbook-measure"]),
    ("weftbook-sheet", &["weftbook-plan", "weftbook-record", "weftbook-measure"]),
    ("weftbook-format", &["weftbook-record", "weftbook-measure"]),
    ("weftbook-cli", &BELOW_THE_FACES),
    ("weftbook-web", &BELOW_THE_FACES),
    ("weftbook-tests", &BELOW_THE_FACES),
    ("xtask", &[]),
];

const BELOW_THE_FACES: [&str; 5] =
    ["weftbook-sheet", "weftbook-plan", "weftbook-record", "weftbook-measure", "weftbook-format"];

/// Arrows that do exist: when one is not seen, the reading of the graph is broken and no silence counts.
const SEEN: [(&str, &str); 4] = [
    ("weftbook-record", "weftbook-measure"),
    ("weftbook-plan", "weftbook-record"),
    ("weftbook-web", "weftbook-plan"),
    ("weftbook-cli", "weftbook-plan"),
];

/// Which member uses which.
pub fn edges(metadata: &Metadata) -> Edges {
    let graph = metadata.normal_edges();
    let member = |id: &str| metadata.members().find(|package| package.id == id).map(|package| package.name.clone());
    metadata
        .members()
        .map(|package| {
            let used = graph.get(package.id.as_str()).into_iter().flatten().filter_map(|id| member(id)).collect();
            (package.name.clone(), used)
        })
        .collect()
}

pub fn check(edges: &Edges) -> Vec<String> {
    let mut findings = Vec::new();
    for (room, used) in edges {
        let Some((_, allowed)) = ROOMS.iter().find(|(name, _)| name == room) else {
            findings.push(format!("{room} is not on the plan of rooms (tidy/arrows.rs)"));
            continue;
        };
        let wrong = used.iter().filter(|other| !allowed.contains(&other.as_str()));
        findings.extend(wrong.map(|other| format!("{room} must not use {other}")));
    }
    let gone = ROOMS.iter().filter(|(name, _)| !edges.contains_key(*name));
    findings.extend(gone.map(|(name, _)| format!("{name} is on the plan of rooms but not in the workspace")));
    let unseen = SEEN.iter().filter(|(from, to)| edges.get(*from).is_none_or(|used| !used.contains(*to)));
    findings.extend(unseen.map(|(from, to)| format!("{from} -> {to} was not seen: is the graph read right?")));
    findings
}

#[cfg(test)]
mod tests {
    use super::*;

    fn house() -> Edges {
        ROOMS.iter().map(|(room, used)| ((*room).to_owned(), used.iter().map(|r| (*r).to_owned()).collect())).collect()
    }

    #[test]
    fn the_plan_itself_passes() {
        assert_eq!(check(&house()), Vec::<String>::new());
    }

    #[test]
    fn an_arrow_the_wrong_way_is_found() {
        let mut edges = house();
        edges.get_mut("weftbook-record").unwrap().insert("weftbook-plan".to_owned());
        assert_eq!(check(&edges), ["weftbook-record must not use weftbook-plan"]);
    }

    #[test]
    fn a_new_or_missing_room_is_found() {
        let mut edges = house();
        edges.insert("weftbook-attic".to_owned(), BTreeSet::new());
        edges.remove("xtask");
        assert_eq!(check(&edges).len(), 2);
    }

    #[test]
    fn an_empty_graph_does_not_pass_for_a_clean_one() {
        let edges: Edges = house().into_keys().map(|room| (room, BTreeSet::new())).collect();
        assert_eq!(check(&edges).len(), SEEN.len());
    }
}
