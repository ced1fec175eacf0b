//! What goes on paper and on the page as pictures.
//!
//! What it is: drawings of the cap, of the weft laid out and of fullness, as a model and as SVG; the printed sheet.
//! What it is not: planning, encoding, or a page of the app.

pub mod cap;
pub mod colour;
pub mod curve;
pub mod cutting;
pub mod depths;
pub mod drawing;
pub mod paper;
pub mod setting;
pub mod words;

pub use drawing::paint::style;
