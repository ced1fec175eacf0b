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
    /// `own` is the fibre of what the lock was recorded on, `lot_fibre` that of a lot.
    fn of(
        done: &Done,
        wig: Option<WigId>,
        own: &'static str,
        lot_fibre: &dyn Fn(LotId) -> Option<&'static str>,
    ) -> Option<TestLock> {
        let work = &done.work;
        if work.kind().name != test_lock::KIND.name {
            return None;
        }
        let lot = lot_of(work);
        let said = work.choice("fibre").or_else(|| lot.map_or(Some(own), lot_fibre));
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
    let unknown = fibres::NAMES[0];
    let mut all: Vec<TestLock> =
        workshop.works().iter().filter_map(|done| TestLock::of(done, None, unknown, &lot_fibre)).collect();
    for (id, state) in wigs {
        let own = Wig::new(state).fibre().name;
        all.extend(state.works().iter().filter_map(|done| TestLock::of(done, Some(id), own, &lot_fibre)));
    }
    all
}

/// The hottest that the labels of lots allow, where said.
pub fn labels(workshop: &State) -> Vec<(LotId, ThermodynamicTemperature)> {
    workshop
        .values()
        .filter_map(|(key, held)| match key {
            Key { slot: "lot_label_heat", of: Of::Lot(lot) } => {
                Some((lot, held.value.as_ref()?.typed()?.temperature()?))
            }
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

#[cfg(test)]
mod tests {
    use measure::unit::Unit::Celsius;

    use super::*;
    use crate::{id::Id, trade::heat::Medium::*};

    fn lot(number: u8) -> LotId {
        LotId(Id::from_bytes([number; 16]))
    }

    fn lock(fibre: &str, of: Option<u8>, medium: Option<Medium>, heat: f64, result: &'static str) -> TestLock {
        let temperature = ThermodynamicTemperature { value: Celsius.to_base(heat), ..Default::default() };
        let entry = EntryId(Id::from_bytes([0; 16]));
        TestLock {
            entry,
            fibre: fibres::fibre(fibre),
            lot: of.map(lot),
            medium,
            temperature,
            hold: None,
            result,
            wig: None,
        }
    }

    fn said(window: Option<OwnWindow>) -> String {
        let at = |heat: Option<ThermodynamicTemperature>| {
            heat.map_or("-".to_owned(), |heat| format!("{:.0}", Celsius.from_base(heat.value)))
        };
        window.map_or("none".to_owned(), |window| {
            let own = if window.own { "own" } else { "fibre" };
            let (from, to, harm, most) =
                (at(window.held_from), at(window.held_to), at(window.harmed_from), at(window.most()));
            format!("{from} to {to}, harm {harm}, most {most}, {} {own}", window.locks)
        })
    }

    #[test]
    fn the_safe_side_of_what_was_tried() {
        let locks = [
            lock("modacrylic", Some(1), Some(Water), 75.0, "no_set"),
            lock("modacrylic", Some(1), Some(Water), 80.0, "held"),
            lock("modacrylic", Some(1), Some(Water), 84.0, "too_tight"),
            lock("modacrylic", Some(1), Some(Water), 88.0, "shiny"),
            // Held above a harm: it does not widen the window.
            lock("modacrylic", Some(1), Some(Water), 92.0, "held"),
            lock("modacrylic", Some(2), Some(Water), 70.0, "melted"),
            // Of no said medium: it speaks for none.
            lock("modacrylic", Some(1), None, 60.0, "melted"),
            lock("unknown", Some(3), Some(Steam), 70.0, "held"),
        ];
        let modacrylic = fibres::fibre("modacrylic");
        let of = |fibre, of: Option<u8>, medium| said(window(&locks, fibres::fibre(fibre), of.map(lot), medium));
        assert_eq!(of("modacrylic", Some(1), Water), "80 to 84, harm 88, most 84, 5 own");
        // Nothing held below the harm: a step below it is the most.
        assert_eq!(of("modacrylic", Some(2), Water), "- to -, harm 70, most 65, 1 own");
        // A lot nobody tried: all locks of its fibre, the lowest harm among them.
        assert_eq!(of("modacrylic", Some(9), Water), "- to -, harm 70, most 65, 6 fibre");
        assert_eq!(of("modacrylic", None, Water), "- to -, harm 70, most 65, 6 fibre");
        // Another medium does not speak.
        assert_eq!(of("modacrylic", Some(1), Iron), "none");
        // What nobody knows is another fibre each time.
        assert_eq!(of("unknown", Some(3), Steam), "70 to 70, harm -, most -, 1 own");
        assert_eq!(of("unknown", None, Steam), "none");
        assert_eq!(of("unknown", Some(4), Steam), "none");
        let own = window(&locks, modacrylic, Some(lot(1)), Water);
        let held =
            |heat: f64| own.is_some_and(|own| own.held_at(lock("modacrylic", None, None, heat, "held").temperature));
        assert!(held(84.0) && held(70.0) && !held(85.0));
    }
}
