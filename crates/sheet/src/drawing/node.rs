//! A drawing as the elements of SVG: one walk for the writer and for the page.
//!
//! What it is: tags, attributes and words of each shape. What it is not: text of a file (see `svg`).
//!
//! Colours stand in classes; a drawing that stands alone carries them as presentation attributes too. No element has a style
//! attribute, so that the strictest policy draws it.

use measure::decimal::fixed;

use super::{Anchor, Drawing, Kind, Place, Shape, Target, Voice, paint};

/// What the drawing is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// A file of its own: carries its colours and its size.
    Standalone,
    /// Part of a page that has [`super::paint::style`].
    Embedded,
}

/// An element.
#[derive(Clone, Debug, PartialEq)]
pub struct Node {
    /// Its name.
    pub tag: &'static str,
    /// Its attributes, in order.
    pub attributes: Vec<(&'static str, String)>,
    /// Its words, before its children.
    pub text: Option<String>,
    /// Elements inside.
    pub children: Vec<Node>,
    /// What a touch on it means.
    pub target: Option<Target>,
}

impl Node {
    fn new(tag: &'static str) -> Node {
        Node { tag, attributes: Vec::new(), text: None, children: Vec::new(), target: None }
    }

    fn saying(tag: &'static str, text: String) -> Node {
        Node { text: Some(text), ..Node::new(tag) }
    }

    fn set(&mut self, name: &'static str, value: impl Into<String>) {
        self.attributes.push((name, value.into()));
    }
}

/// The whole drawing as one `svg` element.
pub fn node(drawing: &Drawing, voice: &Voice<'_>, form: Form) -> Node {
    let mut root = Node::new("svg");
    let [left, top, width, height] = drawing.view_box;
    root.set("xmlns", "http://www.w3.org/2000/svg");
    root.set("class", "d-drawing");
    root.set("viewBox", [left, top, width, height].map(number).join(" "));
    root.set("role", "img");
    if form == Form::Standalone {
        root.set("width", format!("{}mm", number(width)));
        root.set("height", format!("{}mm", number(height)));
        root.set("font-family", "sans-serif");
    }
    root.children.push(Node::saying("title", voice.text(&drawing.title)));
    root.children.push(Node::saying("desc", voice.text(&drawing.description)));
    if form == Form::Standalone {
        let mut ground = Node::new("rect");
        for (name, value) in [("x", left), ("y", top), ("width", width), ("height", height)] {
            ground.set(name, number(value));
        }
        ground.set("fill", paint::Role::Paper.alone());
        root.children.push(ground);
    }
    root.children.extend(drawing.shapes.iter().map(|shape| of_shape(shape, voice, form)));
    root
}

fn of_shape(shape: &Shape, voice: &Voice<'_>, form: Form) -> Node {
    let mut node = match &shape.kind {
        Kind::Path { lines, closed } => {
            let mut node = Node::new("path");
            node.set("d", path(lines, *closed));
            if *closed {
                node.set("fill-rule", "evenodd");
            }
            node
        }
        Kind::Rect { at, size } => {
            let mut node = Node::new("rect");
            for (name, value) in [("x", at[0]), ("y", at[1]), ("width", size[0]), ("height", size[1])] {
                node.set(name, number(value));
            }
            node
        }
        Kind::Circle { at, radius } => {
            let mut node = Node::new("circle");
            for (name, value) in [("cx", at[0]), ("cy", at[1]), ("r", *radius)] {
                node.set(name, number(value));
            }
            node
        }
        Kind::Text { at, say, anchor, size } => {
            let mut node = Node::saying("text", voice.text(say));
            node.set("x", number(at[0]));
            node.set("y", number(at[1]));
            node.set("font-size", number(*size));
            match anchor {
                Anchor::Start => {}
                Anchor::Middle => node.set("text-anchor", "middle"),
                Anchor::End => node.set("text-anchor", "end"),
            }
            node
        }
    };
    node.set("class", shape.class);
    if let Some(paint) = paint::of(shape.class) {
        for (name, value) in paint.form {
            node.set(name, *value);
        }
        let own = |role| shape.own.filter(|_| role == paint::Role::Own).map(|shade| shade.to_string());
        for (name, role) in [("fill", paint.fill), ("stroke", paint.stroke)] {
            match own(role) {
                Some(shade) => node.set(name, shade),
                None if form == Form::Standalone => node.set(name, role.alone()),
                None => {}
            }
        }
    }
    if let Some(label) = &shape.label {
        node.children.push(Node::saying("title", voice.text(label)));
    }
    node.target = shape.target;
    node
}

/// A number of mm to a tenth, as short as it goes.
pub fn number(value: f64) -> String {
    let text = fixed(value, 1);
    let text = text.strip_suffix(".0").unwrap_or(&text);
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

fn path(lines: &[Vec<Place>], closed: bool) -> String {
    let mut data = String::new();
    for line in lines {
        for (index, place) in line.iter().enumerate() {
            data.push_str(match index {
                0 => "M",
                1 => "L",
                _ => " ",
            });
            data.push_str(&number(place[0]));
            data.push(' ');
            data.push_str(&number(place[1]));
        }
        if closed && !line.is_empty() {
            data.push('Z');
        }
    }
    data
}
