//! Other ways to colour: spirit-based inks, markers, pigment sprays; with their limits and what their solvents do.
//!
//! What it is: what the tables say of this fibre. What it is not: a plan.

use record::trade::{
    dye::{Class, uptake},
    solvent::harmful_to,
};
use yew::prelude::*;

use super::Here;
use crate::{
    pages::{
        bench::{Named, work_form},
        drawer::degrees,
    },
    parts::plain::{folded, p},
    shell::talk::{t, ta},
};

/// The section.
pub fn ways(here: &Here<'_>) -> Html {
    let fibre = here.wig.fibre();
    let prefs = &here.desk.model().prefs;
    html! {
        <>
            { p("", t("web.other_lead")) }
            <ul>
                { for [Class::Ink, Class::PigmentSpray].into_iter().map(|class| {
                    let words = ta("web.other_way", [
                        measure::say::Arg::Key(class.label()),
                        measure::say::Arg::Key(uptake(fibre, class).takes.label()),
                        measure::say::Arg::Key(class.hazard().0),
                    ]);
                    html! { <li>{ words }</li> }
                }) }
                { for harmful_to(fibre).map(|(solvent, harm)| {
                    let words = ta("web.other_solvent", [
                        measure::say::Arg::Key(solvent.label),
                        measure::say::Arg::Key(harm.does),
                        measure::say::Arg::Text(degrees(solvent.flash.likely, &solvent.flash, prefs)),
                    ]);
                    html! { <li>{ words }</li> }
                }) }
            </ul>
            { p("hint", t("web.other_hair")) }
            { folded(t("web.other_record"), work_form(here.whose, here.log, Named("dye"), vec![("dye_class", "ink".to_owned()), ("dye_way", "marker".to_owned())], Callback::noop())) }
        </>
    }
}
