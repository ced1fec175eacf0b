//! How high blocks are, and which page each stands on.
//!
//! What it is: our own page breaks, made for the wider of the common fonts, so that no browser has to make any.
//! What it is not: the stylesheet; but for its sizes, which are the ones in `paper.css`.

use super::{
    choices::Paper,
    model::{Block, Line, Page, Sort, Step},
};
use crate::drawing::wrap;

/// Width of what is printed, mm, the same on both papers.
pub(super) const WIDTH: f64 = 180.0;
/// Edges above and below, the lines over each page and the line under it, mm.
const FRAME: f64 = 11.0 + 17.0 + 8.0 + 10.0;
/// Width of what a step does, less its number and its boxes; and of what to mind under it.
const STEP_WIDTH: f64 = 118.0;
const MIND_WIDTH: f64 = 158.0;
/// Least height of a step: its boxes.
const STEP_LEAST: f64 = 34.0;
/// Size of letters and from line to line, mm: 12 pt, 14 pt, 10 pt.
const TEXT: (f64, f64) = (4.2, 5.8);
const WHAT: (f64, f64) = (5.2, 7.0);
const SMALL: (f64, f64) = (3.5, 4.9);
/// What bold letters are wider.
const BOLD: f64 = 1.12;
/// No heading has more letters.
const LONGEST_HEADING: usize = 60;
/// Room of a box's edge, and inside it.
const BOXED: f64 = 6.0;

/// Room for blocks on a page, mm.
pub(super) fn room(paper: Paper) -> f64 {
    paper.height_mm() - FRAME
}

/// Puts blocks on pages, in order.
pub(super) fn pages(blocks: Vec<Block>, paper: Paper) -> Vec<Page> {
    let room = room(paper);
    let mut parts: Vec<(Block, f64)> = Vec::new();
    for block in blocks {
        broken(block, room, &mut parts);
    }
    let mut pages = Vec::new();
    let mut page = Page::default();
    let mut left = room;
    // From the end, so that each is taken and none is copied.
    parts.reverse();
    while !parts.is_empty() {
        let at = |place: usize| parts.len().checked_sub(place + 1).and_then(|at| parts.get(at));
        // A heading stays with what it is over, and words over a drawing with the drawing.
        let mut together = 1;
        let mut high = at(0).map_or(0.0, |(_, high)| *high);
        while let (Some((before, _)), Some((next, more))) = (at(together - 1), at(together))
            && stays(before, next)
        {
            high += more;
            together += 1;
        }
        if high > left && !page.blocks.is_empty() {
            pages.push(core::mem::take(&mut page));
            left = room;
        }
        for _ in 0..together {
            if let Some((block, _)) = parts.pop() {
                page.blocks.push(block);
            }
        }
        left -= high;
    }
    if !page.blocks.is_empty() {
        pages.push(page);
    }
    pages
}

fn stays(block: &Block, next: &Block) -> bool {
    matches!(block, Block::Heading(_))
        || matches!((block, next), (Block::Lines(_), Block::Pictures(_)) | (Block::Fill(_), Block::Pencil(_)))
}

/// A block in parts that each fit a page: whole where it fits.
fn broken(block: Block, room: f64, parts: &mut Vec<(Block, f64)>) {
    let high = height(&block);
    // Room for a heading over it, one of two lines too.
    let fits = room - height(&Block::Heading("m".repeat(LONGEST_HEADING)));
    if high <= fits {
        parts.push((block, high));
        return;
    }
    let Some(lines) = lines_of(&block) else {
        parts.push((block, high));
        return;
    };
    let mut goes_on = false;
    let mut some: Vec<Line> = Vec::new();
    let mut put = |some: &mut Vec<Line>, parts: &mut Vec<(Block, f64)>| {
        let part = with_lines(&block, core::mem::take(some), goes_on);
        let high = height(&part);
        parts.push((part, high));
        goes_on = true;
    };
    // A third of a page at most, so that a page is never left half empty by one line of somebody's words.
    let mut all = Vec::new();
    for line in lines {
        pieces(line, fits / 3.0, &mut all);
    }
    for line in all {
        some.push(line);
        if height(&with_lines(&block, some.clone(), true)) > fits
            && let Some(last) = some.pop()
        {
            put(&mut some, parts);
            some.push(last);
        }
    }
    put(&mut some, parts);
}

/// The lines of a block that may be parted between them.
fn lines_of(block: &Block) -> Option<&[Line]> {
    match block {
        Block::Lines(lines) | Block::Item(_, lines) => Some(lines),
        Block::Step(step) => Some(&step.lines),
        _ => None,
    }
}

/// Such a block with other lines.
fn with_lines(block: &Block, lines: Vec<Line>, goes_on: bool) -> Block {
    match block {
        Block::Item(name, _) => Block::Item(name.clone(), lines),
        Block::Step(step) => Block::Step(Step { number: step.number, what: step.what.clone(), lines, goes_on }),
        _ => Block::Lines(lines),
    }
}

/// A line in pieces of at most so many mm.
fn pieces(line: &Line, most: f64, pieces: &mut Vec<Line>) {
    if line_height(line, STEP_WIDTH) <= most {
        pieces.push(line.clone());
        return;
    }
    let mut wrapped: Vec<String> = Vec::new();
    for one in line.text.split('\n') {
        wrapped.append(&mut wrap(one, STEP_WIDTH - BOXED, TEXT.0 * BOLD));
    }
    let each = (libm::floor(most / TEXT.1) as usize).saturating_sub(3).max(1);
    let letters = |text: &str| text.chars().filter(|letter| !letter.is_whitespace()).count();
    let mut rest = line.text.as_str();
    for (index, lines) in wrapped.chunks(each).enumerate() {
        // Cut where the wrapped lines end, so that no letter is lost and no word is parted that was not.
        let mut wanted: usize = lines.iter().map(|line| letters(line)).sum();
        let mut end = rest.len();
        for (at, letter) in rest.char_indices() {
            if wanted == 0 && !letter.is_whitespace() {
                end = at;
                break;
            }
            wanted = wanted.saturating_sub(usize::from(!letter.is_whitespace()));
        }
        let (text, after) = rest.split_at(end);
        rest = after;
        let name = if index == 0 { line.name.clone() } else { String::new() };
        pieces.push(Line { sort: line.sort, name, text: text.trim().to_owned() });
    }
}

fn rows(text: &str, width: f64, (size, high): (f64, f64)) -> f64 {
    let mut lines = 0;
    for one in text.split('\n') {
        lines += wrap(one, width, size).len();
    }
    lines as f64 * high
}

fn line_height(line: &Line, width: f64) -> f64 {
    let whole = if line.name.is_empty() { line.text.clone() } else { format!("{}: {}", line.name, line.text) };
    match line.sort {
        Sort::Small => rows(&whole, width, SMALL) + 0.8,
        Sort::Plain => rows(&whole, width, TEXT) + 0.8,
        Sort::Figure => rows(&whole, width, (TEXT.0 * BOLD, TEXT.1)) + 0.8,
        Sort::Care | Sort::Right => rows(&whole, width - BOXED, (TEXT.0 * 1.03, TEXT.1)) + 3.6,
        Sort::Stop => rows(&whole, width - BOXED, (TEXT.0 * BOLD, TEXT.1)) + 3.6,
    }
}

fn lines_height(lines: &[Line], width: f64) -> f64 {
    let mut high = 0.0;
    for line in lines {
        high += line_height(line, width);
    }
    high
}

/// How high a block is at most, mm, with the room under it.
pub(super) fn height(block: &Block) -> f64 {
    let bold = |text: &str, width, (size, high): (f64, f64)| rows(text, width, (size * BOLD, high));
    match block {
        Block::Heading(text) => bold(text, WIDTH, (6.0, 8.0)) + 7.0,
        Block::Lines(lines) => lines_height(lines, WIDTH) + 2.0,
        Block::Item(name, lines) => bold(name, WIDTH, TEXT) + lines_height(lines, WIDTH) + 2.4,
        Block::Tick(text) => rows(text, WIDTH - 12.0, TEXT) + 2.4,
        Block::Step(step) => {
            let (doing, mind) = step.halves();
            let doing = bold(&step.what, STEP_WIDTH, WHAT) + lines_height(doing, STEP_WIDTH);
            doing.max(STEP_LEAST) + lines_height(mind, MIND_WIDTH) + 7.0
        }
        Block::Pictures(pictures) => {
            let mut high = 0.0_f64;
            for picture in pictures {
                high = high.max(picture.size[1]);
            }
            high + 3.0
        }
        Block::Photos(_) => PHOTO + SMALL.1 * 2.0 + 4.0,
        Block::Fill(names) => 12.0 * names.len().div_ceil(2) as f64 + 3.0,
        Block::Pencil(lines) => 9.0 * *lines as f64 + 2.0,
    }
}

/// Height of a photo, mm.
pub(super) const PHOTO: f64 = 84.0;

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn letters(text: &str) -> String {
        text.chars().filter(|letter| !letter.is_whitespace()).collect()
    }

    fn said(block: &Block) -> String {
        let of = |lines: &[Line]| lines.iter().map(|line| letters(&line.text)).collect::<String>();
        match block {
            Block::Heading(text) | Block::Tick(text) => letters(text),
            Block::Lines(lines) | Block::Item(_, lines) => of(lines),
            Block::Step(step) => of(&step.lines),
            _ => String::new(),
        }
    }

    fn line() -> impl Strategy<Value = Line> {
        let sort = prop_oneof![Just(Sort::Plain), Just(Sort::Figure), Just(Sort::Care), Just(Sort::Stop)];
        (sort, "(\\PC|\n){0,2000}").prop_map(|(sort, text)| Line { sort, name: "Name".to_owned(), text })
    }

    fn block() -> impl Strategy<Value = Block> {
        let lines = || prop::collection::vec(line(), 1..6);
        prop_oneof![
            "[a-z ]{1,200}".prop_map(Block::Tick),
            lines().prop_map(Block::Lines),
            lines().prop_map(|lines| Block::Item("Item".to_owned(), lines)),
            (1..99_usize, lines()).prop_map(|(number, lines)| {
                Block::Step(Step { number, what: "Do".to_owned(), lines, goes_on: false })
            }),
            (1..12_usize).prop_map(Block::Pencil),
        ]
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(64) })]

        #[test]
        fn every_page_holds_what_is_on_it_and_nothing_is_lost(
            parts in prop::collection::vec((prop::option::of("[a-z ]{1,60}"), block()), 0..12),
        ) {
            let heading = |text: Option<String>| text.map(Block::Heading);
            let blocks: Vec<Block> = parts.into_iter().flat_map(|(over, block)| heading(over).into_iter().chain([block])).collect();
            for paper in Paper::ALL {
                let pages = pages(blocks.clone(), paper);
                for page in &pages {
                    let high: f64 = page.blocks.iter().map(height).sum();
                    prop_assert!(high <= room(paper) + 1e-6, "{high} mm on {paper:?}");
                    prop_assert!(!page.blocks.is_empty());
                }
                // A heading never stands last on a page.
                for page in &pages {
                    prop_assert!(!matches!(page.blocks.last(), Some(Block::Heading(_))));
                }
                let there: String = pages.iter().flat_map(|page| &page.blocks).map(said).collect();
                prop_assert_eq!(there, blocks.iter().map(said).collect::<String>());
            }
        }
    }
}
