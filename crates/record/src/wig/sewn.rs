//! Weft that is in the wig: what was sewn and not taken off again.
//!
//! What it is: sewing less unpicking, in bench order. What it is not: stock: weft that was taken off is counted anew.

use measure::quantity::{Length, units};

use super::work::sew_weft::SewWeft;
use crate::{field::Value, history::fold::State, wig::work::Work};

/// A place is the same when it is this near, mm.
const SAME_PLACE_MM: f64 = 1.5;

/// The weft that is sewn in now.
pub fn sewn(state: &State) -> Vec<SewWeft> {
    let mut sewn: Vec<SewWeft> = Vec::new();
    for done in state.works() {
        if let Some(weft) = SewWeft::of(&done.work) {
            sewn.push(weft);
        } else if let Some(at) = taken(&done.work, &sewn) {
            sewn.remove(at);
        }
    }
    sewn
}

/// Which of them a piece of work takes off: the last that is as it says.
fn taken(work: &Work, sewn: &[SewWeft]) -> Option<usize> {
    if work.kind().name != "unpick" {
        return None;
    }
    let what = work.choice("unpicked")?;
    let place = work.get("place").and_then(Value::typed).and_then(|typed| typed.length());
    let lot = match work.get("lot") {
        Some(Value::Lot(lot)) => Some(*lot),
        _ => None,
    };
    sewn.iter().rposition(|weft| {
        weft.sewn_as == what
            && lot.is_none_or(|lot| weft.lot == Some(lot))
            && work.choice("section").is_none_or(|section| weft.section == Some(section))
            && place.is_none_or(|place| weft.place.is_some_and(|at| near(at, place)))
    })
}

fn near(a: Length, b: Length) -> bool {
    let apart = (a - b).get::<units::millimeter>();
    (-SAME_PLACE_MM..=SAME_PLACE_MM).contains(&apart)
}
