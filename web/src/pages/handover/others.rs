//! For other programs: the wig as JSON with its schema, its entries as a table, and work from a table.
//!
//! What it is: downloads, and a preview before a table adds anything. What it is not: the forms of those files (see `format`).

use format::{
    row::{Item, encode_row},
    schema,
    table::{self, Table},
    wig_file::write_wig,
};
use measure::say::Arg;
use record::history::entry::{Entry, LogId, Written};
use yew::prelude::*;

use super::{back::OfWig, head, named};
use crate::{
    parts::{
        cell::use_cell,
        plain::{button, p},
    },
    shell::{
        js,
        talk::{WORDS, say, t, ta},
    },
    store::{
        desk::{Desk, use_desk},
        model::{Change, Whose},
    },
};

/// The part.
#[component]
pub fn Others(props: &OfWig) -> Html {
    let desk = use_desk();
    let seen = use_cell(|| None::<Result<Table, String>>);
    let told = use_cell(|| None::<String>);
    let (wig, whose, log) = (props.wig, props.whose, LogId::Wig(props.wig));
    let name = record::wig::figures::Wig::new(&desk.state(whose, log)).name().to_owned();
    let json = {
        let (desk, name, told) = (desk.clone(), name.clone(), told.clone());
        Callback::from(move |_: MouseEvent| {
            let bench = desk.model().bench(whose);
            let items = |log: LogId| bench.log(log).all().filter_map(|entry| Item::of(entry).ok()).collect::<Vec<_>>();
            match write_wig(&head(), whose == Whose::Demo, wig, &items(log), &items(LogId::Workshop)) {
                Ok(text) => js::download(&named(wig, &name, ".wig.json"), "application/json", &text),
                Err(reason) => told.set(Some(say(&reason, &desk.model().prefs))),
            }
        })
    };
    let schema = Callback::from(|_: MouseEvent| {
        js::download("weftbook-wig.schema.json", "application/schema+json", &schema::wig(&WORDS));
    });
    let csv = {
        let (desk, name) = (desk.clone(), name.clone());
        Callback::from(move |_: MouseEvent| {
            let text = table::write(desk.model().bench(whose).log(log).entries());
            js::download(&named(wig, &name, ".csv"), "text/csv", &text);
        })
    };
    let pick = {
        let (desk, seen, told) = (desk.clone(), seen.clone(), told.clone());
        Callback::from(move |_: MouseEvent| {
            let (desk, seen, told) = (desk.clone(), seen.clone(), told.clone());
            wasm_bindgen_futures::spawn_local(async move {
                told.set(None);
                match js::pick_text_file(".csv,text/csv,text/plain", super::FILE_MOST).await {
                    Ok(None) => {}
                    Ok(Some((_, text))) => {
                        let here = desk.model().bench(whose).log(log);
                        let written = Written::read(&js::now_utc()).unwrap_or_else(Written::epoch);
                        let prefs = &desk.model().prefs;
                        seen.set(Some(table::read(&text, log, &here, &written).map_err(|reason| say(&reason, prefs))));
                    }
                    Err(error) => seen.set(Some(Err(error.message))),
                }
            });
        })
    };
    let preview = match seen.get() {
        None => html! {},
        Some(Err(reason)) => html! { <p class="reason" role="alert">{ reason }</p> },
        Some(Ok(table)) => {
            let take = {
                let (desk, seen, told, table) = (desk.clone(), seen.clone(), told.clone(), table.clone());
                Callback::from(move |_: MouseEvent| {
                    let (desk, seen, told, table) = (desk.clone(), seen.clone(), told.clone(), table.clone());
                    wasm_bindgen_futures::spawn_local(async move {
                        match taken(&desk, whose, table).await {
                            Ok(()) => {
                                seen.set(None);
                                told.set(Some(t("web.table_taken")));
                            }
                            Err(error) => seen.set(Some(Err(error.message))),
                        }
                    });
                })
            };
            let counts = [table.whole.len() + table.fresh.len(), table.here, table.problems.len()];
            html! {
                <div class="card" id="table">
                    <p role="status">{ ta("web.table_counts", counts.map(|count| Arg::Count(count as i64))) }</p>
                    <ul>{ for table.problems.iter().take(200).map(|one| html! {
                        <li>{ ta("web.table_line", [Arg::Text(one.place.clone()), Arg::from(one.why.clone())]) }</li>
                    }) }</ul>
                    <p class="actions"><button type="button" class="primary" disabled={counts[0] == 0} onclick={take}>{ t("web.take_in") }</button></p>
                </div>
            }
        }
    };
    html! {
        <>
            { p("", t("web.others_lead")) }
            <p class="actions">
                { button("", t("web.others_json"), json) }
                { button("", t("web.others_csv"), csv) }
                { button("plain", t("web.others_schema"), schema) }
                { button("", t("web.others_table"), pick) }
            </p>
            if let Some(words) = told.get() { <p role="status">{ words }</p> }
            { preview }
        </>
    }
}

async fn taken(desk: &Desk, whose: Whose, table: Table) -> Result<(), js::JsError> {
    let rows = |entries: &[Entry]| {
        let rows: Vec<String> = entries.iter().filter_map(|entry| encode_row(entry).ok()).collect();
        format!("[{}]", rows.join(","))
    };
    if whose == Whose::Demo {
        let mut all = table.whole;
        all.extend(table.fresh);
        desk.change(Change::Added(whose, all, String::new()));
        return Ok(());
    }
    if !table.whole.is_empty() {
        js::take_in(&rows(&table.whole)).await?;
    }
    if !table.fresh.is_empty() {
        js::add(&rows(&table.fresh)).await?;
    }
    desk.read_again();
    Ok(())
}
