//! How wide words will be, so that a label is put where it fits.
//!
//! What it is: words and units of the person, and an estimate of their width in any upright sans-serif.
//! What it is not: a measurement of the font that will draw them.

use measure::{
    prefs::Prefs,
    say::{Say, Words},
};

/// The words and units a drawing speaks in.
#[derive(Clone, Copy, Debug)]
pub struct Voice<'a> {
    /// The tables of words.
    pub words: &'a Words,
    /// The person's units.
    pub prefs: &'a Prefs,
}

impl Voice<'_> {
    /// A sentence in words, without what would turn the direction of words beside it.
    pub fn text(&self, say: &Say) -> String {
        say.words(self.words, self.prefs)
            .chars()
            .map(|letter| if turns(letter) { '\u{fffd}' } else { letter })
            .collect()
    }

    /// Its estimated width, mm, rather too wide than too narrow.
    pub fn width(&self, say: &Say, size: f64) -> f64 {
        width(&self.text(say), size)
    }

    /// A sentence broken into lines no wider than this; a word that is wider is broken too.
    pub fn wrap(&self, say: &Say, most: f64, size: f64) -> Vec<String> {
        wrap(&self.text(say), most, size)
    }
}

/// Whether a letter is an embedding, an override or an isolate of direction (Unicode Standard Annex 9).
pub(crate) fn turns(letter: char) -> bool {
    matches!(letter, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// Advance of a letter over the size, for the wider of the common sans-serif fonts. Our estimate.
fn advance(letter: char) -> f64 {
    match letter {
        'i' | 'j' | 'l' | 'I' | '.' | ',' | ':' | ';' | '\'' | '’' | '|' | '!' => 0.32,
        ' ' | 'f' | 't' | 'r' | '(' | ')' | '-' | '/' => 0.40,
        'm' | 'w' | 'M' | 'W' | '@' | '%' | '→' => 0.98,
        'A'..='Z' => 0.70,
        '0'..='9' => 0.64,
        letter if letter.is_control() => 0.0,
        // A few letters and dashes are as wide as words; pictures are wider than their size.
        '\u{fdfd}' => 12.0,
        '\u{2e3a}' | '\u{2e3b}' => 3.2,
        letter if u32::from(letter) >= 0x1f000 => 1.4,
        letter if u32::from(letter) >= 0x1100 => 1.0,
        _ => 0.62,
    }
}

fn width(text: &str, size: f64) -> f64 {
    text.chars().map(advance).sum::<f64>() * size
}

pub(crate) fn wrap(text: &str, most: f64, size: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    for word in text.split_whitespace() {
        let joined = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
        if width(&joined, size) <= most {
            line = joined;
            continue;
        }
        if !line.is_empty() {
            lines.push(core::mem::take(&mut line));
        }
        for letter in word.chars() {
            if !line.is_empty() && width(&line, size) + advance(letter) * size > most {
                lines.push(core::mem::take(&mut line));
            }
            line.push(letter);
        }
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_lost_in_wrapping() {
        let text = "A very long name of weft, antidisestablishmentarianism-coloured, 45 cm";
        for most in [5.0, 20.0, 60.0, 500.0] {
            let lines = wrap(text, most, 4.0);
            let letters = |text: &str| text.chars().filter(|letter| !letter.is_whitespace()).collect::<String>();
            assert_eq!(letters(&lines.concat()), letters(text));
            assert!(lines.iter().all(|line| width(line, 4.0) <= most || line.chars().count() == 1), "{lines:?}");
        }
        assert_eq!(wrap("", 10.0, 4.0), [""]);
    }
}
