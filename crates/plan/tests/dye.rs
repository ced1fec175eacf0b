//! Dye baths: textbook sums, fibre between water lines, order of baths, what is refused, test locks that correct the depth.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that fails says so")]

use measure::{
    prefs::Prefs,
    quantity::{Length, LinearMassDensity, Mass, Volume, units},
    say::{Arg, Say, Words},
};
use plan::{
    care,
    colour::Light,
    dye::{
        self, Asked, Column, Hair, Plan, Stop, Way,
        amounts::{Room, as_solution, concentration, dye, recipe, solution},
        order::dips,
    },
    fullness::fullness,
    inputs::{Base, Corner},
    layout::{dome, lay_out},
    working::Caution,
};
use proptest::prelude::*;
use record::{
    trade::fibres::fibre,
    wig::{condition::Condition, figures::Wig, shade::Shade, zone::Zone},
    workshop::{
        colour_locks::colour_locks,
        dyes::{Dye, dyes},
    },
};

mod common;
use common::Bench;

const WORDS: Words =
    Words(&[measure::words::ENGLISH, record::words::ENGLISH, plan::words::ENGLISH, plan::colour::words::ENGLISH]);

fn light(text: &str) -> Light {
    Light::of(Shade::read(text).unwrap())
}

fn grams(grams: f64) -> Mass {
    Mass::new::<units::gram>(grams)
}

#[test]
fn textbook_sums() {
    for line in include_str!("cases/dye/sums.txt").lines().filter(|line| !line.is_empty() && !line.starts_with('#')) {
        let cells: Vec<f64> = line.split('|').map(|cell| cell.trim().trim_end_matches(" g").parse().unwrap()).collect();
        let [fibre, percent, wanted, stock, of_stock, ratio, bath, each] = cells[..] else { panic!("{line}") };
        let near = |found: f64, wanted: f64| assert!((found / wanted - 1.0).abs() < 1e-6, "{line}: {found}");
        near(dye(grams(fibre), percent), wanted);
        near(solution(wanted, stock).get::<units::milliliter>(), of_stock);
        near(concentration(percent, ratio), each);
        let recipe = recipe(grams(fibre), grams(fibre), ratio, Volume::new::<units::liter>(100.0), "ph.label");
        near(recipe.bath.get::<units::liter>(), bath);
    }
    assert_eq!(as_solution(7.0), None, "weighed as powder");
}

/// 100,000 hairs of 30 cm and 70 µm at 1.32 g/cm³ (Robbins, Chemical and Physical Behavior of Human Hair, recalled): by the
/// volume of a cylinder 152.4 g.
#[test]
fn a_hundred_thousand_hairs() {
    let section = core::f64::consts::PI / 4.0 * 70e-6 * 70e-6;
    let hair = Hair {
        zone: Zone::Back,
        fibre: fibre("human_hair"),
        lot: None,
        strands: 100_000.0,
        fineness: LinearMassDensity::new::<units::kilogram_per_meter>(section * 1320.0),
        shortest: Length::new::<units::centimeter>(30.0),
        longest: Length::new::<units::centimeter>(30.0),
        cut: None,
        at_root: grams(0.0),
    };
    let whole = hair.whole().get::<units::gram>();
    assert!((whole - 152.4).abs() < 0.1, "{whole}");
    let table = record::trade::fibres::fibre("human_hair").fineness.likely;
    assert!((section * 1320.0 * 1e7 - table).abs() < 0.5, "the table's own strand is that hair: {table}");
}

proptest! {
    /// Cut a wig's length anywhere: the parts weigh what the whole does, and none less than nothing.
    #[test]
    fn parts_weigh_the_whole(
        short in 2.0..60.0f64, more in 0.0..60.0f64, cuts in prop::collection::vec(0.0..120.0f64, 1..5),
        cut in prop::option::of(1.0..130.0f64),
    ) {
        let centimetres = Length::new::<units::centimeter>;
        let hair = Hair {
            zone: Zone::Back, fibre: fibre("modacrylic"), lot: None, strands: 40_000.0,
            fineness: LinearMassDensity::new::<units::decitex>(50.0),
            shortest: centimetres(short), longest: centimetres(short + more), cut: cut.map(centimetres),
            at_root: grams(3.0),
        };
        let mut places = cuts;
        places.extend([0.0, 200.0]);
        places.sort_by(f64::total_cmp);
        let parts: Vec<f64> = places
            .windows(2)
            .map(|pair| hair.between(centimetres(pair[0]), centimetres(pair[1])).get::<units::gram>())
            .collect();
        prop_assert!(parts.iter().all(|part| *part >= -1e-12));
        // Two cuts at the root would count what lies there twice.
        prop_assume!(places[1] > 0.0);
        let whole = hair.whole().get::<units::gram>();
        prop_assert!((parts.iter().sum::<f64>() - whole).abs() < 1e-9 * (1.0 + whole));
    }

    /// A pot that is said to hold a bath does; one that does not is told how large to be, and that one does.
    #[test]
    fn pots_are_told_right(fibre in 5.0..600.0f64, ratio in 20.0..80.0f64, pot in 1.0..40.0f64) {
        let pot = Volume::new::<units::liter>(pot);
        let found = recipe(grams(fibre), grams(fibre), ratio, pot, "ph.label");
        match found.room {
            Room::Holds | Room::Tight => prop_assert!(found.bath <= pot * 0.750001),
            Room::TooSmall { needs } => {
                prop_assert!(needs > pot);
                let again = recipe(grams(fibre), grams(fibre), ratio, needs * 1.0001, "ph.label");
                let still = matches!(again.room, Room::TooSmall { .. });
                prop_assert!(!still);
            }
        }
    }

    /// Baths go from light to dark, end, and give every band the colour it is to have, once.
    #[test]
    fn every_band_gets_its_bath(bands in prop::collection::vec(any::<[u8; 3]>(), 1..=6), base in any::<[u8; 3]>()) {
        let many = bands.len() as f64;
        let column = |zone| Column {
            zone,
            bands: bands.iter().enumerate().map(|(at, shade)| ((at as f64 + 1.0) / many, Light::of(Shade(*shade)))).collect(),
        };
        let base = Light::of(Shade(base));
        let found = dips(&[column(Zone::Back), column(Zone::Nape)], base);
        prop_assert!(found.len() <= bands.len());
        let depth = |light: Light| light.absorbs().0.iter().sum::<f64>();
        prop_assert!(found.windows(2).all(|pair| depth(pair[0].aim) <= depth(pair[1].aim) + 1e-9));
        for stretch in found.iter().flat_map(|dip| &dip.stretches) {
            prop_assert!(stretch.from <= stretch.own.0 && stretch.own.1 <= stretch.to, "{:?}", stretch);
        }
        for zone in [Zone::Back, Zone::Nape] {
            let mut own: Vec<(f64, f64)> = found
                .iter()
                .flat_map(|dip| &dip.stretches)
                .filter(|stretch| stretch.zone == zone)
                .map(|stretch| stretch.own)
                .collect();
            own.sort_by(|a, b| a.0.total_cmp(&b.0));
            prop_assert!(own.windows(2).all(|pair| pair[0].1 <= pair[1].0 + 1e-9), "{:?}", own);
        }
    }
}

#[test]
fn a_gradient_is_dipped_light_to_dark() {
    let column = Column {
        zone: Zone::Back,
        bands: vec![(0.3, light("#f0e6d2")), (0.6, light("#e0a0b0")), (1.0, light("#802040"))],
    };
    let found = dips(&[column], light("#f0e6d2"));
    let ways: Vec<(Way, f64, f64)> =
        found.iter().flat_map(|dip| &dip.stretches).map(|one| (one.way, one.from, one.to)).collect();
    assert_eq!(ways, [(Way::EndsDown, 0.3, 1.0), (Way::EndsDown, 0.6, 1.0)]);
    // The second goes over the first.
    assert!(found[1].from.0[0] < light("#f0e6d2").0[0] + 1e-9 && found[1].from != light("#f0e6d2"));
    // Dark roots, light ends: roots go in, ends stay out.
    let roots = Column { zone: Zone::Back, bands: vec![(0.4, light("#402010")), (1.0, light("#f0e6d2"))] };
    assert_eq!(dips(&[roots], light("#f0e6d2"))[0].stretches[0].way, Way::RootsDown);
}

fn planned(text: &str) -> (Result<Plan, Stop>, Vec<Dye>) {
    let bench = Bench::read(text);
    let (state, workshop, lots) = (bench.state(), bench.workshop(), bench.lots());
    let wig = Wig::new(&state);
    let corner = Corner::likely();
    let base = Base::at(&wig, &corner);
    let layout = lay_out(dome(&wig, &corner).unwrap(), &base);
    let full = fullness(&wig, &layout, &base, &lots, &corner);
    let shelf = dyes(&workshop, [&state]);
    let found = dye::plan(&Asked {
        bench: &care::Bench { wig: &wig, lots: &lots, locks: &[], labels: &[] },
        condition: &Condition::now(&wig),
        layout: &layout,
        fullness: &full,
        dyes: &shelf,
        locks: &colour_locks(&workshop, [(Bench::wig_id(), &state)]),
    });
    (found, shelf)
}

/// Whether a sentence, or one told together with others, is of this key.
fn tells(say: &Say, key: &str) -> bool {
    say.key == key || say.args.iter().any(|arg| matches!(arg, Arg::Say(inner) if tells(inner, key)))
}

#[test]
fn what_cannot_work_is_said_with_a_remedy() {
    let prefs = Prefs::default();
    let mut cases = 0;
    for block in include_str!("cases/dye/cautions.txt").split("\n== ").skip(1) {
        let (name, block) = block.split_once('\n').unwrap();
        cases += 1;
        let is_word = |line: &&str| ["> ", "< ", "! ", "remedy "].iter().any(|mark| line.starts_with(mark));
        let figures: Vec<&str> = block.lines().filter(|line| !is_word(line)).collect();
        let (found, _) = planned(&figures.join("\n"));
        let mut remedy = String::new();
        let cautions: Vec<Caution> = found.as_ref().map(|plan| plan.cautions.clone()).unwrap_or_default();
        for line in block.lines().filter(is_word) {
            let (mark, rest) = line.split_once(' ').unwrap();
            match mark {
                "!" => {
                    let (what, how) = found.as_ref().err().unwrap_or_else(|| panic!("{name}: planned")).say();
                    assert_eq!(what.key, rest, "{name}");
                    remedy = how.words(&WORDS, &prefs);
                }
                ">" => {
                    let (weight, key) = rest.split_once(' ').unwrap();
                    let hit = cautions.iter().find(|one| tells(&one.what, key));
                    let hit = hit.unwrap_or_else(|| panic!("{name}: {key} is not among {cautions:#?}"));
                    assert_eq!(format!("{:?}", hit.weight), weight, "{name}: {key}");
                    remedy = hit.remedy.words(&WORDS, &prefs);
                }
                "<" => assert!(cautions.iter().all(|one| !tells(&one.what, rest)), "{name}: {rest} in {cautions:#?}"),
                _ => assert!(remedy.contains(rest), "{name}: {remedy}"),
            }
        }
        // No sentence without its words.
        for say in cautions.iter().flat_map(|one| [&one.what, &one.remedy]) {
            assert!(WORDS.find(say.key).is_some(), "{name}: {} has no words", say.key);
        }
    }
    assert_eq!(cases, 19);
}

const PINK: &str = "fibre = modacrylic\nbase_shade = #f0e6d2\ncolour_along = #f0e6d2 to 50, #d06a90\nwhole_weight = 180 g\n\
    cap_weight = 35 g\npot = 10 L\nlot D.stock_name = rose\nlot D.stock_class = disperse\nlot D.stock_packet = 20 g\n\
    lot D.use_dye = yes\nlot D.stock_shade = #d06a90\n";

#[test]
fn two_test_locks_correct_the_depth() {
    let untried = planned(PINK).0.unwrap();
    let dye_of = |plan: &Plan| plan.baths[0].dyes[0].clone();
    assert_eq!(dye_of(&untried).locks, 0);
    // Locks of a dye three times as strong as the trade's usual one, made by the model itself.
    let (base, hue) = (light("#f0e6d2"), light("#d06a90").absorbs());
    let strong = plan::colour::Absorbs(hue.0.map(|band| band * 12.0 / hue.most()));
    let lock = |percent: f64| {
        let out = plan::colour::dyed(base, &[(strong, percent)]).shade();
        format!("work colour_lock stock=D; depth={percent} %; result_shade={out}; seen_by=typed\n")
    };
    let tried = planned(&format!("{PINK}{}{}", lock(0.1), lock(0.5))).0.unwrap();
    let (before, after) = (dye_of(&untried), dye_of(&tried));
    assert_eq!(after.locks, 2);
    let ratio = before.percent[1] / after.percent[1];
    assert!((2.8..3.2).contains(&ratio), "a third of the dye: {ratio}");
    assert!(tried.baths[0].off.amount < 3.0, "{:?}", tried.baths[0].off);
    let spread = |dye: &dye::DyePart| dye.percent[2] / dye.percent[0];
    assert!(spread(&after) < spread(&before), "locks narrow it");
    assert!(tried.cautions.iter().all(|one| one.what.key != "dye.untried"));
    for step in &tried.baths[0].steps {
        assert!(WORDS.find(step.key).is_some(), "{}", step.key);
    }
    for line in &tried.baths[0].working {
        assert!(WORDS.find(line.name.key).is_some() && WORDS.find(line.sum.key).is_some(), "{line:?}");
    }
}

#[test]
fn dye_used_comes_off_the_shelf() {
    let left = |text: &str| planned(&format!("{PINK}{text}")).1[0].left.unwrap().parts;
    assert_eq!(left(""), 20.0);
    assert_eq!(left("work dye dye_class=disperse; stock=D; dye_amount=1.5 g\n"), 18.5);
    // A weighing beats the label; only later use comes off.
    assert_eq!(
        left("work dye dye_class=disperse; stock=D; dye_amount=1.5 g\nshop count_dye stock=D; dye_amount=17 g\n"),
        17.0
    );
    let last = "shop count_dye stock=D; dye_amount=17 g\nwork dye dye_class=disperse; stock=D; dye_amount=1.5 g\n\
                work colour_lock stock=D; depth=1 %; result_shade=#d06a90; dye_amount=0.02 g\n";
    assert!((left(last) - 15.48).abs() < 1e-9);
}

#[test]
fn dye_is_no_weft() {
    let bench = Bench::read(PINK);
    assert!(bench.lots().is_empty());
}

/// On a sphere of radius R a row on the crown lies a quarter turn above the widest part, a row at the girth not at all.
#[test]
fn rows_higher_up_meet_the_water_nearer_their_ends() {
    let (found, _) = planned(PINK);
    let dipping = found.unwrap().baths[0].dipping.clone().unwrap();
    let of = |zone: Zone| {
        let rows: Vec<f64> = dipping
            .rows
            .iter()
            .filter(|row| row.row.zone == zone)
            .map(|row| row.row.above.get::<units::centimeter>())
            .collect();
        rows.iter().sum::<f64>() / rows.len() as f64
    };
    let (nape, back, crown) = (of(Zone::Nape), of(Zone::Back), of(Zone::Crown));
    assert!(nape < 0.0 && nape < back && back < crown, "{nape} {back} {crown}");
    assert!((6.0..16.0).contains(&crown), "over the head from the crown: {crown} cm");
    assert!(dipping.water > dipping.line, "water climbs");
    for row in &dipping.rows {
        if let Some(falls) = row.falls {
            let back = row.row.water_for(falls);
            assert!((back - dipping.line).get::<units::millimeter>().abs() < 1e-6);
        }
    }
}
