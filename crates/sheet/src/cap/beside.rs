//! Words beside the head, as near to it as its outline lets them.
//!
//! What it is: call-outs with leaders, moved apart. What it is not: the choice of what is said.

use measure::{order, say::Say};

use super::WORDS;
use crate::drawing::{Anchor, Kind, Place, Shape, Target, spread};

/// A call-out.
pub(super) struct CallOut {
    /// Its lines.
    pub lines: Vec<Say>,
    /// What it points at.
    pub at: Place,
    /// How it is painted.
    pub class: &'static str,
    /// What a touch on it means.
    pub target: Option<Target>,
    /// Whether a dot marks the place it points at.
    pub dot: bool,
}

/// The side of the head, as the viewer sees it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Side {
    /// The viewer's left.
    Left,
    /// The viewer's right.
    Right,
}

/// From line to line.
pub(super) const LINE: f64 = 1.12 * WORDS;
/// From the outline to the words.
const AWAY: f64 = 5.0;

/// Draws call-outs on one side of `outlines`, none above or below the limits as long as there is room between.
pub(super) fn beside(
    mut calls: Vec<CallOut>,
    side: Side,
    outlines: &[&[Place]],
    [highest, lowest]: [f64; 2],
    shapes: &mut Vec<Shape>,
) {
    order::sort_by(&mut calls, &|a, b| a.at[1].total_cmp(&b.at[1]));
    let height = |call: &CallOut| LINE * call.lines.len() as f64;
    let wanted: Vec<f64> = calls.iter().map(|call| call.at[1]).collect();
    let gaps: Vec<f64> = calls.windows(2).map(|pair| (height(&pair[0]) + height(&pair[1])) / 2.0 + 1.0).collect();
    let mut middles = spread(&wanted, &gaps);
    let mut least = f64::NEG_INFINITY;
    for (index, middle) in middles.iter_mut().enumerate() {
        least = if index == 0 { highest + height(&calls[0]) / 2.0 } else { least + gaps[index - 1] };
        *middle = middle.max(least);
    }
    let mut most = f64::INFINITY;
    for (index, middle) in middles.iter_mut().enumerate().rev() {
        most = match gaps.get(index) {
            Some(gap) => most - gap,
            None => lowest - height(&calls[index]) / 2.0,
        };
        *middle = middle.min(most);
    }
    for (call, middle) in calls.iter().zip(middles) {
        let (top, bottom) = (middle - height(call) / 2.0, middle + height(call) / 2.0);
        let edge = outermost(outlines, side, top, bottom);
        let (x, anchor, inward) = match side {
            Side::Left => (edge - AWAY, Anchor::End, 1.2),
            Side::Right => (edge + AWAY, Anchor::Start, -1.2),
        };
        shapes.push(Shape::lines("d-lead", vec![vec![[x + inward, middle], call.at]]));
        if call.dot {
            shapes.push(Shape::new("d-dot", Kind::Circle { at: call.at, radius: 1.4 }));
        }
        for (index, line) in call.lines.iter().enumerate() {
            let base = top + LINE * (index as f64 + 0.5) + 0.36 * WORDS;
            let mut text = Shape::text(call.class, [x, base], line.clone(), anchor, WORDS);
            text.target = call.target;
            shapes.push(text);
        }
    }
}

/// How far the figure reaches to a side between two heights; beyond it, what it reaches at its nearest point.
fn outermost(outlines: &[&[Place]], side: Side, top: f64, bottom: f64) -> f64 {
    let sign = if side == Side::Left { -1.0 } else { 1.0 };
    let mut far: Option<f64> = None;
    let mut nearest = (f64::INFINITY, 0.0);
    for pair in outlines.iter().flat_map(|line| line.windows(2)) {
        let (a, b) = if pair[0][1] <= pair[1][1] { (pair[0], pair[1]) } else { (pair[1], pair[0]) };
        for end in [a, b] {
            let away = (top - end[1]).max(end[1] - bottom);
            if away < nearest.0 {
                nearest = (away, end[0]);
            }
        }
        let (low, high) = (top.max(a[1]), bottom.min(b[1]));
        if low > high {
            continue;
        }
        let at = |y: f64| if b[1] > a[1] { a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1]) } else { a[0] };
        for x in [at(low), at(high)] {
            far = Some(far.map_or(x, |far: f64| if (x - far) * sign > 0.0 { x } else { far }));
        }
    }
    far.unwrap_or(nearest.1)
}
