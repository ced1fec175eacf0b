//! The sheet's one stylesheet and the policy of its file.
//!
//! What it is: two constants that belong together by a hash. What it is not: sizes for the page breaks (see `fit`).
//!
//! The hash is written by `UPDATE_EXPECT=1 cargo test -p weftbook-sheet --test paper`, here and into the page's own policy.

/// The stylesheet of the sheet and of the drawings on it.
pub const STYLE: &str = concat!(include_str!("paper.css"), include_str!("../drawing/drawing.css"));

/// The stylesheet's hash, as a policy names it.
pub const STYLE_HASH: &str = include_str!("style.hash");

/// The policy of a sheet's file: its own stylesheet, pictures inside it, and nothing else.
pub const POLICY: &str = concat!(
    "default-src 'none'; style-src '",
    include_str!("style.hash"),
    "'; img-src data:; base-uri 'none'; form-action 'none'"
);
