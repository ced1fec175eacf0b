//! The cap map: this head from five sides, its zones, its rows, how full it is.
//!
//! What it is: shapes from a layout that was reckoned. What it is not: planning, or a page.

mod beside;
mod legend;
mod rows;
mod sheet;
mod view;
mod zones;

pub use legend::legend;
pub(crate) use rows::{number_list, section_name};
pub use sheet::all;

use measure::{
    quantity::{ArealNumberDensity, Length},
    say::{Arg, Say},
};
use plan::{
    dome::{Section, View},
    fullness::Fullness,
    layout::Layout,
    wefts::Placement,
};
use record::wig::zone::Zone;

use crate::drawing::{Drawing, Voice};

/// What the map shows beside the zones.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Show {
    /// How full each zone is: hatching and figures.
    Fullness,
    /// Rows of the base, rows to sew, rows sewn.
    Rows,
}

/// What a map is drawn from.
#[derive(Clone, Copy, Debug)]
pub struct Map<'a> {
    /// The cap laid out.
    pub layout: &'a Layout,
    /// How full it is.
    pub fullness: &'a Fullness,
    /// Rows to sew, where there is a plan.
    pub placement: Option<&'a Placement>,
    /// Fullness reached with the plan, zone by zone.
    pub reached: Option<&'a [ArealNumberDensity; 8]>,
    /// Rows sewn already, by section and place.
    pub sewn: &'a [(Section, Length)],
    /// What is shown.
    pub show: Show,
    /// The zone being worked on.
    pub chosen: Option<Zone>,
}

/// Size of words on the map, mm of the head: a view of 24 cm across 36 cm of screen or 9 cm of paper stays readable.
pub(crate) const WORDS: f64 = 9.0;
/// Size of headings.
pub(crate) const HEADING: f64 = 10.0;
/// Free edge round a view.
const EDGE: f64 = 4.0;

/// All views to one scale in boxes of one size, so that they can stand side by side.
pub fn views(map: &Map<'_>, voice: &Voice<'_>) -> Vec<(View, Drawing)> {
    let mut drawn: Vec<(View, Drawing)> = Vec::new();
    let mut size = [0.0_f64; 2];
    for view in View::ALL {
        let shapes = view::shapes(map, view, voice);
        let drawing = Drawing::framed(shapes, title(view), description(map, view), EDGE, voice);
        size = [size[0].max(drawing.view_box[2]), size[1].max(drawing.view_box[3])];
        drawn.push((view, drawing));
    }
    for (_, drawing) in &mut drawn {
        let [left, top, width, height] = drawing.view_box;
        drawing.view_box = [left - (size[0] - width) / 2.0, top - (size[1] - height) / 2.0, size[0], size[1]];
    }
    drawn
}

/// Heading of a view: which side, and that the outside is seen.
pub(crate) fn title(view: View) -> Say {
    Say::key(match view {
        View::Front => "sheet.view_front",
        View::Left => "sheet.view_left",
        View::Right => "sheet.view_right",
        View::Back => "sheet.view_back",
        View::Top => "sheet.view_top",
    })
}

fn description(map: &Map<'_>, view: View) -> Say {
    let what = match map.show {
        Show::Fullness => Say::key("sheet.shows_fullness"),
        Show::Rows => {
            let count = |many: usize| Arg::Count(i64::try_from(many).unwrap_or(i64::MAX));
            let to_sew = map.placement.map_or(0, |placement| placement.rows.len());
            Say::new("sheet.shows_rows", [count(map.layout.rows.len()), count(to_sew), count(map.sewn.len())])
        }
    };
    Say::new("sheet.view_description", [title(view).into(), what.into()])
}
