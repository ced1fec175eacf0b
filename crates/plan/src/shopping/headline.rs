//! The answer in one sentence or two.
//!
//! What it is: which sentence, with what in it. What it is not: the words (see `words`).

use measure::{
    quantity::{Length, units},
    say::{Arg, Say},
};

use super::{
    answer::{Outcome, Packs, Settling, Solved},
    pieces::Way,
};
use crate::{layout::none, wefts::Why};

/// A small number in words.
fn number(count: u32, starts: bool) -> Arg {
    match count {
        1 if starts => Arg::Key("number.One"),
        2 if starts => Arg::Key("number.Two"),
        3 if starts => Arg::Key("number.Three"),
        4 if starts => Arg::Key("number.Four"),
        5 if starts => Arg::Key("number.Five"),
        6 if starts => Arg::Key("number.Six"),
        0 if starts => Arg::Key("number.None"),
        0 => Arg::Key("number.0"),
        1 => Arg::Key("number.1"),
        2 => Arg::Key("number.2"),
        3 => Arg::Key("number.3"),
        4 => Arg::Key("number.4"),
        5 => Arg::Key("number.5"),
        6 => Arg::Key("number.6"),
        count => Arg::Count(i64::from(count)),
    }
}

fn packs_words(count: u32) -> Say {
    if count == 1 { Say::key("plan.one_pack") } else { Say::new("plan.packs", [Arg::Count(i64::from(count))]) }
}

pub(super) fn headline(outcome: Outcome, packs: Packs, settle: &[Settling], likely: &Solved) -> Say {
    let settle: Say = match settle {
        [] => Say::key("plan.settle_none"),
        [one] => Say::key(one.input.settle()),
        [one, two, ..] => Say::new("plan.settle_two", [Arg::Key(one.input.settle()), Arg::Key(two.input.settle())]),
    };
    let (low, high) = (packs.low, packs.high);
    match outcome {
        Outcome::NothingWanted => {
            let no_room = likely.prepared.placement.shortfalls.iter().any(|short| short.why == Why::NoRoom);
            let wanted = likely.prepared.wanted > none();
            Say::key(match (wanted, no_room) {
                (false, _) => "plan.nothing_wanted",
                (true, true) => "plan.no_room",
                (true, false) => "plan.too_little",
            })
        }
        Outcome::Lacking if likely.prepared.way == Way::Run => {
            Say::new("plan.lacking_run", [Arg::Run(likely.prepared.amounts.total())])
        }
        Outcome::Lacking => {
            let piece = likely.shortage.as_ref().map_or(0, |shortage| shortage.piece_mm);
            let total = likely.prepared.amounts.total();
            Say::new("plan.lacking", [Arg::Run(total), Arg::Length(Length::new::<units::millimeter>(f64::from(piece)))])
        }
        Outcome::EnoughOwned | Outcome::Buy => {
            let buy = packs.likely.unwrap_or(0);
            let first = if buy == 0 {
                Say::key("plan.buy_nothing")
            } else {
                Say::new("plan.buy", [Arg::from(packs_words(buy))])
            };
            let fewer = low.filter(|low| *low < buy);
            let more = high.filter(|high| *high > buy);
            match (fewer, more, high) {
                (None, None, Some(_)) => Say::new("plan.headline_sure", [Arg::from(first)]),
                (Some(low), None, Some(_)) => {
                    Say::new("plan.headline_fewer", [Arg::from(first), number(low, true), Arg::from(settle)])
                }
                (None, Some(high), _) => {
                    Say::new("plan.headline_more", [Arg::from(first), number(high, true), Arg::from(settle)])
                }
                (Some(low), Some(high), _) => Say::new(
                    "plan.headline_both",
                    [Arg::from(first), number(low, true), number(high, false), Arg::from(settle)],
                ),
                (_, None, None) => Say::new("plan.headline_open", [Arg::from(first), Arg::from(settle)]),
            }
        }
    }
}
