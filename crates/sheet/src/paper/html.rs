//! A sheet as one HTML file that needs no script, and as elements for a page that shows the very same.
//!
//! What it is: our page boxes as elements with classes of `paper.css`, everything a person typed escaped.
//! What it is not: the choice of what stands on it.
//!
//! A payload (the same record as data, encoded by others) is carried as opaque text in a `template` element: browsers keep its
//! content inert, it is neither shown nor printed nor run, and a reader finds it by its class.

use super::{
    model::{Block, Line, Sheet, Sort, Step},
    style::{POLICY, STYLE},
    text::page_of,
};
use crate::drawing::node::Node;

/// The element that carries a payload.
const PAYLOAD: &str = "s-payload";

fn node(tag: &'static str, class: &str) -> Node {
    let attributes = if class.is_empty() { Vec::new() } else { vec![("class", class.to_owned())] };
    Node { tag, attributes, text: None, children: Vec::new(), target: None }
}

fn words(tag: &'static str, class: &str, text: &str) -> Node {
    Node { text: Some(text.to_owned()), ..node(tag, class) }
}

fn holding(tag: &'static str, class: &str, children: Vec<Node>) -> Node {
    Node { children, ..node(tag, class) }
}

fn with(mut node: Node, name: &'static str, value: &str) -> Node {
    node.attributes.push((name, value.to_owned()));
    node
}

/// The sheet's pages as one element.
pub fn body(sheet: &Sheet) -> Node {
    let pages = sheet.pages.iter().enumerate().map(|(at, page)| {
        let page_words = page_of(sheet, at + 1);
        let top =
            holding("header", "s-top", vec![words("p", "s-wig", &sheet.wig), words("p", "s-state", &sheet.state)]);
        let blocks = page.blocks.iter().map(|block| one(block, sheet)).collect();
        let foot = words("footer", "s-foot", &page_words);
        let inside = vec![top, holding("div", "s-blocks", blocks), foot];
        with(holding("section", "s-page", inside), "aria-label", &page_words)
    });
    holding("div", &format!("sheet s-{}", sheet.paper.name()), pages.collect())
}

/// The whole file; `payload` is carried as it is, and comes back from a parser as it was, but for the letter NUL.
pub fn file(sheet: &Sheet, payload: Option<&str>) -> String {
    let mut out = String::from("<!doctype html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n");
    out.push_str(&format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{POLICY}\">\n"));
    out.push_str("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
    out.push_str("<meta name=\"referrer\" content=\"no-referrer\">\n<title>");
    escape(&sheet.title, &mut out);
    out.push_str("</title>\n<style>");
    out.push_str(STYLE);
    out.push_str("</style>\n</head>\n<body class=\"s-alone\">\n");
    element(&body(sheet), &mut out);
    if let Some(payload) = payload {
        element(&words("template", PAYLOAD, payload), &mut out);
    }
    out.push_str("</body>\n</html>\n");
    out
}

/// Elements that have no end of their own.
const VOID: [&str; 1] = ["img"];
/// Elements after which a line of the file ends.
const ENDS: [&str; 9] = ["section", "header", "footer", "div", "p", "h2", "h3", "svg", "template"];

fn element(node: &Node, out: &mut String) {
    out.push('<');
    out.push_str(node.tag);
    for (name, value) in &node.attributes {
        out.push(' ');
        out.push_str(name);
        out.push_str("=\"");
        escape(value, out);
        out.push('"');
    }
    out.push('>');
    if VOID.contains(&node.tag) {
        return;
    }
    // As in a drawing: a label stands before the words.
    for child in &node.children {
        element(child, out);
    }
    if let Some(text) = &node.text {
        escape(text, out);
    }
    out.push_str("</");
    out.push_str(node.tag);
    out.push('>');
    if ENDS.contains(&node.tag) {
        out.push('\n');
    }
}

/// Escapes what has a meaning in markup, and an end of line that a parser would change.
fn escape(text: &str, out: &mut String) {
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\r' => out.push_str("&#13;"),
            '\0' => out.push('\u{fffd}'),
            letter => out.push(letter),
        }
    }
}

fn lines(all: &[Line]) -> Vec<Node> {
    let each = |line: &Line| {
        let class = match line.sort {
            Sort::Plain => "s-plain",
            Sort::Small => "s-small",
            Sort::Figure => "s-figure",
            Sort::Care => "s-care",
            Sort::Right => "s-right",
            Sort::Stop => "s-stop",
        };
        if line.name.is_empty() {
            return words("p", class, &line.text);
        }
        let name = words("span", "s-name", &format!("{}: ", line.name));
        holding("p", class, vec![name, words("span", "s-value", &line.text)])
    };
    all.iter().map(each).collect()
}

/// A box for a pencil: what is ticked on a screen would be lost with its window.
fn tick_box() -> Node {
    with(node("span", "s-box"), "aria-hidden", "true")
}

fn one(block: &Block, sheet: &Sheet) -> Node {
    match block {
        Block::Heading(text) => words("h2", "s-heading", text),
        Block::Lines(all) => holding("div", "s-lines", lines(all)),
        Block::Item(name, all) => {
            let mut inside = vec![words("h3", "s-item-name", name)];
            inside.extend(lines(all));
            holding("div", "s-item", inside)
        }
        Block::Tick(text) => holding("p", "s-tick", vec![tick_box(), words("span", "", text)]),
        Block::Step(step) => step_box(step, sheet),
        Block::Pictures(pictures) => {
            holding("div", "s-pictures", pictures.iter().map(|picture| picture.node.clone()).collect())
        }
        Block::Photos(photos) => {
            let figures = photos.iter().map(|photo| {
                let picture = with(with(node("img", ""), "src", &photo.data), "alt", &photo.caption);
                holding("figure", "s-photo", vec![picture, words("figcaption", "", &photo.caption)])
            });
            holding("div", "s-photos", figures.collect())
        }
        Block::Fill(names) => {
            let fields =
                names.iter().map(|name| holding("p", "", vec![words("span", "", name), node("span", "s-write")]));
            holding("div", "s-fill", fields.collect())
        }
        Block::Pencil(count) => holding("div", "s-pencil", (0..*count).map(|_| node("div", "s-rule")).collect()),
    }
}

fn step_box(step: &Step, sheet: &Sheet) -> Node {
    let fixed = &sheet.words;
    let number = step.number.to_string();
    let mut inside = vec![words("p", "s-number", &number)];
    let what = if step.goes_on { format!("{} {}", step.what, fixed.goes_on) } else { step.what.clone() };
    let (does, mind) = step.halves();
    let mut doing = vec![words("h3", "s-what", &what)];
    doing.extend(lines(does));
    inside.push(holding("div", "s-do", doing));
    if !step.goes_on {
        let done = holding("p", "s-done", vec![tick_box(), words("span", "", &fixed.done)]);
        let write = |name: &String| holding("p", "", vec![words("span", "", name), node("span", "s-write")]);
        inside.push(holding(
            "div",
            "s-boxes",
            vec![done, write(&fixed.minutes), write(&fixed.otherwise), holding("p", "", vec![node("span", "s-write")])],
        ));
    }
    if !mind.is_empty() {
        inside.push(holding("div", "s-mind", lines(mind)));
    }
    holding("div", "s-step", inside)
}
