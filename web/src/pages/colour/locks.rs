//! Colour test locks: what was tried, what it says of one's own dye, and the next one to record.
//!
//! What it is: locks against the colours wanted, words first. What it is not: the fit (see the plan room).

use measure::{prefs::Prefs, say::Arg};
use plan::{
    colour::{
        Light, Trust, difference,
        strength::{fitted, told_by},
    },
    dye::BathPlan,
};
use record::{
    history::entry::LogId,
    id::LotId,
    workshop::{colour_locks::ColourLock, dyes::Dye},
};
use yew::prelude::*;

use super::{Here, off, photo::FromPhoto, swatch};
use crate::{
    pages::bench::{Given, Named, work_form},
    parts::{
        cell::use_cell,
        plain::{button, columns, folded, p, row},
    },
    shell::talk::{choice, t, ta},
    store::{drafts, model::Whose},
};

/// The section.
pub fn locks(here: &Here<'_>) -> Html {
    let prefs = &here.desk.model().prefs;
    let fibre = here.wig.fibre();
    let mine: Vec<&ColourLock> = here.locks.iter().filter(|lock| lock.fibre.name == fibre.name).collect();
    let baths: &[BathPlan] = here.plan.as_ref().map_or(&[], |plan| plan.baths.as_slice());
    let meant: Vec<&Dye> = here.dyes.iter().filter(|dye| here.wig.uses_dye(dye.id)).collect();
    html! {
        <>
            { p("hint", t("web.locks_hint")) }
            { for meant.iter().map(|dye| own(here, dye)) }
            if !mine.is_empty() { { tried(&mine, here.dyes, baths, prefs) } }
            if meant.is_empty() {
                { p("hint", t("web.locks_need_dye")) }
            } else {
                { for meant.iter().map(|dye| {
                    let given = given(here, dye, baths);
                    html! { <LockForm key={dye.id.to_string()} whose={here.whose} log={here.log} dye={dye.id} name={dye.name.clone()} {given} /> }
                }) }
            }
        </>
    }
}

/// How strong one's own dye is, as far as locks tell.
fn own(here: &Here<'_>, dye: &Dye) -> Html {
    let base = here.wig.base_shade().map(Light::of);
    let told = told_by(here.locks, dye, here.wig.fibre().name, base);
    let words = match fitted(&told).map(|strength| strength.trust) {
        Some(Trust::Fitted { locks, worst, deepest }) => ta(
            "web.own_fitted",
            [
                Arg::Text(dye.name.clone()),
                Arg::Count(locks as i64),
                Arg::Number(worst, 1),
                Arg::Number(deepest * 100.0, 2),
            ],
        ),
        Some(Trust::OneLock { .. }) => ta("web.own_one", [Arg::Text(dye.name.clone())]),
        _ => ta("web.own_untried", [Arg::Text(dye.name.clone())]),
    };
    p("", words)
}

/// The locks, each against the wanted colour it is nearest to.
fn tried(mine: &[&ColourLock], dyes: &[Dye], baths: &[BathPlan], prefs: &Prefs) -> Html {
    html! {
        <div class="stack"><table>
            { columns(&["web.lock_dye", "web.lock_depth", "web.lock_colours", "web.lock_off"]) }
            <tbody>{ for mine.iter().map(|lock| {
                let name = dyes.iter().find(|dye| dye.id == lock.dye).map_or_else(|| t("web.lot_unknown"), |dye| dye.name.clone());
                let after = Light::of(lock.after);
                let nearest = baths
                    .iter()
                    .map(|bath| difference(bath.wanted, after))
                    .reduce(|best, one| if one.amount < best.amount { one } else { best });
                let colours = html! { <>{ for lock.before.map(|before| swatch(Light::of(before))) }{ " → " }{ swatch(after) }{ " " }{ choice(lock.seen_by) }</> };
                row(name, vec![
                    ta("web.lock_percent", [Arg::Number(lock.depth * 100.0, 2)]).into(),
                    colours,
                    nearest.map_or_else(String::new, |one| off(&one.words, one.amount, prefs)).into(),
                ])
            }) }</tbody>
        </table></div>
    }
}

/// What the next lock is to be tried with: the depth now proposed.
fn given(here: &Here<'_>, dye: &Dye, baths: &[BathPlan]) -> Given {
    let percent =
        baths.iter().flat_map(|bath| &bath.dyes).find(|part| part.lot == Some(dye.id)).map(|part| part.percent[1]);
    let mut given = vec![("stock", dye.id.to_string()), ("dye_name", dye.name.clone())];
    if let Some(percent) = percent.filter(|percent| *percent >= 0.01) {
        given.push(("depth", measure::typed::Typed::plain(percent, measure::unit::Unit::Percent).text().to_owned()));
    }
    if let Some(shade) = here.wig.base_shade() {
        given.push(("base_shade", shade.to_string()));
    }
    if let Some(class) = dye.class {
        given.push(("dye_class", class.name().to_owned()));
    }
    given
}

/// Which dye.
#[derive(Properties, PartialEq)]
struct LockProps {
    whose: Whose,
    log: LogId,
    dye: LotId,
    name: String,
    given: Given,
}

/// The form for one lock, filled from a photo where there is one.
#[component]
fn LockForm(props: &LockProps) -> Html {
    let seen = use_cell(|| None::<String>);
    let open = use_cell(|| false);
    let (whose, log) = (props.whose, props.log);
    let picked = {
        let seen = seen.clone();
        Callback::from(move |shade: String| {
            // What was typed before gives way to what was touched.
            for name in ["result_shade", "seen_by"] {
                drafts::drop(&format!("{log}.colour_lock..{name}"));
            }
            seen.set(Some(shade));
        })
    };
    let mut given = props.given.clone();
    if let Some(shade) = seen.get() {
        given.push(("result_shade", shade));
        given.push(("seen_by", "photo_white".to_owned()));
    }
    let toggle = {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| open.set(!open.get()))
    };
    let closed = {
        let (open, seen) = (open.clone(), seen.clone());
        Callback::from(move |()| {
            open.set(false);
            seen.set(None);
        })
    };
    let label = ta("web.lock_record", [Arg::Text(props.name.clone())]);
    html! {
        <>
            <p class="actions">{ button("primary", label, toggle) }</p>
            if open.get() {
                <div class="card">
                    { folded(t("web.shade_from_photo"), html! { <FromPhoto id={format!("lock-{}", props.dye)} white=true {picked} /> }) }
                    <div key={seen.get().unwrap_or_default()}>{ work_form(whose, log, Named("colour_lock"), given, closed) }</div>
                </div>
            }
        </>
    }
}
