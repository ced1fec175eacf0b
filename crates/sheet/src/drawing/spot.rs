//! Where a label finds room inside an area.
//!
//! What it is: a search on a grid for the place farthest from the border. What it is not: exact; a grid step may be lost.

use measure::order;

use super::{
    Place,
    line::{inside, sides, thinned},
};

/// Steps of the grid in each direction.
const STEPS: u32 = 24;
/// Steps of the search near a place, to each side.
const NEAR_STEPS: i32 = 25;
/// How far searched outlines may leave the drawn ones, mm.
const COARSE: f64 = 0.3;

/// The middle for a label of this size that lies wholly inside, if there is room.
pub(crate) fn fits(lines: &[Vec<Place>], size: Place) -> Option<Place> {
    let (place, room) = roomiest(lines, size)?;
    (room >= 1.0).then_some(place)
}

/// The middle nearest to `near`, at most `reach` mm away, for a label of this size that lies wholly inside.
pub(crate) fn fits_near(lines: &[Vec<Place>], size: Place, near: Place, reach: f64) -> Option<Place> {
    let half = [size[0] / 2.0, size[1] / 2.0];
    let lines = coarse(lines);
    let mut tries: Vec<(f64, Place)> = Vec::new();
    for row in -NEAR_STEPS..=NEAR_STEPS {
        for column in -NEAR_STEPS..=NEAR_STEPS {
            let step = reach / f64::from(NEAR_STEPS);
            let by = [step * f64::from(column), step * f64::from(row)];
            // Words are wide: up and down counts as farther than sideways.
            tries.push((libm::hypot(0.6 * by[0], by[1]), [near[0] + by[0], near[1] + by[1]]));
        }
    }
    order::sort_by(&mut tries, &|a, b| a.0.total_cmp(&b.0));
    let fits = |place: &Place| room(&lines, *place, half, 0.999_999, 1.0) >= 1.0 && inside(&lines, *place);
    tries.into_iter().map(|(_, place)| place).find(fits)
}

/// The same lines with fewer points: a label needs no tenths of a mm.
fn coarse(lines: &[Vec<Place>]) -> Vec<Vec<Place>> {
    thinned(lines, COARSE)
}

/// A place well inside, whatever the shape.
pub(crate) fn innermost(lines: &[Vec<Place>]) -> Option<Place> {
    roomiest(lines, [1.0, 1.0]).map(|(place, _)| place)
}

/// The place whose rectangle of these proportions grows largest, and how many times the size it reaches.
fn roomiest(lines: &[Vec<Place>], size: Place) -> Option<(Place, f64)> {
    let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
    for place in lines.iter().flatten() {
        low = [low[0].min(place[0]), low[1].min(place[1])];
        high = [high[0].max(place[0]), high[1].max(place[1])];
    }
    let half = [size[0] / 2.0, size[1] / 2.0];
    let lines = &coarse(lines);
    let mut best: Option<(Place, f64)> = None;
    for row in 1..STEPS {
        for column in 1..STEPS {
            let at = |axis: usize, step: u32| low[axis] + (high[axis] - low[axis]) * f64::from(step) / f64::from(STEPS);
            let place = [at(0, column), at(1, row)];
            let least = best.map_or(0.0, |(_, room)| room);
            let room = room(lines, place, half, least, f64::INFINITY);
            if room > least && inside(lines, place) {
                best = Some((place, room));
            }
        }
    }
    best
}

/// How many times its half size a rectangle about `place` can grow before it meets a line; some number up to `least` where
/// that is too little, and `most` where it is more than that.
fn room(lines: &[Vec<Place>], place: Place, half: Place, least: f64, most: f64) -> f64 {
    let mut room = most;
    for (a, b) in sides(lines) {
        room = side_room(place, half, a, b, room);
        if room <= least {
            break;
        }
    }
    room
}

/// The same for one side, from `a` to `b`.
fn side_room(p: Place, half: Place, a: Place, b: Place, most: f64) -> f64 {
    let scaled = |q: Place| [(q[0] - p[0]) / half[0], (q[1] - p[1]) / half[1]];
    let (a, b) = (scaled(a), scaled(b));
    let beyond = |axis: usize| (a[axis] >= most && b[axis] >= most) || (a[axis] <= -most && b[axis] <= -most);
    if beyond(0) || beyond(1) {
        return most;
    }
    let norm = |part: f64| {
        let q = [a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part];
        libm::fabs(q[0]).max(libm::fabs(q[1]))
    };
    // The largest-coordinate norm along a line is convex, with its least value at an end or at one of these bends.
    let mut least = most.min(norm(0.0)).min(norm(1.0));
    let bends = [(a[0], b[0]), (a[1], b[1]), (a[0] - a[1], b[0] - b[1]), (a[0] + a[1], b[0] + b[1])];
    for (from, to) in bends {
        if from != to {
            let part = from / (from - to);
            if part > 0.0 && part < 1.0 {
                least = least.min(norm(part));
            }
        }
    }
    least
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::rect;

    #[test]
    fn a_label_fits_only_where_there_is_room() {
        let area = vec![rect([0.0, 0.0], [40.0, 10.0])];
        let middle = fits(&area, [30.0, 8.0]).expect("room");
        assert!((middle[1] - 5.0).abs() < 0.6);
        assert_eq!(fits(&area, [30.0, 10.5]), None);
        let with_hole = vec![rect([0.0, 0.0], [40.0, 10.0]), rect([15.0, 2.0], [10.0, 6.0])];
        assert_eq!(fits(&with_hole, [30.0, 8.0]), None);
        assert!(fits(&with_hole, [12.0, 8.0]).is_some());
        let near = fits_near(&with_hole, [8.0, 4.0], [20.0, 5.0], 30.0).expect("room beside the hole");
        assert!(near[0] < 11.5 || near[0] > 28.5, "{near:?}");
        assert_eq!(fits_near(&with_hole, [8.0, 4.0], [20.0, 5.0], 3.0), None);
        assert!(innermost(&area).is_some());
        assert_eq!(innermost(&[]), None);
    }
}
