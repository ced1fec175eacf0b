//! Letters made alike, so that “é” finds “e” and “E”.
//!
//! What it is: small letters without their marks, for Latin, and small letters for Greek and Cyrillic.
//! What it is not: transliteration, or the standard library's tables, which would bring some 10 kB to the page.

/// What U+00C0 to U+017F are without case and marks; `*` stays as it is, figures stand for two letters ([`PAIRS`]).
/// From the canonical decompositions of the Unicode Character Database 14.0; those that have none (ø, đ, ł…) by their look.
const LATIN: &[u8; 192] =
    b"aaaaaa1ceeeeiiiidnooooo*ouuuuy32aaaaaa1ceeeeiiiidnooooo*ouuuuy3yaaaaaaccccccccddddeeeeeeeeeegggggggghhhh\
iiiiiiiiii55jjkkkllllllllllnnnnnnnnnoooooo44rrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";
/// The same of U+0180 to U+024F.
const MORE: &[u8; 208] =
    b"b**********************i**l*****oo*************uu****zz**********************aaiioouuuuuuuuuu*aaaa11gggg\
kkoooo**j***gg**nnaa11ooaaaaeeeeiiiioooorrrruuuusstt**hh******aaeeooooooooyy******a**l*****b****jj******";
/// The same of U+1E00 to U+1EFF.
const MANY_MARKS: &[u8; 256] =
    b"aabbbbbbccddddddddddeeeeeeeeeeffgghhhhhhhhhhiiiikkkkkkllllllllmmmmmmnnnnnnnnoooooooopppprrrrrrrrssssssss\
ssttttttttuuuuuuuuuuvvvvwwwwwwwwwwxxxxyyzzzzzzhtwy*s**2*aaaaaaaaaaaaaaaaaaaaaaaaeeeeeeeeeeeeeeeeiiiioooo\
oooooooooooooooooooouuuuuuuuuuuuuuyyyyyyyy******";
/// Two letters for one.
const PAIRS: [&str; 5] = ["ae", "ss", "th", "oe", "ij"];

/// A text with case and marks taken off; white space becomes a blank.
pub fn fold(text: &str) -> String {
    let mut folded = String::with_capacity(text.len());
    fold_onto(text, &mut folded);
    folded
}

/// Adds a folded text to another.
pub(super) fn fold_onto(text: &str, folded: &mut String) {
    for letter in text.chars() {
        let table = match letter {
            'A'..='Z' => {
                folded.push(letter.to_ascii_lowercase());
                continue;
            }
            '\u{c0}'..='\u{17f}' => LATIN.get(letter as usize - 0xc0),
            '\u{180}'..='\u{24f}' => MORE.get(letter as usize - 0x180),
            '\u{1e00}'..='\u{1eff}' => MANY_MARKS.get(letter as usize - 0x1e00),
            _ => None,
        };
        match (table, letter) {
            (None | Some(b'*'), _) => folded.extend(alone(letter)),
            (Some(pair @ b'1'..=b'5'), _) => folded.push_str(PAIRS.get(usize::from(pair - b'1')).unwrap_or(&"")),
            (Some(base), _) => folded.push(char::from(*base)),
        }
    }
}

/// A letter that no table has; combining marks go, and apostrophes, which some type and some do not.
fn alone(letter: char) -> Option<char> {
    let later = |by: u32| char::from_u32(letter as u32 + by);
    match letter {
        '\u{300}'..='\u{36f}' | '\'' | '’' | '‘' => None,
        'Α'..='Ω' | 'А'..='Я' => later(32),
        '\u{400}'..='\u{40f}' => later(80),
        '\t' | '\n' | '\r' | '\u{a0}' | '\u{2009}' | '\u{202f}' => Some(' '),
        _ => Some(letter),
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn marks_and_case_go() {
        for (text, folded) in [
            ("Café CRÈME", "cafe creme"),
            ("cafe\u{301}", "cafe"),
            ("Straße, Ærø, Þór, ŒUVRE", "strasse, aero, thor, oeuvre"),
            ("Žižek Łódź đak İı", "zizek lodz dak ii"),
            ("Ẽ ế ȘȚ", "e e st"),
            ("ΑΒΓ ЁЖ", "αβγ ёж"),
            ("keeper’s\u{a0}bob", "keepers bob"),
            ("93 °C ½ 日本", "93 °c ½ 日本"),
            ("3 × 4 ÷ 2", "3 × 4 ÷ 2"),
        ] {
            assert_eq!(fold(text), folded, "{text}");
        }
    }

    proptest! {
        /// The standard library's lower case is the outside check.
        #[test]
        fn capitals_fold_as_small_letters_do(text in "[A-Za-z\u{c0}-\u{17f}\u{1e00}-\u{1e9d}\u{1ea0}-\u{1ef9}\u{391}-\u{3a1}\u{410}-\u{42f}]{0,12}") {
            prop_assert_eq!(fold(&text), fold(&text.to_lowercase()));
        }

        #[test]
        fn folding_twice_changes_nothing(text in "\\PC{0,20}") {
            let once = fold(&text);
            prop_assert_eq!(fold(&once), once);
        }
    }
}
