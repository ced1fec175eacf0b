//! What people type, case by case, and what must hold for anything they type.

#![allow(clippy::expect_used, clippy::unwrap_used, reason = "a test")]

use measure::{
    prefs::Prefs,
    typed::Typed,
    unit::{Kind, Unit},
};
use proptest::prelude::*;

const KINDS: &[(&str, Kind)] = &[
    ("length", Kind::Length),
    ("mass", Kind::Mass),
    ("fineness", Kind::Fineness),
    ("strands", Kind::StrandsPerLength),
    ("area", Kind::StrandsPerArea),
    ("times", Kind::Times),
    ("share", Kind::Share),
    ("temperature", Kind::Temperature),
    ("time", Kind::Time),
];

fn check(line: &str) {
    let cells: Vec<&str> = line.split(" | ").collect();
    let kind = KINDS.iter().find(|(name, _)| *name == cells[0]).unwrap().1;
    let (typed, usual) = cells[1].rsplit_once(',').unwrap();
    let read = Typed::read(typed, kind, Unit::read(usual, kind).unwrap());
    match read {
        Err(reason) => assert!(format!("{reason:?}").starts_with(cells[2]), "{line}: {reason:?}"),
        Ok(typed) => {
            let (amount, unit) = cells[2].split_once(' ').expect(line);
            let unit = Unit::read(unit, kind).unwrap();
            let want: f64 = amount.parse().unwrap();
            let got = unit.from_base(typed.base());
            assert!((got - want).abs() < 2e-3 * want.abs().max(1.0), "{line}: {got}");
            assert_eq!(typed.text(), cells[3], "{line}");
        }
    }
}

#[test]
fn cases() {
    include_str!("cases/typed.txt").lines().filter(|line| !line.starts_with('#')).for_each(check);
}

#[test]
fn comma_and_point_both_read() {
    let read = |text| Typed::read(text, Kind::Length, Unit::Centimetre).unwrap();
    assert!((read("1,5").base() - read("1.5").base()).abs() < 1e-15);
    assert_eq!(read("1,5").text(), "1,5 cm");
    assert!(Typed::read("1,500", Kind::Length, Unit::Centimetre).is_err());
}

#[test]
fn the_longest_number_is_still_read_with_its_unit() {
    let mut read = 0;
    for digits in 30..45 {
        let text = format!("{}1", "0".repeat(digits - 1));
        if let Ok(typed) = Typed::read(&text, Kind::Length, Unit::Centimetre) {
            assert_eq!(Typed::read(typed.text(), Kind::Length, Unit::Inch), Ok(typed.clone()), "{digits}");
            read += 1;
        }
    }
    assert!((1..15).contains(&read), "{read} were short enough");
}

proptest! {
    #[test]
    fn anything_typed_is_answered_and_what_reads_reads_again(text in "\\PC{0,50}") {
        for (_, kind) in KINDS {
            if let Ok(typed) = Typed::read(&text, *kind, Prefs::default().usual(*kind)) {
                let again = Typed::read(typed.text(), *kind, Unit::Millimetre).unwrap();
                prop_assert_eq!(again.base().to_bits(), typed.base().to_bits());
            }
        }
    }

    #[test]
    fn what_the_tool_writes_reads_again(amount in prop_oneof![-50.0..50.0f64, 0.0..5000.0f64], inches: bool) {
        let unit = if inches { Unit::Inch } else { Unit::Celsius };
        let plain = Typed::plain(amount, unit);
        prop_assert_eq!(Typed::read(plain.text(), unit.kind(), unit), Ok(plain.clone()));
        prop_assert!((unit.from_base(plain.base()) - amount).abs() < 0.0051);
    }

    #[test]
    fn sign_and_zero_survive(whole in 0u32..5000, decimals in 0u32..99, minus: bool) {
        let text = format!("{}{whole}.{decimals:02}", if minus { "-" } else { "" });
        let typed = Typed::read(&text, Kind::Temperature, Unit::Celsius).unwrap();
        let want: f64 = text.parse().unwrap();
        prop_assert!((typed.base() - 273.15 - want).abs() < 1e-9);
    }
}
