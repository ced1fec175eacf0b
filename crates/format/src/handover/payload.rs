//! The payload: a JSON text folded into letters that an address takes as they are.
//!
//! What it is: version, kind, sizes, checksum, DEFLATE (RFC 1951), base64url. What it is not: what the JSON says.
//!
//! `0h…` is the data of a sheet, `0s…` a return slip; `0` is the version. Behind it stand in base64url (RFC 4648, section 5,
//! no padding): length of the JSON in four bytes, highest first; the first four bytes of the SHA-256 of version, kind,
//! that length and what follows; the JSON, deflated. The sum is over the deflated bytes, so that not even an idle bit of them
//! may change. A text that was cut off or changed is refused: nothing is shown of it.

use measure::say::{Arg, Say};
use miniz_oxide::{deflate::compress_to_vec, inflate::decompress_to_vec_with_limit};
use sha2::{Digest, Sha256};

use super::base64;
use crate::{
    json::shown,
    limits::{PAYLOAD_MOST, UNFOLDED_MOST},
};

/// The version that is written.
pub const VERSION: char = '0';

/// What a payload holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The data of a sheet.
    Handed,
    /// A return slip.
    Slip,
}

impl Kind {
    fn letter(self) -> char {
        match self {
            Kind::Handed => 'h',
            Kind::Slip => 's',
        }
    }
}

fn checksum(kind: Kind, length: [u8; 4], folded: &[u8]) -> [u8; 4] {
    let mut all = Sha256::new();
    all.update([VERSION as u8, kind.letter() as u8]);
    all.update(length);
    all.update(folded);
    let sum = all.finalize();
    [sum[0], sum[1], sum[2], sum[3]]
}

/// Folds a JSON text.
///
/// # Errors
/// Where it is longer than any reader unfolds.
pub fn fold(kind: Kind, json: &str) -> Result<String, Say> {
    let length = u32::try_from(json.len()).ok().filter(|length| *length as usize <= UNFOLDED_MOST);
    let length = length.ok_or_else(|| Say::key("handover.too_much"))?;
    let (length, folded) = (length.to_be_bytes(), compress_to_vec(json.as_bytes(), 9));
    let mut bytes = length.to_vec();
    bytes.extend(checksum(kind, length, &folded));
    bytes.extend(folded);
    let text = format!("{VERSION}{}{}", kind.letter(), base64::to_url(&bytes));
    if text.len() > PAYLOAD_MOST { Err(Say::key("handover.too_much")) } else { Ok(text) }
}

/// Unfolds a payload.
///
/// # Errors
/// Where it is none, was made by a newer version, or is damaged or cut off.
pub fn unfold(text: &str) -> Result<(Kind, String), Say> {
    let damaged = || Say::key("handover.damaged");
    if text.len() > PAYLOAD_MOST {
        return Err(Say::key("handover.too_much"));
    }
    let mut letters = text.chars();
    let version = letters.next().ok_or_else(|| Say::key("handover.nothing"))?;
    if version.is_ascii_digit() && version > VERSION {
        return Err(Say::new("handover.newer", [Arg::Text(version.to_string()), Arg::Text(VERSION.to_string())]));
    }
    let kind = match (version, letters.next()) {
        (VERSION, Some('h')) => Kind::Handed,
        (VERSION, Some('s')) => Kind::Slip,
        (VERSION, None) => return Err(damaged()),
        _ => return Err(Say::new("handover.not_ours", [Arg::Text(shown(text))])),
    };
    let bytes = base64::from_url(letters.as_str()).ok_or_else(damaged)?;
    let (length, rest) = bytes.split_first_chunk::<4>().ok_or_else(damaged)?;
    let (sum, folded) = rest.split_first_chunk::<4>().ok_or_else(damaged)?;
    let declared = u32::from_be_bytes(*length) as usize;
    if declared > UNFOLDED_MOST {
        return Err(Say::key("handover.too_much"));
    }
    if checksum(kind, *length, folded) != *sum {
        return Err(damaged());
    }
    let json = decompress_to_vec_with_limit(folded, declared).map_err(|_| damaged())?;
    let json = String::from_utf8(json).map_err(|_| damaged())?;
    if json.len() == declared { Ok((kind, json)) } else { Err(damaged()) }
}
