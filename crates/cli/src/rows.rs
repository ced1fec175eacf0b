//! Text for a terminal, line by line, and tables of it.
//!
//! What it is: padding. What it is not: colours or widths of a particular terminal.

use measure::{
    prefs::Prefs,
    say::{Arg, Say},
};

use crate::{out::clean, words::WORDS};

/// A text being written.
pub struct Page<'a> {
    text: String,
    prefs: &'a Prefs,
}

impl<'a> Page<'a> {
    /// An empty page.
    pub fn new(prefs: &'a Prefs) -> Page<'a> {
        Page { text: String::new(), prefs }
    }

    /// A sentence in words.
    pub fn words(&self, say: &Say) -> String {
        clean(&say.words(&WORDS, self.prefs))
    }

    /// The words of a key.
    pub fn word(&self, key: &'static str) -> String {
        self.words(&Say::key(key))
    }

    /// A line.
    pub fn line(&mut self, say: &Say) {
        let words = self.words(say);
        self.put(&words);
    }

    /// A line under a heading.
    pub fn item(&mut self, say: &Say) {
        self.line(&Say::new("cli.item", [say.clone().into()]));
    }

    /// A line of words already put together.
    pub fn put(&mut self, words: &str) {
        self.text.push_str(&clean(words));
        self.text.push('\n');
    }

    /// An empty line and a heading.
    pub fn heading(&mut self, key: &'static str) {
        self.text.push('\n');
        self.line(&Say::key(key));
    }

    /// A term and what is said of it.
    pub fn fact(&mut self, key: &'static str, value: Arg) {
        self.line(&Say::new("cli.fact", [Arg::Key(key), value]));
    }

    /// A table: columns as wide as their widest cell, the last one free.
    pub fn table(&mut self, rows: &[Vec<String>]) {
        let columns = rows.iter().map(Vec::len).max().unwrap_or(0);
        let width = |column: usize| {
            rows.iter().filter_map(|row| row.get(column)).map(|cell| clean(cell).chars().count()).max().unwrap_or(0)
        };
        let widths: Vec<usize> = (0..columns).map(width).collect();
        for row in rows {
            let mut line = String::from(" ");
            for (cell, width) in row.iter().zip(&widths) {
                let cell = clean(cell);
                line.push_str(&format!(" {cell:<width$} "));
            }
            self.text.push_str(line.trim_end());
            self.text.push('\n');
        }
    }

    /// The page.
    pub fn done(self) -> String {
        self.text
    }
}
