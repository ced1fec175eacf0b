//! What speaks against a step, beside it; the one hazard box of a hot or chemical step.
//!
//! What it is: the look of findings. What it is not: a dialog, or a rule.

use measure::{prefs::Prefs, say::Arg};
use plan::{
    care::{self, Finding},
    working::Caution,
};
use record::{
    field::Value,
    history::fold::Done,
    wig::work::{Kind, Work},
};
use yew::prelude::*;

use crate::{
    parts::{cautions::cautions, plain::p},
    shell::talk::{t, ta},
};

/// The findings, heaviest first.
pub fn findings(found: &[Finding], prefs: &Prefs) -> Html {
    let all: Vec<Caution> = found
        .iter()
        .map(|finding| Caution {
            weight: finding.rule.weight,
            what: finding.what.clone(),
            remedy: finding.remedy.clone(),
        })
        .collect();
    html! { <div class="found" role="status">{ cautions(&all, prefs) }</div> }
}

/// The names of what is overruled by going on all the same.
pub fn names(found: &[Finding]) -> String {
    let names: Vec<&str> =
        found.iter().filter(|finding| finding.asks_judgement()).map(|finding| finding.rule.name).collect();
    names.join(" ")
}

/// The hazards of work as it is filled in so far, or of its kind while it does not read yet.
pub fn hazard(kind: &'static Kind, texts: &[(&'static str, String)], prefs: &Prefs) -> Html {
    let pairs = texts.iter().map(|(name, text)| (*name, text.as_str()));
    let work = Work::read(kind, pairs, prefs).ok();
    work.as_ref().map(hazard_of).unwrap_or_default()
}

/// The hazards of a piece of work.
pub fn hazard_of(work: &Work) -> Html {
    match care::hazard(work) {
        None => html! {},
        Some(hazard) => html! {
            <div class="hazard" role="note"><p><strong>{ t("web.hazard") }</strong>{ for hazard.lines.iter().map(|line| format!(" {}", t(line))) }</p></div>
        },
    }
}

/// What was overruled in work that was done, with the person's words.
pub fn overruled(done: &[&Done]) -> Html {
    let told: Vec<Html> = done
        .iter()
        .filter_map(|done| {
            let rules = care::overruled(&done.work);
            let names: Vec<String> = rules.iter().map(|rule| t(rule.label)).collect();
            let words = done.work.get("judgement").and_then(Value::words).unwrap_or_default().to_owned();
            (!names.is_empty()).then(|| p("hint", ta("web.overruled", [Arg::Text(names.join("; ")), Arg::Text(words)])))
        })
        .collect();
    html! { { for told } }
}
