//! A sheet as one HTML file that needs no script, and as the part of it that a page shows.
//!
//! What it is: our page boxes as elements with classes of `paper.css`, everything a person typed escaped.
//! What it is not: the choice of what stands on it.
//!
//! A payload (the same record as data, encoded by others) is carried as opaque text in a `template` element: browsers keep its
//! content inert, it is neither shown nor printed nor run, and a reader finds it by its class.

use super::{
    model::{Block, Line, Sheet, Sort, Step},
    style::{POLICY, STYLE},
};
use crate::drawing::svg;

/// Markup being written: plain pieces pushed one after another, the smallest way there is.
struct Out(String);

impl Out {
    fn open(&mut self, tag: &str, class: &str) {
        self.0.push('<');
        self.0.push_str(tag);
        if !class.is_empty() {
            self.0.push_str(" class=\"");
            self.0.push_str(class);
            self.0.push('"');
        }
        self.0.push('>');
    }

    fn close(&mut self, tag: &str) {
        self.0.push_str("</");
        self.0.push_str(tag);
        self.0.push_str(">\n");
    }

    fn words(&mut self, tag: &str, class: &str, text: &str) {
        self.open(tag, class);
        self.text(text);
        self.close(tag);
    }

    /// Escapes what has a meaning in markup, and an end of line that a parser would change.
    fn text(&mut self, text: &str) {
        for letter in text.chars() {
            match letter {
                '&' => self.0.push_str("&amp;"),
                '<' => self.0.push_str("&lt;"),
                '>' => self.0.push_str("&gt;"),
                '"' => self.0.push_str("&quot;"),
                '\'' => self.0.push_str("&#39;"),
                '\r' => self.0.push_str("&#13;"),
                '\0' => self.0.push('\u{fffd}'),
                letter => self.0.push(letter),
            }
        }
    }

    fn lines(&mut self, all: &[Line]) {
        for line in all {
            let class = match line.sort {
                Sort::Plain => "s-plain",
                Sort::Small => "s-small",
                Sort::Figure => "s-figure",
                Sort::Care => "s-care",
                Sort::Right => "s-right",
                Sort::Stop => "s-stop",
            };
            self.open("p", class);
            if !line.name.is_empty() {
                // No end of a line between name and value: lines are kept there.
                self.0.push_str("<span class=\"s-name\">");
                self.text(&line.name);
                self.0.push_str(": </span>");
            }
            self.text(&line.text);
            self.close("p");
        }
    }

    /// A box for a pencil: what is ticked on a screen would be lost with its window.
    fn tick(&mut self, class: &str, text: &str) {
        self.open("p", class);
        self.0.push_str("<span class=\"s-box\" aria-hidden=\"true\"></span>");
        self.words("span", "", text);
        self.close("p");
    }

    /// A name with room to write behind it.
    fn write(&mut self, name: &str) {
        self.open("p", "");
        if !name.is_empty() {
            self.words("span", "", name);
        }
        self.words("span", "s-write", "");
        self.close("p");
    }

    fn block(&mut self, block: &Block, sheet: &Sheet) {
        let (tag, class) = match block {
            Block::Heading(text) => return self.words("h2", "s-heading", text),
            Block::Tick(text) => return self.tick("s-tick", text),
            Block::Lines(_) => ("div", "s-lines"),
            Block::Item(..) => ("div", "s-item"),
            Block::Step(_) => ("div", "s-step"),
            Block::Pictures(_) => ("div", "s-pictures"),
            Block::Photos(_) => ("div", "s-photos"),
            Block::Fill(_) => ("div", "s-fill"),
            Block::Pencil(_) => ("div", "s-pencil"),
        };
        self.open(tag, class);
        match block {
            Block::Lines(all) => self.lines(all),
            Block::Item(name, all) => {
                self.words("h3", "s-item-name", name);
                self.lines(all);
            }
            Block::Step(step) => self.step(step, sheet),
            Block::Pictures(pictures) => {
                for picture in pictures {
                    svg::element(&picture.node, 0, &mut self.0);
                }
            }
            Block::Photos(photos) => {
                for photo in photos {
                    self.open("figure", "s-photo");
                    self.0.push_str("<img src=\"");
                    self.text(&photo.data);
                    self.0.push_str("\" alt=\"");
                    self.text(&photo.caption);
                    self.0.push_str("\">");
                    self.words("figcaption", "", &photo.caption);
                    self.close("figure");
                }
            }
            Block::Fill(names) => {
                for name in names {
                    self.write(name);
                }
            }
            Block::Pencil(count) => {
                for _ in 0..*count {
                    self.words("div", "s-rule", "");
                }
            }
            Block::Heading(_) | Block::Tick(_) => {}
        }
        self.close(tag);
    }

    fn step(&mut self, step: &Step, sheet: &Sheet) {
        let fixed = &sheet.words;
        self.words("p", "s-number", &step.number.to_string());
        let (does, mind) = step.halves();
        self.open("div", "s-do");
        self.open("h3", "s-what");
        self.text(&step.what);
        if step.goes_on {
            self.0.push(' ');
            self.text(&fixed.goes_on);
        }
        self.close("h3");
        self.lines(does);
        self.close("div");
        if !step.goes_on {
            self.open("div", "s-boxes");
            self.tick("s-done", &fixed.done);
            for name in [fixed.minutes.as_str(), &fixed.otherwise, ""] {
                self.write(name);
            }
            self.close("div");
        }
        if !mind.is_empty() {
            self.open("div", "s-mind");
            self.lines(mind);
            self.close("div");
        }
    }
}

/// The sheet's pages, as they stand in the file.
pub fn body(sheet: &Sheet) -> String {
    let mut out = Out(String::new());
    out.0.push_str("<div class=\"sheet s-");
    out.0.push_str(sheet.paper.name());
    out.0.push_str("\">\n");
    for page in &sheet.pages {
        out.0.push_str("<section class=\"s-page\" aria-label=\"");
        out.text(&page.number);
        out.0.push_str("\">\n");
        out.open("header", "s-top");
        out.words("p", "s-wig", &sheet.wig);
        out.words("p", "s-state", &sheet.state);
        out.close("header");
        out.open("div", "s-blocks");
        for block in &page.blocks {
            out.block(block, sheet);
        }
        out.close("div");
        out.words("footer", "s-foot", &page.number);
        out.close("section");
    }
    out.close("div");
    out.0
}

/// The whole file; `payload` is carried as it is, and comes back from a parser as it was, but for the letter NUL.
pub fn file(sheet: &Sheet, payload: Option<&str>) -> String {
    let mut out = Out(String::from(
        "<!doctype html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\" content=\"",
    ));
    out.0.push_str(POLICY);
    out.0.push_str(
        "\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"referrer\" content=\"no-referrer\">\n",
    );
    out.words("title", "", &sheet.title);
    out.0.push_str("<style>");
    out.0.push_str(STYLE);
    out.0.push_str("</style>\n</head>\n<body class=\"s-alone\">\n");
    out.0.push_str(&body(sheet));
    if let Some(payload) = payload {
        out.words("template", "s-payload", payload);
    }
    out.0.push_str("</body>\n</html>\n");
    out.0
}
