//! The fibre drawer: each fibre with its windows, what sources disagree on, own heat test locks, and what worked.
//!
//! What it is: what is known of a fibre, from the trade's tables and from this bench. What it is not: a plan of a set.

mod tried;
pub mod words;

use measure::{prefs::Prefs, say::Arg, typed::Typed};
use record::trade::{
    damage::{self, Finding},
    dye::{self, Class},
    fact::{Fact, Known, Source, Sure},
    fibres::{FIBRES, Fibre},
    heat::{self, Medium},
    solvent,
};
use yew::prelude::*;

use crate::{
    parts::plain::{columns, folded, p, row, section, title},
    shell::{
        route::Route,
        talk::{WORDS, choice, t, ta},
    },
    store::desk::Desk,
};

/// All fibres.
pub fn page() -> Html {
    html! {
        <>
            { title("web.nav_fibres") }
            { p("lead", t("web.fibres_lead")) }
            <ul class="wigs">
                { for FIBRES.iter().map(|fibre| html! {
                    <li class="card">
                        <h2><a href={Route::Fibre(fibre.name).href()}>{ choice(fibre.name) }</a></h2>
                        <p class="hint">{ fibre.code }</p>
                    </li>
                }) }
            </ul>
        </>
    }
}

/// One fibre.
pub fn fibre_page(desk: &Desk, name: &'static str) -> Html {
    let fibre = record::trade::fibres::fibre(name);
    let prefs = &desk.model().prefs;
    html! {
        <>
            <h1 id="page-title" tabindex="-1">{ choice(fibre.name) }</h1>
            { p("lead", t("web.fibre_lead")) }
            { section("drawer-heat", "web.fibre_heat", windows(fibre, prefs)) }
            { section("drawer-own", "web.fibre_own", tried::own(desk, fibre)) }
            { section("drawer-dye", "web.fibre_dye", dyes(fibre, prefs)) }
            { section("drawer-solvent", "web.fibre_solvents", solvents(fibre, prefs)) }
            { section("drawer-worked", "web.fibre_worked", tried::worked(desk, fibre)) }
        </>
    }
}

/// A temperature of a table.
pub fn degrees(amount: f64, fact: &Fact, prefs: &Prefs) -> String {
    let heat = Typed::plain(amount, fact.unit).temperature();
    heat.map(|heat| Arg::Temperature(heat).words(&WORDS, prefs)).unwrap_or_default()
}

fn span(fact: &Fact, prefs: &Prefs) -> String {
    if fact.low < fact.high {
        format!("{} – {}", degrees(fact.low, fact, prefs), degrees(fact.high, fact, prefs))
    } else {
        degrees(fact.likely, fact, prefs)
    }
}

fn ground(source: &Source, sure: Sure) -> Html {
    // Practice and our own judgement name themselves.
    let words = match source.known {
        Known::Practice | Known::Judged => ta("web.ground_short", [Arg::from(source.text), Arg::Key(sure.label())]),
        known => ta("web.ground", [Arg::from(source.text), Arg::Key(known.label()), Arg::Key(sure.label())]),
    };
    html! { <span class="ground">{ words }</span> }
}

fn windows(fibre: &'static Fibre, prefs: &Prefs) -> Html {
    let release = &fibre.heat.release;
    let rows = Medium::ALL.map(|medium| {
        let window = heat::window(fibre, medium);
        let range = window.range().map(|range| span(range, prefs)).unwrap_or_default();
        let range_ground = window.range().map(|range| ground(range.source, range.sure)).unwrap_or_default();
        row(
            t(medium.label()),
            vec![
                html! { <>{ t(window.suits.label()) }{ " " }{ range }{ range_ground }</> },
                html! { <>{ ta("web.never_above_it", [Arg::Text(degrees(window.limit.likely, &window.limit, prefs))]) }{ ground(window.limit.source, window.limit.sure) }</> },
            ],
        )
    });
    let disagree: Vec<&Finding> = damage::disagreements(fibre).collect();
    html! {
        <>
            <div class="stack"><table>
                { columns(&["web.medium", "web.window", "web.never_above"]) }
                <tbody>{ for rows }</tbody>
            </table></div>
            { p("", ta("web.release_below", [Arg::Text(degrees(release.likely, release, prefs))])) }
            if fibre.heat.must_dry { { p("", t("web.must_dry")) } }
            { p("hint", t("web.window_note")) }
            if !disagree.is_empty() {
                <p><strong>{ t("web.disagree") }</strong></p>
                <ul>{ for disagree.into_iter().map(|finding| said(finding, prefs)) }</ul>
            }
            { folded(t("web.all_findings"), html! { <ul>{ for damage::findings(fibre).map(|finding| said(finding, prefs)) }</ul> }) }
        </>
    }
}

/// A figure that somebody published.
fn said(finding: &'static Finding, prefs: &Prefs) -> Html {
    let of = if finding.of.is_empty() { String::new() } else { format!(" ({})", t(finding.of)) };
    html! {
        <li>{ format!("{}{of}: {}", t(finding.effect.label()), span(&finding.figure, prefs)) }{ ground(finding.figure.source, finding.figure.sure) }</li>
    }
}

fn dyes(fibre: &'static Fibre, prefs: &Prefs) -> Html {
    let rows = Class::ALL.map(|class| {
        let uptake = dye::uptake(fibre, class);
        let bath = uptake.bath.as_ref();
        row(
            t(class.label()),
            vec![
                html! { <>{ t(uptake.takes.label()) }{ ground(uptake.source, uptake.sure) }</> },
                html! { if let Some(bath) = bath { { span(&bath.temperature, prefs) }{ " · " }{ t(bath.ph) } } },
            ],
        )
    });
    html! {
        <div class="stack"><table>
            { columns(&["web.colour_class", "web.takes", "web.bath"]) }
            <tbody>{ for rows }</tbody>
        </table></div>
    }
}

fn solvents(fibre: &'static Fibre, prefs: &Prefs) -> Html {
    let harmful: Vec<Html> = solvent::harmful_to(fibre)
        .map(|(solvent, harm)| {
            html! {
                <li>
                    { format!("{}: {}. ", t(solvent.label), t(harm.does)) }
                    { ta("web.flash", [Arg::Text(degrees(solvent.flash.likely, &solvent.flash, prefs))]) }
                    { ground(harm.source, harm.sure) }
                </li>
            }
        })
        .collect();
    if harmful.is_empty() {
        p("hint", t("web.no_solvent_known"))
    } else {
        html! { <ul>{ for harmful }</ul> }
    }
}
