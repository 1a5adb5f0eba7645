//! Water by day, in heat, in cans; what the tank must hold; sanitising from a label.

use quantity::physical::round_up;
use quantity::{Status, Unit};

use super::Family;
use super::growth::OWN_CURVE;
use crate::rule::{FigureSpec, Input, Over, Rule, exact, field, figure, of_days};
use crate::series::{SeriesSpec, Until, Way, age, every_day, given, same};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: SUMS, series: SERIES, shapes: &[] };

static SUMS: &[Sum] = &[Sum {
    name: "water",
    inputs: &[
        asks("chicks", "batch.chicks"),
        asks("sale_age_d", "batch.sale_age_d"),
        may_ask("standard", "batch.standard"),
        may_ask("own_curve", OWN_CURVE),
        may_ask("expected_losses_percent", "batch.expected_losses_percent"),
        may_ask("mean_c", "weather.mean_c"),
        may_ask("hottest_day_c", "weather.hottest_day_c"),
        may_ask("storage_l", "water.storage_l"),
        may_ask("can_l", "water.can_l"),
        may_ask("to_feed", "water.to_feed"),
        may_ask("sanitiser_ppm", "water.sanitiser_ppm"),
        may_ask("sanitiser_percent", "water.sanitiser_percent"),
    ],
    figures: &[
        "water.peak_day",
        "water.cans",
        "water.total",
        "water.storage_days",
        "water.heat_factor",
        "water.hot_factor",
        "water.sanitiser",
    ],
    caution: Some("caution-water-1"),
}];

/// How many times the water of a mild day birds drink on a hot one, where the hottest day is not told: half as much again to
/// twice as much at 32 degrees (common practice).
const HOT_DAY_LOW: f64 = 1.5;
const HOT_DAY: f64 = 1.75;
const HOT_DAY_HIGH: f64 = 2.0;

fn as_is(x: &[f64]) -> Option<f64> {
    Some(x[0])
}

/// More water in heat: the middle of the sources, with the lowest and the highest of them as the range.
const fn more_in_heat(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "min(2.5, 1 + 0.065 * max(0, t - 21))", inputs, |x| Some(model::water::heat_factor(x[0])))
        .from("water-in-heat", Status::Published)
        .between(|x| Some((model::water::heat_factor_low(x[0]), model::water::heat_factor_high(x[0]))))
}

/// Birds drink in the light, and on a hot day most in its twelve hours of sun: to count all of it then errs on the side of more
/// water (our judgement).
const DRINKING_H: f64 = 12.0;

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "water.heat_factor",
        unit: Unit::One,
        decimals: 2,
        rules: &[
            more_in_heat("water-in-usual-heat", &[field("t", "weather.mean_c")])
                .when(|answers| answers.number("weather.mean_c").is_some()),
            exact("water-without-weather", "1", &[], |_| Some(1.0))
                .from("our-judgement", Status::OurJudgement),
        ],
    },
    FigureSpec {
        id: "water.hot_factor",
        unit: Unit::One,
        decimals: 2,
        rules: &[
            more_in_heat("water-on-the-hottest-day", &[field("t", "weather.hottest_day_c")])
                .when(|answers| answers.number("weather.hottest_day_c").is_some()),
            exact("water-without-hottest-day", "max(h, 1.75)", &[figure("h", "water.heat_factor")], |x| {
                Some(x[0].max(HOT_DAY))
            })
            .from("common-practice", Status::CommonPractice)
            .between(|x| Some((x[0].max(HOT_DAY_LOW), x[0].max(HOT_DAY_HIGH)))),
        ],
    },
    FigureSpec {
        id: "water.peak_usual",
        unit: Unit::Litre,
        decimals: 0,
        rules: &[exact("water-peak-usual", "W", &[of_days("W", Over::Most, "water.by_day")], as_is)],
    },
    FigureSpec {
        id: "water.peak_day",
        unit: Unit::Litre,
        decimals: 0,
        rules: &[exact(
            "water-peak-day",
            "W * H",
            &[of_days("W", Over::Most, "water.cool_by_day"), figure("H", "water.hot_factor")],
            |x| Some(x[0] * x[1]),
        )],
    },
    FigureSpec {
        id: "water.total",
        unit: Unit::Litre,
        decimals: 0,
        rules: &[exact("water-total", "W", &[of_days("W", Over::Sum, "water.by_day")], as_is)],
    },
    FigureSpec {
        id: "water.cans",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "cans",
            "ceil(W / c)",
            &[figure("W", "water.peak_day"), field("c", "water.can_l")],
            |x| Some(model::water::cans(x[0], x[1])),
        )],
    },
    FigureSpec {
        id: "water.storage_days",
        unit: Unit::Day,
        decimals: 1,
        rules: &[exact(
            "storage-days",
            "s / W",
            &[field("s", "water.storage_l"), figure("W", "water.peak_day")],
            |x| (x[1] > 0.0).then(|| x[0] / x[1]),
        )],
    },
    FigureSpec {
        id: "water.off_need",
        unit: Unit::Litre,
        decimals: 0,
        rules: &[exact(
            "water-while-off",
            "W * min(1, o / 12)",
            &[figure("W", "water.peak_day"), field("o", "water.off_hours_h")],
            |x| Some(x[0] * (x[1] / DRINKING_H).min(1.0)),
        )
        .from("our-judgement", Status::OurJudgement)],
    },
    FigureSpec {
        id: "water.sanitiser",
        unit: Unit::Millilitre,
        decimals: 1,
        rules: &[exact(
            "sanitiser-in-tank",
            "p * s / (10 * c)",
            &[
                field("p", "water.sanitiser_ppm"),
                field("s", "water.storage_l"),
                field("c", "water.sanitiser_percent"),
            ],
            |x| Some(model::water::sanitiser_ml(x[0], x[1], x[2])),
        )
        .from("label", Status::Derived)],
    },
    FigureSpec {
        id: "water.line_volume",
        unit: Unit::Litre,
        decimals: 1,
        rules: &[exact(
            "line-volume",
            "pi * d ^ 2 / 4 * L / 1000",
            &[field("d", "water.line_diameter_mm"), field("L", "water.line_length_m")],
            |x| Some(model::water::line_l(x[0], x[1])),
        )
        .from("geometry", Status::Exact)],
    },
    FigureSpec {
        id: "water.line_mix",
        unit: Unit::Litre,
        decimals: 0,
        rules: &[exact("line-mix", "ceil(1.1 * v)", &[figure("v", "water.line_volume")], |x| {
            Some(round_up(LINE_SPILL * x[0]))
        })
        .from("our-judgement", Status::OurJudgement)],
    },
    FigureSpec {
        id: "water.line_product",
        unit: Unit::Millilitre,
        decimals: 1,
        rules: &[exact(
            "sanitiser-in-line",
            "p * m / (10 * c)",
            &[
                field("p", "water.line_ppm"),
                figure("m", "water.line_mix"),
                field("c", "water.sanitiser_percent"),
            ],
            |x| Some(model::water::sanitiser_ml(x[0], x[1], x[2])),
        )
        .from("label", Status::Derived)],
    },
];

/// Mix for a line over what it holds: a tenth runs out at the far end before it comes there at full strength.
const LINE_SPILL: f64 = 1.1;

static SERIES: &[SeriesSpec] = &[
    SeriesSpec {
        id: "water.per_bird_by_day",
        unit: Unit::MillilitrePerBird,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "water-per-bird",
            "r * f * h",
            &[
                every_day("r", "water.to_feed"),
                same("f", "feed.per_bird_by_day"),
                given("h", "water.heat_factor"),
            ],
            |x| Some(x[0] * x[1] * x[2]),
        )
        .from("pesti-1985", Status::Published)]),
    },
    SeriesSpec {
        id: "water.by_day",
        unit: Unit::Litre,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "water-by-day",
            "n * w / 1000",
            &[same("n", "batch.birds_alive"), same("w", "water.per_bird_by_day")],
            |x| Some(x[0] * x[1] / 1000.0),
        )]),
    },
    SeriesSpec {
        id: "vaccine.water_by_day",
        unit: Unit::Litre,
        decimals: 1,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "vaccine-water-by-day",
            "n * min(d, 40) / 1000",
            &[same("n", "batch.birds_alive"), age("d")],
            |x| Some(model::vaccine::water_by_age(x[0], x[1]).in_litres()),
        )
        .from("vaccine-water", Status::Published)]),
    },
    SeriesSpec {
        id: "water.cool_by_day",
        unit: Unit::Litre,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "water-by-day-without-heat",
            "n * r * f / 1000",
            &[
                same("n", "batch.birds_alive"),
                every_day("r", "water.to_feed"),
                same("f", "feed.per_bird_by_day"),
            ],
            |x| Some(x[0] * x[1] * x[2] / 1000.0),
        )
        .from("pesti-1985", Status::Published)]),
    },
];
