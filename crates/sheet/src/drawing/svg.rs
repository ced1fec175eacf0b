//! A drawing written as SVG text.
//!
//! What it is: elements as text, everything a person typed escaped. What it is not: the choice of elements (see `node`).

use measure::{prefs::Prefs, say::Words};

use super::{
    Drawing, Voice,
    node::{Form, Node, node},
};

/// Writes a drawing; the same drawing always gives the same bytes.
pub fn write(drawing: &Drawing, words: &Words, prefs: &Prefs, form: Form) -> String {
    let mut out = String::new();
    element(&node(drawing, &Voice { words, prefs }, form), 0, &mut out);
    out
}

/// Writes an element and what is in it.
pub(crate) fn element(node: &Node, depth: usize, out: &mut String) {
    out.push_str(&" ".repeat(depth));
    out.push('<');
    out.push_str(node.tag);
    for (name, value) in &node.attributes {
        out.push(' ');
        out.push_str(name);
        out.push_str("=\"");
        escape(value, out);
        out.push('"');
    }
    if node.text.is_none() && node.children.is_empty() {
        out.push_str("/>\n");
        return;
    }
    out.push('>');
    // A label stands before the words: it must be the first child to be one.
    let inline = node.text.is_some();
    if !inline {
        out.push('\n');
    }
    for child in &node.children {
        let mut inner = String::new();
        element(child, depth + 1, &mut inner);
        out.push_str(if inline { inner.trim() } else { &inner });
    }
    if let Some(text) = &node.text {
        escape(text, out);
    } else {
        out.push_str(&" ".repeat(depth));
    }
    out.push_str("</");
    out.push_str(node.tag);
    out.push_str(">\n");
}

/// Escapes what has a meaning in markup and replaces what XML cannot hold.
fn escape(text: &str, out: &mut String) {
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\n' | '\r' | '\t' => out.push(' '),
            '\u{fffe}' | '\u{ffff}' => out.push('\u{fffd}'),
            letter if letter.is_control() => out.push('\u{fffd}'),
            letter => out.push(letter),
        }
    }
}
