//! One length of weft as a bar.
//!
//! What it is: pieces with names inside where there is room, with letters and a list below where not.
//! What it is not: the names (see `names`).

use measure::say::{Arg, Say};
use plan::shopping::For;

use super::{
    Bench, Frame, LINE, WORDS, length,
    names::{Name, lot, name},
    ruler::ticks,
};
use crate::drawing::{
    Anchor, Place, Shape, Target, Voice,
    hatch::{LEFT_OVER, Slant, hatch},
    plain, rect, spread,
};

/// Height of a bar, of the band at its foot that tells kinds of piece apart, and room between bars.
const HEIGHT: f64 = 10.0;
const BAND: f64 = 1.4;
const BETWEEN: f64 = 4.0;
/// Free room beside words in a piece.
const BESIDE: f64 = 0.8;
/// Distance of lines in what is left over.
const LEFT_SPACING: f64 = 1.8;

/// A stretch of the bar.
struct Stretch {
    from: f64,
    width: f64,
    length_mm: u32,
    name: Name,
    /// Its piece; none for what is left.
    piece: Option<usize>,
}

/// Draws a bar; answers where the next one begins.
pub(super) fn bar(
    bench: &Bench<'_>,
    index: usize,
    frame: &Frame,
    top: f64,
    voice: &Voice<'_>,
    shapes: &mut Vec<Shape>,
) -> f64 {
    let Some(weft) = bench.laid.get(index) else { return top };
    let mut y = top + BETWEEN;
    let key = if weft.owned { "sheet.bar_have" } else { "sheet.bar_buy" };
    let number = Arg::Count(i64::try_from(index + 1).unwrap_or(i64::MAX));
    let heading = Say::new(key, [number, lot(bench, weft.lot).into(), Arg::Length(length(weft.length_mm))]);
    for line in voice.wrap(&heading, frame.width, WORDS) {
        shapes.push(Shape::text("d-heading", [frame.left, y], plain(line), Anchor::Start, WORDS));
        y += LINE;
    }
    y -= LINE - 1.6;

    let stretches = stretches(bench, index, frame);
    let told: Vec<Option<Vec<Say>>> = stretches.iter().map(|stretch| inside(stretch, voice)).collect();
    let letters = letters(&told);
    let narrow = |at: usize| stretches[at].width < 1.3 * WORDS;
    if letters.iter().enumerate().any(|(at, letter)| letter.is_some() && narrow(at)) {
        y += LINE;
    }
    let whole = [f64::from(weft.length_mm) * frame.scale, HEIGHT];
    shapes.push(Shape::rect("d-bar", [frame.left, y], whole).labelled(heading).to(Target::Bar(index)));
    let mut above = Vec::new();
    for (at, stretch) in stretches.iter().enumerate() {
        body(bench, index, stretch, y, shapes);
        let middle = stretch.from + stretch.width / 2.0;
        let mut put = |say: Say, base: f64, class| {
            let mut text = Shape::text(class, [middle, base], say, Anchor::Middle, WORDS);
            text.target = stretch.piece.map(|piece| Target::Piece(index, piece));
            shapes.push(text);
        };
        match (&told[at], letters[at].clone()) {
            (Some(lines), _) => {
                for (line, say) in lines.iter().enumerate() {
                    put(say.clone(), y + 3.6 + LINE * line as f64, "d-label");
                }
            }
            (None, Some(letter)) if !narrow(at) => put(plain(letter), y + 5.6, "d-label"),
            (None, Some(letter)) => above.push((letter, middle)),
            (None, None) => {}
        }
    }
    letters_above(&above, frame, y, voice, shapes);
    marks(weft.owned, weft.length_mm, frame, y, voice, shapes);
    y += HEIGHT;
    y = list(index, &stretches, &letters, frame, y, voice, shapes);
    y + LINE / 2.0
}

/// The full names of lettered stretches, in columns where there is room; answers where the list ends.
fn list(
    index: usize,
    stretches: &[Stretch],
    letters: &[Option<String>],
    frame: &Frame,
    top: f64,
    voice: &Voice<'_>,
    shapes: &mut Vec<Shape>,
) -> f64 {
    let mut said: Vec<(Say, Option<Target>)> = Vec::new();
    let mut widest = 1.0_f64;
    for (stretch, letter) in stretches.iter().zip(letters) {
        let Some(letter) = letter.clone() else { continue };
        let parts = [Arg::Text(letter), stretch.name.full.clone().into(), Arg::Length(length(stretch.length_mm))];
        let say = Say::new("sheet.piece_listed", parts);
        widest = widest.max(voice.width(&say, WORDS));
        said.push((say, stretch.piece.map(|piece| Target::Piece(index, piece))));
    }
    widest += 4.0;
    let columns = (libm::floor((frame.width + 4.0) / widest) as usize).max(1);
    let deep = said.len().div_ceil(columns).max(1);
    let mut lowest = top;
    for (column, part) in said.chunks(deep).enumerate() {
        let mut y = top;
        for (say, target) in part {
            for line in voice.wrap(say, frame.width, WORDS) {
                y += LINE;
                let at = [frame.left + widest * column as f64, y];
                let mut text = Shape::text("d-text", at, plain(line), Anchor::Start, WORDS);
                text.target = *target;
                shapes.push(text);
            }
        }
        lowest = lowest.max(y);
    }
    lowest
}

fn stretches(bench: &Bench<'_>, index: usize, frame: &Frame) -> Vec<Stretch> {
    let Some(weft) = bench.laid.get(index) else { return Vec::new() };
    let taken: u32 = weft.pieces.iter().map(|piece| piece.length_mm).sum();
    let lost = weft.length_mm.saturating_sub(taken.saturating_add(weft.offcut_mm));
    let gap = if weft.pieces.len() > 1 { f64::from(lost) / (weft.pieces.len() - 1) as f64 } else { 0.0 };
    let mut from = 0.0;
    let mut stretches = Vec::new();
    for (at, piece) in weft.pieces.iter().enumerate() {
        let width = f64::from(piece.length_mm) * frame.scale;
        let name = name(bench, piece);
        stretches.push(Stretch { from: frame.at(from), width, length_mm: piece.length_mm, name, piece: Some(at) });
        from += f64::from(piece.length_mm) + gap;
    }
    if weft.offcut_mm > 0 {
        let key = if weft.pieces.is_empty() { "sheet.piece_unused" } else { "sheet.piece_left" };
        let from = f64::from(weft.length_mm.saturating_sub(weft.offcut_mm));
        stretches.push(Stretch {
            from: frame.at(from),
            width: f64::from(weft.offcut_mm) * frame.scale,
            length_mm: weft.offcut_mm,
            name: Name { full: Say::key(key), short: None },
            piece: None,
        });
    }
    stretches
}

/// The words that fit inside a stretch, if any do.
fn inside(stretch: &Stretch, voice: &Voice<'_>) -> Option<Vec<Say>> {
    let room = stretch.width - 2.0 * BESIDE;
    let size = Say::new("sheet.piece_length", [Arg::Length(length(stretch.length_mm))]);
    let names = core::iter::once(&stretch.name.full).chain(&stretch.name.short);
    let fitting = names.into_iter().find(|name| voice.width(name, WORDS) <= room)?;
    (voice.width(&size, WORDS) <= room).then(|| vec![fitting.clone(), size])
}

/// a, b, … z, aa, ab … for stretches without words inside.
fn letters(told: &[Option<Vec<Say>>]) -> Vec<Option<String>> {
    let mut next = 0_u32;
    let mut letter = |untold: bool| {
        untold.then(|| {
            let mut text = String::new();
            let mut rest = next + 1;
            while rest > 0 {
                rest -= 1;
                text.insert(0, char::from(b'a' + (rest % 26) as u8));
                rest /= 26;
            }
            next += 1;
            text
        })
    };
    told.iter().map(|told| letter(told.is_none())).collect()
}

/// The body of a piece, and the band that tells its kind.
fn body(bench: &Bench<'_>, index: usize, stretch: &Stretch, y: f64, shapes: &mut Vec<Shape>) {
    let (at, size) = ([stretch.from, y], [stretch.width, HEIGHT]);
    let label =
        Say::new("sheet.piece_label", [stretch.name.full.clone().into(), Arg::Length(length(stretch.length_mm))]);
    let mut piece = Shape::rect("d-piece", at, size).labelled(label);
    piece.target = stretch.piece.map(|piece| Target::Piece(index, piece));
    shapes.push(piece);
    let band: Place = [stretch.from, y + HEIGHT - BAND];
    let foot = [rect(band, [stretch.width, BAND])];
    let purpose = stretch.piece.and_then(|at| bench.laid.get(index)?.pieces.get(at)).map(|piece| piece.purpose);
    let lines = match purpose {
        None => hatch(&[rect(at, size)], LEFT_OVER, LEFT_SPACING),
        Some(For::Row(_) | For::Run) => Vec::new(),
        Some(For::Hairline(..)) => hatch(&foot, Slant(90.0), 0.9),
        Some(For::Parting(..)) => hatch(&foot, Slant(0.0), 0.45),
        Some(For::HoldBack) => {
            let mut lines = hatch(&foot, Slant(45.0), 1.0);
            lines.extend(hatch(&foot, Slant(-45.0), 1.0));
            lines
        }
    };
    if !lines.is_empty() {
        shapes.push(Shape::lines("d-fine", lines));
    }
}

/// Letters of pieces too narrow for one, above the bar.
fn letters_above(above: &[(String, f64)], frame: &Frame, y: f64, voice: &Voice<'_>, shapes: &mut Vec<Shape>) {
    let wide = |letter: &String| voice.width(&plain(letter.clone()), WORDS);
    let wanted: Vec<f64> = above.iter().map(|(_, middle)| *middle).collect();
    let gaps: Vec<f64> = above.windows(2).map(|pair| (wide(&pair[0].0) + wide(&pair[1].0)) / 2.0 + 0.8).collect();
    let mut places = spread(&wanted, &gaps);
    // Moved back where the row of letters would leave the frame.
    if let (Some(last), Some((letter, _))) = (places.last().copied(), above.last()) {
        let over = (last + wide(letter) / 2.0 - frame.left - frame.width).max(0.0);
        places.iter_mut().for_each(|place| *place -= over);
    }
    for ((letter, middle), place) in above.iter().zip(places) {
        shapes.push(Shape::text("d-text", [place, y - 1.9], plain(letter.clone()), Anchor::Middle, WORDS));
        shapes.push(Shape::lines("d-fine", vec![vec![[place, y - 1.5], [*middle, y]]]));
    }
}

/// Ticks of the ruler at the foot, and the sign of what is owned: a solid end.
fn marks(owned: bool, length_mm: u32, frame: &Frame, y: f64, voice: &Voice<'_>, shapes: &mut Vec<Shape>) {
    let foot = y + HEIGHT;
    let mut lines = Vec::new();
    for mark in ticks(frame, length_mm, voice) {
        let x = frame.at(mark);
        lines.push(vec![[x, foot], [x, foot + 0.9]]);
    }
    shapes.push(Shape::lines("d-tick", lines));
    if owned {
        shapes.push(Shape::rect("d-have", [frame.left - 0.9, y], [1.2, HEIGHT]));
    }
}
