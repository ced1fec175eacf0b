//! The sheet: what goes onto it, what it looks like, print and save.
//!
//! What it is: the choices and the very pages that leave the device. What it is not: the sheet (see the `sheet` room).

mod photos;
pub mod words;

use measure::{
    prefs::Prefs,
    say::{Arg, Say},
};
use plan::shopping::Answer;
use record::{
    handover::handed::Handed,
    history::entry::{LogId, Of},
    id::PhotoId,
};
use sheet::{
    drawing::{Drawing, Voice, node::Form, svg},
    paper::{self, Choices, Facts, Paper as Size, Part, Sheet, Squares, Way},
};
use yew::prelude::*;

use self::photos::use_photos;
use super::{
    cap::Props,
    handover::{address, back::Back},
};
use crate::{
    parts::{
        cell::{Cell, use_cell},
        field::figure,
        plain::{button, p},
        reckon::{today, use_answer},
    },
    shell::{
        js,
        talk::{WORDS, say, t, ta},
    },
    store::{
        desk::{Desk, use_desk},
        judge,
        model::Whose,
    },
};

/// The page.
#[component]
pub fn Paper(props: &Props) -> Html {
    let desk = use_desk();
    let choices = use_cell(Choices::default);
    let (whose, log) = (props.whose, LogId::Wig(props.wig));
    let (state, bench) = (desk.state(whose, log), desk.model().bench(whose));
    let (answer, busy) = use_answer(state.clone(), bench.lots(), bench.paces().clone());
    let photos = use_photos(&state, choices.get().has(Part::Photos));
    let sheet = match &answer {
        None => None,
        Some(answer) => made(&desk, props, (**answer).as_ref().ok(), &photos.get(), &choices.get()),
    };
    let handed = sheet.as_ref().map(|(_, handed)| handed.clone());
    html! {
        <>
            <div class="sheet-choices">
                { p("lead", t("web.sheet_lead")) }
                { parts(&choices) }
                { size(&choices) }
                { figure(whose, log, "ask", Of::Wig, None, Some("web.sheet_ask_hint")) }
            </div>
            <section class="sheet-preview" aria-labelledby="sheet-preview" aria-busy={if busy { "true" } else { "false" }}>
                <h2 id="sheet-preview">{ t("web.sheet_preview") }</h2>
                { match &sheet {
                    None => p("waiting", t("web.reckoning")),
                    Some((sheet, handed)) => shown(sheet, handed, &desk.model().prefs),
                } }
            </section>
            <Back wig={props.wig} {whose} {handed} />
        </>
    }
}

fn made(
    desk: &Desk,
    props: &Props,
    answer: Option<&Answer>,
    photos: &[(PhotoId, String)],
    choices: &Choices,
) -> Option<(Sheet, Handed)> {
    let (model, log) = (desk.model(), LogId::Wig(props.wig));
    let today = today()?;
    let here = model.bench(props.whose).log(log);
    let entries = here.entries().count();
    let lamport = here.all().map(|entry| entry.lamport).max().unwrap_or(0);
    let voice = Voice { words: &WORDS, prefs: &model.prefs };
    Some(judge::at_bench(model, props.whose, log, &|bench, _| {
        let facts = Facts { bench, answer, photos, entries, demo: props.whose == Whose::Demo, today };
        let handed = paper::handed(&facts, choices, props.wig, lamport, &voice);
        let way = way(&handed);
        (paper::sheet_with(&facts, choices, &way, &voice), handed)
    }))
}

/// What stands on paper of the way back: a code where the link fits one.
fn way(handed: &Handed) -> Way {
    if handed.lines.is_empty() {
        return Way::None;
    }
    let payload = format::handover::handed::payload(handed).ok();
    let code =
        payload.and_then(|payload| format::handover::code::code(&format::handover::link::link(&address(), &payload)));
    code.map_or(Way::File, |code| Way::Code(Squares { side: code.side, dark: code.dark }))
}

/// One box a part; what tells of people, money and notes is never ticked by itself.
fn parts(choices: &Cell<Choices>) -> Html {
    html! {
        <fieldset>
            <legend>{ t("web.sheet_parts") }</legend>
            { for Part::ALL.into_iter().map(|part| {
                let has = choices.get().has(part);
                let onchange = {
                    let choices = choices.clone();
                    Callback::from(move |_: Event| choices.set(choices.get().with(part, !has)))
                };
                choice("checkbox", part.name(), has, t(part.label()), onchange)
            }) }
        </fieldset>
    }
}

fn size(choices: &Cell<Choices>) -> Html {
    html! {
        <fieldset>
            <legend>{ t("web.sheet_paper") }</legend>
            { for Size::ALL.into_iter().map(|size| {
                let onchange = {
                    let choices = choices.clone();
                    Callback::from(move |_: Event| choices.set(choices.get().on(size)))
                };
                choice("radio", size.name(), choices.get().paper == size, size.title().to_owned(), onchange)
            }) }
        </fieldset>
    }
}

fn choice(kind: &'static str, name: &'static str, checked: bool, label: String, onchange: Callback<Event>) -> Html {
    let id = format!("sheet-{name}");
    html! {
        <p class="radio"><input type={kind} id={id.clone()} {checked} {onchange} /><label for={id}>{ label }</label></p>
    }
}

/// Buttons, then the pages under the sheet's own stylesheet.
fn shown(sheet: &Sheet, handed: &Handed, prefs: &Prefs) -> Html {
    let print = Callback::from(|_: MouseEvent| js::print());
    let save = {
        let (name, text) =
            (file_name(&sheet.wig), paper::file(sheet, format::handover::handed::payload(handed).ok().as_deref()));
        Callback::from(move |_: MouseEvent| js::download(&format!("{name}.html"), "text/html", &text))
    };
    let pages = Arg::Count(sheet.pages.len() as i64);
    // The very text that the file has, in which everything typed is escaped, under the file's own style.
    let mut shown = String::from("<style>");
    shown.push_str(paper::STYLE);
    shown.push_str("</style>");
    shown.push_str(&paper::body(sheet));
    html! {
        <>
            { p("hint", ta("web.sheet_pages", [pages])) }
            <p class="actions">
                { button("primary", t("web.sheet_print"), print) }
                { button("", t("web.sheet_save"), save) }
                { for sheet.drawings.iter().map(|drawing| save_svg(&sheet.wig, drawing, prefs)) }
            </p>
            <div class="scroll" tabindex="0" role="group" aria-labelledby="sheet-preview">{ Html::from_html_unchecked(shown.into()) }</div>
        </>
    }
}

fn save_svg(wig: &str, drawing: &Drawing, prefs: &Prefs) -> Html {
    let title = say(&drawing.title, prefs);
    let words = say(&Say::new("web.sheet_save_svg", [Arg::Text(title.clone())]), prefs);
    let (name, drawing, prefs) = (format!("{}-{}", file_name(wig), file_name(&title)), drawing.clone(), prefs.clone());
    button(
        "plain",
        words,
        Callback::from(move |_: MouseEvent| {
            js::download(
                &format!("{name}.svg"),
                "image/svg+xml",
                &svg::write(&drawing, &WORDS, &prefs, Form::Standalone),
            );
        }),
    )
}

/// A name that every disk takes.
pub fn file_name(words: &str) -> String {
    let letter = |letter: char| if letter.is_ascii_alphanumeric() { letter.to_ascii_lowercase() } else { '-' };
    let parts: String = words.chars().take(60).map(letter).collect();
    let parts: Vec<&str> = parts.split('-').filter(|part| !part.is_empty()).collect();
    if parts.is_empty() { "wig".to_owned() } else { parts.join("-") }
}
