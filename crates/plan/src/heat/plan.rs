//! The answer: how hot, how long, how long to cool, or why not.
//!
//! What it is: the soak at its fast, likely and slow end put against window and limit, with curve, working and cautions.
//! What it is not: leave to go beyond a limit, or a promise: conduction is the slow bound where water or steam flows.

use measure::{
    quantity::{ArealNumberDensity, Length, ThermodynamicTemperature, Time, units},
    say::{Arg, Say},
};
use record::{
    history::entry::Of,
    trade::{
        heat::{IRON_OVERSHOOT, Medium, Suits, window},
        soaking,
        sources::CONDUCTION,
    },
    wig::figures::Wig,
    workshop::locks::OwnWindow,
};

use super::{
    cautions,
    lock::{End, Lock},
    run::{Sample, on, until},
    tool::{Tool, celsius, from_span, of_fact, tool},
};
use crate::{
    care::fibre_name,
    lengths::{
        need::ZoneNeed,
        rods::tenths,
        said::{Problem, typed},
    },
    working::{Caution, Ground, Line, Weight, line},
};

/// The hottest that everything in the heat's way bears.
#[derive(Clone, Debug, PartialEq)]
pub struct Ceiling {
    /// The most.
    pub most: ThermodynamicTemperature,
    /// What it is that bears no more.
    pub name: Say,
    /// On what ground.
    pub ground: Ground,
    /// Whether it is cap, glue or block, which may be kept out of the heat.
    pub kept_out: bool,
}

/// What is asked.
#[derive(Clone, Copy, Debug)]
pub struct Ask<'a> {
    /// The wig.
    pub wig: &'a Wig<'a>,
    /// How it is heated.
    pub medium: Medium,
    /// What the zone needs; without it a hanging lock is straightened.
    pub need: Option<&'a ZoneNeed>,
    /// How full the zone is.
    pub full: ArealNumberDensity,
    /// The limit.
    pub ceiling: Option<&'a Ceiling>,
    /// What this bench found out by test locks.
    pub own: Option<&'a OwnWindow>,
}

/// The curve.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Curve {
    /// Moments, in order.
    pub samples: Vec<Sample>,
    /// When the middle is there, s.
    pub reached: Option<f64>,
    /// When the heat is taken away, s.
    pub off: Option<f64>,
    /// When it is cool enough, s.
    pub cool: Option<f64>,
    /// The window: from where it sets to the hottest worth trying, °C.
    pub window: Option<(f64, f64)>,
    /// The limit, °C.
    pub limit: Option<f64>,
    /// Cool enough, °C.
    pub release: f64,
}

/// What comes of it.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// Do it.
    Go,
    /// It dries a set that was made otherwise.
    Dries,
    /// Do not; the reason is the headline.
    Stop,
}

/// The plan of a set.
#[derive(Clone, Debug, PartialEq)]
pub struct HeatPlan {
    /// What comes of it.
    pub verdict: Verdict,
    /// The answer in one line.
    pub headline: Say,
    /// What is to be done instead, where it stops.
    pub instead: Option<Say>,
    /// The tool.
    pub tool: Tool,
    /// The lock.
    pub lock: Lock,
    /// Heat and hold in all, s: at the least, likely, at the most.
    pub heating: Option<[f64; 3]>,
    /// Cooling, s: at the least, likely, at the most.
    pub cooling: Option<[f64; 3]>,
    /// The curve, at the likely figures.
    pub curve: Curve,
    /// The working.
    pub working: Vec<Line>,
    /// Cautions.
    pub cautions: Vec<Caution>,
}

/// Longer than this nobody holds a tool, s.
const HEATING_MOST: f64 = 4.0 * 3600.0;
/// Longer than this nobody waits for cooling alone, s.
const COOLING_MOST: f64 = 24.0 * 3600.0;
/// Longer than this a lock is too thick for water, steam or air, s. Our own judgement.
const TOO_LONG: f64 = 3600.0;

/// A time in words: seconds, minutes and halves, hours.
pub fn lasts(seconds: f64) -> Arg {
    let up = |step: f64| libm::ceil(seconds / step - 1e-9) * step;
    if seconds <= 90.0 {
        Say::new("heat.seconds", [Arg::Number(up(if seconds <= 20.0 { 1.0 } else { 5.0 }), 0)]).into()
    } else if seconds <= 600.0 {
        Say::new("heat.minutes", [Arg::Number(up(30.0) / 60.0, 1)]).into()
    } else {
        Arg::Time(Time::new::<units::second>(up(60.0)))
    }
}

struct Heated {
    reached: [Option<f64>; 3],
    samples: Vec<Sample>,
    soaks: Vec<super::soak::Soak>,
}

fn heat(lock: &Lock, tool: &Tool, to: f64) -> Option<Heated> {
    let mut heated = Heated { reached: [None; 3], samples: Vec::new(), soaks: Vec::new() };
    for (at, end) in End::ALL.into_iter().enumerate() {
        let (mut soak, outside) = lock.put_to(tool, tool.medium.wet(), end)?;
        let mut samples = Vec::new();
        heated.reached[at] = until(&mut soak, &outside, HEATING_MOST, &|now| to - now.low, 0.0, &mut samples);
        if end == End::Likely {
            heated.samples = samples;
        }
        heated.soaks.push(soak);
    }
    Some(heated)
}

/// When the outside passes a temperature, at the likely figures.
fn passes(lock: &Lock, tool: &Tool, most: f64) -> Option<f64> {
    let (mut soak, outside) = lock.put_to(tool, tool.medium.wet(), End::Likely)?;
    until(&mut soak, &outside, HEATING_MOST, &|now| most - now.high, 0.0, &mut Vec::new())
}

/// The thickest lock of this kind whose middle is there within some time; nothing where none is.
fn thickest(lock: &Lock, tool: &Tool, to: f64, within: f64) -> Option<Length> {
    let there = |factor: f64| {
        let lock = lock.times(factor);
        let Some((mut soak, outside)) = lock.put_to(tool, tool.medium.wet(), End::Likely) else { return false };
        until(&mut soak, &outside, within, &|now| to - now.low, 0.0, &mut Vec::new()).is_some_and(|time| time <= within)
    };
    let (mut low, mut high) = (0.01, 1.0);
    if !there(low) {
        return None;
    }
    for _ in 0..16 {
        let middle = 0.5 * (low + high);
        if there(middle) { low = middle } else { high = middle }
    }
    Some(lock.thickness * low)
}

/// Plans a set.
///
/// # Errors
/// The field that cannot be.
pub fn plan(ask: &Ask<'_>) -> Result<HeatPlan, Problem> {
    let (wig, medium) = (ask.wig, ask.medium);
    let fibre = wig.fibre();
    let tool = tool(wig, medium, ask.own)?;
    let lock = Lock::of(wig, medium, ask.need, ask.full);
    let table = window(fibre, medium);
    let range = table.range();
    let release = of_fact(&fibre.heat.release, fibre.heat.release.likely);
    let own_from = ask.own.and_then(|own| own.held_from);
    let sets_at = range.map(|range| own_from.unwrap_or_else(|| of_fact(range, range.low)));
    let mut working = tool.working.clone();
    working.extend(lock.working.iter().cloned());
    if let Some(ceiling) = ask.ceiling {
        working.push(Line {
            name: Say::key("heat.limit"),
            sum: Say::new("heat.limit_sum", [Arg::Temperature(ceiling.most), ceiling.name.clone().into()]),
            ground: ceiling.ground,
        });
    }
    let mut plan = HeatPlan {
        verdict: Verdict::Stop,
        headline: Say::key("heat.never_there_do"),
        instead: None,
        curve: Curve {
            window: sets_at.zip(range).map(|(from, range)| (celsius(from), celsius(of_fact(range, range.high)))),
            limit: ask.ceiling.map(|ceiling| celsius(ceiling.most)),
            release: celsius(release),
            ..Curve::default()
        },
        heating: None,
        cooling: None,
        cautions: cautions::of(wig, &tool),
        tool,
        lock,
        working,
    };
    let (Some(range), Some(sets_at)) = (range, sets_at) else {
        plan.headline = Say::new("heat.never", [fibre_name(fibre), Arg::Key(medium.label())]);
        plan.instead = Some(Say::key("heat.never_do"));
        return Ok(plan);
    };
    if let Some(ceiling) = ask.ceiling
        && plan.tool.meets.value > ceiling.most.value + 0.05
    {
        too_hot(&mut plan, ceiling, sets_at);
        return Ok(plan);
    }
    let goal = Line {
        name: Say::key("heat.sets_at"),
        sum: Say::new("plan.just", [Arg::Temperature(sets_at)]),
        ground: if own_from.is_some() {
            Ground::Said
        } else {
            Ground::Assumed { source: range.source, sure: range.sure }
        },
    };
    plan.working.push(goal);
    if let Suits::Dries(_) = table.suits {
        plan.verdict = Verdict::Dries;
        plan.headline = Say::new("heat.dries", [Arg::Temperature(plan.tool.shows), fibre_name(fibre)]);
        plan.curve = Curve { release: plan.curve.release, ..Curve::default() };
        return Ok(plan);
    }
    // At the very temperature the middle would need for ever.
    if plan.tool.meets.value <= sets_at.value + 0.05 && celsius(sets_at) > soaking::ROOM.likely {
        plan.headline = Say::new("heat.too_cool", [Arg::Temperature(plan.tool.meets), Arg::Temperature(sets_at)]);
        let likely = of_fact(range, range.likely);
        plan.instead = Some(if medium.wet() && likely.value > plan.tool.boils.value {
            Say::new("heat.too_cool_here_do", [Arg::Temperature(plan.tool.boils)])
        } else {
            Say::new("heat.too_cool_do", [Arg::Temperature(likely)])
        });
        return Ok(plan);
    }
    let to = celsius(sets_at).min(celsius(plan.tool.meets) - 0.05);
    let Some(heated) = heat(&plan.lock, &plan.tool, to) else { return Ok(plan) };
    plan.curve.samples = heated.samples.clone();
    let [_, Some(likely), slow] = heated.reached else {
        never_there(&mut plan, &heated, to);
        return Ok(plan);
    };
    let most = if medium == Medium::Iron { soaking::IRON_AT_MOST.likely } else { TOO_LONG };
    if likely > most {
        too_thick(&mut plan, likely, most, to);
        return Ok(plan);
    }
    finish(ask, &mut plan, heated, likely, slow);
    if let Suits::AfterTest(_) = table.suits
        && !ask.own.is_some_and(|own| own.held_at(plan.tool.shows))
    {
        plan.headline = Say::new("heat.after_test", [Arg::from(plan.headline.clone())]);
        plan.cautions.push(Caution {
            weight: Weight::Stop,
            what: Say::new("heat.untested", [fibre_name(fibre), Arg::Key(medium.label())]),
            remedy: Say::new(
                "heat.untested_do",
                [Arg::Temperature(of_fact(range, range.low)), Arg::Temperature(of_fact(range, range.high))],
            ),
        });
    }
    if let Some(ceiling) = ask.ceiling
        && plan.tool.at_most.value > ceiling.most.value + 0.05
    {
        plan.cautions.push(Caution {
            weight: Weight::Care,
            what: Say::new(
                "heat.may_pass",
                [
                    Arg::Temperature(plan.tool.meets),
                    Arg::Temperature(plan.tool.at_most),
                    Arg::Temperature(ceiling.most),
                ],
            ),
            remedy: Say::key("heat.may_pass_do"),
        });
    } else if plan.tool.at_most.value > of_fact(range, range.high).value + 0.05 {
        plan.cautions.push(Caution {
            weight: Weight::Care,
            what: Say::new(
                "heat.above_window",
                [Arg::Temperature(plan.tool.at_most), Arg::Temperature(of_fact(range, range.high))],
            ),
            remedy: Say::key("heat.above_window_do"),
        });
    }
    if medium == Medium::Iron {
        let mut over = plan.tool.shows;
        over.value += IRON_OVERSHOOT.likely;
        plan.cautions.push(Caution {
            weight: Weight::Care,
            what: Say::new("heat.overshoot", [Arg::Temperature(plan.tool.shows), Arg::Temperature(over)]),
            remedy: Say::key("heat.overshoot_do"),
        });
    }
    Ok(plan)
}

fn too_hot(plan: &mut HeatPlan, ceiling: &Ceiling, sets_at: ThermodynamicTemperature) {
    let to = celsius(sets_at);
    let first = passes(&plan.lock, &plan.tool, celsius(ceiling.most));
    let heated = heat(&plan.lock, &plan.tool, to);
    let middle = heated.as_ref().and_then(|heated| heated.reached[1]);
    plan.curve.samples = heated.map(|heated| heated.samples).unwrap_or_default();
    plan.curve.reached = middle;
    let (limit, name) = (Arg::Temperature(ceiling.most), Arg::from(ceiling.name.clone()));
    let meets = Arg::Temperature(plan.tool.meets);
    plan.headline = match (first, middle) {
        (Some(first), Some(middle)) if first < middle => {
            Say::new("heat.passes_first", [meets, limit, name, lasts(first), lasts(middle)])
        }
        _ => Say::new("heat.too_hot", [meets, limit, name]),
    };
    let key = if ceiling.kept_out { "heat.cap_too_hot_do" } else { "heat.too_hot_do" };
    plan.instead = Some(Say::new(key, [Arg::Temperature(ceiling.most)]));
}

fn never_there(plan: &mut HeatPlan, heated: &Heated, to: f64) {
    let best = heated.samples.iter().fold(f64::NEG_INFINITY, |best, sample| best.max(sample.low));
    // Once it moves no more there is nothing to look at.
    let flat = heated.samples.iter().find(|sample| sample.low >= best - 0.2).map_or(0.0, |sample| sample.time * 1.4);
    plan.curve.samples.retain(|sample| sample.time <= flat);
    let heat = |celsius| Arg::Temperature(super::tool::of_celsius(celsius));
    plan.headline = Say::new("heat.never_there", [heat(best), heat(to)]);
    let most = if plan.tool.medium == Medium::Iron { soaking::IRON_AT_MOST.likely } else { TOO_LONG };
    plan.instead = Some(thinner(plan, to, most));
}

fn thinner(plan: &HeatPlan, to: f64, most: f64) -> Say {
    let iron = plan.tool.medium == Medium::Iron;
    match thickest(&plan.lock, &plan.tool, to, most) {
        Some(thin) => {
            let key = if iron { "heat.too_thick_iron_do" } else { "heat.too_thick_do" };
            Say::new(key, [tenths(thin)])
        }
        None => Say::key("heat.never_there_do"),
    }
}

fn too_thick(plan: &mut HeatPlan, likely: f64, most: f64, to: f64) {
    plan.curve.reached = Some(likely);
    let key = if plan.tool.medium == Medium::Iron { "heat.too_thick_iron" } else { "heat.too_thick" };
    plan.headline = Say::new(key, [tenths(plan.lock.thickness), lasts(likely), lasts(most)]);
    plan.instead = Some(thinner(plan, to, most));
}

/// Holds, cools, and says it.
fn finish(ask: &Ask<'_>, plan: &mut HeatPlan, heated: Heated, likely: f64, slow: Option<f64>) {
    let fibre = ask.wig.fibre();
    let span = soaking::hold(plan.tool.medium);
    let held =
        typed(ask.wig, "set_hold", Of::Wig).and_then(|typed| typed.time()).map(|time| time.get::<units::second>());
    let hold = held.map_or([span.low, span.likely, span.high], |held| [held; 3]);
    let fast = heated.reached[0].unwrap_or(likely);
    let slow_at = slow.unwrap_or(likely * 2.0);
    let total = [fast + hold[0], likely + hold[1], slow_at + hold[2]];
    let mut cooling = [0.0; 3];
    let goal = plan.curve.release;
    let mut samples = heated.samples;
    let mut complete = true;
    for ((at, end), mut soak) in End::ALL.into_iter().enumerate().zip(heated.soaks) {
        let Some((_, outside)) = plan.lock.put_to(&plan.tool, plan.tool.medium.wet(), end) else { continue };
        let mut held = Vec::new();
        // The step in which the middle got there went a little beyond.
        let rest = total[at] - soak.time();
        on(&mut soak, &outside, rest.max(0.0), &mut held);
        let since = soak.time();
        let (mut soak, air) = plan.lock.cooling(&soak, end);
        let mut cooled = Vec::new();
        let time = until(&mut soak, &air, COOLING_MOST, &|now| now.high - goal, since, &mut cooled);
        complete &= time.is_some();
        cooling[at] = time.unwrap_or(COOLING_MOST);
        if end == End::Likely {
            samples.extend(held);
            samples.extend(cooled);
        }
    }
    plan.verdict = Verdict::Go;
    plan.heating = Some(total);
    plan.cooling = complete.then_some(cooling);
    plan.curve.reached = Some(likely);
    plan.curve.off = Some(total[1]);
    plan.curve.cool = complete.then_some(total[1] + cooling[1]);
    plan.curve.samples = samples;
    let [_, hold_for, _] = total;
    let [_, cool_for, _] = cooling;
    let (shows, key) = (
        Arg::Temperature(plan.tool.meets),
        match (plan.tool.medium.wet(), fibre.heat.must_dry) {
            (true, true) => "heat.hold_and_dry",
            _ => "heat.hold",
        },
    );
    plan.headline = Say::new(key, [shows, lasts(hold_for), lasts(cool_for)]);
    let spread = |name, times: [f64; 3], ground| Line {
        name: Say::key(name),
        sum: Say::new("plan.likely_range", [lasts(times[1]), lasts(times[0]), lasts(times[2])]),
        ground,
    };
    let conduction = Ground::Assumed { source: &CONDUCTION, sure: record::trade::fact::Sure::Low };
    plan.working.push(spread("heat.middle_there", [fast, likely, slow_at], conduction));
    plan.working.push(spread("heat.held", hold, if held.is_some() { Ground::Said } else { from_span(span) }));
    plan.working
        .push(line(Say::key("heat.release"), Say::new("plan.just", [Arg::Temperature(super::tool::of_celsius(goal))])));
    plan.working.push(spread("heat.cooling", cooling, conduction));
    if slow.is_none() {
        plan.cautions.push(Caution {
            weight: Weight::Care,
            what: Say::key("heat.may_not_reach"),
            remedy: Say::key("heat.may_not_reach_do"),
        });
    }
}
