//! Decimal figures: a number written with so many decimals, and read.
//!
//! What it is: what the standard library's formatter and parser answer within the figures of a bench, in integers. What it is
//! not: those themselves, which carry tables for every number there is (some 20 kB of page).

/// Decimals that can be written.
const DECIMALS_MOST: usize = 3;
/// The greatest number that is written: 2⁵³ − 1.
const GREATEST: f64 = 9_007_199_254_740_991.0;

/// Writes a number as `format!("{value:.decimals$}")` does: exactly rounded, ties to even. At most three decimals; numbers
/// beyond 2⁵³ − 1 are written as that one.
pub fn fixed(value: f64, decimals: usize) -> String {
    let sign = if value.is_sign_negative() { "-" } else { "" };
    if !value.is_finite() {
        return if value.is_nan() { "NaN".to_owned() } else { format!("{sign}inf") };
    }
    let value = libm::fabs(value).min(GREATEST);
    let decimals = decimals.min(DECIMALS_MOST);
    let mut parts = 1;
    for _ in 0..decimals {
        parts *= 10;
    }
    // value = mantissa / 2^below, so that parts × mantissa needs 63 bits and the rounding sees every one of them.
    let bits = value.to_bits();
    let exponent = (bits >> 52) as u32;
    let mantissa = (bits & ((1 << 52) - 1)) | if exponent > 0 { 1 << 52 } else { 0 };
    let scaled = mantissa * parts;
    let below = 1075 - exponent.max(1);
    let whole = match below {
        0..=63 => {
            let (whole, rest) = (scaled >> below, scaled & ((1 << below) - 1));
            let half = if below > 0 { 1 << (below - 1) } else { u64::MAX };
            whole + u64::from(rest > half || (rest == half && whole % 2 == 1))
        }
        _ => 0,
    };
    if decimals == 0 {
        return format!("{sign}{whole}");
    }
    format!("{sign}{}.{:0decimals$}", whole / parts, whole % parts)
}

/// The same without trailing zeros.
pub fn trimmed(value: f64, decimals: usize) -> String {
    let mut text = fixed(value, decimals);
    if text.contains('.') {
        let kept = text.trim_end_matches('0').trim_end_matches('.').len();
        text.truncate(kept);
    }
    text
}

/// Reads figures with at most one point, such as `12`, `12.5`, `.5`: the nearest number up to fifteen figures, and a
/// neighbour of it beyond. `None` where anything else stands there or no figure does.
pub(crate) fn read(text: &str) -> Option<f64> {
    let (mut figures, mut scale) = (0u64, 0i32);
    let (mut any, mut point, mut full) = (false, false, false);
    for byte in text.bytes() {
        match byte {
            b'0'..=b'9' => {
                any = true;
                full = full || figures >= 100_000_000_000_000_000;
                if full {
                    // Beyond eighteen figures only the place counts.
                    scale += i32::from(!point);
                } else {
                    figures = figures * 10 + u64::from(byte - b'0');
                    scale -= i32::from(point);
                }
            }
            b'.' if !point => point = true,
            _ => return None,
        }
    }
    let mut power = 1.0;
    for _ in 0..scale.unsigned_abs() {
        power *= 10.0;
    }
    any.then_some(if scale < 0 { figures as f64 / power } else { figures as f64 * power })
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn ties_and_ends() {
        for (value, decimals, want) in [
            (0.5, 0, "0"),
            (1.5, 0, "2"),
            (2.5, 0, "2"),
            (0.125, 2, "0.12"),
            (0.375, 2, "0.38"),
            (0.15, 1, "0.1"),
            (-0.04, 1, "-0.0"),
            (999.9996, 3, "1000.000"),
            (f64::MIN_POSITIVE / 3.0, 3, "0.000"),
            (f64::NAN, 1, "NaN"),
            (1e300, 0, "9007199254740991"),
            (f64::NEG_INFINITY, 1, "-inf"),
        ] {
            assert_eq!(fixed(value, decimals), want);
        }
        for text in ["", ".", "1.2.3", "1e3", "-1", "1 2", "½"] {
            assert_eq!(read(text), None, "{text}");
        }
        assert_eq!(read("0.1"), Some(0.1));
        assert_eq!(read(".5"), Some(0.5));
        assert_eq!(read("00000000000000000000000000007.5"), Some(7.5));
        assert_eq!(read("100000000000000000000000000000"), Some(1e29));
    }

    proptest! {
        #[test]
        fn writes_as_the_standard_library_does(
            value in prop_oneof![-10.0..10.0f64, -1e6..1e6f64, -9e15..9e15f64, any::<f64>(), (-4000i32..4000).prop_map(|eighths| f64::from(eighths) / 16.0)],
            decimals in 0usize..=3,
        ) {
            let value = value.clamp(-GREATEST, GREATEST);
            prop_assert_eq!(fixed(value, decimals), format!("{value:.decimals$}"));
        }

        #[test]
        fn reads_as_the_standard_library_does(text in "[0-9]{1,9}(\\.[0-9]{0,6})?") {
            prop_assert_eq!(read(&text), text.parse().ok());
        }

        #[test]
        fn long_ones_come_near(text in "[0-9]{1,20}\\.[0-9]{0,19}") {
            let exact: f64 = text.parse().unwrap();
            let read = read(&text).unwrap();
            prop_assert!((read - exact).abs() <= exact * 1e-15, "{} {}", read, exact);
        }
    }
}
