//! The printed sheet by itself: its policy, its words, what it carries, how it escapes.

#[cfg(test)]
#[allow(dead_code, reason = "each test binary uses its part")]
mod support;

use measure::prefs::Prefs;
use plan::care;
use record::wig::{figures::Wig, work::KINDS};
use sha2::{Digest, Sha256};
use sheet::{
    drawing::Voice,
    paper::{self, Block, Choices, Facts, POLICY, Paper, Part, STYLE, STYLE_HASH, Sheet},
};
use support::{CUT, WORDS, golden, metric};

fn made(text: &str, choices: &Choices, prefs: &Prefs) -> Sheet {
    let (answer, bench) = support::answer(text);
    let (state, lots) = (bench.state(), bench.lots());
    let wig = Wig::new(&state);
    let care = care::Bench { wig: &wig, lots: &lots, locks: &[], labels: &[] };
    let facts = Facts {
        bench: &care,
        answer: Some(&answer),
        photos: &[],
        entries: 12,
        demo: false,
        today: support::common::today(),
    };
    paper::sheet(&facts, choices, &Voice { words: &WORDS, prefs })
}

/// Base64 of RFC 4648, with padding.
fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut out = String::new();
    for three in bytes.chunks(3) {
        let number = three.iter().fold(0_u32, |sum, byte| sum << 8 | u32::from(*byte)) << (8 * (3 - three.len()));
        for place in 0..4 {
            let letter = LETTERS[(number >> (18 - 6 * place) & 63) as usize];
            out.push(if place > three.len() { '=' } else { char::from(letter) });
        }
    }
    out
}

#[test]
fn the_policy_names_the_one_stylesheet() {
    // The way of writing is checked against RFC 4648, section 10.
    for (plain, written) in [("", ""), ("f", "Zg=="), ("fo", "Zm8="), ("foo", "Zm9v"), ("foob", "Zm9vYg==")] {
        assert_eq!(base64(plain.as_bytes()), written);
    }
    let hash = format!("sha256-{}", base64(&Sha256::digest(STYLE)));
    let page = "../../web/static/index.html";
    let there = std::fs::read_to_string(page).expect("the page");
    if std::env::var_os("UPDATE_EXPECT").is_some() {
        std::fs::write(page, there.replace(STYLE_HASH, &hash)).expect("written");
    }
    golden("src/paper/style.hash", &hash);
    assert_eq!(STYLE_HASH, hash, "run again: the hash was written anew");
    assert!(std::fs::read_to_string(page).expect("the page").contains(&hash), "the page's own policy lets it through");
    assert!(!STYLE.contains("</") && !STYLE.contains("url(") && !STYLE.contains("@import"));
    assert_eq!(
        POLICY,
        format!("default-src 'none'; style-src '{hash}'; img-src data:; base-uri 'none'; form-action 'none'")
    );
}

#[test]
fn every_kind_is_told_as_something_to_do() {
    for kind in KINDS {
        // What is left of a lot is counted in the workshop, not in a wig's plan.
        let told = WORDS.find(&format!("todo.{}", kind.name)).is_some();
        assert!(told || kind.name == "count", "{}", kind.name);
        let guide = plan::steps::guide(kind.name);
        assert!(guide.kind == kind.name, "{} has no “right when”", kind.name);
    }
    // What is said of a field before the work is done is said of a field that there is.
    for (key, _) in sheet::words::ENGLISH {
        let Some(field) = key.strip_prefix("sheet.f_").or(key.strip_prefix("sheet.y_")) else { continue };
        let there =
            KINDS.iter().any(|kind| kind.field(field).is_some()) || WORDS.find(&format!("field.{field}")).is_some();
        assert!(there, "{key}: no such field");
    }
    for part in Part::ALL {
        assert_eq!(Part::read(part.name()), Some(part));
    }
    for paper in Paper::ALL {
        assert_eq!(Paper::read(paper.name()), Some(paper));
    }
}

#[test]
fn a_payload_is_carried_and_changes_nothing_else() {
    let sheet = made(CUT, &Choices::default(), &metric());
    let (without, with) =
        (paper::file(&sheet, None), paper::file(&sheet, Some("{\"a\":\"<b>&amp;'\r\n</template>\"}")));
    let carried = "<template class=\"s-payload\">{&quot;a&quot;:&quot;&lt;b&gt;&amp;amp;&#39;&#13;\n&lt;/template&gt;&quot;}</template>\n";
    assert_eq!(with.replace(carried, ""), without);
    assert!(with.contains(carried));
}

#[test]
fn hostile_words_stay_words() {
    let hostile = "</p></style><script>x()</script> \" onload='y()' & ]]> \u{7}\u{202e}";
    let text = CUT.replace("Copper weft", hostile).replace("name = Try", &format!("name = {hostile}"));
    let everything = Part::ALL.into_iter().fold(Choices::default(), |choices, part| choices.with(part, true));
    let sheet = made(&text, &everything, &metric());
    let html = paper::file(&sheet, Some(hostile));
    assert!(!html.contains("<script") && !html.contains("style=") && !html.contains("onload='"), "{html}");
    assert_eq!(html.matches("</style>").count(), 1);
    assert!(!html.contains('\u{202e}') || html.matches('\u{202e}').count() == 1, "in the payload alone");
    assert!(html.contains("&lt;script&gt;"));
    assert!(!paper::text(&sheet).contains('\u{7}'));
}

#[test]
fn the_ruler_is_true_and_drawings_fit_their_page() {
    for paper in Paper::ALL {
        let sheet = made(CUT, &Choices::default().on(paper), &metric());
        let pictures: Vec<_> = sheet
            .pages
            .iter()
            .flat_map(|page| &page.blocks)
            .filter_map(|block| if let Block::Pictures(pictures) = block { Some(pictures) } else { None })
            .flatten()
            .collect();
        assert!(pictures.len() >= 8, "five views, a legend, weft, a ruler");
        for picture in &pictures {
            assert!(picture.size[0] <= 180.0 && picture.size[1] <= 240.0, "{:?}", picture.size);
        }
        // A mm of the ruler's drawing is a mm of paper.
        let ruler = sheet.drawings.last().expect("a ruler");
        let on_paper = pictures.last().expect("a ruler").size;
        assert_eq!([ruler.view_box[2], ruler.view_box[3]], on_paper);
    }
}

#[test]
fn temperatures_stand_in_both_scales() {
    let text = format!("{CUT}\n    label_heat = 180 C\n");
    let fahrenheit = Prefs { degrees: measure::prefs::Degrees::Fahrenheit, ..metric() };
    for prefs in [metric(), fahrenheit] {
        // 180 °C is 356 °F by the scales’ fixed points.
        assert!(paper::text(&made(&text, &Choices::none(), &prefs)).contains("180 °C (356 °F)"));
    }
}
