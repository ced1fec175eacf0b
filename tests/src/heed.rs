//! What the checks before a step say of work in a demo's lines.
//!
//! What it is: their answer as the page's bench would give it, made binding. What it is not: the checks (see `plan::care`).

use measure::prefs::Prefs;
use plan::care::{self, Bench};
use record::{
    field::Value,
    history::{fold::fold, log::Log},
    id::{EntryId, WigId},
    wig::{condition::Condition, figures::Wig, work::Work},
    workshop::{locks, lots::lots},
};

use crate::demo::WORDS;

/// Refuses work that a check speaks against, unless it overrules it and says why; what is only to be considered passes.
///
/// `unruled` is the same work without what it overrules, because what does not speak cannot be overruled; `corrects` is
/// the entry it stands for.
///
/// # Errors
/// What speaks against it, with the remedy.
pub fn heed(
    (id, wig): (WigId, &Log),
    workshop: &Log,
    work: &Work,
    unruled: &Work,
    corrects: Option<EntryId>,
) -> Result<(), String> {
    // What is put right is judged as the wig was when it was first written down.
    let known = match corrects.and_then(|target| wig.get(target)) {
        Some(target) => Log::of(wig.entries().filter(|entry| entry.lamport < target.lamport).cloned()),
        None => wig.clone(),
    };
    let (state, workshop) = (fold(&known), fold(workshop));
    let wig = Wig::new(&state);
    let lots = lots(&workshop, [&state]);
    let locks = locks::locks(&workshop, [(id, &state)]);
    let labels = locks::labels(&workshop);
    let bench = Bench { wig: &wig, lots: &lots, locks: &locks, labels: &labels };
    let condition = Condition::now(&wig);
    let prefs = Prefs::default();
    let words = |say: &measure::say::Say| say.words(&WORDS, &prefs);
    let against: Vec<String> = care::before(&bench, &condition, work)
        .iter()
        .filter(|finding| finding.asks_judgement())
        .map(|finding| format!("{}: {} {}", finding.rule.name, words(&finding.what), words(&finding.remedy)))
        .collect();
    if !against.is_empty() {
        return Err(against.join(" "));
    }
    let speak: Vec<&str> = care::before(&bench, &condition, unruled).iter().map(|one| one.rule.name).collect();
    let said = |field| work.get(field).and_then(Value::words).unwrap_or("");
    if let Some(name) = said("overruled").split_whitespace().find(|name| !speak.contains(name)) {
        return Err(format!("{name} does not speak here"));
    }
    if said("overruled").is_empty() == said("judgement").is_empty() {
        Ok(())
    } else {
        Err("overruled and judgement go together".to_owned())
    }
}
