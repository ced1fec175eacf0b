//! What must hold of mixing, reach, strength and proposals, whatever the colours.

use plan::colour::{
    Absorbs, Light, Trust,
    differ::ciede2000,
    difference, dyed, propose, reach,
    strength::{Told, fitted},
    white::{Useless, against_white},
};
use proptest::prelude::*;
use record::wig::shade::Shade;

fn shade() -> impl Strategy<Value = Shade> {
    any::<[u8; 3]>().prop_map(Shade)
}

fn dye() -> impl Strategy<Value = Absorbs> {
    [0.0..12.0f64, 0.0..12.0, 0.0..12.0].prop_map(Absorbs).prop_filter("colours", |dye| dye.most() > 0.5)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    /// K/S and back is the same light; eight bits and back is the same colour.
    #[test]
    fn light_comes_back(shade in shade()) {
        let light = Light::of(shade);
        prop_assert_eq!(light.shade(), shade);
        for (was, is) in light.0.iter().zip(light.absorbs().light().0) {
            prop_assert!((was.clamp(0.002, 0.998) - is).abs() < 1e-12);
        }
    }

    /// Dye only darkens, band by band, and more of it darkens more.
    #[test]
    fn dye_only_darkens(base in shade(), dye in dye(), depth in 0.0..8.0f64, more in 0.0..4.0f64) {
        let base = Light::of(base);
        let (once, twice) = (dyed(base, &[(dye, depth)]), dyed(base, &[(dye, depth + more)]));
        for band in 0..3 {
            prop_assert!(once.0[band] <= base.0[band].clamp(0.002, 0.998) + 1e-12);
            prop_assert!(twice.0[band] <= once.0[band] + 1e-12);
        }
    }

    /// What a base reaches is never lighter than it; what is darker in all bands is reached.
    #[test]
    fn reach_is_honest(base in shade(), wanted in shade()) {
        let (base, wanted) = (Light::of(base), Light::of(wanted));
        let found = reach(base, wanted);
        for band in 0..3 {
            prop_assert!(found.nearest.0[band] <= base.0[band].clamp(0.002, 0.998) + 1e-9);
        }
        if wanted.0.iter().zip(base.0).all(|(wanted, base)| *wanted <= base) {
            prop_assert!(found.reached(), "{:?}", found);
        }
        prop_assert_eq!(found.reached(), found.why.is_none());
    }

    /// Locks that the model itself made give the dye back, and the depth that made a colour is found again.
    #[test]
    fn own_strength_is_found_again(base in shade(), dye in dye(), depths in prop::collection::vec(0.1..3.0f64, 2..5)) {
        let base = Light::of(Shade(base.0.map(|band| band / 2 + 120)));
        let told: Vec<Told> = depths
            .iter()
            .map(|percent| Told { percent: *percent, before: base, after: dyed(base, &[(dye, *percent)]) })
            .collect();
        let strength = fitted(&told).unwrap();
        for band in 0..3 {
            prop_assert!((strength.each.0[band] - dye.0[band]).abs() < 1e-6 * (1.0 + dye.0[band]), "{:?}", strength);
        }
        let Trust::Fitted { worst, .. } = strength.trust else { panic!("{strength:?}") };
        prop_assert!(worst < 1e-3);
        let wanted = dyed(base, &[(dye, depths[0])]);
        prop_assert!(propose(base, wanted, &[strength.each]).off.amount < 0.05);
    }

    /// A proposal is never worse than no dye, nor with a second dye than without; depths are possible.
    #[test]
    fn proposals_help(base in shade(), wanted in shade(), one in dye(), two in dye()) {
        let (base, wanted) = (Light::of(base), Light::of(wanted));
        let single = propose(base, wanted, &[one]);
        let both = propose(base, wanted, &[one, two]);
        // The model takes no band darker than 0.2 %.
        prop_assert!(single.off.amount <= ciede2000(dyed(base, &[]), wanted) + 0.02);
        prop_assert!(both.off.amount <= single.off.amount + 0.02, "{} {}", both.off.amount, single.off.amount);
        prop_assert!(both.percent.iter().all(|depth| (0.0..=8.0).contains(depth)));
    }
}

/// Words go the way the colour goes.
#[test]
fn words_first() {
    let words = measure::say::Words(&[plan::colour::words::ENGLISH]);
    let prefs = measure::prefs::Prefs::default();
    for (wanted, got, said) in [
        ("#c04a7a", "#c04a7a", "the same to the eye"),
        ("#808080", "#606060", "clearly off: too dark"),
        ("#808080", "#9a9a9a", "clearly off: too light"),
        ("#a08080", "#a87c7a", "close, but seen side by side: brighter, redder"),
    ] {
        let light = |text| Light::of(Shade::read(text).unwrap());
        let found = difference(light(wanted), light(got));
        assert_eq!(found.words.words(&words, &prefs), said, "{wanted} {got} {}", found.amount);
    }
}

/// K/S of half the light is a quarter: (1 − 0.5)² / (2 × 0.5), by definition.
#[test]
fn half_the_light() {
    assert!((Light([0.5; 3]).absorbs().0[0] - 0.25).abs() < 1e-15);
}

/// Under a yellow lamp the paper is yellow; the grey lock beside it comes out grey.
#[test]
fn white_beside_the_lock() {
    let lamp = [1.0, 0.9, 0.6];
    let under = |reflects: f64| Light(lamp.map(|band| band * reflects)).shade();
    let found = against_white(under(0.3), under(0.9)).unwrap();
    assert!(ciede2000(Light::of(found), Light([0.3; 3])) < 1.0, "{found}");
    assert_eq!(against_white(Shade([10; 3]), Shade([255, 240, 240])), Err(Useless::BurntOut));
    assert_eq!(against_white(Shade([10; 3]), Shade([70; 3])), Err(Useless::TooDark));
}
