//! `weftbook cut CASE`: packs to buy and the weft laid out, for any lengths.
//!
//! What it is: a case in, a cutting plan out. What it is not: a plan of a wig.
//!
//! JSON out: `total_price`, `lower_bound` (no plan can cost less), `proved` (the price is proved least), `why` (the argument),
//! `bought` and `owned_used` (a number for each pack of the case, in its order), `bars` (each length with its `pack` by name,
//! whether it was `owned`, `pieces_mm` longest first, `offcut_mm`).

use measure::say::{Arg, Say};
use plan::cutting::{Case, Plan, solve};
use serde::Serialize;

use super::case;
use crate::{
    args::Options,
    input,
    out::{Fault, Said, json},
    rows::Page,
};

/// Bytes of a case: far more than its limits let through.
const BYTES_MOST: usize = 4 * 1024 * 1024;

#[derive(Serialize)]
struct Answer<'a> {
    total_price: u64,
    lower_bound: u64,
    proved: bool,
    why: &'static str,
    bought: &'a [u32],
    owned_used: &'a [u32],
    bars: Vec<Bar<'a>>,
}

#[derive(Serialize)]
struct Bar<'a> {
    pack: &'a str,
    owned: bool,
    pieces_mm: &'a [u32],
    offcut_mm: u32,
}

/// Runs it.
pub fn run(options: &Options) -> Result<Said, Fault> {
    let case = case::read(&input::text(&options.file, BYTES_MOST)?)?;
    let plan = solve(case.clone()).map_err(|short| Fault::new("cli.case_fault", [Arg::Text(short.to_string())]))?;
    let text = if options.json { json(&answer(&case, &plan))? } else { table(&case, &plan, options) };
    Ok(Said { text, clean: true })
}

fn name(case: &Case, pack: usize) -> &str {
    case.packs().get(pack).map_or("", |pack| pack.name.as_str())
}

fn answer<'a>(case: &'a Case, plan: &'a Plan) -> Answer<'a> {
    Answer {
        total_price: plan.total_price,
        lower_bound: plan.lower_bound,
        proved: plan.proved,
        why: plan.closed.words(),
        bought: &plan.bought,
        owned_used: &plan.owned_used,
        bars: plan
            .bars
            .iter()
            .map(|bar| Bar {
                pack: name(case, bar.pack),
                owned: bar.owned,
                pieces_mm: &bar.pieces_mm,
                offcut_mm: bar.offcut_mm,
            })
            .collect(),
    }
}

fn table(case: &Case, plan: &Plan, options: &Options) -> String {
    let mut page = Page::new(&options.prefs);
    let number = |count: u64| Arg::Text(count.to_string());
    let some = plan.bought.iter().enumerate().filter(|(_, packs)| **packs > 0);
    let buy: Vec<String> = some.map(|(pack, packs)| format!("{packs} × {}", name(case, pack))).collect();
    if buy.is_empty() {
        page.line(&Say::key("cli.cut_nothing"));
    } else {
        page.line(&Say::new("cli.cut_buy", [Arg::Text(buy.join(", ")), number(plan.total_price)]));
    }
    let key = if plan.proved { "cli.cut_proved" } else { "cli.cut_open" };
    page.line(&Say::new(key, [Arg::from(plan.closed.words()), number(plan.lower_bound)]));
    page.heading("cli.laid");
    let mut rows = vec![["cli.bar", "cli.pack", "cli.pieces_mm", "cli.offcut_mm"].map(|key| page.word(key)).to_vec()];
    for (at, bar) in plan.bars.iter().enumerate() {
        let owned = if bar.owned { "cli.of_owned" } else { "cli.of_bought" };
        rows.push(vec![
            (at + 1).to_string(),
            page.words(&Say::new(owned, [Arg::from(name(case, bar.pack))])),
            bar.pieces_mm.iter().map(u32::to_string).collect::<Vec<_>>().join(" + "),
            bar.offcut_mm.to_string(),
        ]);
    }
    page.table(&rows);
    page.done()
}
