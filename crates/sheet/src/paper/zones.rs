//! Zone by zone: how full and how long it is and shall be.
//!
//! What it is: figures of the answer beside the zone's condition. What it is not: their reckoning.

use measure::{quantity::units::square_centimeter, say::Arg};
use record::wig::condition::Condition;

use super::{
    Cap, Facts,
    model::{Block, Sort},
    now::zone_words,
    scribe::{Scribe, figure, line},
};

/// The part.
pub(super) fn zones(
    facts: &Facts<'_>,
    cap: Cap<'_>,
    condition: &Condition,
    scribe: &Scribe<'_>,
    blocks: &mut Vec<Block>,
) {
    blocks.push(Block::Heading(scribe.key("sheet.zones")));
    for zone in cap.fullness.zones.iter().filter(|zone| zone.area.get::<square_centimeter>() > 0.0) {
        let of = zone.zone;
        let reached = facts.answer.map_or(zone.now(), |answer| answer.reached[of as usize]);
        let full = [zone.now(), zone.target, reached].map(Arg::Fullness);
        let wig = facts.bench.wig;
        let length = [wig.shortest(of).likely, wig.longest(of).likely, zone.look_length].map(Arg::Length);
        let lines = vec![
            figure(scribe.key("sheet.zone_full"), scribe.with("sheet.now_wanted_plan", full)),
            figure(scribe.key("sheet.zone_length"), scribe.with("sheet.from_to_wanted", length)),
            line(Sort::Plain, zone_words(condition.zone(of), scribe)),
        ];
        blocks.push(Block::Item(scribe.key(of.label()), lines));
    }
}
