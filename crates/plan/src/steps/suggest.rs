//! The steps this wig needs.
//!
//! What it is: one function a group of steps, each from figures that stand. What it is not: whether they are planned already
//! (see `missing`).

use measure::{
    order,
    prefs::Prefs,
    quantity::{Length, Time, units},
    typed::Typed,
    unit::Unit,
};
use record::{
    field::Value,
    history::entry::Of,
    id::LotId,
    trade::heat::{Medium, Suits, window},
    wig::{
        condition::Condition,
        figures::Wig,
        work::{Work, kind_named},
        zone::{Zone, Zones},
    },
};

use super::order::{GLUED_EDGE, rank};
use crate::{
    dome::Section,
    hairline::Purpose,
    layout::none,
    pace::Paces,
    shopping::{Answer, For},
};

/// States of a base that ask for a wash first.
const WASH_FIRST: &[&str] = &["worn_before", "needs_care"];
/// How fibre falls that is straightened before weft goes in.
const NOT_STRAIGHT: &[&str] = &["wavy", "curly", "crimped"];
/// What holds a wig of each cap, where nobody said; common practice, no source.
const ANCHORS: &[(&str, &str)] = &[
    ("open_wefted", "clips"),
    ("wefted_lace_front", "clips"),
    ("wefted_closed_top", "clips"),
    ("fully_knotted", "pin_points"),
];
/// Fibre that is too long by less than this is not cut.
const TOO_LONG: f64 = 0.01;

/// The steps in an order that works; `answer` gives the weft, which leaves out what is sewn. With `paces` each step carries
/// the minutes it will likely take; without, the time of a step is asked of [`Paces::time`] when it is shown, and recording
/// the step as planned claims no time that nobody took.
pub fn suggest(wig: &Wig<'_>, answer: Option<&Answer>, paces: Option<&Paces>) -> Vec<Work> {
    let mut steps = Steps { all: Vec::new(), paces };
    let condition = Condition::now(wig);
    prepare(&mut steps, wig, &condition);
    if let Some(answer) = answer {
        weft(&mut steps, wig, answer);
    }
    edges(&mut steps, wig);
    cut(&mut steps, wig, &condition);
    finish(&mut steps, wig);
    order::sort_by(&mut steps.all, &|(a, _), (b, _)| a.cmp(b));
    steps.all.into_iter().map(|(_, work)| work).collect()
}

/// The weft still to sew, each piece as the work it will be: the rows in the answer's order, then edge and parting.
pub fn sewing(wig: &Wig<'_>, answer: &Answer) -> Vec<Work> {
    let mut steps = Steps { all: Vec::new(), paces: None };
    weft(&mut steps, wig, answer);
    steps.all.into_iter().map(|(_, work)| work).collect()
}

/// Steps with their places in the order.
struct Steps<'a> {
    all: Vec<(u32, Work)>,
    paces: Option<&'a Paces>,
}

impl Steps<'_> {
    /// Adds a step at its own place and says which that is.
    fn add(&mut self, kind: &str, texts: &[(&str, &str)]) -> Option<u32> {
        self.add_at(None, kind, texts)
    }

    fn add_at(&mut self, place: Option<u32>, kind: &str, texts: &[(&str, &str)]) -> Option<u32> {
        let kind = kind_named(kind)?;
        // Every text is one that its field writes: the tests ask that no step is lost here.
        let read = |texts: &[(&str, &str)]| Work::read(kind, texts.iter().copied(), &Prefs::default()).ok();
        let mut work = read(texts)?;
        if let Some(span) = self.paces.and_then(|paces| paces.time(&work)) {
            let minutes = minutes(span.likely);
            let timed: Vec<(&str, &str)> = texts.iter().copied().chain([("minutes", minutes.as_str())]).collect();
            work = read(&timed).unwrap_or(work);
        }
        let place = place.unwrap_or_else(|| rank(&work));
        self.all.push((place, work));
        Some(place)
    }

    /// Drying right after what wetted it.
    fn dry(&mut self, after: Option<u32>) {
        self.add_at(after.map(|place| place + 1), "dry", &[("dry_way", "air"), ("left", "dry_through")]);
    }
}

fn prepare(steps: &mut Steps<'_>, wig: &Wig<'_>, condition: &Condition) {
    steps.add("base", &[]);
    let block = steps.add("block", &[]);
    let mut dries = false;
    if asks_for_a_wash(wig) {
        let wash = steps.add("wash", &[("washed_with", "mild_shampoo")]);
        steps.dry(wash);
        dries = true;
    }
    let zones = condition.zones_where(|zone| zone.texture.is_some_and(|texture| NOT_STRAIGHT.contains(&texture)));
    if let Some((medium, heat)) = straightens(wig)
        && let Some(zones) = texts_of(&zones)
    {
        let place = steps.add("straighten", &[("medium", medium.name()), ("temperature", &heat), ("zones", &zones)]);
        if medium.wet() {
            steps.dry(place);
            dries = true;
        }
    }
    if !dries && condition.zones.iter().any(|zone| zone.wet) {
        steps.dry(block);
    }
}

/// Whether the base came in a state that asks for a wash, and had none since.
fn asks_for_a_wash(wig: &Wig<'_>) -> bool {
    let works = wig.state().works();
    let came = works.iter().rposition(|done| done.work.choice("condition").is_some());
    let Some((base, since)) = came.and_then(|at| works.get(at..)).and_then(<[_]>::split_first) else { return false };
    base.work.choice("condition").is_some_and(|state| WASH_FIRST.contains(&state))
        && since.iter().all(|done| !matches!(done.work.kind().name, "wash" | "disinfect"))
}

/// The gentlest way of heating that sets this fibre, and how hot: likely, never above the fibre's limit or the label. Where
/// every way wants a test lock first, the coolest that is worth a try.
fn straightens(wig: &Wig<'_>) -> Option<(Medium, String)> {
    let all = Medium::ALL.map(|medium| (medium, window(wig.fibre(), medium)));
    let sets = all.iter().find_map(|(medium, window)| match &window.suits {
        Suits::Sets(range) => Some((*medium, range.unit.to_base(range.likely), window.limit)),
        _ => None,
    });
    let tries = all.iter().find_map(|(medium, window)| match &window.suits {
        Suits::AfterTest(range) => Some((*medium, range.unit.to_base(range.low), window.limit)),
        _ => None,
    });
    let (medium, heat, limit) = sets.or(tries)?;
    let label = wig.held("label_heat", Of::Wig).and_then(|held| held.value.as_ref()?.typed()?.temperature());
    let heat = heat.min(limit.unit.to_base(limit.likely)).min(label.map_or(f64::INFINITY, |label| label.value));
    let degrees = libm::floor(Unit::Celsius.from_base(heat) + 1e-6);
    Some((medium, Typed::plain(degrees, Unit::Celsius).text().to_owned()))
}

fn weft(steps: &mut Steps<'_>, wig: &Wig<'_>, answer: &Answer) {
    let prepared = &answer.likely.prepared;
    // What is recorded is weft as it comes from the pack: a single is half of a double.
    let share = if prepared.parted { 0.5 } else { 1.0 };
    let rows = &prepared.placement.rows;
    let fold = if rows.is_empty() { none() } else { prepared.amounts.folds / rows.len() as f64 };
    for (index, row) in rows.iter().enumerate() {
        let section = match row.section {
            Section::BackAndSides => "back_and_sides",
            Section::Top => "top",
        };
        let zone = match row.zones.as_slice() {
            [(zone, _)] => zone.name(),
            _ => "",
        };
        steps.add(
            "sew_weft",
            &[
                ("sewn_as", "row"),
                ("length", &centimetres((row.length + fold) * share)),
                ("lot", &lot_of(answer, index).to_string()),
                ("section", section),
                ("place", &millimetres(row.at)),
                ("zone", zone),
            ],
        );
    }
    let glued = (wig.hairline() == "glued_strip").then_some(GLUED_EDGE + 1);
    for piece in &prepared.edge {
        let (sewn_as, place) = match piece.purpose {
            Purpose::Hairline => ("hairline", glued),
            Purpose::Parting => ("parting", None),
        };
        // Two singles of one double are two rows, each recorded with its half of what came off the pack.
        let length = centimetres(piece.length * share / piece.serves.max(1) as f64);
        let lot = prepared.main.to_string();
        for _ in 0..piece.serves {
            steps.add_at(place, "sew_weft", &[("sewn_as", sewn_as), ("length", &length), ("lot", &lot)]);
        }
    }
}

/// The lot that a row begins with, as the weft is laid out.
fn lot_of(answer: &Answer, row: usize) -> LotId {
    let serves = |piece: &crate::shopping::LaidPiece| piece.purpose == For::Row(row) || piece.rows.contains(&row);
    let laid = answer.laid.iter().find(|weft| weft.pieces.iter().any(serves));
    laid.map_or(answer.likely.prepared.main, |weft| weft.lot)
}

/// Edges made otherwise than by sewing weft.
fn edges(steps: &mut Steps<'_>, wig: &Wig<'_>) {
    match wig.hairline() {
        "glued_strip" => {
            steps.add("edge", &[("edge", "hairline"), ("edge_way", "glued_strip")]);
        }
        "lace" => {
            steps.add("edge", &[("edge", "hairline"), ("edge_way", "knotted")]);
            steps.add("edge", &[("edge", "hairline"), ("edge_way", "lace_trimmed")]);
        }
        _ => {}
    }
    if wig.parting().kind == "insert" {
        steps.add("edge", &[("edge", "parting"), ("edge_way", "insert")]);
    }
}

/// Cutting where the look is shorter than the fibre is now, zones of one length together.
fn cut(steps: &mut Steps<'_>, wig: &Wig<'_>, condition: &Condition) {
    let mut lengths: Vec<(String, Vec<Zone>)> = Vec::new();
    for zone in Zone::ALL {
        let look = wig.look_length(zone).likely;
        let now = condition.zone(zone).longest.unwrap_or(wig.longest(zone).likely);
        let Some(said) = wig.held("look_length", Of::Zone(zone)).and_then(|held| held.value.as_ref()) else { continue };
        if (now - look).get::<units::meter>() < TOO_LONG {
            continue;
        }
        let said = Value::text(said);
        match lengths.iter_mut().find(|(length, _)| *length == said) {
            Some((_, zones)) => zones.push(zone),
            None => lengths.push((said, vec![zone])),
        }
    }
    for (length, zones) in lengths {
        if let Some(zones) = texts_of(&zones) {
            steps.add("cut", &[("hair_length", &length), ("zones", &zones)]);
        }
    }
}

fn finish(steps: &mut Steps<'_>, wig: &Wig<'_>) {
    steps.add("fitting", &[("fit", "fits")]);
    steps.add("dress", &[("dressed_with", "comb")]);
    if let Some((_, anchor)) = ANCHORS.iter().find(|(cap, _)| *cap == wig.cap().name) {
        steps.add("anchor", &[("anchor", anchor)]);
    }
    // A wig that must be ready on a day for somebody goes there; any other is put away.
    let whom: String = wig.character().chars().take(120).collect();
    if wig.due().is_some() && !whom.trim().is_empty() {
        steps.add("hand_over", &[("handed_to", &whom)]);
    } else {
        steps.add("store", &[("stored", "on_block")]);
    }
}

/// Zones as a field reads them; nothing where there are none.
fn texts_of(zones: &[Zone]) -> Option<String> {
    let (first, rest) = zones.split_first()?;
    Some(rest.iter().fold(Zones::one(*first), |zones, zone| zones.and(*zone)).to_string())
}

fn centimetres(length: Length) -> String {
    let tenths = libm::round(length.get::<units::centimeter>() * 10.0) / 10.0;
    Typed::plain(tenths, Unit::Centimetre).text().to_owned()
}

fn millimetres(length: Length) -> String {
    Typed::plain(libm::round(length.get::<units::millimeter>()), Unit::Millimetre).text().to_owned()
}

fn minutes(time: Time) -> String {
    Typed::plain(libm::round(time.get::<units::minute>()).max(1.0), Unit::Minute).text().to_owned()
}
