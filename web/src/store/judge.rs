//! Whether something typed may become an entry: the field's own limits, then what cannot be together.
//!
//! What it is: the core's checks asked in the right order. What it is not: the checks.

use measure::{prefs::Prefs, say::Say};
use plan::care::Finding;
use record::{
    history::{
        desk,
        entry::{Body, LogId, Of},
    },
    wig::{
        condition::Condition,
        figures::Wig,
        work::{Kind, Refusal, Work},
    },
};

use super::model::{Model, Whose};
use crate::shell::talk;

/// A value for a slot.
///
/// # Errors
/// The refusal in words.
pub fn set(model: &Model, whose: Whose, log: LogId, slot: &str, of: Of, text: &str) -> Result<Body, String> {
    let bench = model.bench(whose);
    let state = bench.state(log);
    let words = |say: &Say| talk::say(say, &model.prefs);
    let body = desk::set(&state, log, slot, of, text, &model.prefs).map_err(|refusal| words(&refusal.say))?;
    if matches!(log, LogId::Wig(_)) {
        plan::care::may_set(&bench.log(log), &body).map_err(|say| words(&say))?;
    }
    Ok(body)
}

/// What speaks against a piece of work, as the wig is now.
pub fn findings(model: &Model, whose: Whose, log: LogId, work: &Work) -> Vec<Finding> {
    match log {
        LogId::Wig(_) => at_bench(model, whose, log, &|bench, now| plan::care::before(bench, now, work)),
        LogId::Workshop => Vec::new(),
    }
}

/// Asks a check with everything it looks at: the wig as it is now, the lots, what was tried.
pub fn at_bench<T>(
    model: &Model,
    whose: Whose,
    log: LogId,
    ask: &dyn Fn(&plan::care::Bench<'_>, &Condition) -> T,
) -> T {
    let bench = model.bench(whose);
    let state = bench.state(log);
    let wig = Wig::new(&state);
    let (lots, locks) = (bench.lots(), bench.locks());
    let labels = record::workshop::locks::labels(&bench.state(LogId::Workshop));
    ask(&plan::care::Bench { wig: &wig, lots: &lots, locks: &locks, labels: &labels }, &Condition::now(&wig))
}

/// Why planned work cannot be recorded as it stands.
pub fn planned(model: &Model, whose: Whose, log: LogId, work: &Work) -> Option<String> {
    let refused = plan::care::may_do(&model.bench(whose).state(log), work);
    refused.err().map(|refusal| talk::say(&refusal.say, &model.prefs))
}

/// Work of a kind.
///
/// # Errors
/// Every field refused, in words.
pub fn work(
    model: &Model,
    whose: Whose,
    log: LogId,
    kind: &'static Kind,
    texts: &[(String, String)],
) -> Result<Body, Vec<(String, String)>> {
    let prefs: &Prefs = &model.prefs;
    let words = |refusal: Refusal| (refusal.field.clone(), talk::say(&refusal.say, prefs));
    let pairs = texts.iter().map(|(name, text)| (name.as_str(), text.as_str()));
    let body =
        desk::work(kind, pairs, prefs).map_err(|refusals| refusals.into_iter().map(words).collect::<Vec<_>>())?;
    if let Body::Work(work) = &body
        && matches!(log, LogId::Wig(_))
    {
        plan::care::may_do(&model.bench(whose).state(log), work).map_err(|refusal| vec![words(refusal)])?;
    }
    Ok(body)
}
