//! All views and the legend on one drawing.
//!
//! What it is: the cap map for paper or a file of its own. What it is not: the printed sheet.

use measure::say::Say;

use super::{Map, legend, views};
use crate::drawing::{Drawing, Shape, Voice};

/// Places of the views, in their own order, then of the legend: column and row.
const PLACES: [[f64; 2]; 6] = [[0.0, 0.0], [0.0, 1.0], [1.0, 1.0], [1.0, 0.0], [0.0, 2.0], [1.0, 2.0]];

/// Five views and the legend, two beside each other.
pub fn all(map: &Map<'_>, voice: &Voice<'_>) -> Drawing {
    let views = views(map, voice);
    let size = views.first().map_or([0.0, 0.0], |(_, drawing)| [drawing.view_box[2], drawing.view_box[3]]);
    let key = legend(map, voice);
    let drop = (size[1] - key.view_box[3]).max(0.0) / 2.0;
    let mut shapes: Vec<Shape> = Vec::new();
    let mut descriptions = Vec::new();
    for ((_, drawing), place) in views.into_iter().zip(PLACES) {
        descriptions.push(drawing.description.clone());
        shapes.extend(drawing.moved_to([place[0] * size[0], place[1] * size[1]]).shapes);
    }
    let [column, row] = PLACES[5];
    shapes.extend(key.moved_to([column * size[0] + 6.0, row * size[1] + drop]).shapes);
    Drawing::framed(
        shapes,
        Say::key("sheet.cap_map"),
        Say::new("sheet.cap_map_description", [measure::say::Arg::List(descriptions)]),
        4.0,
        voice,
    )
}
