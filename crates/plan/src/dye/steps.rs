//! The steps of a bath in words, and its working.
//!
//! What it is: sentences with this bath's own figures. What it is not: the figures.

use measure::{
    quantity::Mass,
    say::{Arg, Say},
};
use record::{
    trade::{
        bath::{FILLED, LIFT, LIQUOR, STRENGTH, WETTING, WICKING, acetic},
        dye::{Bath, Class},
    },
    wig::figures::Wig,
    workshop::dyes::Dose,
};

use super::{
    amounts::{SOLUTION, concentration},
    bath::BathPlan,
    curve::Part,
    order::Way,
};
use crate::working::{Ground, Line, figure_line, line};

/// An amount in words.
pub fn dose(dose: Dose) -> Arg {
    match dose {
        Dose::Weighed(mass) => Arg::Dose(mass),
        Dose::Measured(volume) => Arg::Volume(volume),
    }
}

/// What to do, in order.
pub fn steps(bath: &BathPlan, class: Class, of: &Bath, smooth: bool) -> Vec<Say> {
    let recipe = &bath.recipe;
    let mut steps = vec![
        Say::key("dye.step_ready"),
        Say::new("dye.step_wet_out", [Arg::Volume(recipe.wetting)]),
        Say::new("dye.step_fill", [Arg::Volume(recipe.bath)]),
    ];
    if let Some(vinegar) = recipe.vinegar {
        steps.push(Say::new("dye.step_vinegar", [Arg::Volume(vinegar), Arg::Key(of.ph)]));
    }
    for dye in &bath.dyes {
        let name = if dye.name.is_empty() { Arg::Key(class.label()) } else { Arg::Text(dye.name.clone()) };
        let likely = dye.dose[1];
        steps.push(match (dye.solution, dye.caps) {
            (Some(solution), _) => Say::new("dye.step_solution", [name, Arg::Volume(solution), dose(likely)]),
            (None, Some(caps)) => Say::new("dye.step_liquid", [name, dose(likely), Arg::Number(caps, 1)]),
            (None, None) => Say::new("dye.step_powder", [name, dose(likely)]),
        });
    }
    let way = |way: Way| bath.stretches.iter().any(|stretch| stretch.way == way);
    if let Some(dipping) = &bath.dipping {
        steps.push(Say::new("dye.step_dip", [Arg::Length(dipping.water), Arg::Length(dipping.line)]));
        if smooth {
            steps.push(Say::key("dye.step_smooth"));
        }
    }
    if way(Way::RootsDown) {
        steps.push(Say::key("dye.step_roots"));
    }
    if way(Way::Wrapped) {
        steps.push(Say::key("dye.step_wrap"));
    }
    if way(Way::Whole) {
        steps.push(Say::key("dye.step_whole"));
    }
    for leg in &bath.legs {
        let (time, to) = (Arg::Time(leg.time), Arg::Temperature(leg.to));
        match leg.part {
            Part::WetOut => {}
            Part::Warm => steps.push(Say::new("dye.step_warm", [time, to])),
            Part::WarmSlowly => steps.push(Say::new("dye.step_warm_slowly", [time, to])),
            Part::Hold => steps.push(Say::new("dye.step_hold", [time, to])),
            Part::Cool => steps.push(Say::new("dye.step_cool", [time, to])),
        }
    }
    steps.extend(["dye.step_rinse", "dye.step_dry", "dye.step_weigh_back"].map(Say::key));
    steps
}

fn share(percent: f64) -> Arg {
    Arg::Number(percent, 2)
}

/// The sums, with this wig's numbers; `parts` are what takes dye of hair, cap and spare fibre.
pub fn working(bath: &BathPlan, of: &Bath, parts: [Mass; 3], ratio: f64, wig: &Wig<'_>) -> Vec<Line> {
    let [hair, cap, spare] = parts;
    let recipe = &bath.recipe;
    let mut lines = vec![line(
        Say::key("dye.line_fibre"),
        Say::new("dye.sum_fibre", [Arg::Dose(hair), Arg::Dose(spare), Arg::Dose(cap), Arg::Dose(recipe.takes)]),
    )];
    if recipe.wet > recipe.takes {
        lines.push(line(
            Say::key("dye.line_refuses"),
            Say::new("dye.sum_refuses", [Arg::Dose(recipe.wet - recipe.takes), Arg::Dose(recipe.wet)]),
        ));
    }
    for dye in &bath.dyes {
        let ground =
            if dye.locks > 0 { Ground::Said } else { Ground::Assumed { source: STRENGTH.source, sure: STRENGTH.sure } };
        let name = if dye.name.is_empty() { Arg::Key("dye.a_dye") } else { Arg::Text(dye.name.clone()) };
        lines.push(Line {
            name: Say::new("dye.line_depth", [name.clone()]),
            sum: Say::new(
                "dye.sum_depth",
                [share(dye.percent[1]), share(dye.percent[0]), share(dye.percent[2]), Arg::Count(dye.locks as i64)],
            ),
            ground,
        });
        lines.push(line(
            Say::new("dye.line_dye", [name]),
            Say::new(
                "dye.sum_dye",
                [
                    Arg::Dose(recipe.takes),
                    share(dye.percent[1]),
                    dose(dye.dose[1]),
                    dose(dye.dose[0]),
                    dose(dye.dose[2]),
                    Arg::Number(concentration(dye.percent[1], recipe.ratio), 2),
                ],
            ),
        ));
        if let Some(solution) = dye.solution {
            lines.push(line(
                Say::key("dye.line_solution"),
                Say::new("dye.sum_solution", [dose(dye.dose[1]), Arg::Number(SOLUTION, 0), Arg::Volume(solution)]),
            ));
        }
    }
    lines.push(Line {
        name: Say::key("dye.line_bath"),
        sum: Say::new(
            "dye.sum_bath",
            [Arg::Dose(recipe.wet), Arg::Number(ratio, 0), Arg::Volume(recipe.bath), Arg::Number(recipe.ratio, 0)],
        ),
        ground: Ground::Assumed { source: LIQUOR.source, sure: LIQUOR.sure },
    });
    lines.push(Line {
        name: Say::key("dye.line_pot"),
        sum: Say::new(
            "dye.sum_pot",
            [
                Arg::Volume(wig.pot().likely),
                Arg::Percent(FILLED.high / 100.0),
                Arg::Volume(wig.pot().likely * (FILLED.high / 100.0)),
            ],
        ),
        ground: Ground::Assumed { source: FILLED.source, sure: FILLED.sure },
    });
    if let Some(fact) = recipe.vinegar.and_then(|_| acetic(of.ph)) {
        lines.push(Line {
            name: Say::key("dye.line_vinegar"),
            sum: Say::new("dye.sum_vinegar", [recipe.vinegar.map_or(Arg::Count(0), Arg::Volume)]),
            ground: Ground::Assumed { source: fact.source, sure: fact.sure },
        });
    }
    lines.push(Line {
        name: Say::key("dye.line_wetting"),
        sum: Say::new("dye.sum_wetting", [Arg::Volume(recipe.wetting)]),
        ground: Ground::Assumed { source: WETTING.source, sure: WETTING.sure },
    });
    lines.push(Line {
        name: Say::key("dye.line_lift"),
        sum: Say::new("dye.sum_lift", [Arg::Number(LIFT.likely, 0)]),
        ground: Ground::Assumed { source: LIFT.source, sure: LIFT.sure },
    });
    if let Some(dipping) = &bath.dipping {
        lines.push(Line {
            name: Say::key("dye.line_water"),
            sum: Say::new(
                "dye.sum_water",
                [
                    Arg::Length(dipping.line),
                    Arg::Length(dipping.climbs[1]),
                    Arg::Length(dipping.climbs[0]),
                    Arg::Length(dipping.climbs[2]),
                ],
            ),
            ground: Ground::Assumed { source: WICKING.source, sure: WICKING.sure },
        });
    }
    lines.push(figure_line(Say::key("dye.line_spare"), &wig.bath_spare(), Arg::Dose));
    lines
}
