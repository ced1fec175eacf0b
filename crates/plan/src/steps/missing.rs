//! Which suggested steps are still to be planned.
//!
//! What it is: what is planned or done taken off, one for one. What it is not: a judgement of the plan.

use measure::quantity::units;
use record::{
    field::Value,
    history::fold::State,
    id::StepId,
    wig::{
        steps::{self, Progress},
        work::Work,
    },
};

/// Kinds that are suggested from what the wig is now, so that what is done is left out there already.
const STATE_TELLS: &[&str] = &["wash", "dry", "straighten", "sew_weft", "cut"];
/// Choices that make two steps of a kind different steps.
const TELLING: &[&str] = &["sewn_as", "section", "edge", "edge_way", "fixed_by"];
/// Rows nearer than this are one row planned twice, mm: half the closest that rows lie beside a parting, and more than a plan
/// moves by rounding.
const SAME_ROW: f64 = 1.5;

/// The suggestions that are neither planned (skipped counts too: somebody decided) nor done.
pub fn missing(state: &State, suggested: Vec<Work>) -> Vec<Work> {
    let steps = steps::steps(state);
    let told = |work: &Work| STATE_TELLS.contains(&work.kind().name);
    // What was left out is decided for its own place only; what is planned does for its like elsewhere too.
    let (mut left_out, mut there): (Vec<&Work>, Vec<&Work>) = (Vec::new(), Vec::new());
    for step in &steps {
        let (work, progress) = (&step.planned.work, step.progress());
        match progress {
            Progress::Skipped => left_out.push(work),
            Progress::Done if told(work) => {}
            _ => there.push(work),
        }
    }
    for work in state.works().iter().map(|done| &done.work) {
        let of_step = steps::step_of(work).is_some_and(|id| steps.iter().any(|step| step.id == id));
        if !of_step && !told(work) {
            there.push(work);
        }
    }
    let mut wanted: Vec<Option<Work>> = suggested.into_iter().map(Some).collect();
    for work in left_out {
        take(&mut wanted, work, SAME_ROW);
    }
    // Once some rows are sewn, the others may come out a little elsewhere, and longer or shorter: what counts is the weft.
    let mut lacking = weft(wanted.iter().flatten()) - weft(there.iter().copied());
    there.retain(|work| !take(&mut wanted, work, SAME_ROW));
    for work in there {
        take(&mut wanted, work, f64::INFINITY);
    }
    let mut missing: Vec<Work> = wanted.into_iter().flatten().collect();
    missing.retain(|work| {
        let length = row_length(work);
        let needed = length.is_none_or(|length| lacking >= length / 2.0);
        lacking -= length.filter(|_| needed).unwrap_or(0.0);
        needed
    });
    missing
}

/// The step still to do that a piece of work is: the nearest like it, a row within [`SAME_ROW`] of its place.
pub fn open_step(state: &State, work: &Work) -> Option<StepId> {
    let mut nearest: Option<(f64, StepId)> = None;
    for step in steps::steps(state) {
        if !matches!(step.progress(), Progress::Open | Progress::Begun) {
            continue;
        }
        let apart = apart(&step.planned.work, work, SAME_ROW);
        if let Some(apart) = apart.filter(|apart| nearest.is_none_or(|(least, _)| *apart < least)) {
            nearest = Some((apart, step.id));
        }
    }
    nearest.map(|(_, id)| id)
}

/// Weft in rows, m.
fn weft<'a>(works: impl Iterator<Item = &'a Work>) -> f64 {
    works.filter_map(row_length).sum()
}

/// How long a row is, m; nothing where the work is none.
fn row_length(work: &Work) -> Option<f64> {
    let row = work.choice("sewn_as") == Some("row");
    work.get("length").filter(|_| row)?.typed()?.length().map(|length| length.get::<units::meter>())
}

/// Takes off the nearest of the wanted that is the same step, so that of two rows in one gap the right one is left.
fn take(wanted: &mut [Option<Work>], work: &Work, within: f64) -> bool {
    let mut nearest: Option<(f64, usize)> = None;
    for (at, one) in wanted.iter().enumerate() {
        let apart = one.as_ref().and_then(|one| apart(one, work, within));
        if let Some(apart) = apart.filter(|apart| nearest.is_none_or(|(least, _)| *apart < least)) {
            nearest = Some((apart, at));
        }
    }
    let taken = nearest.and_then(|(_, at)| wanted.get_mut(at));
    taken.map(|taken| *taken = None).is_some()
}

/// How far two pieces of work lie apart; nothing where they are different steps.
fn apart(a: &Work, b: &Work, within: f64) -> Option<f64> {
    let kind = a.kind().name;
    if kind != b.kind().name || TELLING.iter().any(|field| a.choice(field) != b.choice(field)) {
        return None;
    }
    let place = |work: &Work| {
        let typed = work.get("place").and_then(Value::typed)?;
        typed.length().map(|length| length.get::<units::millimeter>())
    };
    let differ = |field: &str| f64::from(u8::from(a.get(field) != b.get(field)));
    match (place(a), place(b)) {
        (Some(a), Some(b)) => {
            let apart = libm::fabs(a - b);
            (apart <= within).then_some(apart + differ("zone") * 0.4 + differ("length") * 0.2)
        }
        (None, None) => Some(differ("zones") + differ("hair_length")),
        _ => None,
    }
}
