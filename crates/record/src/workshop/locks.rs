//! Heat test locks, from the workshop's log and all wigs' logs, and a person's own window learnt from them.
//!
//! What it is: what was tried on which fibre and lot, and the safe side of it.
//! What it is not: the trade's windows (see `trade::heat`), or leave to go beyond their limits.

use measure::quantity::{ThermodynamicTemperature, Time};

use crate::{
    field::Value,
    history::{
        entry::{Key, LogId, Of},
        fold::{Done, State},
    },
    id::{EntryId, LotId, WigId},
    trade::{
        fibres::{self, Fibre},
        heat::Medium,
        lock::{self, Side},
    },
    wig::{
        figures::Wig,
        work::{Work, test_lock},
    },
};

/// A heat test lock.
#[derive(Clone, Debug, PartialEq)]
pub struct TestLock {
    /// The entry that says so.
    pub entry: EntryId,
    /// Its fibre: as said, else its lot's, else its wig's.
    pub fibre: &'static Fibre,
    /// The lot it was taken from; none where it is a wig's own fibre.
    pub lot: Option<LotId>,
    /// How it was heated, where said; without it the lock speaks for no medium.
    pub medium: Option<Medium>,
    /// How hot.
    pub temperature: ThermodynamicTemperature,
    /// How long.
    pub hold: Option<Time>,
    /// What it showed, one of [`crate::wig::work::LOCK_RESULTS`].
    pub result: &'static str,
    /// The wig it was recorded on.
    pub wig: Option<WigId>,
}

impl TestLock {
    fn of(done: &Done, wig: Option<WigId>, lot_fibre: &dyn Fn(LotId) -> Option<&'static str>) -> Option<TestLock> {
        let work = &done.work;
        if work.kind().name != test_lock::KIND.name {
            return None;
        }
        let lot = lot_of(work);
        let said = work.choice("fibre").or_else(|| lot.and_then(lot_fibre));
        Some(TestLock {
            entry: done.entry,
            fibre: fibres::fibre(said.unwrap_or(fibres::NAMES[0])),
            lot,
            medium: work.choice("medium").and_then(Medium::read),
            temperature: work.temperature()?,
            hold: work.get("hold").and_then(Value::typed).and_then(|typed| typed.time()),
            result: work.choice("lock_result")?,
            wig,
        })
    }

    /// On which side of the window it lies.
    pub fn side(&self) -> Side {
        lock::side(self.result).unwrap_or(Side::Above)
    }
}

/// The lot that work names.
pub fn lot_of(work: &Work) -> Option<LotId> {
    match work.get("lot") {
        Some(Value::Lot(lot)) => Some(*lot),
        _ => None,
    }
}

/// All locks: the workshop's, then each wig's, in bench order.
pub fn locks<'a>(workshop: &State, wigs: impl IntoIterator<Item = (WigId, &'a State)>) -> Vec<TestLock> {
    let lot_fibre = |lot| {
        let key = Key::new(LogId::Workshop, "lot_fibre", Of::Lot(lot))?;
        workshop.value(key).and_then(Value::choice)
    };
    let mut all: Vec<TestLock> = workshop.works().iter().filter_map(|done| TestLock::of(done, None, &lot_fibre)).collect();
    for (id, state) in wigs {
        let own = Wig::new(state).fibre().name;
        for done in state.works() {
            // A wig's own strand has its fibre; a lot's has the lot's, or nobody knows.
            let fibre = |lot| lot_fibre(lot).or(Some(fibres::NAMES[0]));
            if let Some(mut lock) = TestLock::of(done, Some(id), &fibre) {
                if lock.lot.is_none() && done.work.choice("fibre").is_none() {
                    lock.fibre = fibres::fibre(own);
                }
                all.push(lock);
            }
        }
    }
    all
}

/// The hottest that the labels of lots allow, where said.
pub fn labels(workshop: &State) -> Vec<(LotId, ThermodynamicTemperature)> {
    workshop
        .values()
        .filter_map(|(key, held)| match key {
            Key { slot: "lot_label_heat", of: Of::Lot(lot) } => Some((lot, held.value.as_ref()?.typed()?.temperature()?)),
            _ => None,
        })
        .collect()
}

/// What a person found out for a fibre in one medium.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OwnWindow {
    /// The coolest that held.
    pub held_from: Option<ThermodynamicTemperature>,
    /// The hottest that held, below every harm.
    pub held_to: Option<ThermodynamicTemperature>,
    /// The coolest that harmed.
    pub harmed_from: Option<ThermodynamicTemperature>,
    /// On how many locks it rests.
    pub locks: usize,
    /// Whether all of them are of the very lot, or the very wig.
    pub own: bool,
}

/// A test a step below harm is the next one worth making, so a window without a hold ends there, K. Common practice, no
/// source: test locks go in steps of 5 to 10.
pub const STEP: f64 = 5.0;

impl OwnWindow {
    /// The hottest it allows: what held where something harmed, else a step below the harm; nothing where nothing harmed.
    pub fn most(&self) -> Option<ThermodynamicTemperature> {
        let harm = self.harmed_from?;
        Some(self.held_to.unwrap_or_else(|| {
            let mut most = harm;
            most.value -= STEP;
            most
        }))
    }

    /// Whether a lock held at a temperature or above it.
    pub fn held_at(&self, heat: ThermodynamicTemperature) -> bool {
        self.held_to.is_some_and(|held| held >= heat)
    }
}

/// The own window of a fibre: from locks of that lot, else of any of that fibre; nothing where no lock of that medium speaks.
///
/// What nobody knows is another fibre each time, so an unknown one has no window but its lot's.
pub fn window(locks: &[TestLock], fibre: &Fibre, lot: Option<LotId>, medium: Medium) -> Option<OwnWindow> {
    if lot.is_some()
        && let Some(window) = of(locks, medium, true, &|lock| lock.lot == lot)
    {
        return Some(window);
    }
    let known = fibre.name != fibres::NAMES[0];
    known.then(|| of(locks, medium, false, &|lock| lock.fibre.name == fibre.name)).flatten()
}

/// The own window of a wig's own fibre: from locks cut from this wig, else of any of that fibre.
pub fn window_of_wig(locks: &[TestLock], wig: &Wig<'_>, medium: Medium) -> Option<OwnWindow> {
    let fibre = wig.fibre();
    let here = |lock: &TestLock| {
        lock.lot.is_none()
            && lock.fibre.name == fibre.name
            && wig.state().works().iter().any(|done| done.entry == lock.entry)
    };
    of(locks, medium, true, &here).or_else(|| window(locks, fibre, None, medium))
}

fn of(locks: &[TestLock], medium: Medium, own: bool, speaks: &dyn Fn(&TestLock) -> bool) -> Option<OwnWindow> {
    let mut window = OwnWindow { held_from: None, held_to: None, harmed_from: None, locks: 0, own };
    let all: Vec<&TestLock> = locks.iter().filter(|lock| lock.medium == Some(medium) && speaks(lock)).collect();
    for lock in &all {
        window.locks += 1;
        if lock.side() == Side::Above && window.harmed_from.is_none_or(|harm| lock.temperature < harm) {
            window.harmed_from = Some(lock.temperature);
        }
    }
    for lock in &all {
        let heat = lock.temperature;
        // A harm below a hold narrows the window: the safe side speaks.
        if lock.side() != Side::Inside || window.harmed_from.is_some_and(|harm| heat >= harm) {
            continue;
        }
        if window.held_from.is_none_or(|held| heat < held) {
            window.held_from = Some(heat);
        }
        if window.held_to.is_none_or(|held| heat > held) {
            window.held_to = Some(heat);
        }
    }
    (window.locks > 0).then_some(window)
}
