//! The file of a return slip, with its photos.
//!
//! What it is: `{"weftbook":"slip","version":0,"producer","made","sha256","slip":[…],"photos":[{"id","bytes","data"}]}`; `slip` is a
//! list of one, so that the checksum is over it as over the rows of a wig file. What it is not: a link's payload.
//!
//! A photo says its size first: what is larger than a photo of ours, or not as long as it says, is refused unread.

use measure::say::{Arg, Say};
use record::{
    handover::slip::{Photo, Slip},
    id::PhotoId,
};
use sha2::{Digest, Sha256};

use super::{base64, slip};
use crate::{
    file::{Checksum, Head, check_length, listed, open, start},
    json::{object, quoted, read, refused, sha256},
    limits::{PHOTO_BYTES_MOST, PHOTOS_MOST},
    scan::{self, Json},
};

/// Kind of the file.
pub const KIND: &str = "slip";

/// Writes it.
///
/// # Errors
/// Where it would be longer than any reader takes.
pub fn write(head: &Head, slip: &Slip) -> Result<String, Say> {
    let list = listed([slip::to_json(slip).as_str()]);
    let photos: Vec<String> = slip
        .photos
        .iter()
        .map(|photo| {
            object(&[
                ("id", quoted(&photo.id.to_string())),
                ("bytes", photo.bytes.len().to_string()),
                ("data", quoted(&base64::to_plain(&photo.bytes))),
            ])
        })
        .collect();
    let mut text = start(KIND, head, &[("sha256", quoted(&sha256(&list)))]);
    text.push_str(&format!(",\"slip\":{list},\"photos\":{}}}\n", listed(photos.iter().map(String::as_str))));
    check_length(text.len())?;
    Ok(text)
}

/// Reads it.
///
/// # Errors
/// Where it is no slip's file, was made by a newer version, or anything in it is damaged: a slip is taken whole or not at all.
pub fn read_slip(text: &str) -> Result<Slip, Say> {
    let mut file = open(text, KIND)?;
    let (items, list) = file.list("slip")?;
    if file.checksum(list)? == Checksum::Differs {
        return Err(Say::key("handover.damaged"));
    }
    let [one] = items.as_slice() else { return Err(refused("slip", None, "format.want_object")) };
    let mut slip = slip::from_json(one)?;
    let photos = file.list("photos")?.0;
    if photos.len() > PHOTOS_MOST {
        return Err(Say::new("handover.too_many_photos", [Arg::Count(PHOTOS_MOST as i64)]));
    }
    for raw in photos {
        slip.photos.push(photo(raw)?);
    }
    Ok(slip)
}

fn photo(raw: &str) -> Result<Photo, Say> {
    let refused_photo = || Say::key("handover.photo_damaged");
    // As long as the longest allowed, with room for its other members.
    if raw.len() > PHOTO_BYTES_MOST / 3 * 4 + 400 {
        return Err(Say::new("handover.photo_too_large", [Arg::Count(PHOTO_BYTES_MOST as i64)]));
    }
    let Ok(Json::Object(photo)) = scan::json(raw) else { return Err(refused_photo()) };
    let id = read(&photo, "id", "format.want_sha256", PhotoId::read)?;
    let declared = photo.get("bytes").and_then(Json::as_u64).and_then(|bytes| usize::try_from(bytes).ok());
    let declared = declared.ok_or_else(refused_photo)?;
    if declared > PHOTO_BYTES_MOST {
        return Err(Say::new("handover.photo_too_large", [Arg::Count(PHOTO_BYTES_MOST as i64)]));
    }
    let data = photo.get("data").and_then(Json::as_str).ok_or_else(refused_photo)?;
    let bytes = base64::from_plain(data, declared).ok_or_else(refused_photo)?;
    let is: String = Sha256::digest(&bytes).iter().map(|byte| format!("{byte:02x}")).collect();
    if is != id.to_string() {
        return Err(refused_photo());
    }
    Ok(Photo { id, bytes })
}
