//! How far sets opened on this bench.
//!
//! What it is: recorded sets with rod and result, and this wig's test curl. What it is not: the tables' assumption.

use measure::{
    order,
    quantity::{Length, units::millimeter},
};
use record::{
    field::Value,
    history::{entry::Of, fold::State},
    trade::{fibres::Fibre, heat::Medium},
    wig::figures::Wig,
};

use super::said::said;

/// One result.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Opened {
    /// Of which fibre.
    pub fibre: &'static Fibre,
    /// Heated how, where said.
    pub medium: Option<Medium>,
    /// The rod.
    pub rod: Length,
    /// The curl it became.
    pub came_out: Length,
}

impl Opened {
    /// The curl over its rod.
    pub fn times(&self) -> f64 {
        self.came_out.get::<millimeter>() / self.rod.get::<millimeter>()
    }
}

/// All results in some wigs' logs.
pub fn results<'a>(wigs: impl IntoIterator<Item = &'a State>) -> Vec<Opened> {
    let mut all = Vec::new();
    for state in wigs {
        let fibre = Wig::new(state).fibre();
        for done in state.works().iter().filter(|done| done.work.kind().name == "heat_set") {
            let length = |field| done.work.get(field).and_then(Value::typed).and_then(|typed| typed.length());
            if let (Some(rod), Some(came_out)) = (length("diameter"), length("came_out")) {
                all.push(Opened { fibre, medium: done.work.choice("medium").and_then(Medium::read), rod, came_out });
            }
        }
    }
    all
}

/// What own results say for a fibre in a medium: lowest, middle and highest curl over its rod, and from how many.
///
/// This wig's own test curl comes before all others.
pub fn own(wig: &Wig<'_>, results: &[Opened], medium: Medium) -> Option<([f64; 3], usize)> {
    let length = |slot| said::<Length>(wig, slot, Of::Wig).map(|figure| figure.likely);
    if let (Some(rod), Some(came_out)) = (length("test_rod"), length("test_curl")) {
        let times = Opened { fibre: wig.fibre(), medium: None, rod, came_out }.times();
        return Some(([times; 3], 1));
    }
    let fibre = wig.fibre();
    let mut times: Vec<f64> = results
        .iter()
        .filter(|one| one.fibre == fibre && one.medium == Some(medium) && fibre.name != "unknown")
        .map(Opened::times)
        .collect();
    order::sort_numbers(&mut times);
    let (first, last) = (*times.first()?, *times.last()?);
    let middle = (times[(times.len() - 1) / 2] + times[times.len() / 2]) / 2.0;
    Some(([first, middle, last], times.len()))
}
