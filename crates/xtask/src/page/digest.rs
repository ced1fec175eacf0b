//! SHA-256 as text.
//!
//! What it is: names for contents and lines of checksum lists. What it is not: a signature.

use sha2::{Digest, Sha256};

pub fn sha256_hex(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}

/// One short name for many files: changes when any name or any content does.
pub fn content_name<'a>(files: impl Iterator<Item = (&'a str, &'a [u8])>) -> String {
    let mut all = Sha256::new();
    for (name, bytes) in files {
        // Each part has a fixed length, so that no two different lists run together alike.
        all.update(Sha256::digest(name.as_bytes()));
        all.update(Sha256::digest(bytes));
    }
    all.finalize().iter().take(8).map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_standards_example_comes_out() {
        // FIPS 180-2, appendix B.1: the digest of "abc".
        assert_eq!(sha256_hex(b"abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    #[test]
    fn a_name_follows_names_and_contents() {
        let name = |files: &[(&'static str, &'static [u8])]| content_name(files.iter().copied());
        assert_eq!(name(&[("a", b"1")]), name(&[("a", b"1")]));
        assert_ne!(name(&[("a", b"1")]), name(&[("a", b"2")]));
        assert_ne!(name(&[("a", b"1")]), name(&[("b", b"1")]));
        assert_ne!(name(&[("a", b"1b")]), name(&[("a", b"1"), ("b", b"")]));
    }
}
