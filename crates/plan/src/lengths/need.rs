//! Straight length a zone's look needs, against what the base and the weft have.
//!
//! What it is: the answer for each zone, first in one line. What it is not: how much weft (see `shopping`).

use measure::{
    quantity::{ArealNumberDensity, Length, units::ratio},
    say::{Arg, Say},
};
use record::{
    history::entry::Of,
    trade::{curl, heat::Medium},
    wig::{condition::Condition, figure::Figure, figures::Wig, zone::Zone},
    workshop::lots::Lot,
};

use super::{
    look::{Fall, ZoneLook},
    opened::Opened,
    rods::{Ask, RodChoice, rod},
    said::{Problem, said},
};
use crate::working::{Caution, Ground, Line, Weight, figure_line, line};

/// What everything in this folder is reckoned from.
#[derive(Clone, Copy, Debug)]
pub struct Lengths<'a> {
    /// The wig.
    pub wig: &'a Wig<'a>,
    /// As it is now.
    pub condition: &'a Condition,
    /// The workshop's lots.
    pub lots: &'a [Lot],
    /// Results of this bench.
    pub results: &'a [Opened],
    /// How full each zone is, in the order of the zones.
    pub full: &'a [ArealNumberDensity; 8],
    /// How it is to be heated.
    pub medium: Medium,
}

/// Whether it reaches.
#[derive(Clone, Debug, PartialEq)]
pub enum Reach {
    /// The base does; this much is to be cut to before setting, where it has more than is worth leaving on.
    Base {
        /// Straight length to cut to.
        cut_to: Option<Length>,
    },
    /// Only the weft does.
    Weft {
        /// The lot's name.
        lot: String,
        /// How long the base's own strands hang in this look.
        base_hangs: Length,
        /// Straight length to cut the weft to.
        cut_to: Option<Length>,
    },
    /// Neither does.
    Neither {
        /// How long the longer of the two hangs in this look.
        hangs: Length,
    },
}

/// What a zone needs.
#[derive(Clone, Debug, PartialEq)]
pub struct ZoneNeed {
    /// Its look.
    pub look: ZoneLook,
    /// Straight length of its longest strands.
    pub straight: Length,
    /// Straight length of its shortest layer, where said.
    pub shortest: Option<Length>,
    /// What the base has there now.
    pub has: Figure<Length>,
    /// Whether it reaches.
    pub reach: Reach,
    /// The rod, where it is curled.
    pub rod: Option<RodChoice>,
    /// The answer in one line.
    pub headline: Say,
    /// The working.
    pub working: Vec<Line>,
    /// Cautions.
    pub cautions: Vec<Caution>,
}

/// A curl narrower than this share of a tested one, or as much wider, is another curl. Our own judgement.
const ALIKE: f64 = 0.75;

/// What a zone needs.
///
/// # Errors
/// The field that cannot be.
pub fn need(of: &Lengths<'_>, zone: Zone) -> Result<ZoneNeed, Problem> {
    let look = ZoneLook::of(of.wig, zone)?;
    let mut has = of.wig.longest(zone);
    // What was cut since is not there any more.
    if let Some(left) = of.condition.zone(zone).longest
        && left < has.likely
    {
        has = Figure { low: left, likely: left, high: left, origin: has.origin };
    }
    let straight = look.straight(look.hangs.likely);
    let shortest = look.shortest.map(|shortest| look.straight(shortest));
    let weft = of
        .lots
        .iter()
        .filter(|lot| of.wig.main_lot().map_or(of.wig.uses_lot(lot.id), |main| main == lot.id))
        .max_by(|one, other| one.hanging.likely.value.total_cmp(&other.hanging.likely.value));
    let trim = Length::new::<measure::quantity::units::meter>(curl::TRIM.unit.to_base(curl::TRIM.likely));
    let cut = |have: Length| (have > straight + trim * 2.0).then_some(straight + trim);
    // A hair's breadth short is not short: what a tape shows.
    let enough = |have: Length| have >= straight * 0.995;
    let name = Arg::Key(zone.label());
    let mut cautions = Vec::new();
    let best = match weft {
        Some(lot) if lot.hanging.likely > has.likely => lot.hanging.likely,
        _ => has.likely,
    };
    let (reach, headline) = match weft {
        _ if enough(has.likely) => {
            let cut_to = cut(has.likely);
            let headline = match cut_to {
                Some(to) => Say::new(
                    "lengths.cut_to",
                    [name.clone(), Arg::Length(straight), Arg::Length(has.likely), Arg::Length(to)],
                ),
                None => Say::new("lengths.reaches", [name.clone(), Arg::Length(straight), Arg::Length(has.likely)]),
            };
            if !enough(has.low) && look.hangs.origin.is_said() {
                cautions.push(Caution {
                    weight: Weight::Care,
                    what: Say::new("lengths.may_be_short", [name.clone(), Arg::Length(has.low), Arg::Length(straight)]),
                    remedy: Say::key("lengths.may_be_short_do"),
                });
            }
            (Reach::Base { cut_to }, headline)
        }
        Some(lot) if enough(lot.hanging.likely) => {
            let base_hangs = look.hangs_of(has.likely);
            let headline = Say::new(
                "lengths.needs_weft",
                [
                    name.clone(),
                    Arg::Length(straight),
                    Arg::Length(has.likely),
                    Arg::Text(lot.name.clone()),
                    Arg::Length(lot.hanging.likely),
                    Arg::Length(base_hangs),
                ],
            );
            (Reach::Weft { lot: lot.name.clone(), base_hangs, cut_to: cut(lot.hanging.likely) }, headline)
        }
        _ => {
            let hangs = look.hangs_of(best);
            let headline = Say::new(
                "lengths.too_short",
                [name.clone(), Arg::Length(straight), Arg::Length(best), Arg::Length(hangs)],
            );
            (Reach::Neither { hangs }, headline)
        }
    };
    // A test curl of another width is stretched to this one: say so.
    let tested = said::<Length>(of.wig, "test_curl", Of::Wig).filter(|_| look.test.is_some());
    if let (Some(tested), Some(wanted)) = (tested, look.fall.diameter()) {
        let times = (wanted.likely / tested.likely).get::<ratio>();
        if !(ALIKE..=1.0 / ALIKE).contains(&times) {
            cautions.push(Caution {
                weight: Weight::Care,
                what: Say::new("lengths.test_other", [name, Arg::Gap(wanted.likely), Arg::Gap(tested.likely)]),
                remedy: Say::key("lengths.test_other_do"),
            });
        }
    }
    let mut working = vec![figure_line(Say::key("field.look_length"), &look.hangs, Arg::Length), sum(&look, straight)];
    if let Some(shortest) = shortest {
        working.push(line(Say::key("lengths.shortest"), Say::new("plan.just", [Arg::Length(shortest)])));
    }
    working.push(figure_line(Say::key("lengths.base_has"), &has, Arg::Length));
    let ask = Ask { wig: of.wig, medium: of.medium, results: of.results, full: of.full[zone as usize] };
    // What lies above the curl's start stays off the rod; what is not there cannot be wound.
    let there = if best < straight { best } else { straight };
    let on_rod = if there > look.start { there - look.start } else { trim };
    let rod = rod(&ask, &look, on_rod)?;
    if let Some(rod) = &rod {
        working.extend(rod.working.iter().cloned());
        cautions.extend(rod.cautions.iter().cloned());
    }
    Ok(ZoneNeed { look, straight, shortest, has, reach, rod, headline, working, cautions })
}

fn sum(look: &ZoneLook, straight: Length) -> Line {
    let name = Say::key("lengths.straight");
    let (start, curled) = (Arg::Length(look.start), Arg::Length(look.hangs.likely - look.start));
    let sum = match (&look.fall, look.test) {
        (Fall::Straight, _) => Say::new("plan.just", [Arg::Length(straight)]),
        (_, Some(test)) => {
            let args = [start, curled, Arg::Length(test.straight), Arg::Length(test.hangs), Arg::Length(straight)];
            return Line { name, sum: Say::new("lengths.straight_test", args), ground: Ground::Said };
        }
        (Fall::Wave { diameter, wave }, None) => Say::new(
            "lengths.straight_wave",
            [start, curled, Arg::Gap(diameter.likely), Arg::Number(wave.share(), 2), Arg::Length(straight)],
        ),
        (Fall::Curl { diameter, pitch, helix }, None) => Say::new(
            "lengths.straight_curl",
            [
                start,
                curled,
                Arg::Gap(diameter.likely),
                Arg::Gap(*pitch),
                Arg::Number(helix.share(), 2),
                Arg::Length(straight),
            ],
        ),
    };
    line(name, sum)
}
