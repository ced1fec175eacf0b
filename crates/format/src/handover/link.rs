//! Links, and whatever a person brings: a link, what stands in a code, a sheet's file, a slip's file.
//!
//! What it is: where the payload is in a text, and what it turns out to be. What it is not: a loader: nothing is fetched.

use measure::say::Say;
use record::handover::{handed::Handed, slip::Slip};

use super::{
    handed,
    payload::{Kind, unfold},
    slip, slip_file,
};
use crate::limits::{LINK_LONG, LINK_SHORT};

/// The part of an address before the payload.
pub const ROUTE: &str = "#/open/";
/// Before the payload in a sheet's file.
const IN_FILE: &str = "<template class=\"s-payload\">";

/// What was brought.
#[derive(Clone, Debug, PartialEq)]
pub enum Opened {
    /// The data of a sheet.
    Handed(Handed),
    /// A return slip.
    Slip(Slip),
}

/// How far a link gets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reach {
    /// Everywhere.
    Everywhere,
    /// Some messengers cut it.
    Some,
    /// Too long: the file is the way.
    File,
}

/// A link to the tool at an address.
pub fn link(address: &str, payload: &str) -> String {
    let bare = address.split('#').next().unwrap_or_default();
    format!("{bare}{ROUTE}{payload}")
}

/// How far a link of so many characters gets.
pub fn reach(link: &str) -> Reach {
    match link.len() {
        length if length <= LINK_SHORT => Reach::Everywhere,
        length if length <= LINK_LONG => Reach::Some,
        _ => Reach::File,
    }
}

/// Opens a payload.
///
/// # Errors
/// Where it is none of ours, was made by a newer version, or is damaged or cut off.
pub fn open_payload(payload: &str) -> Result<Opened, Say> {
    let (kind, json) = unfold(payload)?;
    match kind {
        Kind::Handed => handed::from_json(&json).map(Opened::Handed),
        Kind::Slip => slip::from_json(&json).map(Opened::Slip),
    }
}

/// Opens whatever was brought: the text of a file, a link, or what stands in a code.
///
/// # Errors
/// As [`open_payload`], and as a slip's file.
pub fn open(text: &str) -> Result<Opened, Say> {
    let bare = text.trim_start_matches('\u{feff}').trim();
    if bare.starts_with('{') {
        return slip_file::read_slip(bare).map(Opened::Slip);
    }
    if let Some((_, rest)) = bare.rsplit_once(IN_FILE) {
        // A file that breaks off has no end of the element: then the payload is not whole either.
        return open_payload(rest.split('<').next().unwrap_or_default().trim());
    }
    if bare.starts_with('<') {
        return Err(Say::key("handover.no_data"));
    }
    let payload = bare.split_once(ROUTE).map_or(bare, |(_, payload)| payload);
    // What a messenger put behind it.
    open_payload(payload.split_whitespace().next().unwrap_or_default())
}
