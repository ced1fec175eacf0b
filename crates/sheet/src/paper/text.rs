//! A sheet as plain text, page by page.
//!
//! What it is: for the terminal, and for eyes that compare. What it is not: laid out for a printer.

use super::model::{Block, Line, Sheet, Sort};

/// Writes a sheet; the same sheet always gives the same bytes.
pub fn text(sheet: &Sheet) -> String {
    let mut out = String::new();
    let pages = sheet.pages.len();
    for (at, page) in sheet.pages.iter().enumerate() {
        put(&mut out, "", &sheet.wig);
        put(&mut out, "", &format!("{} · {}", sheet.state, page.number));
        put(&mut out, "", &"=".repeat(72));
        for block in &page.blocks {
            one(block, sheet, &mut out);
        }
        if at + 1 < pages {
            out.push('\n');
        }
    }
    out
}

fn put(out: &mut String, indent: &str, words: &str) {
    for line in words.split('\n') {
        out.push_str(indent);
        out.push_str(line.trim_end());
        out.push('\n');
    }
}

fn lines(all: &[Line], indent: &str, out: &mut String) {
    for line in all {
        let sign = match line.sort {
            Sort::Care => "! ",
            Sort::Stop => "!! ",
            Sort::Right => "= ",
            Sort::Plain | Sort::Small | Sort::Figure => "",
        };
        let name = if line.name.is_empty() { String::new() } else { format!("{}: ", line.name) };
        put(out, indent, &format!("{sign}{name}{}", line.text));
    }
}

fn one(block: &Block, sheet: &Sheet, out: &mut String) {
    match block {
        Block::Heading(text) => {
            out.push('\n');
            put(out, "", &format!("{text}\n{}", "-".repeat(text.chars().count())));
        }
        Block::Lines(all) => lines(all, "", out),
        Block::Item(name, all) => {
            put(out, "", name);
            lines(all, "    ", out);
        }
        Block::Tick(text) => put(out, "", &format!("[ ] {text}")),
        Block::Step(step) => {
            let on = if step.goes_on { format!(" {}", sheet.words.goes_on) } else { String::new() };
            put(out, "", &format!("\n[ ] {}  {}{on}", step.number, step.what));
            lines(&step.lines, "        ", out);
            if !step.goes_on {
                let words = &sheet.words;
                put(out, "        ", &format!("{}: ______  {}: __________________", words.minutes, words.otherwise));
            }
        }
        Block::Pictures(pictures) => {
            for said in pictures.iter().flat_map(|picture| &picture.said) {
                put(out, "", said);
            }
        }
        Block::Photos(photos) => photos.iter().for_each(|photo| put(out, "", &photo.caption)),
        Block::Fill(names) => names.iter().for_each(|name| put(out, "", &format!("{name}: ____________________"))),
        Block::Pencil(count) => (0..*count).for_each(|_| put(out, "", &"_".repeat(60))),
    }
}
