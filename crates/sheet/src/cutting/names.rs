//! What each piece of weft is called, in full and in short.
//!
//! What it is: purposes in the words of the bench. What it is not: where they are written.

use measure::say::{Arg, Say};
use plan::shopping::{For, LaidPiece};
use record::workshop::lots::Lot;

use super::Bench;
use crate::{
    cap::{number_list, section_name},
    drawing::plain,
};

/// A piece's names.
pub(super) struct Name {
    /// All there is to say.
    pub full: Say,
    /// Enough to know it by; nothing where only the full name will do.
    pub short: Option<Say>,
}

fn count(many: usize) -> Arg {
    Arg::Count(i64::try_from(many).unwrap_or(i64::MAX))
}

/// Names a piece.
pub(super) fn name(bench: &Bench<'_>, piece: &LaidPiece) -> Name {
    let short = |key: &'static str, of: Arg| Some(Say::new(key, [of]));
    let name = match piece.purpose {
        For::Row(index) => {
            let short = short("sheet.piece_row_short", count(index + 1));
            match bench.rows.get(index) {
                Some(row) => {
                    let section = Arg::Key(section_name(row.section));
                    Name { full: Say::new("sheet.piece_row", [count(index + 1), section]), short }
                }
                None => Name { full: Say::new("sheet.piece_row_short", [count(index + 1)]), short },
            }
        }
        For::Run => {
            let rows = Arg::Text(number_list(&piece.rows));
            match piece.rows.len() {
                0 => Name { full: Say::key("sheet.piece_run_all"), short: None },
                1 => Name {
                    full: Say::new("sheet.piece_run_one", [rows.clone()]),
                    short: short("sheet.piece_row_short", rows),
                },
                _ => Name {
                    full: Say::new("sheet.piece_run", [rows.clone()]),
                    short: short("sheet.piece_run_short", rows),
                },
            }
        }
        For::Hairline(first, serves) if serves > 1 => {
            let full = Say::new("sheet.piece_hairline_two", [count(first), count(first + 1)]);
            Name { full, short: None }
        }
        For::Hairline(first, _) => Name {
            full: Say::new("sheet.piece_hairline", [count(first)]),
            short: short("sheet.piece_hairline_short", count(first)),
        },
        For::Parting(first, serves) if serves > 1 => {
            let full = Say::new("sheet.piece_parting_two", [count(first), count(first + 1)]);
            Name { full, short: None }
        }
        For::Parting(first, _) => Name {
            full: Say::new("sheet.piece_parting", [count(first)]),
            short: short("sheet.piece_parting_short", count(first)),
        },
        For::HoldBack => Name { full: Say::key("sheet.piece_kept"), short: Some(Say::key("sheet.piece_kept_short")) },
    };
    match piece.part {
        (part, of) if of > 1 => {
            let part = [name.full.into(), Arg::Count(i64::from(part)), Arg::Count(i64::from(of))];
            Name { full: Say::new("sheet.piece_of", part), short: None }
        }
        _ => name,
    }
}

/// Names a lot.
pub(super) fn lot(bench: &Bench<'_>, id: record::id::LotId) -> Say {
    match bench.lots.iter().find(|lot: &&Lot| lot.id == id) {
        Some(lot) if lot.name.trim().is_empty() => Say::key("sheet.bar_lot_unnamed"),
        Some(lot) => plain(lot.name.clone()),
        None => Say::key("sheet.bar_lot_unknown"),
    }
}
