//! Rule: the page's policy allows no inline script and no inline style, so none is written.
//!
//! What it is: a look at the static HTML files. What it is not: a check of what the app draws; the policy does that.

use super::Texts;
use crate::page::html::{Element, elements};

pub fn check(texts: &Texts) -> Vec<String> {
    let pages: Vec<_> =
        texts.iter().filter(|(name, _)| name.starts_with("web/static/") && name.ends_with(".html")).collect();
    if !pages.iter().any(|(name, _)| name.as_str() == "web/static/index.html") {
        return vec!["web/static/index.html was not found".to_owned()];
    }
    let findings = pages.iter().flat_map(|(name, text)| {
        elements(text).into_iter().flat_map(|element| wrong(&element)).map(move |what| format!("{name}: {what}"))
    });
    findings.collect()
}

fn wrong(element: &Element) -> Vec<String> {
    let mut found = Vec::new();
    if element.name == "style" {
        found.push("a <style> element".to_owned());
    }
    if element.name == "script" && (!element.attributes.contains_key("src") || !element.text.trim().is_empty()) {
        found.push("a <script> with its code inside".to_owned());
    }
    for (name, value) in &element.attributes {
        if name == "style" || name.starts_with("on") {
            found.push(format!("the attribute {name} on <{}>", element.name));
        }
        if value.trim_start().to_lowercase().starts_with("javascript:") {
            found.push(format!("a javascript: address on <{}>", element.name));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::super::texts;
    use super::*;

    fn found(html: &str) -> usize {
        check(&texts(&[("web/static/index.html", html)])).len()
    }

    #[test]
    fn each_inline_kind_is_found() {
        for html in [
            "<script>go()</script>",
            "<SCRIPT type=module>import './a.js'</SCRIPT>",
            "<style>p{}</style>",
            "<p style='color:red'>",
            "<body onload=go()>",
            "<a href=' JavaScript:go()'>x</a>",
        ] {
            assert_eq!(found(html), 1, "{html}");
        }
    }

    #[test]
    fn files_of_their_own_pass() {
        assert_eq!(
            found("<link rel=stylesheet href=a.css><script type=module src=a.js></script><p title='on x'>style=</p>"),
            0
        );
    }

    #[test]
    fn a_page_that_is_not_there_is_a_finding() {
        assert_eq!(check(&Texts::new()).len(), 1);
    }
}
