//! The elements of an HTML file, for checks.
//!
//! What it is: start tags with attributes and the text right after each. What it is not: a document tree.

use std::collections::BTreeMap;

use html5gum::{DefaultEmitter, Token, Tokenizer};

pub struct Element {
    pub name: String,
    pub attributes: BTreeMap<String, String>,
    /// Text up to the next tag.
    pub text: String,
}

pub fn elements(html: &str) -> Vec<Element> {
    let mut emitter = DefaultEmitter::default();
    // Without this the inside of <script> and <style> would be read as tags.
    emitter.naively_switch_states(true);
    let mut found: Vec<Element> = Vec::new();
    let mut open = false;
    for Ok(token) in Tokenizer::new_with_emitter(html, emitter) {
        match token {
            Token::StartTag(tag) => {
                let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
                let attributes = tag.attributes.iter().map(|(name, value)| (text(name), text(value))).collect();
                found.push(Element { name: text(&tag.name), attributes, text: String::new() });
                open = true;
            }
            Token::String(text) if open => {
                if let Some(last) = found.last_mut() {
                    last.text.push_str(&String::from_utf8_lossy(&text));
                }
            }
            Token::EndTag(_) => open = false,
            _ => {}
        }
    }
    found
}
