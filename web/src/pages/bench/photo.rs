//! Photos: taken or picked, made small and upright, kept by the hash of their bytes.
//!
//! What it is: the field and the picture. What it is not: the making small (see `static/photo.js`) or the store.

use record::{
    field::Value,
    history::{entry::LogId, fold::Done},
    id::PhotoId,
    wig::work::{Work, photo},
};
use yew::prelude::*;

use crate::{
    parts::{
        cell::use_cell,
        plain::{button, p},
    },
    shell::{
        js,
        talk::{choice, t},
    },
    store::{desk::use_desk, judge, model::Whose},
};

/// The photo of a piece of work.
pub fn photo_of(work: &Work) -> Option<String> {
    match work.get("photo") {
        Some(Value::Photo(photo)) => Some(photo.to_string()),
        _ => None,
    }
}

/// A field for a photo.
#[derive(Properties, PartialEq)]
pub struct FieldProps {
    /// Its identity on the page.
    pub id: String,
    /// The photo it holds.
    pub value: String,
    /// Whose records.
    pub whose: Whose,
    /// Hears of another photo.
    pub typed: Callback<String>,
}

/// The field.
#[component]
pub fn PhotoField(props: &FieldProps) -> Html {
    let trouble = use_cell(|| None::<String>);
    let pick = {
        let (typed, trouble, keep) = (props.typed.clone(), trouble.clone(), props.whose == Whose::Own);
        Callback::from(move |_: MouseEvent| {
            let (typed, trouble) = (typed.clone(), trouble.clone());
            wasm_bindgen_futures::spawn_local(async move {
                match js::take_photo(keep).await {
                    Ok(Some(hash)) => {
                        trouble.set(None);
                        typed.emit(hash);
                    }
                    Ok(None) => {}
                    Err(error) => trouble.set(Some(error.message)),
                }
            });
        })
    };
    html! {
        <div class="photo-field">
            <button type="button" id={props.id.clone()} aria-label={t("web.photo_take")} onclick={pick}>{ t("web.photo_take") }</button>
            if PhotoId::read(&props.value).is_some() { <Photo id={props.value.clone()} whose={props.whose} /> }
            if let Some(reason) = trouble.get() { <p class="reason" role="alert">{ reason }</p> }
            { p("hint", t("web.photo_hint")) }
        </div>
    }
}

/// Where a photo goes.
#[derive(Properties, PartialEq)]
pub struct NowProps {
    /// Whose records.
    pub whose: Whose,
    /// Which log.
    pub log: LogId,
    /// What is being done.
    pub of: String,
}

/// One tap from a step to its photo: taken and written down, of the work that stands there.
#[component]
pub fn PhotoNow(props: &NowProps) -> Html {
    let desk = use_desk();
    let trouble = use_cell(|| None::<String>);
    let take = {
        let (whose, log, of, trouble) = (props.whose, props.log, props.of.clone(), trouble.clone());
        Callback::from(move |_: MouseEvent| {
            let (desk, of, trouble) = (desk.clone(), of.clone(), trouble.clone());
            wasm_bindgen_futures::spawn_local(async move {
                let hash = match js::take_photo(whose == Whose::Own).await {
                    Ok(None) => return,
                    Ok(Some(hash)) => hash,
                    Err(error) => return trouble.set(Some(error.message)),
                };
                let pairs = [("photo", hash), ("shows", "during".to_owned()), ("remark", of)];
                let pairs: Vec<_> = pairs.map(|(name, text)| (name.to_owned(), text)).into();
                match judge::work(desk.model(), whose, log, &photo::KIND, &pairs) {
                    Ok(body) => {
                        trouble.set(None);
                        desk.write(whose, vec![(log, body)], None, Callback::noop());
                    }
                    Err(all) => trouble.set(all.into_iter().next().map(|(_, reason)| reason)),
                }
            });
        })
    };
    html! {
        <>
            { button("", t("web.photo_now"), take) }
            if let Some(reason) = trouble.get() { <span class="reason" role="alert">{ reason }</span> }
        </>
    }
}

/// Which photo.
#[derive(Properties, PartialEq)]
pub struct PhotoProps {
    /// Its hash.
    pub id: String,
    /// Whose records.
    pub whose: Whose,
}

/// The picture, or that it is missing here.
#[component]
pub fn Photo(props: &PhotoProps) -> Html {
    // Not looked for yet; missing here; its address.
    let found = use_cell(|| None::<Option<String>>);
    let large = use_cell(|| false);
    {
        let found = found.clone();
        use_effect_with((props.id.clone(), large.get()), move |(id, large)| {
            let (id, large) = (id.clone(), *large);
            wasm_bindgen_futures::spawn_local(async move {
                found.set(Some(js::photo_address(&id, large).await.unwrap_or(None)));
            });
        });
    }
    let toggle = {
        let large = large.clone();
        Callback::from(move |_: MouseEvent| large.set(!large.get()))
    };
    match found.get() {
        None => html! {},
        Some(None) => p("hint", t("web.photo_missing")),
        Some(Some(address)) => html! {
            <figure class={classes!("photo", large.get().then_some("large"))}>
                <img src={address} alt={t("web.photo_alt")} />
                { button("plain", t(if large.get() { "web.photo_smaller" } else { "web.photo_larger" }), toggle) }
            </figure>
        },
    }
}

/// The first photo taken before the work and the last one after it, side by side.
pub fn before_and_after(works: &[Done], whose: Whose) -> Html {
    let shows = |when: &'static str| move |done: &&Done| done.work.choice("shows") == Some(when);
    let before = works.iter().find(shows("before")).and_then(|done| photo_of(&done.work));
    let after = works.iter().rfind(shows("after")).and_then(|done| photo_of(&done.work));
    if before.is_none() && after.is_none() {
        return html! {};
    }
    let one = |label: &str, id: Option<String>| {
        html! {
            if let Some(id) = id { <div><p><strong>{ choice(label) }</strong></p><Photo {id} {whose} /></div> }
        }
    };
    html! { <div class="before-after">{ one("before", before) }{ one("after", after) }</div> }
}
