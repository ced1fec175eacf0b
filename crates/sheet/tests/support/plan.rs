//! A plan said by hand, so that drawings are compared with one that no planner changes.
//!
//! What it is: rows, laid weft and fullness with every kind of mark. What it is not: a sensible plan.

use measure::quantity::{ArealNumberDensity, Length, units};
use plan::{
    dome::Section,
    layout::Layout,
    shopping::{For, LaidPiece, LaidWeft},
    wefts::{Mount, Placement, PlannedRow},
};
use record::wig::zone::Zone;

use super::common::lot;

fn mm(length: f64) -> Length {
    Length::new::<units::millimeter>(length)
}

fn row(layout: &Layout, section: Section, at: f64, mount: Mount, share: Option<f64>) -> PlannedRow {
    let curve = layout.dome.row(section, mm(at)).expect("a row there");
    let count = curve.points.len() as f64;
    let points = match share {
        None => curve.points.clone(),
        Some(share) => {
            let cut = ((1.0 - share) / 2.0 * count) as usize;
            curve.points[cut..curve.points.len() - cut].to_vec()
        }
    };
    let length = curve.length() * share.unwrap_or(1.0);
    let gap = layout.gaps.iter().find(|gap| gap.section == section && gap.to >= mm(at)).map_or(1, |gap| gap.number);
    let zones = vec![(Zone::Back, length)];
    PlannedRow { section, gap, at: mm(at), mount, length, zones, part: share.is_some(), points }
}

/// Five rows of every kind.
pub fn placement(layout: &Layout) -> Placement {
    let base = layout.rows.iter().find(|row| row.number == 9).expect("nine rows").curve.at;
    let rows = vec![
        row(layout, Section::BackAndSides, 20.0, Mount::Gap, None),
        row(layout, Section::BackAndSides, 58.0, Mount::Gap, None),
        row(layout, Section::BackAndSides, base.get::<units::millimeter>(), Mount::OnRow, None),
        row(layout, Section::BackAndSides, 150.0, Mount::Gap, Some(0.5)),
        row(layout, Section::Top, 30.0, Mount::Gap, None),
    ];
    Placement { rows, ..Placement::default() }
}

/// Three lengths with every kind of piece.
pub fn laid() -> Vec<LaidWeft> {
    let piece = |purpose, length_mm, part, rows: &[usize]| LaidPiece { purpose, length_mm, part, rows: rows.to_vec() };
    vec![
        LaidWeft {
            lot: lot("A"),
            owned: true,
            length_mm: 1000,
            pieces: vec![
                piece(For::Row(0), 215, (1, 1), &[0]),
                piece(For::Row(2), 260, (1, 2), &[2]),
                piece(For::Hairline(1, 2), 330, (1, 1), &[]),
                piece(For::Parting(1, 2), 100, (1, 1), &[]),
                piece(For::Parting(3, 1), 50, (1, 1), &[]),
                piece(For::HoldBack, 20, (1, 1), &[]),
                piece(For::Parting(4, 1), 8, (1, 1), &[]),
            ],
            offcut_mm: 5,
        },
        LaidWeft {
            lot: lot("A"),
            owned: false,
            length_mm: 2500,
            pieces: vec![
                piece(For::Run, 1400, (1, 1), &[0, 1, 2, 4]),
                piece(For::Hairline(3, 1), 300, (1, 1), &[]),
                piece(For::HoldBack, 150, (1, 1), &[]),
            ],
            offcut_mm: 650,
        },
        LaidWeft { lot: lot("B"), owned: true, length_mm: 400, pieces: Vec::new(), offcut_mm: 400 },
    ]
}

/// So many strands per cm².
pub fn full(strands: f64) -> ArealNumberDensity {
    ArealNumberDensity::new::<units::per_square_centimeter>(strands)
}
