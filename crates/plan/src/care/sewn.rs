//! Weft that cannot have been sewn where it is said to be; strands that cannot be in one zone.
//!
//! What it is: lengths held against the dome. What it is not: advice on bulk (see `wefts`).

use measure::{
    quantity::Length,
    say::{Arg, Say},
};
use record::{
    history::entry::{Key, Of},
    wig::{
        figures::Wig,
        work::{Refusal, Work, sew_weft::SewWeft},
        zone::Zone,
    },
};

use crate::{
    dome::Section,
    inputs::Corner,
    layout::{self, none},
};

/// A row may be this much longer than its place on the dome: the dome is good to about 8 %, and ends are folded.
const LONGER: f64 = 1.25;

/// Refuses a row longer than the zone or the place it is sewn in.
pub(super) fn check(wig: &Wig<'_>, work: &Work) -> Result<(), Refusal> {
    let Some(weft) = SewWeft::of(work) else { return Ok(()) };
    if weft.sewn_as != "row" {
        return Ok(());
    }
    let refused = |field: &str, say| Err(Refusal { field: field.to_owned(), say });
    // A head that cannot be is told at its own fields.
    let Ok(dome) = layout::dome(wig, &Corner::likely()) else { return Ok(()) };
    let section = weft.section.map(|name| if name == "top" { Section::Top } else { Section::BackAndSides });
    if let (Some(section), Some(place)) = (section, weft.place) {
        let whole = dome.section_length(section);
        let Some(row) = dome.row(section, place) else {
            return refused("place", Say::new("plan.place_beyond", [Arg::Length(place), Arg::Length(whole)]));
        };
        if weft.length > row.length() * LONGER {
            let says = [Arg::Length(weft.length), Arg::Length(row.length())];
            return refused("length", Say::new("plan.row_too_long", says));
        }
        return Ok(());
    }
    if let Some(zone) = weft.zone {
        let longest = longest_in(&dome, zone);
        if weft.length > longest * LONGER {
            let says = [Arg::Length(weft.length), Arg::Key(zone.label()), Arg::Length(longest)];
            return refused("length", Say::new("plan.row_longer_than_zone", says));
        }
    }
    Ok(())
}

fn longest_in(dome: &crate::dome::Dome, zone: Zone) -> Length {
    let spacing = Length::new::<measure::quantity::units::millimeter>(10.0);
    [Section::BackAndSides, Section::Top]
        .into_iter()
        .flat_map(|section| dome.rows_evenly(section, spacing))
        .map(|row| row.length_in(zone))
        .fold(none(), |most, one| if one > most { one } else { most })
}

/// Refuses a shortest strand longer than the longest of its zone, and the other way round.
pub(super) fn lengths(wig: &Wig<'_>, key: Key) -> Result<(), Say> {
    let (Of::Zone(zone), "shortest" | "longest") = (key.of, key.slot) else { return Ok(()) };
    let (short, long) = (wig.shortest(zone), wig.longest(zone));
    if short.origin.is_said() && long.origin.is_said() && short.likely > long.likely {
        return Err(Say::new("plan.shortest_longer", [Arg::Length(short.likely), Arg::Length(long.likely)]));
    }
    Ok(())
}
