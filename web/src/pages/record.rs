//! What was done: recording weft and notes, and the log with its corrections.
//!
//! What it is: the bench's side of the record. What it is not: the plan.

use measure::{civil::Minute, say::Arg};
use record::{
    field::Value,
    history::{
        desk,
        entry::{Body, Entry, LogId, Of, Says},
    },
    id::{EntryId, WigId},
    wig::work::{Kind, Work, note},
    workshop::lots::Lot,
};
use yew::prelude::*;

use crate::parts::plain::{p, section};

use crate::{
    parts::{
        cell::use_cell,
        confirm::confirm,
        field::{Shown, control},
        typed::text_of,
    },
    shell::{
        focus, js,
        talk::{choice, field, t, ta},
    },
    store::{
        desk::{Desk, use_desk},
        drafts, judge,
        model::Whose,
    },
};

/// The page.
pub fn page(desk: &Desk, wig: WigId, whose: Whose) -> Html {
    let log = LogId::Wig(wig);
    html! {
        <>
            { section("record-sew", "web.record_sew", html! { <>
                { work_form(whose, log, Named("sew_weft"), Vec::new(), Callback::noop()) }
            </> }) }
            { section("record-note", "web.record_note", html! { <>
                { work_form(whose, log, Named("note"), Vec::new(), Callback::noop()) }
            </> }) }
            { section("record-log", "web.record_log", html! { <>
                { history(desk, whose, log) }
            </> }) }
        </>
    }
}

/// A kind of work by its name.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Named(pub &'static str);

impl Named {
    fn kind(self) -> &'static Kind {
        record::wig::work::kind_named(self.0).unwrap_or(&note::KIND)
    }
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
    /// An entry to put right instead of a new one.
    #[prop_or_default]
    pub correct: Option<EntryId>,
    /// Called when it was saved.
    #[prop_or_default]
    pub then: Callback<()>,
    /// What stands in the fields at first.
    #[prop_or_default]
    pub given: Vec<(&'static str, String)>,
}

/// What stands in the fields of a form that nobody has typed in.
fn started(kind: &Kind, given: &[(&'static str, String)]) -> Vec<(&'static str, String)> {
    let of = |name: &str| given.iter().find(|(one, _)| *one == name).map(|(_, text)| text.clone()).unwrap_or_default();
    kind.fields.iter().map(|field| (field.name, of(field.name))).collect()
}

/// A form for new work, with what stands in it at first.
pub fn work_form(
    whose: Whose,
    log: LogId,
    kind: Named,
    given: Vec<(&'static str, String)>,
    then: Callback<()>,
) -> Html {
    html! { <WorkForm {whose} {log} {kind} {given} {then} /> }
}

/// The form.
#[component]
pub fn WorkForm(props: &FormProps) -> Html {
    let desk = use_desk();
    let kind = props.kind.kind();
    let prefix = format!("{}.{}.{}.", props.log, kind.name, props.correct.map(|id| id.to_string()).unwrap_or_default());
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
    let done = use_cell(|| None::<String>);
    let refusals = use_cell(Vec::<(String, String)>::new);
    let lots = desk.model().bench(props.whose).lots();
    let id =
        |name: &str| format!("{}-{}{}", kind.name, name, props.correct.map(|id| format!("-{id}")).unwrap_or_default());

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
    let onsubmit = {
        let given = props.given.clone();
        let (desk, texts, refusals, done) = (desk.clone(), texts.clone(), refusals.clone(), done.clone());
        let (whose, log, correct, then) = (props.whose, props.log, props.correct, props.then.clone());
        let prefix = prefix.clone();
        let first_id = id("");
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
            let pairs: Vec<(String, String)> =
                texts.get().into_iter().map(|(name, text)| (name.to_owned(), text)).collect();
            let body = match judge::work(desk.model(), whose, log, kind, &pairs) {
                Ok(body) => body,
                Err(all) => {
                    if let Some((name, _)) = all.first() {
                        js::focus_id(&format!("{first_id}{name}"));
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
                    kind.fields.iter().for_each(|field| drafts::drop(&format!("{prefix}{}", field.name)));
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
    let (now, refusals) = (texts.get(), refusals.get());
    let refused = |name: &str| refusals.iter().find(|(one, _)| one == name).map(|(_, reason)| reason.clone());
    html! {
        <form class="form work" {onsubmit} novalidate=true>
            <div class="fields">
                { for kind.fields.iter().map(|field| {
                    let value = now.iter().find(|(name, _)| *name == field.name).map(|(_, text)| text.clone());
                    work_field(field, &id(field.name), value.unwrap_or_default(), refused(field.name), &lots, &set)
                }) }
                <div class={classes!("figure", refused("done").map(|_| "refused"))}>
                    <label for={id("done")}>{ t("web.done_at") }</label>
                    <input id={id("done")} type="datetime-local" onchange={on_done} value={done.get().unwrap_or_default()} />
                    <p class="note">
                        if let Some(reason) = refused("done") { <span class="reason" role="alert">{ reason }</span> }
                        else { <span class="ground">{ t("web.done_hint") }</span> }
                    </p>
                </div>
            </div>
            <p class="actions"><button type="submit" class="primary">
                { if props.correct.is_some() { t("web.correct_save") } else { t("web.record_save") } }
            </button></p>
        </form>
    }
}

fn work_field(
    of: &'static record::field::Field,
    id: &str,
    value: String,
    refusal: Option<String>,
    lots: &[Lot],
    set: &Callback<(&'static str, String)>,
) -> Html {
    let name = of.name;
    let note = format!("{id}-note");
    let typed = {
        let set = set.clone();
        Callback::from(move |text: String| set.emit((name, text)))
    };
    let shown = Shown { id, value: &value, stands: None, refused: refusal.is_some(), lots };
    let input = control(of, &shown, &Callback::noop(), &typed);
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

/// The log, last first, every entry with its corrections.
fn history(desk: &Desk, whose: Whose, id: LogId) -> Html {
    let bench = desk.model().bench(whose);
    let (log, state) = (bench.log(id), bench.state(id));
    let mut entries: Vec<&Entry> = log.entries().filter(|entry| !matches!(entry.body, Body::Amend(_))).collect();
    measure::order::sort_by(&mut entries, &|a, b| (b.done, b.lamport, b.id).cmp(&(a.done, a.lamport, a.id)));
    if entries.is_empty() {
        return html! { { p("hint", t("web.log_empty")) } };
    }
    let names = Names { lots: &bench.lots() };
    let items: Vec<Html> = entries
        .iter()
        .map(|entry| {
            let amended: Vec<&Entry> = log
                .entries()
                .filter(|other| matches!(&other.body, Body::Amend(amendment) if amendment.target == entry.id))
                .collect();
            let stands = state.works().iter().find(|done| done.entry == entry.id);
            let in_force = match &entry.body {
                Body::Work(_) => stands.is_some(),
                Body::Set(setting) => state.held(setting.key).is_some_and(|held| held.heads.contains(&entry.id)),
                Body::Amend(_) => false,
            };
            let undone =
                amended.iter().any(|other| matches!(&other.body, Body::Amend(amendment) if amendment.to.is_none()))
                    && !in_force;
            let text = match (&entry.body, stands) {
                (_, Some(done)) => names.work(&done.work),
                (body, None) => names.body(body),
            };
            let was = (stands.is_some_and(|done| done.amended)).then(|| names.body(&entry.body));
            html! {
                <li key={entry.id.to_string()} id={format!("entry-{}", entry.id)} tabindex="-1" class={classes!("entry", undone.then_some("undone"))}>
                    <p class="when">{ stands.map_or(entry.done, |done| done.done).to_string().replace('T', " ") }</p>
                    <p class="what">{ text }</p>
                    if let Some(was) = was { <p class="hint">{ ta("web.was", [Arg::Text(was)]) }</p> }
                    if undone { { p("hint", t("web.undone")) } }
                    <EntryActions {whose} log={id} entry={entry.id} {undone} />
                </li>
            }
        })
        .collect();
    html! { <ol class="log" reversed=true>{ for items }</ol> }
}

/// Which entry.
#[derive(Properties, PartialEq)]
struct ActionProps {
    whose: Whose,
    log: LogId,
    entry: EntryId,
    undone: bool,
}

/// Undo and correct, beside their entry.
#[component]
fn EntryActions(props: &ActionProps) -> Html {
    let desk = use_desk();
    let correcting = use_cell(|| false);
    let asked = use_cell(|| false);
    let state = desk.state(props.whose, props.log);
    let work = state.works().iter().find(|done| done.entry == props.entry).map(|done| done.work.clone());
    let undo = {
        let (desk, whose, id, entry) = (desk.clone(), props.whose, props.log, props.entry);
        let asked = asked.clone();
        Callback::from(move |_: MouseEvent| {
            asked.set(false);
            let body = desk::undo(&desk.model().bench(whose).log(id), entry);
            let then = Callback::from(move |_: bool| focus::later(vec![format!("entry-{entry}")]));
            desk.write(whose, vec![(id, body)], None, then);
        })
    };
    let toggle = {
        let correcting = correcting.clone();
        Callback::from(move |_: MouseEvent| correcting.set(!correcting.get()))
    };
    if props.undone {
        return html! {};
    }
    let given: Option<(Named, Vec<(&'static str, String)>)> =
        work.map(|work| (Named(work.kind().name), work.values().map(|(name, value)| (name, value.text())).collect()));
    html! {
        <div class="entry-actions">
            { confirm(&asked, &format!("undo-{}", props.entry), t("web.undo"), t("web.undo_ask"), undo) }
            if let Some((kind, given)) = given {
                <button type="button" class="plain" aria-expanded={if correcting.get() { "true" } else { "false" }} onclick={toggle}>{ t("web.correct") }</button>
                if correcting.get() {
                    <WorkForm whose={props.whose} log={props.log} {kind} correct={Some(props.entry)} {given}
                        then={let (correcting, entry) = (correcting.clone(), props.entry); Callback::from(move |()| {
                            correcting.set(false);
                            focus::later(vec![format!("entry-{entry}")]);
                        })} />
                }
            }
        </div>
    }
}

/// Entries in words.
struct Names<'a> {
    lots: &'a [Lot],
}

impl Names<'_> {
    fn value(&self, value: &Value) -> String {
        match value {
            Value::Choice(name) => choice(name),
            Value::Zone(zone) => t(zone.label()),
            Value::YesNo(yes) => choice(if *yes { "yes" } else { "no" }),
            Value::Lot(id) => {
                self.lots.iter().find(|lot| lot.id == *id).map_or_else(|| t("web.lot_unknown"), |lot| lot.name.clone())
            }
            other => other.text(),
        }
    }

    fn work(&self, work: &Work) -> String {
        let parts: Vec<String> = work
            .kind()
            .fields
            .iter()
            .filter_map(|of| work.get(of.name).map(|value| (of.name, value)))
            .map(|(name, value)| match name {
                // The kind's own words say what they are.
                "words" | "sewn_as" => self.value(value),
                _ => format!("{}: {}", field(name), self.value(value)),
            })
            .collect();
        format!("{}: {}", t(&format!("work.{}", work.kind().name)), parts.join("; "))
    }

    fn body(&self, body: &Body) -> String {
        match body {
            Body::Work(work) => self.work(work),
            Body::Set(setting) => {
                let of = match setting.key.of {
                    Of::Wig => String::new(),
                    Of::Zone(zone) => format!("{}, ", t(zone.label())),
                    Of::Lot(lot) => format!("{}, ", self.value(&Value::Lot(lot))),
                };
                let value = setting.value.as_ref().map_or_else(|| t("web.as_assumed"), |value| self.value(value));
                format!("{of}{}: {value}", field(setting.key.slot))
            }
            Body::Amend(_) => String::new(),
        }
    }
}
