//! A link as a code that a phone's camera reads: QR (ISO/IEC 18004), as dark and light squares.
//!
//! What it is: the squares, where the link fits a code that prints small enough. What it is not: a drawing (see the `sheet` room).

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

/// Highest version: 117 squares a side, 59 mm at 0.5 mm a square, what a phone reads from paper at arm's length (common
/// practice, no source).
const VERSION_MOST: u8 = 25;

/// A code.
#[derive(Clone, Debug, PartialEq)]
pub struct Code {
    /// Squares a side.
    pub side: usize,
    /// Row by row, dark ones true.
    pub dark: Vec<bool>,
}

impl Code {
    /// Whether a square is dark; what lies outside is light.
    pub fn is_dark(&self, x: usize, y: usize) -> bool {
        x < self.side && self.dark.get(y * self.side + x).copied().unwrap_or(false)
    }
}

/// The code of a link, at medium correction, or at low where only that fits; nothing where neither does.
pub fn code(link: &str) -> Option<Code> {
    let segments = [QrSegment::make_bytes(link.as_bytes())];
    let made = |correction| {
        QrCode::encode_segments_advanced(&segments, correction, Version::MIN, Version::new(VERSION_MOST), None, true)
            .ok()
    };
    let qr = made(QrCodeEcc::Medium).or_else(|| made(QrCodeEcc::Low))?;
    let side = usize::try_from(qr.size()).ok()?;
    let mut dark = Vec::with_capacity(side * side);
    for y in 0..qr.size() {
        for x in 0..qr.size() {
            dark.push(qr.get_module(x, y));
        }
    }
    Some(Code { side, dark })
}
