//! Live weight by day, off the curve that the plan follows.

use std::borrow::Cow;

use quantity::{Answers, DayOfAge, Mass, Status, Unit};
use reference::growth::{GrowthCurve, Standard};

use super::Family;
use super::space::standard;
use crate::rule::{FigureSpec, Input, Origin, exact, figure, on_day};
use crate::series::{
    DayInput, DayOrigin, DayRule, SeriesSpec, Until, Way, age, before, every_day, given, same,
};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: &[], series: SERIES, shapes: &[] };

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "growth.curve_at_sale",
        unit: Unit::Gram,
        decimals: 0,
        rules: &[exact("curve-at-sale", "g", &[on_day("g", "growth.curve", "batch.sale_age_d")], |x| {
            Some(x[0])
        })],
    },
    FigureSpec {
        id: HEAT_LOST,
        unit: Unit::Percent,
        decimals: 0,
        rules: &[exact(
            "gain-lost-in-heat",
            "q * (1 - G / g) / (1 - F / f)",
            &[
                figure("q", super::feed::HEAT_LOST),
                heat_trial("g", "gain_cool_g", Unit::Gram, || trial("gain_cool_g")),
                heat_trial("G", "gain_warm_g", Unit::Gram, || trial("gain_warm_g")),
                heat_trial("f", "feed_cool_g", Unit::Gram, || trial("feed_cool_g")),
                heat_trial("F", "feed_warm_g", Unit::Gram, || trial("feed_warm_g")),
            ],
            |x| Some(x[0] * (1.0 - x[2] / x[1]) / (1.0 - x[4] / x[3])),
        )
        .when(slowed_by_heat)
        .from("growth-in-heat", Status::Published)],
    },
    FigureSpec {
        id: "growth.fast_at_sale",
        unit: Unit::Kilogram,
        decimals: 2,
        rules: &[exact(
            "fast-beside",
            "growth_fast(a) / 1000",
            &[Input { symbol: "a", origin: Origin::Field("batch.sale_age_d") }],
            |x| Some(shipped(Standard::Fast)?.weight(DayOfAge(x[0] as i32))?.in_grams() / 1000.0),
        )
        .from("growth-fast", Status::FromMemory)],
    },
    FigureSpec {
        id: "growth.share_of_fast",
        unit: Unit::Percent,
        decimals: 0,
        rules: &[exact(
            "share-of-fast",
            "100 * w / f",
            &[figure("w", "space.weight_at_sale"), figure("f", "growth.fast_at_sale")],
            |x| Some(100.0 * x[0] / x[1]),
        )],
    },
];

static SERIES: &[SeriesSpec] = &[
    SeriesSpec {
        id: "growth.curve",
        unit: Unit::Gram,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[
            exact("curve-fast", "g", &[read_at("growth_fast")], as_is)
                .when(|answers| follows(answers, Standard::Fast))
                .from("growth-fast", Status::FromMemory)
                .between(|x| Some((x[0] * 0.97, x[0] * 1.03))),
            exact("curve-slow", "g", &[read_at("growth_slow")], as_is)
                .when(|answers| follows(answers, Standard::Slow))
                .from("growth-slow", Status::Interpolated),
            exact("curve-own", "g", &[read_at("own_curve")], as_is)
                .when(has_own)
                .from("grower", Status::Told),
            exact("curve-open-house", "g", &[read_at("growth_tropical")], as_is)
                .from("growth-open-house", Status::Modelled)
                .between(|x| Some((x[0] * 0.87, x[0] * 1.13))),
        ]),
    },
    SeriesSpec {
        id: LOST_IN_HEAT,
        unit: Unit::Gram,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[
            lost_in_heat(
                "growth-lost-in-heat",
                &[before("L", LOST_IN_HEAT, 0.0), gain_of("growth_fast"), given("q", HEAT_LOST), age("d")],
            )
            .when(|answers| slowed_by_heat(answers) && follows(answers, Standard::Fast)),
            lost_in_heat(
                "growth-lost-in-heat-slow",
                &[before("L", LOST_IN_HEAT, 0.0), gain_of("growth_slow"), given("q", HEAT_LOST), age("d")],
            )
            .when(slowed_by_heat),
        ]),
    },
    SeriesSpec {
        id: "growth.weight",
        unit: Unit::Gram,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[
            exact(
                "weight-through-own-sale-weight",
                "g * (1000 * w / G) ^ (d / a)",
                &[
                    same("g", "growth.curve"),
                    every_day("w", "batch.sale_weight_kg"),
                    DayInput {
                        symbol: "G",
                        origin: DayOrigin::Fixed(Origin::Figure("growth.curve_at_sale")),
                    },
                    age("d"),
                    every_day("a", "batch.sale_age_d"),
                ],
                |x| Some(model::growth::through(x[0], 1000.0 * x[1] / x[2], x[3] / x[4])),
            )
            .when(|answers| answers.number("batch.sale_weight_kg").is_some())
            .from("our-judgement", Status::OurJudgement),
            exact(
                "weight-in-heat",
                "g - L",
                &[same("g", "growth.curve"), same("L", "growth.lost_in_heat")],
                |x| Some(x[0] - x[1]),
            )
            .when(slowed_by_heat)
            .from("growth-in-heat", Status::Published),
            exact("weight-off-curve", "g", &[same("g", "growth.curve")], |x| Some(x[0])),
        ]),
    },
];

/// What heat has taken from a bird so far, by day.
const LOST_IN_HEAT: &str = "growth.lost_in_heat";

/// What heat takes of the day's gain, beside what it took before.
const fn lost_in_heat(name: &'static str, inputs: &'static [DayInput]) -> DayRule {
    exact(name, "L + i * q / 100 * at_least(d, 22)", inputs, |x| {
        Some(x[0] + x[1] * (1.0 - model::growth::kept_in_heat(x[2] / 100.0, x[3])))
    })
    .from("growth-in-heat", Status::Published)
}

/// What a curve puts on that day.
const fn gain_of(table: &'static str) -> DayInput {
    let origin = DayOrigin::Table { table, point: "gain", unit: Unit::Gram, read: gain };
    DayInput { symbol: "i", origin }
}

/// How much of their growth heat takes from birds past three weeks.
pub(crate) const HEAT_LOST: &str = "growth.heat_lost";

/// A number of the trial of growth at two temperatures.
pub(crate) const fn heat_trial(
    symbol: &'static str,
    point: &'static str,
    unit: Unit,
    read: fn() -> Option<f64>,
) -> Input {
    Input { symbol, origin: Origin::Table { table: "growth_in_heat", point, unit, read } }
}

/// Reads it.
pub(crate) fn trial(column: &str) -> Option<f64> {
    reference::heat::trial(column).ok()?
}

/// Whether heat is still to be taken off the curve: curves of open houses in hot countries, a grower's own curve and a weight
/// the grower expects have it in them already.
pub(crate) fn slowed_by_heat(answers: &Answers) -> bool {
    let cool_houses = !has_own(answers) && standard(answers) != Standard::OpenHouse;
    let expected = answers.number("batch.sale_weight_kg").is_some();
    answers.number("weather.mean_c").is_some() && cool_houses && !expected
}

/// What the curve puts on from the day before to the day, g.
fn gain(answers: &Answers, day: f64) -> Option<f64> {
    let before = if day < 1.0 { 0.0 } else { weight(answers, day - 1.0)?.in_grams() };
    let gain = weight(answers, day)?.in_grams() - before;
    Some((gain * 1e6).round() / 1e6)
}

/// A point of a table at the day's age.
const fn read_at(table: &'static str) -> DayInput {
    DayInput {
        symbol: "g",
        origin: DayOrigin::Table {
            table,
            point: "weight",
            unit: Unit::Gram,
            // Tables are in grams; what goes through kilograms and back is the same number to a millionth.
            read: |answers, day| weight(answers, day).map(|weight| (weight.in_grams() * 1e6).round() / 1e6),
        },
    }
}

fn as_is(x: &[f64]) -> Option<f64> {
    Some(x[0])
}

fn weight(answers: &Answers, day: f64) -> Option<Mass> {
    curve(answers)?.weight(DayOfAge(day as i32))
}

/// The curve a plan follows; `None` where an own curve was chosen and not given.
pub(crate) fn curve(answers: &Answers) -> Option<Cow<'static, GrowthCurve>> {
    if has_own(answers) {
        return answers.curve(OWN_CURVE).map(|rows| Cow::Owned(GrowthCurve::of_points(rows)));
    }
    shipped(standard(answers)).map(Cow::Borrowed)
}

fn shipped(standard: Standard) -> Option<&'static GrowthCurve> {
    standard.curve().ok()
}

/// The grower's own curve.
pub(crate) const OWN_CURVE: &str = "batch.own_curve";

/// Whether the grower's own curve was chosen.
pub(crate) fn has_own(answers: &Answers) -> bool {
    answers.choice("batch.standard") == Some("own")
}

fn follows(answers: &Answers, wanted: Standard) -> bool {
    !has_own(answers) && standard(answers) == wanted
}
