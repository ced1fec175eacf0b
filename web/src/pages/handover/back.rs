//! What goes out of a wig and comes back to it, under its sheet: the link, the slip, the paper with its ticked numbers.
//!
//! What it is: the owner's side. What it is not: the sheet itself (see `paper`), or the helper's side (see `helper`).

use format::handover::{
    handed as coded,
    link::{self, Opened},
};
use measure::say::Arg;
use record::{
    handover::{handed::Handed, numbers, slip::Slip, take},
    history::entry::LogId,
    id::{StepId, WigId},
    wig::{
        steps::{Progress, Step, steps},
        work::{Work, photo},
    },
};
use yew::prelude::*;

use super::{
    ACCEPT, FILE_MOST,
    others::Others,
    send::{link_box, linked},
    take::Take,
};
use crate::{
    pages::bench::{
        checks,
        form::{Named, WorkForm, given},
        names::Names,
    },
    parts::{
        cell::use_cell,
        plain::{button, folded, p, section},
        typed::text_of,
    },
    shell::{
        js,
        talk::{say, t, ta},
    },
    store::{desk::use_desk, judge, model::Whose},
};

/// Which wig, and what its sheet carries.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// Which wig.
    pub wig: WigId,
    /// Whose.
    pub whose: Whose,
    /// The sheet's data, once it is made.
    pub handed: Option<Handed>,
}

/// The parts.
#[component]
pub fn Back(props: &Props) -> Html {
    let made = use_cell(|| None::<(Handed, String, String)>);
    let link = {
        let (handed, made) = (props.handed.clone(), made.clone());
        Callback::from(move |_: MouseEvent| {
            let Some(handed) = handed.clone() else { return };
            let (words, link) = match coded::payload(&handed) {
                Ok(payload) => linked(&payload),
                Err(reason) => (say(&reason, &measure::prefs::Prefs::default()), String::new()),
            };
            made.set(Some((handed, words, link)));
        })
    };
    let stands = made.get().filter(|(of, ..)| Some(of) == props.handed.as_ref());
    let (wig, whose) = (props.wig, props.whose);
    html! {
        <div class="handover">
            { section("hand-link", "web.hand_link", html! { <>
                { match &props.handed {
                    None => p("hint", t("web.reckoning")),
                    Some(handed) if handed.lines.is_empty() => p("hint", t("web.hand_link_none")),
                    Some(_) => html! { <>
                        { p("", t("web.hand_link_hint")) }
                        <p class="actions">{ button("", t("web.hand_link_make"), link) }</p>
                    </> },
                } }
                if let Some((_, words, link)) = stands {
                    <p role="status">{ words }</p>
                    if !link.is_empty() { { link_box(&link) } }
                }
            </> }) }
            { section("hand-back", "web.hand_back", html! { <SlipIn {wig} {whose} /> }) }
            { section("hand-paper", "web.hand_paper", html! { <PaperIn {wig} {whose} /> }) }
            { section("hand-others", "web.hand_others", html! { <Others {wig} {whose} /> }) }
        </div>
    }
}

/// Which wig.
#[derive(Properties, PartialEq)]
pub struct OfWig {
    /// Which.
    pub wig: WigId,
    /// Whose.
    pub whose: Whose,
}

/// A slip by file or link, for this wig.
#[component]
fn SlipIn(props: &OfWig) -> Html {
    let desk = use_desk();
    let seen = use_cell(|| None::<Result<Slip, String>>);
    let typed = use_cell(String::new);
    let wig = props.wig;
    let look = {
        let (seen, prefs) = (seen.clone(), desk.model().prefs.clone());
        Callback::from(move |text: String| {
            seen.set(Some(match link::open(&text) {
                Ok(Opened::Slip(slip)) => match take::check(&slip, wig) {
                    Ok(()) => Ok(slip),
                    Err(reason) => Err(say(&reason, &prefs)),
                },
                Ok(Opened::Handed(_)) => Err(t("web.slip_is_sheet")),
                Err(reason) => Err(say(&reason, &prefs)),
            }));
        })
    };
    let pick = {
        let (look, seen) = (look.clone(), seen.clone());
        Callback::from(move |_: MouseEvent| {
            let (look, seen) = (look.clone(), seen.clone());
            wasm_bindgen_futures::spawn_local(async move {
                match js::pick_text_file(ACCEPT, FILE_MOST).await {
                    Ok(None) => {}
                    Ok(Some((_, text))) => look.emit(text),
                    Err(error) => seen.set(Some(Err(error.message))),
                }
            });
        })
    };
    let on_typed = {
        let typed = typed.clone();
        Callback::from(move |event: InputEvent| typed.set(text_of(&event)))
    };
    let paste = {
        let typed = typed.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            look.emit(typed.get());
        })
    };
    html! {
        <>
            <form class="form" onsubmit={paste}>
                <div class="figure">
                    <label for="slip-link">{ t("web.slip_link") }</label>
                    <input id="slip-link" type="text" autocomplete="off" oninput={on_typed} value={typed.get()} />
                </div>
                <p class="actions"><button type="submit">{ t("web.open_now") }</button>{ button("", t("web.slip_file"), pick) }</p>
            </form>
            { match seen.get() {
                None => html! {},
                Some(Err(reason)) => html! { <p class="reason" role="alert">{ reason }</p> },
                Some(Ok(slip)) => {
                    let key = slip.id.to_string();
                    html! { <Take {key} {slip} /> }
                }
            } }
        </>
    }
}

/// The numbers that the sheet has, with their steps.
fn open_lines<'s>(all: &'s [Step<'s>]) -> Vec<(u32, &'s Step<'s>)> {
    let open = |step: &&Step<'_>| matches!(step.progress(), Progress::Open | Progress::Begun);
    (1..).zip(all).filter(|(_, step)| open(step)).collect()
}

/// Paper that came back: the same numbers, ticked at once or one by one.
#[component]
fn PaperIn(props: &OfWig) -> Html {
    let desk = use_desk();
    let typed = use_cell(String::new);
    let told = use_cell(|| None::<Result<String, String>>);
    let other = use_cell(|| None::<StepId>);
    let (whose, log) = (props.whose, LogId::Wig(props.wig));
    let state = desk.state(whose, log);
    let all = steps(&state);
    let open = open_lines(&all);
    let lots = desk.model().bench(whose).lots();
    let names = Names { lots: &lots };
    let on_typed = {
        let typed = typed.clone();
        Callback::from(move |event: InputEvent| typed.set(text_of(&event)))
    };
    let ticked = {
        let (desk, typed, told) = (desk.clone(), typed.clone(), told.clone());
        let known: Vec<(u32, StepId, Work)> =
            open.iter().map(|(number, step)| (*number, step.id, step.planned.work.clone())).collect();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let numbers: Vec<u32> = known.iter().map(|(number, ..)| *number).collect();
            let chosen = match numbers::read(&typed.get(), &numbers) {
                Ok(chosen) => chosen,
                Err(reason) => return told.set(Some(Err(say(&reason, &desk.model().prefs)))),
            };
            let (mut bodies, mut refused) = (Vec::new(), Vec::new());
            for (number, step, work) in known.iter().filter(|(number, ..)| chosen.contains(number)) {
                let found = judge::findings(desk.model(), whose, log, work);
                let mut pairs: Vec<(String, String)> =
                    given(work).into_iter().map(|(name, text)| (name.to_owned(), text)).collect();
                pairs.push(("step".to_owned(), step.to_string()));
                pairs.push(("overruled".to_owned(), checks::names(&found)));
                match judge::work(desk.model(), whose, log, work.kind(), &pairs) {
                    Ok(body) => bodies.push((log, body)),
                    Err(_) => refused.push(number.to_string()),
                }
            }
            if !refused.is_empty() || bodies.is_empty() {
                let which = Arg::Text(refused.join(", "));
                return told.set(Some(Err(if refused.is_empty() {
                    t("web.paper_none")
                } else {
                    ta("web.paper_asks", [which])
                })));
            }
            let (typed, told, count) = (typed.clone(), told.clone(), bodies.len() as i64);
            let then = Callback::from(move |safe: bool| {
                if safe {
                    typed.set(String::new());
                    told.set(Some(Ok(ta("web.paper_done", [Arg::Count(count)]))));
                }
            });
            desk.write(whose, bodies, None, then);
        })
    };
    let photo = {
        let (desk, told) = (desk.clone(), told.clone());
        Callback::from(move |_: MouseEvent| {
            let (desk, told) = (desk.clone(), told.clone());
            wasm_bindgen_futures::spawn_local(async move {
                match js::take_photo(whose == Whose::Own).await {
                    Ok(Some(hash)) => {
                        let remark = t("web.paper_photo_remark");
                        let texts = [("photo", hash.as_str()), ("remark", remark.as_str())];
                        if let Ok(body) = record::history::desk::work(&photo::KIND, texts, &desk.model().prefs) {
                            let told = told.clone();
                            let then = Callback::from(move |safe: bool| {
                                if safe {
                                    told.set(Some(Ok(t("web.paper_photo_done"))));
                                }
                            });
                            desk.write(whose, vec![(log, body)], None, then);
                        }
                    }
                    Ok(None) => {}
                    Err(error) => told.set(Some(Err(error.message))),
                }
            });
        })
    };
    if open.is_empty() {
        return p("hint", t("web.paper_no_lines"));
    }
    html! {
        <>
            { p("", t("web.paper_lead")) }
            <form class="form" onsubmit={ticked}>
                <div class="figure">
                    <label for="paper-numbers">{ t("web.paper_numbers") }</label>
                    <input id="paper-numbers" type="text" autocomplete="off" oninput={on_typed} value={typed.get()} />
                </div>
                <p class="actions">
                    <button type="submit" class="primary">{ t("web.paper_tick") }</button>
                    { button("", t("web.paper_photo"), photo) }
                </p>
            </form>
            { match told.get() {
                None => html! {},
                Some(Ok(words)) => html! { <p role="status" id="paper-told">{ words }</p> },
                Some(Err(reason)) => html! { <p class="reason" role="alert">{ reason }</p> },
            } }
            { folded(t("web.paper_each"), html! { <ul class="slip-lines">
                { for open.iter().map(|(number, step)| {
                    let id = step.id;
                    let toggle = {
                        let other = other.clone();
                        Callback::from(move |_: MouseEvent| other.set(if other.get() == Some(id) { None } else { Some(id) }))
                    };
                    let then = {
                        let other = other.clone();
                        Callback::from(move |()| other.set(None))
                    };
                    html! {
                        <li key={id.to_string()}>
                            <p>{ format!("{number} · {}: {}", names.to_do(&step.planned.work), names.plan(&step.planned.work)) }</p>
                            <p class="actions">{ button("plain", format!("{number}: {}", t("web.line_other")), toggle) }</p>
                            if other.get() == Some(id) {
                                <WorkForm {whose} {log} kind={Named(step.planned.work.kind().name)} step={Some(id)} given={given(&step.planned.work)} {then} />
                            }
                        </li>
                    }
                }) }
            </ul> }) }
        </>
    }
}
