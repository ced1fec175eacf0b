//! Keeping records safe: what this browser promises, backups out, backups in.
//!
//! What it is: the whole way of a backup, with a preview before anything is taken in.
//! What it is not: the backup's form on disk.

use std::rc::Rc;

use format::{
    backup::{Backup, read_backup},
    limits::FILE_BYTES_MOST,
    preview::{Preview, preview},
    wig_file::read_wig,
};
use measure::say::Arg;
use record::history::people::People;
use yew::prelude::*;

use crate::parts::plain::{button, folded, p, section, title};

use crate::{
    parts::cell::{Cell, use_cell},
    shell::{
        js,
        route::Route,
        talk::{say, t, ta},
    },
    store::{
        desk::{Desk, use_desk},
        model::Change,
    },
};

/// Where the browser has not promised to keep the records, the person hears it and can do something.
pub fn keeping(desk: &Desk, has_records: bool) -> Html {
    if desk.model().persisted == "yes" || !has_records {
        return html! {};
    }
    html! {
        <div class="banner" id="not-persisted">
            { p("", t("web.may_erase")) }
            <p class="actions">{ ask_button(desk) }{ backup_button(desk) }<a href={Route::Safe.href()}>{ t("web.nav_safe") }</a></p>
        </div>
    }
}

fn ask_button(desk: &Desk) -> Html {
    let desk = desk.clone();
    let ask = Callback::from(move |_: MouseEvent| {
        let desk = desk.clone();
        wasm_bindgen_futures::spawn_local(async move {
            let answer = js::persist().await;
            if answer == "yes" {
                // The button goes with its banner.
                js::focus_id("page-title");
            }
            desk.change(Change::Persisted(answer));
        });
    });
    html! { { button("", t("web.ask_persist"), ask) } }
}

/// Writes a backup of everything and remembers when.
fn backup_button(desk: &Desk) -> Html {
    let desk = desk.clone();
    let save = Callback::from(move |_: MouseEvent| {
        let desk = desk.clone();
        wasm_bindgen_futures::spawn_local(async move {
            if let Err(error) = save_backup(&desk).await {
                desk.change(Change::Failed(error.into(), Vec::new(), Vec::new()));
            }
        });
    });
    html! { { button("primary", t("web.backup"), save) } }
}

async fn save_backup(desk: &Desk) -> Result<(), js::JsError> {
    let now = js::now_utc();
    let text = js::backup_text(&producer(), &now).await?;
    let day = now.split_once('T').map_or("", |(day, _)| day).to_owned();
    js::download(&format!("weftbook-backup-{day}.json"), "application/json", &text);
    js::put_meta("last_backup", &now).await?;
    desk.change(Change::BackedUp(now));
    Ok(())
}

/// Who writes files.
pub fn producer() -> String {
    format!("weftbook {}", env!("CARGO_PKG_VERSION"))
}

/// A file looked at, not yet taken in.
#[derive(Clone, Debug, PartialEq)]
enum Seen {
    Nothing,
    Reading,
    Refused(String),
    Ready(String, Rc<Backup>, Preview),
    Taken(String),
}

/// The page.
#[component]
pub fn Safe() -> Html {
    let desk = use_desk();
    let model = desk.model();
    let seen = use_cell(|| Seen::Nothing);
    let pick = {
        let (desk, seen) = (desk.clone(), seen.clone());
        Callback::from(move |_: MouseEvent| {
            let (desk, seen) = (desk.clone(), seen.clone());
            wasm_bindgen_futures::spawn_local(async move {
                match js::pick_text_file(".json,application/json", FILE_BYTES_MOST as f64).await {
                    Ok(None) => {}
                    Ok(Some((name, text))) => {
                        seen.set(Seen::Reading);
                        seen.set(look(&desk, name, &text).await);
                    }
                    Err(error) => seen.set(Seen::Refused(error.message)),
                }
            });
        })
    };
    let promise = match model.persisted.as_str() {
        "yes" => "web.persisted_yes",
        "no" => "web.persisted_no",
        _ => "web.persisted_unknown",
    };
    html! {
        <>
            { title("web.nav_safe") }
            { p("lead", t("web.safe_lead")) }
            { section("safe-here", "web.safe_here", html! { <>
                <p>{ t(promise) }</p>
                if model.persisted != "yes" { <p class="actions">{ ask_button(&desk) }</p> }
                <p>{ t(if model.offline { "web.offline_yes" } else { "web.offline_no" }) }</p>
                if !model.own.unreadable().is_empty() {
                    <p class="reason">{ ta("web.unreadable_rows", [Arg::Count(model.own.unreadable().len() as i64)]) }</p>
                }
            </> }) }
            { section("safe-out", "web.safe_out", html! { <>
                <p>{ match &model.backed_up {
                    Some(at) => ta("web.last_backup", [Arg::Text(at.replace('T', " ").replace('Z', " UTC"))]),
                    None => t("web.no_backup"),
                } }</p>
                <p class="actions">{ backup_button(&desk) }</p>
            </> }) }
            { section("safe-in", "web.safe_in", html! { <>
                { p("", t("web.safe_in_hint")) }
                <p class="actions">{ button("", t("web.pick_file"), pick) }</p>
                { shown(&desk, &seen) }
            </> }) }
        </>
    }
}

async fn look(desk: &Desk, name: String, text: &str) -> Seen {
    let prefs = desk.model().prefs.clone();
    let backup = match read_backup(text) {
        Ok(backup) => backup,
        // A wig file brings its wig alone: lots in it are to read, never to add.
        Err(reason) => match read_wig(text) {
            Ok(file) => Backup {
                head: file.head,
                records: format::backup::Rows { rows: file.rows, clashes: Vec::new() },
                people: People::default(),
                blobs: Vec::new(),
                report: file.report,
            },
            Err(_) => return Seen::Refused(say(&reason, &prefs)),
        },
    };
    let have = match js::all().await.map(|rows| format::backup::read_rows(&rows)) {
        Ok(Ok(rows)) => rows,
        Ok(Err(reason)) => return Seen::Refused(say(&reason, &prefs)),
        Err(error) => return Seen::Refused(error.message),
    };
    let preview = preview(&backup, &have, &People::default());
    if preview.wigs.iter().any(|wig| desk.model().demos.contains(&wig.wig)) {
        return Seen::Refused(t("web.is_demo"));
    }
    Seen::Ready(name, Rc::new(backup), preview)
}

fn shown(desk: &Desk, seen: &Cell<Seen>) -> Html {
    let prefs = desk.model().prefs.clone();
    match &seen.get() {
        Seen::Nothing => html! {},
        Seen::Reading => html! { <p role="status">{ t("web.reading") }</p> },
        Seen::Refused(reason) => html! { <p class="reason" role="alert">{ reason }</p> },
        Seen::Taken(words) => html! { <p role="status">{ words }</p> },
        Seen::Ready(name, backup, preview) => {
            let take = {
                let (desk, seen, backup) = (desk.clone(), seen.clone(), backup.clone());
                Callback::from(move |_: MouseEvent| {
                    let (desk, seen, backup) = (desk.clone(), seen.clone(), backup.clone());
                    wasm_bindgen_futures::spawn_local(async move {
                        match take_in(&desk, &backup).await {
                            Ok(()) => seen.set(Seen::Taken(t("web.taken_in"))),
                            Err(error) => seen.set(Seen::Refused(error.message)),
                        }
                    });
                })
            };
            let leave = {
                let seen = seen.clone();
                Callback::from(move |_: MouseEvent| seen.set(Seen::Nothing))
            };
            let counts = |counts: &format::preview::Counts| {
                ta("web.counts", [counts.new, counts.known, counts.clashing].map(|count| Arg::Count(count as i64)))
            };
            html! {
                <div class="card" id="preview">
                    <h3>{ ta("web.preview", [Arg::Text(name.clone())]) }</h3>
                    <p>{ ta("web.preview_head", [Arg::Text(backup.head.made.clone()), Arg::Text(backup.head.producer.clone())]) }</p>
                    <p>{ say(&backup.report.summary(), &prefs) }</p>
                    <ul>
                        { for preview.wigs.iter().map(|wig| html! {
                            <li>{ format!("{}{}: {}", wig.name.clone().unwrap_or_else(|| t("web.no_name")),
                                if wig.new { format!(" ({})", t("web.new_here")) } else { String::new() }, counts(&wig.rows)) }</li>
                        }) }
                        <li>{ format!("{}: {}", t("web.workshop"), counts(&preview.workshop)) }</li>
                        if preview.left_out > 0 { <li>{ ta("web.left_out", [Arg::Count(preview.left_out as i64)]) }</li> }
                    </ul>
                    { problems(backup, &prefs) }
                    { p("hint", t("web.take_in_hint")) }
                    <p class="actions">
                        { button("primary", t("web.take_in"), take) }
                        { backup_button(desk) }
                        { button("plain", t("web.leave"), leave) }
                    </p>
                </div>
            }
        }
    }
}

fn problems(backup: &Backup, prefs: &measure::prefs::Prefs) -> Html {
    let report = &backup.report;
    let all: Vec<&format::file::Problem> =
        report.fixed.iter().chain(&report.newer).chain(&report.unreadable).chain(&report.dropped).collect();
    if all.is_empty() {
        return html! {};
    }
    html! {
        { folded(ta("web.problems", [Arg::Count(all.len() as i64)]), html! { <>
            <ul>{ for all.into_iter().take(200).map(|problem| html! { <li>{ format!("{}: {}", problem.place, say(&problem.why, prefs)) }</li> }) }</ul>
        </> }) }
    }
}

async fn take_in(desk: &Desk, backup: &Backup) -> Result<(), js::JsError> {
    js::take_in(&backup.records.taken_in()).await?;
    let people: Vec<String> =
        backup.people.all().filter_map(|(id, person)| format::people::encode_person(id, person).ok()).collect();
    if !people.is_empty() {
        js::take_in_people(&format!("[{}]", people.join(","))).await?;
    }
    desk.read_again();
    Ok(())
}
