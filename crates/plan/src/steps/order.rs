//! Which work comes before which.
//!
//! What it is: one table. What it is not: why: the checks before a step say that.

use record::wig::{figures::Wig, work::Work};

/// A row of the order.
#[derive(Debug)]
struct Row {
    kind: &'static str,
    /// Only where a field has this choice.
    only: Option<(&'static str, &'static str)>,
    rank: u32,
}

const fn row(kind: &'static str, rank: u32) -> Row {
    Row { kind, only: None, rank }
}

const fn only(kind: &'static str, field: &'static str, choice: &'static str, rank: u32) -> Row {
    Row { kind, only: Some((field, choice)), rank }
}

/// The place of an edge that is glued.
pub(super) const GLUED_EDGE: u32 = 240;

/// The order of the bench; common practice, no source. What dries comes right after what wetted it. Cut roughly before colour,
/// so that no coloured ends are cut off, and before curl; set after the last hot bath; glue after heat and water.
#[rustfmt::skip]
const ORDER: &[Row] = &[
    row("base", 10),
    row("measure", 20),
    row("block", 30),
    row("test_lock", 40),
    row("disinfect", 50),
    row("wash", 60),
    row("straighten", 70),
    row("unpick", 80),
    only("sew_weft", "sewn_as", "row", 100),
    row("refront", 110),
    only("sew_weft", "sewn_as", "parting", 120),
    only("edge", "edge", "parting", 130),
    only("edge", "edge_way", "glued_strip", GLUED_EDGE),
    only("edge", "edge_way", "lace_trimmed", 260),
    row("sew_weft", 140),
    row("edge", 150),
    row("cut", 160),
    row("colour_lock", 165),
    row("dye", 170),
    row("rinse", 180),
    row("dry", 190),
    row("gather", 200),
    row("heat_set", 210),
    row("release", 220),
    row("glue", 250),
    row("fitting", 270),
    row("product", 280),
    row("dress", 290),
    row("accessory", 300),
    row("anchor", 310),
    row("wig_prep", 320),
    row("worn", 330),
    row("reset", 340),
    row("repair", 350),
    row("hand_over", 360),
    row("store", 370),
    row("photo", 380),
    row("note", 380),
    row("count", 380),
    row("count_dye", 390),
];

/// Where work stands in the order: smaller is earlier.
pub fn rank(work: &Work) -> u32 {
    let fits = |row: &&Row| {
        row.kind == work.kind().name && row.only.is_none_or(|(field, choice)| work.choice(field) == Some(choice))
    };
    ORDER.iter().find(fits).map_or(u32::MAX, |row| row.rank)
}

/// Where each of several pieces of work stands that follow one another on a wig: what dries belongs to what wetted it, and
/// weft for a glued edge to that edge.
pub(super) fn ranks<'a>(wig: &Wig<'_>, works: impl IntoIterator<Item = &'a Work>) -> Vec<u32> {
    let glued = wig.hairline() == "glued_strip";
    let mut ranks: Vec<u32> = Vec::new();
    for work in works {
        let own = match (work.kind().name, work.choice("sewn_as"), ranks.last()) {
            ("dry", _, Some(before)) => before.saturating_add(1),
            ("sew_weft", Some("hairline"), _) if glued => GLUED_EDGE + 1,
            _ => rank(work),
        };
        ranks.push(own);
    }
    ranks
}

#[cfg(test)]
mod tests {
    use record::wig::work::KINDS;

    use super::*;

    #[test]
    fn every_kind_has_its_place() {
        for kind in KINDS {
            assert!(ORDER.iter().any(|row| row.kind == kind.name && row.only.is_none()), "{}", kind.name);
        }
        for row in ORDER {
            let kind = record::wig::work::kind_named(row.kind).expect("a kind");
            if let Some((field, choice)) = row.only {
                let field = kind.field(field).expect("a field");
                assert!(
                    matches!(field.holds, record::field::Holds::Choice(choices) if choices.contains(&choice)),
                    "{choice}"
                );
            }
        }
    }
}
