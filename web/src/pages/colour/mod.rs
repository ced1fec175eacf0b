//! The colour of a wig: the baths first, then the colours wanted, what it starts from, dye, test locks, other ways.
//!
//! What it is: one page. What it is not: its parts, a file each, or any sum.

mod bands;
mod baths;
mod dyes;
mod locks;
mod other;
mod photo;
pub mod words;

use measure::{quantity::Length, say::Arg};
use plan::{
    colour::Light,
    dye::{self, Asked, Column, hair::length_of, level},
    fullness::Fullness,
    inputs::{Base, Corner},
    layout::Layout,
    working::{Caution, Weight},
};
use record::{
    history::entry::{LogId, Of},
    id::WigId,
    trade::dye::Class,
    wig::{condition::Condition, figures::Wig, zone::Zone},
    workshop::{colour_locks::ColourLock, dyes::Dye},
};
use sheet::{
    colour::{fall, strip},
    drawing::Voice,
};
use yew::prelude::*;

use crate::{
    pages::cap::{head_refused, laid_out},
    parts::{
        cautions::cautions,
        drawing::draw,
        field::{Stands, figure},
        pictures,
        plain::{folded, p, section},
    },
    shell::talk::{WORDS, say, t, ta},
    store::{desk::Desk, judge, model::Whose},
};

pub use dyes::shelf;

/// What the parts of the page share.
pub struct Here<'a> {
    desk: &'a Desk,
    whose: Whose,
    log: LogId,
    wig: &'a Wig<'a>,
    dyes: &'a [Dye],
    locks: &'a [ColourLock],
    plan: &'a Result<dye::Plan, dye::Stop>,
}

/// The page. It is drawn anew only when the records change, so that nothing need be remembered between.
pub fn page(desk: &Desk, wig: WigId, whose: Whose) -> Html {
    let log = LogId::Wig(wig);
    let state = desk.state(whose, log);
    let bench = desk.model().bench(whose);
    let lots = bench.lots();
    let (layout, fullness) = match laid_out(&state, &lots) {
        Ok(laid) => laid,
        Err(problems) => return head_refused(&problems, &desk.model().prefs),
    };
    let (dyes, locks) = (bench.dyes(), bench.colour_locks());
    let plan = judge::at_bench(desk.model(), whose, log, &|bench, condition| {
        dye::plan(&Asked { bench, condition, layout: &layout, fullness: &fullness, dyes: &dyes, locks: &locks })
    });
    let wig = Wig::new(&state);
    let here = Here { desk, whose, log, wig: &wig, dyes: &dyes, locks: &locks, plan: &plan };
    let hangs = Hangs::new(&here, &layout, &fullness);
    html! {
        <>
            { answer(&here, &hangs) }
            { section("colour-from", "web.colour_from", from(&here)) }
            { section("colour-look", "web.colour_look", look(&here, &hangs)) }
            { section("colour-dyes", "web.colour_dyes", dyes::of_wig(&here)) }
            { section("colour-locks", "web.colour_locks", locks::locks(&here)) }
            { section("colour-other", "web.colour_other", other::ways(&here)) }
        </>
    }
}

/// The answer first: what to weigh out, or why not.
fn answer(here: &Here<'_>, hangs: &Hangs<'_>) -> Html {
    let prefs = &here.desk.model().prefs;
    let inside = match here.plan {
        Err(stop) => {
            let (what, remedy) = stop.say();
            let weight = if matches!(stop, dye::Stop::Refused(_)) { Weight::Stop } else { Weight::Consider };
            html! { <>
                <p class="headline" id="headline" tabindex="-1">{ say(&what, prefs) }</p>
                { cautions(&[Caution { weight, what, remedy }], prefs) }
            </> }
        }
        Ok(plan) => {
            let first = plan.baths.first();
            let headline = match (first, plan.baths.len()) {
                (None, _) => t("web.nothing_to_dye"),
                (Some(bath), many) => {
                    let dose = bath.dyes.first().map_or(Arg::Count(0), |dye| baths::dose(dye.dose[1]));
                    let args = [
                        dose,
                        Arg::Text(bath.dyes.first().map_or_else(String::new, |dye| baths::dye_name(dye, plan.class))),
                        Arg::Volume(bath.recipe.bath),
                        Arg::Mass(bath.recipe.takes),
                        Arg::Time(plan.time),
                        Arg::Count(many as i64),
                    ];
                    let key = if many == 1 { "web.colour_headline" } else { "web.colour_headline_many" };
                    say(&measure::say::Say::new(key, args), prefs)
                }
            };
            html! { <>
                <p class="headline" id="headline" tabindex="-1">{ headline }</p>
                { cautions(&plan.cautions, prefs) }
                { p("hint", t("web.colour_model")) }
                { for plan.baths.iter().map(|bath| baths::bath(here, hangs, plan.class, bath)) }
            </> }
        }
    };
    html! { <div class="answer" aria-live="polite">{ inside }</div> }
}

/// Hair on this head, for the drawings.
pub struct Hangs<'a> {
    layout: &'a Layout,
    rows: Vec<level::RowLevel>,
    columns: Vec<Column>,
    long: [Length; 8],
    smooth: [bool; 8],
    strips: Vec<strip::Strip>,
}

impl<'a> Hangs<'a> {
    fn new(here: &Here<'_>, layout: &'a Layout, fullness: &Fullness) -> Hangs<'a> {
        let (wig, corner) = (here.wig, Corner::likely());
        let lots = here.desk.model().bench(here.whose).lots();
        let hair = dye::hair::hair(wig, &Condition::now(wig), layout, fullness, &lots, &corner);
        let base = Base::at(wig, &corner);
        let columns = dye::plan::columns(wig, fullness);
        let smooth = Zone::ALL.map(|zone| wig.colour_along(zone).is_some_and(|along| along.smooth()));
        let long = fall::lengths(|zone| length_of(&hair, zone));
        let mut strips: Vec<strip::Strip> = Vec::new();
        for column in &columns {
            let at = column.zone as usize;
            let shortest = base.shortest[at].min(base.longest[at]).min(long[at]);
            let same = |strip: &&mut strip::Strip| {
                strip.column.bands == column.bands && strip.longest == long[at] && strip.shortest == shortest
            };
            match strips.iter_mut().find(same) {
                Some(strip) => strip.zones.push(column.zone),
                None => strips.push(strip::Strip {
                    zones: vec![column.zone],
                    column: column.clone(),
                    smooth: smooth[at],
                    shortest,
                    longest: long[at],
                }),
            }
        }
        Hangs { layout, rows: level::rows(layout), columns, long, smooth, strips }
    }

    /// The hair hanging, in water where it is dipped.
    fn drawing(&self, dipping: Option<&dye::Dipping>, voice: &Voice<'_>) -> sheet::drawing::Drawing {
        fall::drawing(
            &fall::Fall {
                dome: &self.layout.dome,
                rows: &self.rows,
                columns: &self.columns,
                long: self.long,
                smooth: self.smooth,
                dipping,
            },
            voice,
        )
    }
}

/// The colours wanted, drawn and told.
fn look(here: &Here<'_>, hangs: &Hangs<'_>) -> Html {
    let prefs = &here.desk.model().prefs;
    let voice = Voice { words: &WORDS, prefs };
    let zones = hangs.layout.areas;
    let there = Zone::ALL.into_iter().filter(|zone| zones[*zone as usize].value > 5e-5);
    html! {
        <>
            { p("hint", t("web.colour_look_hint")) }
            { bands::bands(here, "colour_along", Of::Wig) }
            { folded(t("web.colour_by_zone"), html! {
                { for there.map(|zone| html! {
                    <details class="zone" key={zone.name()}>
                        <summary>{ t(zone.label()) }</summary>
                        { bands::bands(here, "zone_colour_along", Of::Zone(zone)) }
                    </details>
                }) }
            }) }
            if !hangs.strips.is_empty() {
                <div class="colour-drawings">
                    { draw(&strip::drawing(&hangs.strips, &voice, pictures::width()), "strip", None, prefs) }
                    { draw(&hangs.drawing(None, &voice), "fall", None, prefs) }
                </div>
            }
        </>
    }
}

/// What it starts from, the pot and the bath.
fn from(here: &Here<'_>) -> Html {
    let prefs = &here.desk.model().prefs;
    let wig = here.wig;
    let known = |slot: &'static str, likely: Arg, origin| {
        figure(here.whose, here.log, slot, Of::Wig, Some(Stands::figure(&likely, origin, prefs)), None)
    };
    let (pot, ratio, spare) = (wig.pot(), wig.liquor_ratio(), wig.bath_spare());
    let class = dye::plan::class_of(wig, here.dyes).map_or_else(|| t("web.choose"), |class: Class| t(class.label()));
    html! {
        <div class="fields">
            { figure(here.whose, here.log, "base_shade", Of::Wig, None, Some("web.base_shade_hint")) }
            { figure(here.whose, here.log, "dye_with", Of::Wig, Some(Stands::plain(class)), None) }
            { known("pot", Arg::Volume(pot.likely), &pot.origin) }
            { known("bath_spare", Arg::Dose(spare.likely), &spare.origin) }
            { figure(here.whose, here.log, "pot_temperature", Of::Wig, Some(Stands::plain(t("web.as_fibre_likes"))), None) }
            { known("liquor_ratio", Arg::Number(ratio.likely.value, 0), &ratio.origin) }
        </div>
    }
}

/// A colour to see, with its number to read.
fn swatch(light: Light) -> Html {
    let shade = light.shade().to_string();
    html! {
        <span class="swatch">
            <svg viewBox="0 0 10 10" aria-hidden="true"><rect width="10" height="10" fill={shade.clone()} /></svg>
            <code>{ shade }</code>
        </span>
    }
}

/// A difference of colours: words first, the number after.
fn off(words: &measure::say::Say, amount: f64, prefs: &measure::prefs::Prefs) -> String {
    ta("web.colour_off", [Arg::Text(say(words, prefs)), Arg::Number(amount, 1)])
}
