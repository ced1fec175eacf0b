//! Which colour goes on first, and which part of the hair gets wet in which bath.
//!
//! What it is: baths from light to dark; a bath may run over what is dyed darker after it, never over what is done.
//! What it is not: amounts (see `amounts`), or where the water stands (see `level`).

use record::wig::zone::Zone;

use crate::colour::{Absorbs, Light, differ::ciede2000, reach, reach::nests};

/// How the part of a zone is brought into a bath.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Way {
    /// All of it.
    Whole,
    /// The ends hang in, up to the water line.
    EndsDown,
    /// Cap and roots go in, the ends are held up and dry.
    RootsDown,
    /// A stretch between others: what lies further out is wrapped and kept dry, or the colour is brushed on.
    Wrapped,
}

impl Way {
    /// Key of the words for it.
    pub fn label(self) -> &'static str {
        match self {
            Way::Whole => "dye.way_whole",
            Way::EndsDown => "dye.way_ends",
            Way::RootsDown => "dye.way_roots",
            Way::Wrapped => "dye.way_wrapped",
        }
    }
}

/// A stretch of a zone that a bath colours or wets.
#[derive(Clone, Debug, PartialEq)]
pub struct Stretch {
    /// The zone.
    pub zone: Zone,
    /// Where it begins, as a share of the zone's length.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
    /// How it is brought in.
    pub way: Way,
    /// Where what is to have this very colour begins and ends; the rest of the stretch is dyed darker later.
    pub own: (f64, f64),
}

/// A bath's colour and what goes into it.
#[derive(Clone, Debug, PartialEq)]
pub struct Dip {
    /// The colour wanted.
    pub wanted: Light,
    /// The nearest that this base can become.
    pub aim: Light,
    /// The colour it starts from.
    pub from: Light,
    /// What goes in.
    pub stretches: Vec<Stretch>,
}

/// A zone with the colours along it: where each ends, and the colour.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// The zone.
    pub zone: Zone,
    /// Bands from the root: where each ends as a share, its colour.
    pub bands: Vec<(f64, Light)>,
}

/// A band on its way.
#[derive(Clone, Copy)]
struct Band {
    from: f64,
    to: f64,
    wanted: Light,
    aim: Light,
    now: Light,
    done: bool,
}

/// The baths for some zones on a base, light to dark. Bands that are to stay as the base is are in none.
pub fn dips(columns: &[Column], base: Light) -> Vec<Dip> {
    let mut zones: Vec<(Zone, Vec<Band>)> = columns.iter().map(|column| (column.zone, bands(column, base))).collect();
    let mut dips = Vec::new();
    // Each round ends at least one colour, so there are no more rounds than bands.
    while let Some(next) = lightest(&zones) {
        let mut dip = Dip { wanted: next.wanted, aim: next.aim, from: next.now, stretches: Vec::new() };
        for (zone, bands) in &mut zones {
            while let Some(stretch) = take(*zone, bands, &next) {
                dip.stretches.push(stretch);
            }
        }
        if dip.stretches.is_empty() {
            break;
        }
        dips.push(dip);
    }
    dips
}

fn bands(column: &Column, base: Light) -> Vec<Band> {
    let mut from = 0.0;
    let mut bands = Vec::new();
    for (to, wanted) in &column.bands {
        let aim = reach(base, *wanted).nearest;
        // What the eye cannot tell from the base stays as it is.
        let done = ciede2000(base, aim) < 1.0;
        bands.push(Band { from, to: *to, wanted: *wanted, aim, now: base, done });
        from = *to;
    }
    bands
}

fn depth(light: Light) -> f64 {
    light.absorbs().0.iter().sum()
}

fn lightest(zones: &[(Zone, Vec<Band>)]) -> Option<Band> {
    let open = zones.iter().flat_map(|(_, bands)| bands).filter(|band| !band.done);
    open.copied().reduce(|best, band| if depth(band.aim) < depth(best.aim) { band } else { best })
}

fn same(a: &Band, b: &Band) -> bool {
    ciede2000(a.wanted, b.wanted) < 1.0
}

/// Takes the first open run of bands of a colour in a zone into a bath; nothing where there is none.
fn take(zone: Zone, bands: &mut [Band], colour: &Band) -> Option<Stretch> {
    let first = bands.iter().position(|band| !band.done && same(band, colour))?;
    let run = bands[first..].iter().take_while(|band| !band.done && same(band, colour)).count();
    let last = first + run - 1;
    // A band may be wetted on the way when it is still to be dyed, over this colour.
    let over = |band: &Band| !band.done && (same(band, colour) || nests(after(band, colour), band.aim));
    let out = bands[last + 1..].iter().all(over);
    let inward = bands[..first].iter().all(over);
    let (from, to, way) = match (inward, out) {
        (true, true) => (0, bands.len() - 1, Way::Whole),
        (_, true) => (first, bands.len() - 1, Way::EndsDown),
        (true, _) => (0, last, Way::RootsDown),
        _ => (first, last, Way::Wrapped),
    };
    let own = (bands[first].from, bands[last].to);
    let stretch = Stretch { zone, from: bands[from].from, to: bands[to].to, way, own };
    for band in &mut bands[from..=to] {
        band.now = after(band, colour);
        band.done |= same(band, colour);
    }
    Some(stretch)
}

/// A band's colour once it went through another's bath: it takes what that bath adds.
fn after(band: &Band, colour: &Band) -> Light {
    let added = colour.now.absorbs().lacking(colour.aim.absorbs());
    let mut sum: Absorbs = band.now.absorbs();
    for (part, add) in sum.0.iter_mut().zip(added.0) {
        *part += add;
    }
    sum.light()
}
