//! A colour off a photo, judged against something white beside it.
//!
//! What it is: the lock's light divided by the white's, band by band, so that the lamp's tint and the camera's exposure fall out.
//! What it is not: a measurement: a phone changes colours as it likes (see [`record::trade::bath::PHOTO_WITHIN`]).

use record::wig::shade::Shade;

use super::light::Light;

/// Why a photo says nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Useless {
    /// What should be white is burnt out: the camera cut its brightness off.
    BurntOut,
    /// What should be white is too dark to judge by.
    TooDark,
}

impl Useless {
    /// Key of the words with the remedy.
    pub fn key(self) -> &'static str {
        match self {
            Useless::BurntOut => "colour.white_burnt_out",
            Useless::TooDark => "colour.white_too_dark",
        }
    }
}

/// Paper is taken to throw back so much.
const PAPER: f64 = 0.9;

/// The colour of a lock beside white paper.
///
/// # Errors
/// Where the white is burnt out or too dark.
pub fn against_white(lock: Shade, white: Shade) -> Result<Shade, Useless> {
    if white.0.iter().any(|band| *band >= 254) {
        return Err(Useless::BurntOut);
    }
    if white.0.iter().any(|band| *band < 90) {
        return Err(Useless::TooDark);
    }
    let (lock, white) = (Light::of(lock), Light::of(white));
    let mut light = Light([0.0; 3]);
    for band in 0..3 {
        light.0[band] = (lock.0[band] / white.0[band] * PAPER).min(1.0);
    }
    Ok(light.shade())
}
