//! Curl and heat: will it reach, which rod, how hot, how long; and the way of a heat test lock.
//!
//! What it is: the looks of the zones, the setting pattern, the plan of a set. What it is not: the sums (see `plan`).

mod lock;
mod reach;
mod set;
pub mod words;

use std::rc::Rc;

use plan::{
    heat::{self, of_wig, tool},
    lengths::{Lengths, Problem, ZoneNeed, need, pattern, rods::usual_fullness},
};
use record::{
    history::entry::{LogId, Of},
    trade::heat::Medium,
    wig::{condition::Condition, figures::Wig, zone::Zone},
};
use sheet::{drawing::Voice, setting};
use yew::prelude::*;

use crate::{
    pages::cap::{Laid, Props, head_refused, laid_out},
    parts::{
        cell::use_cell,
        drawing::draw,
        field::{Stands, figure},
        plain::{folded, p, section},
    },
    shell::talk::{WORDS, choice, t},
    store::{
        desk::{Desk, use_desk},
        judge,
        model::Whose,
    },
};

/// What the parts of the page share.
struct Page<'a> {
    desk: &'a Desk,
    whose: Whose,
    log: LogId,
    wig: &'a Wig<'a>,
    medium: Medium,
    needs: &'a [ZoneNeed],
}

impl Page<'_> {
    /// A field of the whole wig.
    fn field(&self, slot: &'static str, stands: String) -> Html {
        figure(self.whose, self.log, slot, Of::Wig, Some(Stands::plain(stands)), None)
    }

    /// A field of the whole wig for which nothing stands.
    fn open(&self, slot: &'static str) -> Html {
        figure(self.whose, self.log, slot, Of::Wig, None, None)
    }

    fn need(&self, zone: Zone) -> Option<&ZoneNeed> {
        self.needs.iter().find(|need| need.look.zone == zone)
    }
}

/// The page.
#[component]
pub fn Heat(props: &Props) -> Html {
    let desk = use_desk();
    let prefs = desk.model().prefs.clone();
    let (whose, log) = (props.whose, LogId::Wig(props.wig));
    let state = desk.state(whose, log);
    let bench = desk.model().bench(whose);
    let lots = bench.lots();
    let laid: Rc<Laid> = use_memo((state.clone(), lots.clone()), |(state, lots)| laid_out(state, lots));
    let chosen = use_cell(|| None::<Zone>);
    let (layout, full) = match &*laid {
        Ok(laid) => (&laid.0, &laid.1),
        Err(problems) => return head_refused(problems, &prefs),
    };
    let wig = Wig::new(&state);
    let condition = Condition::now(&wig);
    let mut fullness = [usual_fullness(); 8];
    for (one, zone) in fullness.iter_mut().zip(&full.zones) {
        *one = zone.now();
    }
    let medium = tool::medium(&wig);
    let results = bench.opened();
    let lengths = Lengths { wig: &wig, condition: &condition, lots: &lots, results: &results, full: &fullness, medium };
    let mut needs = Vec::new();
    let mut problems: Vec<Problem> = Vec::new();
    for zone in full.there() {
        match need(&lengths, zone.zone) {
            Ok(need) => needs.push(need),
            Err(problem) => problems.push(problem),
        }
    }
    let page = Page { desk: &desk, whose, log, wig: &wig, medium, needs: &needs };
    let pattern = pattern::pattern(&layout.dome, &wig, &needs);
    let curled = needs.iter().find(|need| need.rod.is_some()).map(|need| need.look.zone);
    let zone = chosen.get().filter(|zone| page.need(*zone).is_some()).or(curled).unwrap_or(Zone::Back);
    let zones = of_wig::alike(&needs, zone);
    let wound = page.need(zone).filter(|need| need.rod.is_some());
    let (planned, guide) = judge::at_bench(desk.model(), whose, log, &|bench, now| {
        let ceiling = of_wig::ceiling(bench, now, &zones, medium);
        let own = of_wig::own(bench, medium);
        let ask = heat::Ask {
            wig: &wig,
            medium,
            need: wound,
            full: fullness[zone as usize],
            ceiling: ceiling.as_ref(),
            own: own.as_ref(),
        };
        let guide = heat::guide::guide(wig.fibre(), medium, ceiling.as_ref(), &of_wig::locks_of(bench), own.as_ref());
        (heat::plan(&ask), guide)
    });
    let drawings = setting::views(layout, full, &pattern, &Voice { words: &WORDS, prefs: &prefs });
    html! {
        <>
            { set::answer(&page, &planned, zone, &zones, &chosen) }
            { section("heat-reach", "web.heat_reach", reach::zones(&page, &problems, &pattern)) }
            if !drawings.is_empty() {
                { section("heat-pattern", "web.heat_pattern", html! {
                    <div class="cap-map">{ for drawings.iter().map(|drawing| draw(drawing, "cap-view", None, &prefs)) }</div>
                }) }
            }
            { section("heat-rods", "web.heat_rods", html! {
                <div class="fields">
                    { page.field("winding", choice(plan::lengths::rods::Winding::of(&wig, medium).name())) }
                    { page.field("rod_kind", choice("plastic_rod")) }
                    { page.field("section_width", t("web.heat_by_rod")) }
                    { page.field("section_depth", t("web.heat_by_rod")) }
                </div>
            }) }
            { folded(t("web.heat_test_curl"), html! { <>
                { p("hint", t("web.heat_test_curl_hint")) }
                <div class="fields">
                    { for ["test_straight", "test_hangs", "test_rod", "test_curl"].into_iter().map(|slot| page.open(slot)) }
                </div>
            </> }) }
            { section("heat-lock", "web.heat_lock", lock::way(&page, &guide)) }
        </>
    }
}
