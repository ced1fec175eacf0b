//! A colour as it is written down, and colours along the length of hair.
//!
//! What it is: types that hold eight-bit sRGB and bands that rise from root to ends, read and written.
//! What it is not: light, mixing or difference of colours (see the `plan` room's `colour`).

use core::fmt;

/// A colour in eight-bit sRGB (IEC 61966-2-1), as pickers and photos give it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Shade(pub [u8; 3]);

impl Shade {
    /// Reads `#c04a7a`, `c04a7a`, `#c47` or `192 74 122`.
    pub fn read(text: &str) -> Option<Shade> {
        let text = text.trim();
        let hex = text.strip_prefix('#').unwrap_or(text);
        if hex.is_ascii() && (hex.len() == 6 || hex.len() == 3 && hex.len() < text.len()) {
            let wide = hex.len() / 3;
            let part = |at: usize| {
                let digits = hex.get(at * wide..(at + 1) * wide)?;
                let value = u8::from_str_radix(digits, 16).ok()?;
                Some(if wide == 1 { value * 17 } else { value })
            };
            if hex.bytes().all(|byte| byte.is_ascii_hexdigit()) {
                return Some(Shade([part(0)?, part(1)?, part(2)?]));
            }
        }
        let mut parts = text.split(|c: char| c == ',' || c.is_whitespace()).filter(|part| !part.is_empty());
        let mut next = || parts.next().and_then(|part| part.parse::<u8>().ok());
        let shade = Shade([next()?, next()?, next()?]);
        parts.next().is_none().then_some(shade)
    }
}

impl fmt::Display for Shade {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [red, green, blue] = self.0;
        write!(f, "#{red:02x}{green:02x}{blue:02x}")
    }
}

/// A band of one colour along the length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Band {
    /// Its colour.
    pub shade: Shade,
    /// Where it ends, percent of the length from the root.
    pub to: u8,
}

/// Colours along the length, from the root to the ends: one to [`Along::MOST`] bands, each ending further out, the last at 100 %.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Along {
    bands: Vec<Band>,
    smooth: bool,
}

impl Along {
    /// No more bands than this: each may be a bath of its own.
    pub const MOST: usize = 6;

    /// Bands from the root; nothing where they do not rise to 100 % or are too many.
    pub fn new(bands: Vec<Band>, smooth: bool) -> Option<Along> {
        let rises = bands.windows(2).all(|pair| pair[0].to < pair[1].to);
        let whole = bands.last().is_some_and(|last| last.to == 100) && bands.first().is_some_and(|first| first.to > 0);
        (rises && whole && bands.len() <= Along::MOST).then_some(Along { bands, smooth })
    }

    /// One colour from root to ends.
    pub fn one(shade: Shade) -> Along {
        Along { bands: vec![Band { shade, to: 100 }], smooth: false }
    }

    /// The bands, from the root.
    pub fn bands(&self) -> &[Band] {
        &self.bands
    }

    /// Whether each melts into the next.
    pub fn smooth(&self) -> bool {
        self.smooth
    }

    /// Where a band begins and ends, as shares of the length.
    pub fn span(&self, band: usize) -> (f64, f64) {
        let to = |index: usize| self.bands.get(index).map_or(1.0, |band| f64::from(band.to) / 100.0);
        (if band == 0 { 0.0 } else { to(band - 1) }, to(band))
    }

    /// Reads `#3b2a20 to 40, #c04a7a to 70, #f0a0c8 smooth`: each colour and where it ends in percent, the last without.
    pub fn read(text: &str) -> Option<Along> {
        let text = text.trim();
        let (text, smooth) = text.strip_suffix("smooth").map_or((text, false), |rest| (rest.trim_end(), true));
        let text = text.trim_end_matches([',', ';']);
        let parts: Vec<&str> = text.split([',', ';']).collect();
        let mut bands = Vec::new();
        for (index, part) in parts.iter().enumerate() {
            let (shade, to) = match part.trim().split_once(" to ") {
                Some((shade, to)) => (shade, to.trim().trim_end_matches('%').trim_end().parse::<u8>().ok()?),
                None if index + 1 == parts.len() => (part.trim(), 100),
                None => return None,
            };
            bands.push(Band { shade: Shade::read(shade)?, to });
        }
        Along::new(bands, smooth)
    }
}

impl fmt::Display for Along {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, band) in self.bands.iter().enumerate() {
            let between = if index == 0 { "" } else { ", " };
            write!(f, "{between}{}", band.shade)?;
            if index + 1 < self.bands.len() {
                write!(f, " to {}", band.to)?;
            }
        }
        if self.smooth { f.write_str(" smooth") } else { Ok(()) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colours_read_as_people_write_them() {
        for (text, shade) in [
            ("#c04a7a", Some([192, 74, 122])),
            ("C04A7A", Some([192, 74, 122])),
            ("#c47", Some([204, 68, 119])),
            ("192 74 122", Some([192, 74, 122])),
            ("192, 74,122", Some([192, 74, 122])),
            ("pink", None),
            ("256 0 0", None),
            ("#c04a7", None),
            ("1 2 3 4", None),
            ("é00000", None),
        ] {
            assert_eq!(Shade::read(text), shade.map(Shade), "{text}");
        }
    }

    #[test]
    fn bands_rise_to_the_ends() {
        let text = "#3b2a20 to 40, #c04a7a to 70, #f0a0c8 smooth";
        let along = Along::read(text);
        assert_eq!(along.as_ref().map(ToString::to_string).as_deref(), Some(text));
        assert_eq!(along.map(|along| along.span(1)), Some((0.4, 0.7)));
        for odd in
            ["", "#3b2a20 to 40", "#3b2a20 to 70, #c04a7a to 40, #f0a0c8", "#3b2a20, #c04a7a", "#3b2a20 to 0, #c04a7a"]
        {
            assert_eq!(Along::read(odd), None, "{odd}");
        }
    }
}
