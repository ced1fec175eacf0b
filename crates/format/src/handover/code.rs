//! A link as a code that a phone's camera reads: QR (ISO/IEC 18004), as dark and light squares.
//!
//! What it is: the squares, where the link fits a code that prints small enough. What it is not: a drawing (see the `sheet` room).

use qrcode::{Color, EcLevel, QrCode, Version};

/// Highest version: 117 squares a side, 59 mm at 0.5 mm a square, what a phone reads from paper at arm's length (common
/// practice, no source).
const VERSION_MOST: i16 = 25;

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
    let made = |correction| {
        let code = QrCode::with_error_correction_level(link.as_bytes(), correction).ok()?;
        matches!(code.version(), Version::Normal(version) if version <= VERSION_MOST).then_some(code)
    };
    let qr = made(EcLevel::M).or_else(|| made(EcLevel::L))?;
    let dark = qr.to_colors().into_iter().map(|colour| colour == Color::Dark).collect();
    Some(Code { side: qr.width(), dark })
}
