//! One figure of a wig or a lot: what stands, on what ground, and a place to type another.
//!
//! What it is: label, input, origin, refusal and draft of any slot, read from its table.
//! What it is not: what slots there are, or how they read.

use measure::say::Arg;
use record::{
    field::{Field, Holds},
    history::{
        desk,
        entry::{LogId, Of},
    },
    wig::{
        figure::{Figure, FromBase, Origin},
        zone::Zone,
    },
};
use wasm_bindgen::JsCast;
use web_sys::{HtmlInputElement, HtmlSelectElement, HtmlTextAreaElement};
use yew::prelude::*;

use crate::{
    shell::talk::{self, WORDS, t, ta},
    store::{desk::use_desk, drafts, model::Whose},
};

/// What stands for a slot while nothing is typed.
#[derive(Clone, PartialEq, Debug)]
pub struct Stands {
    /// The assumed or reckoned value, in words.
    pub value: String,
    /// On what ground, in words; nothing where somebody said it.
    pub ground: Option<String>,
}

impl Stands {
    /// A figure as it stands.
    pub fn figure<Q: FromBase>(figure: &Figure<Q>, show: impl Fn(Q) -> Arg, prefs: &measure::prefs::Prefs) -> Stands {
        Stands { value: show(figure.likely).words(&WORDS, prefs), ground: ground(&figure.origin) }
    }

    /// A plain default.
    pub fn plain(value: impl Into<String>) -> Stands {
        Stands { value: value.into(), ground: Some(t("web.assumed")) }
    }
}

fn ground(origin: &Origin) -> Option<String> {
    match origin {
        Origin::Said { .. } => None,
        Origin::Assumed { source, sure } => {
            Some(ta("web.assumed_from", [Arg::from(source.text), Arg::Key(sure.label())]))
        }
        Origin::Follows { slot, source, sure } => Some(ta(
            "web.follows_from",
            [Arg::Text(talk::field(slot)), Arg::from(source.text), Arg::Key(sure.label())],
        )),
    }
}

/// Which slot of whom.
#[derive(Properties, PartialEq, Clone)]
pub struct Props {
    /// Whose records.
    pub whose: Whose,
    /// Which log.
    pub log: LogId,
    /// The slot's name.
    pub slot: &'static str,
    /// For what.
    #[prop_or(Of::Wig)]
    pub of: Of,
    /// What stands while nothing is said.
    #[prop_or_default]
    pub stands: Option<Stands>,
    /// A label other than the slot's own.
    #[prop_or_default]
    pub label: Option<String>,
    /// A hint under the label.
    #[prop_or_default]
    pub hint: Option<String>,
}

pub(crate) fn of_name(of: Of) -> String {
    match of {
        Of::Wig => String::new(),
        Of::Zone(zone) => zone.name().to_owned(),
        Of::Lot(lot) => lot.to_string(),
    }
}

/// The part.
#[component]
pub fn FigureField(props: &Props) -> Html {
    let desk = use_desk();
    let Some(field) = desk::field_of(props.log, props.slot) else { return html! {} };
    let id = format!("{}-{}", props.slot, of_name(props.of)).trim_end_matches('-').to_owned();
    let address = format!("{}.{}", props.log, id);
    let state = desk.state(props.whose, props.log);
    let held = record::history::entry::Key::new(props.log, props.slot, props.of).and_then(|key| state.held(key).cloned());
    let said = held.as_ref().and_then(|held| held.value.as_ref()).map(|value| value.text());
    let draft = {
        let address = address.clone();
        use_state(move || drafts::read(&address))
    };
    let refusal = use_state(|| None::<String>);

    let commit = {
        let (desk, draft, refusal, props, address) =
            (desk.clone(), draft.clone(), refusal.clone(), props.clone(), address.clone());
        let said = said.clone();
        Callback::from(move |text: String| {
            if text.trim() == said.clone().unwrap_or_default() {
                drafts::drop(&address);
                draft.set(None);
                refusal.set(None);
                return;
            }
            match crate::store::judge::set(desk.model(), props.whose, props.log, props.slot, props.of, &text) {
                Err(reason) => refusal.set(Some(reason)),
                Ok(body) => {
                    refusal.set(None);
                    let (draft, address) = (draft.clone(), address.clone());
                    let then = Callback::from(move |safe: bool| {
                        // What could not be saved stays a draft.
                        if safe {
                            drafts::drop(&address);
                            draft.set(None);
                        }
                    });
                    desk.write(props.whose, vec![(props.log, body)], None, then);
                }
            }
        })
    };
    let typed = {
        let (draft, address) = (draft.clone(), address.clone());
        Callback::from(move |text: String| {
            drafts::keep(&address, &text);
            draft.set(Some(text));
        })
    };
    let take_back = {
        let commit = commit.clone();
        Callback::from(move |_: MouseEvent| commit.emit(String::new()))
    };
    let value = (*draft).clone().or(said.clone()).unwrap_or_default();
    let label = props.label.clone().unwrap_or_else(|| talk::field(props.slot));
    let assumed = said.is_none() && props.stands.is_some();
    let note_id = format!("{id}-note");
    let class = classes!("figure", assumed.then_some("assumed"), refusal.is_some().then_some("refused"));
    let two = held.as_ref().filter(|held| held.two_answers);
    html! {
        <div {class}>
            <label for={id.clone()}>{ label }</label>
            if let Some(hint) = &props.hint { <p class="hint">{ hint }</p> }
            { input(field, &id, &note_id, &value, props.stands.as_ref(), refusal.is_some(), &commit, &typed) }
            <p class="note" id={note_id}>
                if let Some(reason) = (*refusal).clone() {
                    <span class="reason" role="alert">{ reason }</span>
                } else if draft.is_some() && draft.as_ref() != said.as_ref() {
                    <span class="unsaved">{ t("web.unsaved") }</span>
                } else if let (None, Some(stands)) = (&said, &props.stands) {
                    if let Some(ground) = &stands.ground { <span class="ground">{ ground }</span> }
                }
                if said.is_some() && props.slot != "name" {
                    <button type="button" class="plain" onclick={take_back}>{ t("web.take_back") }</button>
                }
            </p>
            if let Some(held) = two { { two_answers(&desk, props, held) } }
        </div>
    }
}

/// Both values of a conflict, each to choose.
fn two_answers(desk: &crate::store::desk::Desk, props: &Props, held: &record::history::fold::Held) -> Html {
    let log = desk.model().bench(props.whose).log(props.log);
    let answers = held.heads.iter().filter_map(|id| match log.get(*id).map(|entry| &entry.body) {
        Some(record::history::entry::Body::Set(setting)) => {
            Some((*id, setting.value.as_ref().map(|value| value.text()).unwrap_or_default()))
        }
        _ => None,
    });
    html! {
        <div class="two-answers" role="group" aria-label={t("web.two_answers")}>
            <p>{ t("web.two_answers_hint") }</p>
            { for answers.map(|(id, text)| {
                let (desk, props, shown) = (desk.clone(), props.clone(), text.clone());
                let choose = Callback::from(move |_: MouseEvent| {
                    if let Ok(body) = crate::store::judge::set(desk.model(), props.whose, props.log, props.slot, props.of, &text) {
                        desk.write(props.whose, vec![(props.log, body)], None, Callback::noop());
                    }
                });
                html! { <button type="button" key={id.to_string()} onclick={choose}>
                    { if shown.is_empty() { t("web.as_assumed") } else { shown } }
                </button> }
            }) }
        </div>
    }
}

#[allow(clippy::too_many_arguments, reason = "one private helper, every part named where it is called")]
fn input(
    field: &'static Field,
    id: &str,
    note_id: &str,
    value: &str,
    stands: Option<&Stands>,
    refused: bool,
    commit: &Callback<String>,
    typed: &Callback<String>,
) -> Html {
    let id = id.to_owned();
    let described = note_id.to_owned();
    let invalid = if refused { "true" } else { "false" };
    let select = |options: Vec<(String, String)>| {
        let (commit, typed) = (commit.clone(), typed.clone());
        let onchange = Callback::from(move |event: Event| {
            if let Some(select) = event.target().and_then(|target| target.dyn_into::<HtmlSelectElement>().ok()) {
                typed.emit(select.value());
                commit.emit(select.value());
            }
        });
        let empty = stands.map_or_else(|| t("web.choose"), |stands| stands.value.clone());
        html! {
            <select id={id.clone()} {onchange} aria-describedby={described.clone()} aria-invalid={invalid}>
                <option value="" selected={value.is_empty()}>{ empty }</option>
                { for options.into_iter().map(|(name, label)| {
                    let selected = name == value;
                    html! { <option value={name} {selected}>{ label }</option> }
                }) }
            </select>
        }
    };
    match &field.holds {
        Holds::Choice(choices) => {
            select(choices.iter().map(|name| ((*name).to_owned(), talk::choice(name))).collect())
        }
        Holds::YesNo => select(["yes", "no"].iter().map(|name| ((*name).to_owned(), talk::choice(name))).collect()),
        Holds::Zone => select(Zone::ALL.iter().map(|zone| (zone.name().to_owned(), t(zone.label()))).collect()),
        Holds::Text(longest) if *longest > 300 => {
            let (commit, typed) = (commit.clone(), typed.clone());
            let read = |event: &Event| event.target().and_then(|target| target.dyn_into::<HtmlTextAreaElement>().ok());
            let oninput = Callback::from(move |event: InputEvent| {
                if let Some(area) = read(&event) {
                    typed.emit(area.value());
                }
            });
            let onchange = Callback::from(move |event: Event| {
                if let Some(area) = read(&event) {
                    commit.emit(area.value());
                }
            });
            html! { <textarea {id} value={value.to_owned()} {oninput} {onchange} rows="3"
                aria-describedby={described} aria-invalid={invalid} /> }
        }
        holds => {
            let (commit, typed) = (commit.clone(), typed.clone());
            let read = |event: &Event| event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
            let oninput = Callback::from(move |event: InputEvent| {
                if let Some(input) = read(&event) {
                    typed.emit(input.value());
                }
            });
            let onchange = Callback::from(move |event: Event| {
                if let Some(input) = read(&event) {
                    commit.emit(input.value());
                }
            });
            let kind = if *holds == Holds::Date { "date" } else { "text" };
            let mode = match holds {
                Holds::Quantity(_) | Holds::AnyOf(_) | Holds::Money => "decimal",
                Holds::Count(..) => "numeric",
                _ => "text",
            };
            let placeholder = stands.map(|stands| stands.value.clone()).unwrap_or_default();
            html! { <input {id} type={kind} inputmode={mode} value={value.to_owned()} {placeholder} {oninput} {onchange}
                autocomplete="off" aria-describedby={described} aria-invalid={invalid} /> }
        }
    }
}
