//! How large a saved thing may be, each limit named once.
//!
//! What it is: what is refused before anything is built from it. What it is not: limits of the record's figures.

/// Bytes of one row; the longest note, every character escaped, takes less than half of it.
pub const ROW_BYTES_MOST: usize = 64 * 1024;
/// Bytes of a file.
pub const FILE_BYTES_MOST: usize = 64 * 1024 * 1024;
/// Items of one list in a file: some hundred entries a day for years.
pub const ITEMS_MOST: usize = 200_000;
/// Lists and objects within one another in a row.
pub const DEPTH_MOST: usize = 127;
/// Members of a file's outermost object.
pub const MEMBERS_MOST: usize = 64;
/// The highest lamport a row may carry: the largest whole number that every JSON reader keeps exactly
/// (2^53 − 1, RFC 8259 section 6).
pub const LAMPORT_MOST: u64 = (1 << 53) - 1;
/// The highest lamport taken in from a file, so that a damaged one cannot use up the record's clock.
pub const LAMPORT_TAKEN_IN_MOST: u64 = 1 << 52;
/// Characters of a person's name.
pub const PERSON_NAME_MOST: usize = 120;
/// Characters of a refused value that are shown back.
pub const SHOWN_MOST: usize = 60;
/// Characters of what a link, a code or a sheet's file carries as data.
pub const PAYLOAD_MOST: usize = 512 * 1024;
/// Bytes that a payload may unfold to.
pub const UNFOLDED_MOST: usize = 1024 * 1024;
/// Bytes of one photo in a slip's file: at most 1600 px, as the page makes them.
pub const PHOTO_BYTES_MOST: usize = 4 * 1024 * 1024;
/// Photos in a slip's file.
pub const PHOTOS_MOST: usize = 40;
/// Characters of a link that every place takes; longer ones go through fewer.
pub const LINK_SHORT: usize = 2000;
/// Characters of a link beyond which the file is offered instead.
pub const LINK_LONG: usize = 8000;
