//! Base64 (RFC 4648): section 4 with its padding for photos, section 5 without for links.
//!
//! What it is: both directions, canonical texts only, so that equal bytes have one text. What it is not: lenient.

const PLAIN: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const URL: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

fn encoded(bytes: &[u8], letters: &[u8; 64]) -> String {
    let mut out = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for part in bytes.chunks(3) {
        let mut bits = 0u32;
        for at in 0..3 {
            bits = bits << 8 | u32::from(part.get(at).copied().unwrap_or(0));
        }
        for at in 0..=part.len() {
            out.push(char::from(letters[(bits >> (18 - 6 * at) & 63) as usize]));
        }
    }
    out
}

fn decoded(text: &[u8], letters: &[u8; 64]) -> Option<Vec<u8>> {
    if text.len() % 4 == 1 {
        return None;
    }
    let mut values = [None; 256];
    for (value, letter) in (0u32..).zip(letters) {
        values[usize::from(*letter)] = Some(value);
    }
    let mut out = Vec::with_capacity(text.len() / 4 * 3 + 2);
    for part in text.chunks(4) {
        let mut bits = 0u32;
        for letter in part {
            bits = bits << 6 | values[usize::from(*letter)]?;
        }
        bits <<= 6 * (4 - part.len());
        let bytes = bits.to_be_bytes();
        // Bits that belong to no byte are zero, or another text would say the same.
        if bytes.iter().skip(part.len()).any(|byte| *byte != 0) {
            return None;
        }
        out.extend(bytes.iter().skip(1).take(part.len() - 1));
    }
    Some(out)
}

/// For a link: no padding, no letter that an address escapes.
pub fn to_url(bytes: &[u8]) -> String {
    encoded(bytes, URL)
}

/// From a link.
pub fn from_url(text: &str) -> Option<Vec<u8>> {
    decoded(text.as_bytes(), URL)
}

/// For a file, padded.
pub fn to_plain(bytes: &[u8]) -> String {
    let mut text = encoded(bytes, PLAIN);
    while !text.len().is_multiple_of(4) {
        text.push('=');
    }
    text
}

/// From a file; the length is held against the declared one before anything is read.
pub fn from_plain(text: &str, declared: usize) -> Option<Vec<u8>> {
    if text.len() != declared.checked_add(2)? / 3 * 4 {
        return None;
    }
    let bare = text.trim_end_matches('=');
    if text.len() - bare.len() > 2 {
        return None;
    }
    decoded(bare.as_bytes(), PLAIN).filter(|bytes| bytes.len() == declared)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_standards_test_vectors() {
        // RFC 4648, section 10.
        for (bytes, text) in [
            ("", ""),
            ("f", "Zg=="),
            ("fo", "Zm8="),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg=="),
            ("fooba", "Zm9vYmE="),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(to_plain(bytes.as_bytes()), text);
            assert_eq!(from_plain(text, bytes.len()).as_deref(), Some(bytes.as_bytes()));
            assert_eq!(from_url(text.trim_end_matches('=')).as_deref(), Some(bytes.as_bytes()));
        }
        for odd in ["Zh==", "Zg=", "Z", "Zm9=v", "Zm 9", "===="] {
            assert!((0..5).all(|bytes| from_plain(odd, bytes).is_none()), "{odd}");
        }
        assert_eq!(from_plain("Zm9v", usize::MAX), None);
    }
}
