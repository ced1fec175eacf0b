//! Numbers of lines as people write them: `1 to 6, 8`.
//!
//! What it is: one small reader. What it is not: which numbers a sheet has.

use measure::{
    order,
    say::{Arg, Say},
};

/// Reads numbers and runs of them, each one of `known`; answers each once, in order.
///
/// # Errors
/// The piece that is no number or no run, or the number that the sheet has not, with the remedy.
pub fn read(text: &str, known: &[u32]) -> Result<Vec<u32>, Say> {
    let mut found = Vec::new();
    for piece in text.split([',', ';', '\n']).map(str::trim).filter(|piece| !piece.is_empty()) {
        let odd = || Say::new("handover.not_numbers", [Arg::Text(piece.chars().take(60).collect())]);
        let one = |text: &str| text.trim().parse::<u32>().map_err(|_| odd());
        let ends = ["to", "–", "-"].iter().find_map(|between| piece.split_once(between));
        let (first, last) = match ends {
            Some((first, last)) => (one(first)?, one(last)?),
            None => (one(piece)?, one(piece)?),
        };
        if first > last {
            return Err(odd());
        }
        let strange = [first, last].into_iter().find(|end| !known.contains(end));
        if let Some(number) = strange {
            return Err(Say::new("handover.no_such_line", [Arg::Count(i64::from(number))]));
        }
        // Lines in between that are done already stand on no sheet.
        found.extend(known.iter().copied().filter(|number| (first..=last).contains(number)));
    }
    order::sort_unique(&mut found);
    Ok(found)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_read_as_people_write_them() {
        let known = [1, 2, 3, 5, 6, 8];
        for (text, want) in [
            ("", vec![]),
            ("1", vec![1]),
            ("1 to 6", vec![1, 2, 3, 5, 6]),
            ("1-3; 8", vec![1, 2, 3, 8]),
            ("2–3, 2", vec![2, 3]),
            (" 8 ,\n5 ", vec![5, 8]),
        ] {
            assert_eq!(read(text, &known), Ok(want), "{text}");
        }
        for (text, key) in [
            ("x", "handover.not_numbers"),
            ("3 to 1", "handover.not_numbers"),
            ("1 to", "handover.not_numbers"),
            ("-1", "handover.not_numbers"),
            ("4", "handover.no_such_line"),
            ("1 to 4000000000", "handover.no_such_line"),
            ("99999999999", "handover.not_numbers"),
        ] {
            assert_eq!(read(text, &known).map_err(|say| say.key), Err(key), "{text}");
        }
    }
}
