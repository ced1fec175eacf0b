//! Drawings of invented wigs: goldens, hostile words, numbers, sameness.

#[cfg(test)]
mod support;

use measure::prefs::{Lengths, Prefs};
use sheet::drawing::{Drawing, Kind, Shape, Target, Voice, node::Form, paint, svg};
use support::{BOB, CUT, WORDS, drawings, golden, metric};

fn write(drawing: &Drawing, prefs: &Prefs) -> String {
    svg::write(drawing, &WORDS, prefs, Form::Standalone)
}

#[test]
fn drawings_are_as_they_were_looked_at() {
    let inches = Prefs { lengths: Lengths::Inches, ..metric() };
    for (name, drawing) in support::by_hand(&metric()) {
        if ["rows", "rows-back", "fullness", "weft-phone", "weft-paper", "depths"].contains(&name.as_str()) {
            golden(&format!("tests/golden/{name}.svg"), &write(&drawing, &metric()));
        }
    }
    for (name, drawing) in support::by_hand(&inches).into_iter().filter(|(name, _)| name == "weft-phone") {
        golden(&format!("tests/golden/{name}-inches.svg"), &write(&drawing, &inches));
    }
}

#[test]
fn the_stylesheet_is_the_table() {
    golden("src/drawing/drawing.css", &paint::written_style());
}

#[test]
fn the_same_wig_gives_the_same_bytes() {
    let once: Vec<String> = drawings(CUT, &metric()).iter().map(|(_, drawing)| write(drawing, &metric())).collect();
    let again: Vec<String> = drawings(CUT, &metric()).iter().map(|(_, drawing)| write(drawing, &metric())).collect();
    assert_eq!(once, again);
}

#[test]
fn hostile_words_stay_words() {
    let hostile = "</text><script>x()</script> \" onload='y()' & ]]> \u{7}";
    let text = CUT.replace("Copper weft", hostile);
    for (name, drawing) in drawings(&text, &metric()) {
        for form in [Form::Standalone, Form::Embedded] {
            let svg = svg::write(&drawing, &WORDS, &metric(), form);
            assert!(!svg.contains("<script") && !svg.contains("style=") && !svg.contains('\u{7}'), "{name}");
            assert!(!svg.contains("onload='"), "{name}");
            assert_eq!(svg.matches('<').count(), svg.matches('>').count(), "{name}");
            if name == "weft-paper" {
                assert!(svg.contains("&lt;script&gt;"), "{svg}");
            }
        }
    }
}

fn numbers(shape: &Shape) -> Vec<f64> {
    match &shape.kind {
        Kind::Path { lines, .. } => lines.iter().flatten().flatten().copied().collect(),
        Kind::Rect { at, size } => [*at, *size].concat(),
        Kind::Circle { at, radius } => vec![at[0], at[1], *radius],
        Kind::Text { at, size, .. } => vec![at[0], at[1], *size],
    }
}

#[test]
fn every_number_is_finite_and_every_class_is_painted() {
    let inches = Prefs { lengths: Lengths::Inches, ..metric() };
    for prefs in [metric(), inches] {
        for (name, drawing) in
            drawings(BOB, &prefs).into_iter().chain(drawings(CUT, &prefs)).chain(support::by_hand(&prefs))
        {
            assert!(drawing.view_box.iter().all(|number| number.is_finite()), "{name}");
            for shape in &drawing.shapes {
                assert!(numbers(shape).iter().all(|number| number.is_finite()), "{name} {shape:?}");
                assert!(paint::of(shape.class).is_some(), "{name}: no paint for {}", shape.class);
            }
            let svg = write(&drawing, &prefs);
            assert!(
                !svg.contains("sheet.") && !svg.contains("zone.") && !svg.contains("NaN"),
                "{name}: a key was not found"
            );
        }
    }
}

#[test]
fn everything_lies_within_its_frame() {
    for (name, drawing) in
        drawings(BOB, &metric()).into_iter().chain(drawings(CUT, &metric())).chain(support::by_hand(&metric()))
    {
        let prefs = metric();
        let voice = Voice { words: &WORDS, prefs: &prefs };
        let [left, top, width, height] = drawing.view_box;
        for shape in &drawing.shapes {
            let [l, t, r, b] = shape.bounds(&voice).expect("no empty shapes");
            let within = l >= left - 0.1 && t >= top - 0.1 && r <= left + width + 0.1 && b <= top + height + 0.1;
            assert!(within, "{name}: {shape:?} {:?}", drawing.view_box);
        }
    }
}

#[test]
fn each_visible_zone_and_row_can_be_touched_and_is_named() {
    let drawn = drawings(CUT, &metric());
    let (_, all) = drawn.iter().find(|(name, _)| name == "rows").expect("drawn");
    let (answer, _) = support::answer(CUT);
    for zone in record::wig::zone::Zone::ALL {
        let of_zone = |shape: &&Shape| shape.target == Some(Target::Zone(zone));
        assert!(all.shapes.iter().filter(of_zone).any(|shape| shape.class == "d-zone"), "{zone:?}");
        assert!(
            all.shapes.iter().filter(of_zone).any(|shape| matches!(shape.kind, Kind::Text { .. })),
            "{zone:?} unnamed"
        );
    }
    let rows = &answer.likely.prepared.placement.rows;
    assert!(rows.len() > 8, "{}", rows.len());
    for index in 0..rows.len() {
        let drawn = all.shapes.iter().any(|shape| {
            shape.class == "d-add" && matches!(shape.target, Some(Target::Row { index: one, .. }) if one == index)
        });
        assert!(drawn, "row {}", index + 1);
    }
}

#[test]
fn every_piece_is_named_inside_or_below_its_bar() {
    let (answer, _) = support::answer(CUT);
    for (name, drawing) in drawings(CUT, &metric()).into_iter().filter(|(name, _)| name.starts_with("weft")) {
        for (bar, weft) in answer.laid.iter().enumerate() {
            for piece in 0..weft.pieces.len() {
                let target = Some(Target::Piece(bar, piece));
                let of_piece = || drawing.shapes.iter().filter(|shape| shape.target == target);
                assert_eq!(of_piece().filter(|shape| shape.class == "d-piece").count(), 1, "{name}");
                assert!(of_piece().any(|shape| matches!(shape.kind, Kind::Text { .. })), "{name} {bar} {piece}");
            }
        }
    }
}
