//! Cautions beside what they are about.
//!
//! What it is: the look of a caution, by its weight, never by colour alone. What it is not: a dialog.

use measure::prefs::Prefs;
use plan::working::{Caution, Weight};
use yew::prelude::*;

use crate::shell::talk::{say, t};

/// Cautions, heaviest first.
pub fn cautions(cautions: &[Caution], prefs: &Prefs) -> Html {
    let mut sorted: Vec<&Caution> = cautions.iter().collect();
    measure::order::sort_by(&mut sorted, &|a, b| b.weight.cmp(&a.weight));
    if sorted.is_empty() {
        return html! {};
    }
    html! {
        <ul class="cautions">
            { for sorted.into_iter().map(|caution| {
                let (class, word) = match caution.weight {
                    Weight::Stop => ("stop", "web.stop"),
                    Weight::Care => ("care", "web.care"),
                    Weight::Consider => ("consider", "web.consider"),
                };
                html! {
                    <li class={classes!("caution", class)}>
                        <strong class="weight">{ t(word) }</strong>
                        <span>{ say(&caution.what, prefs) }{ " " }<em>{ say(&caution.remedy, prefs) }</em></span>
                    </li>
                }
            }) }
        </ul>
    }
}
