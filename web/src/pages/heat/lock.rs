//! The guided heat test lock: what to try in which order, what it showed, what comes of it.
//!
//! What it is: the steps and the form for the next one. What it is not: the window (see the fibre drawer).

use measure::say::Arg;
use plan::heat::guide::Guide;
use yew::prelude::*;

use super::Page;
use crate::{
    pages::bench::{Named, work_form},
    parts::plain::{folded, p},
    shell::talk::{say, t, ta},
};

/// The way of it.
pub(super) fn way(page: &Page<'_>, guide: &Guide) -> Html {
    let prefs = &page.desk.model().prefs;
    let steps = guide.steps.iter().map(|step| {
        let shown = step.shown.map_or_else(|| t("web.heat_untried"), |side| t(side.label()));
        html! { <li>{ format!("{}: {shown}", prefs.temperature(step.heat)) }</li> }
    });
    let given = vec![
        ("medium", page.medium.name().to_owned()),
        (
            "temperature",
            guide
                .next
                .map(Arg::Temperature)
                .map_or_else(String::new, |next| next.words(&crate::shell::talk::WORDS, prefs)),
        ),
        ("fibre", page.wig.fibre().name.to_owned()),
    ];
    let key = given.iter().map(|(_, text)| text.as_str()).collect::<Vec<_>>().join(" ");
    html! {
        <>
            { p("hint", ta("web.heat_lock_hint", [Arg::Key(page.medium.label())])) }
            <ol class="trials">{ for steps }</ol>
            <p id="trial" role="status"><strong>{ say(&guide.says, prefs) }</strong></p>
            if !guide.steps.is_empty() {
                { folded(t("web.heat_lock_record"), html! {
                    <div key={key}>{ work_form(page.whose, page.log, Named("test_lock"), given, Callback::noop()) }</div>
                }) }
            }
        </>
    }
}
