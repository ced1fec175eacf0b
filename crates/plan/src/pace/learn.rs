//! A pace, from stated practice and own sittings.
//!
//! What it is: (k × stated + own sittings) ÷ (k + their number), sittings far from the middle one drawn in to it (winsorised).
//! What it is not: the times of a plan (see `reckon`).

use measure::{
    order,
    quantity::{Time, units},
};
use record::{
    field::Value,
    history::{
        entry::{Key, Of},
        fold::State,
    },
    id::StepId,
    trade::fact::Sure,
    wig::{
        figure::{Figure, Origin},
        steps,
        work::Work,
    },
};

use super::stated::{ABSURD, Clock, OWN, Per, STATED_COUNTS_AS, Stated, TABLE};

/// How long one kind of work takes, per unit of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Pace {
    /// Name of the kind; its label is the sentence `work.<name>`.
    pub kind: &'static str,
    /// The way of doing it that this pace is for, where it is for some only; labels are the sentences `choice.<name>`.
    pub ways: &'static [&'static str],
    /// What the time is for.
    pub per: Per,
    /// Whether it is a wait rather than work at the bench.
    pub waiting: bool,
    /// Most likely.
    pub likely: Time,
    /// When it goes quickly.
    pub low: Time,
    /// When it goes slowly.
    pub high: Time,
    /// Own timed pieces of work it rests on; several sittings at one piece are one.
    pub sittings: usize,
    /// Stated practice, with where it comes from.
    pub stated: Figure<Time>,
}

impl Pace {
    /// As a figure, with its ground.
    pub fn figure(&self) -> Figure<Time> {
        let origin = if self.sittings == 0 {
            self.stated.origin.clone()
        } else {
            Origin::Assumed { source: &OWN, sure: self.sure() }
        };
        Figure { low: self.low, likely: self.likely, high: self.high, origin }
    }

    /// How much weight it bears: low until own sittings outweigh stated practice.
    pub fn sure(&self) -> Sure {
        match self.sittings {
            0..3 => Sure::Low,
            3..10 => Sure::Medium,
            _ => Sure::High,
        }
    }
}

/// The paces of a person for every kind of work that is timed.
#[derive(Clone, Debug, PartialEq)]
pub struct Paces(Vec<Pace>);

impl Default for Paces {
    fn default() -> Paces {
        Paces::learn([])
    }
}

impl Paces {
    /// Learns from what was timed on all wigs; from none it is stated practice.
    pub fn learn<'a>(wigs: impl IntoIterator<Item = &'a State>) -> Paces {
        let mut own: Vec<Vec<f64>> = TABLE.iter().map(|_| Vec::new()).collect();
        for state in wigs {
            for piece in pieces(state) {
                if let Some((own, each)) = own.get_mut(piece.row).zip(piece.each()) {
                    own.push(each);
                }
            }
        }
        Paces(TABLE.iter().zip(&own).map(|(stated, own)| pace(stated, own)).collect())
    }

    /// All of them, in the order of the bench.
    pub fn all(&self) -> &[Pace] {
        &self.0
    }

    /// The pace a piece of work goes by at the bench.
    pub fn of(&self, work: &Work) -> Option<&Pace> {
        self.found(work, Clock::Bench).map(|(pace, _)| pace)
    }

    /// The pace and how many of its units the work is, where it says so.
    pub(super) fn found(&self, work: &Work, clock: Clock) -> Option<(&Pace, Option<f64>)> {
        let at = row_of(work, clock)?;
        Some((self.0.get(at)?, TABLE.get(at)?.amount(work)))
    }

    pub(super) fn row(&self) -> Option<&Pace> {
        self.0.iter().find(|pace| pace.per == Per::Row)
    }
}

fn row_of(work: &Work, clock: Clock) -> Option<usize> {
    TABLE.iter().position(|stated| stated.clock == clock && stated.is_for(work))
}

/// One piece of work with all its sittings.
struct Timed {
    row: usize,
    step: Option<StepId>,
    /// Whether more sittings are to come.
    open: bool,
    /// Whether every sitting was timed.
    all_timed: bool,
    /// Seconds.
    time: f64,
    /// Units done in timed sittings.
    amount: f64,
}

impl Timed {
    /// Seconds for a unit.
    fn each(&self) -> Option<f64> {
        let scaled = TABLE.get(self.row).is_some_and(|row| matches!(row.per, Per::Row | Per::HundredKnots));
        match (scaled, self.all_timed && !self.open) {
            // What a sitting sewed or knotted is known sitting by sitting.
            (true, _) => (self.amount > 0.0 && self.time > 0.0).then(|| self.time / self.amount),
            // A whole piece takes as long as all its sittings together.
            (false, true) => (self.time > 0.0).then_some(self.time),
            (false, false) => None,
        }
    }
}

fn pieces(state: &State) -> Vec<Timed> {
    let mut pieces: Vec<Timed> = Vec::new();
    for work in state.works().iter().map(|done| &done.work) {
        let step = steps::step_of(work);
        let more = work.yes("more_to_come") == Some(true);
        for clock in [Clock::Bench, Clock::Waiting] {
            let Some(row) = row_of(work, clock) else { continue };
            let at = pieces.iter().position(|piece| piece.row == row && piece.open && piece.step == step);
            let at = at.unwrap_or_else(|| {
                pieces.push(Timed { row, step, open: true, all_timed: true, time: 0.0, amount: 0.0 });
                pieces.len() - 1
            });
            let Some(piece) = pieces.get_mut(at) else { continue };
            piece.open = more;
            match timed(state, work, clock) {
                Some(time) => {
                    piece.time += time;
                    piece.amount += TABLE.get(row).and_then(|row| row.amount(work)).unwrap_or(0.0);
                }
                None => piece.all_timed = false,
            }
        }
    }
    pieces
}

/// How long it took, s. A time that is to the letter what its step planned was copied, not taken: learning from it would be
/// learning from oneself.
fn timed(state: &State, work: &Work, clock: Clock) -> Option<f64> {
    let value = work.get(clock.field())?;
    let planned = steps::step_of(work)
        .and_then(|step| state.value(Key { slot: steps::SLOT, of: Of::Step(step) }))
        .and_then(Value::planned);
    if planned.is_some_and(|planned| planned.work.get(clock.field()) == Some(value)) {
        return None;
    }
    let seconds = value.typed()?.time()?.get::<units::second>();
    (seconds > 0.0).then_some(seconds)
}

fn pace(stated: &Stated, own: &[f64]) -> Pace {
    let figure = stated.figure();
    let seconds = |time: Time| time.get::<units::second>();
    let drawn = drawn_in(own, seconds(figure.likely));
    let half = drawn.len().div_ceil(2);
    let mix = |stated: Time, own: &[f64], likely: bool| {
        let weight = STATED_COUNTS_AS.likely;
        let count = drawn.len() as f64;
        // The quick half and the slow half of the sittings stand for all of them.
        let sum = if likely { own.iter().sum() } else { mean(own) * count };
        Time::new::<units::second>((weight * seconds(stated) + sum) / (weight + count))
    };
    Pace {
        kind: stated.kind,
        ways: stated.only.map_or(&[], |(_, ways)| ways),
        per: stated.per,
        waiting: stated.clock == Clock::Waiting,
        likely: mix(figure.likely, &drawn, true),
        low: mix(figure.low, drawn.get(..half).unwrap_or_default(), false),
        high: mix(figure.high, drawn.get(drawn.len() - half..).unwrap_or_default(), false),
        sittings: own.len(),
        stated: figure,
    }
}

fn mean(values: &[f64]) -> f64 {
    if values.is_empty() { 0.0 } else { values.iter().sum::<f64>() / values.len() as f64 }
}

/// Own times from quick to slow, none further from the middle one than [`ABSURD`] times; stated practice is counted in when
/// the middle is looked for, so that the first sitting alone decides nothing.
fn drawn_in(own: &[f64], stated: f64) -> Vec<f64> {
    let mut all = own.to_vec();
    all.extend((0..libm::round(STATED_COUNTS_AS.likely) as usize).map(|_| stated));
    order::sort_numbers(&mut all);
    let at = |place: usize| all.get(place).copied().unwrap_or(stated);
    let middle = (at((all.len() - 1) / 2) + at(all.len() / 2)) / 2.0;
    let far = ABSURD.likely;
    let mut drawn: Vec<f64> = own.iter().map(|time| order::within(*time, middle / far, middle * far)).collect();
    order::sort_numbers(&mut drawn);
    drawn
}
