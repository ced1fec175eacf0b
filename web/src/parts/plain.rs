//! The plainest elements, written once: each use of the markup macro costs the page some hundred bytes.
//!
//! What it is: paragraphs, headings and buttons with their words. What it is not: anything with a state.

use yew::prelude::*;

use crate::shell::talk::t;

/// The page's heading, which has the focus after a change of page.
pub fn title(key: &str) -> Html {
    html! { <h1 id="page-title" tabindex="-1">{ t(key) }</h1> }
}

/// A heading that names its section.
pub fn h2(id: &'static str, key: &str) -> Html {
    html! { <h2 {id}>{ t(key) }</h2> }
}

/// A paragraph with a class.
pub fn p(class: &'static str, words: String) -> Html {
    html! { <p {class}>{ words }</p> }
}

/// A button.
pub fn button(class: &'static str, words: String, onclick: Callback<MouseEvent>) -> Html {
    html! { <button type="button" {class} {onclick}>{ words }</button> }
}

/// A section under its heading.
pub fn section(id: &'static str, key: &str, inside: Html) -> Html {
    html! { <section aria-labelledby={id}>{ h2(id, key) }{ inside }</section> }
}

/// Something folded away behind its name.
pub fn folded(name: String, inside: Html) -> Html {
    html! { <details><summary>{ name }</summary>{ inside }</details> }
}

/// The head of a table.
pub fn columns(keys: &[&str]) -> Html {
    html! { <thead><tr>{ for keys.iter().map(|key| html! { <th scope="col">{ t(key) }</th> }) }</tr></thead> }
}

/// A row of a table: what it is about, then its cells.
pub fn row(head: String, cells: Vec<Html>) -> Html {
    html! { <tr><th scope="row">{ head }</th>{ for cells.into_iter().map(|cell| html! { <td>{ cell }</td> }) }</tr> }
}
