//! Which rod makes a finished curl, and how the lock lies on it.
//!
//! What it is: spring-back, winding and the usual sizes. What it is not: heat.

use core::f64::consts::PI;

use measure::{
    quantity::{
        Area, ArealNumberDensity, Length,
        units::{kilogram_per_meter, meter, millimeter, per_square_meter, square_meter},
    },
    say::{Arg, Say},
};
use record::{
    history::entry::Of,
    trade::{curl, heat::Medium, soaking},
    wig::{figure::Figure, figures::Wig},
};

use super::{
    look::{Fall, ZoneLook},
    opened::{self, Opened},
    roller::Wound,
    said::{Problem, choice, figure, said},
};
use crate::working::{Caution, Ground, Line, Weight, figure_line, line};

/// How a lock lies on its rod.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Winding {
    /// Over itself, from the points.
    FromPoints,
    /// In a spiral, turn beside turn.
    Spiral,
    /// A coil without a rod.
    Pinned,
    /// A flat ribbon, turn beside turn.
    Flat,
}

impl Winding {
    /// Its name in files.
    pub fn name(self) -> &'static str {
        match self {
            Winding::FromPoints => "from_points",
            Winding::Spiral => "spiral",
            Winding::Pinned => "pinned_curl",
            Winding::Flat => "flat_wrap",
        }
    }

    /// That of a wig: as said, else from the points, and flat round an iron.
    pub fn of(wig: &Wig<'_>, medium: Medium) -> Winding {
        match choice(wig, "winding", Of::Wig) {
            Some("spiral") => Winding::Spiral,
            Some("pinned_curl") => Winding::Pinned,
            Some("flat_wrap") => Winding::Flat,
            None if medium == Medium::Iron => Winding::Flat,
            _ => Winding::FromPoints,
        }
    }
}

/// A section of hair on one rod.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// Along the rod.
    pub width: Figure<Length>,
    /// Across.
    pub depth: Figure<Length>,
    /// Room its fibres take, packed as usual.
    pub room: Area,
}

impl Section {
    /// The section of a wig for a rod in a zone so full.
    pub fn of(wig: &Wig<'_>, winding: Winding, rod: Option<Length>, full: ArealNumberDensity) -> Section {
        let of = Of::Wig;
        let roller = winding == Winding::FromPoints && rod.is_some();
        let width: Figure<Length> =
            figure(wig, "section_width", of, if roller { &curl::ROLLER } else { &curl::STRAND });
        let depth = said(wig, "section_depth", of).unwrap_or_else(|| match rod {
            // Common practice: a section as deep as its roller is thick.
            Some(rod) if roller => Figure { low: rod, likely: rod, high: rod, ..Figure::assumed(&curl::ROLLER) },
            _ => Figure::assumed(&curl::STRAND),
        });
        let fibre = soaking::stuff_of(wig.fibre().name);
        let strands = full.get::<per_square_meter>() * width.likely.get::<meter>() * depth.likely.get::<meter>();
        let each = wig.fineness().likely.get::<kilogram_per_meter>() / fibre.density;
        Section { width, depth, room: Area::new::<square_meter>(strands * each / soaking::PACKED.likely) }
    }

    /// How thick a turn is that spreads over the width.
    pub fn build_up(&self) -> Length {
        self.room / self.width.likely
    }

    /// How thick it is drawn together round.
    pub fn round(&self) -> Length {
        Length::new::<meter>(2.0 * libm::sqrt(self.room.get::<square_meter>() / PI))
    }
}

/// A rod for a zone.
#[derive(Clone, Debug, PartialEq)]
pub struct RodChoice {
    /// The rod that would just do.
    pub ideal: Length,
    /// The rod to take: the next usual size that is no larger, or the one that was said.
    pub rod: Length,
    /// Whether it was said.
    pub said: bool,
    /// The curl to expect: lowest, likely, highest.
    pub comes_out: [Length; 3],
    /// The next usual size above, and its likely curl.
    pub larger: Option<(Length, Length)>,
    /// Turns on the rod.
    pub turns: f64,
    /// From rod to outside.
    pub thickness: Length,
    /// Its section.
    pub section: Section,
    /// The working.
    pub working: Vec<Line>,
    /// Cautions.
    pub cautions: Vec<Caution>,
}

/// What rods are chosen by.
#[derive(Clone, Copy, Debug)]
pub struct Ask<'a> {
    /// The wig.
    pub wig: &'a Wig<'a>,
    /// How it is heated.
    pub medium: Medium,
    /// Results of this bench.
    pub results: &'a [Opened],
    /// How full the zone is.
    pub full: ArealNumberDensity,
}

/// The straight length on the rod and how thick it lies, for a rod.
fn wound(winding: Winding, section: &Section, rod: Length, length: Length) -> Option<(f64, Length)> {
    match winding {
        Winding::FromPoints => {
            Wound::new(rod, section.build_up(), length).map(|wound| (wound.turns(), wound.thickness()))
        }
        Winding::Spiral | Winding::Pinned => {
            let thick = section.round();
            Some((length.get::<meter>() / (PI * (rod + thick).get::<meter>()), thick))
        }
        Winding::Flat => {
            let thick = section.build_up();
            Some((length.get::<meter>() / (PI * (rod + thick).get::<meter>()), thick))
        }
    }
}

/// The rod for a zone's look, wound with so much straight length; nothing for a straight one.
///
/// # Errors
/// A rod that was said and round which the lock does not go.
pub fn rod(ask: &Ask<'_>, look: &ZoneLook, length: Length) -> Result<Option<RodChoice>, Problem> {
    let Some(finished) = look.fall.diameter() else { return Ok(None) };
    let winding = Winding::of(ask.wig, ask.medium);
    let own = opened::own(ask.wig, ask.results, ask.medium);
    let table = curl::opens(ask.wig.fibre(), ask.medium);
    let share = |percent: f64| 1.0 + table.unit.to_base(percent);
    let opens = own.map_or([share(table.low), share(table.likely), share(table.high)], |(times, _)| times);
    // Own results compare curl and bare rod, so the lock's own thickness is in them already.
    let on_rod = |rod: Length, section: &Section| -> Length {
        let thick = wound(winding, section, rod, length).map_or(rod * 0.0, |(_, thick)| thick);
        if own.is_some() { rod } else { rod + thick }
    };
    let wanted = finished.likely / opens[1];
    // A section is as deep as its rod is thick, so the two are found together.
    let mut ideal = wanted;
    for _ in 0..6 {
        let section = Section::of(ask.wig, winding, Some(ideal), ask.full);
        let thick = on_rod(ideal, &section) - ideal;
        ideal = if wanted > thick * 2.0 { wanted - thick } else { wanted / 2.0 };
    }
    let at = |size: f64| Length::new::<millimeter>(size);
    let of = Of::Zone(look.zone);
    let said_rod = said::<Length>(ask.wig, "rod", of);
    // A hundredth over is no other rod.
    let fits = |size: &&f64| at(**size) <= ideal * 1.01;
    let usual = curl::RODS.iter().rev().find(fits).or(curl::RODS.first()).map_or(ideal, |size| at(*size));
    let rod = said_rod.as_ref().map_or(usual, |rod| rod.likely);
    let section = Section::of(ask.wig, winding, Some(rod), ask.full);
    let expect = |rod: Length, section: &Section| opens.map(|times| on_rod(rod, section) * times);
    let (turns, thickness) = wound(winding, &section, rod, length).unwrap_or((0.0, section.build_up()));
    let turns = if winding == Winding::Pinned { length.get::<meter>() / (PI * rod.get::<meter>()) } else { turns };
    if turns < 1.0 && said_rod.is_some() {
        return Err(Problem::new(
            "rod",
            of,
            "lengths.rod_too_thick",
            [Arg::Gap(rod), Arg::Length(length), Arg::Gap(length / PI)],
        ));
    }
    let larger = curl::RODS
        .iter()
        .find(|size| at(**size) > rod * 1.001)
        .map(|size| (at(*size), expect(at(*size), &Section::of(ask.wig, winding, Some(at(*size)), ask.full))[1]));
    let mut cautions = Vec::new();
    let mut caution = |key, args: Vec<Arg>, remedy| {
        cautions.push(Caution { weight: Weight::Consider, what: Say::new(key, args), remedy: Say::key(remedy) });
    };
    let least = if matches!(look.fall, Fall::Curl { .. }) { &curl::TURNS_CURL } else { &curl::TURNS_WAVE };
    if turns < least.likely {
        caution(
            "lengths.few_turns",
            vec![Arg::Key(look.zone.label()), Arg::Number(turns, 1), Arg::Number(least.likely, 1)],
            "lengths.few_turns_do",
        );
    }
    if said_rod.is_none() && rod > ideal * 1.01 {
        caution(
            "lengths.rod_below_all",
            vec![Arg::Key(look.zone.label()), Arg::Gap(ideal)],
            "lengths.rod_below_all_do",
        );
    }
    if matches!(look.fall, Fall::Wave { .. }) {
        caution("lengths.wave_on_rods", vec![Arg::Key(look.zone.label())], "lengths.wave_on_rods_do");
    }
    let ground = if own.is_some() { Ground::Said } else { Ground::Assumed { source: table.source, sure: table.sure } };
    let percent = |times: f64| Arg::Percent(times - 1.0);
    let working = vec![
        figure_line(Say::key("field.curl_diameter"), finished, Arg::Gap),
        Line {
            name: Say::key("lengths.opens"),
            sum: Say::new("plan.likely_range", [percent(opens[1]), percent(opens[0]), percent(opens[2])]),
            ground,
        },
        figure_line(Say::key("field.section_width"), &section.width, Arg::Gap),
        figure_line(Say::key("field.section_depth"), &section.depth, Arg::Gap),
        line(
            Say::key("lengths.rod"),
            Say::new(
                "lengths.rod_sum",
                [
                    Arg::Gap(finished.likely),
                    percent(opens[1]),
                    tenths(on_rod(rod, &section) - rod),
                    tenths(ideal),
                    tenths(rod),
                ],
            ),
        ),
        line(
            Say::key("lengths.wound"),
            Say::new("lengths.wound_sum", [Arg::Length(length), tenths(rod), Arg::Number(turns, 1), tenths(thickness)]),
        ),
    ];
    Ok(Some(RodChoice {
        ideal,
        rod,
        said: said_rod.is_some(),
        comes_out: expect(rod, &section),
        larger,
        turns,
        thickness,
        section,
        working,
        cautions,
    }))
}

/// A small length to a tenth of a millimetre, or hundredths of an inch.
pub fn tenths(length: Length) -> Arg {
    Say::new("lengths.tenths", [Arg::Number(length.get::<millimeter>(), 1)]).into()
}

/// How full a zone is taken to be where its layout is not known, strands on the area.
pub fn usual_fullness() -> ArealNumberDensity {
    let fact = record::trade::defaults::HUNDRED_PERCENT;
    ArealNumberDensity::new::<per_square_meter>(fact.unit.to_base(fact.likely))
}
