//! From an older body to today's: a table of steps, each a function from map to map.
//!
//! What it is: how bodies of earlier versions stay readable. What it is not: the reading of today's (see `body`).

use litemap::LiteMap;

use measure::say::{Arg, Say};

/// A body on disk: names to texts, nothing deeper.
pub(crate) type Flat = LiteMap<String, String>;

/// One step: from a kind's version to the next.
pub(crate) struct Step {
    /// The kind it starts from.
    pub kind: &'static str,
    /// The version it starts from.
    pub from: u32,
    /// Rewrites the fields; the kind may change, the version is raised by one.
    pub rewrite: fn(Flat) -> Flat,
}

/// All steps; none before the first version that was shipped.
pub(crate) const STEPS: &[Step] = &[];

/// Raises a body to the version its kind has today; one from the future is returned as it is.
pub(crate) fn raise(mut flat: Flat, steps: &[Step], today: impl Fn(&str) -> Option<u32>) -> Result<Flat, Say> {
    // One step more than there are is a ring in the table.
    for _ in 0..=steps.len() {
        let kind = flat.get("kind").cloned().unwrap_or_default();
        let version = version(&flat)?;
        let step = steps.iter().find(|step| step.kind == kind && step.from == version);
        let Some(step) = step else {
            return match today(&kind) {
                Some(now) if version < now => {
                    Err(Say::new("format.no_way_up", [Arg::Text(kind), Arg::Count(i64::from(version))]))
                }
                _ => Ok(flat),
            };
        };
        flat = (step.rewrite)(flat);
        flat.insert("v".to_owned(), (version + 1).to_string());
    }
    Err(Say::key("format.migrations_in_a_ring"))
}

/// The version a body says it has.
pub(crate) fn version(flat: &Flat) -> Result<u32, Say> {
    let text = flat.get("v").map(String::as_str);
    let wrong = || match text {
        None => Say::new("format.missing", [Arg::from("body.v"), Arg::Key("format.want_version")]),
        Some(text) => Say::new(
            "format.refused",
            [Arg::from("body.v"), Arg::Text(crate::json::shown(text)), Arg::Key("format.want_version")],
        ),
    };
    let text = text.filter(|text| *text == "0" || !text.starts_with(['0', '+'])).ok_or_else(wrong)?;
    text.parse().map_err(|_| wrong())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn flat(fields: &[(&str, &str)]) -> Flat {
        fields.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect()
    }

    fn renamed(mut flat: Flat) -> Flat {
        if let Some(text) = flat.remove("run") {
            flat.insert("length".to_owned(), text);
        }
        flat
    }

    fn split(mut flat: Flat) -> Flat {
        flat.insert("kind".to_owned(), "tack_down".to_owned());
        flat
    }

    const TRIAL: &[Step] =
        &[Step { kind: "tack", from: 0, rewrite: renamed }, Step { kind: "tack", from: 1, rewrite: split }];

    fn today(kind: &str) -> Option<u32> {
        (kind == "tack_down").then_some(2)
    }

    #[test]
    fn an_old_body_climbs_step_by_step() {
        let old = flat(&[("kind", "tack"), ("v", "0"), ("run", "20 cm")]);
        let new = flat(&[("kind", "tack_down"), ("v", "2"), ("length", "20 cm")]);
        assert_eq!(raise(old, TRIAL, today), Ok(new.clone()));
        assert_eq!(raise(new.clone(), TRIAL, today), Ok(new));
    }

    #[test]
    fn a_future_body_is_left_alone_and_a_gap_or_a_ring_is_named() {
        let future = flat(&[("kind", "tack_down"), ("v", "7")]);
        assert_eq!(raise(future.clone(), TRIAL, today), Ok(future));
        let gap = flat(&[("kind", "tack_down"), ("v", "1")]);
        assert_eq!(raise(gap, TRIAL, today).map_err(|say| say.key), Err("format.no_way_up"));
        for text in ["", "-1", "+1", "01", "1.0", "4294967296"] {
            let odd = flat(&[("kind", "tack"), ("v", text)]);
            assert_eq!(raise(odd, TRIAL, today).map_err(|say| say.key), Err("format.refused"), "{text}");
        }
    }

    #[test]
    fn every_shipped_kind_can_climb_to_today() {
        for kind in record::wig::work::KINDS {
            for from in 0..kind.version {
                assert!(STEPS.iter().any(|step| step.kind == kind.name && step.from == from), "{} {from}", kind.name);
            }
        }
    }
}
