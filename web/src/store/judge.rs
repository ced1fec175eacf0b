//! Whether something typed may become an entry: the field's own limits, then what cannot be together.
//!
//! What it is: the core's checks asked in the right order. What it is not: the checks.

use measure::{prefs::Prefs, say::Say};
use record::{
    history::{
        desk,
        entry::{Body, LogId, Of},
    },
    wig::work::{Kind, Refusal},
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
