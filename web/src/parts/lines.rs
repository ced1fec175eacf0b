//! The working, unfolded.
//!
//! What it is: lines with their ground. What it is not: the sums.

use measure::{prefs::Prefs, say::Arg};
use plan::working::{Ground, Line};
use yew::prelude::*;

use crate::shell::talk::{say, t, ta};

/// The working of an answer, folded until asked for.
pub fn lines(lines: &[Line], prefs: &Prefs) -> Html {
    html! {
        <details class="working">
            <summary>{ t("web.working") }</summary>
            <dl>
                { for lines.iter().map(|line| {
                    let ground = match line.ground {
                        Ground::Said => t("web.measured"),
                        Ground::Reckoned => t("web.reckoned"),
                        Ground::Assumed { source, sure } =>
                            ta("web.assumed_from", [Arg::from(source.text), Arg::Key(sure.label())]),
                    };
                    html! { <>
                        <dt>{ say(&line.name, prefs) }</dt>
                        <dd>{ say(&line.sum, prefs) }<span class="ground">{ ground }</span></dd>
                    </> }
                }) }
            </dl>
        </details>
    }
}
