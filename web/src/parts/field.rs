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
    id::LotId,
    wig::{figure::Origin, zone::Zone},
};
use yew::prelude::*;

use super::{cell::use_cell, typed::text_of};
use crate::{
    shell::{
        js,
        talk::{self, WORDS, t, ta},
    },
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
    /// A figure as it stands: its likely value and its ground.
    pub fn figure(likely: &Arg, origin: &Origin, prefs: &measure::prefs::Prefs) -> Stands {
        Stands { value: likely.words(&WORDS, prefs), ground: ground(origin) }
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
        Origin::Follows { slot, source, sure } => {
            Some(ta("web.follows_from", [Arg::Text(talk::field(slot)), Arg::from(source.text), Arg::Key(sure.label())]))
        }
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
    /// A hint under the label.
    #[prop_or_default]
    pub hint: Option<String>,
}

pub(crate) fn of_name(of: Of) -> String {
    match of {
        Of::Wig => String::new(),
        Of::Zone(zone) => zone.name().to_owned(),
        Of::Lot(lot) => lot.to_string(),
        Of::Step(step) => step.to_string(),
    }
}

/// A field, with what stands for it and a hint by its key.
pub fn figure(
    whose: Whose,
    log: LogId,
    slot: &'static str,
    of: Of,
    stands: Option<Stands>,
    hint: Option<&str>,
) -> Html {
    html! { <FigureField {whose} {log} {slot} {of} {stands} hint={hint.map(t)} /> }
}

/// The part.
#[component]
pub fn FigureField(props: &Props) -> Html {
    let desk = use_desk();
    let Some(field) = desk::field_of(props.log, props.slot) else { return html! {} };
    let id = format!("{}-{}", props.slot, of_name(props.of)).trim_end_matches('-').to_owned();
    let address = format!("{}.{}", props.log, id);
    let state = desk.state(props.whose, props.log);
    let held =
        record::history::entry::Key::new(props.log, props.slot, props.of).and_then(|key| state.held(key).cloned());
    let said = held.as_ref().and_then(|held| held.value.as_ref()).map(|value| value.text());
    let draft = {
        let address = address.clone();
        use_cell(move || drafts::read(&address))
    };
    let refusal = use_cell(|| None::<String>);

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
        let (commit, id) = (commit.clone(), id.clone());
        Callback::from(move |_: MouseEvent| {
            commit.emit(String::new());
            js::focus_id(&id);
        })
    };
    let value = draft.get().or(said.clone()).unwrap_or_default();
    let label = talk::field(props.slot);
    let assumed = said.is_none() && props.stands.is_some();
    let note_id = format!("{id}-note");
    let class = classes!("figure", assumed.then_some("assumed"), refusal.get().is_some().then_some("refused"));
    let shown = Shown {
        id: &id,
        value: &value,
        stands: props.stands.as_ref().map(|stands| stands.value.as_str()),
        refused: refusal.get().is_some(),
        lots: &[],
    };
    let two = held.as_ref().filter(|held| held.two_answers);
    html! {
        <div {class}>
            <label for={id.clone()}>{ label }</label>
            if let Some(hint) = &props.hint { <p class="hint">{ hint }</p> }
            { control(field, &shown, &commit, &typed) }
            <p class="note" id={note_id}>
                if let Some(reason) = refusal.get() {
                    <span class="reason" role="alert">{ reason }</span>
                } else if draft.get().is_some() && draft.get() != said {
                    <span class="unsaved">{ t("web.unsaved") }</span>
                } else if let (None, Some(stands)) = (&said, &props.stands) {
                    if let Some(ground) = &stands.ground { <span class="ground">{ ground }</span> }
                }
                if said.is_some() && props.stands.is_some() && is_figure(&field.holds) {
                    <button type="button" class="plain" onclick={take_back}>{ t("web.take_back") }</button>
                }
            </p>
            if let Some(held) = two { { two_answers(&desk, props, &id, held) } }
        </div>
    }
}

/// Whether a slot holds a figure, which goes back to its assumption by a button; a choice has that as its first option.
fn is_figure(holds: &Holds) -> bool {
    matches!(holds, Holds::Quantity(_) | Holds::AnyOf(_) | Holds::Count(..) | Holds::Money)
}

/// Both values of a conflict, each to choose.
fn two_answers(desk: &crate::store::desk::Desk, props: &Props, id: &str, held: &record::history::fold::Held) -> Html {
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
            { for answers.map(|(answer, text)| {
                let (desk, props, shown, id) = (desk.clone(), props.clone(), text.clone(), id.to_owned());
                let choose = Callback::from(move |_: MouseEvent| {
                    if let Ok(body) = crate::store::judge::set(desk.model(), props.whose, props.log, props.slot, props.of, &text) {
                        js::focus_id(&id);
                        desk.write(props.whose, vec![(props.log, body)], None, Callback::noop());
                    }
                });
                html! { <button type="button" key={answer.to_string()} onclick={choose}>
                    { if shown.is_empty() { t("web.as_assumed") } else { shown } }
                </button> }
            }) }
        </div>
    }
}

/// What a control shows.
pub(crate) struct Shown<'a> {
    /// Its identity; its note's is the same with `-note`.
    pub id: &'a str,
    /// What it holds.
    pub value: &'a str,
    /// What stands while it is empty.
    pub stands: Option<&'a str>,
    /// Whether what it holds was refused.
    pub refused: bool,
    /// The lots to choose from, with their names.
    pub lots: &'a [(LotId, String)],
}

/// The control for a field: what is typed goes to `typed` at once, and to `commit` when it is left.
pub(crate) fn control(
    field: &'static Field,
    shown: &Shown<'_>,
    commit: &Callback<String>,
    typed: &Callback<String>,
) -> Html {
    let (id, value) = (shown.id.to_owned(), shown.value);
    let described = format!("{id}-note");
    let invalid = if shown.refused { "true" } else { "false" };
    let select = |options: Vec<(String, String)>| {
        let (commit, typed) = (commit.clone(), typed.clone());
        let onchange = Callback::from(move |event: Event| {
            let text = text_of(&event);
            typed.emit(text.clone());
            commit.emit(text);
        });
        let empty = shown.stands.map_or_else(|| t("web.choose"), str::to_owned);
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
    let on_typed = |typed: &Callback<String>| {
        let typed = typed.clone();
        Callback::from(move |event: InputEvent| typed.emit(text_of(&event)))
    };
    let on_change = |commit: &Callback<String>| {
        let commit = commit.clone();
        Callback::from(move |event: Event| commit.emit(text_of(&event)))
    };
    match &field.holds {
        Holds::Choice(choices) => select(choices.iter().map(|name| ((*name).to_owned(), talk::choice(name))).collect()),
        Holds::YesNo => select(["yes", "no"].iter().map(|name| ((*name).to_owned(), talk::choice(name))).collect()),
        Holds::Zone => select(Zone::ALL.iter().map(|zone| (zone.name().to_owned(), t(zone.label()))).collect()),
        Holds::Lot => select(shown.lots.iter().map(|(lot, name)| (lot.to_string(), name.clone())).collect()),
        Holds::Shade => shade(id, value, &described, invalid, shown.stands, commit, typed),
        Holds::Text(longest) if *longest > 300 => {
            html! { <textarea {id} value={value.to_owned()} oninput={on_typed(typed)} onchange={on_change(commit)} rows="3"
            aria-describedby={described} aria-invalid={invalid} /> }
        }
        holds => {
            if *holds == Holds::Date {
                return date(id, value, &described, invalid, commit, typed);
            }
            let mode = match holds {
                Holds::Quantity(_) | Holds::AnyOf(_) | Holds::Money => "decimal",
                Holds::Count(..) => "numeric",
                _ => "text",
            };
            let placeholder = shown.stands.unwrap_or_default().to_owned();
            html! { <input {id} type="text" inputmode={mode} value={value.to_owned()} {placeholder}
            oninput={on_typed(typed)} onchange={on_change(commit)}
            autocomplete="off" aria-describedby={described} aria-invalid={invalid} /> }
        }
    }
}

/// A colour: picked or typed.
fn shade(
    id: String,
    value: &str,
    described: &str,
    invalid: &'static str,
    stands: Option<&str>,
    commit: &Callback<String>,
    typed: &Callback<String>,
) -> Html {
    let picked = record::wig::shade::Shade::read(value).map_or_else(|| "#808080".to_owned(), |shade| shade.to_string());
    let on_pick = {
        let (commit, typed) = (commit.clone(), typed.clone());
        Callback::from(move |event: Event| {
            typed.emit(text_of(&event));
            commit.emit(text_of(&event));
        })
    };
    let on_input = {
        let typed = typed.clone();
        Callback::from(move |event: InputEvent| typed.emit(text_of(&event)))
    };
    let on_change = {
        let commit = commit.clone();
        Callback::from(move |event: Event| commit.emit(text_of(&event)))
    };
    html! {
        <span class="shade">
            <input type="color" value={picked} onchange={on_pick} aria-label={t("web.pick_colour")} />
            <input {id} type="text" value={value.to_owned()} placeholder={stands.unwrap_or_default().to_owned()}
                oninput={on_input} onchange={on_change} autocomplete="off"
                aria-describedby={described.to_owned()} aria-invalid={invalid} />
        </span>
    }
}

/// A day. Some browsers tell of a change at every figure of the year, so it is saved on leaving or with Enter.
fn date(
    id: String,
    value: &str,
    described: &str,
    invalid: &'static str,
    commit: &Callback<String>,
    typed: &Callback<String>,
) -> Html {
    let oninput = {
        let typed = typed.clone();
        Callback::from(move |event: InputEvent| typed.emit(text_of(&event)))
    };
    let onblur = {
        let commit = commit.clone();
        Callback::from(move |event: FocusEvent| commit.emit(text_of(&event)))
    };
    let onkeydown = {
        let commit = commit.clone();
        Callback::from(move |event: KeyboardEvent| {
            if event.key() == "Enter" {
                commit.emit(text_of(&event));
            }
        })
    };
    html! { <input {id} type="date" value={value.to_owned()} {oninput} {onblur} {onkeydown}
    autocomplete="off" aria-describedby={described.to_owned()} aria-invalid={invalid} /> }
}
