//! Performance: feed conversion, the European index, and where a batch breaks even.

use model::performance;
use quantity::fields::{asked_outside, count, field as asked, number};
use quantity::{Answers, Field, Mass, Need, Status, Unit};

use super::Family;
use crate::rule::{FigureSpec, Input, exact, field, figure};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: FIELDS, sums: SUMS, series: &[], shapes: &[] };

const LIVABILITY: &str = "performance.livability_percent";
const WEIGHT: &str = "performance.weight_kg";
const AGE: &str = "performance.age_d";
const FCR: &str = "performance.fcr";
const CHICK: &str = "performance.chick_g";
pub(crate) const FEED: &str = "performance.feed_kg";
pub(crate) const LIVE: &str = "performance.live_kg";
pub(crate) const DEAD: &str = "performance.dead_kg";
pub(crate) const CHICKS_WEIGHT: &str = "performance.chicks_kg";
pub(crate) const MEAN_WEIGHT: &str = "performance.mean_weight_g";
pub(crate) const COST: &str = "performance.cost_total";
pub(crate) const SOLD: &str = "performance.birds_sold";
pub(crate) const PLACED: &str = "performance.chicks_placed";
const PRICE: &str = "performance.price_per_kg";
pub(crate) const FEED_PRICE: &str = "performance.feed_price_per_kg";

/// Weights of bird, g, between which the correction to 2 500 g holds [maertens-2016].
pub(crate) const NEAR_2500_G: std::ops::RangeInclusive<f64> = 2_300.0..=2_700.0;

/// The same to 1 500 g: as far as the printed example goes, 200 g, either way. Our judgement.
pub(crate) const NEAR_1500_G: std::ops::RangeInclusive<f64> = 1_300.0..=1_700.0;

static FIELDS: &[Field] = &[
    asked(LIVABILITY, asked_outside(number(Unit::Percent, 1.0, 100.0), 70.0, 100.0), Need::Optional),
    asked(WEIGHT, asked_outside(number(Unit::Kilogram, 0.1, 10.0), 1.0, 3.5), Need::Optional),
    asked(AGE, asked_outside(number(Unit::Day, 1.0, 120.0), 28.0, 63.0), Need::Optional),
    asked(FCR, asked_outside(number(Unit::One, 0.8, 10.0), 1.3, 2.8), Need::Optional),
    asked(CHICK, asked_outside(number(Unit::Gram, 20.0, 80.0), 34.0, 50.0), Need::Optional),
    asked(FEED, number(Unit::Kilogram, 0.1, 1e6), Need::Optional),
    asked(LIVE, number(Unit::Kilogram, 0.1, 1e6), Need::Optional),
    asked(DEAD, number(Unit::Kilogram, 0.0, 1e6), Need::Optional),
    asked(CHICKS_WEIGHT, number(Unit::Kilogram, 0.0, 1e5), Need::Optional),
    asked(MEAN_WEIGHT, asked_outside(number(Unit::Gram, 100.0, 10_000.0), 1_000.0, 3_500.0), Need::Optional),
    asked(COST, number(Unit::Money, 0.01, 1e12), Need::Optional),
    asked(SOLD, count(Unit::Birds, 1.0, 100_000.0), Need::Optional),
    asked(PLACED, count(Unit::Chicks, 1.0, 100_000.0), Need::Optional),
    asked(PRICE, number(Unit::MoneyPerKilogram, 0.01, 1e9), Need::Optional),
    asked(FEED_PRICE, number(Unit::MoneyPerKilogram, 0.01, 1e9), Need::Optional),
];

static SUMS: &[Sum] = &[
    Sum {
        name: "index",
        inputs: &[
            asks("livability", LIVABILITY),
            asks("weight_kg", WEIGHT),
            asks("age_d", AGE),
            asks("fcr", FCR),
            may_ask("chick_g", CHICK),
        ],
        figures: &["performance.epef", "performance.daily_gain"],
        caution: None,
    },
    Sum {
        name: "feed-conversion",
        inputs: &[
            asks("feed_kg", FEED),
            asks("live_kg", LIVE),
            may_ask("dead_kg", DEAD),
            may_ask("chick_kg", CHICKS_WEIGHT),
            may_ask("weight_g", MEAN_WEIGHT),
        ],
        figures: &[
            "performance.fcr_sold",
            "performance.gain",
            "performance.fcr_gain",
            "performance.fcr_at_2500",
            "performance.fcr_at_1500",
        ],
        caution: None,
    },
    Sum {
        name: "break-even",
        inputs: &[
            asks("cost_total", COST),
            asks("live_kg", LIVE),
            may_ask("price_per_kg", PRICE),
            may_ask("birds_sold", SOLD),
            may_ask("chicks", PLACED),
            may_ask("feed_kg", FEED),
            may_ask("feed_price_per_kg", FEED_PRICE),
        ],
        figures: &[
            "performance.break_even_price",
            "performance.profit",
            "performance.mean_weight",
            "performance.break_even_weight",
            "performance.livability",
            "performance.break_even_livability",
            "performance.break_even_fcr",
            "performance.break_even_feed_price",
        ],
        caution: None,
    },
];

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "performance.epef",
        unit: Unit::One,
        decimals: 0,
        rules: &[exact(
            "epef",
            "s * w * 100 / (d * f)",
            &[field("s", LIVABILITY), field("w", WEIGHT), field("d", AGE), field("f", FCR)],
            |x| performance::epef(x[0], Mass::kilograms(x[1]), x[2], x[3]),
        )
        .from("shane-pef", Status::Published)],
    },
    FigureSpec {
        id: "performance.daily_gain",
        unit: Unit::Gram,
        decimals: 1,
        rules: &[
            exact(
                "daily-gain",
                "(w * 1000 - c) / d",
                &[field("w", WEIGHT), field("d", AGE), field("c", CHICK)],
                |x| gain_g(x[0], x[2], x[1]),
            )
            .when(|answers| answers.number(CHICK).is_some()),
            exact("daily-gain-whole", "w * 1000 / d", &[field("w", WEIGHT), field("d", AGE)], |x| {
                gain_g(x[0], 0.0, x[1])
            }),
        ],
    },
    FigureSpec {
        id: "performance.fcr_sold",
        unit: Unit::One,
        decimals: 3,
        rules: &[exact("fcr-sold", "F / L", &[field("F", FEED), field("L", LIVE)], |x| {
            performance::feed_conversion(Mass::kilograms(x[0]), Mass::kilograms(x[1]))
        })
        .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "performance.gain",
        unit: Unit::Kilogram,
        decimals: 1,
        rules: &[exact(
            "weight-gained",
            "L + m - c",
            &[field("L", LIVE), field("m", DEAD), field("c", CHICKS_WEIGHT)],
            |x| Some(x[0] + x[1] - x[2]),
        )],
    },
    FigureSpec {
        id: "performance.fcr_gain",
        unit: Unit::One,
        decimals: 3,
        rules: &[exact("fcr-gain", "F / G", &[field("F", FEED), figure("G", "performance.gain")], |x| {
            performance::feed_conversion(Mass::kilograms(x[0]), Mass::kilograms(x[1]))
        })
        .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "performance.fcr_at_2500",
        unit: Unit::One,
        decimals: 3,
        rules: &[exact("fcr-at-2500", "f - 0.02 * (w - 2500) / 100", CORRECTED, |x| {
            let (weight, to) = (Mass::grams(x[1]), Mass::grams(2_500.0));
            Some(performance::fcr_at_weight(x[0], weight, to, 0.02))
        })
        .from("maertens-2016", Status::Published)
        .when(|answers| weighs(answers, NEAR_2500_G))],
    },
    FigureSpec {
        id: "performance.fcr_at_1500",
        unit: Unit::One,
        decimals: 3,
        rules: &[exact("fcr-at-1500", "f - 0.04 * (w - 1500) / 100", CORRECTED, |x| {
            let (weight, to) = (Mass::grams(x[1]), Mass::grams(1_500.0));
            Some(performance::fcr_at_weight(x[0], weight, to, 0.04))
        })
        .from("fcr-correction-old", Status::Published)
        .when(|answers| weighs(answers, NEAR_1500_G))],
    },
    FigureSpec {
        id: "performance.break_even_price",
        unit: Unit::MoneyPerKilogram,
        decimals: 2,
        rules: &[exact("break-even-price", "C / L", &[field("C", COST), field("L", LIVE)], |x| {
            Some(x[0] / x[1])
        })],
    },
    FigureSpec {
        id: "performance.profit",
        unit: Unit::Money,
        decimals: 2,
        rules: &[exact(
            "profit",
            "p * L - C",
            &[field("p", PRICE), field("L", LIVE), field("C", COST)],
            |x| Some(x[0] * x[1] - x[2]),
        )],
    },
    FigureSpec {
        id: "performance.mean_weight",
        unit: Unit::Kilogram,
        decimals: 2,
        rules: &[exact("mean-weight-sold", "L / n", &[field("L", LIVE), field("n", SOLD)], |x| {
            Some(x[0] / x[1])
        })],
    },
    FigureSpec {
        id: "performance.break_even_weight",
        unit: Unit::Kilogram,
        decimals: 2,
        rules: &[exact(
            "break-even-weight",
            "C / (p * n)",
            &[field("C", COST), field("p", PRICE), field("n", SOLD)],
            |x| Some(x[0] / (x[1] * x[2])),
        )],
    },
    FigureSpec {
        id: "performance.livability",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[exact("survival", "100 * n / N", &[field("n", SOLD), field("N", PLACED)], |x| {
            performance::livability_percent(x[0], x[1])
        })
        .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "performance.break_even_livability",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[exact(
            "break-even-livability",
            "100 * C / (p * w * N)",
            &[
                field("C", COST),
                field("p", PRICE),
                figure("w", "performance.mean_weight"),
                field("N", PLACED),
            ],
            |x| Some(100.0 * x[0] / (x[1] * x[2] * x[3])),
        )],
    },
    FigureSpec {
        id: "performance.break_even_fcr",
        unit: Unit::One,
        decimals: 3,
        rules: &[exact(
            "break-even-fcr",
            "max(0, (p * L - (C - F * q)) / (q * L))",
            &[
                field("p", PRICE),
                field("L", LIVE),
                field("C", COST),
                field("F", FEED),
                field("q", FEED_PRICE),
            ],
            |x| Some((left_for_feed(x) / (x[4] * x[1])).max(0.0)),
        )],
    },
    FigureSpec {
        id: "performance.break_even_feed_price",
        unit: Unit::MoneyPerKilogram,
        decimals: 2,
        rules: &[exact(
            "break-even-feed-price",
            "max(0, (p * L - (C - F * q)) / F)",
            &[
                field("p", PRICE),
                field("L", LIVE),
                field("C", COST),
                field("F", FEED),
                field("q", FEED_PRICE),
            ],
            |x| Some((left_for_feed(x) / x[3]).max(0.0)),
        )],
    },
];

const CORRECTED: &[Input] = &[figure("f", "performance.fcr_sold"), field("w", MEAN_WEIGHT)];

/// Income less all costs but feed, from price, kg sold, cost, kg of feed and its price.
fn left_for_feed(x: &[f64]) -> f64 {
    x[0] * x[1] - (x[2] - x[3] * x[4])
}

fn gain_g(weight_kg: f64, chick_g: f64, age_d: f64) -> Option<f64> {
    let gain = performance::daily_gain(Mass::kilograms(weight_kg), Mass::grams(chick_g), age_d)?;
    Some(gain.in_grams())
}

fn weighs(answers: &Answers, range: std::ops::RangeInclusive<f64>) -> bool {
    answers.number(MEAN_WEIGHT).is_some_and(|weight| range.contains(&weight))
}
