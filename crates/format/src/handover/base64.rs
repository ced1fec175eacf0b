//! Base64 (RFC 4648) by a library: section 4 with its padding for photos, section 5 without for links.
//!
//! What it is: which of its alphabets is used where, and the declared length held against a text before it is read.
//! What it is not: lenient: only canonical texts are read, so that equal bytes have one text.

use base64ct::{Base64, Base64UrlUnpadded, Encoding};

/// For a link: no padding, no letter that an address escapes.
pub fn to_url(bytes: &[u8]) -> String {
    Base64UrlUnpadded::encode_string(bytes)
}

/// From a link.
pub fn from_url(text: &str) -> Option<Vec<u8>> {
    Base64UrlUnpadded::decode_vec(text).ok()
}

/// For a file, padded.
pub fn to_plain(bytes: &[u8]) -> String {
    Base64::encode_string(bytes)
}

/// From a file; the length is held against the declared one before anything is read.
pub fn from_plain(text: &str, declared: usize) -> Option<Vec<u8>> {
    if text.len() != declared.checked_add(2)? / 3 * 4 {
        return None;
    }
    of_plain(text).filter(|bytes| bytes.len() == declared)
}

/// From this browser's own store, where nobody declared a length.
pub fn of_plain(text: &str) -> Option<Vec<u8>> {
    Base64::decode_vec(text).ok()
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
