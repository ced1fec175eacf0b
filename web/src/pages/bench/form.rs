//! A form for any kind of work, with what speaks against it told before it is recorded.
//!
//! What it is: fields from the kind's table, drafts, checks beside them. What it is not: the checks.

use measure::{civil::Minute, say::Arg};
use plan::care::Finding;
use record::{
    field::{Field, Holds},
    history::{
        desk,
        entry::{Body, LogId, Says},
    },
    id::{EntryId, LotId, StepId},
    wig::{
        work::{Kind, Work, kind_named, note},
        zone::Zones,
    },
};
use yew::prelude::*;

use super::{checks, photo::PhotoField};
use crate::{
    parts::{
        cell::use_cell,
        field::{Shown, control},
        typed::text_of,
    },
    shell::{
        focus, js,
        talk::{field, t, ta},
    },
    store::{desk::use_desk, drafts, judge, model::Whose},
};

/// A kind of work by its name.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Named(pub &'static str);

impl Named {
    fn kind(self) -> &'static Kind {
        kind_named(self.0).unwrap_or(&note::KIND)
    }
}

/// What stands in the fields at first.
pub type Given = Vec<(&'static str, String)>;

/// What fills a form with work as it is.
pub fn given(work: &Work) -> Given {
    work.values().map(|(name, value)| (name, value.text())).collect()
}

/// A form for one kind of work.
#[derive(Properties, PartialEq)]
pub struct FormProps {
    /// Whose records.
    pub whose: Whose,
    /// Which log.
    pub log: LogId,
    /// Which kind.
    pub kind: Named,
    /// The step of the plan it is done for.
    #[prop_or_default]
    pub step: Option<StepId>,
    /// An entry to put right instead of a new one.
    #[prop_or_default]
    pub correct: Option<EntryId>,
    /// Called when it was saved.
    #[prop_or_default]
    pub then: Callback<()>,
    /// What stands in the fields at first.
    #[prop_or_default]
    pub given: Given,
}

/// What stands in the fields of a form that nobody has typed in.
fn started(kind: &Kind, given: &[(&'static str, String)]) -> Given {
    let of = |name: &str| given.iter().find(|(one, _)| *one == name).map(|(_, text)| text.clone()).unwrap_or_default();
    kind.every_field().map(|field| (field.name, of(field.name))).collect()
}

/// A form for new work, with what stands in it at first.
pub fn work_form(whose: Whose, log: LogId, kind: Named, given: Given, then: Callback<()>) -> Html {
    html! { <WorkForm {whose} {log} {kind} {given} {then} /> }
}

/// Whether a field is asked for by name, not filled by the form itself.
fn is_asked(field: &Field, step: Option<StepId>) -> bool {
    match field.name {
        "step" | "overruled" | "judgement" => false,
        "more_to_come" => step.is_some(),
        _ => true,
    }
}

/// What is seldom filled in, and folded away under "More" with the time it was done.
const MORE: &[&str] = &["minutes", "remark", "result", "more_to_come"];

/// The form.
#[component]
pub fn WorkForm(props: &FormProps) -> Html {
    let desk = use_desk();
    let kind = props.kind.kind();
    let beside = props.correct.map(|id| id.to_string()).or(props.step.map(|id| id.to_string())).unwrap_or_default();
    let prefix = format!("{}.{}.{beside}.", props.log, kind.name);
    let texts = {
        let (prefix, given) = (prefix.clone(), props.given.clone());
        use_cell(move || {
            let draft = |name: &str| drafts::read(&format!("{prefix}{name}"));
            started(kind, &given)
                .into_iter()
                .map(|(name, text)| (name, draft(name).unwrap_or(text)))
                .collect::<Vec<_>>()
        })
    };
    // What is filled in already is seen; later the person folds it as they like.
    let more = use_cell({
        let texts = texts.clone();
        move || texts.get().iter().any(|(name, text)| MORE.contains(name) && !text.is_empty())
    });
    let done = use_cell(|| None::<String>);
    let refusals = use_cell(Vec::<(String, String)>::new);
    let lots: Vec<(LotId, String)> =
        desk.model().bench(props.whose).lots().iter().map(|lot| (lot.id, lot.name.clone())).collect();
    let dyes: Vec<(LotId, String)> =
        desk.model().bench(props.whose).dyes().into_iter().map(|dye| (dye.id, dye.name)).collect();
    let end = if beside.is_empty() { String::new() } else { format!("-{beside}") };
    let id = |name: &str| format!("{}-{name}{end}", kind.name);

    let set = {
        let (texts, prefix) = (texts.clone(), prefix.clone());
        Callback::from(move |(name, text): (&'static str, String)| {
            drafts::keep(&format!("{prefix}{name}"), &text);
            let mut now = texts.get();
            now.retain(|(one, _)| *one != name);
            now.push((name, text));
            texts.set(now);
        })
    };
    // What is typed so far, where it reads; corrections are not warned of: what was done was done.
    let now = texts.get();
    let found: Vec<Finding> = if props.correct.is_none() {
        let pairs = now.iter().map(|(name, text)| (*name, text.as_str()));
        let work = Work::read(kind, pairs, &desk.model().prefs).ok();
        work.map(|work| judge::findings(desk.model(), props.whose, props.log, &work)).unwrap_or_default()
    } else {
        Vec::new()
    };
    let overruled = checks::names(&found);
    let onsubmit = {
        let given = props.given.clone();
        let (desk, texts, refusals, done) = (desk.clone(), texts.clone(), refusals.clone(), done.clone());
        let (whose, log, correct, then) = (props.whose, props.log, props.correct, props.then.clone());
        let (step, overruled) = (props.step, overruled.clone());
        let prefix = prefix.clone();
        let first_id = (id(""), end.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let minute = match done.get().as_deref() {
                None | Some("") => None,
                Some(text) => match Minute::read(text) {
                    Some(minute) => Some(minute),
                    None => {
                        let reason = ta("web.not_a_minute", [Arg::from(text)]);
                        refusals.set(vec![("done".to_owned(), reason)]);
                        return;
                    }
                },
            };
            let mut pairs: Vec<(String, String)> =
                texts.get().into_iter().map(|(name, text)| (name.to_owned(), text)).collect();
            if let Some(step) = step {
                pairs.push(("step".to_owned(), step.to_string()));
            }
            if !overruled.is_empty() {
                pairs.push(("overruled".to_owned(), overruled.clone()));
            }
            let body = match judge::work(desk.model(), whose, log, kind, &pairs) {
                Ok(body) => body,
                Err(all) => {
                    if let Some((name, _)) = all.first() {
                        let id = format!("{}{name}{}", first_id.0.trim_end_matches(&first_id.1), first_id.1);
                        // What is folded away can have the focus once it is unfolded.
                        if !js::focus_id(&id) {
                            focus::later(vec![id]);
                        }
                    }
                    refusals.set(all);
                    return;
                }
            };
            let body = match (correct, body) {
                (Some(target), Body::Work(work)) => {
                    let here = desk.model().bench(whose).log(log);
                    let at = minute.or_else(|| here.get(target).map(|entry| entry.done));
                    match at {
                        Some(at) => desk::correct(&here, target, at, Says::Work(work)),
                        None => Body::Work(work),
                    }
                }
                (_, body) => body,
            };
            refusals.set(Vec::new());
            let (texts, then, prefix, given) = (texts.clone(), then.clone(), prefix.clone(), given.clone());
            let after = Callback::from(move |safe: bool| {
                if safe {
                    kind.every_field().for_each(|field| drafts::drop(&format!("{prefix}{}", field.name)));
                    texts.set(started(kind, &given));
                    then.emit(());
                }
            });
            desk.write(whose, vec![(log, body)], minute, after);
        })
    };
    let on_done = {
        let done = done.clone();
        Callback::from(move |event: Event| done.set(Some(text_of(&event))))
    };
    let refusals = refusals.get();
    let refused = |name: &str| refusals.iter().find(|(one, _)| one == name).map(|(_, reason)| reason.clone());
    let unfolded = more.get() || refusals.iter().any(|(name, _)| name == "done" || MORE.contains(&name.as_str()));
    let one = |of: &'static Field| {
        let value = now.iter().find(|(name, _)| *name == of.name).map(|(_, text)| text.clone());
        work_field(
            of,
            &id(of.name),
            value.unwrap_or_default(),
            refused(of.name),
            if of.name.starts_with("stock") { &dyes } else { &lots },
            &set,
            props.whose,
        )
    };
    let label = t(match (props.correct.is_some(), overruled.is_empty()) {
        (true, _) => "web.correct_save",
        (_, false) => "web.my_judgement",
        _ => "web.record_save",
    });
    html! {
        <form class="form work" {onsubmit} novalidate=true>
            if props.correct.is_none() { { checks::hazard(kind, &now, &desk.model().prefs) } }
            <div class="fields">
                { for kind.every_field().filter(|of| is_asked(of, props.step) && !MORE.contains(&of.name)).map(one) }
            </div>
            <details open={unfolded}><summary>{ t("web.form_more") }</summary><div class="fields">
                { for kind.every_field().filter(|of| is_asked(of, props.step) && MORE.contains(&of.name)).map(one) }
                <div class={classes!("figure", refused("done").map(|_| "refused"))}>
                    <label for={id("done")}>{ t("web.done_at") }</label>
                    <input id={id("done")} type="datetime-local" onchange={on_done} value={done.get().unwrap_or_default()} />
                    <p class="note">
                        if let Some(reason) = refused("done") { <span class="reason" role="alert">{ reason }</span> }
                        else { <span class="ground">{ t("web.done_hint") }</span> }
                    </p>
                </div>
            </div></details>
            { checks::findings(&found, &desk.model().prefs) }
            if !overruled.is_empty() {
                <div class="fields">{ for kind.every_field().filter(|of| of.name == "judgement").map(one) }</div>
            }
            <p class="actions"><button type="submit" class="primary">{ label }</button></p>
        </form>
    }
}

/// One field of work, with its label and its refusal.
#[allow(clippy::too_many_arguments, reason = "each is one fact of the field")]
pub fn work_field(
    of: &'static Field,
    id: &str,
    value: String,
    refusal: Option<String>,
    lots: &[(LotId, String)],
    set: &Callback<(&'static str, String)>,
    whose: Whose,
) -> Html {
    let name = of.name;
    let note = format!("{id}-note");
    let typed = {
        let set = set.clone();
        Callback::from(move |text: String| set.emit((name, text)))
    };
    let input = match of.holds {
        Holds::Zones => zones(id, &value, &typed),
        Holds::Photo => html! { <PhotoField id={id.to_owned()} {value} {whose} {typed} /> },
        _ => {
            let shown = Shown { id, value: &value, stands: None, refused: refusal.is_some(), lots };
            control(of, &shown, &Callback::noop(), &typed)
        }
    };
    html! {
        <div class={classes!("figure", refusal.is_some().then_some("refused"))}>
            <label for={id.to_owned()}>{ field(name) }{ if of.required { format!(" ({})", t("web.needed")) } else { String::new() } }</label>
            { input }
            <p class="note" id={note}>
                if let Some(reason) = refusal { <span class="reason" role="alert">{ reason }</span> }
            </p>
        </div>
    }
}

/// Zones to tick; none ticked is the whole wig.
fn zones(id: &str, value: &str, typed: &Callback<String>) -> Html {
    let chosen = Zones::read(value);
    html! {
        <div class="ticks" role="group" id={id.to_owned()} tabindex="-1" aria-label={field("zones")}>
            { for Zones::ALL.each().map(|zone| {
                let has = chosen.is_some_and(|zones| zones.has(zone));
                let typed = typed.clone();
                let onchange = Callback::from(move |_: Event| {
                    let names: Vec<&str> = Zones::ALL
                        .each()
                        .filter(|one| (*one == zone) != chosen.is_some_and(|zones| zones.has(*one)))
                        .map(|one| one.name())
                        .collect();
                    typed.emit(names.join(" "));
                });
                html! { <label class="tick"><input type="checkbox" checked={has} {onchange} /><span>{ t(zone.label()) }</span></label> }
            }) }
        </div>
    }
}
