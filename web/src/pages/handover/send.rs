//! Sending back: the return slip as a file or as a link.
//!
//! What it is: from a helper's answers to a slip. What it is not: sending: the person does that, by whatever they use.

use format::handover::{
    base64,
    link::{self, Reach},
    slip as coded, slip_file,
};
use measure::{civil::Minute, say::Arg};
use record::{
    handover::{
        handed::Handed,
        slip::{Answer, Photo, Slip},
    },
    history::entry::Written,
    id::{Id, PhotoId},
    wig::work::{Work, photo},
};
use yew::prelude::*;

use super::{
    address, draft, head,
    helper::{OTHER, PLANNED, of, texts},
    named,
};
use crate::{
    parts::{
        cell::use_cell,
        plain::{button, p},
        typed::text_of,
    },
    shell::{
        js,
        talk::{say, t, ta},
    },
    store::{desk::use_desk, drafts},
};

/// Whose answers.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// What was handed over.
    pub handed: Handed,
    /// How often an answer changed, so that a link that was made goes with it.
    pub answered: u32,
}

/// A draft that is made once and stays: what makes a slip sent twice the same slip.
fn once(address: &str, make: impl Fn() -> String) -> String {
    drafts::read(address).unwrap_or_else(|| {
        let made = make();
        drafts::keep(address, &made);
        made
    })
}

/// The slip of what is answered so far; the numbers of lines that do not read yet.
fn made(handed: &Handed, who: &str, prefs: &measure::prefs::Prefs) -> (Option<Slip>, Vec<u32>) {
    let (mut lines, mut unread) = (Vec::new(), Vec::new());
    for line in &handed.lines {
        let answer = drafts::read(&of(handed, line.number, "answer")).unwrap_or_default();
        let mut now = match answer.as_str() {
            PLANNED => line.texts(),
            OTHER => texts(handed, line),
            _ => continue,
        };
        if answer == PLANNED {
            for name in ["minutes", "remark"] {
                let typed = drafts::read(&of(handed, line.number, &format!("planned.{name}"))).unwrap_or_default();
                if !typed.trim().is_empty() && line.kind.field(name).is_some() {
                    now.retain(|(one, _)| *one != name);
                    now.push((name, typed));
                }
            }
        }
        // The minute it was first answered in, so that the slip is the same when it is made again.
        let at = once(&of(handed, line.number, "done"), js::now_local_minute);
        let pairs = now.iter().map(|(name, text)| (*name, text.as_str()));
        let (Ok(work), Some(done)) = (Work::read(line.kind, pairs, prefs), Minute::read(&at)) else {
            unread.push(line.number);
            continue;
        };
        let step = Some(line.step);
        lines.push(Answer { number: line.number, step, done, as_planned: answer == PLANNED, work });
        if let Some(hash) = drafts::read(&of(handed, line.number, "photo"))
            && let Ok(work) = Work::read(&photo::KIND, [("photo", hash.as_str()), ("shows", "after")], prefs)
        {
            lines.push(Answer { number: line.number, step: None, done, as_planned: false, work });
        }
    }
    let draft = draft(handed);
    let id = Id::read(&once(&format!("{draft}slip"), js::random_id));
    let written = Written::read(&once(&format!("{draft}written"), js::now_utc));
    let slip = id.zip(written).map(|(id, written)| Slip {
        id,
        wig: handed.wig,
        name: handed.name.clone(),
        who: who.trim().chars().take(format::limits::PERSON_NAME_MOST).collect(),
        lamport: handed.lamport,
        written,
        lines,
        photos: Vec::new(),
    });
    (slip, unread)
}

/// Puts the photos' bytes beside a slip, those that are still here.
async fn with_photos(mut slip: Slip) -> Slip {
    for answer in &slip.lines {
        let Some(record::field::Value::Photo(id)) = answer.work.get("photo") else { continue };
        let Ok(Some(data)) = js::photo_data(&id.to_string()).await else { continue };
        let text = data.split_once("base64,").map_or("", |(_, text)| text);
        if let (Some(bytes), Some(id)) = (base64::of_plain(text), PhotoId::read(&id.to_string())) {
            slip.photos.push(Photo { id, bytes });
        }
    }
    slip
}

/// Buttons to send with.
#[component]
pub fn Send(props: &Props) -> Html {
    let desk = use_desk();
    let who_draft = format!("{}who", draft(&props.handed));
    let who = use_cell(|| drafts::read(&who_draft).unwrap_or_default());
    let told = use_cell(|| (0, String::new(), String::new()));
    let prefs = desk.model().prefs.clone();
    let (slip, unread) = made(&props.handed, &who.get(), &prefs);
    let on_who = {
        let (who, who_draft) = (who.clone(), who_draft.clone());
        Callback::from(move |event: InputEvent| {
            let text = text_of(&event);
            drafts::keep(&who_draft, &text);
            who.set(text);
        })
    };
    let count = slip.as_ref().map_or(0, |slip| slip.lines.len());
    let file = {
        let (slip, told, prefs, answered) = (slip.clone(), told.clone(), prefs.clone(), props.answered);
        Callback::from(move |_: MouseEvent| {
            let Some(slip) = slip.clone() else { return };
            let (told, prefs) = (told.clone(), prefs.clone());
            wasm_bindgen_futures::spawn_local(async move {
                let slip = with_photos(slip).await;
                match slip_file::write(&head(), &slip) {
                    Ok(text) => {
                        js::download(&named(slip.wig, &slip.name, "-slip.json"), "application/json", &text);
                        told.set((answered, t("web.slip_saved"), String::new()));
                    }
                    Err(reason) => told.set((answered, say(&reason, &prefs), String::new())),
                }
            });
        })
    };
    let link = {
        let (slip, told, answered) = (slip.clone(), told.clone(), props.answered);
        Callback::from(move |_: MouseEvent| {
            let Some(slip) = slip.clone() else { return };
            let (words, link) = match coded::payload(&slip) {
                Ok(payload) => linked(&payload),
                Err(reason) => (say(&reason, &prefs), String::new()),
            };
            told.set((answered, words, link));
        })
    };
    let (of, words, link_text) = told.get();
    let stands = of == props.answered;
    html! {
        <section class="card" aria-labelledby="send-title">
            <h3 id="send-title">{ t("web.send_title") }</h3>
            <div class="figure">
                <label for="send-who">{ t("web.send_who") }</label>
                <input id="send-who" type="text" maxlength="120" autocomplete="off" oninput={on_who} value={who.get()} />
            </div>
            if !unread.is_empty() {
                <p class="reason" role="alert">{ ta("web.send_unread", [Arg::Text(unread.iter().map(u32::to_string).collect::<Vec<_>>().join(", "))]) }</p>
            }
            if count == 0 { { p("hint", t("web.send_nothing")) } } else if unread.is_empty() {
                <p class="actions">{ button("primary", t("web.send_file"), file) }{ button("", t("web.send_link"), link) }</p>
                { p("hint", t("web.send_hint")) }
            }
            if stands && !words.is_empty() { <p role="status">{ words }</p> }
            if stands && !link_text.is_empty() { { link_box(&link_text) } }
        </section>
    }
}

/// A link with what is to be said of its length.
pub fn linked(payload: &str) -> (String, String) {
    let link = link::link(&address(), payload);
    let length = [Arg::Count(link.len() as i64)];
    match link::reach(&link) {
        Reach::Everywhere => (ta("web.link_fits", length), link),
        Reach::Some => (ta("web.link_long", length), link),
        Reach::File => (ta("web.link_file", length), String::new()),
    }
}

/// A link to copy.
pub fn link_box(link: &str) -> Html {
    html! {
        <div class="figure">
            <label for="made-link">{ t("web.link_label") }</label>
            <textarea id="made-link" rows="3" readonly=true value={link.to_owned()} />
        </div>
    }
}
