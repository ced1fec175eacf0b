//! Units and currency, chosen once, kept, used everywhere.
//!
//! What it is: four questions. What it is not: a change of anything typed before.

use measure::prefs::{Degrees, Lengths, Prefs, Weights};
use yew::prelude::*;

use crate::parts::plain::{p, title};

use crate::{
    parts::typed::text_of,
    shell::talk::{self, t},
    store::{desk::Desk, model::Change},
};

/// The page.
pub fn page(desk: &Desk) -> Html {
    let prefs = desk.model().prefs.clone();
    let choose = {
        let desk = desk.clone();
        Callback::from(move |prefs: Prefs| {
            let kept = talk::keep_prefs(&prefs);
            desk.change(Change::Prefs(prefs, kept));
        })
    };
    let pair = |legend: &str, name: &'static str, options: Vec<(String, bool, Prefs)>| {
        html! {
            <fieldset>
                <legend>{ t(legend) }</legend>
                { for options.into_iter().enumerate().map(|(index, (label, checked, next))| {
                    let choose = choose.clone();
                    let id = format!("{name}-{index}");
                    html! { <p class="radio">
                        <input type="radio" {name} id={id.clone()} {checked} onchange={Callback::from(move |_: Event| choose.emit(next.clone()))} />
                        <label for={id}>{ label }</label>
                    </p> }
                }) }
            </fieldset>
        }
    };
    let with = |change: fn(&mut Prefs)| {
        let mut next = prefs.clone();
        change(&mut next);
        next
    };
    let oninput = {
        let (choose, prefs) = (choose.clone(), prefs.clone());
        Callback::from(move |event: InputEvent| {
            let currency: String = text_of(&event).trim().chars().take(4).collect();
            choose.emit(Prefs { currency, ..prefs.clone() });
        })
    };
    html! {
        <>
            { title("web.nav_units") }
            { p("lead", t("web.units_lead")) }
            <div class="form">
                { pair("web.units_lengths", "lengths", vec![
                    ("cm, mm, m".to_owned(), prefs.lengths == Lengths::Metric, with(|prefs| prefs.lengths = Lengths::Metric)),
                    ("in".to_owned(), prefs.lengths == Lengths::Inches, with(|prefs| prefs.lengths = Lengths::Inches)),
                ]) }
                { pair("web.units_weights", "weights", vec![
                    ("g".to_owned(), prefs.weights == Weights::Grams, with(|prefs| prefs.weights = Weights::Grams)),
                    ("oz".to_owned(), prefs.weights == Weights::Ounces, with(|prefs| prefs.weights = Weights::Ounces)),
                ]) }
                { pair("web.units_degrees", "degrees", vec![
                    ("°C".to_owned(), prefs.degrees == Degrees::Celsius, with(|prefs| prefs.degrees = Degrees::Celsius)),
                    ("°F".to_owned(), prefs.degrees == Degrees::Fahrenheit, with(|prefs| prefs.degrees = Degrees::Fahrenheit)),
                ]) }
                <div class="figure">
                    <label for="currency">{ t("web.units_currency") }</label>
                    <input id="currency" type="text" maxlength="4" value={prefs.currency.clone()} {oninput} autocomplete="off" />
                </div>
                if !desk.model().prefs_kept { <p class="reason" role="alert">{ t("web.units_not_kept") }</p> }
            </div>
        </>
    }
}
