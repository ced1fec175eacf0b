//! A timer beside a step, which a closed tab does not stop.
//!
//! What it is: minutes counted from moments kept in this browser. What it is not: a record: "Done" writes the minutes.

use gloo_timers::callback::Interval;
use yew::prelude::*;

use crate::{
    parts::{cell::use_cell, plain::button},
    shell::talk::{t, ta},
    store::drafts,
};

/// How often the minutes are drawn anew.
const TICK_MS: u32 = 15_000;

/// Minutes counted before, and since when it runs, both in ms.
fn read(address: &str) -> (f64, Option<f64>) {
    let text = drafts::read(address).unwrap_or_default();
    let (before, since) = text.split_once('+').unwrap_or((text.as_str(), ""));
    (before.parse().unwrap_or(0.0), since.parse().ok())
}

fn counted(address: &str) -> f64 {
    let (before, since) = read(address);
    before + since.map_or(0.0, |since| (js_sys::Date::now() - since).max(0.0))
}

/// The address of a step's timer.
pub fn address(step: &str) -> String {
    format!("timer.{step}")
}

/// Whole minutes counted so far; none where it ran for less than half of one: that was no work.
pub fn minutes(address: &str) -> Option<u32> {
    let whole = (counted(address) / 60_000.0 + 0.5) as u32;
    (whole > 0).then_some(whole)
}

/// Forgets what was counted.
pub fn clear(address: &str) {
    drafts::drop(address);
}

/// Whose timer.
#[derive(Properties, PartialEq)]
pub struct TimerProps {
    /// Where it is kept.
    pub address: String,
}

/// The timer.
#[component]
pub fn Timer(props: &TimerProps) -> Html {
    let drawn = use_cell(|| ());
    {
        let drawn = drawn.clone();
        use_effect_with((), move |()| {
            let interval = Interval::new(TICK_MS, move || drawn.set(()));
            move || drop(interval)
        });
    }
    let (_, since) = read(&props.address);
    let toggle = {
        let (address, drawn) = (props.address.clone(), drawn.clone());
        Callback::from(move |_: MouseEvent| {
            let before = counted(&address);
            let text = if since.is_some() {
                format!("{before:.0}")
            } else {
                format!("{before:.0}+{:.0}", js_sys::Date::now())
            };
            drafts::keep(&address, &text);
            drawn.set(());
        })
    };
    let words = if since.is_some() { t("web.timer_stop") } else { t("web.timer_start") };
    let shown = (counted(&props.address) / 60_000.0) as i64;
    html! {
        <span class="timer">
            { button("", words, toggle) }
            if since.is_some() || shown > 0 { <span role="timer">{ ta("web.timer_minutes", [measure::say::Arg::Count(shown)]) }</span> }
        </span>
    }
}
