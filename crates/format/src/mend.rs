//! What can be saved of a file that is no JSON any more: broken off, or damaged in the middle.
//!
//! What it is: a cut along the seams between items, so that one damaged item does not cost the others.
//! What it is not: a repair of an item: a damaged one is carried on as the text it is.
//!
//! Our writers put no spaces between items, and no item holds a list of objects, so `},{"` stands between two
//! items and nowhere else: inside a text its quotation mark would be escaped. One pass, however long the damage.

use measure::say::{Arg, Say};

use crate::{file::Problem, json::quoted, scan};

/// Between the end of an item and the start of the next.
const SEAM: &str = "},{\"";

/// The file as JSON again, with what was done to each list; nothing where its first list cannot be found.
pub(crate) fn mend(text: &str, lists: &[&str]) -> Option<(String, Vec<Problem>)> {
    let opening = |name: &str| format!(",\"{name}\":[");
    let (first, _) = lists.split_first()?;
    let (start, mut rest) = text.split_once(&opening(first))?;
    let mut mended = start.to_owned();
    let mut problems = Vec::new();
    let mut swallowed_until = 0;
    for (at, name) in lists.iter().enumerate() {
        if at < swallowed_until {
            mended.push_str(&opening(name));
            mended.push(']');
            continue;
        }
        let next = (at + 1..lists.len()).find_map(|next| rest.split_once(&opening(lists[next])).map(|cut| (next, cut)));
        let (list, ended) = match next {
            Some((found, (list, after))) => {
                // Lists whose opening was damaged lie within this one's text and are cut up with it.
                let whole = found == at + 1;
                swallowed_until = found;
                rest = after;
                let bare = list.strip_suffix(']');
                (bare.unwrap_or(list), whole && bare.is_some())
            }
            None => {
                let list = std::mem::take(&mut rest).trim_end();
                let bare = list.strip_suffix("]}");
                swallowed_until = lists.len();
                (bare.unwrap_or(list), bare.is_some() && at + 1 == lists.len())
            }
        };
        let (items, damaged) = cut(list);
        if damaged > 0 || !ended {
            let says = [Arg::Count((items.len() - damaged) as i64), Arg::Count(damaged as i64)];
            problems.push(Problem { place: (*name).to_owned(), why: Say::new("format.mended", says) });
        }
        mended.push_str(&opening(name));
        mended.push_str(&items.join(","));
        mended.push(']');
    }
    mended.push('}');
    Some((mended, problems))
}

/// The items of a list, damaged ones as texts, and how many those are.
fn cut(list: &str) -> (Vec<String>, usize) {
    let mut damaged = 0;
    if list.is_empty() {
        return (Vec::new(), damaged);
    }
    let last = list.matches(SEAM).count();
    let items = list.split(SEAM).enumerate().map(|(at, piece)| {
        let item = format!("{}{piece}{}", if at > 0 { "{\"" } else { "" }, if at < last { "}" } else { "" });
        if scan::is_json(&item) {
            item
        } else {
            damaged += 1;
            quoted(&item)
        }
    });
    (items.collect(), damaged)
}
