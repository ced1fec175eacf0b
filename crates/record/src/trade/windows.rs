//! The figures of heat, a block per fibre.
//!
//! What it is: our windows and limits, none above published damage. What it is not: what others published (see `findings`).

use measure::unit::Unit::Celsius;

use super::{
    fact::{Fact, Source, Sure, fact},
    heat::{
        Heat,
        Suits::{AfterTest, Dries, Never, Sets},
        Window,
    },
    sources::{IJCS_1984, JUDGED, POLYPROPYLENE_PATENT, PRACTICE, WOOL_ESSAY},
};

const fn range(low: f64, likely: f64, high: f64, source: &'static Source, sure: Sure) -> Fact {
    fact(low, likely, high, Celsius, source, sure)
}

const fn most(figure: f64, source: &'static Source, sure: Sure) -> Fact {
    range(figure, figure, figure, source, sure)
}

/// A wig dryer with a thermometer inside never goes above 60 °C; too cool to set most synthetics.
const DRYER_AT_MOST: Fact = most(60.0, &PRACTICE, Sure::Medium);
const DRIES: Window = Window { suits: Dries(range(40.0, 50.0, 60.0, &PRACTICE, Sure::Medium)), limit: DRYER_AT_MOST };
/// For fibres that move near 60 °C already, or may.
const DRIES_COOL: Window = Window { suits: Dries(range(40.0, 45.0, 50.0, &JUDGED, Sure::Low)), limit: DRYER_AT_MOST };

/// Of a fibre that nobody knows: wet only, strand test at 60, 70, 80 °C.
pub const UNKNOWN: Heat = Heat {
    windows: [
        Window {
            suits: AfterTest(range(60.0, 70.0, 80.0, &PRACTICE, Sure::Medium)),
            limit: most(80.0, &PRACTICE, Sure::Low),
        },
        Window {
            suits: AfterTest(range(60.0, 70.0, 80.0, &PRACTICE, Sure::Low)),
            limit: most(80.0, &PRACTICE, Sure::Low),
        },
        DRIES_COOL,
        Window { suits: Never, limit: most(80.0, &PRACTICE, Sure::Low) },
    ],
    release: range(20.0, 25.0, 30.0, &JUDGED, Sure::Low),
    must_dry: true,
    holds_by_drying: true,
};

/// Of modacrylic. The iron's limit is the lowest published ironing figure, 116, less an iron's overshoot of 30.
pub const MODACRYLIC: Heat = Heat {
    windows: [
        Window {
            suits: Sets(range(80.0, 82.0, 85.0, &PRACTICE, Sure::Medium)),
            limit: most(90.0, &PRACTICE, Sure::Medium),
        },
        Window {
            suits: Sets(range(80.0, 82.0, 85.0, &PRACTICE, Sure::Medium)),
            limit: most(90.0, &PRACTICE, Sure::Medium),
        },
        DRIES,
        Window { suits: AfterTest(range(80.0, 80.0, 85.0, &JUDGED, Sure::Low)), limit: most(85.0, &JUDGED, Sure::Low) },
    ],
    release: range(30.0, 40.0, 50.0, &PRACTICE, Sure::Medium),
    must_dry: true,
    holds_by_drying: false,
};

/// Of heat-resistant polyester: 150 on the dial and 30 of overshoot stay within the trade's highest ceiling, 180.
pub const POLYESTER: Heat = Heat {
    windows: [
        Window { suits: Sets(range(90.0, 95.0, 100.0, &JUDGED, Sure::Low)), limit: most(100.0, &JUDGED, Sure::Medium) },
        Window { suits: Sets(range(90.0, 98.0, 100.0, &JUDGED, Sure::Low)), limit: most(120.0, &JUDGED, Sure::Low) },
        DRIES,
        Window {
            suits: Sets(range(120.0, 120.0, 140.0, &PRACTICE, Sure::Medium)),
            limit: most(150.0, &PRACTICE, Sure::Medium),
        },
    ],
    release: range(25.0, 35.0, 45.0, &JUDGED, Sure::Low),
    must_dry: true,
    holds_by_drying: false,
};

/// Of human hair on a cap: baths at most 60; dry under the iron, and it holds by drying.
pub const HUMAN_HAIR: Heat = Heat {
    windows: [
        Window {
            suits: Sets(range(20.0, 40.0, 60.0, &PRACTICE, Sure::Medium)),
            limit: most(60.0, &PRACTICE, Sure::Medium),
        },
        Window { suits: Sets(range(70.0, 85.0, 90.0, &JUDGED, Sure::Low)), limit: most(90.0, &WOOL_ESSAY, Sure::Low) },
        Window {
            suits: Sets(range(40.0, 50.0, 60.0, &IJCS_1984, Sure::Medium)),
            limit: most(60.0, &IJCS_1984, Sure::Medium),
        },
        Window {
            suits: Sets(range(120.0, 130.0, 140.0, &PRACTICE, Sure::Medium)),
            limit: most(140.0, &IJCS_1984, Sure::Medium),
        },
    ],
    release: range(20.0, 25.0, 35.0, &JUDGED, Sure::Low),
    must_dry: true,
    holds_by_drying: true,
};

/// Of chlorofibre: 60 first, 70 after a test.
pub const CHLOROFIBRE: Heat = COOL;
/// Of vinylidene fibre: 60 first, 70 after a test.
pub const VINYLIDENE: Heat = COOL;

const COOL: Heat = Heat {
    windows: [
        Window {
            suits: Sets(range(60.0, 60.0, 70.0, &PRACTICE, Sure::Medium)),
            limit: most(70.0, &PRACTICE, Sure::Medium),
        },
        Window {
            suits: AfterTest(range(60.0, 60.0, 70.0, &PRACTICE, Sure::Low)),
            limit: most(70.0, &PRACTICE, Sure::Medium),
        },
        DRIES_COOL,
        Window { suits: Never, limit: most(70.0, &PRACTICE, Sure::Medium) },
    ],
    release: range(20.0, 25.0, 30.0, &JUDGED, Sure::Low),
    must_dry: true,
    holds_by_drying: false,
};

/// Of polyamide, taken as type 6, the weaker; the iron's limit is 150 less an iron's overshoot of 30.
pub const POLYAMIDE: Heat = Heat {
    windows: [
        Window { suits: Sets(range(90.0, 95.0, 100.0, &JUDGED, Sure::Low)), limit: most(100.0, &JUDGED, Sure::Medium) },
        Window { suits: Sets(range(90.0, 98.0, 100.0, &JUDGED, Sure::Low)), limit: most(120.0, &JUDGED, Sure::Low) },
        DRIES,
        Window {
            suits: AfterTest(range(100.0, 110.0, 120.0, &JUDGED, Sure::Low)),
            limit: most(120.0, &JUDGED, Sure::Low),
        },
    ],
    release: range(20.0, 25.0, 35.0, &JUDGED, Sure::Low),
    must_dry: true,
    holds_by_drying: true,
};

/// Of polypropylene.
pub const POLYPROPYLENE: Heat = Heat {
    windows: [
        Window {
            suits: Sets(range(80.0, 85.0, 95.0, &JUDGED, Sure::Low)),
            limit: most(100.0, &POLYPROPYLENE_PATENT, Sure::Medium),
        },
        Window {
            suits: Sets(range(80.0, 85.0, 95.0, &JUDGED, Sure::Low)),
            limit: most(100.0, &POLYPROPYLENE_PATENT, Sure::Medium),
        },
        DRIES,
        // 100 less an iron's overshoot of 30: no iron goes so low and still sets.
        Window { suits: Never, limit: most(70.0, &JUDGED, Sure::Low) },
    ],
    release: range(20.0, 25.0, 30.0, &JUDGED, Sure::Low),
    must_dry: true,
    holds_by_drying: false,
};
